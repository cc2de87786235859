"""What people type, and what is refused."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.units import METRIC, UNITS, UnitError, convert, read
from stemward.units.table import IN_CM

UNDERSTOOD = [
    ("1 1/2 qt", "volume", "qt", 1.5),
    ("8 fl oz", "volume", "fl oz", 8),
    ("4'6\"", "length", "in", 54),
    ("4 ft 6 in", "length", "in", 54),
    ("2½ in", "length", "in", 2.5),
    ("2-1/2 in", "length", "in", 2.5),
    ("½ in", "length", "in", 0.5),
    (".5 in", "length", "in", 0.5),
    ("1,000 ft", "length", "ft", 1000),
    ("1,250 ft", "length", "ft", 1250),
    ("1,234.5 m", "length", "m", 1234.5),
    ("4 lb ae/gal", "strength", "lb/gal", 4),
    ("25 % v/v", "fraction", "%", 25),
    ("25 %", "fraction", "%", 25),
    ("80 F", "temperature", "f", 80),
    ("-5 °C", "temperature", "c", -5),
    ("2 ac", "area", "acre", 2),
    ("3 m2", "area", "m2", 3),
    ("8 lb/acre", "rate", "lb/acre", 8),
    ("6 h", "time", "h", 6),
    ("  24   fl oz ", "volume", "fl oz", 24),
]

REFUSED = [
    ("2,500 L", "volume"),  # two and a half litres in much of the world
    ("2,5 L", "volume"),  # a decimal comma is not guessed at
    ("10,00 ft", "length"),
    ("1:3", "fraction"),
    ("$12", "volume"),
    ("nan qt", "volume"),
    ("inf qt", "volume"),
    ("2e400 qt", "volume"),
    ("1e3 mL", "volume"),
    ("9**9**9", "volume"),
    ("9" * 5000, "volume"),
    ("", "volume"),
    ("qt", "volume"),
    ("3", "volume"),  # no unit, and none to assume
    ("-3 in", "length"),
    ("3 to 4 in", "length"),
    ("3-4 in", "length"),
    ("1 2 in", "length"),
    ("3/0 in", "length"),
    ("5 3/2 in", "length"),  # no mixed number
    ("4 lbs gal", "strength"),
    ("4'14\"", "length"),  # more inches than a foot has
    ("8 fl oz", "length"),
    ("8 furlongs", "length"),
    ("٣ in", "length"),
]


@pytest.mark.parametrize(("text", "dimension", "unit", "value"), UNDERSTOOD)
def test_understood(text, dimension, unit, value):
    """Figures as people write them are read exactly."""
    assert read(text, dimension).to(unit) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(("text", "dimension"), REFUSED)
def test_refused_with_an_example(text, dimension):
    """Everything else is refused at once, with what was typed and an example."""
    with pytest.raises(UnitError) as refused:
        read(text, dimension)
    assert "Write for example" in str(refused.value)
    assert read(refused.value.example, dimension)


def test_a_bare_figure_takes_the_column_s_unit():
    """In a column that says inches a figure without a unit is inches."""
    assert read("3 3/4", "length", "in").to("cm") == pytest.approx(9.525)


@given(st.text(max_size=60), st.sampled_from(sorted(UNITS)))
def test_any_text_is_read_or_refused(text, dimension):
    """No text whatever raises anything but UnitError."""
    try:
        read(text, dimension)
    except UnitError as refused:
        assert refused.dimension == dimension


NUMBERS = {"3": 3, "3.25": Fraction(13, 4), "1/4": Fraction(1, 4), "2 3/8": Fraction(19, 8), "1,000": 1000}


@pytest.mark.parametrize("dimension", sorted(UNITS))
@pytest.mark.parametrize("figure", sorted(NUMBERS))
def test_every_spelling_takes_every_form_of_number(dimension, figure):
    """Each spelling of each unit is read with each form of number, exactly."""
    for spelling, unit in UNITS[dimension].items():
        got = read(f"{figure} {spelling}", dimension)
        assert got.metric == NUMBERS[figure] * unit.factor + unit.offset


ORACLE = {
    "in": "inch", "ft": "foot", "mi": "mile", "acre": "acre_", "ha": "hectare", "fl oz": "fluid_ounce", "pt": "pint",
    "qt": "quart", "gal": "gallon", "oz": "ounce", "lb": "pound", "mph": "mile/hour", "h": "hour", "km/h": "km/hour",
}  # fmt: skip
PINT_METRIC = {"cm": "cm", "m2": "m**2", "ml": "ml", "g": "g", "s": "s", "m_s": "m/s"}


@pytest.mark.parametrize("spelling", sorted(ORACLE))
def test_factors_agree_with_another_library(spelling):
    """The factors agree with a units library, which is not trusted with what people type."""
    registry = pint.UnitRegistry()
    # The library's acre is the survey acre; the international one is 43,560 square feet.
    other = registry.Quantity(43560, "foot**2") if spelling == "acre" else registry.Quantity(1, ORACLE[spelling])
    dimension = next(d for d, units in UNITS.items() if spelling in units)
    expected = other.to(PINT_METRIC[METRIC[dimension]]).magnitude
    assert float(UNITS[dimension][spelling].factor) == pytest.approx(expected, rel=1e-12)


def test_conversion_there_and_back():
    """A number converted there and back is itself."""
    assert convert(convert(7.3, "in", "cm"), "cm", "in") == pytest.approx(7.3)
    assert convert(32.0, "f", "c") == pytest.approx(0.0)
    with pytest.raises(KeyError):
        convert(1.0, "in", "gal")


def test_inches_are_exact():
    """Sixty whole inches and back lose nothing."""
    assert all(read(f"{n} in", "length").metric == n * IN_CM for n in range(1, 61))
