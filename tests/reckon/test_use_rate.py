"""Use rates: the intervals hold what they promise, and order changes nothing."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon import use_rate
from stemward.reckon.use_rate import PRIOR, learn


@pytest.mark.parametrize("batches", [0, 1, 3, 8])
def test_nine_of_ten_days_fall_within_the_interval(batches):
    """90 % prediction intervals cover 88 to 92 % over people drawn from the prior (design: 90 % after 0, 1, 3, 8)."""
    rng = np.random.default_rng(7 + batches)
    hits, days = 0, 6000
    for _ in range(days):
        spread = math.sqrt(1 / rng.gamma(PRIOR.a, 1 / PRIOR.b))
        mean = rng.normal(PRIOR.mean, spread / math.sqrt(PRIOR.kappa))
        rate = learn(PRIOR, rng.normal(mean, spread, batches).tolist())
        used = math.exp(rng.normal(mean, spread))
        hits += use_rate.need_quantile_ml(rate, 1.0, 0.05) <= used <= use_rate.need_quantile_ml(rate, 1.0, 0.95)
    assert 0.88 <= hits / days <= 0.92


@pytest.mark.parametrize(("others", "own"), [((), 0), ((5,), 0), ((5,), 1), ((1, 1), 0), ((8, 3), 2), ((2,), 6)])
def test_two_people_and_more(others, own):
    """90 % prediction intervals cover 88 to 92 % for a new person beside others, before and after batches of their own.

    People are drawn as the model says: half of the prior's spread is shared, half each person's own.
    """
    rng = np.random.default_rng(11 + own + 100 * len(others))
    hits, days = 0, 6000
    for _ in range(days):
        spread = math.sqrt(1 / rng.gamma(PRIOR.a, 1 / PRIOR.b))
        part = spread / math.sqrt(2 * PRIOR.kappa)
        shared = rng.normal(0, part)
        seen = [rng.normal(shared + rng.normal(0, part), spread, n).tolist() for n in others]
        mean = shared + rng.normal(0, part)
        rate = learn(use_rate.start_from(seen), rng.normal(mean, spread, own).tolist())
        used = math.exp(rng.normal(mean, spread))
        hits += use_rate.need_quantile_ml(rate, 1.0, 0.05) <= used <= use_rate.need_quantile_ml(rate, 1.0, 0.95)
    assert 0.88 <= hits / days <= 0.92


def test_a_new_person_starts_near_the_others_and_no_surer_than_they_let():
    """Without others it is the prior; with many the shared half is known and the own half is not."""
    assert use_rate.start_from([]) == PRIOR
    many = use_rate.start_from([[0.6] * 50] * 50)
    assert many.mean == pytest.approx(0.6, abs=0.02)
    assert 1 / many.kappa == pytest.approx(0.5 / PRIOR.kappa, rel=0.05)
    one = use_rate.start_from([[0.6]])
    assert 0 < one.mean < 0.6
    assert PRIOR.kappa < one.kappa < many.kappa


def test_the_prior_spreads_by_a_factor_of_1_6():
    """The standard deviation of the rate on the log scale is 0.47 (engineering guess, factor 1.6)."""
    assert math.sqrt(PRIOR.b / (PRIOR.a - 1) / PRIOR.kappa) == pytest.approx(0.47, abs=0.005)


@given(st.lists(st.floats(-2, 2), max_size=6), st.randoms())
def test_order_and_parts_change_nothing(ratios, random):
    """One batch after the other, in any order, is all at once."""
    whole = learn(PRIOR, ratios)
    random.shuffle(ratios)
    rate = PRIOR
    for one in ratios:
        rate = learn(rate, [one])
    assert (rate.a, rate.b, rate.mean, rate.kappa) == pytest.approx((whole.a, whole.b, whole.mean, whole.kappa))
    assert rate.batches == len(ratios)


@given(st.floats(1, 5000), st.floats(0.01, 0.99), st.floats(0.5, 2))
def test_more_mixed_is_less_often_short_and_leaves_more(reckoned, share, more):
    """The chance of being short falls and the rest grows with what is mixed; quantiles invert chances."""
    mixed = use_rate.need_quantile_ml(PRIOR, reckoned, share)
    assert use_rate.chance_short(PRIOR, reckoned, mixed) == pytest.approx(1 - share, abs=1e-6)
    assert use_rate.chance_short(PRIOR, reckoned, mixed * (1 + more)) <= 1 - share + 1e-9
    low, high = (use_rate.expected_left_ml(PRIOR, reckoned, m) for m in (mixed, mixed * (1 + more)))
    assert 0 <= low <= high <= mixed * (1 + more)


def test_what_is_left_is_what_a_simulation_says():
    """E[(mixed - need)+] against 200,000 drawn days."""
    rate = learn(PRIOR, [0.2, 0.4])
    scale = math.sqrt(rate.b * (rate.kappa + 1) / (rate.a * rate.kappa))
    drawn = np.exp(rate.mean + scale * np.random.default_rng(3).standard_t(2 * rate.a, 200_000)) * 100
    assert use_rate.expected_left_ml(rate, 100, 150) == pytest.approx(np.maximum(150 - drawn, 0).mean(), rel=0.02)


def test_a_longer_way_back_asks_for_a_fuller_last_batch():
    """0.3 up to five minutes, rising, never over 0.8 (design)."""
    asked = [use_rate.last_batch_quantile(m) for m in (0, 5, 10, 30, 60, 600)]
    assert asked[0] == asked[1] == pytest.approx(0.3)
    assert asked == sorted(asked) and asked[-1] == pytest.approx(0.8)
    with pytest.raises(ValueError, match="not negative"):
        use_rate.last_batch_quantile(-1)
