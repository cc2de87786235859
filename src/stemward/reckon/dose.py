"""How much finished mix a stem takes. Metric; arrays in, arrays out, scalars accepted."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
_EXACT = 1e-9
"""Tolerance under which a quotient counts as whole: 6 / 3 must not become three cuts."""


def _floats(values: ArrayLike) -> Floats:
    return np.asarray(values, float)


def face_area_cm2(diameter_cm: ArrayLike) -> Floats:
    """Area of a round cut face, cm2, any shape."""
    return _floats(np.pi * np.square(np.asarray(diameter_cm, float)) / 4)


def ring_area_cm2(diameter_cm: ArrayLike, ring_cm: ArrayLike) -> Floats:
    """Area of the outer ring of a cut face; the whole face where the ring meets in the middle. cm2.

    Kochenderfer et al. 2006, North. J. Appl. For. 23(3):155-165 treated an outer ring of 2 in.
    """
    d = np.asarray(diameter_cm, float)
    heart_cm = np.maximum(d - 2 * np.asarray(ring_cm, float), 0.0)
    return _floats(np.pi * (np.square(d) - np.square(heart_cm)) / 4)


def wet_face_cm2(diameter_cm: ArrayLike, whole_up_to_cm: float, ring_cm: float) -> Floats:
    """Area to wet on a stump: the whole face up to a diameter, beyond it the outer ring. cm2.

    Never falls as the diameter grows unless whole_up_to_cm > 2 x ring_cm; see `dose_can_fall`.
    """
    d = np.asarray(diameter_cm, float)
    return np.where(d <= whole_up_to_cm + _EXACT, face_area_cm2(d), ring_area_cm2(d, ring_cm))


def dose_can_fall(whole_up_to_cm: float, ring_cm: float) -> bool:
    """True if a label's own figures make a larger stump take less than a smaller one; then say so."""
    return whole_up_to_cm > 2 * ring_cm + _EXACT


def wet_share_frac(diameter_cm: ArrayLike, whole_up_to_cm: float, ring_cm: float) -> Floats:
    """Share of the face that is wetted, 0 to 1."""
    return wet_face_cm2(diameter_cm, whole_up_to_cm, ring_cm) / face_area_cm2(diameter_cm)


def wetted_ml(
    area_cm2: ArrayLike,
    small_area_cm2: ArrayLike,
    depth_ml_cm2: ArrayLike,
    waste_frac: float,
    use_rate: float = 1.0,
    smallest_ml: float = 0.0,
) -> Floats:
    """Mix that wets an area, mL: depth x (area + waste) x use rate, never under the tool's smallest dose.

    small_area_cm2: face of the stem up to which liquid goes past the edge. The waste is a share of the area
    up to that size and stays what it is beyond, so that the dose never falls as stems grow.
    depth_ml_cm2: engineering guess, no source. use_rate: the person's own, 1 when unknown.
    """
    area = np.asarray(area_cm2, float)
    past_edge_cm2 = waste_frac * np.minimum(area, np.asarray(small_area_cm2, float))
    return _floats(np.maximum(np.asarray(depth_ml_cm2, float) * (area + past_edge_cm2) * use_rate, smallest_ml))


def _whole(quotient: Floats) -> NDArray[np.int64]:
    return np.ceil(quotient - _EXACT).astype(np.int64)


def cuts_by_diameter(
    diameter: ArrayLike, per_cut: float, least: float = 1, half_digit: ArrayLike = 0.0
) -> NDArray[np.int64]:
    """Cuts round a stem, one for each `per_cut` of diameter, at least `least`; same length unit throughout.

    half_digit: half of the last digit written, taken off first, so that a figure rounded up gains no cut.
    Penn State Extension, hack-and-squirt fact sheet (one per inch, at least two); PNW Weed Management
    Handbook, rev. 2022 (one per three inches for strong imazapyr).
    """
    d = np.asarray(diameter, float) - np.asarray(half_digit, float)
    return np.maximum(_whole(np.maximum(d, 0.0) / per_cut), int(least))


def cuts_by_centres(diameter: ArrayLike, centres: float) -> NDArray[np.int64]:
    """Cuts round a stem by the distance between their centres along the bark; same length unit. At least 1.

    PNW Weed Management Handbook, older table of spacings.
    """
    return np.maximum(_whole(np.pi * np.asarray(diameter, float) / centres), 1)


def cuts_by_gap(diameter: ArrayLike, cut_length: float, gap: float) -> NDArray[np.int64]:
    """Cuts round a stem by the gap between their edges; the cut length belongs to the tool. At least 1."""
    return np.maximum(_whole(np.pi * np.asarray(diameter, float) / (cut_length + gap)), 1)


def cut_dose_ml(cuts: ArrayLike, ml_per_cut: float) -> Floats:
    """Mix for a number of cuts, mL."""
    return np.asarray(cuts, float) * ml_per_cut


def bark_cm2(diameter_cm: ArrayLike, height_cm: float) -> Floats:
    """Bark round a stem up to a height, cm2: the band of basal bark, or a stump's side down to the ground.

    Check: 3 in through, 15 in high = 141.4 sq in (band height from the PNW Weed Management Handbook, rev. 2022).
    """
    return _floats(np.pi * np.asarray(diameter_cm, float) * height_cm)


def oil_stump_cm2(diameter_cm: ArrayLike, whole_up_to_cm: float, ring_cm: float, stump_height_cm: float) -> Floats:
    """What an oil mix wets on a stump, cm2: the face as with water, and bark and root collar down to the ground."""
    return wet_face_cm2(diameter_cm, whole_up_to_cm, ring_cm) + bark_cm2(diameter_cm, stump_height_cm)


def bark_depth_ml_cm2(
    diameter_cm: ArrayLike, smooth_ml_cm2: float, rough_ml_cm2: float, rough_from_cm: float
) -> Floats:
    """Wetting depth on bark, mL per cm2: smooth on young stems, rough beyond a size (engineering guess)."""
    return np.where(np.asarray(diameter_cm, float) < rough_from_cm, smooth_ml_cm2, rough_ml_cm2)


def crown_m2(height_m: ArrayLike, width_share: float) -> Floats:
    """Ground under a crown whose width is a share of its height (engineering guess), m2."""
    return _floats(np.pi / 4 * np.square(np.asarray(height_m, float) * width_share))


def sprays_ml(crown_m2: ArrayLike, volume_ml_m2: float, coverage_frac: float, use_rate: float = 1.0) -> Floats:
    """Mix that wets a crown from one side to the other, mL.

    volume_ml_m2: spray on the ground the crown covers; 50 to 100 gallons an acre for spot spraying, PNW Weed
    Management Handbook, older table of directed sprays. coverage_frac: share of the crown that is sprayed.
    """
    return _floats(np.asarray(crown_m2, float) * volume_ml_m2 * coverage_frac * use_rate)


def by_height_ml(height_m: ArrayLike, up_to_m: ArrayLike, ml: ArrayLike) -> Floats:
    """A person's own measured mL per plant by height class; taller than the last class takes the last figure.

    up_to_m, ml: class tops in rising order and the mL for each. ValueError if they do not go together.
    """
    tops, amounts = np.asarray(up_to_m, float), np.asarray(ml, float)
    if tops.shape != amounts.shape or tops.size == 0 or np.any(np.diff(tops) <= 0):
        raise ValueError("each height class needs one amount, in rising order of height")
    at = np.minimum(np.searchsorted(tops, np.asarray(height_m, float), side="left"), len(tops) - 1)
    return _floats(amounts[at])


def dry_product_g(mix_ml: float, product_g_l: float) -> float:
    """Dry product in a volume of mix, g; product_g_l: grams of product per litre of mix."""
    return mix_ml / 1000 * product_g_l


def dry_ai_g_l(product_g_l: float, content_frac: float) -> float:
    """Active ingredient in a mix of a dry product, g/L; content_frac: its share of the product's weight."""
    return product_g_l * content_frac


def strokes(mix_ml: ArrayLike, ml_per_stroke: float) -> NDArray[np.int64]:
    """Whole strokes of a tool that give at least an amount."""
    return _whole(np.asarray(mix_ml, float) / ml_per_stroke)


def ae_g(mix_ml: ArrayLike, ae_g_l: ArrayLike) -> Floats:
    """Acid equivalent in a volume of mix, g. ae_g_l: grams per litre of mix."""
    return _floats(np.asarray(mix_ml, float) * np.asarray(ae_g_l, float) / 1000)
