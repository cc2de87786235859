"""Distances from treated stems to what is kept from harm, shared by the checks on roots and water."""

from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray

from stemward.checks.case import Job
from stemward.handbook import Book
from stemward.kinds import Shape, Spared, Stems
from stemward.reckon import roots


def geometry(shape: Shape) -> shapely.Geometry:
    """The shapely geometry of a shape, in the tract's metres."""
    if shape.kind == "point":
        return shapely.Point(shape.rings[0][0])
    if shape.kind == "line":
        return shapely.LineString(shape.rings[0])
    return shapely.Polygon(shape.rings[0], shape.rings[1:])


@lru_cache(maxsize=16)
def _by_x(stems: Stems) -> tuple[NDArray[np.intp], NDArray[np.float64]]:
    """Rows in order of x, and their x: so that what is near is found without looking at every stem."""
    order = np.argsort(stems.x_m, kind="stable")
    return order, stems.x_m[order]


def near(job: Job, spared: Spared, farthest_m: float) -> tuple[NDArray[np.intp], NDArray[np.float64]]:
    """Rows of the job's stems within `farthest_m` of a spared plant or place, and their distances, metres."""
    shape = geometry(spared.shape)
    left, low, right, high = shape.bounds
    order, xs = _by_x(job.stems)
    rows = order[np.searchsorted(xs, left - farthest_m) : np.searchsorted(xs, right + farthest_m, side="right")]
    y_m = job.stems.y_m[rows]
    rows = np.sort(rows[(y_m >= low - farthest_m) & (y_m <= high + farthest_m)])
    away_m = roots.distance_m(job.stems.x_m[rows], job.stems.y_m[rows], shape)
    here = away_m <= farthest_m
    return rows[here], away_m[here]


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
