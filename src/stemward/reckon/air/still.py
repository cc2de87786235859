"""How still the air lies: stability by Pasquill and by Turner, and the risk of an inversion at the ground."""

import enum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stemward.reckon.air.sun import Floats, Times, elevation_deg, rise_and_set

TURNER = np.array(
    [
        [1, 1, 2, 3, 4, 6, 7], [1, 2, 2, 3, 4, 6, 7], [1, 2, 3, 4, 4, 5, 6], [2, 2, 3, 4, 4, 5, 6],
        [2, 2, 3, 4, 4, 4, 5], [2, 3, 3, 4, 4, 4, 5], [3, 3, 4, 4, 4, 4, 5], [3, 3, 4, 4, 4, 4, 4],
        [3, 4, 4, 4, 4, 4, 4],
    ]
)  # fmt: skip
"""Class by wind and net radiation index 4 to -2: Turner 1964, as in EPA's guidance on meteorological monitoring."""
_TURNER_KNOTS = (2.0, 4.0, 6.0, 7.0, 8.0, 10.0, 11.0, 12.0)
PASQUILL = {
    "strong": ("A", "A-B", "B", "C", "C"), "moderate": ("A-B", "B", "B-C", "C-D", "D"),
    "slight": ("B", "C", "C", "D", "D"),
    "cloudy night": ("E", "E", "D", "D", "D"), "clear night": ("F", "F", "E", "D", "D"),
}  # fmt: skip
"""Class by sun or night, for winds under 2, 3, 5, 6 m/s and above: NOAA Air Resources Laboratory, Pasquill classes."""
_PASQUILL_M_S = (2.0, 3.0, 5.0, 6.0)


class Risk(enum.IntEnum):
    """Risk of an inversion at the ground. UNKNOWN where wind or cloud are not known and the hour would allow it."""

    LOW = 0
    MEDIUM = 1
    HIGH = 2
    UNKNOWN = 3


def night(
    at: Times, latitude_deg: float, longitude_deg: float, before_h: float = 1.0, after_h: float = 1.0
) -> NDArray[np.bool_]:
    """True from `before_h` hours before sunset to `after_h` after sunrise (1 and 1: NOAA Air Resources Laboratory)."""
    times = np.asarray(at, "datetime64[s]")
    local = times + np.timedelta64(round(longitude_deg * 240), "s")
    rise, down = rise_and_set(local.astype("datetime64[D]"), latitude_deg, longitude_deg)
    before, after = (np.timedelta64(round(hours * 3600), "s") for hours in (before_h, after_h))
    shown = (times >= rise + after) & (times < down - before)
    never = np.isnat(rise) | np.isnat(down)
    return np.asarray(np.where(never, elevation_deg(times, latitude_deg, longitude_deg) <= 0, ~shown))


def turner(
    wind_m_s: ArrayLike, cloud_frac: ArrayLike, elevation: ArrayLike, is_night: ArrayLike, ceiling_m: ArrayLike
) -> NDArray[np.int64]:
    """Turner's class 1 (very unstable) to 7 (very stable); 0 where wind or cloud is not known.

    ceiling_m: base of the cloud cover, nan for not known, which is taken as high. Rules for cloud over half the sky
    are from memory, checked on the worked cases beside the tests.
    """
    wind, cloud, sun, dark, ceiling = np.broadcast_arrays(
        *(np.asarray(a, float) for a in (wind_m_s, cloud_frac, elevation, is_night, ceiling_m))
    )
    low, middle = ceiling < 7000 * 0.3048, (ceiling >= 7000 * 0.3048) & (ceiling < 16000 * 0.3048)
    by_sun = np.select([sun > 60, sun > 35, sun > 15], [4, 3, 2], 1)
    covered = np.where(low, 2, np.where(middle, 1, 0))
    covered = np.where((cloud >= 0.95) & ~low, np.maximum(covered, 1), covered)
    by_day = np.where(cloud <= 0.5, by_sun, np.maximum(1, by_sun - covered))
    index = np.where(dark > 0, np.where(cloud <= 0.4, -2, -1), by_day)
    index = np.where((cloud >= 0.95) & low, 0, index)
    with np.errstate(invalid="ignore"):
        # A knot is 1,852 m an hour (NIST SP 811, 2008).
        row = np.digitize(np.round(wind * 3600 / 1852, 3), _TURNER_KNOTS)
    found = TURNER[row, 4 - index.astype(int)]
    return np.asarray(np.where(np.isnan(wind) | np.isnan(cloud), 0, found), dtype=np.int64)


def pasquill(wind_m_s: float, cloud_frac: float, elevation: float, is_night: bool) -> str:
    """Pasquill's class of one hour, A to F, or two with a hyphen; D under a covered sky.

    Sun is strong over 60 degrees, moderate over 35, slight over 15 and below.
    """
    if cloud_frac >= 0.95:
        return "D"
    row = int(np.digitize(wind_m_s, _PASQUILL_M_S))
    if is_night:
        return PASQUILL["clear night" if cloud_frac <= 0.5 else "cloudy night"][row]
    sun = "strong" if elevation > 60 else "moderate" if elevation > 35 else "slight"
    return PASQUILL[sun][row]


def inversion_risk(
    at: Times, wind_m_s: Floats, cloud_frac: Floats, latitude_deg: float, longitude_deg: float
) -> NDArray[np.int64]:
    """Risk of an inversion in each hour, as `Risk`.

    High from 2 h before sunset to 2 h after sunrise with wind under 3 m/s and at most half the sky covered; medium
    there with wind to 5 m/s or cloud to 7/8; else low. Engineering default, from memory; the hours are the strictest
    of those that GRDC, DPIRD and NDSU give.
    """
    within = night(at, latitude_deg, longitude_deg, 2.0, 2.0)
    wind, cloud = np.asarray(wind_m_s, float), np.asarray(cloud_frac, float)
    with np.errstate(invalid="ignore"):
        low = (wind > 5) | (cloud > 7 / 8)
        high = (wind < 3) & (cloud <= 0.5)
    unknown = np.isnan(wind) | np.isnan(cloud)
    found = np.select([~within | low, unknown, high], [Risk.LOW, Risk.UNKNOWN, Risk.HIGH], Risk.MEDIUM)
    return np.asarray(found, dtype=np.int64)
