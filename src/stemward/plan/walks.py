"""Walks out of a plan: which plants are walked together, by whom, in which order, with which lots and refills."""

import math
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any

import numpy as np
import shapely

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.kinds.land import Shape
from stemward.plan.effort import HOUR_S
from stemward.plan.walk_lots import lots_of
from stemward.plan.walk_works import Ask, Floats, Point, Work
from stemward.reckon.walk import Round, Task, Walker, walks
from stemward.reckon.walk.around import Ground, ground
from stemward.reckon.walk.lanes import lanes

MOST_PEOPLE = 10
ROUGHNESS = 1.3
"""How much longer one walks than the straight line, over logs and around brush: engineering guess, no source."""
REFILL_S = 300.0
"""For one refill at the place where the mix is made, with gloves and funnel: engineering guess, no source."""
LANE_M = 4.0
"""Width of a lane in which nobody overlooks a plant: engineering guess, no source."""
BARRIERS = ("water", "fence", "building")
"""Kinds of what is listed that can be in the way; where a lane or path crosses, one gets through."""
CROSSINGS = ("lane", "path")


def start_of(tract: Tract, places: Floats) -> tuple[Point, bool]:
    """Where walks begin, and whether somebody said so; else the middle of the plants."""
    if tract.mixing_place:
        return tract.mixing_place, True
    if not len(places):
        return (0.0, 0.0), False
    return (float(places[:, 0].mean()), float(places[:, 1].mean())), False


def walk_work(work: Work, plan: Mapping[str, Any], tract: Tract, book: Book, ask: Ask, seed: int = 1) -> dict[str, Any]:
    """The walks of one work as plain data. Lengths in metres along the way, hours as a band of fast and slow.

    people: each with stops (treatment, row from 0, stem id; "refill"), path over the ground, lots ([first, count], see
    `lots_of`), what is put on and how often it is refilled. left, cut_off, too_much:
    (treatment, row, stem) without a part. lanes: of plants that are not put in order one by one, uphill where that was
    asked; unlaid: treatments of such plants in a patch without an outline.
    """
    start, known = start_of(tract, work.places)
    stands = ask.stands[: ask.walks]
    stations = [start, *stands]
    here = ground(np.vstack([np.array(stations), work.places]), *_in_the_way(tract, ask.barriers))
    pace_m_s = book.defaults["walk_m_s"].number
    refill_s = REFILL_S if math.isfinite(work.bottle_ml) else 0.0
    task = Task(here.dist_m * ROUGHNESS, work.middle_s, work.need_ml, 0, refill_s, pace_m_s, work.plants)
    day_s = math.inf if ask.hours is None else ask.hours * HOUR_S
    walkers = [
        Walker(n + 1 if n < len(stands) else 0, 0, work.bottle_ml, day_s) for n in range(ask.walks)
    ]  # fmt: skip
    found = walks(task, walkers, seed, ask.effort)
    people = [_person(work, plan, book, here, task, one) for one in found.rounds]
    return {
        "work": work.id,
        "start": list(start),
        "start_known": known,
        "uphill": ask.uphill_deg is not None,
        "people": people,
        **{
            name: [list(_stop(work, n - len(stations))) for n in numbers]
            for name, numbers in (("left", found.left), ("cut_off", found.cut_off), ("too_much", found.too_much))
        },
        "lanes": [lane for number in work.counted for lane in _lanes(work, number, tract, start, ask)],
        "unlaid": [work.sheets[n]["id"] for n in work.counted if not _outline(tract, work.sheets[n]["patch"])],
    }


def _stop(work: Work, n: int) -> tuple[str, int, str]:
    sheet, row = work.rows[n]
    return work.sheets[sheet]["id"], row, str(work.sheets[sheet]["ids"][row])


def _person(
    work: Work, plan: Mapping[str, Any], book: Book, here: Ground, task: Task, one: Round
) -> dict[str, Any]:  # fmt: skip
    stations = task.stations
    rows = [n - stations for n in one.stops if n >= stations]
    middle = float(work.middle_s[rows].sum())
    fast, slow = (one.time_s - middle + float(side[rows].sum()) for side in (work.fast_s, work.slow_s))
    path: list[Point] = []
    for a, b in pairwise(one.stops):
        path += here.way(a, b)[1 if path else 0 :]
    return {
        "stops": [list(_stop(work, n - stations)) if n >= stations else "refill" for n in one.stops[1:-1]],
        "marks": [[round(float(v), 2) for v in here.stands[n]] for n in one.stops if n >= stations],
        "path": [[round(x, 2), round(y, 2)] for x, y in path],
        "length_m": one.length_m,
        "low_h": fast / HOUR_S,
        "time_h": one.time_s / HOUR_S,
        "high_h": slow / HOUR_S,
        "refills": sum(n < stations for n in one.stops[1:-1]),
        "need_ml": one.need_ml,
        "lots": lots_of(work, plan, book, task, one),
    }


def _in_the_way(tract: Tract, kinds: Iterable[str]) -> tuple[list[Any], list[Any]]:
    """What nobody crosses, and where one gets through, as geometries."""
    wanted = set(kinds)
    barriers = [_shape(one.shape) for one in tract.spared if one.kind in wanted and one.shape.kind != "point"]
    crossings = [_shape(one.shape) for one in tract.spared if one.kind in CROSSINGS and one.shape.kind == "line"]
    return barriers, crossings


def _shape(shape: Shape) -> Any:
    if shape.kind == "polygon":
        return shapely.make_valid(shapely.Polygon(shape.rings[0], shape.rings[1:]))
    return shapely.LineString(shape.rings[0]) if len(shape.rings[0]) > 1 else shapely.Point(shape.rings[0][0])


def _outline(tract: Tract, patch: str) -> Any:
    shape = tract.patch(patch).shape
    return _shape(shape) if shape is not None and shape.kind == "polygon" else None


def _lanes(work: Work, number: int, tract: Tract, start: Point, ask: Ask) -> list[dict[str, Any]]:
    """Lanes over the patch of plants that were counted and not mapped; [] where it has no outline."""
    sheet = work.sheets[number]
    outline = _outline(tract, sheet["patch"])
    if outline is None:
        return []
    width_m = max(LANE_M, math.sqrt(outline.area) / 100)
    need_ml = sum(sheet["row_ml"])
    metres = outline.area / width_m
    runs_m = work.bottle_ml / need_ml * metres if need_ml and math.isfinite(work.bottle_ml) else math.inf
    return [
        {"treatment": sheet["id"], "patch": sheet["patch"], "person": one.person, "number": one.number,
         "start": list(one.start), "end": list(one.end), "refills": [list(at) for at in one.refills],
         "width_m": width_m, "length_m": one.length_m}
        for one in lanes(outline, width_m, start, ask.walks, runs_m, ask.uphill_deg)
    ]  # fmt: skip
