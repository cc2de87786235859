"""What a person types, read by one small grammar: a number, then a unit. Everything else is refused."""

import re
from dataclasses import dataclass
from fractions import Fraction

from stemward.units.table import EXAMPLE, MAY_BE_NEGATIVE, METRIC, METRIC_SPELLINGS, UNITS, Unit

_LONGEST = 40
"""Characters; what is longer is no figure."""

_SIGNS = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
}
_MIXED = re.compile(r"(\d{1,6})(?:\s+|-)(\d{1,4})/(\d{1,4})", re.ASCII)
_FRACTION = re.compile(r"(\d{1,4})/(\d{1,4})", re.ASCII)
_DECIMAL = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d{1,9})?|\d{1,9}(?:\.\d{1,9})?|\.\d{1,9}", re.ASCII)
_FEET_INCHES = re.compile(r"(\d{1,5})\s*(?:'|′|’|ft\.?|feet|foot)\s*(\S.*?)\s*(?:\"|″|”|in\.?|inch|inches)")


class UnitError(ValueError):
    """Something typed that is not understood: what was typed, the dimension wanted, and an example."""

    def __init__(self, typed: str, dimension: str) -> None:
        self.typed = typed if len(typed) <= _LONGEST else typed[:_LONGEST] + "…"
        self.dimension = dimension
        self.example = EXAMPLE[dimension]
        self.message_id = "units.not_understood"
        super().__init__(f"Not understood: {self.typed}. Write for example {self.example}.")


@dataclass(frozen=True, slots=True)
class Quantity:
    """A figure as typed: exact value in `unit`, and the same in the dimension's metric unit."""

    value: Fraction
    unit: str
    dimension: str
    typed: str
    metric: Fraction

    def to(self, unit: str) -> float:
        """The figure in another unit of its dimension; KeyError for a unit of another dimension."""
        target = unit_named(unit, self.dimension)
        return float((self.metric - target.offset) / target.factor)


def unit_named(name: str, dimension: str) -> Unit:
    """A unit by spelling or by the name used in names ("g_l"); KeyError if the dimension has none such."""
    units = UNITS[dimension]
    if name in units:
        return units[name]
    if name == METRIC[dimension]:
        return Unit(name, Fraction(1))
    for unit in units.values():
        if unit.name == name:
            return unit
    raise KeyError(f"{name} is no unit of {dimension}")


def _number(text: str) -> Fraction | None:
    """An integer, decimal, fraction or mixed number as an exact fraction; None for anything else."""
    if match := _MIXED.fullmatch(text):
        whole, over, under = (int(part) for part in match.groups())
        return None if under == 0 or over >= under else whole + Fraction(over, under)
    if match := _FRACTION.fullmatch(text):
        over, under = (int(part) for part in match.groups())
        return None if under == 0 else Fraction(over, under)
    if _DECIMAL.fullmatch(text):
        return Fraction(text.replace(",", ""))
    return None


def _split(text: str) -> tuple[str, str]:
    """The longest leading run that can be a number, and the rest as the unit."""
    match = re.match(r"[\d.,/\s-]*[\d.]", text)
    if not match:
        return "", text
    return match.group().strip(), text[match.end() :].strip()


def read(text: str, dimension: str, bare: str | None = None) -> Quantity:
    """Read a figure that a person typed.

    text: for example "2 1/2 in", "4'6\\"", "1,000 ft", "50 %". dimension: a key of UNITS. bare: the unit of a
    figure typed without one; without it such a figure is refused. A comma is only understood as US thousands.
    Raises UnitError for everything that is not understood, for negative figures where there can be none, and
    for text over 40 characters.
    """
    typed = text
    if len(text) > _LONGEST or dimension not in UNITS:
        raise UnitError(typed, dimension)
    clean = text.strip().lower().replace("\u00a0", " ").replace("\u202f", " ")
    for sign, spelled in _SIGNS.items():
        clean = re.sub(rf"(?<=\d)\s*{sign}", f" {spelled}", clean).replace(sign, spelled)
    if dimension == "length" and (match := _FEET_INCHES.fullmatch(clean)):
        inches = _number(match.group(2))
        if inches is not None and inches < 12:
            return _quantity(int(match.group(1)) * 12 + inches, "in", dimension, typed)
        raise UnitError(typed, dimension)
    negative = clean.startswith(("-", "−")) and dimension in MAY_BE_NEGATIVE
    figure, unit = _split(clean[1:].strip() if negative else clean)
    value = _number(figure)
    unit = " ".join(unit.split()) or (bare or "")
    if value is None or (unit not in UNITS[dimension] and unit != METRIC[dimension]) or _two_ways(figure, unit):
        raise UnitError(typed, dimension)
    return _quantity(-value if negative else value, unit, dimension, typed)


def _two_ways(figure: str, unit: str) -> bool:
    """True for a comma that may be thousands or decimals: "2,500 L" is two and a half litres in much of the world."""
    return "," in figure and unit in METRIC_SPELLINGS and "." not in figure and not figure.endswith(",000")


def _quantity(value: Fraction, unit: str, dimension: str, typed: str) -> Quantity:
    found = unit_named(unit, dimension)
    return Quantity(value, found.name, dimension, typed, value * found.factor + found.offset)
