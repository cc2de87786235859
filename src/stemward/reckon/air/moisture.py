"""Moisture of the air: vapour pressure, dew point, wet bulb, how thirsty the air is.

Temperatures in degrees Celsius, pressures in hectopascals, relative humidity as a share of one; arrays of one length.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
PSYCHROMETER = 6.62e-4
"""Per degree, of a ventilated psychrometer: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq. 16."""
_STEPS = 40


def saturation_hpa(temp_c: ArrayLike) -> Floats:
    """Vapour pressure of saturated air over water, hPa. Magnus form with the coefficients of Alduchov & Eskridge 1996,
    Journal of Applied Meteorology 35:601."""
    temp = np.asarray(temp_c, float)
    return np.asarray(6.1094 * np.exp(17.625 * temp / (temp + 243.04)))


def humidity_frac(temp_c: ArrayLike, dew_c: ArrayLike) -> Floats:
    """Relative humidity from air temperature and dew point."""
    return np.asarray(saturation_hpa(dew_c) / saturation_hpa(temp_c))


def dew_point_c(temp_c: ArrayLike, humidity: ArrayLike) -> Floats:
    """Dew point from air temperature and relative humidity (share of one): the Magnus form turned round."""
    temp = np.asarray(temp_c, float)
    with np.errstate(divide="ignore", invalid="ignore"):
        log = np.log(np.asarray(humidity, float)) + 17.625 * temp / (243.04 + temp)
        return np.asarray(243.04 * log / (17.625 - log))


def deficit_kpa(temp_c: ArrayLike, dew_c: ArrayLike) -> Floats:
    """Vapour pressure deficit, kPa: how much more vapour the air would take."""
    return np.asarray((saturation_hpa(temp_c) - saturation_hpa(dew_c)) / 10)


def station_pressure_hpa(height_m: ArrayLike) -> Floats:
    """Usual pressure at a height above the sea: Allen et al. 1998, FAO-56, eq. 7."""
    return np.asarray(1013.0 * ((293 - 0.0065 * np.asarray(height_m, float)) / 293) ** 5.26)


def wet_bulb_c(temp_c: ArrayLike, dew_c: ArrayLike, pressure_hpa: ArrayLike) -> Floats:
    """Wet-bulb temperature from the psychrometric equation with the station's pressure, solved by bisection.

    e = es(Tw) - A p (T - Tw), Allen et al. 1998, FAO-56, eq. 15. Lies between dew point and air temperature; nan where
    anything is not known. Closed fits are not used: near freezing they read up to 0.7 degrees low.
    """
    temp, dew, pressure = np.broadcast_arrays(*(np.asarray(a, float) for a in (temp_c, dew_c, pressure_hpa)))
    vapour = saturation_hpa(dew)
    low, high = np.minimum(dew, temp), np.array(temp, float)
    for _ in range(_STEPS):
        middle = (low + high) / 2
        excess = saturation_hpa(middle) - PSYCHROMETER * pressure * (temp - middle) - vapour
        low, high = np.where(excess < 0, middle, low), np.where(excess < 0, high, middle)
    return np.asarray((low + high) / 2)


def depression_c(temp_c: ArrayLike, dew_c: ArrayLike, pressure_hpa: ArrayLike) -> Floats:
    """Wet-bulb depression: air temperature less wet bulb, by which the life of spray droplets is judged."""
    return np.asarray(np.asarray(temp_c, float) - wet_bulb_c(temp_c, dew_c, pressure_hpa))
