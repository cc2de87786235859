"""Every column of the tables people bring or get, declared once."""

from dataclasses import dataclass
from typing import Literal

ColumnType = Literal["text", "id", "number", "count", "choice"]


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table.

    name: heading in the file, with its unit.
    words: other headings that are understood for it.
    low, high: the values that can be true; beyond them the row is refused.
    odd_above: larger values are possible but questioned (a wrong unit, most often).
    """

    name: str
    type: ColumnType
    meaning: str
    example: str
    unit: str = ""
    required: bool = False
    words: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None
    odd_above: float | None = None
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Table:
    """A named set of columns; `one_of` lists groups of which each row needs at least one."""

    name: str
    columns: tuple[Column, ...]
    one_of: tuple[tuple[str, ...], ...] = ()

    def column(self, name: str) -> Column:
        """The column of that name; KeyError if there is none."""
        return next(c for c in self.columns if c.name == name)


FORMS = ("tree", "shrub", "vine", "sprout")
STATES = ("standing", "cut", "dead")
MEASURED_AT = ("stump", "breast")

STEMS = Table(
    "stems",
    (
        Column("id", "id", "name of the stem, once only", "s1", required=True, words=("stem", "tag", "number")),
        Column("patch", "id", "patch it stands in", "rim", required=True),
        Column("species", "text", "common or Latin name", "tree-of-heaven", required=True, words=("plant",)),
        Column("x_m", "number", "metres east of the corner", "12.5", "m", True, ("east_m", "x"), -1e7, 1e7),
        Column("y_m", "number", "metres north of the corner", "48", "m", True, ("north_m", "y"), -1e8, 1e8),
        # The thickest stem on record is under 12 m; past 1.5 m a wrong unit is likelier than a tree.
        Column("diameter_cm", "number", "across the stem", "9.5", "cm", False, (), 0.1, 1200.0, 150.0),
        Column("diameter_in", "number", "across the stem", "3 3/4", "in", False, (), 0.04, 472.0, 60.0),
        Column("measured_at", "choice", "where it was measured", "stump", choices=MEASURED_AT),
        Column(
            "stems",
            "count",
            "stems of one clump, each of this size",
            "1",
            "",
            False,
            ("count",),
            1,
            10000,
            200,
        ),
        Column("height_m", "number", "height", "6", "m", False, (), 0.0, 120.0, 60.0),
        Column("form", "choice", "how it grows", "tree", choices=FORMS),
        Column("state", "choice", "standing, already cut, or dead", "standing", choices=STATES),
        Column("note", "text", "anything else", "leans over the lane"),
    ),
    one_of=(("diameter_cm", "diameter_in"),),
)

SPARED_KINDS = (
    "tree", "small plants", "water", "well", "sinkhole", "garden", "building", "lane", "path", "fence", "wire",
    "boundary",
)  # fmt: skip

SPARED = Table(
    "spared",
    (
        Column("id", "id", "name, once only", "oak-1", required=True),
        Column("kind", "choice", "what it is", "tree", required=True, choices=SPARED_KINDS),
        Column("species", "text", "common or Latin name, for plants", "bur oak"),
        Column("dbh_cm", "number", "across the trunk at breast height", "40", "cm", False, (), 0.1, 1200.0, 300.0),
        Column("dbh_in", "number", "across the trunk at breast height", "16", "in", False, (), 0.04, 472.0, 120.0),
        Column(
            "crown_radius_m",
            "number",
            "from trunk to the edge of the crown",
            "5",
            "m",
            False,
            (),
            0.1,
            60,
            25,
        ),
        Column("note", "text", "anything else", "the old tree by the gate"),
    ),
)

PLOTS = Table(
    "plots",
    (
        Column("plot", "id", "name of the plot", "1", required=True),
        Column("patch", "id", "patch it lies in", "slope", required=True),
        Column("species", "text", "common or Latin name", "bush honeysuckles", required=True, words=("plant",)),
        Column("low_cm", "number", "smallest of the size class", "0", "cm", False, (), 0.0, 1200.0),
        Column("high_cm", "number", "largest of the size class", "2.5", "cm", False, (), 0.1, 1200.0),
        Column("low_in", "number", "smallest of the size class", "0", "in", False, (), 0.0, 472.0),
        Column("high_in", "number", "largest of the size class", "1", "in", False, (), 0.04, 472.0),
        Column("count", "count", "stems of that class in the plot, 0 too", "14", "", True, ("stems",), 0, 100000),
        Column("plot_m2", "number", "ground of the plot", "40.47", "m2", True, (), 0.5, 10000.0),
    ),
    one_of=(("high_cm", "high_in"),),
)

RATES = Table(
    "rates",
    (
        Column("species", "text", "common or Latin name", "Frangula alnus", required=True, words=("plant",)),
        Column("method", "text", "way of treating", "cut stump", required=True, words=("way",)),
        Column("ingredients", "text", "active ingredients, joined by +", "glyphosate 480 g ae/L", required=True),
        Column("percent", "number", "percent of product in the mix", "25", "", False, (), 0.0, 100.0),
        Column("season", "text", "season of treatment", "summer"),
        Column("works", "count", "days' works", "3", "", True, (), 1, 100000),
        Column("dead", "count", "plants found dead", "20", "", True, (), 0, 1000000),
        Column("seen", "count", "plants found dead or alive", "24", "", True, (), 1, 1000000),
        Column("months", "number", "shortest time to the look", "13", "", False, (), 0.0, 600.0),
    ),
)

TABLES = (STEMS, SPARED, PLOTS)
