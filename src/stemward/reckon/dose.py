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
    depth_ml_cm2: float,
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
    return _floats(np.maximum(depth_ml_cm2 * (area + past_edge_cm2) * use_rate, smallest_ml))


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


def ae_g(mix_ml: ArrayLike, ae_g_l: ArrayLike) -> Floats:
    """Acid equivalent in a volume of mix, g. ae_g_l: grams per litre of mix."""
    return _floats(np.asarray(mix_ml, float) * np.asarray(ae_g_l, float) / 1000)
