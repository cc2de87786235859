"""A folder that two people changed: what differs, one thing at a time, against what it was when it was given out.

Nothing is overwritten by itself and, without what it was, no deletion is ever inferred. Pure functions, but for a small
memory of what was shown, so that what is taken over is what was seen.
"""

import secrets
import threading
import tomllib
from collections import OrderedDict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from stemward.gate.pieces import Parts

Sort = Literal["new there", "changed there", "changed on both sides", "gone there", "differs", "happened there"]
MOST_KEPT = 8


@dataclass(frozen=True)
class Difference:
    """One thing that differs. mine, theirs: as it stands here and there, None for not there."""

    number: int
    kind: str
    key: str
    sort: Sort
    mine: Any
    theirs: Any

    @property
    def clashes(self) -> bool:
        """True if both sides changed it, or nobody can say which is newer."""
        return self.sort in ("changed on both sides", "differs")

    @property
    def changed(self) -> list[tuple[str, str, str]]:
        """Name, here, there, of every part that differs."""
        mine, theirs = _flat(self.mine), _flat(self.theirs)
        names = [*mine, *(name for name in theirs if name not in mine)]
        return [(n, mine.get(n, ""), theirs.get(n, "")) for n in names if mine.get(n, "") != theirs.get(n, "")]


def base_of(texts: Mapping[str, str]) -> str:
    """The hash that a folder says its land had when it was given out, or ""."""
    return str(tomllib.loads(texts.get("tract.toml", "")).get("base", ""))


def _flat(value: Any, lead: str = "") -> dict[str, str]:
    if isinstance(value, dict):
        found: dict[str, str] = {}
        for key, one in value.items():
            found |= _flat(one, f"{lead}.{key}" if lead else str(key))
        return found
    if isinstance(value, list | tuple) and any(isinstance(one, dict) for one in value):
        found = {}
        for number, one in enumerate(value, 1):
            found |= _flat(one, f"{lead} {number}")
        return found
    return (
        {} if value is None else {lead: ", ".join(map(str, value)) if isinstance(value, list | tuple) else str(value)}
    )


def differences(base: Parts | None, mine: Parts, theirs: Parts) -> list[Difference]:
    """Everything in which `theirs` asks for a change of `mine`, in their order; then what is gone there."""
    found: list[tuple[str, str, Sort, Any, Any]] = []
    old, own, other = ({} if p is None else _table(p) for p in (base, mine, theirs))
    for name, there in other.items():
        here, was = own.get(name), old.get(name)
        if here == there or (base is not None and was == there):
            continue  # the same, or only changed here
        if here is None:
            # Taken away here and unchanged there was left out above; changed there since, it comes up.
            found.append((*name, "new there" if was is None else "changed on both sides", None, there))
        elif base is None:
            found.append((*name, "differs", here, there))
        else:
            found.append((*name, "changed there" if here == was else "changed on both sides", here, there))
    if base is not None:
        for name, was in old.items():
            if name not in other and name in own and name != ("tract", ""):
                found.append((*name, "gone there" if own[name] == was else "changed on both sides", own[name], None))
    here_ids = {row["id"] for row in mine.entries}
    for row in theirs.entries:
        if row["id"] not in here_ids:
            found.append(("entry", row["id"], "happened there", None, row))
    return [Difference(n, *one) for n, one in enumerate(found)]


def _table(parts: Parts) -> dict[tuple[str, str], Any]:
    table: dict[tuple[str, str], Any] = {(p.kind, p.key): p.body for p in parts.pieces}
    from stemward.gate.pieces import STEM_COLUMNS

    for row in parts.stems:
        table["stem", row[0]] = {name: cell for name, cell in zip(STEM_COLUMNS, row, strict=True) if cell}
    return table


Changes = tuple[
    list[tuple[str, str, Any]],
    list[tuple[str, tuple[str, ...]]],
    list[tuple[str, ...]],
    list[str],
    list[dict[str, Any]],
]


def as_changes(chosen: Sequence[Difference]) -> Changes:
    """What taking over these differences comes to: edits of pieces, stems changed, added, taken away, and entries."""
    from stemward.gate.pieces import STEM_COLUMNS

    edits, stems, added, taken, entries = [], [], [], [], []
    for one in chosen:
        if one.kind == "entry":
            entries.append(one.theirs)
        elif one.kind != "stem":
            edits.append((one.kind, one.key, one.theirs))
        elif one.theirs is None:
            taken.append(one.key)
        else:
            row = tuple(one.theirs.get(name, "") for name in STEM_COLUMNS)
            if one.mine is None:
                added.append(row)
            else:
                stems.append((one.key, row))
    return edits, stems, added, taken, entries


_shown: OrderedDict[str, tuple[str, list[Difference]]] = OrderedDict()
_lock = threading.Lock()


def keep_for_later(tract_id: str, found: list[Difference]) -> str:
    """Remember what was shown; the word to ask for it again."""
    token = secrets.token_urlsafe(16)
    with _lock:
        _shown[token] = (tract_id, found)
        while len(_shown) > MOST_KEPT:
            _shown.popitem(last=False)
    return token


def kept_for(tract_id: str, token: str) -> list[Difference] | None:
    """What was shown under that word for this tract; None if it is forgotten."""
    with _lock:
        found = _shown.get(token)
    return found[1] if found and found[0] == tract_id else None
