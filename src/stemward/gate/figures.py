"""One figure that a person typed into a cell, by the column it stands in."""

import math
import re

from stemward.kinds import Column
from stemward.units import UnitError, read

PLAIN = r"^[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)$"
"""Plain decimals; everything else goes through the grammar of room `units`."""

DECIMAL_COMMA = r"^[+-]?[0-9]*,[0-9]+$"
"""Either a decimal comma or thousands: 1,234 can be both, so neither is guessed."""

DIMENSION = {"cm": "length", "in": "length", "m": "length", "": "count"}

_PLAIN, _DECIMAL_COMMA = re.compile(PLAIN), re.compile(DECIMAL_COMMA)


class FigureError(Exception):
    """A cell that is no figure for its column; `message` and `values` as for a problem."""

    def __init__(self, message: str, **values: str | float) -> None:
        self.message = message
        self.values = values
        super().__init__(message)


def figure(typed: str, column: Column) -> float:
    """The figure in the column's unit; raises FigureError. Whether it is within range is not looked at.

    A unit written out must be the column's own: "3 in" under diameter_cm is refused, not converted, because
    one of the two is wrong.
    """
    typed = typed.strip()
    if _PLAIN.match(typed):
        value = float(typed)
        if not math.isfinite(value):
            raise FigureError("cell.not_a_number")
        return value
    if _DECIMAL_COMMA.match(typed):
        raise FigureError("cell.decimal_comma")
    dimension = DIMENSION[column.unit]
    try:
        quantity = read(typed, dimension, bare=column.unit)
    except UnitError:
        raise FigureError("cell.not_a_number") from None
    if quantity.unit != read("1", dimension, bare=column.unit).unit:
        raise FigureError("cell.other_unit", unit=column.unit)
    return float(quantity.value)


def half_digit(typed: str) -> float:
    """Half of the last digit of a figure that is no plain decimal: "9 1/2" → 0.25, "9.5 cm" → 0.05."""
    fraction = re.search(r"/(\d+)", typed)
    if fraction:
        return 0.5 / max(1, int(fraction[1]))
    digits = re.search(r"\.(\d+)", typed)
    return 0.5 * 10.0 ** -len(digits[1]) if digits else 0.5
