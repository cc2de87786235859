"""What goes into the vessel: shares, both readings of a ratio, and batches in marks a person can pour."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemward.units.table import FL_OZ_ML, GAL_ML, LB_GAL_G_L


def product_ml(mix_ml: float, concentration_frac: float) -> float:
    """Product in a volume of mix, mL; concentration is product over finished mix by volume."""
    return mix_ml * concentration_frac


def mix_ae_g_l(concentration_frac: float, strength_ae_g_l: float) -> float:
    """Acid equivalent in finished mix, g/L."""
    return concentration_frac * strength_ae_g_l


def strength_ae_g_l(lb_per_gal: float) -> float:
    """Strength of a product from pounds per US gallon, g/L."""
    return lb_per_gal * float(LB_GAL_G_L)


def concentration_for(wanted_ae_g_l: float, strength_g_l: float) -> float:
    """Share of product that gives a wanted acid equivalent per litre of mix."""
    return wanted_ae_g_l / strength_g_l


def ratio_readings(product_parts: float, carrier_parts: float) -> tuple[float, float]:
    """Both readings of a ratio a:b as shares: a parts added to b, and a parts in b. 1:3 is 25 % or 33 %."""
    return product_parts / (product_parts + carrier_parts), product_parts / carrier_parts


def ounces_per_gallon_readings(fl_oz: float) -> tuple[float, float]:
    """Both readings of ounces per gallon as shares: to make a gallon, added to one. 32 is 25 % or 20 %."""
    per_gallon = float(GAL_ML / FL_OZ_ML)
    return fl_oz / per_gallon, fl_oz / (per_gallon + fl_oz)


@dataclass(frozen=True, slots=True)
class Measure:
    """A measuring tool: its smallest mark and what it holds, integer microlitres."""

    name: str
    mark_ul: int
    capacity_ul: int


@dataclass(frozen=True, slots=True)
class Part:
    """One thing poured: how much, with which measure, filled how often."""

    name: str
    amount_ul: int
    measure: Measure | None
    fills: int


@dataclass(frozen=True, slots=True)
class Batch:
    """One bottle: assigned to stems, really mixed, its parts (they add up exactly), the product's share."""

    assigned_ul: int
    mixed_ul: int
    parts: tuple[Part, ...]
    concentration_frac: float


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why a batch cannot be poured (no_marks, vessel_too_small, no_measures), and a measure that would do."""

    reason: str
    would_do: Measure | None


_SAME = 1e-12
_Pour = tuple[int, int, tuple[Part, ...]]
"""Fills, mixed microlitres, parts."""


def split_assigned(need_ul: int, capacity_ul: int) -> list[int]:
    """A need split over bottles: full ones first, the last with what is left. The sum is the need exactly."""
    if need_ul <= 0:
        return []
    full, rest = divmod(need_ul, capacity_ul)
    return [capacity_ul] * full + ([rest] if rest else [])


def round_batch(
    assigned_ul: int,
    low_frac: float,
    high_frac: float,
    product_measures: Sequence[Measure],
    carrier_measures: Sequence[Measure],
    capacity_ul: int,
    most_over_frac: float,
    extras: Sequence[tuple[str, float, float]] = (),
) -> Batch | Refusal:
    """The batch that is poured with fewest fills, then smallest, in whole marks.

    low_frac, high_frac: least and greatest share of product in the finished mix. extras: what else goes in
    (dye, adjuvant) as name, least and greatest share, in whole marks of the finest product measure; left out
    where no whole mark falls within its range, and where the product is used undiluted. Mixed is at least
    assigned, at most `most_over_frac` more and never more than the vessel holds. Fills of product and carrier count.
    """
    if not product_measures or (high_frac < 1 and not carrier_measures):
        return Refusal("no_measures", None)
    most_ul = min(math.floor(assigned_ul * (1 + most_over_frac)), capacity_ul)
    if most_ul < assigned_ul:
        return Refusal("vessel_too_small", None)
    finest = min(product_measures, key=lambda m: m.mark_ul)
    more = [] if low_frac >= 1 else [(finest, *extra) for extra in extras]
    best: _Pour | None = None
    for product_measure in product_measures:
        for carrier_measure in carrier_measures if low_frac < 1 else (product_measure,):
            poured = _best_pour(assigned_ul, most_ul, low_frac, high_frac, product_measure, carrier_measure, more)
            if poured is not None and (best is None or poured[:2] < best[:2]):
                best = poured
    if best is None:
        return Refusal("no_marks", _would_do(assigned_ul, most_ul, low_frac, high_frac, product_measures))
    _, mixed_ul, parts = best
    share = parts[0].amount_ul / mixed_ul
    return Batch(assigned_ul, mixed_ul, parts, share)


def _ceil_to(amount: float, mark_ul: int) -> int:
    return math.ceil(amount / mark_ul - 1e-9) * mark_ul


def _fills(amount_ul: int, measure: Measure) -> int:
    return -(-amount_ul // measure.capacity_ul)


def _best_pour(
    assigned_ul: int,
    most_ul: int,
    low_frac: float,
    high_frac: float,
    product: Measure,
    carrier: Measure,
    extras: Sequence[tuple[Measure, str, float, float]] = (),
) -> _Pour | None:
    best: _Pour | None = None
    for amount_ul, rest_ul in _pours(assigned_ul, most_ul, low_frac, high_frac, product, carrier):
        fills = _fills(amount_ul, product) + _fills(rest_ul, carrier)
        if best is not None and (fills, amount_ul + rest_ul) >= best[:2]:
            continue
        parts = (
            Part("product", amount_ul, product, _fills(amount_ul, product)),
            Part("carrier", rest_ul, carrier if rest_ul else None, _fills(rest_ul, carrier)),
            *_extra_parts(amount_ul + rest_ul, extras),
        )
        mixed_ul = sum(part.amount_ul for part in parts)
        if mixed_ul <= most_ul and amount_ul >= low_frac * mixed_ul * (1 - _SAME):
            best = (fills, mixed_ul, parts)
    return best


def _pours(
    assigned_ul: int, most_ul: int, low_frac: float, high_frac: float, product: Measure, carrier: Measure
) -> Iterator[tuple[int, int]]:
    """For every amount of product in marks, the least carrier in marks that fits it.

    More carrier than the least never takes fewer fills, so the least is all that need be looked at.
    """
    first = max(_ceil_to(low_frac * assigned_ul, product.mark_ul), product.mark_ul)
    for amount_ul in range(first, math.floor(high_frac * most_ul + 1e-6) + 1, product.mark_ul):
        least_mix_ul = max(assigned_ul, amount_ul / high_frac)
        rest_ul = _ceil_to(max(least_mix_ul - amount_ul, 0.0), carrier.mark_ul)
        mixed_ul = amount_ul + rest_ul
        within = low_frac * mixed_ul * (1 - _SAME) <= amount_ul <= high_frac * mixed_ul * (1 + _SAME)
        if within and mixed_ul <= most_ul:
            yield amount_ul, rest_ul


def _would_do(
    assigned_ul: int, most_ul: int, low_frac: float, high_frac: float, owned: Sequence[Measure]
) -> Measure | None:
    """The measure at hand that does when it is used for product and carrier alike."""
    for measure in owned:
        if _best_pour(assigned_ul, most_ul, low_frac, high_frac, measure, measure) is not None:
            return measure
    return None


def _extra_parts(mixed_ul: int, extras: Sequence[tuple[Measure, str, float, float]]) -> Iterator[Part]:
    for measure, name, low, high in extras:
        amount_ul = max(_ceil_to(low * mixed_ul, measure.mark_ul), measure.mark_ul)
        if amount_ul <= high * mixed_ul:
            yield Part(name, amount_ul, measure, _fills(amount_ul, measure))
