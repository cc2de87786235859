"""The hours ahead: for each treatment which are open, in sentences first, then as a strip."""

import datetime
from collections.abc import Sequence
from functools import partial
from typing import Any

import numpy as np
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_GET

from stemward.drawings.hours_strip import hours_strip
from stemward.drawings.weeks_strip import weeks_strip
from stemward.gate.out import Meeting, calendar
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.kinds.hours import Hours, Site
from stemward.notebook import worked
from stemward.notebook.changes import Refused
from stemward.paper.hours_sheet import WorkHours, hours_sheet
from stemward.plan.days import Work, work_days
from stemward.plan.open_hours import Judged, doings, judge, own_odds
from stemward.plan.weeks import flows_of, weeks_of
from stemward.reckon.dry import NEWARK_ODDS
from stemward.say import Speaker
from stemward.say import hours as say
from stemward.say import weeks as say_weeks
from stemward.say.en.hours import MONTHS, NOT_GOT, OVER, RAIN_TITLE, RAINS
from stemward.say.numbers import System
from stemward.web import clock, forecasts
from stemward.web.frame import known_of, page, units_of
from stemward.web.hours_taken import feed_word, take, taken, taken_lines, tract_of_feed, work_title
from stemward.web.kept import kept_lately
from stemward.web.tried import tried

MOST_DAYS = 7
MARKS = ((6, "6 am"), (12, "noon"), (18, "6 pm"))


def ahead(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Spans by treatment out of the kept forecast; a newer one is got from the service or a file."""
    land = known_of(tract_id).land

    def act() -> HttpResponse:
        if "place" in request.POST:
            forecasts.put_place(tract_id, typed_place(request.POST["place"]))
        place = forecasts.place_of(land, tract_id)
        if place is None:
            raise Refused(NO_PLACE)
        site = forecasts.site_of(place, land.time_zone)
        if "new-feed" in request.POST:
            feed_word(tract_id, fresh=True)
            return redirect("hours", tract_id)
        if "take" in request.POST:
            return _take(tract_id, land, site)
        upload, years = request.FILES.get("forecast"), request.FILES.get("history")
        if years is not None:
            forecasts.keep(tract_id, years.read(), years.name or "history", site, "history")
        elif upload is not None:
            forecasts.keep(tract_id, upload.read(), upload.name or "forecast", site)
        elif "get" in request.POST:
            raw, at = forecasts.got(place)
            forecasts.keep(tract_id, raw, "National Weather Service", site, at=at)
        elif "place" not in request.POST:
            raise Refused(NO_FILE)
        return redirect("hours", tract_id)

    answer, lines = tried(request, act)
    if answer is not None:
        return answer
    trouble = NOT_GOT if "get" in request.POST else ""
    place = forecasts.place_of(land, tract_id)
    have = forecasts.kept(tract_id, forecasts.site_of(place, land.time_zone)) if place else None
    plan = worked.plan_of(tract_id, clock.today(land))
    past = forecasts.kept(tract_id, forecasts.site_of(place, land.time_zone), "history") if place else None
    odds = own_odds(past.hours if past else None)
    now = have if have and not say.is_over(have.hours, clock.now()) else None
    works = works_of(land, plan, now.hours, units_of(request), odds) if now and plan else []
    key = (tract_id, plan["code"] if plan else "", past.name if past else "", len(past.hours.at) if past else 0)
    weeks = kept_lately("weeks", key, lambda: weeks_of_works(land, plan, past.hours)) if past and plan else []
    return page(
        request, "web/hours.html", tract_id, "day", lines=lines, trouble=trouble, spot=place,
        has_origin=land.origin is not None,
        name=have.name if have else "", age=say.age_lines(have.hours, clock.now()) if have else [],
        odd=say.doubt_lines(have.doubts) if have else [], works=works, have=have is not None, weeks=weeks,
        over=OVER if have and not now else "",
        taken=taken_lines(taken(tract_id), clock.zone(land)),
        feed=request.build_absolute_uri(reverse("calendar-feed", args=[feed_word(tract_id)])) if have else "",
        days=day_words_of(land, plan, now.hours) if now and plan else [],
        past=past.name if past else "", past_odd=say.doubt_lines(past.doubts) if past else [],
        status=422 if lines else 200,
    )  # fmt: skip


NO_PLACE = "Where is the land? Type latitude and longitude in degrees, such as 42.44, -76.50."
NO_FILE = "Choose a file first."


def typed_place(typed: str) -> tuple[float, float]:
    """Latitude and longitude as typed. Raises Refused."""
    first, _, second = typed.partition(",")
    try:
        place = float(first), float(second)
    except ValueError:
        raise Refused(NO_PLACE) from None
    if not (-90 <= place[0] <= 90 and -180 <= place[1] <= 180):
        raise Refused(NO_PLACE)
    return place


def works_of(
    land: Tract, plan: dict[str, Any], hours: Hours, units: System, odds: float = NEWARK_ODDS[0]
) -> list[dict[str, Any]]:
    """Treatments with their next open span, spans, strip and what nobody has read; those that share all of it are
    one, with a way a line. odds: see `own_odds`."""
    book, speaker, zone = load(), Speaker(plan, units), clock.zone(land)
    found: dict[Any, dict[str, Any]] = {}
    for item, doing in doings(land, plan["treatments"], odds):
        judged = judge(doing, hours, book)
        spans = [
            {"state": one.state, "text": one.text,
             "dry": say.dry_line(judged, doing, one.first, zone) if one.state == "open" else ""}
            for one in say.span_lines(judged, zone, units, clock.now())
        ]  # fmt: skip
        name, unread = f"{item['common']}, {item['patch_name']}", say.unread_line(judged)
        key = (tuple((one["text"], one["dry"]) for one in spans), unread)
        if key in found:
            found[key]["titles"].append(name)
            found[key]["ways"].append(f"{name}: {speaker.way(item)}")
            continue
        drawn = strip(judged, zone)
        found[key] = {
            "titles": [name], "ways": [f"{name}: {speaker.way(item)}"], "spans": spans, "unread": unread,
            "next": say.next_open(judged, zone, units, clock.now()), "drawn": drawn, "strip": mark_safe(drawn.svg),
        }  # fmt: skip
    for one in found.values():
        one["title"] = "; ".join(dict.fromkeys(one["titles"]))
        if len(one["ways"]) == 1:
            one["ways"] = [one["ways"][0].partition(": ")[2]]
    return list(found.values())


def _take(tract_id: str, land: Tract, site: Site) -> HttpResponse:
    """Remember the proposed work days. Raises Refused without a forecast or a plan."""
    have, plan = forecasts.kept(tract_id, site), worked.plan_of(tract_id, clock.today(land))
    if have is None or plan is None:
        raise Refused(NO_FILE)
    works = works_to_do(land, plan, have.hours)
    take(tract_id, work_days(works, clock.zone(land), clock.now()), works)
    return redirect("hours", tract_id)


def hands_of(land: Tract) -> int:
    """How many people there are to treat plants: those who do, else all, at least one."""
    return max(1, sum("apply" in person.does for person in land.people) or len(land.people))


def works_to_do(land: Tract, plan: dict[str, Any], hours: Hours) -> list[Work]:
    """The plan's treatments with the hours each takes with all hands there are."""
    book, hands = load(), hands_of(land)
    found = []
    for item, doing in doings(land, plan["treatments"]):
        way = next((w for w in item["ways"] if (w["how"], w["product"]) == (item["how"], item["product"])), None)
        need = (way["hours_low"] / hands, way["hours_high"] / hands) if way else (0.0, 0.0)
        found.append(Work(work_title(item), judge(doing, hours, book), need))
    return found


def day_words_of(land: Tract, plan: dict[str, Any], hours: Hours) -> list[str]:
    """Work days in sentences."""
    works, zone = works_to_do(land, plan, hours), clock.zone(land)
    return say.day_lines(work_days(works, zone, clock.now()), works, hands_of(land), zone)


@require_GET
def feed(_request: HttpRequest, word: str) -> HttpResponse:
    """The work days that were taken, for a calendar program that reads an address; nothing else of the land."""
    tract_id = tract_of_feed(word)
    if tract_id is None:
        raise Http404
    meetings = [
        Meeting(f"{tract_id}-{row['first']}@stemward", say.local(np.datetime64(row["first"], "s"), datetime.UTC),
                say.local(np.datetime64(row["last"], "s"), datetime.UTC), row["title"], RAINS)
        for row in taken(tract_id)
    ]  # fmt: skip
    return HttpResponse(calendar([], clock.now(), meetings), content_type="text/calendar; charset=utf-8")


@require_GET
def sheet(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The hours on paper. Raises Http404 without a forecast that still goes on."""
    land = known_of(tract_id).land
    place = forecasts.place_of(land, tract_id)
    have = forecasts.kept(tract_id, forecasts.site_of(place, land.time_zone)) if place else None
    plan = worked.plan_of(tract_id, clock.today(land))
    if have is None or plan is None or say.is_over(have.hours, clock.now()):
        raise Http404
    works = [
        WorkHours(
            one["title"], one["ways"], one["next"], [span["text"] for span in one["spans"]], one["unread"], one["drawn"]
        )
        for one in works_of(land, plan, have.hours, units_of(request))
    ]
    told = [*say.age_lines(have.hours, clock.now()), *say.doubt_lines(have.doubts)]
    pdf = hours_sheet(land.name, works, told, day_words_of(land, plan, have.hours), clock.today(land))
    return HttpResponse(pdf, content_type="application/pdf")


@require_GET
def calendar_file(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Work days and the ends of the times that have to stay dry, for a calendar. Raises Http404 without a forecast."""
    land = known_of(tract_id).land
    place = forecasts.place_of(land, tract_id)
    have = forecasts.kept(tract_id, forecasts.site_of(place, land.time_zone)) if place else None
    plan = worked.plan_of(tract_id, clock.today(land))
    if have is None or plan is None:
        raise Http404
    works = works_to_do(land, plan, have.hours)
    meetings = []
    for slot in work_days(works, clock.zone(land), clock.now()).slots:
        title, uid = works[slot.work].title, f"{tract_id}-{slot.start:%Y%m%dT%H}-{slot.work}@stemward"
        meetings.append(Meeting(uid, slot.start, slot.end, title, RAINS))
        meetings.append(Meeting(f"rain-{uid}", slot.rain_from, slot.rain_from, RAIN_TITLE.format(work=title)))
    answer = HttpResponse(calendar([], clock.now(), meetings), content_type="text/calendar; charset=utf-8")
    answer["Content-Disposition"] = 'attachment; filename="work-days.ics"'
    return answer


def weeks_of_works(land: Tract, plan: dict[str, Any], hours: Hours) -> list[dict[str, Any]]:
    """Each treatment with the weeks in which it can be done, out of years of hours."""
    book, zone = load(), clock.zone(land)
    flow, found = say_weeks.flow_line(flows_of(hours, zone)), []
    for item, doing in doings(land, plan["treatments"]):
        weeks, seasons = weeks_of(judge(doing, hours, book), zone), say_weeks.seasons_of(book, doing)
        drawn = weeks_strip(
            [(week.first, week.mean, week.low, week.high) for week in weeks], MONTHS,
            partial(say_weeks.is_best, seasons=seasons), partial(say_weeks.is_poor, seasons=seasons),
        )  # fmt: skip
        lines = say_weeks.week_lines(weeks, hours, seasons)
        found.append(
            {"title": f"{item['common']}, {item['patch_name']}", "strip": mark_safe(drawn.svg),
             "caption": " ".join(say_weeks.strip_words(seasons)),
             "lines": [say_weeks.season_line(book, doing, item["common"]), flow, *lines[:2]], "months": lines[2:]}
        )  # fmt: skip
    return found


def strip(judged: Judged, zone: datetime.tzinfo | None) -> Any:
    """The hours as boxes, a row a local day."""
    days: dict[datetime.date, list[str]] = {}
    for at, state in zip(judged.hours.at, judged.states(), strict=True):
        when = say.local(at, zone)
        days.setdefault(when.date(), [""] * 24)[when.hour] = state
    rows: list[tuple[str, Sequence[str]]] = [(say.day_words(day), states) for day, states in days.items()]
    return hours_strip(rows[:MOST_DAYS], MARKS)


def short(tract_id: str, land: Tract, plan: dict[str, Any], units: System) -> list[dict[str, str]]:
    """For the day's page: of each treatment the next open span; empty without a forecast that still goes on."""
    place = forecasts.place_of(land, tract_id)
    have = forecasts.kept(tract_id, forecasts.site_of(place, land.time_zone)) if place else None
    if have is None or say.is_over(have.hours, clock.now()):
        return []
    zone, book = clock.zone(land), load()
    return [
        {"title": f"{item['common']}, {item['patch_name']}",
         "next": say.next_open(judge(doing, have.hours, book), zone, units, clock.now())}
        for item, doing in doings(land, plan["treatments"])
    ]  # fmt: skip
