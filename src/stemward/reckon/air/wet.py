"""Wet leaves and wet bark, hour by hour."""

import numpy as np
from numpy.typing import NDArray

from stemward.reckon.air.moisture import Floats, deficit_kpa, humidity_frac

HUMID = {"leaf": 0.90, "bark": 0.95}
"""Wet from this humidity on. Leaves: Sentelhas et al., suitability of relative humidity as an estimator of leaf wetness
duration. Bark: engineering guess."""
DEW_C = (2.0, 3.8)
"""Dew begins where air and dew point are nearer than the first and has gone where they are further apart than the
second: from memory."""
DRY_AFTER_H = ((0.3, 6), (0.8, 3), (np.inf, 2))
"""Hours for bark to dry after rain, by vapour pressure deficit in kPa: engineering guess, no source with a figure."""
_WET_MM = 0.1


def rained(rain_mm: Floats) -> NDArray[np.bool_]:
    """Hours in which rain was measured or is foretold; not known counts as no."""
    with np.errstate(invalid="ignore"):
        return np.asarray(np.asarray(rain_mm, float) >= _WET_MM)


def leaf_wet_by_humidity(temp_c: Floats, dew_c: Floats, rain_mm: Floats) -> NDArray[np.bool_]:
    """Leaves wet by rain or by air of at least 90 % humidity (Sentelhas et al.)."""
    with np.errstate(invalid="ignore"):
        return np.asarray((humidity_frac(temp_c, dew_c) >= HUMID["leaf"]) | rained(rain_mm))


def leaf_wet_by_dew(temp_c: Floats, dew_c: Floats, rain_mm: Floats) -> NDArray[np.bool_]:
    """Leaves wet from when dew begins (or rain falls) until air and dew point are well apart again."""
    apart, rain = np.asarray(temp_c, float) - np.asarray(dew_c, float), rained(rain_mm)
    found, wet = np.zeros(apart.shape, bool), False
    for n, (far, fell) in enumerate(zip(apart.tolist(), rain.tolist(), strict=True)):
        wet = bool(fell or far < DEW_C[0] or (wet and far <= DEW_C[1]))
        found[n] = wet
    return found


def bark_wet(temp_c: Floats, dew_c: Floats, rain_mm: Floats, rough: bool = False) -> NDArray[np.bool_]:
    """Bark wet: while it rains, for some hours after, and in air of 95 % humidity and more.

    Rain counts as longer the less thirsty the air is; rough or mossy bark dries half as fast. Where humidity is not
    known the longest drying time is taken.
    """
    rain = rained(rain_mm)
    with np.errstate(invalid="ignore"):
        deficit = np.nan_to_num(deficit_kpa(temp_c, dew_c), nan=0.0)
        damp = humidity_frac(temp_c, dew_c) >= HUMID["bark"]
    found, left = np.zeros(rain.shape, bool), 0.0
    for n, (fell, thirst) in enumerate(zip(rain.tolist(), deficit.tolist(), strict=True)):
        hours = next(hours for most, hours in DRY_AFTER_H if thirst < most) * (2 if rough else 1)
        # What is left to dry is a share of one: an hour takes its part of it at the thirst of that hour.
        left = 1.0 if fell else max(0.0, left - 1 / hours)
        found[n] = fell or left > 1e-9
    return np.asarray(found | damp)
