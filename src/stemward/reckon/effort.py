"""Hours and money, always as bands."""

import math

from stemward.units.table import ACRE_M2, QT_ML


def hours_band(stems: float, low_per_hour: float, high_per_hour: float) -> tuple[float, float]:
    """Fewest and most hours for a number of stems at a pace between two ends. ValueError for a pace that is none."""
    if not 0 < low_per_hour <= high_per_hour:
        raise ValueError("a pace has two ends above 0, the lower first")
    return stems / high_per_hour, stems / low_per_hour


def shown_hours(low_h: float, high_h: float) -> tuple[float, float]:
    """The band rounded outward to half hours, from five hours on to whole ones: never to a decimal."""
    return _down(low_h), _up(high_h)


def _step(hours: float) -> float:
    return 0.5 if hours < 5 else 1.0


def _down(hours: float) -> float:
    return math.floor(hours / _step(hours) + 1e-9) * _step(hours)


def _up(hours: float) -> float:
    return math.ceil(hours / _step(hours) - 1e-9) * _step(hours)


def money_band_cents(
    low_h: float, high_h: float, wage_cents_h: int, low_ml: float, high_ml: float, jug_cents: int, jug_ml: float
) -> tuple[int, int]:
    """Least and most of wage and product together, whole cents outward. jug_ml: what a full jug holds."""
    if jug_ml <= 0:
        raise ValueError("a jug holds something")
    each = jug_cents / jug_ml
    low = low_h * wage_cents_h + low_ml * each
    high = high_h * wage_cents_h + high_ml * each
    return math.floor(low + 1e-9), math.ceil(high - 1e-9)


def per_stem(total: float, stems: float) -> float:
    """Cost or amount of one stem."""
    return total / stems


def ml_per_squirt(caught_ml: float, squirts: int) -> float:
    """What one squirt gives, counted into a measure. ValueError for none."""
    if squirts < 1:
        raise ValueError("at least one squirt")
    return caught_ml / squirts


def gal_per_acre(caught_fl_oz: float, plot_share: float = 1 / 128) -> float:
    """Gallons an acre from the fluid ounces caught in the time that a plot of 1/128 acre takes: the same figure."""
    return caught_fl_oz / 128 / plot_share


def plot_side_ft(plot_share: float = 1 / 128) -> float:
    """Side of a square plot of that share of an acre, ft: 18.4 for 1/128 (43,560 sq ft to the acre)."""
    return math.sqrt(43_560 * plot_share)


def course_ft(swath_ft: float, plot_ft2: float = 340.0) -> float:
    """How far to walk so that a swath covers the calibration plot, ft."""
    return plot_ft2 / swath_ft


def boomless_gal_per_acre(gal_per_min: float, mph: float, swath_in: float) -> float:
    """Gallons an acre of one nozzle from its flow, speed and swath: 5940 is 43,560 x 12 / 88."""
    return 5940 * gal_per_min / (mph * swath_in)


def for_a_load(rate_per_acre: float, gal_per_acre: float, load_gal: float) -> float:
    """Product for a tank, in the rate's unit: rate over gallons an acre, times the load."""
    return rate_per_acre / gal_per_acre * load_gal


def trees_per_acre(row_ft: float, apart_ft: float) -> float:
    """Trees on an acre at a spacing."""
    return 43_560 / (row_ft * apart_ft)


def seconds_per_tree(gal_per_acre: float, trees: float, gal_per_min: float) -> float:
    """How long to spray each tree, from trees on an acre and the flow."""
    return gal_per_acre / trees / gal_per_min * 60


def qt_per_acre(l_per_ha: float) -> float:
    """Liters a hectare as quarts an acre."""
    return l_per_ha * 1000 / float(QT_ML) * float(ACRE_M2) / 10_000
