"""Where sample plots go: at random, on a grid with one random start, or as belts. Metres, shapely polygons."""

import math
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

Floats = NDArray[np.float64]
_MOST_TRIES = 20_000


def at_random(polygon: Any, count: int, radius_m: float, rng: np.random.Generator) -> Floats:
    """Centres (n, 2) drawn evenly over the polygon, two radii apart as long as there is room for that.

    ValueError for a polygon without area or a count under 1.
    """
    _check(polygon, count)
    left, bottom, right, top = polygon.bounds
    shapely.prepare(polygon)
    found: list[tuple[float, float]] = []
    apart_m = 2 * radius_m
    for attempt in range(_MOST_TRIES):
        if len(found) == count:
            break
        if attempt % 400 == 399:
            apart_m *= 0.8  # no room: closer together rather than fewer
        x, y = rng.uniform(left, right), rng.uniform(bottom, top)
        inside = bool(shapely.intersects_xy(polygon, x, y))
        if inside and all(math.dist((x, y), other) >= apart_m for other in found):
            found.append((x, y))
    return np.array(found, float).reshape(-1, 2)


def on_grid(polygon: Any, count: int, rng: np.random.Generator) -> Floats:
    """Centres (n, 2) on a square grid of which only the start is drawn; n is near `count`, seldom the same.

    Spacing is the side of a square that holds one plot's share of the area (systematic sample with a random start).
    """
    _check(polygon, count)
    side_m = math.sqrt(polygon.area / count)
    left, bottom, right, top = polygon.bounds
    first_x, first_y = left + rng.uniform(0, side_m), bottom + rng.uniform(0, side_m)
    x, y = np.meshgrid(
        np.arange(first_x - side_m, right + side_m, side_m), np.arange(first_y - side_m, top + side_m, side_m)
    )
    inside = shapely.intersects_xy(polygon, x.ravel(), y.ravel())
    return np.column_stack([x.ravel()[inside], y.ravel()[inside]])


def transects(
    polygon: Any, count: int, bearing_deg: float, rng: np.random.Generator
) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """Middle lines of belts across the polygon, start and end, evenly apart with one random start.

    bearing_deg: from north, clockwise. Where the outline bends in, a line is cut into the pieces that lie inside.
    """
    _check(polygon, count)
    angle = math.radians(bearing_deg)
    along, across = (math.sin(angle), math.cos(angle)), (math.cos(angle), -math.sin(angle))
    corners = np.asarray(polygon.exterior.coords)
    offsets = corners @ np.array(across)
    step_m = float(np.ptp(offsets)) / count
    reach_m = float(np.hypot(np.ptp(corners[:, 0]), np.ptp(corners[:, 1]))) + 1
    middle = corners.mean(axis=0)
    at_middle = float(middle @ np.array(across))
    lines = []
    first = float(offsets.min()) + rng.uniform(0, 1) * step_m
    for shift in first + step_m * np.arange(count):
        x, y = middle + (shift - at_middle) * np.array(across)
        ends = [(x - reach_m * along[0], y - reach_m * along[1]), (x + reach_m * along[0], y + reach_m * along[1])]
        cut = shapely.intersection(shapely.LineString(ends), polygon)
        for piece in getattr(cut, "geoms", [cut]):
            if piece.geom_type == "LineString" and piece.length > 0:
                coordinates = [(float(a), float(b)) for a, b in piece.coords]
                lines.append((coordinates[0], coordinates[-1]))
    return lines


def bearing_and_distance(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    """Bearing in degrees from north, clockwise, 0 to 360, and metres from one place to another."""
    east, north = end[0] - start[0], end[1] - start[1]
    return math.degrees(math.atan2(east, north)) % 360, math.hypot(east, north)


def _check(polygon: Any, count: int) -> None:
    if count < 1 or polygon.is_empty or polygon.area <= 0:
        raise ValueError("a polygon with area and at least one plot")
