"""How much may lie on an acre: linked clusters of stems, their ground, and the load on it."""

import numpy as np
import shapely
from numpy.typing import ArrayLike, NDArray
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components
from scipy.spatial import cKDTree

from stemward.units.table import ACRE_M2

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


def clusters(x_m: ArrayLike, y_m: ArrayLike, link_m: float) -> Ints:
    """Which stems belong together: linked, directly or over others, by steps of at most `link_m`.

    Returns labels 0..k-1, length n, numbered by the first stem of each. Exact, and quick for a million
    stems: all stems within one cell of side link / sqrt 2 are linked, so only links between cells are looked
    for, first between the outermost stems of neighbouring cells, then among whatever is still apart.
    """
    xy = np.column_stack([np.asarray(x_m, float), np.asarray(y_m, float)])
    if len(xy) == 0:
        return np.zeros(0, np.int64)
    at, cell = _cells(xy, link_m)
    linked = _outermost_links(xy, at, cell, link_m)
    parts = _parts(linked, len(at))
    labels = _parts(np.vstack([linked, _open_links(xy, cell, parts[cell], link_m)]), len(at))[cell]
    _, earliest, renumbered = np.unique(labels, return_index=True, return_inverse=True)
    rank = np.empty(len(earliest), np.int64)
    rank[np.argsort(earliest)] = np.arange(len(earliest))
    return rank[renumbered]


def _cells(xy: Floats, link_m: float) -> tuple[Ints, Ints]:
    """Occupied cells as (column, row), and the cell number of each stem."""
    # A hair under link / sqrt 2, so that two stems in one cell are within the link whatever the rounding.
    side_m = link_m / np.sqrt(2) * (1 - 1e-9)
    place = np.floor((xy - xy.min(axis=0)) / side_m).astype(np.int64)
    height = int(place[:, 1].max()) + 1
    keys, cell = np.unique(place[:, 0] * height + place[:, 1], return_inverse=True)
    return np.column_stack(np.divmod(keys, height)), cell.astype(np.int64)


def _parts(links: Ints, count: int) -> Ints:
    """Connected parts of `count` cells under links of shape (k, 2)."""
    graph = coo_array((np.ones(len(links), np.int8), (links[:, 0], links[:, 1])), shape=(count, count))
    return np.asarray(connected_components(graph, directed=False)[1], np.int64)


def _outermost_links(xy: Floats, at: Ints, cell: Ints, link_m: float) -> Ints:
    """Pairs of neighbouring cells whose stems facing each other are within the link."""
    height = int(at[:, 1].max()) + 5
    keys = at[:, 0] * height + at[:, 1]
    found = [np.zeros((0, 2), np.int64)]
    for across, up in ((1, 0), (0, 1), (1, 1), (1, -1)):
        along = xy[:, 0] * across + xy[:, 1] * up
        order = np.lexsort((along, cell))
        starts = np.searchsorted(cell[order], np.arange(len(at)))
        back, front = order[starts], order[np.append(starts[1:], len(order)) - 1]
        for step in (1, 2):
            wanted = keys + (across * height + up) * step
            spot = np.minimum(np.searchsorted(keys, wanted), len(keys) - 1)
            here = np.flatnonzero(keys[spot] == wanted)
            gap = np.hypot(*(xy[front[here]] - xy[back[spot[here]]]).T)
            near = here[gap <= link_m]
            found.append(np.column_stack([near, spot[near]]))
    return np.vstack(found)


def _open_links(xy: Floats, cell: Ints, part: Ints, link_m: float) -> Ints:
    """Links, as pairs of cells, between parts that are still apart.

    The largest part asks nobody: every other part asks all stems, which covers every pair of parts.
    """
    none = np.zeros((0, 2), np.int64)
    asking = np.flatnonzero(part != int(np.argmax(np.bincount(part))))
    if len(asking) == 0:
        return none
    everyone = cKDTree(xy)
    found = [none]
    for start in range(0, len(asking), 100_000):
        chunk = asking[start : start + 100_000]
        near = cKDTree(xy[chunk]).sparse_distance_matrix(everyone, link_m, output_type="ndarray")
        mine, other = chunk[near["i"]], near["j"]
        foreign = part[mine] != part[other]
        found.append(np.column_stack([cell[mine[foreign]], cell[other[foreign]]]))
    return np.unique(np.vstack(found), axis=0)


def cluster_area_m2(x_m: ArrayLike, y_m: ArrayLike, labels: ArrayLike, buffer_m: float, least_m2: float) -> Floats:
    """Ground of each cluster: its convex hull widened by a buffer, never under `least_m2`. m2, one per label.

    The area of a convex hull widened by b is area + perimeter x b + pi x b2, exactly (Steiner's formula).
    """
    which = np.asarray(labels, np.int64)
    if len(which) == 0:
        return np.zeros(0)
    order = np.argsort(which, kind="stable")
    points = shapely.points(np.asarray(x_m, float)[order], np.asarray(y_m, float)[order])
    hulls = shapely.convex_hull(shapely.multipoints(points, indices=which[order]))
    # A hull of two stems or a row of stems is a line, whose outline is walked there and back.
    around_m = np.where(shapely.get_dimensions(hulls) == 1, 2.0, 1.0) * shapely.length(hulls)
    ground_m2 = shapely.area(hulls) + around_m * buffer_m + np.pi * buffer_m**2
    return np.asarray(np.maximum(ground_m2, least_m2), float)


def rate_g_m2(ae_g: ArrayLike, labels: ArrayLike, area_m2: ArrayLike) -> Floats:
    """Load of each cluster, grams of acid equivalent per square metre."""
    area = np.asarray(area_m2, float)
    load_g = np.bincount(np.asarray(labels, np.int64), np.asarray(ae_g, float), minlength=len(area))
    return np.asarray(load_g / area, float)


def mean_rate_g_m2(ae_g: ArrayLike, area_m2: ArrayLike) -> float:
    """Load over all ground together; shown beside the greatest and never deciding."""
    total_m2 = float(np.sum(np.asarray(area_m2, float)))
    return float(np.sum(np.asarray(ae_g, float))) / total_m2 if total_m2 else 0.0


def mix_ml_left_per_acre(limit_g_m2: float, used_g_m2: float, mix_ae_g_l: float) -> float:
    """Finished mix that may still go on any one acre, mL, 0 when the limit is reached.

    Check: 8 lb ae an acre and 20 % of a 4 lb product leave 10 gallons (arithmetic).
    """
    left_g = max(limit_g_m2 - used_g_m2, 0.0) * float(ACRE_M2)
    return left_g / mix_ae_g_l * 1000
