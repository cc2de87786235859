"""Lots of a walk: how many stumps are cut before the saw is off and they are treated."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from stemward.checks.cut_to_treat import lot_paces
from stemward.handbook import Book
from stemward.plan.stages import SECONDS_PER_MINUTE, timed_stage
from stemward.plan.walk_works import Work
from stemward.reckon.lots import lots_along
from stemward.reckon.walk import Round, Task


def lots_of(work: Work, plan: Mapping[str, Any], book: Book, task: Task, one: Round) -> list[list[int]]:
    """[first, count] of each lot: the place of its first stump among the stems of the walk, from 0, and how many are
    cut before they are treated. Stems that are not cut first, or have no limit, belong to none."""
    own = {sheet["id"] for sheet in work.sheets}
    limits = {item["id"]: _limit_s(item) for item in plan["treatments"] if item["id"] in own}
    stations, lots, trip, place = task.stations, [], [], 0
    for n in [*one.stops[1:], 0]:
        limit_s = limits[_treatment(work, n - stations)] if n >= stations else None
        if limit_s is not None:
            trip.append(n)
        elif trip:
            first = place - len(trip)
            least_s = min(limit for n in trip if (limit := limits[_treatment(work, n - stations)]) is not None)
            for count in _lots_of(work, book, task, trip, least_s):
                lots.append([first, count])
                first += count
            trip = []
        place += n >= stations
    return lots


def _treatment(work: Work, n: int) -> str:
    return str(work.sheets[work.rows[n][0]]["id"])


def _limit_s(item: Mapping[str, Any]) -> float | None:
    """Seconds from cut to treatment, where there is such a limit."""
    stage = timed_stage(item) if item["how"] == "cut stump" else None
    return float(stage["minutes"]) * SECONDS_PER_MINUTE if stage else None


def _lots_of(work: Work, book: Book, task: Task, trip: Sequence[int], limit_s: float) -> list[int]:
    """Sizes of the lots of one trip, by the same figures as the check on the time from cut to treatment."""
    sizes, counts = [], []
    for n in trip:
        sheet, row = work.rows[n - task.stations]
        sizes.append(float(work.sheets[sheet]["sizes_cm"][row]))
        counts.append(int(work.sheets[sheet]["counts"][row]))
    pace = lot_paces(book, work.height_m[[n - task.stations for n in trip]], max(sizes))
    legs_s = [float(task.dist_m[a, b]) / task.pace_m_s for a, b in pairwise(trip)] + [0.0]
    lots = lots_along(
        legs_s,
        [pace.cut_s_cm * size * count for size, count in zip(sizes, counts, strict=True)],
        [pace.treat_s * count for count in counts],
        lambda first, last: float(task.dist_m[trip[last], trip[first]]) / task.pace_m_s,
        limit_s,
        pace.walk_s,
        pace.clear_s,
    )
    return [last - first for first, last in lots]
