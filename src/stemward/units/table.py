"""Units by dimension: every spelling that is understood, with exact factors to the dimension's metric unit.

Exact definitions: Thompson & Taylor, Guide for the Use of the International System of Units, NIST SP 811,
2008, Appendix B.
"""

from dataclasses import dataclass
from fractions import Fraction

IN_CM = Fraction(254, 100)  # 1 in = 2.54 cm exactly
LB_G = Fraction(45359237, 100000)  # 1 lb = 453.59237 g exactly
GAL_IN3 = Fraction(231)  # 1 US gallon = 231 cubic inches exactly
ACRE_FT2 = Fraction(43560)  # 1 acre = 43 560 square feet

FT_CM = 12 * IN_CM
YD_CM = 3 * FT_CM
MI_CM = 5280 * FT_CM
GAL_ML = GAL_IN3 * IN_CM**3
QT_ML = GAL_ML / 4
PT_ML = GAL_ML / 8
CUP_ML = GAL_ML / 16
FL_OZ_ML = GAL_ML / 128
OZ_G = LB_G / 16
FT2_M2 = (FT_CM / 100) ** 2
ACRE_M2 = ACRE_FT2 * FT2_M2
LB_GAL_G_L = LB_G / (GAL_ML / 1000)
LB_ACRE_G_M2 = LB_G / ACRE_M2
MPH_M_S = MI_CM / 100 / 3600


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: value in metric = value x factor + offset, in the metric unit of its dimension."""

    name: str
    factor: Fraction
    offset: Fraction = Fraction(0)


METRIC = {
    "length": "cm",
    "area": "m2",
    "volume": "ml",
    "mass": "g",
    "strength": "g_l",
    "fraction": "frac",
    "rate": "g_m2",
    "temperature": "c",
    "time": "s",
    "speed": "m_s",
    "count": "",
}
"""The metric unit of each dimension, written as in names."""

EXAMPLE = {
    "length": "2 1/2 in",
    "area": "0.5 acre",
    "volume": "24 fl oz",
    "mass": "4 oz",
    "strength": "4 lb ae/gal",
    "fraction": "50 %",
    "rate": "8 lb/acre",
    "temperature": "80 F",
    "time": "6 h",
    "speed": "10 mph",
    "count": "3",
}
"""An example to show whoever typed something that was not understood."""

MAY_BE_NEGATIVE = ("temperature",)


def _units(**spellings: tuple[str, Fraction | int]) -> dict[str, Unit]:
    found: dict[str, Unit] = {}
    for name, (words, factor) in spellings.items():
        for word in words.split("|"):
            found[word] = Unit(name, Fraction(factor))
    return found


UNITS: dict[str, dict[str, Unit]] = {
    "length": _units(
        mm=("mm|millimeter|millimeters", Fraction(1, 10)),
        cm=("cm|centimeter|centimeters", 1),
        m=("m|meter|meters|metre|metres", 100),
        km=("km", 100_000),
        inch=('in|in.|inch|inches|"|”|″', IN_CM),
        ft=("ft|ft.|foot|feet|'|’|′", FT_CM),
        yd=("yd|yard|yards", YD_CM),
        mi=("mi|mile|miles", MI_CM),
    ),
    "area": _units(
        m2=("m2|m²|sq m", 1),
        ha=("ha|hectare|hectares", 10_000),
        ft2=("ft2|ft²|sq ft|square feet", FT2_M2),
        acre=("acre|acres|ac", ACRE_M2),
    ),
    "volume": _units(
        ul=("ul|µl|μl", Fraction(1, 1000)),
        ml=("ml|milliliter|milliliters|cc", 1),
        l=("l|liter|liters|litre|litres", 1000),
        fl_oz=("fl oz|fl. oz.|fluid ounce|fluid ounces|floz", FL_OZ_ML),
        cup=("cup|cups", CUP_ML),
        pt=("pt|pint|pints", PT_ML),
        qt=("qt|quart|quarts", QT_ML),
        gal=("gal|gallon|gallons", GAL_ML),
    ),
    "mass": _units(
        mg=("mg", Fraction(1, 1000)),
        g=("g|gram|grams", 1),
        kg=("kg|kilogram|kilograms", 1000),
        oz=("oz|ounce|ounces", OZ_G),
        lb=("lb|lbs|pound|pounds", LB_G),
    ),
    "strength": _units(
        g_l=("g/l|g ae/l|g ai/l", 1),
        lb_gal=("lb/gal|lb ae/gal|lb ai/gal|lbs/gal", LB_GAL_G_L),
    ),
    "fraction": _units(
        frac=("frac", 1),
        percent=("%|percent|% v/v|%v/v", Fraction(1, 100)),
    ),
    "rate": _units(
        g_m2=("g/m2|g/m²", 1),
        kg_ha=("kg/ha|kg ae/ha", Fraction(1, 10)),
        lb_acre=("lb/acre|lb ae/acre|lb ai/acre|lb/a|lb ae/a", LB_ACRE_G_M2),
    ),
    "time": _units(
        s=("s|sec|second|seconds", 1),
        min=("min|minute|minutes", 60),
        h=("h|hr|hour|hours", 3600),
        day=("d|day|days", 86_400),
        week=("week|weeks", 604_800),
        # A month is a twelfth of a Julian year of 365.25 days, as the unit tables of astronomy have it (IAU 1976).
        month=("month|months", Fraction(2_629_800)),
    ),
    "speed": _units(
        m_s=("m/s", 1),
        km_h=("km/h", Fraction(10, 36)),
        mph=("mph", MPH_M_S),
    ),
    "temperature": {
        **{w: Unit("c", Fraction(1)) for w in ("c", "°c", "deg c")},
        **{w: Unit("f", Fraction(5, 9), Fraction(-160, 9)) for w in ("f", "°f", "deg f")},
    },
    "count": _units(count=("", 1)),
}

METRIC_NAMES = (
    "mm",
    "cm",
    "m",
    "km",
    "m2",
    "ha",
    "ul",
    "ml",
    "l",
    "mg",
    "g",
    "kg",
    "g_l",
    "g_m2",
    "kg_ha",
    "km_h",
    "m_s",
)
METRIC_SPELLINGS = frozenset(
    spelling for units in UNITS.values() for spelling, unit in units.items() if unit.name in METRIC_NAMES
)
"""Spellings of metric units, with which a comma is often a decimal sign."""
