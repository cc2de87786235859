"""What can be wrong with a folder: problems as values, gathered so that all of them are told at once."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from stemward.kinds import Question

MOST_SHOWN = 50
"""Problems told in full; of the others only the number."""

ENOUGH = 2000
"""Problems after which no more are looked for: such a folder is another kind of thing altogether."""

MOST_ASKED = 100
"""Questions told in full; of the others only the number."""

Value = str | float
Sort = tuple[str, str, str]

MESSAGES: dict[str, tuple[str, ...]] = {
    # the folder and its files
    "folder.missing": (),
    "folder.not_a_folder": (),
    "folder.empty": (),
    "folder.no_permission": (),
    "folder.cannot_read": ("why",),
    "folder.more": ("count",),
    "file.missing": ("near",),
    "file.other_name": ("meant",),
    "file.no_permission": (),
    "file.cannot_read": ("why",),
    "file.not_a_file": (),
    "file.outside": (),
    "file.too_big": ("most_mb",),
    "file.empty": (),
    "file.nul": (),
    "file.looks_like": ("what",),
    "file.looks_utf16": (),
    "file.broken_utf16": (),
    "file.not_utf8": ("byte", "perhaps", "at"),
    # the rows and columns of a table
    "csv.no_headings": ("found",),
    "foreign.too_large": ("most_mb",),
    "foreign.too_many": ("rows", "most"),
    "foreign.no_rows": (),
    "foreign.unknown": (),
    "picture.too_large": ("most",),
    "picture.unknown": (),
    "picture.no_system": (),
    "foreign.damaged": (),
    "foreign.encoding": (),
    "foreign.zip_large": (),
    "foreign.zip_outside": (),
    "foreign.slow": (),
    "csv.no_rows": (),
    "csv.unknown_column": ("near",),
    "csv.no_heading": ("at",),
    "csv.column_twice": ("first",),
    "csv.missing_column": ("near",),
    "csv.missing_one_of": ("columns",),
    "csv.ragged": ("cells", "columns"),
    "csv.quotes": (),
    "csv.too_wide": ("columns", "most"),
    # one cell or one property
    "cell.empty": (),
    "cell.too_long": ("length", "most"),
    "cell.odd_sign": (),
    "cell.not_a_number": ("typed",),
    "cell.not_whole": ("typed",),
    "cell.decimal_comma": ("typed",),
    "cell.other_unit": ("typed", "unit"),
    "cell.out_of_range": ("typed", "low", "high", "unit"),
    "cell.not_a_choice": ("typed", "near"),
    # stems
    "stems.id_twice": ("id", "first_line"),
    "stems.two_diameters": ("id",),
    "stems.no_diameter": ("id",),
    "stems.unknown_patch": ("patch", "near", "count"),
    "stems.unknown_species": ("species", "near", "count"),
    "stems.degrees": ("span_x", "span_y"),
    "stems.outside_patch": ("id", "patch", "distance_m", "inside"),
    "stems.outside_all": ("id", "patch", "distance_m"),
    # GeoJSON
    "json.syntax": ("at",),
    "json.too_deep": (),
    "json.key_twice": ("name",),
    "json.number": ("typed",),
    "geo.not_a_collection": ("what",),
    "geo.not_a_feature": (),
    "geo.degrees": ("span_x", "span_y"),
    "geo.degrees_named": ("system",),
    "geo.no_shape": (),
    "geo.wrong_shape": ("what", "wanted"),
    "geo.many_parts": ("what",),
    "geo.position": (),
    "geo.too_few": ("corners", "least"),
    "geo.not_closed": ("gap_m",),
    "geo.crosses_itself": ("x_m", "y_m"),
    "geo.hole": ("x_m", "y_m"),
    "geo.no_area": (),
    "geo.no_properties": (),
    "geo.unknown_property": ("near",),
    "geo.missing_property": (),
    "geo.two_sizes": ("id",),
    "geo.id_twice": ("id", "first_line"),
    "geo.unknown_patch": ("patch", "near"),
    # TOML
    "toml.syntax": ("at", "why"),
    "toml.too_deep": (),
    "key.unknown": ("name", "near"),
    "key.missing": (),
    "key.wrong_type": ("wanted",),
    "key.empty": (),
    "key.too_long": ("length", "most"),
    "key.odd_sign": (),
    "key.not_a_choice": ("typed", "near"),
    "key.figure": ("typed",),
    "key.out_of_range": ("typed", "low", "high", "unit"),
    "key.not_a_day": ("typed",),
    "key.id_twice": ("id", "first_file", "first_line"),
    "key.too_many": ("count", "most"),
    # land
    "tract.no_patches": (),
    "tract.unknown_patch": ("patch", "near"),
    "tract.time_zone": ("typed",),
    "tract.state": ("typed", "near"),
    "measure.mark_too_big": ("id",),
    # shelf
    "jug.more_than_holds": ("id",),
    "fact.nothing_said": ("kind",),
    "fact.says_and_denies": ("kind", "standing"),
    "fact.no_such_negative": ("kind", "standing"),
    "fact.of_one_only": ("kind",),
    "fact.reading": ("kind",),
    "fact.needs_unit": ("kind", "typed"),
    "fact.backward": ("low", "high"),
    # choices
    "choice.unknown_species": ("species", "near"),
    "choice.unknown_product": ("product", "near"),
    "choice.twice": ("patch", "species", "first_line"),
    "choice.needs_product": ("how",),
    "choice.takes_no_product": ("how",),
    "choice.undiluted": (),
    "money.not_understood": ("typed",),
    "rates.more_dead": (),
    "rates.plant": ("typed",),
    "rates.method": ("typed",),
    "rates.ingredient": ("typed",),
    "plots.class": ("plot",),
    "choice.unknown_partner": ("partner", "near"),
    "choice.partner": (),
    "choice.over_full": (),
    # records
    "record.not_an_object": (),
    "record.unknown_key": ("name", "near"),
    "record.missing_key": (),
    "record.wrong_type": ("wanted",),
    "record.at": ("typed",),
    "record.later_version": ("schema",),
    "record.id_twice": ("id", "first_line"),
    "record.corrects_nothing": ("corrects",),
    "record.corrects_itself": (),
    "record.kind_near": ("kind", "near"),
    "record.unknown_patch": ("patch", "near"),
    "record.ingredient_spelled": ("ingredient", "near"),
    "record.amount": ("typed",),
    # questions: read all the same, but doubtful
    "ask.kind_not_counted": ("kind",),
    "ask.ingredient_near": ("ingredient", "near"),
    "ask.odd_size": ("count", "typed", "id", "odd_above", "unit"),
    "ask.median_large": ("median", "unit", "limit_cm", "perhaps"),
    "ask.species_large": ("median", "unit", "limit_cm", "species", "perhaps"),
    "ask.degrees": (),
    "ask.outside": ("patch", "count", "distance_m", "id"),
    "ask.overlap": ("patch", "other", "area_m2"),
    "ask.area_differs": ("patch", "stated_m2", "drawn_m2"),
    "ask.grid": ("system",),
    "ask.spared_species": ("id", "species", "near"),
    "ask.spared_no_size": ("id",),
    "ask.fact_plant": ("species", "near"),
    "ask.strong": ("ingredient", "strength_g_l"),
    "ask.gear": ("role", "gear", "near"),
    "ask.choice_unused": ("patch", "species"),
    "ask.unsure_plant": ("species",),
    "ask.not_read": (),
    "ask.more": ("count",),
}
"""Every message id with the names of its values; the words stand in room `say`."""


@dataclass(frozen=True, slots=True)
class Problem:
    """Something that makes the folder unusable.

    message: an id of MESSAGES. values: its values, those with a unit named for it. file: name within the
    folder, empty for the folder itself. column: heading, or dotted name of a TOML key. expected: an example.
    """

    message: str
    values: dict[str, Value]
    file: str
    line: int | None = None
    column: str = ""
    expected: str = ""


class Unreadable(Exception):
    """A folder that cannot be used. problems: at most 51, the last then saying how many more there are."""

    def __init__(self, problems: tuple[Problem, ...], count: int) -> None:
        self.problems = problems
        self.count = count
        super().__init__(f"{count} problems, the first: {problems[0]}")


@dataclass
class Problems:
    """What was found so far. Of one sort only those that can be shown are kept; the others are counted."""

    kept: list[Problem] = field(default_factory=list)
    asked: list[Question] = field(default_factory=list)
    only_counted: int = 0
    only_asked: int = 0
    _of_sort: Counter[Sort] = field(default_factory=Counter)

    def add(
        self,
        message: str,
        file: str,
        line: int | None = None,
        column: str = "",
        expected: str = "",
        **values: Value,
    ) -> None:
        """Note a problem."""
        sort = (file, message, column)
        self._of_sort[sort] += 1
        if self._of_sort[sort] > MOST_SHOWN:
            self.only_counted += 1
        else:
            self.kept.append(Problem(message, values, file, line, column, expected))

    def ask(self, message: str, file: str, line: int | None = None, column: str = "", **values: Value) -> None:
        """Note a question: read, but doubtful."""
        if len(self.asked) < MOST_ASKED:
            self.asked.append(Question(message, tuple(values.items()), file, line, column))
        else:
            self.only_asked += 1

    @property
    def questions(self) -> tuple[Question, ...]:
        """The questions, the last saying how many more there are, if there are."""
        if not self.only_asked:
            return tuple(self.asked)
        return (*self.asked, Question("ask.more", (("count", self.only_asked),), ""))

    @property
    def enough(self) -> bool:
        """True if so much is wrong that looking for more would be of no use."""
        return self.count > ENOUGH

    def about(self, start: str) -> bool:
        """True if anything is wrong with a file whose name begins so."""
        return any(problem.file.startswith(start) for problem in self.kept)

    def has(self, message: str) -> bool:
        """True if a problem of that id was noted."""
        return any(problem.message == message for problem in self.kept)

    @property
    def count(self) -> int:
        """How many problems there are in all."""
        return len(self.kept) + self.only_counted

    def raise_if_any(self) -> None:
        """Raises Unreadable with everything found, if anything was."""
        if self.count:
            raise Unreadable(_shown(self.kept, self.count), self.count)


def _place(problem: Problem) -> tuple[bool, str, int]:
    return "/" in problem.file, problem.file, problem.line or 0


def _shown(kept: Iterable[Problem], count: int) -> tuple[Problem, ...]:
    """All in order of file and line; of too many, a few of each sort rather than many of the first."""
    ordered = sorted(kept, key=_place)
    if count <= MOST_SHOWN:
        return tuple(ordered)
    seen: Counter[Sort] = Counter()
    ranked = []
    for problem in ordered:
        sort = (problem.file, problem.message, problem.column)
        ranked.append((seen[sort], problem))
        seen[sort] += 1
    some = [problem for _, problem in sorted(ranked, key=lambda pair: pair[0])[:MOST_SHOWN]]
    more = Problem("folder.more", {"count": count - len(some)}, "")
    return (*sorted(some, key=_place), more)
