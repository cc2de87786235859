"""Sample plots laid out: inside, apart, the same for the same draw, moved with the ground."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity

from stemward.reckon.lay_plots import at_random, bearing_and_distance, on_grid, transects

SQUARE = shapely.Polygon([(0, 0), (100, 0), (100, 100), (0, 100)])
BENT = shapely.Polygon([(0, 0), (120, 0), (120, 30), (40, 30), (40, 100), (0, 100)])


def rng(seed: int) -> np.random.Generator:
    """A draw of that number."""
    return np.random.default_rng(seed)


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10_000), count=st.integers(1, 20), shape=st.sampled_from([SQUARE, BENT]))
def test_plots_lie_inside_and_are_the_same_for_the_same_draw(seed, count, shape):
    """Every centre is inside the patch, and the same number gives the same plots."""
    for lay in (lambda g: at_random(shape, count, 3.59, g), lambda g: on_grid(shape, count, g)):
        found = lay(rng(seed))
        assert shapely.intersects_xy(shape, found[:, 0], found[:, 1]).all()
        assert np.array_equal(found, lay(rng(seed)))


@settings(max_examples=30, deadline=None)
@given(seed=st.integers(0, 10_000))
def test_random_plots_do_not_overlap_where_there_is_room(seed):
    """Ten plots of 3.59 m radius on a hectare keep two radii apart."""
    found = at_random(SQUARE, 10, 3.59, rng(seed))
    apart = np.hypot(*(found[:, None] - found[None]).transpose(2, 0, 1))
    assert apart[~np.eye(10, dtype=bool)].min() >= 2 * 3.59


def test_random_plots_cover_the_patch_evenly():
    """Over many draws each quarter of a square gets a quarter of the plots."""
    found = np.vstack([at_random(SQUARE, 4, 1.0, rng(n)) for n in range(500)])
    share = ((found[:, 0] < 50) & (found[:, 1] < 50)).mean()
    assert share == pytest.approx(0.25, abs=0.03)


@pytest.mark.parametrize("count", [4, 9, 25])
def test_a_grid_has_about_as_many_plots_as_asked(count):
    """On average over the start a square grid has the number that was asked for."""
    mean = np.mean([len(on_grid(SQUARE, count, rng(n))) for n in range(300)])
    assert mean == pytest.approx(count, rel=0.06)


def test_plots_move_with_the_ground():
    """A patch moved 500 m east has its plots moved 500 m east."""
    moved = affinity.translate(BENT, 500, -20)
    for lay in (lambda p: at_random(p, 6, 3.0, rng(7)), lambda p: on_grid(p, 6, rng(7))):
        assert np.allclose(lay(moved), lay(BENT) + np.array([500, -20]))


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 1000), bearing=st.floats(0, 360), count=st.integers(1, 6))
def test_belts_lie_inside_and_along_their_bearing(seed, bearing, count):
    """Each belt's middle line is inside the patch and runs along the bearing or against it."""
    for start, end in transects(BENT, count, bearing, rng(seed)):
        assert BENT.buffer(1e-6).covers(shapely.LineString([start, end]))
        along, far = bearing_and_distance(start, end)
        if far > 1e-3:
            turned = (along - bearing) % 180
            assert min(turned, 180 - turned) < 0.01


@pytest.mark.parametrize(("end", "bearing", "far"), [((0, 10), 0, 10), ((10, 0), 90, 10), ((-3, -4), 216.87, 5)])
def test_bearings_are_from_north(end, bearing, far):
    """North is 0, east 90 (compass geometry)."""
    assert bearing_and_distance((0, 0), end) == pytest.approx((bearing, far), abs=0.01)


def test_a_patch_without_area_is_refused():
    """A line has no room for plots."""
    for polygon in (shapely.Polygon(), shapely.Polygon([(0, 0), (1, 1), (2, 2)])):
        with pytest.raises(ValueError, match="area"):
            at_random(polygon, 3, 1.0, rng(1))
    assert math.isclose(SQUARE.area, 10_000)
