"""Permits, cost share and notices: where each stands, and work that was begun before one was granted."""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemward.kinds import Entry
from stemward.ledger.in_force import day_of, in_force


@dataclass(frozen=True, slots=True)
class Permit:
    """One permit, cost share or notice, by its name. step: the last one. Days are None where nobody has said.

    patches: those it is for, empty for all.
    """

    name: str
    what: str
    step: str
    patches: tuple[str, ...] = ()
    number: str = ""
    from_whom: str = ""
    asked: datetime.date | None = None
    granted_on: datetime.date | None = None
    until: str = ""

    def covers(self, patch: str) -> bool:
        """True if it is for a patch."""
        return not self.patches or patch in self.patches

    def holds(self, day: datetime.date) -> bool:
        """True if it was granted by a day and has not ended by it."""
        ended = bool(self.until) and day.isoformat() > self.until
        given = self.granted_on is not None and self.granted_on <= day
        return given and not ended and self.step not in ("refused", "ended")


def permits(entries: Iterable[Entry]) -> dict[str, Permit]:
    """Every permit by its name, in the order in which they were first written down."""
    found: dict[str, Permit] = {}
    for entry in in_force(entries):
        if entry.kind != "permission":
            continue
        body, day = entry.body, day_of(entry)
        have = found.get(body["name"], Permit(body["name"], body["what"], body["step"]))
        have = replace(
            have,
            step=body["step"],
            patches=tuple(body.get("patches") or have.patches),
            number=body.get("number") or have.number,
            from_whom=body.get("from_whom") or have.from_whom,
            until=body.get("until") or have.until,
        )
        if body["step"] == "asked for":
            have = replace(have, asked=day)
        if body["step"] == "granted":
            have = replace(have, granted_on=day)
        found[body["name"]] = have
    return found


def begun_early(entries: Iterable[Entry], what: str = "cost share") -> tuple[tuple[Permit, str, datetime.date], ...]:
    """Work that began before a permit of that kind was granted: permit, patch and the first such day."""
    entries = tuple(entries)
    found = []
    for permit in permits(entries).values():
        if permit.what != what:
            continue
        early: dict[str, datetime.date] = {}
        for entry in in_force(entries):
            if entry.kind != "treated" or not permit.covers(str(entry.body["patch"])):
                continue
            day, patch = day_of(entry), str(entry.body["patch"])
            from_asking = permit.asked is None or day >= permit.asked
            if from_asking and (permit.granted_on is None or day < permit.granted_on):
                early.setdefault(patch, day)
        found += [(permit, patch, day) for patch, day in early.items()]
    return tuple(found)


def granted(entries: Iterable[Entry], what: str, patch: str, day: datetime.date) -> Permit | None:
    """The permit of a kind that holds for a patch on a day; else the last one that is not granted, None for none."""
    own = [p for p in permits(entries).values() if p.what == what and p.covers(patch)]
    held = [p for p in own if p.holds(day)]
    return held[-1] if held else own[-1] if own else None
