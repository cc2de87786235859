"""Stump and breast height: from one diameter to the other, and basal area."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray


def dbh_of(stump_diameter: ArrayLike, height_ft: float, factor: float, breast_ft: float = 4.5) -> NDArray[np.float64]:
    """DBH from the diameter at a height up the stump, same length unit.

    d(h) = DBH (1 + B (4.5 - h) / (h + 1)), Raile 1982, USDA Forest Service Res. Pap. NC-224; B by group of species.
    Fitted on trees; on saplings and shrubs it is stretched. ValueError above breast height.
    """
    return np.asarray(np.asarray(stump_diameter, float) / _swell(height_ft, factor, breast_ft), float)


def stump_of(dbh: ArrayLike, height_ft: float, factor: float, breast_ft: float = 4.5) -> NDArray[np.float64]:
    """Diameter at a height up the stump from DBH, same length unit (Raile 1982, as above)."""
    return np.asarray(np.asarray(dbh, float) * _swell(height_ft, factor, breast_ft), float)


def _swell(height_ft: float, factor: float, breast_ft: float) -> float:
    if not 0 <= height_ft <= breast_ft:
        raise ValueError("a stump is between the ground and breast height")
    return 1 + factor * (breast_ft - height_ft) / (height_ft + 1)


def stump_of_laasasenaho_cm(dbh_cm: float) -> float:
    """Stump diameter from DBH, cm: 2 + 1.25 DBH (Laasasenaho 1975, Finland)."""
    return 2 + 1.25 * dbh_cm


def basal_area_m2(diameter_cm: ArrayLike) -> NDArray[np.float64]:
    """Area of a stem's cross-section, m2."""
    return np.asarray(math.pi * np.square(np.asarray(diameter_cm, float) / 200), float)


def quadratic_mean(diameters: ArrayLike) -> float:
    """The diameter of the stem of mean cross-section, same unit."""
    return float(np.sqrt(np.mean(np.square(np.asarray(diameters, float)))))


def clump_diameter(diameters: ArrayLike) -> float:
    """The one stem with the cross-section of a whole clump, same unit."""
    return float(np.sqrt(np.sum(np.square(np.asarray(diameters, float)))))
