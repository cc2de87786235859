"""What was worked out of a tract, kept until the tract changes: its values, its texts, its plan.

A plan of thousands of stems takes seconds, so it is worked in the background and pages ask whether it is there.
Kept in this process's memory only: the notebook stores what people said and did, nothing that follows from it.
"""

import datetime
import hashlib
import json
import threading
from collections import OrderedDict
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any

from stemward.gate.folder import read_texts
from stemward.gate.pieces import Parts, join, land_hash
from stemward.gate.records import NOTED
from stemward.handbook import load
from stemward.kinds import Tract as Land
from stemward.label import KINDS
from stemward.notebook import store
from stemward.notebook.models import Tract

MOST_KEPT = 8
"""Tracts whose values are kept, and plans: engineering guess, a crew's day and an adviser's week."""


@dataclass(frozen=True, eq=False)
class Known:
    """A tract at one version: its parts as stored, the values read of them, and the sha256 of its land.

    counted: sha256 of everything that a plan reads, which is the land and the entries that count.
    """

    version: int
    parts: Parts
    land: Land
    hash: str
    counted: str


_lock = threading.Lock()
_known: OrderedDict[str, Known] = OrderedDict()
_plans: OrderedDict[tuple[str, datetime.date], Future[dict[str, Any]]] = OrderedDict()
_workers = ThreadPoolExecutor(max_workers=1, thread_name_prefix="plan")


def read(version: int, parts: Parts) -> Known:
    """A tract's values and the sums over its texts. Raises gate.folder.Unreadable with all that is wrong."""
    texts = join(parts)
    found = read_texts(texts, load().find_species, KINDS)
    land = land_hash(texts)
    rows = [row for row in parts.entries if row["kind"] not in NOTED]
    counted = hashlib.sha256(json.dumps([land, rows], sort_keys=True).encode()).hexdigest()
    return Known(version, parts, found.tract, land, counted)


def keep(tract_id: str, now: Known) -> None:
    """Keep what was read of a tract, once its change is written for good."""
    _put(_known, tract_id, now)


def at(tract_id: str, version: int) -> Known | None:
    """What is kept of a tract at just this version; None where nothing is."""
    have = _known.get(tract_id)
    return have if have is not None and have.version == version else None


def known(tract_id: str) -> Known:
    """A tract as it is now. Raises Tract.DoesNotExist where there is none or it was removed."""
    version = Tract.objects.values_list("version", flat=True).get(id=tract_id, removed_at=None)
    have = at(tract_id, version)
    if have is not None:
        return have
    found = read(version, store.parts_of(tract_id))
    _put(_known, tract_id, found)
    return found


def plan_of(tract_id: str, as_of: datetime.date, wait_s: float | None = None) -> dict[str, Any] | None:
    """The plan of a tract as plain data; None if it is not worked out within `wait_s` seconds (None: as long as it
    takes). It goes on being worked in the background, so asking again later finds it.
    """
    now = known(tract_id)
    key = (now.counted, as_of)
    with _lock:
        future = _plans.get(key)
        if future is None:
            future = _workers.submit(_plan, now, as_of)
            _plans[key] = future
            while len(_plans) > MOST_KEPT:
                _plans.popitem(last=False)
    try:
        return future.result(wait_s)
    except TimeoutError:
        return None


def _plan(now: Known, as_of: datetime.date) -> dict[str, Any]:
    from stemward.plan import as_data, draw_up

    return as_data(draw_up(now.land, load(), as_of, now.hash))


def _put(kept: OrderedDict[str, Known], key: str, value: Known) -> None:
    with _lock:
        kept[key] = value
        kept.move_to_end(key)
        while len(kept) > MOST_KEPT:
            kept.popitem(last=False)


def forget() -> None:
    """Forget all that was kept, as a new start would."""
    with _lock:
        _known.clear()
        _plans.clear()
