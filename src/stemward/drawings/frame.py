"""From metres on the ground to millimetres on paper: what ground a plan shows, and where it lies."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stemward.drawings.svg import Box

EDGE, FOOT = 10.0, 10.0
"""Room round the ground that is shown, and under it for bar and north, mm."""
REACH_M = 40.0
"""What is kept is drawn where it lies up to this far from the work, or half the work's own extent (engineering
guess, no source); what lies farther off stands at the edge with an arrow."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """The ground that is shown, metres, with its scale, mm per m, and how far it lies from the left, mm."""

    west: float
    south: float
    east: float
    north: float
    per_m: float
    left: float

    def at(self, corner: Sequence[float]) -> Point:
        """A place on paper."""
        return self.left + (corner[0] - self.west) * self.per_m, EDGE + (self.north - corner[1]) * self.per_m

    @property
    def box(self) -> Box:
        """The ground that is shown, on paper."""
        (left, top), (right, bottom) = self.at((self.west, self.north)), self.at((self.east, self.south))
        return left, top, right, bottom


def bounds(corners: Sequence[Sequence[float]] | NDArray[np.float64]) -> Box:
    """Least x and y, greatest x and y."""
    low, high = np.min(np.asarray(corners), axis=0), np.max(np.asarray(corners), axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def extent_m(work: NDArray[np.float64], kept: Sequence[Sequence[float]]) -> Box:
    """West, south, east, north of where the work is (n x 2), widened to what is kept near it."""
    if not len(work):
        return bounds(kept or [(0.0, 0.0), (10.0, 10.0)])
    west, south, east, north = bounds(work)
    reach = max(REACH_M, (east - west) / 2, (north - south) / 2)
    near = [c for c in kept if west - reach <= c[0] <= east + reach and south - reach <= c[1] <= north + reach]
    return bounds([(west, south), (east, north), *near])


def fit(view_m: Box, width_mm: float, height_mm: float) -> Frame:
    """The frame that shows a view on a drawing so wide and at most so high, in the middle across."""
    west, south, east, north = view_m
    wide, high = max(east - west, 1.0), max(north - south, 1.0)
    per_m = min((width_mm - 2 * EDGE) / wide, (height_mm - 2 * EDGE - FOOT) / high)
    # The ends as they were told, so that no stem on them is lost to rounding.
    south, east = min(south, north - high), max(east, west + wide)
    return Frame(west, south, east, north, per_m, (width_mm - wide * per_m) / 2)


def held(place: Sequence[float], frame: Frame) -> tuple[Point, float | None]:
    """A place on paper, held at the edge of the view with the direction (radians) of what lies beyond."""
    x, y = frame.at(place)
    left, top, right, bottom = frame.box
    inside_x, inside_y = min(max(x, left), right), min(max(y, top), bottom)
    if math.hypot(x - inside_x, y - inside_y) < 0.05:
        return (x, y), None
    return (inside_x, inside_y), math.atan2(y - inside_y, x - inside_x)
