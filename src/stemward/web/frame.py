"""What stands on every page: look, places, undo, the next step."""

import uuid
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse

from stemward.kinds import Tract
from stemward.notebook import worked
from stemward.notebook.changes import stacks
from stemward.notebook.models import Change
from stemward.say.en.changes import change_words
from stemward.say.numbers import System
from stemward.web import clock, steps
from stemward.web.door import who

PLACES = (("land", "Land"), ("plan", "Plan"), ("day", "Day"), ("after", "After"), ("shelf", "Shelf"))
SIZES = {"": "100 %", "larger": "125 %", "largest": "150 %"}
LIGHTS = {"": "Indoors", "sun": "Sun", "dusk": "Dusk"}
UNITS: tuple[System, System] = ("us", "metric")
COOKIES = {"size": "stemward_size", "light": "stemward_light", "units": "stemward_units"}


def units_of(request: HttpRequest) -> System:
    """The units this person reads."""
    return "metric" if request.COOKIES.get(COOKIES["units"]) == "metric" else "us"


def command_id() -> str:
    """A name for a change that is yet to be asked for; asking twice under one name changes once."""
    return str(uuid.uuid4())


def frame(request: HttpRequest) -> dict[str, Any]:
    """Context of every template: classes of the page, and for a tract its places, undo and next step."""
    size, light = (request.COOKIES.get(COOKIES[name], "") for name in ("size", "light"))
    look = " ".join(word for word in (size if size in SIZES else "", light if light in LIGHTS else "") if word)
    found: dict[str, Any] = {"look": look, "units": units_of(request), "command": command_id()}
    tract_id = getattr(request, "tract_id", None)
    if tract_id:
        found |= _of_tract(request, tract_id)
    return {"frame": found}


def _of_tract(request: HttpRequest, tract_id: str) -> dict[str, Any]:
    done, undone = stacks(tract_id, who())
    last = Change.objects.filter(tract_id=tract_id).order_by("-number").values_list("at", flat=True).first()
    return {
        "places": [{"name": name, "words": words, "address": reverse(name, args=[tract_id])} for name, words in PLACES],
        "undo": change_words(done[-1].verb, done[-1].words) if done else "",
        "redo": change_words(undone[-1].verb, undone[-1].words) if undone else "",
        "saved": clock.time_of_day(last) if last else "",
        "step": steps.step_of(tract_id, units_of(request), 0.02),
    }


def land_of(tract_id: str) -> Tract:
    """The values of a tract. Raises Http404 where there is none."""
    return known_of(tract_id).land


def known_of(tract_id: str) -> worked.Known:
    """A tract with its parts. Raises Http404 where there is none."""
    from django.http import Http404

    from stemward.notebook.models import Tract as Row

    try:
        return worked.known(tract_id)
    except Row.DoesNotExist:
        raise Http404 from None


def page(
    request: HttpRequest, template: str, tract_id: str | None = None, place: str = "", status: int = 200, **context: Any
) -> HttpResponse:
    """A page; with a tract its name, places and next step stand above."""
    if tract_id:
        context |= {"tract_id": tract_id, "land": land_of(tract_id), "place": place}
        # Only now: the page that says it is not there has the frame of no tract.
        request.tract_id = tract_id  # type: ignore[attr-defined]
    return render(request, template, context, status=status)
