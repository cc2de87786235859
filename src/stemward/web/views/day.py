"""Day: what to take, and when of the year; After: what was written down."""

from typing import Any

from django.http import HttpRequest, HttpResponse

from stemward.notebook.entries import standing
from stemward.say import Speaker, en
from stemward.web.frame import known_of, page
from stemward.web.views.plan import plan_page


def day(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What each person takes and wears, and where the year stands for each way taken."""
    return plan_page(request, tract_id, "web/day.html", "day", when=_when)


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


def after(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Everything that was written down, newest first, corrected lines struck through."""
    land = known_of(tract_id).land
    rows = [
        {"at": e.at.replace("T", " "), "kind": e.kind, "by": e.by, "gone": gone, "body": _body(e.body)}
        for e, gone in reversed(standing(land.entries))
    ]
    return page(request, "web/after.html", tract_id, "after", rows=rows)


def _body(body: dict[str, Any]) -> str:
    return "; ".join(f"{key.replace('_', ' ')}: {_short(value)}" for key, value in body.items())


def _short(value: Any) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{key} {one}" for key, one in value.items())
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)
