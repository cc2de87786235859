"""Reading the packaged tables. A row without a source fails the load, with file and row."""

import csv
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Literal, cast

from stemward.kinds import Cited, Grade

SoilActive = Literal["no", "weak", "yes"]


class BrokenHandbook(Exception):
    """A packaged table that cannot be used: file, row and what is missing."""


@dataclass(frozen=True, slots=True)
class Species:
    """A woody species. max_dbh_cm: how thick it grows, None where not known."""

    latin: str
    common: str
    synonyms: tuple[str, ...]
    habit: str
    native: str
    stump_sprouts: str
    root_suckers: str
    spread: str
    clone: bool
    grafts: bool
    cut_first: str
    max_dbh_cm: float | None
    cautions: str
    cited: Cited

    @property
    def genus(self) -> str:
        """First word of the Latin name."""
        return self.latin.split()[0]


@dataclass(frozen=True, slots=True)
class Near:
    """A name that was not found, with near matches as (common, Latin)."""

    text: str
    candidates: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Ingredient:
    """An active ingredient in a form: how it behaves in soil and roots."""

    name: str
    form: str
    soil_active: SoilActive
    soil_cited: Cited
    exuded: bool
    translocated: bool
    koc_ml_g: Cited
    dt50_days: Cited


@dataclass(frozen=True, slots=True)
class Evidence:
    """One row on a plant, a way and its ingredients; fractions are of product by volume, None if not given."""

    id: str
    latin: str
    method: str
    ingredients: tuple[str, ...]
    low_frac: float | None
    high_frac: float | None
    strength: str
    rating: str
    rating_text: str
    season: str
    notes: str
    kind: str
    source: str
    place: str

    def near(self, share: float | None) -> bool:
        """True unless the row names a share of product over twice or under half of this one."""
        if share is None or self.low_frac is None or self.high_frac is None:
            return True
        return self.low_frac / 2 <= share <= self.high_frac * 2


@dataclass(frozen=True, slots=True)
class Strength:
    """A strength of mix on record: for a method and products within a range of strength."""

    id: str
    ingredient: str
    form: str
    method: str
    least_ae_g_l: float
    most_ae_g_l: float
    low_frac: float
    usual_frac: float
    high_frac: float
    carrier: str
    source: str
    grade: Grade


@dataclass(frozen=True, slots=True)
class CutRule:
    """A spacing of cuts as its source words it: per diameter or per centres; spacing in cm."""

    id: str
    ingredient: str
    least_ae_g_l: float
    most_ae_g_l: float
    least_frac: float
    most_frac: float
    rule: str
    spacing_cm: float
    least: int
    ml_per_cut: float
    source: str
    place: str
    grade: Grade


@dataclass(frozen=True, slots=True)
class Tool:
    """A tool: wetting depth, waste at the edge, smallest dose, share that drips."""

    id: str
    depth_ml_cm2: Cited
    waste_frac: Cited
    smallest_ml: Cited
    drip_low_frac: Cited
    drip_high_frac: Cited
    oil_proof: bool


@dataclass(frozen=True, slots=True)
class Measure:
    """A measuring tool assumed where none is listed; integer microlitres."""

    id: str
    mark_ul: int
    capacity_ul: int
    shown: str


def _text(name: str) -> str:
    return (resources.files("stemward.handbook") / "data" / name).read_text("utf-8")


def _rows(name: str) -> Iterator[tuple[str, dict[str, str]]]:
    for number, row in enumerate(csv.DictReader(_text(name).splitlines()), 1):
        where = f"{name}:{number}"
        if not any(row.get(key) for key in ("source", "soil_source")):
            raise BrokenHandbook(f"{where}: 'source' is missing")
        yield where, row


def _grade(row: dict[str, str]) -> Grade:
    return cast("Grade", row.get("grade") or "published")


@cache
def data_hash() -> str:
    """SHA-256 over the packaged tables in order of their names."""
    folder = resources.files("stemward.handbook") / "data"
    digest = hashlib.sha256()
    for entry in sorted(folder.iterdir(), key=lambda e: e.name):
        if entry.name.endswith(".csv"):
            digest.update(entry.name.encode() + b"\0" + entry.read_bytes())
    return digest.hexdigest()


def species() -> dict[str, Species]:
    """Species by Latin name, from the raw table and the few kept by hand."""
    made = {}
    for name in ("species.csv", "species_more.csv"):
        for where, row in _rows(name):
            split = row["synonyms"].replace(" with hybrids", "").split(";")
            made[row["latin"]] = Species(
                row["latin"],
                row["common"],
                tuple(s.strip() for s in split if s.strip()),
                row["habit"],
                row["native"],
                row["stump_sprouts"],
                row["root_suckers"],
                row["spread"],
                row["clone"] == "yes",
                row["grafts"] == "yes",
                row["cut_first"],
                float(row["max_dbh_cm"]) if row["max_dbh_cm"] else None,
                row["cautions"],
                Cited(f"species.{row['latin']}", row["latin"], "", row["source"], where, _grade(row)),
            )
    return made


def defaults() -> dict[str, Cited]:
    """Default numbers by name."""
    return {
        row["id"]: Cited(
            f"default.{row['id']}",
            float(row["value"]),
            row["unit"],
            row["source"],
            row["place"] or where,
            _grade(row),
            row["note"],
        )
        for where, row in _rows("defaults.csv")
    }


def tools() -> dict[str, Tool]:
    """Tools by name."""

    def cited(row: dict[str, str], where: str, key: str, unit: str) -> Cited:
        return Cited(f"tool.{row['id']}.{key}", float(row[key]), unit, row["source"], where, _grade(row))

    return {
        row["id"]: Tool(
            row["id"],
            cited(row, where, "depth_ml_cm2", "ml_cm2"),
            cited(row, where, "waste_frac", "frac"),
            cited(row, where, "smallest_ml", "ml"),
            cited(row, where, "drip_low_frac", "frac"),
            cited(row, where, "drip_high_frac", "frac"),
            row["oil_proof"] == "yes",
        )
        for where, row in _rows("tools.csv")
    }


def measures() -> tuple[Measure, ...]:
    """Measuring tools assumed where none is listed."""
    return tuple(
        Measure(row["id"], int(row["mark_ul"]), int(row["capacity_ul"]), row["shown"])
        for _, row in _rows("measures.csv")
    )


NOT_TRANSLOCATED: tuple[str, ...] = ()
"""All ingredients of the table move within the plant (common practice, no source)."""


def ingredients() -> tuple[Ingredient, ...]:
    """Ingredients by form, in the table's order."""
    made = []
    for where, row in _rows("ingredients.csv"):
        name = f"{row['name']}, {row['form']}"
        made.append(
            Ingredient(
                row["name"],
                row["form"],
                cast("SoilActive", row["soil_active"]),
                Cited(
                    f"soil.{name}",
                    row["soil_active"],
                    "",
                    row["soil_source"],
                    where,
                    _from(row["soil_source"]),
                ),
                row["exuded"] == "yes",
                row["name"] not in NOT_TRANSLOCATED,
                _number(f"koc.{name}", row["koc_ml_g"], "ml_g", row["koc_source"], where, row["koc_grade"]),
                _number(f"dt50.{name}", row["dt50_days"], "d", row["dt50_source"], where, row["dt50_grade"]),
            )
        )
    return tuple(made)


def _from(source: str) -> Grade:
    return "memory" if "from memory" in source.lower() else "published"


def _number(name: str, value: str, unit: str, source: str, where: str, grade: str) -> Cited:
    return Cited(name, float(value) if value else "not found", unit, source, where, cast("Grade", grade))


def evidence() -> dict[tuple[str, str], tuple[Evidence, ...]]:
    """Rows by (Latin name, method)."""
    made: dict[tuple[str, str], list[Evidence]] = {}
    for where, row in _rows("evidence.csv"):
        low, high = row["low_frac"], row["high_frac"]
        made.setdefault((row["latin"], row["method"]), []).append(
            Evidence(
                where,
                row["latin"],
                row["method"],
                tuple(i for i in row["ingredients"].split(";") if i),
                float(low) if low else None,
                float(high) if high else None,
                row["strength"],
                row["rating"],
                row["rating_text"],
                row["season"],
                row["notes"],
                row["kind"],
                row["source"],
                row["place"],
            )
        )
    return {key: tuple(rows) for key, rows in made.items()}


def strengths() -> tuple[Strength, ...]:
    """Strengths of mix on record."""
    return tuple(
        Strength(
            row["id"],
            row["ingredient"],
            row["form"],
            row["method"],
            float(row["least_ae_g_l"]),
            float(row["most_ae_g_l"]),
            float(row["low_frac"]),
            float(row["usual_frac"]),
            float(row["high_frac"]),
            row["carrier"],
            row["source"],
            _grade(row),
        )
        for _, row in _rows("strengths.csv")
    )


def cut_rules() -> tuple[CutRule, ...]:
    """Spacing rules in the order in which they are tried."""
    return tuple(
        CutRule(
            row["id"],
            row["ingredient"],
            float(row["least_ae_g_l"]),
            float(row["most_ae_g_l"]),
            float(row["least_frac"]),
            float(row["most_frac"]),
            row["rule"],
            float(row["spacing_cm"]),
            int(row["least"]),
            float(row["ml_per_cut"]),
            row["source"],
            row["place"] or where,
            _grade(row),
        )
        for where, row in _rows("cut_rules.csv")
    )


def weak() -> tuple[tuple[str, str, str, float | None, Cited], ...]:
    """Resistant or weak pairs: plant or genus, method, ingredient, up to which share, and who says so."""
    return tuple(
        (
            row["latin"],
            row["method"],
            row["ingredient"],
            float(row["up_to_frac"]) if row["up_to_frac"] else None,
            Cited(f"weak.{where}", row["note"], "", row["source"], where, _grade(row)),
        )
        for where, row in _rows("weak.csv")
    )


def gear() -> dict[str, tuple[str, ...]]:
    """What else each piece of equipment serves for."""
    return {row["item"]: tuple(row["also_serves_for"].split(";")) for _, row in _rows("gear.csv")}


@cache
def states() -> dict[str, tuple[str, bool]]:
    """Postal code to name and whether the state is known to be stricter."""
    return {row["code"]: (row["name"], row["strict"] == "yes") for _, row in _rows("states.csv")}
