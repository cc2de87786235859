"""After: days that were worked, their application records, what is missing, signing, correcting."""

import datetime
from collections.abc import Mapping, Sequence
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from stemward.gate.out import record_rows_csv, record_rows_json
from stemward.gate.text import clean
from stemward.handbook import load
from stemward.kinds import Entry, Tract
from stemward.ledger import batches, in_force
from stemward.ledger.duties import Duty, due_of, duties_of, keep_until_of, missing_of
from stemward.ledger.in_force import TAKEN_BACK, competing, day_of
from stemward.ledger.mixes import KEPT
from stemward.ledger.records import HELD, Record, as_signed, records
from stemward.ledger.stems import marked_only
from stemward.notebook.changes import Refused
from stemward.notebook.entries import ASIDE, ISSUED, standing
from stemward.paper.record import record_pdf
from stemward.say.en import phones as phone_words
from stemward.say.en import records as words
from stemward.say.numbers import figure
from stemward.say.records import entry_words, left_words, record_rows, state_words
from stemward.web import clock
from stemward.web.day_form import MOST, a_clock, measured, weather_typed
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.tried import Gathered, tried
from stemward.web.views.evening import rows_from
from stemward.web.views.land import ask

MOST_LINES = 200


def judged(land: Tract) -> list[tuple[Record, tuple[Duty, ...]]]:
    """Every record with what is asked of it."""
    return [(record, duties_of(record, land, load())) for record in records(land)]


def after(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Days worked, newest first, and everything that was written down."""
    land = known_of(tract_id).land
    today, names, units = clock.today(land), names_of(land), units_of(request)
    days: dict[datetime.date, list[dict[str, str]]] = {}
    for record, duties in judged(land):
        patch = names.get(record.patch, record.patch)
        days.setdefault(record.day, []).append(
            {"what": f"{record.values['product_name']}, {patch}", "state": state_words(record, duties, today)}
        )
    for entry in in_force(land.entries):
        if entry.kind in ("treated", "marked"):
            days.setdefault(day_of(entry), [])
    lines = [line_of(entry, gone, units, names) for entry, gone in reversed(standing(land.entries)[-MOST_LINES:])]
    return page(
        request, "web/after.html", tract_id, "after", rows=lines,
        days=[{"day": day.isoformat(), "records": found} for day, found in sorted(days.items(), reverse=True)],
        notes=notes(land, units), marked=marked_lines(land),
    )  # fmt: skip


def marked_lines(land: Tract) -> list[dict[str, str]]:
    """Days with plants that phones marked as treated and that stand in no record."""
    return [
        {"day": one.day, "words": phone_words.NOT_WRITTEN.format(
            day=one.day, count=sum(one.rows["treated"].values()),
            late=phone_words.LATE.format(late=one.late) if one.late else "")}
        for one in marked_only(land.entries)
    ]  # fmt: skip


def notes(land: Tract, units: Any) -> list[dict[str, str]]:
    """What is odd of mixes: not accounted for, more used than made, corrected twice."""
    said = []
    for batch in batches(land.entries).values():
        key = (
            "BATCH_OVER"
            if batch.overused
            else "BATCH_OPEN"
            if batch.open
            else "BATCH_KEPT"
            if batch.kept_in and batch.left_ul > 0
            else ""
        )
        if key:
            left = figure("left_ml", abs(batch.left_ul) / 1000, units)
            text = getattr(words, key).format(left=left, day=batch.day, bottle=batch.kept_in)
            said.append({"words": text, "batch": batch.batch, "kept": batch.kept_in})
    if competing(land.entries):
        said.append({"words": words.COMPETING, "batch": "", "kept": ""})
    return said


def names_of(land: Tract) -> dict[str, str]:
    """Names of patches, products and plants by their ids."""
    return {p.id: p.name for p in (*land.patches, *land.shelf)} | {s.latin: s.common for s in load().species.values()}


def line_of(entry: Entry, gone: bool, units: Any, names: Mapping[str, str]) -> dict[str, Any]:
    """One entry as a line of the page. gone: a later one corrects it. names: as of `names_of`."""
    return {
        "id": entry.id, "at": entry.at.replace("T", " ")[:16], "kind": words.KINDS.get(entry.kind, entry.kind),
        "by": entry.by, "gone": gone, "body": entry_words(entry.body, units, names), "corrects": entry.corrects,
        "fixed": gone or entry.kind in (TAKEN_BACK, ISSUED, ASIDE),
    }  # fmt: skip


def day(request: HttpRequest, tract_id: str, day: str) -> HttpResponse:
    """One day: its records with what is missing, filled in and signed here; a correction afterwards."""
    land = known_of(tract_id).land
    on = _day_or_404(day)
    found = [(r, d) for r, d in judged(land) if r.day == on]
    entries = [(e, gone) for e, gone in standing(land.entries) if day_of(e) == on and e.kind not in (ISSUED, ASIDE)]
    if not found and not entries:
        raise Http404

    def act() -> HttpResponse:
        _fill(request, tract_id, land, on, found)
        return redirect("record-day", tract_id, day)

    done, lines = tried(request, act)
    if done:
        return done
    return _day_page(request, tract_id, land, on, found, entries, lines)


def _day_or_404(day: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(day)
    except ValueError:
        raise Http404 from None


def _day_page(
    request: HttpRequest, tract_id: str, land: Tract, on: datetime.date,
    found: Sequence[tuple[Record, tuple[Duty, ...]]], entries: Sequence[tuple[Entry, bool]], lines: list[str],
) -> HttpResponse:  # fmt: skip
    units, book, today, names = units_of(request), load(), clock.today(land), names_of(land)
    shown = []
    open_fields: dict[str, dict[str, Any]] = {}
    for record, duties in found:
        rows = record_rows(record, duties, land, book, units)
        for row in rows:
            if (row["missing"] or row["in_part"]) and row["field"] not in open_fields:
                open_fields[row["field"]] = {**row, "value": request.POST.get(f"value-{row['field']}", "")}
        keep = keep_until_of(duties)
        shown.append(
            {
                "name": record.values["product_name"],
                "patch": names.get(record.patch, record.patch),
                "rows": rows,
                "missing": len(missing_of(duties)),
                "state": state_words(record, duties, today),
                "anyway": [words.ANYWAY.format(why=why) for why in record.anyway],
                "signed": record.signed,
                "since": bool(record.since),
                "left": left_words(due_of(duties), today),
                "keep": keep.isoformat() if keep else "",
                "also": [d.rule.also for d in duties if d.rule.also],
                "rules": [(d.rule.name, d.certain, d.rule.cited.source, d.rule.cited.grade) for d in duties],
            }
        )  # fmt: skip
    weather = [name for name in ("wind", "temperature", "humidity") if name in open_fields]
    signed = bool(found) and all(r.signed for r, _ in found)
    return page(
        request, "web/record_day.html", tract_id, "after", day=on.isoformat(), records=shown, lines=lines,
        open=[row for field, row in open_fields.items() if field not in weather], weather=weather, signed=signed,
        entries=[line_of(e, gone, units, names) for e, gone in entries], typed=request.POST, sources=words.WEATHER_FROM,
        any_open=any(missing_of(d) for _, d in found), status=422 if lines else 200,
    )  # fmt: skip


def _fill(
    request: HttpRequest, tract_id: str, land: Tract, on: datetime.date,
    found: Sequence[tuple[Record, tuple[Duty, ...]]],
) -> None:  # fmt: skip
    """Fill in what is missing, or sign the day."""
    typed = request.POST
    rows: list[tuple[str, str, dict[str, Any]]] = []
    if "sign" in typed:
        name = clean(typed.get("name", "").strip(), MOST)
        if not name:
            raise Refused("Who signs? Write your full name.")
        missing = sorted({field for _, duties in found for field in missing_of(duties)})
        body = {"day": on.isoformat(), "name": name, "records": as_signed(r for r, _ in found), "missing": missing}
        now = clock.there(land)
        rows.append(("signed", now.replace(tzinfo=None).isoformat(timespec="microseconds"), body))
        what = f"{on} signed by {name}"
    else:
        take = Gathered()

        weather = weather_typed(typed, take)
        at = take(a_clock, typed.get("weather_at", ""), "Time of the weather")
        values = {
            f: clean(typed.get(f"value-{f}", "").strip(), MOST) for f in HELD if typed.get(f"value-{f}", "").strip()
        }
        if take.lines:
            raise Refused(*take.lines)
        if not weather and not values:
            raise Refused("Nothing was typed.")
        if weather:
            rows.append(("weather", f"{on}T{at}" if at else on.isoformat(), weather))
        if values:
            rows.append(("filled in", on.isoformat(), {"day": on.isoformat(), "values": values}))
        what = f"{len(values) + len(weather)} fields of {on}"
    entries = rows_from(typed["command"], land, rows, who())
    ask(request, tract_id, "write down", words={"what": what}, entries=entries)


def export(request: HttpRequest, tract_id: str, what: str) -> HttpResponse:
    """All records as a table, as data, or to print."""
    land = known_of(tract_id).land
    units, book = units_of(request), load()
    chosen = [(r, d) for r, d in judged(land) if request.GET.get("day", "") in ("", r.day.isoformat())]
    if what == "csv":
        rows = [
            {words.FIELDS[row["field"]]: row["text"] for row in record_rows(r, d, land, book, units)} for r, d in chosen
        ]
        content, kind = record_rows_csv(rows, list(words.FIELDS.values())), "text/csv; charset=utf-8"
    elif what == "json":
        content, kind = record_rows_json([(r, [x.rule.id for x in d]) for r, d in chosen]), "application/json"
    elif what == "pdf":
        content, kind = record_pdf(land, chosen, book, units, clock.today(land)), "application/pdf"
    else:
        raise Http404
    answer = HttpResponse(content, content_type=kind)
    way = "inline" if what == "pdf" else "attachment"
    answer["Content-Disposition"] = f'{way}; filename="records.{what}"'
    return answer


@require_POST
def rest(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Say what became of the rest of a mix."""
    land = known_of(tract_id).land
    batch = batches(land.entries).get(request.POST.get("batch", ""))
    what = request.POST.get("what", "")
    if batch is None or what not in (KEPT, "discarded", "spilled", "looked at"):
        raise Refused("Choose what became of it.")
    ml = measured(request.POST.get("ml", ""), "volume", "ml", "How much")
    if what == "looked at" and ml is None:
        raise Refused("How much is left? Write it, for example 12 fl oz.")
    body = {"what": what, "batch": batch.batch} | ({"ml": ml} if ml is not None else {})
    bottle = clean(request.POST.get("bottle", "").strip(), MOST)
    body |= {"bottle": bottle} if bottle and what == KEPT else {}
    now = clock.there(land).replace(tzinfo=None).isoformat(timespec="microseconds")
    rows = rows_from(request.POST["command"], land, [("mix left", now, body)], who())
    ask(request, tract_id, "write down", words={"what": f"the rest of the mix of {batch.day}"}, entries=rows)
    return redirect("after", tract_id)
