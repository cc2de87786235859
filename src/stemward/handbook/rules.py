"""Cut spacing, mix strengths, tools, protective equipment and oak-wilt months."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.tables import Row, cite, cite_value, figure, parts, read_table
from stemward.handbook.values import Caution, CutRule, Gear, Strength, Tool, WiltMonths, frozen
from stemward.kinds import Cited

SAME = 1e-6
"""Relative difference that is taken for none when a figure is held against the end of a range."""


@dataclass(frozen=True, slots=True)
class Range:
    """What a row is for: ingredient ("" for any), product strength (g ae/L), share of product in the mix."""

    ingredient: str
    strength_ae_g_l: tuple[float | None, float | None]
    concentration_frac: tuple[float | None, float | None] = (None, None)

    def fits(self, ingredient: str, strength_ae_g_l: float, concentration_frac: float | None = None) -> bool:
        """True if the row is for this ingredient, strength and, where given, concentration."""
        return (
            self.ingredient in ("", ingredient)
            and _within(strength_ae_g_l, self.strength_ae_g_l)
            and (concentration_frac is None or _within(concentration_frac, self.concentration_frac))
        )


def _within(value: float, ends: tuple[float | None, float | None]) -> bool:
    low, high = ends
    return (low is None or value >= low * (1 - SAME)) and (high is None or value <= high * (1 + SAME))


def _strength_ends(row: Row) -> tuple[float | None, float | None]:
    return figure(row, "strength_low_ae_g_l"), figure(row, "strength_high_ae_g_l")


def load_cut_rules(folder: Path) -> tuple[tuple[Range, CutRule], ...]:
    """Cut rules with what each is for, in the table's order; the last one is for anything."""
    return tuple(
        (
            Range(
                row["ingredient"],
                _strength_ends(row),
                (figure(row, "concentration_low_frac"), figure(row, "concentration_high_frac")),
            ),
            CutRule(
                row["id"],
                row["rule"],  # type: ignore[arg-type]
                float(row["spacing_cm"]),
                int(row["least"]),
                float(row["ml_per_cut"]),
                row["typed"],
                row["source"],
                row["place"],
                row["grade"],  # type: ignore[arg-type]
                row["note"],
            ),
        )
        for row in read_table(folder, "cut_rules.csv")
    )


def pick_cut_rule(
    rules: tuple[tuple[Range, CutRule], ...],
    ingredient: str,
    strength_ae_g_l: float,
    concentration_frac: float,
) -> CutRule:
    """The first rule that fits; the general one is last and fits anything."""
    return next(rule for of, rule in rules if of.fits(ingredient, strength_ae_g_l, concentration_frac))


def load_strengths(folder: Path) -> tuple[tuple[Range, str, str, Strength], ...]:
    """Strengths with what each is for: range, form, method."""
    return tuple(
        (
            Range(row["ingredient"], _strength_ends(row)),
            row["form"],
            row["method"],
            Strength(
                row["id"],
                float(row["low_frac"]),
                float(row["usual_frac"]),
                float(row["high_frac"]),
                row["carrier"],
                cite(row, row["id"], float(row["usual_frac"]), "frac"),
            ),
        )
        for row in read_table(folder, "strengths.csv")
    )


def pick_strength(
    rows: tuple[tuple[Range, str, str, Strength], ...],
    ingredient: str,
    form: str,
    method: str,
    strength_ae_g_l: float,
) -> Strength | None:
    """The first strength that fits. Amines such as isopropylamine count as salts where a row says salt."""
    salt_like = ("salt", "amine") if form == "amine" else (form,)
    for of, row_form, row_method, strength in rows:
        if row_method == method and row_form in salt_like and of.fits(ingredient, strength_ae_g_l):
            return strength
    return None


def load_tools(folder: Path) -> Mapping[str, Tool]:
    """Tools by name, in the table's order."""
    values: dict[str, dict[str, Cited]] = {}
    depths: dict[str, dict[str, Cited]] = {}
    for row in read_table(folder, "tools.csv"):
        if row["surface"]:
            depths.setdefault(row["tool"], {})[row["surface"]] = cite_value(row)
        else:
            values.setdefault(row["tool"], {})[row["quantity"]] = cite_value(row)
    return frozen(
        {
            name: Tool(
                name,
                frozen(depths[name]),
                own["waste_frac"],
                own["smallest_ml"],
                own.get("ml_per_stroke"),
                own["oil_proof"],
                own["drip_low_frac"],
                own["drip_high_frac"],
            )
            for name, own in values.items()
        }
    )


def load_cautions(folder: Path) -> tuple[Caution, ...]:
    """The usual cautions, in the table's order."""
    return tuple(
        Caution(
            row["id"],
            row["stage"],  # type: ignore[arg-type]
            row["topic"],
            row["fact"],
            cite(row, f"caution.{row['id']}", row["fact"]),
        )
        for row in read_table(folder, "cautions.csv")
    )


def load_gear(folder: Path) -> Mapping[str, Gear]:
    """Protective equipment by name. What an item serves for counts only where it is not from memory."""
    return frozen(
        {
            row["id"]: Gear(
                row["id"],
                row["body"],
                () if row["grade"] == "memory" else parts(row["serves_for"]),
                row["usual"] == "yes",
                row["saw"] == "yes",
                row["meaning"],
                cite(row, f"gear.{row['id']}", row["id"]),
            )
            for row in read_table(folder, "gear.csv")
        }
    )


def load_wilt(folder: Path) -> Mapping[str, WiltMonths]:
    """Oak-wilt months by state."""
    return frozen(
        {
            row["state"]: WiltMonths(
                _month_day(row["first"]),
                _month_day(row["last"]),
                cite(row, f"wilt.{row['state']}", f"{row['first']} to {row['last']}"),
            )
            for row in read_table(folder, "wilt.csv")
        }
    )


def _month_day(text: str) -> tuple[int, int]:
    month, day = text.split("-")
    return int(month), int(day)
