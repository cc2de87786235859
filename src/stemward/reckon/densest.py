"""The densest acre: the most acid equivalent inside any circle of one acre."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.signal import fftconvolve
from scipy.spatial import cKDTree

from stemward.units.table import ACRE_M2

Floats = NDArray[np.float64]
_CELLS = 4_000_000
"""Grid cells worked at once; larger ground takes a coarser grid, which brackets less tightly and as truly."""


@dataclass(frozen=True, slots=True)
class Densest:
    """Grams on the densest acre: exact, or between low and high; and the middle of the best circle found."""

    low_g: float
    high_g: float
    exact: bool
    x_m: float
    y_m: float


def acre_radius_m() -> float:
    """Radius of a circle of one acre, 35.89 m (arithmetic)."""
    return math.sqrt(float(ACRE_M2) / math.pi)


def densest_acre(x_m: ArrayLike, y_m: ArrayLike, ae_g: ArrayLike, most_pairs: int = 10_000_000) -> Densest:
    """The greatest sum of ae_g inside any circle of one acre; arrays of length n, grams not negative.

    Exact while stems times their neighbours within two radii stay under `most_pairs`: some circle that holds the
    most has a stem on its rim, so that circles through each stem are turned round it. Beyond that bracketed: from
    below by circles round stems, from above by all cells that a circle with its middle in a cell can touch.
    """
    xy = np.column_stack([np.asarray(x_m, float), np.asarray(y_m, float)])
    grams = np.asarray(ae_g, float)
    if len(xy) == 0:
        return Densest(0.0, 0.0, True, 0.0, 0.0)
    radius = acre_radius_m()
    if _pairs(xy, 2 * radius, most_pairs) <= most_pairs:
        best, at = _swept(xy, grams, radius)
        return Densest(best, best, True, *at)
    low, high, at = _bracketed(xy, grams, radius)
    return Densest(low, high, False, *at)


def _pairs(xy: Floats, reach_m: float, most: int) -> float:
    """About how many pairs of stems lie within a reach: counted on cells of that size, from above."""
    cell = np.floor((xy - xy.min(axis=0)) / reach_m).astype(np.int64)
    keys, count = np.unique(cell[:, 0] * (int(cell[:, 1].max()) + 3) + cell[:, 1], return_counts=True)
    height = int(cell[:, 1].max()) + 3
    total = 0.0
    for across in (-1, 0, 1):
        for up in (-1, 0, 1):
            wanted = keys + across * height + up
            spot = np.minimum(np.searchsorted(keys, wanted), len(keys) - 1)
            total += float((count * np.where(keys[spot] == wanted, count[spot], 0)).sum())
            if total > most * 8:
                return total
    # A circle covers pi/9 of the nine cells.
    return total * math.pi / 9


def _swept(xy: Floats, grams: Floats, radius: float) -> tuple[float, tuple[float, float]]:
    """Turn a circle round every stem, counting what enters and leaves."""
    tree = cKDTree(xy)
    near = tree.query_ball_point(xy, 2 * radius + 1e-9)
    best, at = -1.0, (float(xy[0, 0]), float(xy[0, 1]))
    for n, others in enumerate(near):
        rows = np.asarray(others)
        away = xy[rows] - xy[n]
        far = np.hypot(away[:, 0], away[:, 1])
        same = far < 1e-9
        always = float(grams[rows[same]].sum())
        rows, away, far = rows[~same], away[~same], far[~same]
        towards = np.arctan2(away[:, 1], away[:, 0])
        # A middle at angle a on the circle round stem n holds a stem while it is within `half` of that direction.
        half = np.arccos(np.clip(far / (2 * radius), -1.0, 1.0)) + 1e-12
        start, end = np.mod(towards - half, 2 * np.pi), np.mod(towards + half, 2 * np.pi)
        wraps = start > end
        held = always + float(grams[rows[wraps]].sum())
        angles = np.concatenate([start, end])
        change = np.concatenate([grams[rows], -grams[rows]])
        # Stems that enter at an angle count before those that leave there: the rim belongs to the circle.
        order = np.lexsort((change < 0, angles))
        running = held + np.concatenate([[0.0], np.cumsum(change[order])])
        top = int(np.argmax(running))
        if running[top] > best:
            best = float(running[top])
            angle = float(angles[order][top - 1]) if top else 0.0
            at = (float(xy[n, 0] + radius * math.cos(angle)), float(xy[n, 1] + radius * math.sin(angle)))
    return best, at


def _bracketed(xy: Floats, grams: Floats, radius: float) -> tuple[float, float, tuple[float, float]]:
    """Cells of a grid: the best circle round a stem in a full cell, and the most any circle could touch."""
    low_corner = xy.min(axis=0)
    span = xy.max(axis=0) - low_corner
    cell = radius / 32
    while (span[0] / cell + 1) * (span[1] / cell + 1) > _CELLS:
        cell *= 2
    place = np.floor((xy - low_corner) / cell).astype(np.int64)
    load = np.zeros(place.max(axis=0) + 1)
    np.add.at(load, (place[:, 0], place[:, 1]), grams)
    high = fftconvolve(load, _touched(radius / cell), mode="same")
    # Rounding in the transform is far under this share of everything that lies there.
    most = float(high.max()) + 1e-9 * float(grams.sum())
    tree = cKDTree(xy)
    fullest = np.argsort(-high[place[:, 0], place[:, 1]], kind="stable")[:: max(1, len(xy) // 20_000)][:2_000]
    sums = [float(grams[rows].sum()) for rows in tree.query_ball_point(xy[fullest], radius)]
    top = int(np.argmax(sums))
    return sums[top], max(most, sums[top]), (float(xy[fullest[top], 0]), float(xy[fullest[top], 1]))


def _touched(radius_cells: float) -> Floats:
    """Which cells round a cell a circle can touch whose middle lies anywhere in it: 1 or 0, odd sides."""
    reach = math.ceil(radius_cells) + 1
    gap = np.maximum(np.abs(np.arange(-reach, reach + 1)) - 1, 0)
    return np.asarray(np.hypot(gap[:, None], gap[None, :]) <= radius_cells + 1e-9, float)
