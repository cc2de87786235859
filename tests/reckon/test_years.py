"""The years ahead: exact where it can be worked exactly, and never the mean of the kill in the recursion."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.reckon.outcome import Prior
from stemward.reckon.sensitivity import one_at_a_time, variance_share
from stemward.reckon.years import (
    Ahead,
    Doing,
    Strategy,
    beta_draws,
    break_even,
    expected_left,
    run,
    years_to_gone,
)

D = 4000


def ahead(plants=(100.0,), find=0.9, sprouts=1.0, seedlings=0.0, decline=0.5, paths=D):
    """Targets with inputs that are the same in all paths."""
    shape = (len(plants), paths)
    return Ahead(np.array(plants), *(np.full(shape, v) for v in (find, sprouts, seedlings, decline)))


def doing(kill, hours=(0.1, 0.02, 0.02), cents_h=2000):
    """A way with a kill by path; hours for a stem of each pool."""
    kill = np.atleast_2d(kill)
    one = np.array([hours, (4, 1, 1), (1, 0.2, 0.2), [cents_h * h for h in hours]])
    return Doing(kill, np.repeat(one[:, None, :], len(kill), axis=1))


def test_beta_moments_by_hand():
    """Beta(18, 2), 0.9 found: 0.0090649 after three visits, 0.00062865 after five (reckon.md)."""
    assert expected_left(Prior(18, 2), 0.9, 3) == pytest.approx(0.0090649, abs=5e-8)
    assert expected_left(Prior(18, 2), 0.9, 5) == pytest.approx(0.00062865, abs=5e-9)


@pytest.mark.parametrize(("a", "b", "find"), [(18, 2, 0.9), (6, 4, 0.8), (3, 1, 0.95)])
def test_paths_are_the_moments_where_those_hold(a, b, find):
    """Fixed finding, no seedlings: the mean of the paths is the sum of moments, after every visit."""
    kill = beta_draws(Prior(a, b), 10_000, np.random.default_rng(1))
    (path,) = run(ahead(find=find, paths=10_000), [doing(kill)], [Strategy("treat", (0,) * 5)])
    for visits in range(1, 6):
        left = float(path.plants[visits].mean(dtype=np.float64)) / 100
        assert left == pytest.approx(expected_left(Prior(a, b), find, visits), rel=5e-3)


def test_the_mean_kill_promises_too_much():
    """The mean kill of 0.9 in the recursion is too low by 1.3 after three visits and by 2.5 after five (reckon.md)."""
    kill = beta_draws(Prior(18, 2), D, np.random.default_rng(1))
    paths = [run(ahead(), [doing(k)], [Strategy("treat", (0,) * 5)])[0] for k in (kill, np.full(D, 0.9))]
    drawn, fixed = (p.plants.mean(axis=1, dtype=np.float64) for p in paths)
    assert fixed[3] == pytest.approx(100 * (1 - 0.81) ** 3, rel=1e-4)
    assert drawn[3] / fixed[3] == pytest.approx(1.32, abs=0.02)
    assert drawn[5] / fixed[5] == pytest.approx(2.54, abs=0.05)


def test_one_year_by_hand():
    """100 plants, 0.9 found, 0.8 of them die: 10 missed, 18 back with 3 sprouts each, 20 seedlings: 84 stems; 9 h."""
    (path,) = run(ahead(sprouts=3, seedlings=0.2), [doing(np.full(D, 0.8))], [Strategy("treat", (0, None, 0))])
    assert path.plants[1, 0] == pytest.approx(48)
    assert path.stems[1, 0] == pytest.approx(10 + 18 * 3 + 20)
    assert path.used[0, 0, 0] == pytest.approx(9.0, rel=1e-5)
    assert path.used[3, 0, 0] == pytest.approx(18_000, rel=1e-5)
    # No visit: a quarter of the small ones stands up, half as many new seedlings as the year before.
    assert path.plants[2, 0] == pytest.approx(58)
    assert path.used[:, 1].sum() == 0


def test_nothing_done_costs_nothing_and_kills_nothing():
    """Without a visit and without seedlings all stay."""
    (path,) = run(ahead((100, 50)), [], [Strategy("nothing", (None,) * 4)])
    assert path.plants == pytest.approx(150)
    assert path.used.sum() == 0 and years_to_gone(path, 0.01) == (None, 0.0)


def test_visits_stop_under_the_floor():
    """Under a tenth of the start nobody goes, and nothing more is spent."""
    kill = [doing(np.full(D, 0.95))]
    on, stopping = (run(ahead(), kill, [Strategy("x", (0,) * 6, stop)])[0] for stop in (0.0, 0.1))
    assert stopping.spent("hours")[-1, 0] < on.spent("hours")[-1, 0]
    assert stopping.plants[-1, 0] < 10 and stopping.used[0, 3:].sum() == 0


def test_treating_pays_after_some_years_against_cutting():
    """Cutting costs a little every year, treating much at once: the year is where the sums cross."""
    dear, cheap = doing(np.full(D, 0.95), (0.3, 0.1, 0.1)), doing(np.full(D, 0.05), (0.1, 0.1, 0.1))
    treat, cut = run(ahead(), [dear, cheap], [Strategy("treat", (0,) * 10, 0.01), Strategy("cut", (1,) * 10)])
    year = break_even(treat, cut)
    spent, other = (np.median(p.spent("cents"), axis=1) for p in (treat, cut))
    assert year is not None and spent[year - 1] <= other[year - 1] and spent[year - 2] > other[year - 2]
    assert break_even(cut, treat) is None
    assert years_to_gone(treat, 0.01)[0] == 3


@settings(max_examples=20, deadline=None)
@given(st.floats(0.3, 1), st.floats(0, 1), st.floats(0, 1), st.floats(1, 6), st.integers(1, 6))
def test_more_kill_never_leaves_more(find, kill, other, sprouts, years):
    """With all else the same a better kill leaves no more plants and takes no more hours."""
    least, most = sorted((kill, other))
    land = ahead(find=find, sprouts=sprouts, seedlings=0.1, paths=3)
    worse, better = (run(land, [doing(np.full(3, k))], [Strategy("x", (0,) * years)])[0] for k in (least, most))
    assert (better.plants <= worse.plants * (1 + 1e-5)).all()
    assert (better.plants >= 0).all()
    assert (better.spent("hours") <= worse.spent("hours") * (1 + 1e-5)).all()


def test_shares_of_variance_against_the_formula():
    """Ishigami's function (a 7, b 0.1): first-order shares 0.3139, 0.4424 and 0 by its closed form."""
    chance = np.random.default_rng(3)
    x = chance.uniform(-np.pi, np.pi, (3, 40_000))
    y = np.sin(x[0]) + 7 * np.sin(x[1]) ** 2 + 0.1 * x[2] ** 4 * np.sin(x[0])
    total = 49 / 8 + 0.1 * np.pi**4 / 5 + 0.01 * np.pi**8 / 18 + 0.5
    exact = (0.5 * (1 + 0.1 * np.pi**4 / 5) ** 2 / total, 49 / 8 / total, 0.0)
    assert exact[0] == pytest.approx(0.3139, abs=1e-4)
    for given_, share in zip(x, exact, strict=True):
        assert variance_share(given_, y) == pytest.approx(share, abs=0.015)
    assert variance_share(np.ones(100), np.arange(100.0)) == 0


def test_one_at_a_time():
    """Each input between its ends, the others in the middle."""
    found = one_at_a_time(lambda at: at["a"] + 10 * at["b"], {"a": (0, 1, 2), "b": (1, 2, 3)})
    assert found == {"a": (20, 22), "b": (11, 31)}
    assert list(itertools.chain(*found.values()))
