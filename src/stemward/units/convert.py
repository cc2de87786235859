"""A number from one unit to another."""

from stemward.units.read import unit_named
from stemward.units.table import UNITS


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """A number in another unit of the same dimension; KeyError if no dimension has both units."""
    for dimension in UNITS:
        try:
            source, target = unit_named(from_unit, dimension), unit_named(to_unit, dimension)
        except KeyError:
            continue
        return value * float(source.factor / target.factor) + float((source.offset - target.offset) / target.factor)
    raise KeyError(f"no dimension has both {from_unit} and {to_unit}")
