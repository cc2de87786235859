"""Paces, seasons, hazards, soils and state rules: what bears on when and how work is done."""

from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.tables import cite, figure, parts, read_table
from stemward.handbook.values import MonthDay, StateRule
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class Pace:
    """Stems an hour by a method over a range of sizes: a band, never one figure."""

    method: str
    low_cm: float
    high_cm: float
    low_per_hour: float
    high_per_hour: float
    cited: Cited


@dataclass(frozen=True, slots=True)
class Season:
    """Part of a year that is best or poor for a method, or for some plants whatever the method; may wrap."""

    method: str
    plants: tuple[str, ...]
    first: MonthDay
    last: MonthDay
    best: bool
    why: str
    cited: Cited

    def holds(self, day: MonthDay) -> bool:
        """True if the day falls within it."""
        if self.first <= self.last:
            return self.first <= day <= self.last
        return day >= self.first or day <= self.last


@dataclass(frozen=True, slots=True)
class Hazard:
    """What a plant does to people, stock or the ground it is dragged over."""

    plants: tuple[str, ...]
    hazard: str
    what: str
    cited: Cited


@dataclass(frozen=True, slots=True)
class SoilClass:
    """Averages of a texture class; None where nothing is known."""

    texture: str
    porosity: float | None
    field_capacity: float | None
    bulk_density_g_cm3: float | None
    cited: Cited


def load_paces(folder: Path) -> tuple[Pace, ...]:
    """Paces, in the table's order."""
    return tuple(
        Pace(
            row["method"], float(row["low_cm"]), figure(row, "high_cm") or float("inf"), float(row["low_per_hour"]),
            float(row["high_per_hour"]), cite(row, row["id"], float(row["low_per_hour"]), "per_h"),
        )
        for row in read_table(folder, "hours.csv")
    )  # fmt: skip


def load_seasons(folder: Path) -> tuple[Season, ...]:
    """Seasons, in the table's order."""
    return tuple(
        Season(
            row["method"], parts(row["plants"]), _day(row["first"]), _day(row["last"]), row["kind"] == "best",
            row["why"], cite(row, row["id"], f"{row['first']} to {row['last']}"),
        )
        for row in read_table(folder, "seasons.csv")
    )  # fmt: skip


def season_of(seasons: tuple[Season, ...], latin: str, method: str) -> tuple[Season, ...]:
    """What is on record for a plant and method: rows that name the plant stand in for general ones of their kind."""
    fits = [s for s in seasons if s.method in ("", method) and (not s.plants or latin in s.plants)]
    own = [s for s in fits if s.plants]
    return tuple(own + [s for s in fits if not s.plants and not any(o.best == s.best for o in own)])


def load_state_rules(folder: Path) -> tuple[StateRule, ...]:
    """Dated rules by state and topic."""
    return tuple(
        StateRule(
            row["id"], row["state"], row["topic"],
            f"{row['what'][:1].upper()}{row['what'][1:]}. Ask {row['ask']} (as of {row['as_of']}).",
            cite(row, row["id"], row["what"]),
        )
        for row in read_table(folder, "state_rules.csv")
    )  # fmt: skip


def load_hazards(folder: Path) -> tuple[Hazard, ...]:
    """Hazards, in the table's order."""
    return tuple(
        Hazard(parts(row["plants"]), row["hazard"], row["what"], cite(row, row["id"], row["what"]))
        for row in read_table(folder, "hazards.csv")
    )


def load_soils(folder: Path) -> tuple[SoilClass, ...]:
    """Texture classes."""
    return tuple(
        SoilClass(
            row["texture"], figure(row, "porosity"), figure(row, "field_capacity"), figure(row, "bulk_density_g_cm3"),
            cite(row, row["id"], row["texture"]),
        )
        for row in read_table(folder, "soils.csv")
    )  # fmt: skip


def _day(text: str) -> MonthDay:
    month, day = text.split("-")
    return int(month), int(day)
