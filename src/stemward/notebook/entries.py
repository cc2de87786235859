"""What was written down as having happened, read for the pages: the plan last printed, patches set aside."""

import datetime
from collections.abc import Mapping
from typing import Any

from stemward.kinds import Entry, Tract

ISSUED = "plan issued"
ASIDE = "set aside"


def entry_row(
    key: str, kind: str, at: datetime.datetime, by: str, body: Mapping[str, Any], corrects: str = ""
) -> dict[str, Any]:
    """A row of records.jsonl for something that happened at a local time with its zone."""
    offset = at.utcoffset() or datetime.timedelta(0)
    row = {
        "id": key, "kind": kind, "at": at.replace(tzinfo=None).isoformat(timespec="seconds"),
        "offset": int(offset.total_seconds() // 60), "by": by, "body": dict(body),
    }  # fmt: skip
    return row | ({"corrects": corrects} if corrects else {})


def issued_code(land: Tract) -> str:
    """Code of the plan that was printed last, or ""."""
    found = [entry for entry in land.entries if entry.kind == ISSUED]
    return str(found[-1].body.get("code", "")) if found else ""


def set_aside(land: Tract, today: datetime.date) -> dict[str, str]:
    """Patches set aside, each with the day until which, as far as that day has not come."""
    aside: dict[str, str] = {}
    for entry in land.entries:
        if entry.kind == ASIDE:
            aside[str(entry.body.get("patch", ""))] = str(entry.body.get("until", ""))
    return {patch: until for patch, until in aside.items() if until > today.isoformat()}


def standing(entries: tuple[Entry, ...]) -> list[tuple[Entry, bool]]:
    """Every entry with whether a later one corrects it."""
    corrected = {entry.corrects for entry in entries if entry.corrects}
    return [(entry, entry.id in corrected) for entry in entries]
