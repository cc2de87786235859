"""What a treatment can reach below ground."""

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon import roots
from stemward.reckon.roots import Level, Reach

REACH = Reach(4.8, 7.2, 12.0)
ORDER = ("no", "weak", "yes")


def test_imazapyr_reaches_neighbouring_roots_and_glyphosate_hardly():
    """Glyphosate on soil hardly moves to neighbouring roots, imazapyr does. Common practice, no source."""
    assert roots.soil_level(3.0, REACH, "no", 10.0) == Level.NO_ROUTE_KNOWN
    assert roots.soil_level(3.0, REACH, "yes", 10.0) == Level.MUCH


@given(st.floats(0, 60), st.floats(0, 60), st.sampled_from(ORDER), st.sampled_from(ORDER), st.floats(0, 5))
def test_levels_never_fall_when_nearer_or_more_active(one, other, active, more, mass_g):
    """Nearer, or an ingredient that soil holds less: never a milder word."""
    near, far = sorted((one, other))
    low, high = sorted((active, more), key=ORDER.index)
    assert roots.soil_level(near, REACH, low, mass_g) >= roots.soil_level(far, REACH, low, mass_g)
    assert roots.soil_level(near, REACH, high, mass_g) >= roots.soil_level(near, REACH, low, mass_g)


@given(st.floats(0, 60), st.floats(0, 60), st.floats(1, 40), st.booleans(), st.booleans(), st.booleans())
def test_shared_roots_never_milder_when_nearer_or_cut(one, other, graft_m, clone, moves, cut):
    """Nearer, or a cut stump instead of a standing stem: never a milder word."""
    near, far = sorted((one, other))
    level = roots.shared_root_level
    assert level(near, graft_m, clone, moves, cut) >= level(far, graft_m, clone, moves, cut)
    assert level(near, graft_m, clone, moves, True) >= level(near, graft_m, clone, moves, False)
    assert level(near, graft_m, True, moves, cut) >= level(near, graft_m, False, moves, cut)


def test_soil_mass_is_a_band():
    """What drips, or all of it where roots give it off. Drip shares: practitioner's judgement, no source."""
    low, high = roots.soil_mass_g([10.0], 0.05, 0.2, False)
    assert (low[0], high[0]) == (0.5, 2.0)
    assert roots.soil_mass_g([10.0], 0.05, 0.2, True)[1][0] == 10.0


def test_distances_to_points_and_outlines():
    """Zero inside an outline, straight-line outside."""
    square = shapely.box(0, 0, 10, 10)
    assert roots.distance_m([5.0, 13.0], [5.0, 14.0], square) == pytest.approx([0.0, 5.0])
    assert np.ndim(roots.distance_m([1.0], [1.0], shapely.Point(4, 5))) == 1


def test_the_score_refuses_a_half_life_under_a_day():
    """Under one day the score turns round, so it is refused."""
    with pytest.raises(ValueError, match="half-life"):
        roots.gus(0.5, 100.0)
