"""The sums behind a plan, one stem at a time, and every step of a tract explained for a workshop."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_GET

from stemward.handbook import load
from stemward.plan.traced import rows_of
from stemward.say import Speaker
from stemward.say.checked import check_words
from stemward.say.en import traced as words
from stemward.say.en import workshop as en_workshop
from stemward.say.traced import kill_lines, pace_lines, stem_names, sum_words
from stemward.say.worked import worked_lines
from stemward.web import ways_table
from stemward.web.frame import known_of
from stemward.web.views.plan import plan_page, shown_mixes

MOST_LISTED = 500
"""Stems that can be chosen from a list; of more the first ones and the asked one."""


@require_GET
def sums_behind(request: HttpRequest, tract_id: str, treatment: str) -> HttpResponse:
    """The steps of a treatment for one of its stems, the typical one unless another is asked for."""

    def shown(plan: dict[str, Any], speaker: Speaker) -> dict[str, Any]:
        item = next((one for one in plan["treatments"] if one["id"] == treatment), None)
        if item is None:
            raise Http404
        about = {"item": item, "name": f"{item['common']}, {item['patch_name']}", "way": speaker.way(item)}
        if not item["product"] or treatment not in plan["columns"]:
            return {**about, "none": words.NONE}
        stems, asked = rows_of(plan, treatment), request.GET.get("stem", "")
        stem = asked if asked in stems else (item["typical"] or {}).get("id", stems[0])
        listed = stem_names(plan, treatment, speaker.units)
        kept = [one for n, one in enumerate(listed) if n < MOST_LISTED or one[0] == stem]
        return {
            **about, "stem": stem, "stems": kept,
            "sums": sum_words(plan, treatment, stems.index(stem), speaker.units),
            "kill": kill_lines(speaker, treatment), "paces": pace_lines(speaker, treatment, stems.index(stem), load()),
        }  # fmt: skip

    return plan_page(request, tract_id, "web/behind.html", shown=shown, said=lambda *_: words)


@require_GET
def workshop(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every step of the round with this tract's own figures, to open one by one or to print."""
    land, book = known_of(tract_id).land, load()

    def steps(plan: dict[str, Any], speaker: Speaker) -> list[dict[str, Any]]:
        treated = [one for one in plan["treatments"] if one["product"] and one["id"] in plan["columns"]]
        first = treated[0] if treated else None
        stem = first["typical"]["id"] if first and first["typical"] else ""
        lines = {
            "look": [
                *(f"{one['stems']} {one['common']}, {one['patch_name']}" for one in plan["treatments"]),
                en_workshop.KEPT.format(count=len(land.spared)),
            ],
            "ask": [f"{one.word}: {one.text}" for one in _open_findings(plan, speaker)],
            "choose": [f"{one['common']}, {one['patch_name']}: {speaker.way(one)}" for one in plan["treatments"]],
            "back": worked_lines(land, book) or [en_workshop.NOTHING_SEEN],
        }
        pages = {
            "look": reverse("land", args=[tract_id]), "ask": reverse("findings", args=[tract_id]),
            "choose": reverse("plan", args=[tract_id]), "mix": reverse("mix", args=[tract_id]),
            "reckon": reverse("behind", args=[tract_id, first["id"]]) if first else "",
            "work": reverse("walks", args=[tract_id]), "back": reverse("worked", args=[tract_id]),
        }  # fmt: skip
        sums = sum_words(plan, first["id"], rows_of(plan, first["id"]).index(stem), speaker.units) if stem else []
        return [
            {"id": name, "title": title, "why": why, "talk": talk, "page": pages[name], "lines": lines.get(name, []),
             "sums": sums if name == "reckon" else [], "stem": stem,
             "what": f"{first['common']}, {speaker.way(first)}" if first and name in ("reckon", "work") else ""}
            for name, title, why, talk in en_workshop.STEPS
        ]  # fmt: skip

    return plan_page(
        request, tract_id, "web/workshop.html", "land", steps=steps, said=lambda *_: en_workshop,
        mixes=shown_mixes,
        first=lambda plan, _: next((n for n, one in enumerate(plan["treatments"]) if one["product"]), None),
    )  # fmt: skip


MOST_OPEN = 12
"""Findings that a workshop looks at; all stand on their own page."""


def _open_findings(plan: dict[str, Any], speaker: Speaker) -> list[Any]:
    """Stops and what is to be found out, in words."""
    groups = ways_table.groups(plan["findings"], speaker)
    return [row for group in groups if group["weight"] in ("stop", "find out") for row in group["rows"]][:MOST_OPEN]


@require_GET
def check_page(request: HttpRequest, tract_id: str, check: str) -> HttpResponse:
    """What a check asks, whom it protects and who says so, with what it found here."""
    try:
        about = check_words(check)
    except KeyError:
        raise Http404 from None

    def here(plan: dict[str, Any], speaker: Speaker) -> list[dict[str, Any]]:
        return ways_table.groups([one for one in plan["findings"] if one["check"] == check], speaker)

    return plan_page(request, tract_id, "web/check.html", about=lambda *_: about, groups=here)
