"""How far it is on foot where some things are walked around: water, fences, cliffs. Metres, shapely geometries."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from scipy.sparse.csgraph import dijkstra

Floats = NDArray[np.float64]
Point = tuple[float, float]

_KEPT_M = 0.5
_SMOOTH = 0.8
_CORNER_M = 0.2
_CROSSING_M = 2.0
_AT_EDGE_M = 3.0
_MOST_CORNERS = 160
_MOST_KEPT_M = 2.0
_EXACT_M = 0.001
# Numerical settings: how far one walks from a barrier, how much of that its outline may be smoothed by, how far
# corners lie outside, half the width of a crossing, how far inside an outline a stem still counts as standing at its
# edge, how many corners one would rather look at, how far from a barrier one walks at most to have fewer, and how
# exactly outlines are read.


@dataclass(frozen=True, eq=False)
class Ground:
    """Places and the walking distances between them.

    places: (n, 2) as given. stands: (n, 2), where one stands to reach each: the place, or the edge beside it.
    dist_m: (n, n), inf where there is no way. solid: what is walked around, None where nothing is.
    """

    places: Floats
    stands: Floats
    dist_m: Floats
    solid: Any
    _corners: Floats
    _seen_m: Floats
    _between_m: Floats
    _before: NDArray[np.int64]
    _straight: NDArray[np.bool_]

    def way(self, start: int, end: int) -> list[Point]:
        """The places one walks over, from one to the other, both included; [] where there is no way."""
        ends = [_point(self.stands[start]), _point(self.stands[end])]
        if self._straight[start, end]:
            return ends
        if not np.isfinite(self.dist_m[start, end]):
            return []
        over = self._seen_m[start][:, None] + self._between_m + self._seen_m[end][None, :]
        first, last = np.unravel_index(int(np.argmin(over)), over.shape)
        turns = [int(last)]
        while turns[-1] != first:
            turns.append(int(self._before[first, turns[-1]]))
        return [ends[0], *(_point(self._corners[n]) for n in reversed(turns)), ends[1]]


def ground(places: Floats, barriers: Sequence[Any] = (), crossings: Sequence[Any] = ()) -> Ground:
    """Walking distances between places (n, 2), straight or by the shortest way around.

    barriers: lines and polygons that nobody crosses. crossings: lines (a lane, a path) or points (a gate) where all
    barriers are open. A place just inside an outline is reached at its edge; one deep inside cannot be reached.
    """
    places = np.asarray(places, dtype=float).reshape(-1, 2)
    solid = _solid(barriers, crossings)
    if solid is None or not len(places):
        return _open(places)
    stands, inside = _at_edge(places, solid)
    corners = _corners_of(solid, _CORNER_M)
    both = np.vstack([corners, stands])
    count = len(corners)
    seen = _sees(corners, corners, solid)
    between, before = dijkstra(
        np.where(seen, _apart_m(corners, corners), 0.0), directed=False, return_predecessors=True
    )  # fmt: skip
    straight_m = _apart_m(stands, stands)
    straight = _sees(stands, stands, solid)
    np.fill_diagonal(straight, True)
    seen_m = np.where(_sees(stands, corners, solid), _apart_m(stands, both[:count]), np.inf)
    reach_m = np.full_like(seen_m, np.inf)
    for n in range(count):
        np.minimum(reach_m, seen_m[:, n : n + 1] + between[n], out=reach_m)
    dist_m = np.where(straight, straight_m, np.inf)
    for n in range(len(stands)):
        over_m = (reach_m[n] + seen_m).min(axis=1, initial=np.inf)
        dist_m[n] = np.where(straight[n], straight_m[n], over_m)
    for table in (dist_m, straight):
        table[inside, :] = table[:, inside] = np.inf if table is dist_m else False
    np.fill_diagonal(dist_m, 0.0)
    dist_m = np.minimum(dist_m, dist_m.T)
    return Ground(places, stands, dist_m, solid, corners, seen_m, between, before, straight)


def _open(places: Floats) -> Ground:
    none = np.empty((0, 0))
    straight = np.ones((len(places), len(places)), dtype=bool)
    return Ground(places, places, _apart_m(places, places), None, np.empty((0, 2)), none, none,
                  none.astype(int), straight)  # fmt: skip


def _solid(barriers: Sequence[Any], crossings: Sequence[Any]) -> Any:
    """What is walked around: every barrier with a margin, smoothed within that margin, open at the crossings."""
    if not barriers:
        return None
    kept_m = _KEPT_M
    while True:
        # Smoothed by less than the margin, so that the barrier itself stays inside.
        rims = [shapely.set_precision(one, _EXACT_M).buffer(kept_m, quad_segs=2) for one in barriers]
        solid = shapely.union_all(rims).simplify(_SMOOTH * kept_m)
        if len(shapely.get_coordinates(solid)) <= _MOST_CORNERS or kept_m == _MOST_KEPT_M:
            break
        # Fewer corners are quicker, but a wider margin would cut off stems that stand near a barrier.
        kept_m = min(1.5 * kept_m, _MOST_KEPT_M)
    for one in crossings:
        solid = solid.difference(one.buffer(max(_CROSSING_M, kept_m), cap_style="square"))
    return None if solid.is_empty else solid


def _at_edge(places: Floats, solid: Any) -> tuple[Floats, NDArray[np.intp]]:
    """Where one stands for each place, and the numbers of those that lie too deep inside."""
    stands = places.copy()
    deep = []
    edge = solid.buffer(_CORNER_M / 2).boundary
    for n in np.flatnonzero(shapely.intersects_xy(solid, places[:, 0], places[:, 1])):
        here = shapely.Point(places[n])
        if solid.boundary.distance(here) > _AT_EDGE_M:
            deep.append(int(n))
        else:
            stands[n] = edge.interpolate(edge.project(here)).coords[0]
    return stands, np.array(deep, dtype=int)


def _corners_of(solid: Any, out_m: float) -> Floats:
    """Corners a little outside, around which one walks."""
    rim = solid.buffer(out_m, join_style="mitre")
    rings = [ring for one in getattr(rim, "geoms", [rim]) for ring in (one.exterior, *one.interiors)]
    return np.vstack([np.asarray(ring.coords)[:-1] for ring in rings])


def _sees(some: Floats, others: Floats, solid: Any) -> NDArray[np.bool_]:
    """(n, m): True where the straight line between two places touches nothing solid."""
    n, m = len(some), len(others)
    clear = np.ones((n, m), dtype=bool)
    parts = list(getattr(solid, "geoms", [solid]))
    for part in parts:
        west, south, east, north = part.bounds
        beside = (
            (np.maximum(some[:, None, 0], others[None, :, 0]) < west)
            | (np.minimum(some[:, None, 0], others[None, :, 0]) > east)
            | (np.maximum(some[:, None, 1], others[None, :, 1]) < south)
            | (np.minimum(some[:, None, 1], others[None, :, 1]) > north)
        )
        asked = clear & ~beside
        # Between the same places one way is like the other, so half of them is enough.
        rows, columns = np.nonzero(np.triu(asked) if some is others else asked)
        shapely.prepare(part)
        for start in range(0, len(rows), 500_000):
            row, column = rows[start : start + 500_000], columns[start : start + 500_000]
            lines = shapely.linestrings(np.stack([some[row], others[column]], axis=1))
            clear[row, column] = ~shapely.intersects(part, lines)
    return clear & clear.T if some is others else clear


def _apart_m(some: Floats, others: Floats) -> Floats:
    return np.hypot(some[:, None, 0] - others[None, :, 0], some[:, None, 1] - others[None, :, 1])


def _point(place: Floats) -> Point:
    return float(place[0]), float(place[1])
