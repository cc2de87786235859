"""Quick sums, without a tract."""

import re
from collections.abc import Callable, Mapping
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from django.http import Http404, HttpRequest, HttpResponse, QueryDict

from stemward.gate.weather import NotWeather, read_weather
from stemward.handbook import load
from stemward.kinds import HERBICIDE_METHODS
from stemward.notebook.changes import Refused
from stemward.plan.open_hours import Doing, judge
from stemward.say import hours as say_hours
from stemward.say.numbers import System
from stemward.say.quick import NotUnderstood, dose_lines, mix_lines, near_lines, plant_lines
from stemward.web import clock, forecasts
from stemward.web.came_back import CAUSES, causes_for
from stemward.web.frame import page, units_of
from stemward.web.views.ahead import typed_place

Q = QueryDict | Mapping[str, Any]
SUMS = {
    "stems": ("How much for these stems", "Sizes across the stem, and the way of treating."),
    "bottle": ("How much in this bottle", "Product and carrier for an amount of mix, in marks of common measures."),
    "near": ("What may reach the tree I keep", "Four routes: soil, shared roots, drift or vapor, splash."),
    "plant": ("What works on this plant", "Three ways, best months, what fails, and who says so."),
    "today": ("Can I do it today", "The hours of today and tomorrow for a place and a way of treating."),
    "back": ("It came back: why", "What most often goes wrong, by what you saw."),
}


BEHIND = re.compile(r"[a-z_]+\.[a-z0-9_.]+ = ")
"""A line that names a number of the handbook and its source: behind the answer, not the answer."""


def sums(request: HttpRequest) -> HttpResponse:
    """The list of sums."""
    return page(request, "web/sums.html", sums=[(key, *value) for key, value in SUMS.items()])


def one(request: HttpRequest, which: str) -> HttpResponse:
    """One sum: what was asked stands in the address, so that it can be kept and sent."""
    if which not in SUMS:
        raise Http404
    book = load()
    lines: list[str] = []
    wrong: list[str] = []
    causes: list[Any] = []
    if which == "back":
        causes = causes_for(request.GET.getlist("seen"))
    elif request.GET:
        try:
            lines = WORK[which](request.GET, units_of(request))
        except NotUnderstood as error:
            wrong = [str(error).replace("--count ", "").replace("--tool ", "")]
    return page(
        request, "web/sum.html", which=which, title=SUMS[which][0], asked=request.GET,
        answer=[line for line in lines if not BEHIND.match(line)],
        behind=[line for line in lines if BEHIND.match(line)],
        lines=wrong, methods=HERBICIDE_METHODS, tools=list(book.tools),
        ingredients=sorted({name for name, _ in book.ingredients}),
        plants_known=sorted({s.common for s in book.species.values()}), causes=causes, seen=CAUSES, forms=FORMS,
        zones=ZONES,
        chosen=request.GET.getlist("seen"), status=422 if wrong else 200,
    )  # fmt: skip


def _stems(q: Q, units: System) -> list[str]:
    sizes = [one.strip() for one in str(q.get("sizes", "")).replace(";", ",").split(",") if one.strip()]
    count = str(q.get("count", "") or "1")
    if not count.isdigit() or len(count) > 7:
        raise NotUnderstood(f"Not understood: {count}. Write a whole number of stems, for example 12.")
    return dose_lines(str(q.get("how", "cut stump")), sizes, int(count), str(q.get("ring", "")), str(q.get("tool", "")),
                      q.get("oil") == "yes", str(q.get("per_squirt", "")), units=units)  # fmt: skip


def _bottle(q: Q, units: System) -> list[str]:
    share, ratio, gallon = (str(q.get(key, "")).strip() for key in ("concentration", "ratio", "per_gallon"))
    if not (share or ratio or gallon):
        raise NotUnderstood("How strong? Give a percent, parts like 1:3, or ounces for each gallon.")
    return mix_lines(str(q.get("amount", "")), share, "" if share else ratio, "" if share or ratio else gallon,
                     str(q.get("strength", "")), units=units)[0]  # fmt: skip


def _near(q: Q, units: System) -> list[str]:
    return near_lines(str(q.get("ingredient", "")), str(q.get("how", "cut stump")), str(q.get("distance", "")),
                      str(q.get("form", "") or "salt"), str(q.get("kind", "") or "other"), q.get("clone") == "yes",
                      str(q.get("trunk", "")), str(q.get("crown", "")), units)  # fmt: skip


def _plant(q: Q, units: System) -> list[str]:
    del units
    return plant_lines(str(q.get("plant", "")), str(q.get("state", "")).strip())


def _today(q: Q, units: System) -> list[str]:
    """Spans of today and tomorrow out of the service's forecast for a place; nothing is kept."""
    try:
        place = typed_place(str(q.get("place", "")))
        raw, _ = forecasts.got(place)
    except Refused as refused:
        raise NotUnderstood(refused.lines[0]) from None
    zone_name = str(q.get("zone", "")) or "America/New_York"
    try:
        zone = ZoneInfo(zone_name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise NotUnderstood(f"Not understood: {zone_name}. Choose a time zone from the list.") from None
    try:
        hours, doubts = read_weather(raw, "forecast", forecasts.site_of(place, zone_name))
    except NotWeather as wrong:
        raise NotUnderstood(say_hours.words.NOT_WEATHER[wrong.message]) from None
    how, carrier = str(q.get("how", "cut stump")), "oil" if q.get("oil") == "yes" else "water"
    judged = judge(Doing(how, carrier, "ester" if q.get("form") == "ester" else ""), hours, load())
    today = clock.now().astimezone(zone).date()
    spans = [
        one.text for one in say_hours.span_lines(judged, zone, units, clock.now())
        if (say_hours.local(hours.at[one.first], zone).date() - today).days in (0, 1)
    ]  # fmt: skip
    odd = [*say_hours.age_lines(hours, clock.now()), *say_hours.doubt_lines(doubts), say_hours.unread_line(judged)]
    return [say_hours.next_open(judged, zone, units, clock.now()), *spans, *filter(None, odd)]


ZONES = ("America/New_York", "America/Chicago", "America/Denver", "America/Phoenix", "America/Los_Angeles",
         "America/Anchorage", "Pacific/Honolulu")  # fmt: skip
FORMS = ("salt", "amine", "choline", "ester", "acid", "dry")
WORK: dict[str, Callable[[Q, System], list[str]]] = {
    "stems": _stems, "bottle": _bottle, "near": _near, "plant": _plant, "today": _today,
}  # fmt: skip
