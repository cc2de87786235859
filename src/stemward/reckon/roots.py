"""What a treatment can reach below ground: root radii, distances, and levels that say how likely harm is."""

from dataclasses import dataclass
from enum import IntEnum
from typing import Any, Literal

import numpy as np
import shapely
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]


class Level(IntEnum):
    """How much a route can carry. Never "none": that no route is known is all that can be said."""

    NO_ROUTE_KNOWN = 0
    LITTLE = 1
    SOME = 2
    MUCH = 3


@dataclass(frozen=True, slots=True)
class Reach:
    """Root radii of kept plants, metres: protection zone, common advice, likely reach (not the farthest).

    Numbers for one plant, or arrays with one for each.
    """

    protection_m: Any
    advice_m: Any
    likely_m: Any


def reach_m(
    dbh_cm: ArrayLike, crown_radius_m: ArrayLike, multiples: tuple[float, float, float], crown_multiple: float
) -> Reach:
    """Root radii from trunk and crown. multiples: of DBH, for protection, advice and likely reach.

    1 ft per inch (Vancouver WA code 20.170.100), 1.5 (Edina MN), 2.5 'ideally' (NC State Extension, fig. 3);
    three times the crown radius (Univ. of Florida, root growth pages). The greater of the last two is likely.
    """
    trunk_m, crown_m = np.asarray(dbh_cm, float) / 100, np.asarray(crown_radius_m, float)
    protection, advice, likely = (m * trunk_m for m in multiples)
    return Reach(protection, advice, np.maximum(likely, crown_multiple * crown_m))


def distance_m(x_m: ArrayLike, y_m: ArrayLike, geometry: shapely.Geometry) -> Floats:
    """Distance of points to a point, line or polygon, metres, length n; 0 inside a polygon."""
    points = shapely.points(np.asarray(x_m, float), np.asarray(y_m, float))
    return np.asarray(shapely.distance(points, geometry), float)


def soil_mass_g(ae_g: ArrayLike, drip_low: float, drip_high: float, whole: bool) -> tuple[Floats, Floats]:
    """Mass that may reach the soil, low and high, g: what drips, up to all of it where roots give it off.

    Drip shares are practitioner's judgement, no source. whole: for ingredients that roots exude or that stay
    active in soil.
    """
    mass_g = np.asarray(ae_g, float)
    return mass_g * drip_low, mass_g * (1.0 if whole else drip_high)


def soil_level(
    distance_m: ArrayLike, reach: Reach, soil_active: Literal["no", "weak", "yes"], mass_high_g: ArrayLike
) -> NDArray[np.int64]:
    """Level of the route through soil for each stem, as integers of `Level`.

    An ingredient that roots take up from soil: much within the advised radius, some within the likely reach,
    little out to twice that (laterals go farther: Stone & Kalisz 1991, from memory). One that does so weakly:
    some within the protection zone, little within the likely reach. Otherwise no route is known. The cuts
    between levels are practitioner's judgement, no source; levels never fall when nearer or more.
    """
    away_m, mass_g = np.asarray(distance_m, float), np.asarray(mass_high_g, float)
    if soil_active == "no":
        level = np.zeros(away_m.shape, np.int64)
    elif soil_active == "weak":
        level = np.select([away_m <= reach.protection_m, away_m <= reach.likely_m], [2, 1], 0)
    else:
        radii = [away_m <= reach.advice_m, away_m <= reach.likely_m, away_m <= 2 * reach.likely_m]
        level = np.select(radii, [3, 2, 1], 0)
    return np.where(mass_g > 0, level, 0).astype(np.int64)


def shared_root_level(
    distance_m: ArrayLike, graft_m: float, same_plant: bool, translocated: bool, cut_stump: bool
) -> NDArray[np.int64]:
    """Level of the route through grafted or shared roots for each stem, as integers of `Level`.

    One clone is one plant at any distance. Otherwise some within the graft distance, much within a third of
    it, or within half for cut stumps, which passed more than standing stems in a tracer study of radiata pine
    (Austral. J. Bot. 18:251, 1970); the third and the half are practitioner's judgement, no source.
    """
    away_m = np.asarray(distance_m, float)
    if same_plant:
        level = np.full(away_m.shape, 3)
    else:
        near_m = graft_m * (0.5 if cut_stump else 1 / 3)
        level = np.select([away_m <= near_m, away_m <= graft_m], [3, 2], 0)
    if not translocated:
        level = np.minimum(level, 1)
    return level.astype(np.int64)


def drift_level(distance_m: ArrayLike, near_m: float, far_m: float) -> NDArray[np.int64]:
    """Level of the route through the air for spray on leaves, as integers of `Level`.

    Much within `near_m`, some to half of `far_m`, little to `far_m`; engineering guess, no source: wind decides.
    """
    away_m = np.asarray(distance_m, float)
    return np.select([away_m <= near_m, away_m <= far_m / 2, away_m <= far_m], [3, 2, 1], 0).astype(np.int64)


def remaining_frac(days: ArrayLike, dt50_days: float) -> Floats:
    """Share left after some days, by first-order decay."""
    return np.power(0.5, np.asarray(days, float) / dt50_days)


def dt90_days(dt50_days: float) -> float:
    """Days until a tenth is left, by first-order decay."""
    return float(np.log2(10) * dt50_days)


def gus(dt50_days: float, koc_ml_g: float) -> float:
    """Groundwater ubiquity score, log10(DT50) x (4 - log10(Koc)).

    Gustafson 1989, Environ. Toxicol. Chem. 8:339-357.

    ValueError under one day, where the score turns round. It gives no distance to a kept plant.
    """
    if dt50_days < 1:
        raise ValueError("the score has no meaning for a half-life under one day")
    return float(np.log10(dt50_days) * (4 - np.log10(koc_ml_g)))
