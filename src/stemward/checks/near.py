"""Distances from treated stems to what is kept from harm, shared by the checks on roots and water."""

from collections.abc import Iterator

import numpy as np
import shapely
from numpy.typing import NDArray

from stemward.checks.case import Case, Job
from stemward.handbook import Book
from stemward.kinds import Shape, Spared
from stemward.reckon import roots

PLANT_KINDS = ("tree", "small plants", "garden")


def geometry(shape: Shape) -> shapely.Geometry:
    """The shapely geometry of a shape, in the tract's metres."""
    if shape.kind == "point":
        return shapely.Point(shape.rings[0][0])
    if shape.kind == "line":
        return shapely.LineString(shape.rings[0])
    return shapely.Polygon(shape.rings[0], shape.rings[1:])


def distances_m(job: Job, spared: Spared) -> NDArray[np.float64]:
    """Distance of every stem of a job to one spared plant or place, length n, metres; 0 inside."""
    return roots.distance_m(job.stems.x_m, job.stems.y_m, geometry(spared.shape))


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


def plants_near(case: Case, job: Job, farthest_m: float) -> Iterator[tuple[Spared, NDArray[np.float64]]]:
    """Spared plants with a stem of the job within `farthest_m`, each with the distances of all its stems."""
    if len(job.stems) == 0:
        return
    x, y = job.stems.x_m, job.stems.y_m
    box = shapely.box(x.min() - farthest_m, y.min() - farthest_m, x.max() + farthest_m, y.max() + farthest_m)
    for spared in case.tract.spared:
        if spared.kind in PLANT_KINDS and box.intersects(geometry(spared.shape)):
            away_m = distances_m(job, spared)
            if away_m.min() <= farthest_m:
                yield spared, away_m
