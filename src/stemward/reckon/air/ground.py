"""Frozen ground, warmth since New Year, the flow of sap."""

import numpy as np
from numpy.typing import NDArray

from stemward.reckon.air.moisture import Floats

FROZEN = (-2.0, 72)
"""Ground without snow is taken as frozen where the mean of so many hours is below: engineering guess, from memory."""
BASE_C = (5.0,)
"""Warmth counts above this for leaf-out: from memory."""


def frozen_ground(temp_c: Floats, snow_m: Floats) -> NDArray[np.bool_]:
    """Hours with frozen ground: the mean of the last three days below -2 degrees, and no snow that keeps it warm."""
    temp, found = np.asarray(temp_c, float), np.zeros(np.shape(temp_c), bool)
    filled = np.where(np.isnan(temp), 99.0, temp)
    mean_c, hours = FROZEN
    if len(temp) >= hours:
        total = np.concatenate([[0.0], np.cumsum(filled)])
        found[hours - 1 :] = (total[hours:] - total[:-hours]) / hours < mean_c
    return np.asarray(found & ~(np.nan_to_num(np.asarray(snow_m, float), nan=0.0) > 0.1))


def warmth_days(most_c: Floats, least_c: Floats, base_c: float = BASE_C[0]) -> Floats:
    """Growing degree days added up from the first day on, of daily highest and lowest temperatures."""
    mean = (np.asarray(most_c, float) + np.asarray(least_c, float)) / 2
    return np.asarray(np.cumsum(np.nan_to_num(np.maximum(0.0, mean - base_c), nan=0.0)))


SAP = (5.0, 0.0, 200.0)
"""Sap flows from the first days over 5 degrees with nights under 0 until leaves are out, at 100 to 300 degree days:
from memory; a person's own words about buds and leaves come before it."""


def sap_flows(most_c: Floats, least_c: Floats) -> NDArray[np.bool_]:
    """Days from 1 January on which sap is likely to rise strongly in trees like maples."""
    most, least = np.asarray(most_c, float), np.asarray(least_c, float)
    with np.errstate(invalid="ignore"):
        begun = np.cumsum((most > SAP[0]) & (least < SAP[1])) > 0
    return np.asarray(begun & (warmth_days(most, least) < SAP[2]) & (np.arange(len(most)) >= 20))
