"""Quick sums that need no tract: how much some stems take, and how much goes into a bottle."""

from dataclasses import dataclass

import numpy as np

from stemward.handbook import Book
from stemward.kinds import Cited
from stemward.plan.mixing import UL_PER_ML
from stemward.reckon import dose, mix
from stemward.units import convert


@dataclass(frozen=True, slots=True)
class QuickDose:
    """What is asked: way, sizes as typed and in cm, stems of each size, tool, ring, and the jug for cuts."""

    how: str
    typed: tuple[str, ...]
    diameter_cm: tuple[float, ...]
    count: int
    tool: str
    ring_cm: float | None
    ingredient: str
    strength_ae_g_l: float
    concentration_frac: float


@dataclass(frozen=True, slots=True)
class DoseRow:
    """One size: mL of mix for each stem, and its cuts or the share of the face that is wetted."""

    typed: str
    each_ml: float
    cuts: int | None
    wet_frac: float


@dataclass(frozen=True, slots=True)
class DoseDone:
    """The answer: a row a size, the total with its spread, and the values it leans on."""

    rows: tuple[DoseRow, ...]
    need_ml: float
    low_ml: float
    high_ml: float
    leans_on: tuple[Cited, ...]


def quick_dose(asked: QuickDose, book: Book) -> DoseDone:
    """Work out a quick dose by the same formulae and defaults as a plan."""
    diameter_cm = np.asarray(asked.diameter_cm)
    if asked.how == "cut stump":
        each_ml, cuts, wet, leans_on = _stumps(asked, diameter_cm, book)
    else:
        each_ml, cuts, wet, leans_on = _cuts(asked, diameter_cm, book)
    rows = tuple(
        DoseRow(typed, float(ml), None if n < 0 else int(n), float(share))
        for typed, ml, n, share in zip(asked.typed, each_ml, cuts, wet, strict=True)
    )
    need_ml = float(each_ml.sum()) * asked.count
    spread = book.defaults["spread_factor"]
    return DoseDone(rows, need_ml, need_ml / spread.number, need_ml * spread.number, (*leans_on, spread))


def _stumps(
    asked: QuickDose, diameter_cm: np.ndarray, book: Book
) -> tuple[np.ndarray, np.ndarray, np.ndarray, tuple[Cited, ...]]:
    tool, whole, ring = book.tools[asked.tool], book.defaults["whole_up_to_cm"], book.defaults["ring_cm"]
    ring_cm = asked.ring_cm if asked.ring_cm is not None else ring.number
    area_cm2 = dose.wet_face_cm2(diameter_cm, whole.number, ring_cm)
    each_ml = dose.wetted_ml(
        area_cm2,
        dose.face_area_cm2(book.defaults["small_stem_cm"].number),
        tool.depth_ml_cm2.number,
        tool.waste_frac.number,
        book.defaults["use_rate"].number,
        tool.smallest_ml.number,
    )
    share = dose.wet_share_frac(diameter_cm, whole.number, ring_cm)
    leans = (whole, tool.depth_ml_cm2) if asked.ring_cm is not None else (whole, ring, tool.depth_ml_cm2)
    return np.asarray(each_ml), np.full(len(diameter_cm), -1), np.asarray(share), leans


def _cuts(
    asked: QuickDose, diameter_cm: np.ndarray, book: Book
) -> tuple[np.ndarray, np.ndarray, np.ndarray, tuple[Cited, ...]]:
    rule = book.cut_rule(asked.ingredient, asked.strength_ae_g_l, asked.concentration_frac)
    inch = convert(1.0, "in", "cm")
    if rule.rule == "per diameter":
        cuts = dose.cuts_by_diameter(diameter_cm / inch, rule.spacing_cm / inch, rule.least)
    else:
        cuts = dose.cuts_by_centres(diameter_cm / inch, rule.spacing_cm / inch)
    leans = (
        Cited(f"{rule.id} spacing", rule.spacing_cm, "cm", rule.source, rule.place, rule.grade),
        Cited(f"{rule.id} per cut", rule.ml_per_cut, "ml", rule.source, rule.place, rule.grade),
    )
    each_ml = np.asarray(dose.cut_dose_ml(cuts, rule.ml_per_cut), float)
    return each_ml, np.asarray(cuts), np.zeros(len(diameter_cm)), leans


@dataclass(frozen=True, slots=True)
class PouredPart:
    """One thing poured: what, how many mL, and how often which measure is filled."""

    what: str
    ml: float
    measure: str
    fills: int


@dataclass(frozen=True, slots=True)
class MixDone:
    """What to pour, or why it cannot be measured and which measure would do."""

    parts: tuple[PouredPart, ...] = ()
    mixed_ml: float = 0.0
    share: float = 0.0
    refused: str = ""
    would_do: str = ""


def quick_mix(amount_ml: float, share: float, bottle_ml: float, book: Book) -> MixDone:
    """Pour a mix of at least `amount_ml` with the usual measures, at the share or up to 5 % of it under."""
    measures = tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in book.measures)
    low = share if share >= 1 else share * (1 - book.defaults["lower_tolerance_frac"].number)
    over_frac = book.defaults["most_over_frac"].number
    done = mix.round_batch(
        round(amount_ml * UL_PER_ML), low, share, measures, measures, round(bottle_ml * UL_PER_ML), over_frac
    )
    if isinstance(done, mix.Refusal):
        return MixDone(refused=done.reason, would_do=done.would_do.name if done.would_do else "a larger bottle")
    return MixDone(
        tuple(
            PouredPart(p.name, p.amount_ul / UL_PER_ML, p.measure.name if p.measure else "", p.fills)
            for p in done.parts
            if p.amount_ul
        ),
        done.mixed_ul / UL_PER_ML,
        done.concentration_frac,
    )
