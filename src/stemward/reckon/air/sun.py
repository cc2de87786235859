"""Where the sun stands, when it rises and sets. Times are UTC; latitude north and longitude east in degrees.

The full form of Meeus, Astronomical Algorithms (1991), chapters 21 to 27, as NOAA's solar calculator uses it.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
Times = NDArray[np.datetime64]
_RISE_ZENITH_DEG = 90.833
"""The sun's middle stands so far from the zenith when its upper rim is on the horizon: NOAA solar calculator."""
_J2000 = np.datetime64("2000-01-01T12:00:00", "s")


def _orbit(at: Times) -> tuple[Floats, Floats]:
    """Declination in radians and equation of time in minutes."""
    century = (at.astype("datetime64[s]") - _J2000).astype(float) / 86_400 / 36_525
    mean = np.radians((280.46646 + century * (36000.76983 + 0.0003032 * century)) % 360)
    anomaly = np.radians(357.52911 + century * (35999.05029 - 0.0001537 * century))
    eccentric = 0.016708634 - century * (0.000042037 + 0.0000001267 * century)
    centre = np.radians(
        np.sin(anomaly) * (1.914602 - century * (0.004817 + 0.000014 * century))
        + np.sin(2 * anomaly) * (0.019993 - 0.000101 * century)
        + np.sin(3 * anomaly) * 0.000289
    )
    node = np.radians(125.04 - 1934.136 * century)
    longitude = mean + centre - np.radians(0.00569 + 0.00478 * np.sin(node))
    seconds = 21.448 - century * (46.815 + century * (0.00059 - 0.001813 * century))
    tilt = np.radians(23 + (26 + seconds / 60) / 60 + 0.00256 * np.cos(node))
    declination = np.arcsin(np.sin(tilt) * np.sin(longitude))
    y = np.tan(tilt / 2) ** 2
    equation = (
        y * np.sin(2 * mean)
        - 2 * eccentric * np.sin(anomaly)
        + 4 * eccentric * y * np.sin(anomaly) * np.cos(2 * mean)
        - y * y * np.sin(4 * mean) / 2
        - 1.25 * eccentric**2 * np.sin(2 * anomaly)
    )
    return np.asarray(declination), np.asarray(4 * np.degrees(equation))


def elevation_deg(at: Times, latitude_deg: ArrayLike, longitude_deg: ArrayLike) -> Floats:
    """Height of the sun's middle over the horizon, degrees, without the bending of light by the air."""
    times = np.asarray(at, "datetime64[s]")
    declination, equation_min = _orbit(times)
    minutes = (times - times.astype("datetime64[D]")).astype(float) / 60
    true_min = minutes + equation_min + 4 * np.asarray(longitude_deg, float)
    angle = np.radians(true_min / 4 - 180)
    latitude = np.radians(np.asarray(latitude_deg, float))
    sine = np.sin(latitude) * np.sin(declination) + np.cos(latitude) * np.cos(declination) * np.cos(angle)
    return np.asarray(np.degrees(np.arcsin(np.clip(sine, -1, 1))))


def rise_and_set(days: ArrayLike, latitude_deg: float, longitude_deg: float) -> tuple[Times, Times]:
    """Sunrise and sunset in UTC of local days (by the sun), datetime64[s]; NaT where it does not rise or set.

    days: datetime64[D]. Worked once from noon and once more from the time found, which holds within a minute.
    """
    day = np.asarray(days, "datetime64[D]")
    noon_s = 86_400 * (0.5 - longitude_deg / 360)
    found = []
    for side in (-1.0, 1.0):
        seconds = np.full(day.shape, noon_s)
        for _ in range(2):
            at = day.astype("datetime64[s]") + np.nan_to_num(seconds, nan=noon_s).astype("timedelta64[s]")
            declination, equation_min = _orbit(at)
            latitude = np.radians(latitude_deg)
            cosine = np.cos(np.radians(_RISE_ZENITH_DEG)) / (np.cos(latitude) * np.cos(declination)) - np.tan(
                latitude
            ) * np.tan(declination)
            with np.errstate(invalid="ignore"):
                angle = np.degrees(np.arccos(cosine))
            seconds = 60 * (720 - 4 * longitude_deg - equation_min + side * 4 * angle)
        whole = np.where(np.isnan(seconds), 0, seconds).astype("timedelta64[s]")
        times = day.astype("datetime64[s]") + whole
        times[np.isnan(seconds)] = np.datetime64("NaT")
        found.append(times)
    return found[0], found[1]
