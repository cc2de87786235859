"""Walking distances around what nobody crosses."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.reckon.walk.around import ground

FENCE = shapely.LineString([(5, -50), (5, 20)])


def test_straight_where_nothing_stands_between():
    found = ground(np.array([[0, 0], [3, 4]]))
    assert found.dist_m[0, 1] == 5 and found.way(0, 1) == [(0, 0), (3, 4)]


def test_around_the_end_of_a_fence():
    found = ground(np.array([[0, 0], [10, 0]]), [FENCE])
    # By hand: to the end of the fence at (5, 20) and back down; the margin of half a metre makes it a little more.
    by_hand = 2 * math.hypot(5, 20)
    assert by_hand < found.dist_m[0, 1] < by_hand + 2.5
    way = found.way(0, 1)
    assert len(way) > 2 and not shapely.LineString(way).crosses(FENCE)
    assert shapely.LineString(way).length == pytest.approx(found.dist_m[0, 1])


@pytest.mark.parametrize("gate", [shapely.Point(5, 1), shapely.LineString([(-20, 1), (20, 1)])])
def test_through_a_gate_or_along_a_lane(gate):
    found = ground(np.array([[0, 0], [10, 0]]), [FENCE], [gate])
    assert found.dist_m[0, 1] == pytest.approx(10, abs=0.5)


def test_no_way_into_a_ring():
    ring = shapely.Point(0, 0).buffer(8).exterior
    found = ground(np.array([[0, 0], [20, 0], [0.0, 1]]), [ring])
    assert found.dist_m[0, 1] == math.inf and found.way(0, 1) == []
    assert found.dist_m[0, 2] == 1


def test_at_the_edge_of_a_pond_and_deep_in_it():
    pond = shapely.Point(0, 0).buffer(20)
    found = ground(np.array([[30, 0], [19.5, 0], [0, 0]]), [pond])
    assert found.dist_m[0, 1] == pytest.approx(9.5, abs=0.5)  # reached from the edge
    assert found.dist_m[0, 2] == math.inf


def test_a_long_winding_stream_stays_quick_and_whole():
    x = np.linspace(0, 500, 800)
    stream = shapely.LineString(np.column_stack([x, 250 + 20 * np.sin(x / 9) + np.cos(x * 3)]))
    found = ground(np.array([[250, 100], [250, 400]]), [stream])
    assert not shapely.LineString(found.way(0, 1)).crosses(stream)


def test_near_many_ponds_nothing_is_cut_off():
    # Ponds of a hundred corners in a grid, 8 m apart: between them one walks, and beside each one stands.
    ponds = [shapely.Point(28 * i, 28 * j).buffer(10, quad_segs=25) for i in range(6) for j in range(6)]
    beside = [(28 * i + 14.0, 28 * j + 11.0) for i in range(5) for j in range(6)]
    found = ground(np.array([(-20.0, -20.0), *beside]), ponds)
    assert np.isfinite(found.dist_m).all()
    for n in range(1, len(beside) + 1):
        way = shapely.LineString(found.way(0, n))
        assert not any(way.crosses(pond) for pond in ponds)


spots = st.tuples(st.floats(-40, 40), st.floats(-40, 40))


@settings(max_examples=60, deadline=None)
@given(st.lists(spots, min_size=2, max_size=6), st.lists(spots, min_size=2, max_size=5))
def test_laws_of_distance(places, line):
    wall = shapely.LineString(line)
    if wall.length < 1 or not wall.is_simple:
        return
    found = ground(np.array(places), [wall])
    dist = found.dist_m
    stands = found.stands
    straight = np.hypot(*(stands[:, None] - stands[None]).transpose(2, 0, 1))
    assert np.allclose(dist, dist.T) and (dist >= straight - 1e-9).all()
    for a in range(len(places)):
        for b in range(len(places)):
            way = found.way(a, b)
            if way and a != b:
                assert sum(map(math.dist, way, way[1:])) == pytest.approx(dist[a, b], abs=1e-6)
            for c in range(len(places)):
                # One walks around corners that stand 0.2 m out, so passing a place close by may be a little shorter.
                assert dist[a, b] <= dist[a, c] + dist[c, b] + 1.0
