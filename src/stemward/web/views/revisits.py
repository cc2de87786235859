"""Going back: what is due, quick entry of what was seen, the sheet to take along."""

import datetime
import re
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from stemward.gate.text import clean
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.ledger.revisits import Work, works
from stemward.notebook.changes import Refused
from stemward.paper.revisit_sheet import revisit_sheet, stem_sheet
from stemward.say.revisits import work_words
from stemward.web import clock
from stemward.web.by_stem import seen_by_stem, stems_of
from stemward.web.day_form import MOST, a_day, measured, people_of
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.photos import keep_photo
from stemward.web.tried import Gathered, tried
from stemward.web.views.evening import rows_from
from stemward.web.views.land import ask
from stemward.web.views.records import names_of

COUNTS = (
    ("dead", "Dead", "nothing green, sprouts neither at the stump nor around it"),
    ("resprouting", "Back", "sprouts, or green below the bark"),
    ("gone", "Stump gone", "it was found that nothing is there any more"),
    ("not_found", "Not found", "nobody knows; it counts for neither"),
    ("untreated", "Missed", "alive, and never treated: no dye, no cut"),
    ("seedlings", "Seedlings", "new plants from seed, within a step of the old ones"),
    ("new_stems", "New stems", "plants that were not counted before"),
)
"""Fields of a count: name, what stands above it, and what is meant."""


def revisit(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What was treated with what is due, and for the one chosen a form for what was seen."""
    land, book = known_of(tract_id).land, load()
    today, names = clock.today(land), names_of(land)
    found = works(land, book)
    chosen = next((w for w in found if w.key == request.GET.get("of")), None)

    def act() -> HttpResponse:
        if chosen is None:
            raise Refused("Which treatment was looked at? Choose it from the list.")
        body, day = _typed(request.POST, chosen, today, land)
        if upload := request.FILES.get("picture"):
            body["photo"] = keep_photo(tract_id, upload.read(), upload.name or "", clock.now())
        entries = rows_from(request.POST["command"], land, [("seen again", day.isoformat(), body)], who())
        what = f"{body['dead']} dead, {body['resprouting']} back of {chosen.day}"
        ask(request, tract_id, "write down", words={"what": what}, entries=entries)
        return redirect(reverse("revisit", args=[tract_id]) + "#seen")

    done, lines = tried(request, act)
    if done:
        return done
    rows = [work_words(work, names, today, book) for work in reversed(found)]
    rows.sort(key=lambda row: not row["late"])
    one = work_words(chosen, names, today, book) if chosen else None
    fields = [{"name": n, "label": label, "hint": hint, "value": request.POST.get(n, "")} for n, label, hint in COUNTS]
    by_stem = chosen is not None and bool(chosen.rows) and "stems" in request.GET
    stems = stems_of(chosen, land, units_of(request), request.POST) if chosen and by_stem else []
    return page(
        request, "web/revisits.html", tract_id, "after", rows=rows, one=one, fields=fields, lines=lines,
        typed=request.POST, today=today.isoformat(), stems=stems, key=chosen.key if chosen else "",
        can_by_stem=bool(chosen and chosen.rows), photos=_photos(land, tract_id, chosen), status=422 if lines else 200,
    )  # fmt: skip


def _typed(typed: QueryDict, work: Work, today: datetime.date, land: Tract) -> tuple[dict[str, Any], datetime.date]:
    """The entry's body and day. Raises Refused with everything that is not understood."""
    take = Gathered()

    day = take(a_day, typed.get("day", ""), today)
    counts = {name: take(_count, typed.get(name, ""), label) for name, label, _ in COUNTS}
    sprouts = take(_count, typed.get("sprouts", ""), "Sprouts on one")
    tallest = take(measured, typed.get("tallest", ""), "length", "m", "Tallest sprout", "ft")
    hours = take(measured, typed.get("person_h", ""), "time", "h", "Hours of all together", "h")
    by_stem: dict[str, Any] = (take(seen_by_stem, work, land, typed) or {}) if "by-stem" in typed else {}
    if take.lines:
        raise Refused(*take.lines)
    counts |= {name: by_stem[name] for name in counts if name in by_stem}
    if counts["dead"] is None and counts["resprouting"] is None:
        raise Refused("How many are dead, and how many came back? Write at least one of the two; 0 is an answer.")
    if day < work.day:
        raise Refused(f"Day: {day} lies before the treatment of {work.day}.")
    held = sum(counts[n] or 0 for n in ("dead", "resprouting", "gone", "not_found"))
    if held > work.stems and "more" not in typed:
        raise Refused(f"That is {held} plants, and {work.stems} were treated. Count again, or tick that it is so.")
    body: dict[str, Any] = {"of": list(work.entries), "patch": work.patch}
    body |= {"dead": counts["dead"] or 0, "resprouting": counts["resprouting"] or 0}
    body |= {n: v for n, v in counts.items() if v is not None and n not in body}
    body |= {"sprouts": sprouts} if sprouts is not None else {}
    body |= {"tallest_m": round(tallest, 4)} if tallest is not None else {}
    body |= {name: value for name, value in by_stem.items() if name not in body}
    body |= {"person_h": round(hours, 4)} if hours is not None else {}
    people = people_of(clean(typed.get("people", "").strip(), MOST))
    body |= {"people": list(people)} if people else {}
    note = clean(typed.get("note", "").strip(), MOST)
    body |= {"note": note} if note else {}
    return body, day


def _photos(land: Tract, tract_id: str, work: Work | None) -> list[dict[str, str]]:
    """Pictures of the looks at a work that are kept here."""
    ids = {seen.entry for seen in work.seen} if work else set()
    own = [(entry, str(entry.body.get("photo", ""))) for entry in land.entries if entry.id in ids]
    return [
        {"address": reverse("phone-photo-file", args=[tract_id, digest]), "day": entry.at[:10]}
        for entry, digest in own
        if re.fullmatch("[0-9a-f]{64}", digest)
    ]


def _count(text: str, label: str) -> int | None:
    """A whole number as typed, None where nothing was. Raises Refused."""
    if not text.strip():
        return None
    if not text.strip().isdigit() or len(text.strip()) > 6:
        raise Refused(f"{label}: not understood: {clean(text.strip())}. Write a whole number.")
    return int(text.strip())


def sheet(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The sheet to take along."""
    land = known_of(tract_id).land
    paper = "a4" if request.GET.get("paper") == "a4" else "letter"
    of = request.GET.get("of", "")
    if of:
        work = next((one for one in works(land, load()) if one.key == of and one.rows), None)
        if work is None:
            raise Http404
        rows = [(one["id"], one["size"]) for one in stems_of(work, land, units_of(request), {})]
        pdf = stem_sheet(land, load(), clock.today(land), work, rows, paper)
    else:
        pdf = revisit_sheet(land, load(), clock.today(land), units_of(request), paper)
    answer = HttpResponse(pdf, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="going-back.pdf"'
    return answer
