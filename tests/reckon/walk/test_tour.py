"""The order of places: published optima, laws, and odd input."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from instances import distances, instances

from stemward.reckon.walk.tour import round_m, shaken, shortest_steps, untangled


def apart(points):
    points = np.asarray(points, float)
    return np.hypot(*(points[:, None] - points[None]).transpose(2, 0, 1))


@pytest.mark.parametrize("name", ["gr17", "pr107"])
def test_small_published_rounds_are_found(name):
    # Best known: TSPLIB (Reinelt 1991) and ../shared/handbook/datasets.md, part 5.
    one = instances()[name]
    dist = distances(one)
    found = shaken(shortest_steps(dist), dist, 2000, np.random.default_rng(1))
    assert round_m(found, dist) == one["best"]


def test_the_best_of_all_orders():
    rng = np.random.default_rng(7)
    for _ in range(20):
        dist = apart(rng.uniform(0, 10, (7, 2)))
        best = min(round_m([0, *rest], dist) for rest in itertools.permutations(range(1, 7)))
        found = shaken(shortest_steps(dist), dist, 200, np.random.default_rng(1))
        assert round_m(found, dist) == pytest.approx(best)


points = st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30)), min_size=1, max_size=40)


@settings(max_examples=80, deadline=None)
@given(points)
def test_every_place_once_and_never_longer(some):
    dist = apart(some)
    first = shortest_steps(dist)
    better = untangled(first, dist)
    best = shaken(better, dist, 30, np.random.default_rng(3))
    assert sorted(first) == sorted(better) == sorted(best) == list(range(len(some)))
    assert first[0] == better[0] == best[0]
    assert round_m(best, dist) <= round_m(better, dist) + 1e-6 <= round_m(first, dist) + 2e-6


def test_same_seed_same_round():
    dist = apart(np.random.default_rng(2).uniform(0, 100, (120, 2)))
    one, two = (shaken(range(120), dist, 400, np.random.default_rng(5)) for _ in range(2))
    assert one == two


def test_places_on_a_line_are_walked_along_it():
    dist = apart([(x, 0) for x in (0, 5, 1, 4, 2, 3)])
    assert round_m(untangled(shortest_steps(dist), dist), dist) == 10


def test_places_on_one_spot():
    dist = apart([(1, 1)] * 8)
    assert round_m(untangled(shortest_steps(dist), dist), dist) == 0
