"""Batches that are alike tell less; figures against scipy's and statsmodels' own."""

import warnings

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import betabinom

from stemward.reckon import outcome
from stemward.reckon.alike import believe, draws, effect, next_batch, next_chances, share_interval
from stemward.reckon.compare import Group, compare
from stemward.reckon.outcome import Prior


def test_without_stems_it_is_the_books_alone():
    """Beta(6.5, 2.5) where 6 dead and 2 alive are expected and half a stem is added each way."""
    assert share_interval(believe(Prior(6, 2))) == pytest.approx(outcome.interval(6.5, 2.5), abs=2e-3)


def test_a_grid_is_near_the_plain_binomial_where_each_stem_is_a_batch():
    """Stems one by one cannot be alike: 17 of 20 on top of 6 and 2 is Beta(23.5, 5.5)."""
    alone = believe(Prior(6, 2), [1] * 17 + [0] * 3, [1] * 20)
    assert share_interval(alone) == pytest.approx(outcome.interval(23.5, 5.5), abs=2e-3)


def test_few_batches_tell_less_than_as_many_stems_apart():
    """Two batches of ten are known less well than twenty stems, and batches far apart least."""
    width = lambda dead, seen: np.subtract(*share_interval(believe(Prior(1, 1), dead, seen))[::-1])  # noqa: E731
    assert width([8, 8], [10, 10]) > width([1] * 16 + [0] * 4, [1] * 20)
    assert width([10, 2, 10, 2], [10] * 4) > width([6, 6, 6, 6], [10] * 4)
    spread, even = believe(Prior(1, 1), [10, 2, 10, 2], [10] * 4), believe(Prior(1, 1), [6] * 4, [10] * 4)
    assert effect(spread, 10) > effect(even, 10) > 1


def test_next_batch_against_scipy():
    """Chances of a next batch are scipy's beta-binomial, mixed over what is believed."""
    belief = believe(Prior(5, 2), [7, 9], [10, 10])
    worth = (1 - belief.likeness) / belief.likeness
    k = np.arange(9)
    by_hand = np.array([
        (belief.weight * betabinom.pmf(d, 8, belief.share[:, None] * worth, (1 - belief.share[:, None]) * worth)).sum()
        for d in k
    ])  # fmt: skip
    assert next_chances(belief, 8) == pytest.approx(by_hand, abs=1e-9)
    low, high = next_batch(belief, 8)
    assert 0 <= low <= high <= 8


@settings(deadline=None, max_examples=25)
@given(st.floats(0, 15), st.floats(0, 15), st.lists(st.tuples(st.integers(0, 20), st.integers(0, 20)), max_size=5))
def test_beliefs_are_whole_and_in_bounds(a, b, batches):
    """Weights sum to 1, ends are in order, and draws lie within 0 and 1."""
    dead, seen = [min(x) for x in batches], [max(x) for x in batches]
    belief = believe(Prior(a, b), dead, seen)
    low, high = share_interval(belief)
    assert belief.weight.sum() == pytest.approx(1)
    assert 0 <= low <= high <= 1
    drawn = draws(belief, 200, np.random.default_rng(1))
    assert ((drawn >= 0) & (drawn <= 1)).all()
    assert next_chances(belief, 7).sum() == pytest.approx(1, abs=1e-6)


@settings(deadline=None, max_examples=40)
@given(st.integers(2, 60), st.integers(2, 60), st.data())
def test_intervals_against_statsmodels(one, other, data):
    """Wilson, Clopper-Pearson and Newcombe's difference as another hand works them."""
    from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

    dead, other_dead = data.draw(st.integers(0, one)), data.draw(st.integers(0, other))
    assert outcome.wilson(dead, one) == pytest.approx(proportion_confint(dead, one, method="wilson"), abs=1e-9)
    assert outcome.exact_interval(dead, one) == pytest.approx(proportion_confint(dead, one, method="beta"), abs=1e-7)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        theirs = confint_proportions_2indep(dead, one, other_dead, other, method="newcomb", compare="diff")
    assert outcome.newcombe(dead, one, other_dead, other) == pytest.approx(theirs, abs=1e-9)


def test_two_ways_compared():
    """56 of 70 against 48 of 80 differ where stems stand alone, and are not told apart in two batches each way."""
    alone = compare(Group([56], [70]), Group([48], [80]))
    assert alone.low > 0 and alone.effect == 1 and alone.verdict == "more"
    far = compare(Group([35, 21], [35, 35]), Group([40, 8], [40, 40]))
    assert far.effect > 2 and far.verdict == "not told apart"
    assert compare(Group([48], [80]), Group([56], [70])).verdict == "less"
    assert compare(Group([], []), Group([1], [2])).verdict == "nothing seen"
