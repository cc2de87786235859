"""Shares, intervals, ten stems, hours and money: rounding is outward, and more never means less."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon import effort, outcome, survey
from stemward.reckon.lots import lot_size, wait_s
from stemward.reckon.outcome import Prior


def test_ten_stems_are_rounded_outward():
    """0.62 to 0.91 is 6 to 10; 0.70 to 0.80 is 7 to 8; 0.05 to 0.31 is 0 to 4 (look.md)."""
    assert outcome.ten_stems(0.62, 0.91) == (6, 10)
    assert outcome.ten_stems(0.70, 0.80) == (7, 8)
    assert outcome.ten_stems(0.05, 0.31) == (0, 4)


@given(st.floats(0, 1), st.floats(0, 1))
def test_ten_stems_never_narrow_what_is_known(one, other):
    """The shown ends lie on or outside the interval."""
    low, high = sorted((one, other))
    shown = outcome.ten_stems(low, high)
    assert shown[0] / 10 <= low + 1e-9 and high - 1e-9 <= shown[1] / 10
    assert 0 <= shown[0] <= shown[1] <= 10


# Under one half a quantile can lie so near 1 that the number before it already cuts off a millionth.
@given(st.floats(0.5, 50), st.floats(0.5, 50), st.floats(0.5, 0.99))
def test_intervals_hold_their_share(a, b, level):
    """A beta interval leaves the same tail on both sides and widens with the level."""
    from scipy.special import betainc

    low, high = outcome.interval(a, b, level)
    assert betainc(a, b, high) - betainc(a, b, low) == pytest.approx(level, abs=1e-6)


def test_books_and_own_stems_add_up():
    """Prior 8.5 and 1.5 with 9 dead of 12 is 17.5 and 4.5 (datasets.md, by hand)."""
    assert outcome.posterior(Prior(8.5, 1.5), 9, 12) == Prior(17.5, 4.5)
    assert outcome.pool([Prior(1, 3), Prior(2, 2)], [2, 0.5]) == Prior(3, 7)
    with pytest.raises(ValueError, match="more can be dead"):
        outcome.posterior(Prior(1, 1), 3, 2)


@given(st.integers(1, 60), st.data())
def test_wilson_and_exact_hold_the_share_seen(seen, data):
    """Both intervals hold the share that was seen, and the exact one is the wider below or above."""
    dead = data.draw(st.integers(0, seen))
    for low, high in (outcome.wilson(dead, seen), outcome.exact_interval(dead, seen)):
        assert 0 <= low <= dead / seen + 1e-12 and dead / seen - 1e-12 <= high <= 1


@given(st.integers(1, 30), st.integers(1, 30), st.data())
def test_fisher_agrees_with_scipy(one, other, data):
    """Another hand's exact test as the oracle."""
    from scipy.stats import fisher_exact

    dead, other_dead = data.draw(st.integers(0, one)), data.draw(st.integers(0, other))
    table = [[dead, one - dead], [other_dead, other - other_dead]]
    assert outcome.fisher_p(dead, one - dead, other_dead, other - other_dead) == pytest.approx(
        fisher_exact(table).pvalue, abs=1e-6
    )


def test_differences_and_batches():
    """A difference lies in its interval; batches alike need no widening, batches apart do."""
    low, high = outcome.newcombe(56, 70, 48, 80)
    assert low < 56 / 70 - 48 / 80 < high and low > 0
    assert outcome.design_effect([8, 8, 8], [10, 10, 10]) == 1
    assert outcome.design_effect([10, 10, 1], [10, 10, 10]) > 3
    assert outcome.design_effect([5], [10]) == 1


def test_hours_are_bands_rounded_outward():
    """100 stems at 32 to 80 an hour: 1.25 to 3.1 h, shown 1 to 3.5 (halves); long days in whole hours."""
    assert effort.hours_band(100, 32, 80) == (1.25, 3.125)
    assert effort.shown_hours(1.25, 3.125) == (1.0, 3.5)
    assert effort.shown_hours(7.2, 11.1) == (7.0, 12.0)
    with pytest.raises(ValueError, match="two ends"):
        effort.hours_band(10, 5, 2)


@given(st.floats(0.01, 200), st.floats(1, 4))
def test_shown_hours_never_narrow(low, wider):
    """The band shown holds the band worked out."""
    shown = effort.shown_hours(low, low * wider)
    assert shown[0] <= low + 1e-9 and low * wider - 1e-9 <= shown[1]


def test_money_is_whole_cents_outward():
    """2 to 3 h at 20.00, 100 to 200 mL of a jug of 946 mL at 50.00."""
    low, high = effort.money_band_cents(2, 3, 2000, 100, 200, 5000, 946.353)
    assert (low, high) == (math.floor(4000 + 528.34), math.ceil(6000 + 1056.69))


@given(st.floats(30, 3000), st.floats(0, 120), st.floats(0, 200), st.floats(1, 60), st.floats(1, 60))
def test_a_lot_is_as_large_as_the_limit_lets_it_be(limit, walk, clear, cut, treat):
    """No stump of the lot waits too long, and one more would."""
    lot = lot_size(limit, walk, clear, cut, treat)
    if lot:
        assert wait_s(lot, walk, clear, cut, treat) <= limit + 1e-6
    assert wait_s(lot + 1, walk, clear, cut, treat) > limit - 1e-6


@given(st.lists(st.integers(0, 40), min_size=2, max_size=30))
def test_plots_hold_their_mean_and_looking_at_all_leaves_no_doubt(counts):
    """The interval holds the total; with every plot looked at its width is nothing."""
    part = survey.estimate(counts, 1, 1000)
    assert part.low <= part.total <= part.high
    whole = survey.estimate(counts, 1, len(counts))
    assert whole.se == pytest.approx(0, abs=1e-9)
    assert whole.total == pytest.approx(sum(counts))


def test_resampling_and_t_are_near_each_other_on_plain_counts():
    """On ordinary counts the two intervals agree; on counts with many zeros they may not, and that is said."""
    rng = np.random.default_rng(2)
    counts = rng.poisson(12, 30)
    ends = survey.bootstrap(counts, rng)
    t = survey.t_reach(30, 0.9) * survey.standard_error(counts)
    plain = (counts.mean() - t, counts.mean() + t)
    assert not survey.disagree(ends, plain)
    assert survey.disagree((0.0, 1.0), (0.0, 3.0))


def test_classes_use_the_mean_of_squares():
    """1 to 3 in: mean 2, mean of squares 13/3, not 4 (arithmetic of a uniform)."""
    assert survey.class_means(1, 3) == (2, pytest.approx(13 / 3))
    assert survey.belt_m2(50, 2) == 100
    assert survey.ratio([4, 6], [2, 3])[0] == 2
