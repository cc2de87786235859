"""Degrees to metres of the tract and back: a transverse Mercator grid about the tract's own corner (WGS 84)."""

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@lru_cache(maxsize=8)
def _grid(origin: tuple[float, float]) -> Any:
    from pyproj import Transformer

    lat, lon = origin
    own = f"+proj=tmerc +lat_0={lat:.9f} +lon_0={lon:.9f} +k=1 +x_0=0 +y_0=0 +ellps=WGS84 +units=m"
    return Transformer.from_crs("EPSG:4326", own, always_xy=True)


def to_metres(lon_deg: Any, lat_deg: Any, origin: tuple[float, float]) -> tuple[Floats, Floats]:
    """Metres east and north of the origin (latitude, longitude, degrees). Arrays of equal length."""
    x, y = _grid(origin).transform(np.asarray(lon_deg, float), np.asarray(lat_deg, float))
    return np.asarray(x, float), np.asarray(y, float)


def to_degrees(x_m: Any, y_m: Any, origin: tuple[float, float]) -> tuple[Floats, Floats]:
    """Longitude and latitude, degrees, of places in metres from the origin. Arrays of equal length."""
    lon, lat = _grid(origin).transform(np.asarray(x_m, float), np.asarray(y_m, float), direction="INVERSE")
    return np.asarray(lon, float), np.asarray(lat, float)
