"""Clusters of stems and the load on them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse.csgraph import connected_components
from scipy.spatial.distance import cdist

from stemward.reckon import limits

LB_ACRE = 453.59237 / 4046.8564224  # g/m2, NIST SP 811, 2008
PLACES = st.lists(st.tuples(st.floats(0, 90), st.floats(0, 90)), min_size=1, max_size=40)
GRID = st.lists(st.tuples(st.integers(0, 12), st.integers(0, 12)), min_size=1, max_size=40)


def partition(labels):
    """Labels as a set of sets of rows."""
    return {frozenset(np.flatnonzero(labels == k).tolist()) for k in set(labels.tolist())}


@given(PLACES)
def test_clusters_are_those_of_linking_all_near_pairs(places):
    """The quick way finds the same clusters as looking at all pairs."""
    xy = np.array(places)
    near = cdist(xy, xy) <= 10
    assert partition(limits.clusters(xy[:, 0], xy[:, 1], 10.0)) == partition(connected_components(near)[1])


@given(GRID)
def test_clusters_hold_at_exactly_the_linking_distance(places):
    """Stems exactly 10 m apart are linked."""
    xy = np.array(places) * 5.0
    near = cdist(xy, xy) <= 10
    assert partition(limits.clusters(xy[:, 0], xy[:, 1], 10.0)) == partition(connected_components(near)[1])


@given(PLACES, st.floats(0, 6.28), st.floats(-500, 500), st.randoms())
def test_turning_moving_and_reordering_change_nothing(places, angle, shift, random):
    """Loads do not depend on where the corner post stands, where north is, or the order of rows."""
    xy = np.array(places)
    ae_g = np.linspace(1, 3, len(xy))
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    moved = xy @ turn.T + shift
    order = list(range(len(xy)))
    random.shuffle(order)

    def rates(at, mass):
        labels = limits.clusters(at[:, 0], at[:, 1], 10.0)
        return np.sort(limits.rate_g_m2(mass, labels, limits.cluster_area_m2(at[:, 0], at[:, 1], labels, 5.0, 404.7)))

    gaps = np.abs(cdist(xy, xy) - 10)
    if gaps.min() < 1e-6:
        return  # turned, a pair at exactly the linking distance may fall on either side of it
    assert rates(moved[order], ae_g[order]) == pytest.approx(rates(xy, ae_g), rel=1e-6)


def test_one_stem_far_off_does_not_thin_the_rest():
    """A single stem 150 m away is a cluster of its own, so it cannot make the load of the others vanish."""
    x, y = np.array([0.0, 5.0, 0.0, 5.0, 155.0]), np.array([0.0, 0.0, 5.0, 5.0, 0.0])
    labels = limits.clusters(x, y, 10.0)
    area = limits.cluster_area_m2(x, y, labels, 5.0, 404.7)
    rate = limits.rate_g_m2(np.ones(5), labels, area)
    assert labels.tolist() == [0, 0, 0, 0, 1]
    assert rate.max() == pytest.approx(4 / 404.7)
    assert limits.mean_rate_g_m2(np.ones(5), area) < rate.max()


def test_area_of_a_square_of_stems():
    """Hull 20 x 20 m, 5 m wider all round: 400 + 80 x 5 + 25 pi (Steiner)."""
    x, y = np.array([0.0, 20, 20, 0, 10]), np.array([0.0, 0, 20, 20, 10])
    labels = np.zeros(5, int)
    assert limits.cluster_area_m2(x, y, labels, 5.0, 0.0) == pytest.approx([400 + 80 * 5 + 25 * np.pi])
    line = limits.cluster_area_m2(x[:2], y[:2], labels[:2], 5.0, 0.0)
    assert line == pytest.approx([20 * 10 + 25 * np.pi])


def test_ten_gallons_may_go_on_an_acre():
    """8 lb ae an acre, 20 % of a 4 lb product: 10 gallons. Arithmetic on published figures (UF label maxima)."""
    strength = 4 * 453.59237 / 3.785411784
    left = limits.mix_ml_left_per_acre(8 * LB_ACRE, 0.0, 0.2 * strength)
    assert left / 3785.411784 == pytest.approx(10.0)
    assert limits.mix_ml_left_per_acre(8 * LB_ACRE, 9 * LB_ACRE, 0.2 * strength) == 0.0


def test_no_stems_no_clusters():
    """Nothing in, nothing out."""
    none = np.zeros(0)
    assert len(limits.clusters(none, none, 10.0)) == 0
    assert len(limits.cluster_area_m2(none, none, none, 5.0, 404.7)) == 0
