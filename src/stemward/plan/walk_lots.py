"""Lots of a walk: how many stumps are cut before the saw is off and they are treated."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np

from stemward.handbook import Book
from stemward.plan.stages import TIMED
from stemward.plan.walk_works import Work
from stemward.reckon.lots import lots_along
from stemward.reckon.walk import Round, Task

SAWN = ("cut stump", "cut only")
MINUTE_S = 60


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
    if item["how"] not in SAWN or not item["product"]:
        return None
    stage = next((s for s in item["stages"] if s["stage"] in TIMED and s.get("minutes")), None)
    return float(stage["minutes"]) * MINUTE_S if stage else None


def _lots_of(work: Work, book: Book, task: Task, trip: Sequence[int], limit_s: float) -> list[int]:
    """Sizes of the lots of one trip, by the same figures as the check on the time from cut to treatment."""
    value = {key: book.defaults[key].number for key in LOT_KEYS}
    sizes, counts = [], []
    for n in trip:
        sheet, row = work.rows[n - task.stations]
        sizes.append(float(work.sheets[sheet]["sizes_cm"][row]))
        counts.append(int(work.sheets[sheet]["counts"][row]))
    known = work.height_m[[n - task.stations for n in trip]]
    tallest_m = value["height_unknown_m"] if np.isnan(known).all() else float(np.nanmax(known))
    sawn = max(sizes) >= value["small_stem_cm"]
    pace = task.pace_m_s
    legs_s = [float(task.dist_m[a, b]) / pace for a, b in pairwise(trip)] + [0.0]
    lots = lots_along(
        legs_s,
        [value["cut_pace_s_cm"] * size * count for size, count in zip(sizes, counts, strict=True)],
        [value["treat_s_per_stump"] * count for count in counts],
        lambda first, last: float(task.dist_m[trip[last], trip[first]]) / pace,
        limit_s,
        value["tree_lengths"] * tallest_m / value["walk_m_s"] if sawn else 0.0,
        value["felling_clear_min"] * MINUTE_S if sawn else 0.0,
    )
    return [last - first for first, last in lots]


LOT_KEYS = (
    "height_unknown_m", "small_stem_cm", "tree_lengths", "walk_m_s", "felling_clear_min", "cut_pace_s_cm",
    "treat_s_per_stump",
)  # fmt: skip
