"""A first answer: one round over all stems, cut into as many pieces as there are people."""

from collections.abc import Sequence

import numpy as np

from stemward.reckon.walk.task import Task, Walker, measure
from stemward.reckon.walk.tour import shortest_steps, untangled


def pieces_of(task: Task, walkers: Sequence[Walker], stems: list[int]) -> list[list[int]]:
    """Stops of each walker: one round over all stems, cut so that the longest time is as short as it can be.

    The pieces go to those who stand nearest to them.
    """
    if not stems:
        return [[w.start, w.end] for w in walkers]
    over = [walkers[0].start, *stems]
    own = task.dist_m[np.ix_(over, over)]
    order = [over[n] for n in untangled(shortest_steps(own), own)][1:]
    # Four times the whole round holds any one piece, with the ways to and from a walker's own start.
    low, high = 0.0, max(_time_of(task, walkers[0], order), 1.0) * 4
    shortest = min(w.day_s for w in walkers)
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if _cut(task, walkers, order, middle)[1] == [] else (middle, high)
    pieces, _ = _cut(task, walkers, order, min(high, shortest))
    return _given_out(task, walkers, pieces)


def _time_of(task: Task, walker: Walker, order: Sequence[int]) -> float:
    return measure(task, walker, with_refills(task, walker, order)).time_s


def _cut(
    task: Task, walkers: Sequence[Walker], order: list[int], most_s: float
) -> tuple[list[list[int]], list[int]]:  # fmt: skip
    """Pieces of a round, each filled up to a time, and what is left over."""
    pieces, start, first = [], 0, task.stations
    for walker in walkers:
        here, time_s, left_ml, end = walker.start, task.refill_s, walker.bottle_ml, start
        while end < len(order):
            stem = order[end]
            leg_s = task.dist_m[here, stem] / task.pace_m_s
            if task.need_ml[stem - first] > left_ml:
                around_m = task.dist_m[here, task.refill] + task.dist_m[task.refill, stem]
                leg_s, left_ml = around_m / task.pace_m_s + task.refill_s, walker.bottle_ml
            time_s += leg_s + float(task.service_s[stem - first])
            if time_s + task.dist_m[stem, walker.end] / task.pace_m_s > most_s:
                break
            left_ml -= float(task.need_ml[stem - first])
            here, end = stem, end + 1
        pieces.append(order[start:end])
        start = end
    return pieces, order[start:]


def _given_out(task: Task, walkers: Sequence[Walker], pieces: list[list[int]]) -> list[list[int]]:
    """Each piece to the walker for whom the way to and from it is shortest, walked in the better direction."""
    from scipy.optimize import linear_sum_assignment

    def there_m(walker: Walker, piece: list[int]) -> float:
        return float(task.dist_m[walker.start, piece[0]] + task.dist_m[piece[-1], walker.end]) if piece else 0.0

    cost = [[min(there_m(w, piece), there_m(w, piece[::-1])) for piece in pieces] for w in walkers]
    rows, columns = linear_sum_assignment(np.nan_to_num(np.array(cost), posinf=1e9))
    given: list[list[int]] = [[] for _ in walkers]
    for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
        piece = pieces[column]
        way = piece if there_m(walkers[row], piece) <= there_m(walkers[row], piece[::-1]) else piece[::-1]
        given[row] = with_refills(task, walkers[row], way)
    return given


def with_refills(task: Task, walker: Walker, order: Sequence[int]) -> list[int]:
    """The stops of an order of stems: back to the filling station whenever the bottle does not hold the next."""
    stops, left_ml = [walker.start], walker.bottle_ml
    for stem in order:
        need_ml = float(task.need_ml[stem - task.stations])
        if need_ml > left_ml:
            stops.append(task.refill)
            left_ml = walker.bottle_ml
        left_ml -= need_ml
        stops.append(stem)
    return [*stops, walker.end]
