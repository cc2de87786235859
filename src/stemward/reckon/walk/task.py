"""What is to be walked, by whom, and what a walk over some stops comes to."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_MOST_UNLIKE = 1.15
"""Longest day over shortest day among people who work together: engineering guess, no source."""


@dataclass(frozen=True, slots=True)
class Walker:
    """One who walks. start, end: numbers of stations. bottle_ml: what is carried, inf where nothing is. day_s."""

    start: int = 0
    end: int = 0
    bottle_ml: float = math.inf
    day_s: float = math.inf


@dataclass(frozen=True, slots=True)
class Round:
    """What one walks: station, stems, perhaps a station to refill, station. stops: numbers of places; stations come
    first, then stems. length_m of the way, time_s with stops and refills, need_ml put on."""

    stops: tuple[int, ...]
    length_m: float
    time_s: float
    need_ml: float


@dataclass(frozen=True, slots=True)
class Walks:
    """A round a walker, and what has no part in any. left: for lack of time; cut_off: no way there; too_much: takes
    more than the largest bottle. All as numbers of places."""

    rounds: tuple[Round, ...]
    left: tuple[int, ...]
    cut_off: tuple[int, ...]
    too_much: tuple[int, ...]


@dataclass(frozen=True, eq=False)
class Task:
    """Places with the walk between them. dist_m: (m + n, m + n), m stations first, inf where there is no way.

    service_s, need_ml: (n,), at each stem. refill: the station where the mix is made. refill_s: for one filling.
    pace_m_s: of walking. value: (n,) above 0, what it is worth to reach a stem when the day is too short; the same for
    all by default.
    """

    dist_m: Floats
    service_s: Floats
    need_ml: Floats
    refill: int = 0
    refill_s: float = 0.0
    pace_m_s: float = 1.0
    value: Floats | None = None

    @property
    def stations(self) -> int:
        """How many places are stations."""
        return len(self.dist_m) - len(self.service_s)


def measure(task: Task, walker: Walker, stops: Sequence[int]) -> Round:
    """Length, time and mix of a round over these stops; a stop at the filling station within it is a refill.

    The first filling counts as well, where anything is put on.
    """
    if len(stops) < 3:
        return Round((walker.start, walker.end), 0.0, 0.0, 0.0)
    first = task.stations
    own = [n - first for n in stops if n >= first]
    need_ml = float(task.need_ml[own].sum())
    fillings = (sum(n < first for n in stops[1:-1]) + 1) if need_ml else 0
    length_m = float(task.dist_m[list(stops[:-1]), list(stops[1:])].sum())
    time_s = length_m / task.pace_m_s + float(task.service_s[own].sum()) + fillings * task.refill_s
    return Round(tuple(stops), length_m, time_s, need_ml)


def unlike(rounds: Sequence[Round]) -> float:
    """The longest time over the shortest; 1 for one round, inf where someone has nothing to do."""
    times = [one.time_s for one in rounds]
    return max(times) / min(times) if min(times) > 0 else (math.inf if max(times) > 0 else 1.0)
