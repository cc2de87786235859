"""What is walked together: plants of a plan that take the same mix, or none by the same method."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stemward.handbook import Book
from stemward.kinds import UL_PER_ML, Tract
from stemward.kinds.land import COUNTED
from stemward.plan.effort import seconds_of
from stemward.plan.field_sheets import field_sheets
from stemward.plan.learned import HIGH, LOW, MIDDLE, hours_of_days

Floats = NDArray[np.float64]
Point = tuple[float, float]


MOST_STEMS = 2000
"""Stems that are put in order together; works with more are walked in lanes: engineering guess."""


@dataclass(frozen=True, slots=True)
class Ask:
    """What a person asks of the walks.

    pairs: two walk together, one cuts and one treats. hours: of the day, None for as long as it takes. barriers: kinds
    nobody crosses. uphill_deg: where uphill lies from north, for lanes; None where the ground is even or not told.
    stands: where each stands now, for walks that go on. done: ids of stems that are dealt with. patches: () for all.
    """

    people: int = 1
    pairs: bool = False
    hours: float | None = None
    barriers: tuple[str, ...] = ("water", "fence")
    uphill_deg: float | None = None
    stands: tuple[Point, ...] = ()
    done: frozenset[str] = frozenset()
    patches: tuple[str, ...] = ()
    effort: float = 1.0

    @property
    def walks(self) -> int:
        """How many walks there are: one a person, or one a pair."""
        return max(1, self.people // 2 if self.pairs else self.people)


@dataclass(frozen=True, eq=False)
class Work:
    """Plants that are walked together, since they take the same mix, or none by the same method.

    id: of the mix, or the method. sheets: as in `field_sheets`. rows: (sheet, row) of every plant with a place on the
    map; counted: sheets of plants that were only counted, or are too many. n of rows in each column. plants: in each
    row. surveyed: sample plots told of these plants, nobody counted them.
    """

    id: str
    sheets: tuple[Mapping[str, Any], ...]
    rows: tuple[tuple[int, int], ...]
    counted: tuple[int, ...]
    places: Floats
    need_ml: Floats
    fast_s: Floats
    middle_s: Floats
    slow_s: Floats
    height_m: Floats
    plants: Floats
    bottle_ml: float
    surveyed: bool = False


def works_of(plan: Mapping[str, Any], tract: Tract, book: Book, ask: Ask = Ask()) -> list[Work]:
    """The works of a plan, those with a mix in the order of the mixes first, then plants that plots told of. What
    is done is left out."""
    groups: dict[str, list[Mapping[str, Any]]] = {}
    for sheet in field_sheets(plan):
        if not ask.patches or sheet["patch"] in ask.patches:
            groups.setdefault(sheet["mix"] or sheet["how"], []).append(sheet)
    bottles = {mix["id"]: float(mix["vessel"]["capacity_ml"]) for mix in plan["mixes"]}
    works = [
        _work(name, sheets, plan, tract, book, ask, bottles.get(name, math.inf)) for name, sheets in groups.items()
    ]
    surveyed = [one for one in plan["surveys"] if one["stems"] and (not ask.patches or one["patch"] in ask.patches)]
    return [*works, *(_of_survey(one, tract, book) for one in surveyed)]


def _of_survey(one: Mapping[str, Any], tract: Tract, book: Book) -> Work:
    """Plants that sample plots told of, to be walked in lanes. Their mix is what the survey reckons, its middle."""
    name = f"plots {one['patch']} {one['species']}"
    sheet = {
        "id": name, "mix": "", "how": "cut stump", "first": "", "product": "", "partner": "", "tool": "", "carrier": "",
        "state": "standing", "stopped": [], "ids": [], "counts": [], "sizes_cm": [], "row_ml": [one["mix_ml"]["mean"]],
        "patch": one["patch"], "patch_name": one["patch_name"], "species": one["species"], "common": one["common"],
    }  # fmt: skip
    none = np.empty(0)
    bottle_ml = max((v.capacity_ul / UL_PER_ML for v in tract.vessels), default=book.defaults["bottle_ml"].number)
    return Work(name, (sheet,), (), (0,), np.empty((0, 2)), none, none, none, none, none, none, float(bottle_ml), True)


def _work(
    name: str, sheets: list[Mapping[str, Any]], plan: Mapping[str, Any], tract: Tract, book: Book, ask: Ask,
    bottle_ml: float,
) -> Work:  # fmt: skip
    rows, places, need, fast, middle, slow, heights, plants = [], [], [], [], [], [], [], []
    note_of = dict(zip(tract.stems.id.tolist(), tract.stems.note.tolist(), strict=True))
    height_of = dict(zip(tract.stems.id.tolist(), tract.stems.height_m.tolist(), strict=True))
    counted = []
    for number, sheet in enumerate(sheets):
        column = plan["columns"][sheet["id"]]
        factors = _factors(tract, sheet["how"])
        paced = seconds_of(sheet["how"], sheet["species"], sheet["sizes_cm"], sheet["counts"], book)
        ends = [math.sqrt(a * b) for a, b in zip(*paced, strict=True)]
        for row, key in enumerate(sheet["ids"]):
            x, y = column["x_m"][row], column["y_m"][row]
            if str(key) in ask.done:
                continue
            if note_of.get(str(key)) == COUNTED:
                counted.append(number)
                continue
            rows.append((number, row))
            places.append((float(x), float(y)))
            need.append(sheet["row_ml"][row] if sheet["product"] else 0.0)
            low, mid, high = factors or (paced[0][row] / ends[row] if ends[row] else 1.0, 1.0,
                                         paced[1][row] / ends[row] if ends[row] else 1.0)  # fmt: skip
            fast.append(ends[row] * low)
            middle.append(ends[row] * mid)
            slow.append(ends[row] * high)
            heights.append(height_of.get(str(key), math.nan))
            plants.append(max(float(sheet["counts"][row]), 1.0))
    if len(rows) > MOST_STEMS:
        # Too many to be put in order one by one: walked in lanes, like plants that were counted.
        counted = list(range(len(sheets)))
        rows, places, need, fast, middle, slow, heights, plants = [], [], [], [], [], [], [], []
    return Work(
        name, tuple(sheets), tuple(rows), tuple(dict.fromkeys(counted)), np.array(places, float).reshape(-1, 2),
        np.array(need, float), np.array(fast, float), np.array(middle, float), np.array(slow, float),
        np.array(heights, float), np.array(plants, float), bottle_ml,
    )  # fmt: skip


def _factors(tract: Tract, how: str) -> tuple[float, float, float] | None:
    """Low, middle and high factor on the usual time, from own days; None where there are none."""
    days = hours_of_days(tract, how)
    return None if days is None else (days.factor(LOW), days.factor(MIDDLE), days.factor(HIGH))
