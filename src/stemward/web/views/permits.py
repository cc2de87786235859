"""Permits, cost share and notices, with their days."""

import datetime
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from stemward.gate.text import clean
from stemward.kinds import PERMIT_KINDS, PERMIT_STEPS, Tract
from stemward.ledger.permits import begun_early, permits
from stemward.notebook import worked
from stemward.notebook.changes import Refused
from stemward.paper.day_sheets import day_pdf
from stemward.say.en import records as words
from stemward.web import clock
from stemward.web.day_form import MOST, a_day
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.kept import kept_lately
from stemward.web.tried import tried
from stemward.web.views.evening import rows_from
from stemward.web.views.land import ask


def permit_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What was asked for and granted, and a form for the next step."""
    land = known_of(tract_id).land

    def act() -> HttpResponse:
        _write(request, tract_id, land)
        return redirect("permits", tract_id)

    done, lines = tried(request, act)
    if done:
        return done
    names = {p.id: p.name for p in land.patches}
    rows = [
        {
            "name": p.name, "what": p.what, "step": p.step, "number": p.number, "from_whom": p.from_whom,
            "patches": ", ".join(names.get(one, one) for one in p.patches) or "all", "asked": p.asked,
            "granted": p.granted_on, "until": p.until, "holds": p.holds(clock.today(land)),
        }
        for p in permits(land.entries).values()
    ]  # fmt: skip
    return page(
        request, "web/permits.html", tract_id, "day", rows=rows, kinds=PERMIT_KINDS, steps=PERMIT_STEPS, lines=lines,
        typed=request.POST, chosen=request.POST.getlist("patch"), early=early_words(land),
        today=clock.today(land).isoformat(), status=422 if lines else 200,
    )  # fmt: skip


def early_words(land: Tract) -> list[str]:
    """Work that began before cost share was granted."""
    names = {p.id: p.name for p in land.patches}
    return [
        words.BEGUN_EARLY.format(name=permit.name, patch=names.get(patch, patch), day=day)
        for permit, patch, day in begun_early(land.entries)
    ]


def _write(request: HttpRequest, tract_id: str, land: Tract) -> None:
    typed = request.POST
    name = clean(typed.get("name", "").strip(), MOST)
    if not name or typed.get("what") not in PERMIT_KINDS or typed.get("step") not in PERMIT_STEPS:
        raise Refused("What is it, what is it called, and where does it stand? All three are needed.")
    day = a_day(typed.get("day", ""), clock.today(land))
    body: dict[str, Any] = {"what": typed["what"], "step": typed["step"], "name": name}
    body |= {k: clean(typed.get(k, "").strip(), MOST) for k in ("number", "from_whom") if typed.get(k, "").strip()}
    until = typed.get("until", "").strip()
    if until:
        try:
            body["until"] = datetime.date.fromisoformat(until).isoformat()
        except ValueError:
            raise Refused(f"Until: not understood: {clean(until)}. Write a day like {clock.today(land)}.") from None
    chosen = [p.id for p in land.patches if p.id in typed.getlist("patch")]
    body |= {"patches": chosen} if chosen else {}
    rows = rows_from(typed["command"], land, [("permission", day.isoformat(), body)], who())
    ask(request, tract_id, "write down", words={"what": f"{name}: {typed['step']}"}, entries=rows)


def day_sheets(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Emergency sheet, gate sign, notice and calibration cards as one PDF."""
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land), None)
    if plan is None:
        raise Http404
    units = units_of(request)
    paper = "a4" if request.GET.get("paper") == "a4" else "letter"
    content = kept_lately("day", (plan["code"], units, paper), lambda: day_pdf(plan, units, paper))
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="day.pdf"'
    return answer
