"""Rows that a phone brings: each is an entry, taken once, answered one by one; nothing brought is lost.

The same row twice is one. The same id with another body is refused and kept for a person. What the gate refuses is
kept for a person too. Rows for stems that are gone, rows of an older plan and rows of a wrong clock are taken as
they are, since they say what happened, and what is odd is kept beside them.
"""

import datetime
import hashlib
import json
import threading
import uuid
from collections.abc import Mapping, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, field
from typing import Any

from django.db import connection, transaction
from django.db.models import Max

from stemward.gate.problems import Problems
from stemward.gate.records import read_records
from stemward.notebook.changes import Refused
from stemward.notebook.models import Brought, Change, Entry, Photo, Stem, Tract
from stemward.notebook.store import add_entries
from stemward.say.en import phones as words
from stemward.say.problems import problem_sentence

KINDS = ("marked", "noted", "weather", "taken back")
"""Kinds of entry that a phone may bring."""
MOST_ROWS = 200
"""Rows taken at once; a phone sends a few dozen: engineering guess."""
MOST_ROW_BYTES = 4_000
CLOCK_S = 120.0
"""A phone whose clock is off by more is noticed: engineering guess, well above what a slow answer takes."""
AHEAD_S = 300.0
"""A row from further in the future cannot be: engineering guess."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of one row. state: "kept", "again" (it was there), "refused" (kept for a person), "wait" (it corrects
    a row that has not come yet; send it again). why: a sentence for what was refused."""

    id: str
    state: str
    why: str = ""


@dataclass
class _Taking:
    """One request while it is worked on."""

    tract: Tract
    device: str
    now: datetime.datetime
    off_s: float | None
    plan: str
    have: dict[str, dict[str, Any]]
    stems: set[str]
    rows: list[dict[str, Any]] = field(default_factory=list)
    log: list[Brought] = field(default_factory=list)


def receive(
    tract_id: str, device: str, rows: Sequence[Any], sent_at: datetime.datetime | None, now: datetime.datetime,
    plan: str = "",
) -> list[Answer]:  # fmt: skip
    """Take rows of one phone; an answer for each, in order. All are written for good, or an error is raised and none.

    sent_at: the phone's clock when it sent them; None for a file carried by hand. plan: code of the plan that phones
    get now, "" if none does. Raises Refused where the tract is
    gone or there are too many rows.
    """
    if len(rows) > MOST_ROWS and sent_at is not None:
        raise Refused(words.TOO_MANY.format(most=MOST_ROWS))
    with _in_turn(), transaction.atomic():
        tract = Tract.objects.select_for_update().filter(id=tract_id, removed_at=None).first()
        if tract is None:
            raise Refused(words.NO_LAND)
        off_s = (sent_at - now).total_seconds() if sent_at else None
        work = _Taking(tract, device[:100], now, off_s, plan, _there(tract_id, rows), _stems(tract_id, rows))
        answers = [_one(work, row) for row in rows]
        if work.rows:
            add_entries(tract_id, work.rows)
            number = Change.objects.filter(tract_id=tract_id).aggregate(last=Max("number"))["last"] or 0
            told = {"what": words.MARKS_OF.format(count=len(work.rows), device=device or words.A_PHONE)}
            Change.objects.create(
                id=str(uuid.uuid4()), tract_id=tract_id, number=number + 1, who=device[:100] or "phone", at=now,
                verb="write down", words=told, asked="", before={}, after={},
            )  # fmt: skip
            Tract.objects.filter(id=tract_id).update(version=tract.version + 1)
        Brought.objects.bulk_create(work.log, ignore_conflicts=True)
    return answers


_turn = threading.Lock()


def _in_turn() -> AbstractContextManager[Any]:
    """SQLite has one writer: threads that wait for it here go on at once, those that wait within it sleep and ask."""
    return _turn if connection.vendor == "sqlite" else nullcontext()


def digest_of(row: Any) -> str:
    """sha256 of a row, whatever the order of its parts."""
    return hashlib.sha256(json.dumps(row, sort_keys=True).encode()).hexdigest()


def _there(tract_id: str, rows: Sequence[Any]) -> dict[str, dict[str, Any]]:
    """Entries that are there under an id that is brought or corrected."""
    keys = {str(row.get(name, "")) for row in rows if isinstance(row, dict) for name in ("id", "corrects")}
    found: dict[str, dict[str, Any]] = {}
    wanted = sorted(keys)
    for first in range(0, len(wanted), 500):
        own = Entry.objects.filter(tract_id=tract_id, key__in=wanted[first : first + 500])
        found.update(own.values_list("key", "row"))
    return found


def _stems(tract_id: str, rows: Sequence[Any]) -> set[str]:
    """Those of the stems named that stand on the list."""
    named = {stem for row in rows for stem in _rows_of(row)}
    wanted, found = sorted(named), set()
    for first in range(0, len(wanted), 500):
        own = Stem.objects.filter(tract_id=tract_id, gone_by="", key__in=wanted[first : first + 500])
        found |= set(own.values_list("key", flat=True))
    return found


def _rows_of(row: Any) -> list[str]:
    body = row.get("body") if isinstance(row, dict) else None
    rows = body.get("rows") if isinstance(body, dict) else None
    return [str(stem) for stem in rows] if isinstance(rows, dict) else []


def _one(work: _Taking, row: Any) -> Answer:
    """One row: taken, known, refused or to wait for."""
    if not isinstance(row, dict) or not isinstance(row.get("id"), str) or not row["id"]:
        return Answer("", "refused", words.NO_ROW)
    key = row["id"]
    if key in work.have:
        if digest_of(row) == digest_of(_as_sent(work.have[key])):
            return Answer(key, "again")
        return _refused(work, row, words.OTHER_BODY)
    if row.get("kind") not in KINDS:
        return _refused(work, row, words.NOT_FROM_A_PHONE)
    if len(json.dumps(row)) > MOST_ROW_BYTES:
        return _refused(work, row, words.TOO_LONG)
    problems = Problems()
    # What the row corrects may lie in the notebook: the gate sees the one line alone.
    entries = read_records(json.dumps({**row, "corrects": ""}), None, (), problems)
    if problems.count or not entries or not isinstance(row.get("corrects", ""), str) or "received" in row:
        said = dict.fromkeys(problem_sentence(one) for one in problems.kept)
        return _refused(work, row, " ".join(said) or words.NO_ROW)
    if row.get("corrects") and row["corrects"] not in work.have:
        return Answer(key, "wait") if row["corrects"] != key else _refused(work, row, words.NO_ROW)
    received = work.now + len(work.rows) * datetime.timedelta(microseconds=1)
    kept = {**row, "received": received.isoformat(timespec="microseconds")}
    work.rows.append(kept)
    work.have[key] = kept
    work.log.append(_logged(work, row, "kept", _odd(work, row)))
    return Answer(key, "kept")


def _as_sent(row: Mapping[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in row.items() if name != "received"}


def _refused(work: _Taking, row: dict[str, Any], why: str) -> Answer:
    """Not taken, and kept for a person."""
    work.log.append(_logged(work, row, "refused", [why]))
    return Answer(row["id"], "refused", why)


def _logged(work: _Taking, row: dict[str, Any], state: str, why: list[str]) -> Brought:
    return Brought(
        tract=work.tract, key=row["id"][:200], digest=digest_of(row), row=row, device=work.device, at=work.now,
        off_s=work.off_s, state=state, why=why, is_odd=bool(why),
    )  # fmt: skip


def _odd(work: _Taking, row: Mapping[str, Any]) -> list[str]:
    """What is odd about a row that is taken all the same, in sentences."""
    body, found = row["body"], []
    off_s = work.off_s or 0.0
    if abs(off_s) > CLOCK_S:
        way = words.AHEAD if off_s > 0 else words.BEHIND
        found.append(words.WHY["clock"].format(minutes=round(abs(off_s) / 60), way=way))
    local = datetime.datetime.fromisoformat(row["at"])
    moment = (local - datetime.timedelta(minutes=row["offset"])).replace(tzinfo=datetime.UTC)
    if (moment - work.now).total_seconds() - max(off_s, 0.0) > AHEAD_S:
        found.append(words.WHY["future"])
    found += [words.WHY["stem_gone"].format(stem=stem) for stem in _rows_of(row) if stem not in work.stems]
    if work.plan and body.get("plan", work.plan) != work.plan:
        found.append(words.WHY["older_plan"].format(plan=body["plan"]))
    if body.get("anyway"):
        found.append(words.WHY["anyway"].format(reason=body["anyway"]))
    if body.get("limit_s") and body.get("waited_s", 0) > body["limit_s"]:
        found.append(words.WHY["late"].format(late=round((body["waited_s"] - body["limit_s"]) / 60, 1)))
    return found


def put_photo(tract_id: str, content: bytes, now: datetime.datetime) -> str:
    """Keep a picture; its digest. The same picture twice is one. Raises Refused for what is no small JPEG."""
    if len(content) > MOST_PHOTO_BYTES or not content.startswith(b"\xff\xd8\xff"):
        raise Refused(words.NO_PHOTO)
    digest = hashlib.sha256(content).hexdigest()
    Photo.objects.get_or_create(tract_id=tract_id, digest=digest, defaults={"content": content, "at": now})
    return digest


MOST_PHOTO_BYTES = 300_000
"""A picture of 1,280 px at usual quality takes half of it: engineering guess."""
