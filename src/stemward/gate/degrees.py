"""Are coordinates metres, as meant, or degrees of longitude and latitude?"""

from typing import Literal

import numpy as np
from numpy.typing import NDArray

SMALLEST_TRACT_M = 0.5
"""Places that all lie within half a metre are no tract; half a degree is 40 km and more."""


def looks_like_degrees(
    x: NDArray[np.float64], y: NDArray[np.float64], written_finely: bool
) -> Literal["no", "maybe", "sure"]:
    """Whether coordinates are degrees. written_finely: all have five decimals or more, as degrees do.

    sure: two or more different places that would lie within half a metre. maybe: they could be both.
    """
    x, y = x[np.isfinite(x)], y[np.isfinite(y)]
    if not written_finely or not x.size or not y.size:
        return "no"
    if np.abs(x).max() > 180 or np.abs(y).max() > 90:
        return "no"
    spans = float(np.ptp(x)), float(np.ptp(y))
    return "sure" if 0 < max(spans) < SMALLEST_TRACT_M else "maybe"
