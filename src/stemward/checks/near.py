"""Distances from treated stems to what is kept from harm, worked once for all ways of a target."""

from dataclasses import dataclass
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


@dataclass(frozen=True, eq=False)
class Rooted:
    """Columns of what is kept, in the tract's order: how far roots reach, what has none, and trees without a size."""

    reach: roots.Reach
    rooted: NDArray[np.bool_]
    unsized: NDArray[np.bool_]
    species: NDArray[np.str_]


_ROOTED: dict[int, tuple[Any, Any, Rooted]] = {}


def rooted(spared: tuple[Spared, ...], book: Book) -> Rooted:
    """The columns of all that is kept, made once for a tract."""
    known = _ROOTED.get(id(spared))
    if known is not None and known[0] is spared and known[1] is book:
        return known[2]
    if len(_ROOTED) >= _MOST_KNOWN:
        _ROOTED.pop(next(iter(_ROOTED)))
    made = _rooted(spared, book)
    _ROOTED[id(spared)] = (spared, book, made)
    return made


def _rooted(spared: tuple[Spared, ...], book: Book) -> Rooted:
    kinds = np.array([one.kind for one in spared], dtype="U")
    tree = kinds == "tree"
    dbh_cm = np.array([one.dbh_cm or 0.0 for one in spared])
    crown_m = np.array([one.crown_radius_m or 0.0 for one in spared])
    multiples = tuple(book.defaults[f"{name}_multiple"].number for name in ("protection", "advice", "likely"))
    trees = roots.reach_m(dbh_cm, crown_m, multiples, book.defaults["crown_multiple"].number)  # type: ignore[arg-type]
    around_m = book.defaults["small_plants_reach_m"].number
    reach = roots.Reach(
        np.where(tree, trees.protection_m, 0.0),
        np.where(tree, trees.advice_m, around_m / 2),
        np.where(tree, trees.likely_m, around_m),
    )
    return Rooted(
        reach,
        np.isin(kinds, ROOTED),
        tree & (dbh_cm == 0) & (crown_m == 0),
        np.array([one.species for one in spared], dtype="U"),
    )


ROOTED = ("tree", "small plants", "garden")
"""Kinds of what is kept that take things up by roots."""


def reach_of(rooted: Rooted, number: int) -> roots.Reach:
    """The reach of one of them."""
    whole = rooted.reach
    return roots.Reach(float(whole.protection_m[number]), float(whole.advice_m[number]), float(whole.likely_m[number]))
