"""Distances from treated stems to what is kept from harm, worked once for all ways of a target."""

from functools import lru_cache
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from stemward.checks.case import Job
from stemward.handbook import Book
from stemward.kinds import Shape, Spared, Stems
from stemward.reckon import roots

Floats = NDArray[np.float64]
FARTHEST_M = 150.0
"""Outlines farther off than this are not measured to; single plants always are."""


def geometry(shape: Shape) -> shapely.Geometry:
    """The shapely geometry of a shape, in the tract's metres."""
    if shape.kind == "point":
        return shapely.Point(shape.rings[0][0])
    if shape.kind == "line":
        return shapely.LineString(shape.rings[0])
    return shapely.Polygon(shape.rings[0], shape.rings[1:])


@lru_cache(maxsize=16)
def _by_x(stems: Stems) -> tuple[NDArray[np.intp], Floats]:
    """Rows in order of x, and their x: so that what is near is found without looking at every stem."""
    order = np.argsort(stems.x_m, kind="stable")
    return order, stems.x_m[order]


def near(job: Job, spared: Spared, farthest_m: float) -> tuple[NDArray[np.intp], Floats]:
    """Rows of the job's stems within `farthest_m` of a spared plant or place, and their distances, metres."""
    return _near(job.stems, spared, farthest_m)


def _near(stems: Stems, spared: Spared, farthest_m: float) -> tuple[NDArray[np.intp], Floats]:
    shape = geometry(spared.shape)
    left, low, right, high = shape.bounds
    order, xs = _by_x(stems)
    rows = order[np.searchsorted(xs, left - farthest_m) : np.searchsorted(xs, right + farthest_m, side="right")]
    y_m = stems.y_m[rows]
    rows = np.sort(rows[(y_m >= low - farthest_m) & (y_m <= high + farthest_m)])
    away_m = roots.distance_m(stems.x_m[rows], stems.y_m[rows], shape)
    here = away_m <= farthest_m
    return rows[here], away_m[here]


_KNOWN: dict[tuple[int, int], tuple[Any, Any, Floats]] = {}
_MOST_KNOWN = 8


def nearest_m(job: Job, spared: tuple[Spared, ...]) -> Floats:
    """Distance from each spared plant or place to the nearest stem of the job, metres; inf where none is measured.

    `spared` is the tract's own tuple, so that one answer serves every check and way of a target.
    """
    key = (id(job.stems), id(spared))
    known = _KNOWN.get(key)
    # Both are kept beside the answer: an id is given again only once its owner is gone.
    if known is not None and known[0] is job.stems and known[1] is spared:
        return known[2]
    if len(_KNOWN) >= _MOST_KNOWN:
        _KNOWN.pop(next(iter(_KNOWN)))
    away_m = _nearest(job.stems, spared)
    _KNOWN[key] = (job.stems, spared, away_m)
    return away_m


def _nearest(stems: Stems, spared: tuple[Spared, ...]) -> Floats:
    away_m = np.full(len(spared), np.inf)
    if not len(stems):
        return away_m
    points = [n for n, one in enumerate(spared) if one.shape.kind == "point"]
    if points:
        places = np.array([spared[n].shape.rings[0][0] for n in points], float)
        tree = cKDTree(np.column_stack([stems.x_m, stems.y_m]), balanced_tree=False, compact_nodes=False)
        away_m[points] = tree.query(places)[0]
    for n, one in enumerate(spared):
        if one.shape.kind != "point":
            found = _near(stems, one, FARTHEST_M)[1]
            away_m[n] = found.min(initial=np.inf)
    return away_m


def reach(spared: Spared, book: Book) -> roots.Reach:
    """How far the roots of a spared plant reach from its point or outline."""
    if spared.kind != "tree":
        around_m = book.defaults["small_plants_reach_m"].number
        return roots.Reach(0.0, around_m / 2, around_m)
    keys = ("protection_multiple", "advice_multiple", "likely_multiple")
    multiples = tuple(book.defaults[key].number for key in keys)
    return roots.reach_m(
        spared.dbh_cm or 0.0,
        spared.crown_radius_m or 0.0,
        multiples,  # type: ignore[arg-type]
        book.defaults["crown_multiple"].number,
    )
