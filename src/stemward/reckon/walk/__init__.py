"""Who walks where: the order of scattered stems for one or more people, with refills, within a day's length."""

from collections.abc import Sequence

import numpy as np

from stemward.reckon.walk.better import bettered
from stemward.reckon.walk.pieces import pieces_of
from stemward.reckon.walk.task import Round, Task, Walker, Walks, measure, unlike

__all__ = ["Round", "Task", "Walker", "Walks", "measure", "unlike", "walks"]

_MOST_STEMS = 2500
"""Stems that are ordered together: engineering guess; of more the distances alone take minutes."""


def walks(task: Task, walkers: Sequence[Walker], seed: int = 1, effort: float = 1.0) -> Walks:
    """The rounds: short ways, days alike, bottles refilled, the most stems where the day is too short.

    A round over all stems is cut into as many pieces as there are walkers, and then bettered by PyVRP (Wouda, Lan &
    Kool 2024, INFORMS J. Computing 36(4)) and by turning and moving pieces. seed and effort: the same two give the
    same walk; effort multiplies what is tried. ValueError for nobody, or more stems than can be ordered.
    """
    if not walkers:
        raise ValueError("at least one person walks")
    if len(task.service_s) > _MOST_STEMS:
        raise ValueError(f"at most {_MOST_STEMS} stems at once")
    first = task.stations
    bottle_ml = max(w.bottle_ml for w in walkers)
    reach_m = task.dist_m[[w.start for w in walkers]].min(axis=0)[first:]
    cut_off = ~np.isfinite(reach_m)
    too_much = ~cut_off & (task.need_ml > bottle_ml)
    stems = (np.flatnonzero(~cut_off & ~too_much) + first).tolist()
    plans = pieces_of(task, walkers, stems)
    if stems:
        plans = bettered(task, walkers, stems, plans, seed, effort)
    rounds = tuple(measure(task, w, stops) for w, stops in zip(walkers, plans, strict=True))
    walked = {n for one in rounds for n in one.stops}
    return Walks(
        rounds,
        tuple(n for n in stems if n not in walked),
        tuple((np.flatnonzero(cut_off) + first).tolist()),
        tuple((np.flatnonzero(too_much) + first).tolist()),
    )
