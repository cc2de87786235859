"""Which entries hold: corrected ones do not, and of two corrections of one entry the later holds."""

import datetime
from collections.abc import Iterable

from stemward.kinds import Entry

TAKEN_BACK = "taken back"


def when(entry: Entry) -> datetime.datetime:
    """The moment of an entry in UTC; a day without a time counts from its beginning."""
    local = datetime.datetime.fromisoformat(entry.at)
    return (local - datetime.timedelta(minutes=entry.offset)).replace(tzinfo=datetime.UTC)


def day_of(entry: Entry) -> datetime.date:
    """The local day of an entry."""
    return datetime.date.fromisoformat(entry.at[:10])


def in_force(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries that hold, in the order of what happened (then of writing down, then of id).

    The order given changes nothing.

    An entry that another corrects does not hold. Where several correct the same one, the last written holds: the
    one received last, then the greatest id. What takes an entry back holds nothing itself.
    """
    unique = {entry.id: entry for entry in sorted(entries, key=_written)}
    last: dict[str, str] = {}
    for entry in unique.values():
        if entry.corrects in unique:
            last[entry.corrects] = entry.id
    gone = set(last)
    beaten = {e.id for e in unique.values() if e.corrects in last and last[e.corrects] != e.id}
    kept = [e for e in unique.values() if e.id not in gone | beaten and e.kind != TAKEN_BACK]
    return tuple(sorted(kept, key=lambda e: (when(e), *_written(e))))


def _written(entry: Entry) -> tuple[str, str]:
    return entry.received or entry.at, entry.id


def competing(entries: Iterable[Entry]) -> tuple[tuple[str, ...], ...]:
    """Ids of corrections that correct the same entry, so that someone looks; each group in order."""
    by: dict[str, list[str]] = {}
    for entry in entries:
        if entry.corrects:
            by.setdefault(entry.corrects, []).append(entry.id)
    return tuple(sorted(tuple(sorted(set(ids))) for ids in by.values() if len(set(ids)) > 1))
