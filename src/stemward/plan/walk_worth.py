"""What is worth doing in the hours at hand, and what to do first when rain comes early."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.plan.walk_works import Ask, works_of
from stemward.plan.walks import walk_work


def worth_of(plan: Mapping[str, Any], tract: Tract, book: Book, ask: Ask, seed: int = 1) -> list[dict[str, Any]]:
    """What is worth doing in the hours at hand: of each work in each patch by itself how many plants are reached and
    how many of these are expected to die, those with the most first; works with a stop, and those of which no kill is
    known, last. plants: reached; of: there are; low_dead, high_dead: None where nothing is known; hours as in walks.
    """
    found = []
    behind = {item["id"]: dead_in_ten(item) for item in plan["treatments"]}
    for patch in tract.patches:
        if ask.patches and patch.id not in ask.patches:
            continue
        for work in works_of(plan, tract, book, replace(ask, patches=(patch.id,))):
            if not work.rows:
                continue
            walk = walk_work(work, plan, tract, book, replace(ask, patches=(patch.id,), effort=ask.effort / 4), seed)
            reached = [stop for one in walk["people"] for stop in one["stops"] if stop != "refill"]
            count = {sheet["id"]: sheet["counts"] for sheet in work.sheets}
            plants = {t: sum(int(count[t][row]) for one, row, _ in reached if one == t) for t in count}
            ends = [(plants[t], behind[t]) for t in plants if plants[t]]
            dead = [(n * end[0] / 10, n * end[1] / 10) for n, end in ends if end is not None]
            known = bool(dead) and len(dead) == len(ends)
            found.append(
                {
                    "work": work.id, "patch": patch.id, "treatments": list(count), "plants": sum(plants.values()),
                    "of": int(sum(int(count[work.sheets[n]["id"]][row]) for n, row in work.rows)),
                    "low_dead": sum(low for low, _ in dead) if known else None,
                    "high_dead": sum(high for _, high in dead) if known else None,
                    "low_h": max(one["low_h"] for one in walk["people"]),
                    "high_h": max(one["high_h"] for one in walk["people"]),
                    "stopped": any(sheet["stopped"] for sheet in work.sheets),
                }
            )  # fmt: skip
    return sorted(found, key=lambda one: (one["stopped"], one["low_dead"] is None, -(one["low_dead"] or 0.0)))


def dead_in_ten(item: Mapping[str, Any]) -> tuple[float, float] | None:
    """How many of ten are expected to die by the way taken, low and high; None where nothing is known."""
    way = next((w for w in item["ways"] if w["how"] == item["how"] and w["product"] == item["product"]), None)
    return None if way is None or way["low"] is None else (float(way["low"]), float(way["high"]))


def before_rain(needs: Sequence[tuple[float, float]], rain_h: float) -> tuple[list[int], list[int]]:
    """What to do first when rain comes in so many hours, and what not to begin.

    needs: of each work the hours that have to stay dry behind it, and the hours it takes. First what must be done
    soonest, since it has to stay dry longest; what could not be dry in time if it were begun now is not begun. A work
    that needs no dry hours comes last: it can be done when the rest cannot.
    """
    latest = [rain_h - dry_h for dry_h, _ in needs]
    order = sorted(range(len(needs)), key=lambda n: (needs[n][0] <= 0, latest[n], n))
    first, not_now, at_h = [], [], 0.0
    for n in order:
        dry_h, takes_h = needs[n]
        if dry_h <= 0:
            first.append(n)
        elif at_h + takes_h <= latest[n] + 1e-9:
            first.append(n)
            at_h += takes_h
        else:
            not_now.append(n)
    return first, not_now
