"""Who walks where: people, hours, what nobody crosses; the walks on the plan, for paper and for phones."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_GET

from stemward.handbook import load
from stemward.kinds import Tract
from stemward.ledger.stems import ONE_OF, last_places, marks
from stemward.notebook import worked
from stemward.paper.walk_sheets import Sheets, lane_routes, plan_with, route_of, stopped, walks_pdf
from stemward.plan.open_hours import doings, dry_h_of
from stemward.plan.walk_works import Ask, Work, works_of
from stemward.plan.walk_worth import before_rain
from stemward.plan.walks import BARRIERS, MOST_PEOPLE
from stemward.reckon.bearing import EIGHT, POINTS, point_deg
from stemward.say import Speaker
from stemward.say import walks as say
from stemward.say.en import walks as words
from stemward.web import clock, walked
from stemward.web.frame import known_of, page, units_of
from stemward.web.hours_taken import work_title
from stemward.web.kept import kept_lately
from stemward.web.views.ahead import hands_of
from stemward.web.views.plan import WAIT_S

MOST_HOURS = 14.0


def walks(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The walks of one work or of all; a form sent takes them for paper and phone."""
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land), WAIT_S)
    if plan is None:
        return page(request, "web/working.html", tract_id, "day", no_step=True)
    asked = request.POST if request.method == "POST" else request.GET
    form, lines = read(asked, land)
    ask, speaker = _ask(form, land, clock.today(land).isoformat()), Speaker(plan, units_of(request))
    plan_key = (plan["code"], plan["as_of"], ask.done)
    works = kept_lately("walk works", plan_key, lambda: works_of(plan, land, load(), ask))
    which = form["work"] if form["work"] in {work.id for work in works} else works[0].id if works else ""
    found = walked.walks_of(plan, land, ask, which, WAIT_S if request.method == "GET" else None) if works else []
    if found is None:
        return page(request, "web/working.html", tract_id, "day", no_step=True, doing=words.WORKING)
    names = names_of(land, ask)
    if request.method == "POST" and not lines:
        whole = walked.walks_of(plan, land, ask, "", None) or []
        walked.take(tract_id, plan, names, whole)
        return redirect(f"{reverse('walks', args=[tract_id])}?{_again(form)}")
    worth = walked.worth(plan, land, ask, 0.0) if form["worth"] and ask.hours else []
    if worth is None:
        return page(request, "web/working.html", tract_id, "day", no_step=True, doing=words.WORKING)
    return page(
        request, "web/walks.html", tract_id, "day", lines=lines, form=form, kinds=_kinds(ask), most=MOST_PEOPLE,
        uphills=[{"point": p, "words": name, "on": p == form["uphill"]} for p, name in zip(POINTS, EIGHT, strict=True)],
        works=[{"id": w.id, "title": say.work_title(speaker, w), "on": w.id == which} for w in works],
        found=[_shown(plan, speaker, work, walk, names, ask) for work, walk in found],
        reckoned=say.reckoned_words(speaker, load().defaults["walk_m_s"].number), again=_again(form),
        intro=words.INTRO, worth=say.worth_rows(speaker, worth), worth_title=_worth_title(ask) if worth else "",
        rain=_rain(land, plan, form["rain"], ask.walks), rain_title=words.RAIN_TITLE.format(hours=form["rain"]),
        taken=words.KEPT if walked.taken(tract_id) else "",
        old=words.CHANGED if walked.is_old(tract_id, plan["code"]) else "",
        marked=bool(last_places(land.entries, land.stems, clock.today(land).isoformat())),
        place_known=land.mixing_place is not None, status=422 if lines else 200,
    )  # fmt: skip


@require_GET
def sheets(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The walks on paper, a sheet for each person and work. Raises Http404 for a plan in which nothing is done."""
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land))
    form, _ = read(request.GET, land)
    ask = _ask(form, land, clock.today(land).isoformat())
    found = walked.walks_of(plan, land, ask, form["work"], None) if plan else None
    if not found or plan is None:
        raise Http404
    told = [say.open_lines(work, walk, ask.hours, ask.barriers) for work, walk in found]
    pdf = walks_pdf(Sheets(plan, found, told, names_of(land, ask), ask), Speaker(plan, units_of(request)))
    return HttpResponse(pdf, content_type="application/pdf")


def read(asked: QueryDict, land: Tract) -> tuple[dict[str, Any], list[str]]:
    """What the form says, and what of it is not understood (the usual stands in its place)."""
    lines: list[str] = []
    people = _number(asked.get("people", ""), 1, MOST_PEOPLE)
    if asked.get("people", "") and (people is None or people != int(people)):
        lines.append(words.ENTER["people"].format(most=MOST_PEOPLE))
        people = None
    hours = _number(asked.get("hours", ""), 0.25, MOST_HOURS)
    if asked.get("hours", "").strip() and hours is None:
        lines.append(words.ENTER["hours"])
    rain = _number(asked.get("rain", ""), 0.0, 72.0)
    if asked.get("rain", "").strip() and rain is None:
        lines.append(words.ENTER["rain"])
    sent = "asked" in asked
    barriers = tuple(kind for kind in BARRIERS if kind in asked.getlist("not")) if sent else Ask().barriers
    return {
        "people": int(people or min(hands_of(land), MOST_PEOPLE)), "hours": "" if hours is None else f"{hours:g}",
        "rain": "" if rain is None else f"{rain:g}", "barriers": barriers, "work": asked.get("work", ""),
        "pairs": "pairs" in asked, "on": "on" in asked, "worth": "worth" in asked,
        "uphill": asked.get("uphill", "") if asked.get("uphill", "") in POINTS else "",
    }, lines  # fmt: skip


def _number(typed: str, low: float, high: float) -> float | None:
    try:
        value = float(typed.strip().replace(",", "."))
    except ValueError:
        return None
    return value if low <= value <= high else None


def _ask(form: dict[str, Any], land: Tract, today: str) -> Ask:
    stands = last_places(land.entries, land.stems, today) if form["on"] else {}
    hours = float(form["hours"]) if form["hours"] else None
    done = [stem for stem, mark in marks(land.entries).items() if mark.at[:10] == today and mark.what in ONE_OF]
    return Ask(
        form["people"], form["pairs"], hours, form["barriers"], point_deg(form["uphill"]),
        tuple(stands.values())[: form["people"]], frozenset(done if form["on"] else ()),
    )  # fmt: skip


def names_of(land: Tract, ask: Ask) -> list[str]:
    """Those who walk: people who treat plants, in the order of the list."""
    return say.people_names([p.role for p in land.people if "apply" in p.does] or [p.role for p in land.people], ask)


def _again(form: dict[str, Any]) -> str:
    """The same question as an address."""
    asked = QueryDict(mutable=True)
    asked.update({name: str(form[name]) for name in ("people", "hours", "rain", "work", "uphill") if form[name] != ""})
    asked["asked"] = "1"
    asked.setlist("not", list(form["barriers"]))
    for name in ("pairs", "on", "worth"):
        if form[name]:
            asked[name] = "1"
    return asked.urlencode()


def _kinds(ask: Ask) -> list[dict[str, Any]]:
    return [{"kind": kind, "words": words.KINDS[kind], "on": kind in ask.barriers} for kind in BARRIERS]


def _worth_title(ask: Ask) -> str:
    hours = words.HOUR if ask.hours == 1 else words.MORE_HOURS.format(hours=f"{ask.hours:g}")
    people = words.ONE_PERSON if ask.people == 1 else words.PEOPLE.format(count=ask.people)
    return words.WORTH_TITLE.format(hours=hours, people=people)


def _shown(
    plan: dict[str, Any], speaker: Speaker, work: Work, walk: dict[str, Any], names: list[str], ask: Ask
) -> dict[str, Any]:
    routes = [route_of(walk, n) for n in range(len(names))]
    routes += lane_routes(walk["lanes"])
    drawn = plan_with(plan, speaker, routes, walk["start"], 120.0)
    return {
        "title": say.work_title(speaker, work),
        "told": [*stopped(work), *say.open_lines(work, walk, ask.hours, ask.barriers)],
        "people": say.said_walks(speaker, work, walk, names, ask),
        "map": mark_safe(drawn.svg),
        "alt": words.ALT_ALL.format(people=", ".join(names)),
        "lanes": say.lane_parts(speaker, work, walk, names),
        "reached": not walk["left"] and bool(ask.hours) and bool(work.rows),
        "head": [h.format(dose=words.DOSE) for h in words.SHEET_HEAD if h != "Done"],
    }


def _rain(land: Tract, plan: dict[str, Any], rain: str, walks_count: int) -> list[str]:
    """What to do first when rain comes in so many hours."""
    if not rain:
        return []
    book, names, needs = load(), [], []
    for item, doing in doings(land, plan["treatments"]):
        way = next((w for w in item["ways"] if w["how"] == item["how"] and w["product"] == item["product"]), None)
        names.append(work_title(item))
        needs.append((dry_h_of(doing, book), (way["hours_high"] if way else 0.0) / walks_count))
    first, not_now = before_rain(needs, float(rain))
    return say.rain_lines(names, needs, first, not_now, float(rain))
