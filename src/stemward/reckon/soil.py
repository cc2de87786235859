"""Will it move in soil, and how long does it stay? None of this gives a distance to a kept plant."""

import math


def retardation(bulk_density_g_cm3: float, organic_carbon_frac: float, koc_ml_g: float, field_capacity: float) -> float:
    """How much slower than water an ingredient moves. Rao, Hornsby & Jessup 1985, Soil Crop Sci. Soc. Fla. 44:1-8.

    field_capacity: water by volume at field capacity. No vapor. ValueError for no water.
    """
    if field_capacity <= 0:
        raise ValueError("soil at field capacity holds water")
    return 1 + bulk_density_g_cm3 * organic_carbon_frac * koc_ml_g / field_capacity


def travel_days(depth_m: float, retardation_factor: float, field_capacity: float, recharge_m_d: float) -> float:
    """Days to a depth under steady recharge."""
    return depth_m * retardation_factor * field_capacity / recharge_m_d


def attenuation(travel_d: float, dt50_d: float) -> float:
    """Share of what was put on that passes that depth."""
    return float(0.5 ** (travel_d / dt50_d))


def saturated_retardation(
    bulk_density_g_cm3: float, organic_carbon_frac: float, koc_ml_g: float, porosity: float
) -> float:
    """How much slower than groundwater an ingredient moves (EPA Athens training text)."""
    return 1 + bulk_density_g_cm3 * organic_carbon_frac * koc_ml_g / porosity


def bulk_density_g_cm3(porosity: float, particle_g_cm3: float = 2.65) -> float:
    """Bulk density from porosity (EPA Athens training text: 0.35 gives 1.72)."""
    return particle_g_cm3 * (1 - porosity)


def half_life_d(left_frac: float, days: float) -> float:
    """The half-life by which a share is left after some days, first order. ValueError outside 0 to 1."""
    if not 0 < left_frac < 1:
        raise ValueError("a share between 0 and 1 is left")
    return days * math.log(2) / -math.log(left_frac)


LOW_FROM, MODERATE_FROM, HIGH_FROM = 0.0, 1.8, 2.8
"""Scores at which the likelihood of moving to groundwater goes up a class: US National Pesticide Information Center,
page on the score, 2021, after Goss & Wauchope 1990."""


def leaching_class(score: float) -> int:
    """0 extremely low, 1 low, 2 moderate, 3 high; see the score in `roots`."""
    return sum(score >= limit for limit in (LOW_FROM, MODERATE_FROM, HIGH_FROM))
