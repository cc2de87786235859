"""Who walks where, checked by another hand: bottles, days, barriers, days alike, what is left."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from instances import distances, instances

from independent.check_walk import troubles_of
from stemward.reckon.walk import Task, Walker, unlike, walks
from stemward.reckon.walk.around import ground

# As much alike as days of one crew have to be: the design's own figure, no source.
MOST_UNLIKE = 1.15


def case(count, seed=1, size_m=200.0, walls=(), service_s=40.0, refill_s=300.0):
    rng = np.random.default_rng(seed)
    places = np.vstack([[(0.0, 0.0)], rng.uniform(0, size_m, (count, 2))])
    here = ground(places, [shapely.LineString(wall) for wall in walls])
    need = rng.gamma(2, 0.5, count)
    return here, Task(here.dist_m, np.full(count, service_s), need, 0, refill_s, 0.7)


@pytest.mark.parametrize("people", [1, 2, 3, 4, 7, 10])
def test_days_are_alike(people):
    here, task = case(160)
    walkers = [Walker(bottle_ml=60.0)] * people
    found = walks(task, walkers, effort=0.3)
    assert not troubles_of(here, task, walkers, found)
    assert unlike(found.rounds) <= MOST_UNLIKE
    assert not (found.left or found.cut_off or found.too_much)


def test_a_short_day_leaves_stems_and_no_one_works_longer():
    here, task = case(120)
    walkers = [Walker(bottle_ml=60.0, day_s=2400.0)] * 2
    found = walks(task, walkers, effort=0.3)
    assert not troubles_of(here, task, walkers, found)
    assert 0 < len(found.left) < 120
    # With the day twice as long, fewer are left.
    longer = walks(task, [Walker(bottle_ml=60.0, day_s=4800.0)] * 2, effort=0.3)
    assert len(longer.left) < len(found.left)


def test_what_is_worth_most_is_reached_first():
    _here, task = case(60, size_m=60.0)
    value = np.ones(60)
    value[:20] = 10.0
    worth = Task(task.dist_m, task.service_s, task.need_ml, 0, 300.0, 0.7, value)
    found = walks(worth, [Walker(day_s=2000.0)], effort=0.5)
    reached = [n - 1 for n in found.rounds[0].stops if n]
    assert 20 <= len(reached) < 60 and set(range(20)) <= set(reached)


def test_a_clump_is_worth_as_many_as_it_holds_and_days_stay_alike():
    # A clump of fifty among sixty: with time for all, days must be alike as ever; with little, the clump is reached.
    here, task = case(60, size_m=60.0)
    value = np.ones(60)
    value[7] = 50.0
    worth = Task(task.dist_m, task.service_s, task.need_ml, 0, 300.0, 0.7, value)
    walkers = [Walker(bottle_ml=60.0)] * 3
    found = walks(worth, walkers, effort=0.3)
    assert not troubles_of(here, worth, walkers, found) and not found.left
    assert unlike(found.rounds) <= MOST_UNLIKE
    short = walks(worth, [Walker(day_s=900.0)], effort=0.3)
    assert 8 in short.rounds[0].stops and len(short.left) > 20


def test_around_a_fence_and_not_through_it():
    wall = [(100.0, -10.0), (100.0, 180.0)]
    here, task = case(80, walls=[wall])
    walkers = [Walker(bottle_ml=40.0)] * 2
    found = walks(task, walkers, effort=0.3)
    assert not troubles_of(here, task, walkers, found, [wall])
    open_here, open_task = case(80)
    open_walk = walks(open_task, walkers, effort=0.3)
    assert troubles_of(open_here, open_task, walkers, open_walk, [wall])  # the checker does see a way through a wall
    assert sum(one.length_m for one in found.rounds) > sum(one.length_m for one in open_walk.rounds)


def test_behind_a_line_without_an_end():
    ring = [(50.0, 50.0), (150.0, 50.0), (150.0, 150.0), (50.0, 150.0), (50.0, 50.0)]
    here, task = case(60, walls=[ring])
    found = walks(task, [Walker()], effort=0.2)
    inside = {n for n, (x, y) in enumerate(here.places) if 51 < x < 149 and 51 < y < 149}
    assert inside and inside <= set(found.cut_off)
    assert not troubles_of(here, task, [Walker()], found, [ring])


def test_more_than_the_bottle_holds_is_said_and_not_carried():
    _, task = case(10)
    task.need_ml[3] = 500.0
    found = walks(task, [Walker(bottle_ml=100.0)], effort=0.2)
    assert found.too_much == (4,) and 4 not in found.rounds[0].stops


@pytest.mark.parametrize(
    "places",
    [[(5.0, 5.0)], [(5.0, 5.0)] * 6, [(float(x), 0.0) for x in range(12)], []],
    ids=["one", "on one spot", "in a line", "none"],
)
@pytest.mark.parametrize("people", [1, 3])
def test_odd_places(places, people):
    all_places = np.array([(0.0, 0.0), *places])
    here = ground(all_places)
    task = Task(here.dist_m, np.full(len(places), 30.0), np.full(len(places), 1.0), 0, 60.0, 0.7)
    walkers = [Walker(bottle_ml=5.0)] * people
    found = walks(task, walkers, effort=0.2)
    assert len(found.rounds) == people and not troubles_of(here, task, walkers, found)


def test_same_seed_and_effort_same_walk():
    _, task = case(90)
    one, two = (walks(task, [Walker(bottle_ml=30.0)] * 3, seed=4, effort=0.3) for _ in range(2))
    assert one == two


def test_from_where_people_stand_to_the_truck():
    rng = np.random.default_rng(9)
    places = np.vstack([[(0, 0), (200, 200), (200, 0)], rng.uniform(0, 200, (50, 2))])
    here = ground(places)
    task = Task(here.dist_m, np.full(50, 40.0), np.full(50, 1.0), 0, 300.0, 0.7)
    walkers = [Walker(start=1, bottle_ml=60.0), Walker(start=2, bottle_ml=60.0)]
    found = walks(task, walkers, effort=0.3)
    assert [(one.stops[0], one.stops[-1]) for one in found.rounds] == [(1, 0), (2, 0)]
    assert not troubles_of(here, task, walkers, found)


def test_vehicles_with_a_capacity():
    # Christofides and Eilon 1969, 21 customers: best known 375, within 2.5 %.
    one = instances()["E-n22-k4"]
    dist = distances(one)
    need = np.array(one["demand"][1:], float)
    found = walks(Task(dist, np.zeros(21), need), [Walker(bottle_ml=one["capacity"])])
    assert 375 <= found.rounds[0].length_m <= 375 * 1.025


@settings(max_examples=25, deadline=None)
@given(st.integers(1, 30), st.integers(1, 4), st.floats(1.5, 50), st.integers(0, 1000))
def test_laws(count, people, bottle_ml, seed):
    here, task = case(count, seed)
    walkers = [Walker(bottle_ml=bottle_ml, day_s=3000.0)] * people
    found = walks(task, walkers, effort=0.05)
    assert not troubles_of(here, task, walkers, found)
    assert all(task.need_ml[n - 1] > bottle_ml for n in found.too_much)


def test_nobody_and_too_many():
    _, task = case(3)
    with pytest.raises(ValueError, match="at least one person"):
        walks(task, [])
    many = Task(np.zeros((2502, 2502)), np.zeros(2501), np.zeros(2501))
    with pytest.raises(ValueError, match="at most"):
        walks(many, [Walker()])
    assert math.isinf(unlike([*walks(Task(np.zeros((2, 2)), np.ones(1), np.zeros(1)), [Walker()] * 2).rounds]))
