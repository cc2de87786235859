"""What was done to each stem, and what is left to do."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

import numpy as np

from stemward.kinds import Entry, Stems, Tract
from stemward.ledger.in_force import in_force


@dataclass(frozen=True, slots=True)
class Mark:
    """The last that is known of a stem or a row of counted plants. counts: how many of it, by what was done.

    several: entries that marked it as treated, where more than one did.
    """

    what: str
    at: str
    entry: str
    cut: int = 0
    treated: int = 0
    several: tuple[str, ...] = ()


def marks(entries: Iterable[Entry]) -> dict[str, Mark]:
    """Marks by stem id."""
    found: dict[str, Mark] = {}
    for entry in in_force(entries):
        what = (
            "treated" if entry.kind == "treated" else str(entry.body.get("what", "")) if entry.kind == "marked" else ""
        )
        if not what:
            continue
        for stem, count in entry.body.get("rows", {}).items():
            have = found.get(stem, Mark("", "", ""))
            found[stem] = _marked(have, what, int(count), entry)
    return found


def _marked(have: Mark, what: str, count: int, entry: Entry) -> Mark:
    new = replace(have, what=what, at=entry.at, entry=entry.id)
    if what == "cut":
        return replace(new, cut=have.cut + count)
    if what == "treated":
        again = (*have.several, entry.id) if have.treated else (entry.id,)
        return replace(new, treated=have.treated + count, several=again)
    return new


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
