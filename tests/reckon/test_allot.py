"""Sharing out a sum: never more than there is, the best piece first, near the best of all ways on small cases."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.reckon.allot import _PIECES, allot


def given_targets(plants, kill, takes, budget, find=1.0):
    """Targets with one path each."""
    n = len(plants)
    kills = np.array(kill, float)[:, None]
    return allot(np.array(plants, float), kills, np.full((n, 1), find), np.array(takes, float),
                 np.array(takes, float), np.array(budget, float))  # fmt: skip


def test_the_cheapest_kill_comes_first_by_hand():
    """100 plants at 0.1 h with 0.9, and 100 at 0.2 h with 0.9: 10 h go to the first whole, 5 of 15 h to the second."""
    found = given_targets([100, 100], [0.9, 0.9], [0.1, 0.2], [15])
    assert found.share[0].tolist() == [1.0, 0.2]
    assert found.spent[0].tolist() == pytest.approx([10, 4])
    assert found.gain[0].tolist() == pytest.approx([9, 4.5])
    assert found.next_gain[0] == pytest.approx(4.5)
    assert found.left[1].tolist() == pytest.approx([10, 82])


def test_what_lived_through_a_visit_is_harder_to_kill():
    """Half the paths kill all, half kill none: after one visit the next brings nothing, for all the mean kill."""
    one = allot(np.array([100.0]), np.array([[1.0, 0.0]]), np.ones((1, 2)), np.array([0.1]), np.array([0.1]),
                np.array([100.0, 100.0]))  # fmt: skip
    assert one.left[:, 0].tolist() == pytest.approx([100, 50, 50])
    with pytest.raises(ValueError, match="takes something"):
        given_targets([1], [0.5], [0], [1])


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 200), st.floats(0.05, 1), st.floats(0.01, 1)), min_size=1, max_size=4),
    st.lists(st.floats(0, 60), min_size=1, max_size=4),
)
def test_no_more_is_spent_than_there_is(targets, budget):
    """Sums hold, plants never grow in number, and what is undone is never better than what was done."""
    found = given_targets(*zip(*targets, strict=True), budget)
    assert (found.spent.sum(axis=1) <= np.array(budget) + 1e-9).all()
    assert (np.diff(found.left, axis=0) <= 1e-9).all()


def test_near_the_best_of_all_ways():
    """Three targets, two years, all ways of whole pieces tried: what lives is within a twentieth of the best."""
    plants, kill, takes, sums = [60, 40, 80], [0.9, 0.6, 0.8], [0.2, 0.1, 0.25], [8.0, 8.0]
    ours = given_targets(plants, kill, takes, sums).left[-1].sum()
    best = np.inf
    ways = list(itertools.product(range(0, _PIECES + 1, 1), repeat=3))
    shares = np.array(ways) / _PIECES
    first = shares[(shares * np.array(plants) * takes).sum(axis=1) <= sums[0] + 1e-9]
    for one in first:
        left = np.array(plants) * (1 - one * kill)
        second = shares[(shares * left * takes).sum(axis=1) <= sums[1] + 1e-9]
        best = min(best, (left * (1 - second * kill)).sum(axis=1).min())
    assert best <= ours <= 1.05 * best
