"""Two arms: alike, drawn by a seeded coin, and what sizes tell apart."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.reckon.arms import told_apart, two_arms
from stemward.reckon.compare import Group, compare
from stemward.reckon.outcome import newcombe


def stand(count, seed=1):
    rng = np.random.default_rng(seed)
    return rng.uniform(1, 30, count), rng.uniform(0, 100, count), rng.uniform(0, 100, count)


@settings(deadline=None)
@given(st.integers(0, 80), st.integers(0, 50), st.integers(0, 999))
def test_arms_are_of_one_size_and_share_no_plant(count, each, seed):
    one, other = two_arms(*stand(count, seed), each, np.random.default_rng(seed))
    assert len(one) == len(other) == min(each, count // 2)
    assert len({*one, *other}) == 2 * len(one) and all(0 <= n < count for n in (*one, *other))
    assert (one, other) == two_arms(*stand(count, seed), each, np.random.default_rng(seed))


def test_arms_are_alike_in_size_and_place():
    # Over many coins the mean difference is nothing, and each time it is small beside that of a bare draw.
    apart, bare = [], []
    for seed in range(60):
        size, x, y = stand(120, seed)
        one, other = two_arms(size, x, y, 40, np.random.default_rng(seed))
        apart.append(size[one].mean() - size[other].mean())
        drawn = np.random.default_rng(seed).permutation(120)
        bare.append(size[drawn[:40]].mean() - size[drawn[40:80]].mean())
        assert abs(x[one].mean() - x[other].mean()) < 12
    assert abs(np.mean(apart)) < 0.5 and np.std(apart) < 0.8 * np.std(bare)


@pytest.mark.parametrize("each", [10, 20, 40, 100])
def test_what_is_told_apart(each):
    # Newcombe's interval (Newcombe 1998, Stat. in Med. 17:873-890, method 10) of the two leaves 0 out, that of one more
    # dead does not.
    dead, other = told_apart(each)
    assert dead == round(0.9 * each)
    assert newcombe(dead, each, other, each)[0] > 0 >= newcombe(dead, each, other + 1, each)[0]


def test_larger_arms_tell_smaller_differences():
    apart = [(dead - other) / each for each in (10, 20, 40, 80) for dead, other in [told_apart(each)]]
    assert apart == sorted(apart, reverse=True)
    assert told_apart(1) is None


@pytest.mark.parametrize("each", [1, 2, 5, 6, 10, 20, 33, 40, 75])
def test_halving_finds_what_trying_each_finds(each):
    """The most dead in the other arm that is told apart, by trying every number from above."""
    dead = round(0.9 * each)
    tried = (n for n in range(dead - 1, -1, -1) if compare(Group([dead], [each]), Group([n], [each])).verdict == "more")
    most = next(tried, None)
    assert told_apart(each) == (None if most is None else (dead, most))
