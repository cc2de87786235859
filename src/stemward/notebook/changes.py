"""The only way anything in the notebook changes: one transaction, all or nothing, with a trace of who, what and when.

Everything a person asks for is a set of edits: pieces put or taken away, stems put, added or taken away. The whole
tract is then read again by room `gate`; if that finds anything wrong, nothing is changed.
"""

import datetime
import hashlib
import json
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.db import IntegrityError, transaction

from stemward.gate.folder import Unreadable
from stemward.gate.pieces import Parts
from stemward.notebook import store, worked
from stemward.notebook.models import Change, Stem, Tract
from stemward.notebook.store import Cells

DEEP = 50
"""How many changes of one person can be undone."""


class Refused(Exception):
    """A change that was not made. lines: sentences for the person, nothing was changed."""

    def __init__(self, *lines: str) -> None:
        self.lines = lines
        super().__init__(" ".join(lines))


@dataclass(frozen=True, slots=True)
class Edit:
    """A piece as it shall be; body None takes it away."""

    kind: str
    key: str
    body: dict[str, Any] | None


@dataclass(frozen=True)
class Asked:
    """What a person asks to be changed.

    id: made by the asker, so that asking twice changes once. words: values for the sentence that names the change.
    stems: cells of stems that are there, by id. added: rows of new stems. taken: ids of stems to take away.
    """

    id: str
    tract: str
    who: str
    verb: str
    words: dict[str, Any] = field(default_factory=dict)
    edits: Sequence[Edit] = ()
    stems: Sequence[tuple[str, Cells]] = ()
    added: Sequence[Cells] = ()
    taken: Sequence[str] = ()
    entries: Sequence[dict[str, Any]] = ()

    def digest(self) -> str:
        """sha256 of what is asked, so that one id is not used for two things."""
        said = [self.tract, self.verb, [[e.kind, e.key, e.body] for e in self.edits], self.stems, self.taken]
        digest = hashlib.sha256(json.dumps([*said, self.entries], sort_keys=True).encode())
        # No cell holds these two signs, which the gate refuses, so that two lists cannot run together alike.
        digest.update("\x1e".join(map("\x1f".join, self.added)).encode())
        return digest.hexdigest()


@dataclass(frozen=True, slots=True)
class Done:
    """A change that was made, now or when it was first asked. version: the tract's after it."""

    id: str
    number: int
    repeated: bool = False


def begin(asked: Asked, parts: Parts, now: datetime.datetime, example: bool = False) -> Done:
    """Make a new tract of these parts. Raises Refused, with nothing made, if they cannot be read."""
    digest = asked.digest()
    with transaction.atomic():
        before = _asked_before(asked.id, digest)
        if before:
            return before
        Tract.objects.create(id=asked.tract, version=0, example=example, made_at=now)
        store.put_pieces(asked.tract, parts.pieces)
        store.add_stems(asked.tract, parts.stems, asked.id)
        store.add_entries(asked.tract, parts.entries)
        counts = {"pieces": len(parts.pieces), "stems": len(parts.stems), "entries": len(parts.entries)}
        return _written(asked, digest, now, {}, {"begun": counts}, 0)


def change(asked: Asked, now: datetime.datetime, tell: Callable[[int, int], None] | None = None) -> Done:
    """Change a tract. Raises Refused, with nothing changed, if what would come of it cannot be read.

    tell: is told how many of how many new stems are written, while they are.
    """
    digest = asked.digest()
    with transaction.atomic():
        before = _asked_before(asked.id, digest)
        if before:
            return before
        _locked(asked.tract)
        was, now_is = _apply(asked.tract, asked.edits, asked.stems, 1)
        _take(asked.tract, asked.taken, asked.id)
        _add(asked, tell)
        store.add_entries(asked.tract, asked.entries)
        return _written(asked, digest, now, was, now_is, len(asked.taken))


def undo(change_id: str, tract_id: str, who: str, now: datetime.datetime) -> Done:
    """Take back this person's last change. Raises Refused if there is none, or it was built upon."""
    return _turn(change_id, tract_id, who, now, "undo")


def redo(change_id: str, tract_id: str, who: str, now: datetime.datetime) -> Done:
    """Make the change again that this person took back last. Raises Refused as `undo`."""
    return _turn(change_id, tract_id, who, now, "redo")


def stacks(tract_id: str, who: str) -> tuple[list[Change], list[Change]]:
    """This person's changes that can be taken back and made again, the next one last.

    Follows from the trace alone, so it is the same after a restart.
    """
    done: list[Change] = []
    undone: list[Change] = []
    by_id: dict[str, Change] = {}
    for row in Change.objects.filter(tract_id=tract_id, who=who).defer("before", "after"):
        by_id[row.id] = row
        if row.verb == "undo":
            done = [one for one in done if one.id != row.of]
            undone.append(by_id[row.of])
        elif row.verb == "redo":
            undone = [one for one in undone if one.id != row.of]
            done.append(by_id[row.of])
        elif row.verb not in FOR_GOOD:
            done.append(row)
            undone = []
    left = DEEP - len(undone)
    return done[-left:] if left > 0 else [], undone[-DEEP:]


FOR_GOOD = ("begin", "write down")
"""Verbs that are not taken back: a tract's beginning, and what happened (which is corrected instead)."""


def _turn(change_id: str, tract_id: str, who: str, now: datetime.datetime, verb: str) -> Done:
    asked = Asked(change_id, tract_id, who, verb)
    digest = asked.digest()
    with transaction.atomic():
        before = _asked_before(change_id, digest)
        if before:
            return before
        _locked(tract_id)
        stack = stacks(tract_id, who)[0 if verb == "undo" else 1]
        if not stack:
            raise Refused(NOTHING[verb])
        found = Change.objects.get(id=stack[-1].id)
        have, want = (found.after, found.before) if verb == "undo" else (found.before, found.after)
        _still(tract_id, have, found, verb)
        edits = [Edit(kind, key, body) for kind, key, body in want.get("pieces", [])]
        was, now_is = _apply(tract_id, edits, [(key, cells) for key, cells in want.get("stems", [])],
                             -1 if verb == "undo" else 1)  # fmt: skip
        try:
            with transaction.atomic():
                _turn_rows(tract_id, found, verb)
        except IntegrityError:
            raise Refused("A stem that would come back has an id that another stem uses now.") from None
        words = {"verb": found.verb, **found.words}
        turned = Asked(change_id, tract_id, who, verb, words)
        return _written(turned, digest, now, was, now_is, 0, found.id)


NOTHING = {"undo": "There is nothing of yours to take back.", "redo": "There is nothing of yours to make again."}
BUILT_UPON = "This was changed again since, by {who}: {what}. Take that back first, or change it by hand."
BUILT_UPON_SELF = "This was changed again since. Change it by hand."


def _still(tract_id: str, have: dict[str, Any], found: Change, verb: str) -> None:
    """Raises Refused unless everything the change touched is as it left it."""
    for kind, key, body in have.get("pieces", []):
        if store.piece_of(tract_id, kind, key) != body:
            raise _built_upon(found)
    for key, cells in have.get("stems", []):
        own = store.stem_of(tract_id, key)
        if own is None or list(own) != cells:
            raise _built_upon(found)
    own = Stem.objects.filter(tract_id=tract_id)
    if verb == "undo" and own.filter(made_by=found.id, gone_by="", edits=0).count() != found.added:
        raise _built_upon(found)
    if verb == "redo" and own.filter(taken_in=found.id, gone_by="").count() != found.taken:
        raise _built_upon(found)


def _built_upon(found: Change) -> Refused:
    later = Change.objects.filter(tract_id=found.tract_id, number__gt=found.number).exclude(who=found.who).last()
    if later is None:
        return Refused(BUILT_UPON_SELF)
    return Refused(BUILT_UPON.format(who=later.who, what=later.verb))


def _turn_rows(tract_id: str, found: Change, verb: str) -> None:
    """Stems that a change added go, those that it took away come back; or the other way round."""
    own = Stem.objects.filter(tract_id=tract_id)
    if verb == "undo":
        if found.added:
            own.filter(made_by=found.id, gone_by="").update(gone_by=found.id)
        if found.taken:
            own.filter(taken_in=found.id, gone_by=found.id).update(gone_by="")
    else:
        if found.added:
            own.filter(made_by=found.id, gone_by=found.id).update(gone_by="")
        if found.taken:
            own.filter(taken_in=found.id, gone_by="").update(gone_by=found.id)


def _asked_before(change_id: str, digest: str) -> Done | None:
    row = Change.objects.filter(id=change_id).only("id", "number", "asked").first()
    if row is None:
        return None
    if row.asked != digest:
        raise Refused("This was sent before with other content. Load the page again and repeat the change.")
    return Done(row.id, row.number, repeated=True)


def _locked(tract_id: str) -> Tract:
    tract = Tract.objects.select_for_update().filter(id=tract_id, removed_at=None).first()
    if tract is None:
        raise Refused("This tract is not there any more.")
    return tract


def _apply(
    tract_id: str, edits: Iterable[Edit], stems: Iterable[tuple[str, Cells]], counts: int
) -> tuple[dict[str, Any], dict[str, Any]]:
    """Write edits; what each touched piece and stem was and is."""
    was: dict[str, Any] = {"pieces": [], "stems": []}
    now_is: dict[str, Any] = {"pieces": [], "stems": []}
    for edit in edits:
        was["pieces"].append([edit.kind, edit.key, store.piece_of(tract_id, edit.kind, edit.key)])
        store.put_piece(tract_id, edit.kind, edit.key, edit.body)
        now_is["pieces"].append([edit.kind, edit.key, edit.body])
    for key, cells in stems:
        own = store.stem_of(tract_id, key)
        if own is None:
            raise Refused(f"There is no stem {key} any more.")
        was["stems"].append([key, list(own)])
        store.put_stem(tract_id, key, cells, counts)
        now_is["stems"].append([key, list(cells)])
    return was, now_is


def _take(tract_id: str, keys: Sequence[str], change_id: str) -> None:
    for first in range(0, len(keys), 500):
        some = keys[first : first + 500]
        own = Stem.objects.filter(tract_id=tract_id, gone_by="", key__in=some)
        if own.update(gone_by=change_id, taken_in=change_id) != len(set(some)):
            raise Refused("Some of these stems are not there any more.")


def _add(asked: Asked, tell: Callable[[int, int], None] | None) -> None:
    if not asked.added:
        return
    keys = {row[0] for row in asked.added}
    there = {row[0] for row in Stem.objects.filter(tract_id=asked.tract, gone_by="").values_list("key")}
    twice = sorted(keys & there)
    if twice or len(keys) < len(asked.added):
        shown = f": {', '.join(twice[:5])}" if twice else ""
        raise Refused(f"Some of these stems have an id that is used already{shown}. Each id names one stem.")
    store.add_stems(asked.tract, asked.added, asked.id, tell)


def _written(
    asked: Asked,
    digest: str,
    now: datetime.datetime,
    was: dict[str, Any],
    now_is: dict[str, Any],
    taken: int,
    of: str = "",
) -> Done:
    """Read the tract as it would be, grow its version, and leave the trace."""
    tract = Tract.objects.get(id=asked.tract)
    version = tract.version + 1
    # What is kept of the tract before this change spares reading stems again that it did not touch.
    before = None if of or taken or asked.stems else worked.at(asked.tract, tract.version)
    stems = None if before is None else [*before.parts.stems, *asked.added]
    known = _readable(version, store.parts_of(asked.tract, stems))
    last = Change.objects.filter(tract_id=asked.tract).order_by("-number").values_list("number", flat=True).first()
    number = 1 if last is None else last + 1
    Change.objects.create(
        id=asked.id, tract_id=asked.tract, number=number, who=asked.who, at=now, verb=asked.verb, words=asked.words,
        asked=digest, before=was, after=now_is, added=len(asked.added), taken=taken, of=of,
    )  # fmt: skip
    Tract.objects.filter(id=asked.tract).update(version=version)
    transaction.on_commit(lambda: worked.keep(asked.tract, known))
    return Done(asked.id, number)


def _readable(version: int, parts: Parts) -> worked.Known:
    try:
        return worked.read(version, parts)
    except Unreadable as unreadable:
        from stemward.say.problems import problem_sentence

        raise Refused(*dict.fromkeys(problem_sentence(problem) for problem in unreadable.problems)) from None
