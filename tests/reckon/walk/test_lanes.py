"""Lanes: they cover the patch, lie side by side, end at the truck, follow each other uphill, carry refill marks."""

import itertools
import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.reckon.walk.lanes import along_deg, lanes

FIELD = shapely.box(0, 0, 100, 30)


def test_lanes_of_a_rectangle_by_hand():
    # 30 m across at 6 m are five lanes of 100 m, along the long side.
    found = lanes(FIELD, 6.0, truck=(0.0, 0.0))
    assert [round(one.length_m, 6) for one in found] == [100.0] * 5
    assert [one.number for one in found] == [1, 2, 3, 4, 5]
    # Walked from the far side to the truck's, to and fro, ending near the truck.
    heights = [one.start[1] for one in found]
    assert heights == sorted(heights, reverse=True)
    assert math.dist(found[-1].end, (0, 0)) < math.dist(found[-1].start, (0, 0))
    for one, two in itertools.pairwise(found):
        assert math.dist(one.end, two.start) == pytest.approx(6.0)


@pytest.mark.parametrize(("uphill", "rising"), [(0.0, True), (180.0, False)])
def test_across_the_slope_and_uphill(uphill, rising):
    found = lanes(FIELD, 6.0, truck=(0.0, 0.0), uphill_deg=uphill)
    heights = [one.start[1] for one in found]
    assert heights == sorted(heights, reverse=not rising)
    assert all(one.start[1] == pytest.approx(one.end[1]) for one in found)


def test_refill_marks_stand_where_the_bottle_is_out():
    found = lanes(FIELD, 6.0, truck=(0.0, 0.0), runs_m=130.0)
    walked, marks = 0.0, []
    for one in found:
        marks += [walked + math.dist(one.start, at) for at in one.refills]
        walked += one.length_m
    assert marks == pytest.approx([130.0, 260.0, 390.0])


def test_people_have_neighbouring_lanes_alike_in_length():
    found = lanes(FIELD, 2.0, truck=(0.0, 0.0), people=3)
    lengths = [sum(one.length_m for one in found if one.person == n) for n in range(3)]
    assert max(lengths) / min(lengths) <= 1.15
    numbers = [[one.number for one in found if one.person == n] for n in range(3)]
    assert all(block == list(range(block[0], block[-1] + 1)) for block in numbers)


def test_a_bay_cuts_lanes_into_pieces():
    bay = shapely.Polygon([(0, 0), (100, 0), (100, 30), (60, 30), (60, 10), (40, 10), (40, 30), (0, 30)])
    found = lanes(bay, 5.0, truck=(0.0, 0.0))
    assert sum(one.number == 6 for one in found) + sum(one.number == 1 for one in found) >= 3
    assert all(bay.buffer(1e-6).contains(shapely.LineString([one.start, one.end])) for one in found)


@settings(max_examples=60, deadline=None)
@given(
    st.integers(3, 9), st.floats(1, 8), st.integers(0, 999), st.integers(1, 4), st.one_of(st.none(), st.floats(0, 360))
)
def test_lanes_cover_the_patch(corners, width, seed, people, uphill):
    rng = np.random.default_rng(seed)
    angles = np.sort(rng.uniform(0, 2 * math.pi, corners))
    reach = rng.uniform(20, 60, corners)
    patch = shapely.Polygon(np.column_stack([np.cos(angles) * reach, np.sin(angles) * reach]))
    if not patch.is_valid or patch.area < 50:
        return
    found = lanes(patch, width, (100.0, 0.0), people, 70.0, uphill)
    swept = shapely.union_all(
        [shapely.LineString([one.start, one.end]).buffer(width / 2 + 1e-6, cap_style="square") for one in found]
    )
    # What the square ends of slanting rims leave uncovered is a sliver a lane.
    assert patch.difference(swept).area <= 0.12 * patch.area + width * width
    assert all(0 <= one.person < people for one in found)


def test_what_cannot_be_laid():
    for bad in ((shapely.Polygon(), 5.0, 1), (FIELD, 0.0, 1), (FIELD, 5.0, 0)):
        with pytest.raises(ValueError, match="a polygon with area"):
            lanes(bad[0], bad[1], (0.0, 0.0), bad[2])
    with pytest.raises(ValueError, match="more than"):
        lanes(FIELD, 0.01, (0.0, 0.0))


def test_the_long_side():
    assert along_deg(FIELD) == pytest.approx(90)
    assert along_deg(shapely.box(0, 0, 3, 50)) % 180 == pytest.approx(0)
