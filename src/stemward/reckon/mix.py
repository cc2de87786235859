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


@dataclass(frozen=True, slots=True)
class Extra:
    """What else goes into the vessel (partner, surfactant, dye) and its least and greatest share of the mix.

    needed: without a whole mark in its range the batch cannot be poured; otherwise it is left out.
    """

    name: str
    low_frac: float
    high_frac: float
    needed: bool = False


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
    extras: Sequence[Extra] = (),
) -> Batch | Refusal:
    """The batch that is poured with fewest fills, then smallest, in whole marks.

    low_frac, high_frac: least and greatest share of product in the finished mix. extras take the place of carrier,
    each in whole marks of the finest product measure; dye is left out of a product used undiluted. Mixed is at
    least assigned, at most `most_over_frac` more and never more than the vessel holds. Fills of product and carrier
    count.
    """
    if not product_measures or (high_frac < 1 and not carrier_measures):
        return Refusal("no_measures", None)
    most_ul = min(math.floor(assigned_ul * (1 + most_over_frac)), capacity_ul)
    if most_ul < assigned_ul:
        return Refusal("vessel_too_small", None)
    finest = min(product_measures, key=lambda m: m.mark_ul)
    more = () if low_frac >= 1 else tuple(extras)
    best: _Pour | None = None
    for product_measure in product_measures:
        for carrier_measure in carrier_measures if low_frac < 1 else (product_measure,):
            wanted = _Wanted(assigned_ul, most_ul, low_frac, high_frac, product_measure, carrier_measure, finest, more)
            poured = _best_pour(wanted)
            if poured is not None and (best is None or poured[:2] < best[:2]):
                best = poured
    if best is None:
        return Refusal("no_marks", _would_do(assigned_ul, most_ul, low_frac, high_frac, product_measures, more))
    _, mixed_ul, parts = best
    share = parts[0].amount_ul / mixed_ul
    return Batch(assigned_ul, mixed_ul, parts, share)


@dataclass(frozen=True, slots=True)
class _Wanted:
    assigned_ul: int
    most_ul: int
    low_frac: float
    high_frac: float
    product: Measure
    carrier: Measure
    finest: Measure
    extras: tuple[Extra, ...]


def _ceil_to(amount: float, mark_ul: int) -> int:
    return math.ceil(amount / mark_ul - 1e-9) * mark_ul


def _fills(amount_ul: int, measure: Measure) -> int:
    return -(-amount_ul // measure.capacity_ul)


def _best_pour(wanted: _Wanted) -> _Pour | None:
    best: _Pour | None = None
    for amount_ul, rest_ul, more in _pours(wanted):
        mixed_ul = amount_ul + rest_ul + sum(part.amount_ul for part in more)
        product = Part("product", amount_ul, wanted.product, _fills(amount_ul, wanted.product))
        carrier = Part("carrier", rest_ul, wanted.carrier if rest_ul else None, _fills(rest_ul, wanted.carrier))
        fills = product.fills + carrier.fills
        if best is None or (fills, mixed_ul) < best[:2]:
            best = (fills, mixed_ul, (product, carrier, *more))
    return best


def _pours(wanted: _Wanted) -> Iterator[tuple[int, int, tuple[Part, ...]]]:
    """For every amount of product in marks, the least carrier in marks that fits it, and what else goes in.

    More carrier than the least never takes fewer fills, so the least is all that need be looked at.
    """
    low, high, mark_ul = wanted.low_frac, wanted.high_frac, wanted.product.mark_ul
    first = max(_ceil_to(low * wanted.assigned_ul, mark_ul), mark_ul)
    for amount_ul in range(first, math.floor(high * wanted.most_ul + 1e-6) + 1, mark_ul):
        least_mix_ul = max(wanted.assigned_ul, amount_ul / high)
        more = _extra_parts(least_mix_ul, wanted)
        if more is None:
            continue
        extra_ul = sum(part.amount_ul for part in more)
        rest_ul = _ceil_to(max(least_mix_ul - amount_ul - extra_ul, 0.0), wanted.carrier.mark_ul)
        mixed_ul = amount_ul + rest_ul + extra_ul
        within = low * mixed_ul * (1 - _SAME) <= amount_ul <= high * mixed_ul * (1 + _SAME)
        if within and mixed_ul <= wanted.most_ul and _shares_hold(more, mixed_ul, wanted.extras):
            yield amount_ul, rest_ul, more


def _extra_parts(mixed_ul: float, wanted: _Wanted) -> tuple[Part, ...] | None:
    """The extras for a mix of about that size; None where one that is needed has no whole mark in its range."""
    parts = []
    for extra in wanted.extras:
        amount_ul = max(_ceil_to(extra.low_frac * mixed_ul, wanted.finest.mark_ul), wanted.finest.mark_ul)
        if amount_ul <= extra.high_frac * mixed_ul * (1 + _SAME):
            parts.append(Part(extra.name, amount_ul, wanted.finest, _fills(amount_ul, wanted.finest)))
        elif extra.needed:
            return None
    return tuple(parts)


def _shares_hold(parts: Sequence[Part], mixed_ul: int, extras: Sequence[Extra]) -> bool:
    """True if what is needed is still within its range once the carrier has been rounded up."""
    needed = {extra.name: extra for extra in extras if extra.needed}
    return all(
        needed[part.name].low_frac * mixed_ul * (1 - _SAME) <= part.amount_ul for part in parts if part.name in needed
    )


def _would_do(
    assigned_ul: int,
    most_ul: int,
    low_frac: float,
    high_frac: float,
    owned: Sequence[Measure],
    extras: tuple[Extra, ...],
) -> Measure | None:
    """The measure at hand that does when it is used for product and carrier alike."""
    for measure in owned:
        if _best_pour(_Wanted(assigned_ul, most_ul, low_frac, high_frac, measure, measure, measure, extras)):
            return measure
    return None


def acid_equivalent(active_ingredient: float, ratio: float) -> float:
    """Acid equivalent in a mass of a salt or ester, same unit; ratio: of molar masses, never inferred from a name."""
    return active_ingredient * ratio
