"""The lint that keeps millilitres from meeting litres."""

import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tools"))
from lint_suffixes import findings

WRONG = [
    "f(mix_ml=volume_l)",
    "total = a_ml + b_l",
    "total = a_m - b_cm",
    "far = a_m > b_cm",
    "width_cm = width_m",
    "f(diameter_cm=stem.diameter_in)",
    "x = a_ae_g_l + b_g",
]
RIGHT = [
    "f(mix_ml=volume_ml)",
    "total = a_ml + b_ml",
    "mix_ml = volume_l * 1000",
    "f(mix_ml=1000 * volume_l)",
    "rate = a_g / b_m2",
    "far = a_m > 3",
    "x = a_ae_g_l + b_g_l",
    "names = form + list",
]


@pytest.mark.parametrize("source", WRONG)
def test_fires(source):
    """Two units that meet are found."""
    assert list(findings(source))


@pytest.mark.parametrize("source", RIGHT)
def test_clears(source):
    """The same unit, or a factor between, is let be."""
    assert not list(findings(source))


def test_the_source_itself_is_clean():
    """No two units meet anywhere in the program."""
    found = {p.name: list(findings(p.read_text())) for p in (ROOT / "src").rglob("*.py")}
    assert {name: f for name, f in found.items() if f} == {}
