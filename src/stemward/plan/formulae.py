"""The formulae a plan may lean on, by name, so that every sum can be worked again from the plan alone."""

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stemward.reckon import dose, limits, mix

VERSION = 2
"""Raised whenever a formula's answer changes for the same inputs."""


def times(each: ArrayLike, count: ArrayLike) -> NDArray[np.float64]:
    """Element by element product, length n."""
    return np.asarray(np.asarray(each, float) * np.asarray(count, float), float)


def plus(one: ArrayLike, other: ArrayLike) -> NDArray[np.float64]:
    """Element by element sum, length n."""
    return np.asarray(np.asarray(one, float) + np.asarray(other, float), float)


def total(each: ArrayLike) -> float:
    """Sum of a column."""
    return float(np.sum(np.asarray(each, float)))


def spread_low(middle: float, factor: float) -> float:
    """The middle value divided by the spread factor."""
    return middle / factor


def spread_high(middle: float, factor: float) -> float:
    """The middle value times the spread factor."""
    return middle * factor


def with_recorded_g_m2(rate_g_m2: ArrayLike, recorded_g: ArrayLike, area_m2: ArrayLike) -> NDArray[np.float64]:
    """The load of each cluster once what the records say was used there lies on it as well. g/m2."""
    added = np.asarray(recorded_g, float) / np.asarray(area_m2, float)
    return np.asarray(np.asarray(rate_g_m2, float) + added, float)


def greatest(each: ArrayLike) -> float:
    """The greatest of a column, 0 for none."""
    return float(np.max(np.asarray(each, float), initial=0.0))


FORMULAE: Mapping[str, Callable[..., Any]] = {
    "wet_face_cm2": dose.wet_face_cm2,
    "face_area_cm2": dose.face_area_cm2,
    "wetted_ml": dose.wetted_ml,
    "cuts_by_diameter": dose.cuts_by_diameter,
    "cuts_by_centres": dose.cuts_by_centres,
    "cut_dose_ml": dose.cut_dose_ml,
    "bark_cm2": dose.bark_cm2,
    "bark_depth_ml_cm2": dose.bark_depth_ml_cm2,
    "crown_m2": dose.crown_m2,
    "sprays_ml": dose.sprays_ml,
    "plus": plus,
    "mix_ae_g_l": mix.mix_ae_g_l,
    "product_ml": mix.product_ml,
    "ae_g": dose.ae_g,
    "times": times,
    "total": total,
    "spread_low": spread_low,
    "spread_high": spread_high,
    "clusters": limits.clusters,
    "cluster_area_m2": limits.cluster_area_m2,
    "rate_g_m2": limits.rate_g_m2,
    "with_recorded_g_m2": with_recorded_g_m2,
    "greatest": greatest,
}
