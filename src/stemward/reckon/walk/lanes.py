"""Lanes over a patch whose plants are not mapped one by one: side by side, walked to and fro. Metres, shapely."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
import shapely

Point = tuple[float, float]

_MOST_LANES = 400
"""Lanes of a patch at most: engineering guess; more are wider than planned or a patch of another kind."""


@dataclass(frozen=True, slots=True)
class Lane:
    """A straight piece to walk. number: from 1; pieces of one line share it. person: from 0. refills: places along it
    where a bottle runs out."""

    number: int
    start: Point
    end: Point
    person: int = 0
    refills: tuple[Point, ...] = ()

    @property
    def length_m(self) -> float:
        """From start to end."""
        return math.dist(self.start, self.end)


def lanes(
    polygon: Any,
    width_m: float,
    truck: Point,
    people: int = 1,
    runs_m: float = math.inf,
    uphill_deg: float | None = None,
) -> tuple[Lane, ...]:
    """Lanes in the order in which they are walked, so that nobody walks through what is freshly treated.

    Each next lane lies beside the last and nearer to the truck, where the last one ends; where uphill is known (degrees
    from north, clockwise), lanes run across the slope and follow each other uphill. people: as many blocks of lanes
    side by side, alike in length. runs_m: metres of lane for which a bottle lasts; inf for no refills. ValueError for a
    polygon without area, a width or people below 1, or more than _MOST_LANES lanes.
    """
    if polygon.is_empty or polygon.area <= 0 or width_m <= 0 or people < 1 or runs_m <= 0:
        raise ValueError("a polygon with area, a width and at least one person")
    bearing_deg = along_deg(polygon) if uphill_deg is None else (uphill_deg + 90) % 180
    angle = math.radians(bearing_deg)
    along, across = np.array([math.sin(angle), math.cos(angle)]), np.array([math.cos(angle), -math.sin(angle)])
    offsets = shapely.get_coordinates(polygon) @ across
    count = math.ceil((float(np.ptp(offsets)) - 1e-9) / width_m)
    if count > _MOST_LANES:
        raise ValueError(f"more than {_MOST_LANES} lanes")
    shifts = float(offsets.min()) + (np.arange(count) + 0.5) * float(np.ptp(offsets)) / count
    if uphill_deg is None:
        at = float(np.array(truck) @ across)
        forward = abs(at - shifts[-1]) <= abs(at - shifts[0])
    else:
        uphill = math.radians(uphill_deg)
        forward = bool(across @ np.array([math.sin(uphill), math.cos(uphill)]) > 0)
    lines = [_pieces(polygon, shift, along, across) for shift in (shifts if forward else shifts[::-1])]
    blocks = _blocks([sum(math.dist(*piece) for piece in line) for line in lines], people)
    found: list[Lane] = []
    for person, (first, last) in enumerate(blocks):
        found += _snake(lines[first:last], first, person, truck, runs_m)
    return tuple(found)


def along_deg(polygon: Any) -> float:
    """Bearing of the long side of the narrowest rectangle around it, degrees from north, 0 to 180."""
    corners = shapely.get_coordinates(shapely.minimum_rotated_rectangle(polygon))
    sides = np.diff(corners[:3], axis=0)
    east, north = sides[int(np.argmax(np.hypot(sides[:, 0], sides[:, 1])))]
    return math.degrees(math.atan2(east, north)) % 180


def _pieces(polygon: Any, shift: float, along: Any, across: Any) -> list[tuple[Point, Point]]:
    """What of one line lies in the polygon, in order along it."""
    middle = polygon.centroid.coords[0]
    foot = np.array(middle) + (shift - float(np.array(middle) @ across)) * across
    reach_m = math.hypot(*(np.ptp(shapely.get_coordinates(polygon), axis=0))) + 1
    cut = shapely.intersection(shapely.LineString([foot - reach_m * along, foot + reach_m * along]), polygon)
    ends = [list(one.coords) for one in getattr(cut, "geoms", [cut]) if one.geom_type == "LineString" and one.length]
    pieces = [tuple(sorted(((*two[0],), (*two[-1],)), key=lambda end: float(np.dot(end, along)))) for two in ends]
    return sorted(pieces, key=lambda piece: float(np.dot(piece[0], along)))  # type: ignore[arg-type]


def _blocks(lengths_m: Sequence[float], people: int) -> list[tuple[int, int]]:
    """First and last line (not in it) of each person: neighbouring lines, as alike in length as lines allow."""
    ends = np.cumsum(lengths_m)
    cuts = [0]
    for person in range(1, people):
        cuts.append(max(cuts[-1], int(np.argmin(np.abs(ends - ends[-1] * person / people))) + 1))
    cuts.append(len(lengths_m))
    return [(min(a, len(lengths_m)), b) for a, b in pairwise(cuts)]


def _snake(
    lines: list[list[tuple[Point, Point]]], first: int, person: int, truck: Point, runs_m: float
) -> list[Lane]:  # fmt: skip
    """The lines walked to and fro so that the last one ends at the side nearer to the truck, with refill marks."""
    if not lines or not any(lines):
        return []
    last = next(line for line in reversed(lines) if line)
    turned = math.dist(last[0][0], truck) < math.dist(last[-1][1], truck)
    back = [bool((len(lines) - 1 - n) % 2) ^ turned for n in range(len(lines))]
    found, left_m = [], runs_m
    for n, (line, is_back) in enumerate(zip(lines, back, strict=True)):
        for piece in reversed(line) if is_back else line:
            start, end = reversed(piece) if is_back else piece
            marks, left_m = _marks(start, end, left_m, runs_m)
            found.append(Lane(first + n + 1, start, end, person, marks))
    return found


def _marks(start: Point, end: Point, left_m: float, runs_m: float) -> tuple[tuple[Point, ...], float]:
    """Places on a piece where a bottle runs out, and for how many metres the last one still lasts."""
    length_m, gone_m, marks = math.dist(start, end), left_m, []
    while gone_m < length_m - 1e-9:
        share = gone_m / length_m
        marks.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
        gone_m += runs_m
    return tuple(marks), gone_m - length_m
