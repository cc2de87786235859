"""Walks that were worked out lately, in the background, and those that were taken for paper and phone."""

import threading
from collections import OrderedDict
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any

from stemward.handbook import load
from stemward.kinds import Tract
from stemward.notebook.models import Kept
from stemward.plan.walk_works import Ask, Work, works_of
from stemward.plan.walk_worth import worth_of
from stemward.plan.walks import walk_work

MOST_KEPT = 16
"""Walks that are kept in memory: engineering guess, some tries of a few tracts."""
Found = list[tuple[Work, dict[str, Any]]]
_kept: OrderedDict[Any, Future[Any]] = OrderedDict()
_lock = threading.Lock()
_workers = ThreadPoolExecutor(max_workers=1, thread_name_prefix="walk")


def walks_of(plan: dict[str, Any], land: Tract, ask: Ask, which: str, wait_s: float | None) -> Found | None:
    """The works of a plan with their walks; None if that is not done within so many seconds (None: as long as it
    takes). It goes on, so asking again later finds it.

    which: the work to walk, "" for all.
    """
    return _soon(("walks", plan["code"], plan["as_of"], ask, which), lambda: _walks(plan, land, ask, which), wait_s)


def _walks(plan: dict[str, Any], land: Tract, ask: Ask, which: str) -> Found:
    book = load()
    works = [work for work in works_of(plan, land, book, ask) if which in ("", work.id)]
    return [(work, walk_work(work, plan, land, book, ask)) for work in works]


def worth(plan: dict[str, Any], land: Tract, ask: Ask, wait_s: float | None) -> list[dict[str, Any]] | None:
    """What is worth doing in the hours at hand, or None if it is not done within so many seconds."""
    return _soon(("worth", plan["code"], plan["as_of"], ask), lambda: worth_of(plan, land, load(), ask), wait_s)


def _soon(key: Any, make: Any, wait_s: float | None) -> Any:
    with _lock:
        future = _kept.get(key)
        if future is None:
            future = _kept[key] = _workers.submit(make)
            while len(_kept) > MOST_KEPT:
                _kept.popitem(last=False)
    try:
        return future.result(wait_s)
    except TimeoutError:
        return None


def _name(tract_id: str) -> str:
    return f"walks {tract_id}"


def take(tract_id: str, plan: dict[str, Any], names: list[str], found: Found) -> None:
    """Remember these walks in place of those before, for paper and phone."""
    rows = [
        {"person": name, "work": work.id, "stops": one["stops"], "lots": one["lots"]}
        for work, walk in found
        for name, one in zip(names, walk["people"], strict=True)
        if one["stops"]
    ]
    Kept.objects.update_or_create(name=_name(tract_id), defaults={"body": {"code": plan["code"], "walks": rows}})


def taken(tract_id: str) -> list[dict[str, Any]]:
    """The walks that were taken last, by the stems of the plan they were taken from; [] where none were."""
    return list(_body(tract_id).get("walks", []))


def is_old(tract_id: str, code: str) -> bool:
    """True where walks were taken out of another plan than this."""
    body = _body(tract_id)
    return bool(body) and body.get("code") != code


def _body(tract_id: str) -> dict[str, Any]:
    return Kept.objects.filter(name=_name(tract_id)).values_list("body", flat=True).first() or {}
