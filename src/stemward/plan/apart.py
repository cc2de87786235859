"""Kill rates of one way apart by what may have mattered: season, person, strength, minutes from cut to treatment."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from stemward.kinds import Entry, Tract
from stemward.ledger.in_force import in_force
from stemward.ledger.revisits import Work
from stemward.reckon.compare import Comparison, Group, compare

Value = int | float | str
SIZES_DIFFER = 1.5
"""Median diameters that stand so many times apart may make the difference by themselves: engineering guess."""
MINUTES = (5, 15)
"""Ends of the classes of minutes that a stump waited: engineering guess, no source."""


@dataclass(frozen=True, slots=True)
class Part:
    """Works alike in one respect, with looks that count. dead, seen: by work.

    value: quarter of the year (0 is December to February), names of people, percent of product in the mix, or class of
    minutes (0 up to the first of MINUTES).
    """

    value: Value
    works: tuple[Work, ...]
    dead: tuple[int, ...]
    seen: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Apart:
    """One way on one plant, apart by one thing. parts: those of which most was seen first. result: the first two
    against each other; other: in what else these two differ, so that it may be that."""

    by: str
    parts: tuple[Part, ...]
    result: Comparison
    other: tuple[str, ...]


def apart(counted: Sequence[tuple[Work, int, int]], tract: Tract, least_effect: float = 1.0) -> tuple[Apart, ...]:
    """Everything by which works of one way differ. counted: works with dead and seen of the look that counts.
    least_effect: as in `compare`.

    Works of which a thing is not on record have no part in what is told of it; () where nothing can be held apart.
    """
    found = []
    for by, ask in _ASKED.items():
        parts: dict[Value, list[tuple[Work, int, int]]] = {}
        for row in counted:
            if (value := ask(row[0], tract)) is not None:
                parts.setdefault(value, []).append(row)
        if len(parts) < 2:
            continue
        made = [_part(value, rows) for value, rows in parts.items()]
        made.sort(key=lambda part: (-sum(part.seen), str(part.value)))
        one, two = made[:2]
        result = compare(Group(one.dead, one.seen), Group(two.dead, two.seen), least_effect)
        other = tuple(name for name in differs(one.works, two.works, tract) if name != by)
        found.append(Apart(by, tuple(made), result, other))
    return tuple(found)


def _part(value: Value, rows: Sequence[tuple[Work, int, int]]) -> Part:
    works, dead, seen = zip(*rows, strict=True)
    return Part(value, works, dead, seen)


def differs(one: Sequence[Work], two: Sequence[Work], tract: Tract) -> tuple[str, ...]:
    """In what two groups of works differ altogether: "season", "person", "size", "strength"."""
    found = []
    if not {season_of(w) for w in one} & {season_of(w) for w in two}:
        found.append("season")
    if not {p for w in one for p in w.people} & {p for w in two for p in w.people}:
        found.append("person")
    sizes = median_cm(one, tract), median_cm(two, tract)
    if all(sizes) and max(sizes) >= SIZES_DIFFER * min(sizes):
        found.append("size")
    if one[0].product == two[0].product and not {_percent(w, tract) for w in one} & {_percent(w, tract) for w in two}:
        found.append("strength")
    return tuple(found)


def season_of(work: Work) -> int:
    """Quarter of the year, December to February first, 0."""
    return work.day.month % 12 // 3


def median_cm(works: Sequence[Work], tract: Tract) -> float:
    """Median diameter of the plants of works that are listed one by one, cm; 0 where none is."""
    own = {row for work in works for row in work.rows}
    sizes = tract.stems.diameter_cm[np.isin(tract.stems.id, list(own))] if own else np.empty(0)
    return float(np.median(sizes)) if len(sizes) else 0.0


def marks_of(work: Work, tract: Tract) -> tuple[Entry, ...]:
    """What was marked in the woods of a work's plants on its day as treated."""
    rows, day = set(work.rows), work.day.isoformat()
    return tuple(
        e
        for e in in_force(tract.entries)
        if e.kind == "marked" and e.at[:10] == day and e.body.get("what") == "treated" and rows & set(e.body["rows"])
    )


def _season(work: Work, _tract: Tract) -> Value:
    return season_of(work)


def _person(work: Work, _tract: Tract) -> Value | None:
    return " and ".join(sorted(work.people)) or None


def _percent(work: Work, _tract: Tract) -> Value | None:
    return percent_of(work) or None


def percent_of(work: Work) -> float:
    """Product in the mix, percent to three digits, so that the same strength twice is one; 0 where it is not known."""
    return float(f"{100 * work.concentration_frac:.3g}")


def _minutes(work: Work, tract: Tract) -> Value | None:
    """The class of the longest wait that was timed; None where nobody timed it, or nothing was cut."""
    waits = [float(e.body["waited_s"]) for e in marks_of(work, tract) if e.body.get("waited_s") is not None]
    if work.method != "cut stump" or not waits:
        return None
    return int(np.searchsorted(MINUTES, max(waits) / 60))


_ASKED: Mapping[str, Callable[[Work, Tract], Value | None]] = {
    "season": _season, "person": _person, "strength": _percent, "minutes": _minutes,
}  # fmt: skip
