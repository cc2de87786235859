"""Hours of weather at one place: numpy columns, a row an hour, as a forecast, a history or a typed table gave them."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Site:
    """Where the hours are for. latitude_deg north, longitude_deg east; zone: an IANA time zone, '' when not known."""

    latitude_deg: float
    longitude_deg: float
    height_m: float = 0.0
    zone: str = ""


@dataclass(frozen=True, slots=True)
class RainBlock:
    """One chance of rain for a span of hours: one event, not one an hour. `start`, `end`: UTC, end not in it."""

    start: np.datetime64
    end: np.datetime64
    chance_frac: float


@dataclass(frozen=True, slots=True)
class Hours:
    """Hourly weather: every column has the length of `at`; what is not known is nan.

    at: start of each hour, datetime64[s] in UTC, rising, whole hours, gaps allowed. wind_m_s and gust_m_s at 10 m;
    wind_from_deg: where it comes from, clockwise from north. rain_mm: fallen (or foretold) in the hour.
    rain_chance_frac: chance of a wet hour as the source gave it; where it gave one figure for many hours these stand
    in `blocks` and the column is nan. cloud_frac: share of sky. snow_m: snow lying.
    kind: "forecast" or "history". issued: when a forecast was made, UTC. source: who gave it, in words.
    """

    site: Site
    at: NDArray[np.datetime64]
    temp_c: Floats
    dew_c: Floats
    wind_m_s: Floats
    gust_m_s: Floats
    wind_from_deg: Floats
    rain_mm: Floats
    rain_chance_frac: Floats
    cloud_frac: Floats
    pressure_hpa: Floats
    snow_m: Floats
    blocks: tuple[RainBlock, ...] = ()
    kind: str = "history"
    issued: np.datetime64 | None = None
    source: str = ""
