"""Chances of staying dry: bounds, persistence, blocks; measured at Newark."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon.dry import both_wet, dry_blocks, dry_hours, observed_dry, odds_ratio


def test_bounds_of_six_hours():
    """0.10 0.20 0.30 0.10 0 0.05: between 0.25 and 0.70 whatever ties them (Frechet bounds, by hand)."""
    found = dry_hours([0.10, 0.20, 0.30, 0.10, 0.0, 0.05])
    assert found.least == pytest.approx(0.25)
    assert found.most == pytest.approx(0.70)
    assert found.least <= found.persistent <= found.most


def test_six_hours_at_newark():
    """Wet 6.8 % of hours, wet after wet 0.721: the chain says 0.840 where independence says 0.654 and 0.860 was seen
    (computed from an open data set, weather.md B7)."""
    assert dry_hours([0.068] * 6).persistent == pytest.approx(0.840, abs=0.002)
    assert dry_hours([0.068] * 6, odds=1.0).persistent == pytest.approx(0.654, abs=0.003)
    both = both_wet(0.068, 0.068, 124.0)
    assert both / 0.068 == pytest.approx(0.721, abs=0.002)


def test_a_block_is_one_event():
    """20 % for twelve hours: six of them are dry with at least 80 %, and nothing is multiplied."""
    inside = dry_blocks([], [0.2])
    assert (inside.least, inside.most) == (pytest.approx(0.8), 1.0)
    assert np.isnan(inside.persistent)
    assert dry_blocks([0.2], [0.3]).least == pytest.approx(0.5)
    assert dry_blocks([0.2], [0.3]).most == pytest.approx(0.8)


def test_the_odds_of_a_series():
    """Long spells have high odds; a series that alternates has low ones."""
    assert odds_ratio([1] * 50 + [0] * 50) > 100
    assert odds_ratio([0, 1] * 50) < 0.01
    assert observed_dry([0, 0, 1, 0, 0, 0], 2).tolist() == [True, False, False, True, True]


chances = st.lists(st.floats(0, 1), min_size=1, max_size=24)


@given(chances, st.floats(0.1, 1000))
def test_the_estimate_lies_within_its_bounds(p, odds):
    """For any chances and any tie."""
    found = dry_hours(p, odds)
    assert -1e-12 <= found.least <= found.persistent + 1e-9
    assert found.persistent <= found.most + 1e-9


@given(chances, st.floats(0, 1))
def test_an_hour_more_never_makes_it_drier(p, more):
    """Bounds and estimate fall or stay."""
    short, long = dry_hours(p), dry_hours([*p, more])
    assert long.most <= short.most + 1e-12
    assert long.persistent <= short.persistent + 1e-9


@given(st.floats(0.001, 0.999), st.floats(0.001, 0.999), st.floats(0.01, 1000))
def test_both_wet_keeps_the_odds_ratio(a, b, odds):
    """Plackett's form is consistent with both margins and gives the odds ratio back."""
    p11 = both_wet(a, b, odds)
    p10, p01 = a - p11, b - p11
    p00 = 1 - a - b + p11
    assert min(p11, p10, p01, p00) >= -1e-12
    if min(p10, p01, p11, p00) > 1e-9:
        assert p11 * p00 / (p10 * p01) == pytest.approx(odds, rel=1e-4)
