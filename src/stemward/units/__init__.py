"""Quantities in and out: what a person types, exact factors, and figures in the person's units."""

from stemward.units.convert import convert
from stemward.units.read import Quantity, UnitError, read
from stemward.units.show import (
    Shown,
    area,
    length_far,
    length_small,
    mass,
    outward,
    percent,
    rate,
    speed,
    strength,
    temperature,
    volume,
)
from stemward.units.table import EXAMPLE, METRIC, UNITS, Unit

__all__ = [
    "EXAMPLE",
    "METRIC",
    "UNITS",
    "Quantity",
    "Shown",
    "Unit",
    "UnitError",
    "area",
    "convert",
    "length_far",
    "length_small",
    "mass",
    "outward",
    "percent",
    "rate",
    "read",
    "speed",
    "strength",
    "temperature",
    "volume",
]
