"""Figures back in the person's units."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward import units

SHOWN = [
    (units.length_small, 15.24, "cm", "us", "6 in"),
    (units.length_small, 3.175, "cm", "us", "1.25 in"),
    (units.length_small, 15.24, "cm", "metric", "15.2 cm"),
    (units.length_far, 6.7, "m", "us", "22 ft"),
    (units.volume, 709.76, "ml", "us", "24 fl oz"),
    (units.volume, 3785.41, "ml", "us", "1 gal"),
    (units.volume, 4.05, "ml", "us", "4 mL"),
    (units.volume, 0.52, "ml", "us", "0.5 mL"),
    (units.volume, 1500.0, "ml", "metric", "1.5 L"),
    (units.rate, 0.8966809, "g_m2", "us", "8 lb ae per acre"),
    (units.rate, 0.8966809, "g_m2", "metric", "9 kg ae per ha"),
    (units.strength, 479.306, "g_l", "us", "4 lb ae/gal"),
    (units.percent, 0.498, "frac", "us", "49.8 %"),
    (units.area, 8498.4, "m2", "us", "2.1 acres"),
    (units.temperature, 26.67, "c", "us", "80 °F"),
    (units.mass, 453.6, "g", "us", "1 lb"),
]


@pytest.mark.parametrize(("show", "value", "unit", "system", "expected"), SHOWN)
def test_shown(show, value, unit, system, expected):
    """Figures are short, and in the unit a person would use."""
    assert str(show(value, unit, system)) == expected


@given(st.floats(0.5, 5e5), st.sampled_from(["us", "metric"]))
def test_volumes_survive_being_shown(ml, system):
    """What is shown, read again, is what was meant within what rounding leaves."""
    shown = units.volume(ml, "ml", system)
    assert units.read(str(shown), "volume").to("ml") == pytest.approx(ml, rel=0.06, abs=0.06)


@given(st.floats(0.01, 1e6), st.floats(0.01, 1e6))
def test_ranges_are_rounded_outward(one, other):
    """A range is never shown narrower than it is."""
    low, high = sorted((one, other))
    down, up = units.outward(low, high)
    assert float(down.replace(",", "")) <= low * (1 + 1e-6)
    assert float(up.replace(",", "")) >= high * (1 - 1e-6)
