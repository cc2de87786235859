"""Checks walks without using the package: bottles, days, barriers, every stem once, lengths added anew."""

import itertools
import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

Point = tuple[float, float]


def troubles(
    places: Sequence[Point],
    ways: Sequence[Sequence[Sequence[Point]]],
    stops: Sequence[Sequence[int]],
    stations: int,
    need_ml: Sequence[float],
    service_s: Sequence[float],
    bottles_ml: Sequence[float],
    days_s: Sequence[float],
    refill_s: float,
    pace_m_s: float,
    walls: Sequence[Sequence[Point]],
    left_out: Sequence[int],
    said: Sequence[dict[str, Any]],
) -> list[str]:
    """What is wrong, in words; nothing where all holds.

    ways[i][k]: the points walked over from stop k to k + 1 of person i. walls: polylines that no way may cross. said:
    per person the length and time that were claimed.
    """
    wrong: list[str] = []
    seen = [n for one in stops for n in one if n >= stations]
    if len(seen) != len(set(seen)):
        wrong.append("a stem is visited twice")
    if set(seen) & set(left_out):
        wrong.append("a stem is both visited and left out")
    if set(seen) | set(left_out) != set(range(stations, stations + len(need_ml))):
        wrong.append("a stem is neither visited nor left out")
    for person, (one, legs) in enumerate(zip(stops, ways, strict=True)):
        carried, length, time = 0.0, 0.0, 0.0
        fills = 1 if any(need_ml[n - stations] for n in one if n >= stations) else 0
        for k, n in enumerate(one):
            if n < stations:
                fills += 1 if 0 < k < len(one) - 1 else 0
                carried = 0.0
                continue
            carried += need_ml[n - stations]
            time += service_s[n - stations]
            if carried > bottles_ml[person] + 1e-6:
                wrong.append(f"person {person} carries {carried}")
        for leg, (a, b) in zip(legs, itertools.pairwise(one), strict=True):
            if leg and (math.dist(leg[0], places[a]) > 4 or math.dist(leg[-1], places[b]) > 4):
                wrong.append("a way does not begin or end at its stop")
            length += sum(math.dist(p, q) for p, q in itertools.pairwise(leg))
            for p, q in itertools.pairwise(leg):
                wrong += [f"a way crosses a wall from {p} to {q}" for wall in walls if _crosses(p, q, wall)]
        time += length / pace_m_s + fills * refill_s
        if abs(length - said[person]["length_m"]) > 0.01 * max(1.0, length):
            wrong.append(f"person {person} walks {length}, not {said[person]['length_m']}")
        if abs(time - said[person]["time_s"]) > 0.01 * max(1.0, time):
            wrong.append(f"person {person} takes {time}, not {said[person]['time_s']}")
        if time > days_s[person] + 1:
            wrong.append(f"person {person} works {time} of {days_s[person]}")
    return wrong


def _crosses(p: Point, q: Point, wall: Sequence[Point]) -> bool:
    return any(
        _side(p, q, a) * _side(p, q, b) < 0 and _side(a, b, p) * _side(a, b, q) < 0 for a, b in itertools.pairwise(wall)
    )


def _side(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def troubles_of(here, task, walkers, found, walls=()):
    """The same, asked of the values themselves: ground, task, walkers and walks by the names of their fields."""
    ways = [[here.way(a, b) for a, b in pairwise(one.stops)] for one in found.rounds]
    return troubles(
        here.places.tolist(), ways, [one.stops for one in found.rounds], task.stations, task.need_ml.tolist(),
        task.service_s.tolist(), [w.bottle_ml for w in walkers], [w.day_s for w in walkers], task.refill_s,
        task.pace_m_s, walls, [*found.left, *found.cut_off, *found.too_much],
        [{"length_m": one.length_m, "time_s": one.time_s} for one in found.rounds],
    )  # fmt: skip
