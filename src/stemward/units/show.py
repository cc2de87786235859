"""Figures in the person's units, rounded once, for show. No sentences."""

import math
from dataclasses import dataclass
from typing import Literal

from stemward.units.convert import convert

System = Literal["us", "metric"]


@dataclass(frozen=True, slots=True)
class Shown:
    """A figure as text and its unit as text."""

    figure: str
    unit: str

    def __str__(self) -> str:
        return f"{self.figure} {self.unit}".strip()


Ladder = tuple[tuple[float, str, str], ...]
"""From which size on, in which unit (as converted to, as written)."""


def _figure(value: float, digits: int = 2) -> str:
    """A number to `digits` significant digits or to whole numbers, with US thousands and no exponent."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else "?"
    places = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    text = f"{value:,.{min(places, 6)}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _climb(value: float, unit: str, ladder: Ladder, digits: int) -> Shown:
    """The first rung whose unit gives at least its size."""
    for least, to, written in ladder:
        there = convert(value, unit, to)
        if abs(there) >= least:
            return Shown(_figure(there, digits), written)
    _, to, written = ladder[-1]
    return Shown(_figure(convert(value, unit, to), digits), written)


def length_small(value: float, unit: str, system: System) -> Shown:
    """A diameter or width to three digits, so that quarter inches stay what they are."""
    to, written = ("in", "in") if system == "us" else ("cm", "cm")
    there = convert(value, unit, to)
    return Shown(_figure(there, 3) if there >= 0.1 else _figure(there, 1), written)


def length_far(value: float, unit: str, system: System) -> Shown:
    """A distance on the ground: whole feet (tenths under 10), or metres."""
    return _climb(value, unit, ((0.0, "ft", "ft"),) if system == "us" else ((0.0, "m", "m"),), 2)


def area(value: float, unit: str, system: System) -> Shown:
    """An area: acres or square feet, hectares or square metres."""
    us: Ladder = ((0.1, "acre", "acres"), (0.0, "ft2", "sq ft"))
    metric: Ladder = ((0.1, "ha", "ha"), (0.0, "m2", "m²"))
    return _climb(value, unit, us if system == "us" else metric, 2)


def volume(value: float, unit: str, system: System) -> Shown:
    """A volume: gallons from one on, fluid ounces to a tenth, mL under an ounce; or litres and mL."""
    ounces, ml = convert(value, unit, "fl oz"), convert(value, unit, "ml")
    if system == "us" and ounces >= 127.95:
        return Shown(_figure(ounces / 128, 3), "gal")
    if system == "us" and ounces >= 0.9995:  # an ounce that lost its last digit on the way is one all the same
        return Shown(_figure(round(ounces, 1), 4), "fl oz")
    if system == "metric" and ml >= 1000:
        return Shown(_figure(ml / 1000, 3), "L")
    return Shown(_figure(round(ml, 1) if 0.1 <= ml < 10 else ml, 2 if ml < 10 else 3), "mL")


def speed(value: float, unit: str, system: System) -> Shown:
    """A wind speed: whole miles an hour, or metres a second to a tenth."""
    if system == "us":
        return Shown(f"{convert(value, unit, 'mph'):.0f}", "mph")
    return Shown(f"{convert(value, unit, 'm_s'):.1f}", "m/s")


def mass(value: float, unit: str, system: System) -> Shown:
    """A mass: pounds from a tenth on, ounces by weight below; kilograms or grams."""
    us: Ladder = ((0.1, "lb", "lb"), (0.0, "oz", "oz by weight"))
    metric: Ladder = ((1.0, "kg", "kg"), (0.0, "g", "g"))
    return _climb(value, unit, us if system == "us" else metric, 2)


def strength(value: float, unit: str, system: System) -> Shown:
    """Acid equivalent in a liquid: pounds per gallon or grams per litre."""
    us: Ladder = ((0.0, "lb/gal", "lb ae/gal"),)
    metric: Ladder = ((0.0, "g/l", "g ae/L"),)
    return _climb(value, unit, us if system == "us" else metric, 3)


def rate(value: float, unit: str, system: System) -> Shown:
    """Acid equivalent on the ground: pounds per acre or kilograms per hectare."""
    us: Ladder = ((0.0, "lb/acre", "lb ae per acre"),)
    metric: Ladder = ((0.0, "kg/ha", "kg ae per ha"),)
    return _climb(value, unit, us if system == "us" else metric, 2)


def percent(value: float, unit: str, system: System) -> Shown:
    """A share in percent, the same in both systems."""
    del system
    return Shown(_figure(convert(value, unit, "%"), 3), "%")


def temperature(value: float, unit: str, system: System) -> Shown:
    """A temperature to whole degrees."""
    to, written = ("f", "°F") if system == "us" else ("c", "°C")
    return Shown(f"{convert(value, unit, to):.0f}", written)


def outward(low: float, high: float, digits: int = 2) -> tuple[str, str]:
    """The ends of a range rounded away from each other: a range is never shown narrower than it is."""

    def step(value: float) -> float:
        return 10.0 ** (math.floor(math.log10(abs(value))) - digits + 1) if value else 1.0

    down = math.floor(low / step(low) + 1e-9) * step(low)
    up = math.ceil(high / step(high) - 1e-9) * step(high)
    return _figure(down, digits), _figure(up, digits)
