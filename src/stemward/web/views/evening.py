"""After a day's work: what was ticked on the sheets, what was mixed, the weather; typed once, in one page."""

import datetime
import hashlib
import json
import uuid
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from django.http import HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST

from stemward.handbook import load
from stemward.kinds import Entry, Tract
from stemward.ledger import batches, in_force
from stemward.ledger.evening import DayTyped, written
from stemward.ledger.poured import FATES
from stemward.ledger.records import HELD
from stemward.ledger.said import read_ticks, ticks_of
from stemward.ledger.stems import marked_only
from stemward.notebook import worked
from stemward.notebook.changes import Refused
from stemward.notebook.entries import ISSUED
from stemward.plan.field_sheets import field_sheets
from stemward.say.en import records as words
from stemward.say.numbers import figure
from stemward.say.records import odd_words
from stemward.web import clock, day_form
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.tried import tried
from stemward.web.views.land import ask

BY_HAND = tuple(field for field, groups in HELD.items() if not groups)
NOW = "now"
RENUMBERED = (
    "The sheets were numbered anew since this page was opened, as the plan changed. "
    "Compare every number with the sheets as they stand here now, and send it again."
)
WAIT_S = 0.12
"""A page answers within a fifth of a second; while the plan is worked out for longer, it says so."""


def evening(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The page on which a day is written down."""
    land = known_of(tract_id).land
    today = clock.today(land)
    last = issued(land)[-1].body["code"] if issued(land) else NOW
    marked = next((m.plan for m in marked_only(land.entries) if m.day == request.GET.get("marked")), "")
    last = marked if marked in {e.body["code"] for e in issued(land)} else last
    chosen = request.POST.get("plan") or request.GET.get("plan") or last
    sheets = sheets_for(tract_id, land, chosen, None if request.method == "POST" else WAIT_S)
    if sheets is None:
        return page(request, "web/working.html", tract_id, "after", no_step=True)
    numbers = numbers_of(sheets)

    def made() -> tuple[DayTyped, list[dict[str, Any]]]:
        if request.POST.get("sheets", numbers) != numbers:
            raise Refused(RENUMBERED)
        return day_form.day_typed(request.POST, sheets, today, "" if chosen == NOW else chosen), sheets

    done, lines, asked = sent(request, tract_id, land, made)
    if done:
        return done
    typed = request.POST if request.method == "POST" else _from_marks(land, sheets, request.GET.get("marked", ""))
    return page(
        request, "web/evening.html", tract_id, "after", title="Write down a day", typed=typed, asked=asked,
        lines=lines, today=today.isoformat(), sheets=sheets, numbers=numbers, chosen=chosen,
        mixes=_mix_rows(land, sheets, typed, request), others=[s for s in _sheet_rows(sheets, typed) if not s["mix"]],
        plans=[(e.body["code"], e.at[:10]) for e in reversed(issued(land)[-6:])], now=NOW,
        head=_head(land, typed, today.isoformat()), by_hand=_by_hand(land, typed), sources=words.WEATHER_FROM,
        status=422 if lines or asked else 200,
    )  # fmt: skip


def _from_marks(land: Tract, sheets: Sequence[Mapping[str, Any]], day: str) -> QueryDict:
    """The form as phones' marks of a day fill it: day, times, people, and what was treated; empty without marks."""
    typed = QueryDict(mutable=True)
    found = next((one for one in marked_only(land.entries) if one.day == day), None)
    if found is None:
        return typed
    typed.update({"day": day, "begun": found.first, "ended": found.last})
    if found.people:
        typed["people"] = ", ".join(found.people)
    for sheet in sheets:
        rows = [
            (number, min(found.rows["treated"][stem], sheet["counts"][number - 1]))
            for number, stem in enumerate(sheet["ids"], 1)
            if stem in found.rows["treated"]
        ]
        if rows:
            typed[f"ticks-{sheet['id']}"] = ticks_of(rows, sheet["counts"], "treated")
    return typed


def numbers_of(sheets: Sequence[Mapping[str, Any]]) -> str:
    """A short mark of which number stands for which stem, so that a sheet numbered anew meanwhile is noticed."""
    ids = json.dumps([(sheet["id"], sheet["ids"]) for sheet in sheets])
    return hashlib.sha256(ids.encode()).hexdigest()[:12]


def sent(
    request: HttpRequest, tract_id: str, land: Tract, made: Callable[[], tuple[DayTyped, list[dict[str, Any]]]]
) -> tuple[HttpResponse | None, list[str], list[dict[str, str]]]:
    """A day that was sent is written down: the answer; or None, with what is wrong or what is asked first.

    made: the day as typed and its sheets; may raise Refused.
    """
    asked: list[dict[str, str]] = []

    def act() -> HttpResponse | None:
        day, sheets = made()
        found = written(day, sheets, land)
        names, units = {p.id: p.name for p in land.shelf}, units_of(request)
        if found.wrong:
            raise Refused(*(odd_words(one, units, names) for one in found.wrong))
        asked.extend(
            {"name": f"agree-{one.agree}", "words": odd_words(one, units, names)}
            for one in found.asked
            if f"agree-{one.agree}" not in request.POST
        )
        if asked:
            return None
        on = day.day.isoformat()
        entries = rows_from(request.POST["command"], land, found.rows, who())
        ask(request, tract_id, "write down", words={"what": f"the work of {on}"}, entries=entries)
        return redirect("record-day", tract_id, on)

    done, lines = tried(request, act)
    return done, lines, asked


def issued(land: Tract) -> list[Entry]:
    """Printed plans whose sheets were kept, the last one last."""
    return [e for e in in_force(land.entries) if e.kind == ISSUED and e.body.get("sheets")]


def sheets_for(tract_id: str, land: Tract, chosen: str, wait_s: float | None = None) -> list[dict[str, Any]] | None:
    """The sheets of a printed plan, or of the plan as it is now; None while that is worked out longer than that."""
    for entry in reversed(issued(land)):
        if entry.body["code"] == chosen:
            return list(entry.body["sheets"])
    plan = worked.plan_of(tract_id, clock.today(land), wait_s)
    return None if plan is None else field_sheets(plan)


def rows_from(
    command: str, land: Tract, rows: Sequence[tuple[str, str, dict[str, Any]]], by: str
) -> list[dict[str, Any]]:
    """Rows of records.jsonl, with ids that follow from the command, so that sending twice writes once."""
    offset = clock.there(land).utcoffset()
    minutes = int(offset.total_seconds() // 60) if offset else 0
    now = clock.now()
    made = []
    for n, (kind, at, body) in enumerate(rows):
        # In the order of the form, so that what happened at one time stays in order.
        received = (now + n * datetime.timedelta(microseconds=1)).isoformat(timespec="microseconds")
        key = str(uuid.uuid5(uuid.NAMESPACE_URL, f"{command}/{n}"))
        row = {"id": key, "kind": kind, "at": at, "offset": minutes, "by": by, "received": received, "body": body}
        made.append(row)
    return made


def _head(land: Tract, typed: QueryDict, today: str) -> dict[str, Any]:
    """Day, people and place, as typed, else as last time."""
    last = next((e.body for e in reversed(in_force(land.entries)) if e.kind == "treated" and e.body.get("people")), {})
    people = ", ".join(last.get("people", ())) or ", ".join(p.role for p in land.people if "apply" in p.does)
    mixed = next(
        (e.body for e in reversed(in_force(land.entries)) if e.kind == "batch mixed" and e.body.get("place")), {}
    )
    return {
        "day": typed.get("day", today), "people": typed.get("people", people),
        "place": typed.get("place", mixed.get("place", "")), "roles": [p.role for p in land.people],
    }  # fmt: skip


def _by_hand(land: Tract, typed: QueryDict) -> list[dict[str, Any]]:
    """Fields that only a person can fill and that some rule here may ask for, with what stood there last time."""
    last: dict[str, str] = {}
    for entry in in_force(land.entries):
        if entry.kind == "filled in":
            last |= entry.body["values"]
    wanted = {
        w.field
        for rule in load().record_rules
        if rule.state in ("", land.state)
        and (land.who in ("unknown", "adviser") or any(one.startswith(land.who) for one in rule.who))
        for w in rule.wanted
    }
    return [
        {
            "name": f"value-{f}",
            "label": words.FIELDS[f],
            "hint": words.HINTS.get(f, ""),
            "value": typed.get(f"value-{f}", last.get(f, "")),
        }
        for f in BY_HAND
        if f in wanted
    ]


def _sheet_rows(sheets: Sequence[Mapping[str, Any]], typed: QueryDict) -> list[dict[str, Any]]:
    return [
        {**sheet, "rows": len(sheet["ids"]), "plants": sum(sheet["counts"]), "counted": max(sheet["counts"]) > 1,
         "area": typed.get(f"area-{sheet['id']}", ""),
         "ticks": typed.get(f"ticks-{sheet['id']}", ""), "anyway": typed.get(f"anyway-{sheet['id']}", "")}
        for sheet in sheets
    ]  # fmt: skip


def _mix_rows(
    land: Tract, sheets: Sequence[Mapping[str, Any]], typed: QueryDict, request: HttpRequest
) -> list[dict[str, Any]]:
    """Each mix with the fields that ask for it, and its sheets."""
    units = units_of(request)
    kept = batches(land.entries)
    names = {p.id: p.name for p in land.shelf}
    shown = {s["id"]: s for s in _sheet_rows(sheets, typed)}
    rows = []
    for mix, own in day_form.mixes_of(sheets).items():
        products = day_form.products_of(own[0])
        there = [
            b
            for b in kept.values()
            if set(b.products) == set(products) and b.left_ul > 0 and b.carrier in ("", own[0]["carrier"])
        ]
        share = own[0]["concentration_frac"] or 0.0
        reckoned = sum(sum(s["row_ml"]) for s in own)
        rows.append(
            {
                "id": mix,
                "name": own[0]["product_name"],
                "strength": figure("share_frac", share, units),
                "carrier": own[0]["carrier"],
                "planned": figure("need_ml", reckoned, units),
                "drawn": [
                    {"product": p, "name": names.get(p, p), "value": typed.get(f"drawn-{mix}-{p}", ""),
                     "jugs": day_form.jugs_of(land, p), "jug": typed.get(f"jug-{mix}-{p}", "")}
                    for p in products
                ],
                "there": [(b.batch, f"{figure('left_ml', b.left_ul / 1000, units)} of {b.day}") for b in there],
                "fates": [(f, words.FATES[f]) for f in FATES],
                "sheets": [shown[s["id"]] for s in own],
                **{k: typed.get(f"{k}-{mix}", "") for k in ("mixed", "left", "fate", "bottle", "before")},
            }
        )  # fmt: skip
    return rows


@require_POST
def ticks(request: HttpRequest, tract_id: str, sheet: str) -> HttpResponse:
    """What one sheet's ticks come to, while they are typed."""
    land = known_of(tract_id).land
    sheets = sheets_for(tract_id, land, request.POST.get("plan", NOW)) or []
    own = next((s for s in sheets if s["id"] == sheet), None)
    if own is None:
        return HttpResponse("")
    found = read_ticks(request.POST.get(f"ticks-{sheet}", ""), own["counts"])
    said = [odd_words(one, units_of(request)) for one in found.wrong]
    counts = [(what, sum(rows.values())) for what, rows in found.rows.items() if rows]
    return render(request, "web/ticks.html", {"wrong": said, "counts": counts, "of": sum(own["counts"])})
