"""Walking along a line: places at even steps, and water as waves."""

import itertools
import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stemward.drawings.svg import path

WAVE_MM, SWING_MM, APART_MM = 5.0, 0.55, 1.7
LONGEST_MM = 3000.0
"""Longer lines are drawn plain; none is walked in more than so many steps."""
MOST_STEPS = 5000


def walked(corners: Sequence[Sequence[float]], step: float) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Places at even steps of about `step` along a line, and its direction there, each n x 2; at least 3 places."""
    line = np.asarray(corners, dtype=float).reshape(-1, 2)
    legs = np.diff(line, axis=0)
    far = np.concatenate(([0.0], np.cumsum(np.hypot(legs[:, 0], legs[:, 1]))))
    count = min(max(int(far[-1] / step), 2), MOST_STEPS) + 1
    at = np.linspace(0.0, far[-1], count)
    places = np.column_stack([np.interp(at, far, line[:, axis]) for axis in (0, 1)])
    ahead = np.gradient(places, axis=0)
    long = np.hypot(ahead[:, 0], ahead[:, 1])[:, None]
    return places, np.divide(ahead, long, out=np.zeros_like(ahead), where=long > 0)


def waves(corners: Sequence[tuple[float, float]]) -> str:
    """The path of two waves side by side along a line, as on the sign for water."""
    long = sum(math.dist(a, b) for a, b in itertools.pairwise(corners))
    if long > LONGEST_MM:
        return path(corners, False)
    places, ahead = walked(corners, WAVE_MM / 8)
    aside = np.column_stack([-ahead[:, 1], ahead[:, 0]])
    swing = SWING_MM * np.sin(np.linspace(0, 2 * math.pi * long / WAVE_MM, len(places)))
    both = (places + aside * (swing + off)[:, None] for off in (-APART_MM / 2, APART_MM / 2))
    return "".join(path(map(tuple, wave.tolist()), False) for wave in both)
