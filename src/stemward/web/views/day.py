"""Day: what to take, and when of the year; what is set aside."""

import datetime
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from stemward.gate.text import clean
from stemward.notebook.changes import Refused
from stemward.notebook.entries import ASIDE, entry_row
from stemward.say import Speaker, en
from stemward.web import clock
from stemward.web.door import who
from stemward.web.frame import known_of
from stemward.web.views.ahead import short
from stemward.web.views.land import ask
from stemward.web.views.permits import early_words
from stemward.web.views.plan import plan_page


def day(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What each person takes and wears, and where the year stands for each way taken."""
    land = known_of(tract_id).land
    early = early_words(land)
    return plan_page(
        request, tract_id, "web/day.html", "day", when=_when, early=lambda *_: early,
        ahead=lambda plan, speaker: short(tract_id, land, plan, speaker.units),
    )  # fmt: skip


def _when(plan: dict[str, Any], speaker: Speaker) -> list[dict[str, str]]:
    rows = []
    for item in plan["treatments"]:
        way = next((w for w in item["ways"] if w["how"] == item["how"] and w["product"] == item["product"]), None)
        rows.append(
            {
                "plants": f"{item['common']}, {item['patch_name']}",
                "way": speaker.way(item),
                "when": en.stages.WHEN[way["when"]] if way and item["product"] else "",
            }
        )
    return rows


@require_POST
def aside(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """Set a patch aside until a day, or bring it back: written down, so that it is known why it waits."""
    land = known_of(tract_id).land
    if patch not in {one.id for one in land.patches}:
        raise Http404
    name, today = land.patch(patch).name, clock.today(land)
    back = "bring-back" in request.POST
    until = today if back else _day(request.POST.get("until", ""), today)
    body = {"patch": patch, "until": until.isoformat()} | ({} if back else _why(request))
    row = entry_row(request.POST["command"], ASIDE, clock.there(land), who(), body)
    what = f"{name} taken up again" if back else f"{name} set aside until {until.isoformat()}"
    ask(request, tract_id, "write down", words={"what": what}, entries=[row])
    return redirect("land", tract_id)


def _why(request: HttpRequest) -> dict[str, str]:
    why = clean(request.POST.get("why", "").strip(), 200)
    return {"why": why} if why else {}


def _day(typed: str, today: datetime.date) -> datetime.date:
    """A day to come. Raises Refused for anything else."""
    try:
        day = datetime.date.fromisoformat(typed.strip())
    except ValueError:
        raise Refused(f"Not understood: {clean(typed.strip())}. Write a day like {today.replace(day=1)}.") from None
    if day <= today:
        raise Refused(f"{day} is not to come. Write the day until which it can wait.")
    return day
