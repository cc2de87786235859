"""What was done to each stem, and what is left to do."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

import numpy as np

from stemward.kinds import MARKS, Entry, Stems, Tract
from stemward.ledger.in_force import in_force


@dataclass(frozen=True, slots=True)
class Mark:
    """The last that is known of a stem or a row of counted plants. counts: how many of it, by what was done."""

    what: str
    at: str
    entry: str
    cut: int = 0
    treated: int = 0


def marks(entries: Iterable[Entry]) -> dict[str, Mark]:
    """Marks by stem id.

    What was marked in the woods and what was written down in the evening of the same day are the same work: of the
    two the larger count holds.
    """
    found: dict[str, Mark] = {}
    daily: dict[str, dict[str, list[int]]] = {}
    for entry in in_force(entries):
        what = _what(entry)
        if not what:
            continue
        for stem, count in entry.body.get("rows", {}).items():
            have = found.get(stem, Mark("", "", ""))
            new = replace(have, what=what, at=entry.at, entry=entry.id)
            if what == "cut":
                new = replace(new, cut=have.cut + int(count))
            elif what == "treated":
                both = daily.setdefault(stem, {}).setdefault(entry.at[:10], [0, 0])
                was = max(both)
                both[entry.kind == "treated"] += int(count)
                new = replace(new, treated=have.treated + max(both) - was)
            found[stem] = new
    return found


def _what(entry: Entry) -> str:
    """What an entry says was done to stems; "" for entries of other things."""
    return "treated" if entry.kind == "treated" else str(entry.body.get("what", "")) if entry.kind == "marked" else ""


@dataclass(frozen=True, slots=True)
class Unlike:
    """A stem that two phones marked on one day so that not both can be. entries: of either, in order."""

    stem: str
    day: str
    said: tuple[str, ...]
    devices: tuple[str, ...]
    entries: tuple[str, ...]


ONE_OF = ("treated", "missed", "not found")
"""Marks of which one stem can have only one: each of them ends the work on it."""


def unlike(entries: Iterable[Entry], counts: Mapping[str, int]) -> tuple[Unlike, ...]:
    """Stems that different phones marked differently on one day, or that more plants were treated of than there are.

    counts: plants in each row by id; a stem that stands there no more counts as one.
    """
    seen: dict[tuple[str, str], list[tuple[Entry, str, int]]] = {}
    for entry in in_force(entries):
        if entry.kind == "marked" and entry.device and (what := _what(entry)) in ONE_OF:
            for stem, count in entry.body["rows"].items():
                seen.setdefault((entry.at[:10], stem), []).append((entry, what, int(count)))
    found = []
    for (day, stem), own in seen.items():
        devices = tuple(dict.fromkeys(entry.device for entry, _, _ in own))
        said = tuple(dict.fromkeys(what for _, what, _ in own))
        treated = sum(count for _, what, count in own if what == "treated")
        if len(devices) > 1 and (treated > counts.get(stem, 1) or (len(said) > 1 and counts.get(stem, 1) == 1)):
            found.append(Unlike(stem, day, said, devices, tuple(entry.id for entry, _, _ in own)))
    return tuple(sorted(found, key=lambda one: (one.day, one.stem)))


@dataclass(frozen=True, slots=True)
class Marked:
    """What phones marked on one day and nobody wrote down yet. rows: by what was done, plants by stem. plan: code of
    the plan that the last of the phones had, "" where none said."""

    day: str
    rows: Mapping[str, Mapping[str, int]]
    first: str
    last: str
    people: tuple[str, ...]
    late: int
    plan: str = ""


def marked_only(entries: Iterable[Entry]) -> tuple[Marked, ...]:
    """Days with stems that are marked as treated and stand in no record, the oldest first."""
    by_day: dict[str, list[Entry]] = {}
    written: dict[str, dict[str, int]] = {}
    for entry in in_force(entries):
        if entry.kind == "marked" and entry.body.get("what") in MARKS:
            by_day.setdefault(entry.at[:10], []).append(entry)
        elif entry.kind == "treated":
            own_day = written.setdefault(entry.at[:10], {})
            for stem, count in entry.body.get("rows", {}).items():
                own_day[stem] = own_day.get(stem, 0) + int(count)
    found = []
    for day, own in sorted(by_day.items()):
        rows: dict[str, dict[str, int]] = {what: {} for what in MARKS}
        for entry in own:
            for stem, count in entry.body["rows"].items():
                mine = rows[str(entry.body["what"])]
                mine[stem] = mine.get(stem, 0) + int(count)
        noted = written.get(day, {})
        left = {stem: n - noted.get(stem, 0) for stem, n in rows["treated"].items()}
        rows["treated"] = {stem: n for stem, n in left.items() if n > 0}
        if not rows["treated"]:
            continue
        timed = [e.at[11:16] for e in own if "T" in e.at]
        people = dict.fromkeys(name for e in own for name in e.body.get("people", ()))
        plan = next((str(e.body["plan"]) for e in reversed(own) if e.body.get("plan")), "")
        late = sum(e.body.get("waited_s", 0) > e.body.get("limit_s", float("inf")) for e in own)
        found.append(Marked(day, rows, min(timed, default=""), max(timed, default=""), tuple(people), late, plan))
    return tuple(found)


def last_places(entries: Iterable[Entry], stems: Stems, day: str) -> dict[str, tuple[float, float]]:
    """Where each person marked the last stem of a day (ISO date), metres, by name or else by phone: about where they
    stand. Stems without a place on the map tell nothing."""
    place = {
        str(i): (float(x), float(y))
        for i, x, y in zip(stems.id, stems.x_m, stems.y_m, strict=True)
        if x == x and y == y
    }
    found = {}
    for entry in sorted(in_force(entries), key=lambda entry: entry.at):
        if entry.kind == "marked" and entry.at[:10] == day:
            who = str(next(iter(entry.body.get("people", ())), "") or entry.by or entry.device)
            for stem in entry.body.get("rows", {}):
                if stem in place:
                    found[who] = place[stem]
    return found


def cut_untreated(found: dict[str, Mark]) -> tuple[str, ...]:
    """Stems that were cut and not treated since."""
    return tuple(stem for stem, mark in found.items() if mark.cut > mark.treated)


def to_do(tract: Tract) -> Tract:
    """The tract with the stems that are still to be treated: those treated are left out, counted plants by how many,
    and those cut and not treated are stumps. Whether a treated stem died is seen when someone goes back.
    """
    known = marks(tract.entries)
    if not known or not len(tract.stems):
        return tract
    stems = tract.stems
    left, state = stems.stems.copy(), stems.state.copy()
    rows = np.flatnonzero(np.isin(stems.id, list(known)))
    cut_rows = []
    for row in rows.tolist():
        mark = known[str(stems.id[row])]
        left[row] -= min(mark.treated, int(left[row]))
        if mark.cut > mark.treated and state[row] != "cut" and mark.cut >= int(stems.stems[row]):
            cut_rows.append(row)
    if cut_rows:
        state = state.astype(np.promote_types(state.dtype, "<U8"))
        state[cut_rows] = "cut"
    changed = replace(stems, stems=left, state=state)
    return replace(tract, stems=_kept(changed, left > 0))


def _kept(stems: Stems, keep: "np.ndarray[tuple[int], np.dtype[np.bool_]]") -> Stems:
    return stems if bool(keep.all()) else stems.where(keep)
