"""Plan: the ways of each target, the chosen one, findings, mix, the packet."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_GET, require_POST

from stemward.handbook import load
from stemward.notebook import edits, worked
from stemward.notebook.entries import ISSUED, entry_row, issued_code
from stemward.paper.packet import packet, packet_data
from stemward.plan.field_sheets import for_issue
from stemward.say import Speaker
from stemward.web import clock, ways_table
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.kept import kept_lately
from stemward.web.views.land import ask

WAIT_S = 0.12
"""A page answers within a fifth of a second; what is not worked out by then is shown when it is."""


def plan_page(request: HttpRequest, tract_id: str, template: str, place: str = "plan", **context: Any) -> HttpResponse:
    """A page that needs the plan; while it is worked out, one that says so and asks again by itself."""
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land), WAIT_S)
    if plan is None:
        return page(request, "web/working.html", tract_id, place, no_step=True)
    speaker = Speaker(plan, units_of(request))
    words = kept_lately("packet", (plan["code"], speaker.units), lambda: packet_data(plan, speaker.units, "letter"))
    return page(
        request, template, tract_id, place, plan=plan, words=words, draft=speaker.draft,
        count_line=speaker.count_line(), **{key: value(plan, speaker) for key, value in context.items()},
    )  # fmt: skip


@require_GET
def overview(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every target with the way taken or suggested."""
    return plan_page(request, tract_id, "web/plan.html", targets=_targets)


def _targets(plan: dict[str, Any], speaker: Speaker) -> list[dict[str, Any]]:
    rows = []
    for item in plan["treatments"]:
        mine = [f for f in plan["findings"] if ways_table.concerns(f, item)]
        rows.append(
            {
                "item": item,
                "way": speaker.way(item),
                "chosen": item["chosen_by"] == "person",
                "need": speaker.number("need_ml", item["need_ml"]) if item["product"] else "",
                "stops": sum(f["weight"] == "stop" for f in mine),
                "open": sum(f["weight"] == "find out" for f in mine),
            }
        )
    return rows


def _item(plan: dict[str, Any], patch: str, species: str, state: str) -> dict[str, Any]:
    for item in plan["treatments"]:
        if (item["patch"], item["species"], item["state"]) == (patch, species, state):
            return dict(item)
    raise Http404


@require_GET
def ways(request: HttpRequest, tract_id: str, patch: str, species: str, state: str) -> HttpResponse:
    """The ways of one target, and the one taken."""

    def shown(plan: dict[str, Any], speaker: Speaker) -> dict[str, Any]:
        item = _item(plan, patch, species, state)
        number = plan["treatments"].index(next(t for t in plan["treatments"] if t["id"] == item["id"]))
        own = [f for f in speaker.plan["findings"] if ways_table.concerns(f, item)]
        return {
            "item": item,
            "slice": f"{number}:{number + 1}",
            "table": ways_table.table(item, speaker, request.GET.get("all") == "1", request.GET.get("sort", "")),
            "chosen": item["chosen_by"] == "person",
            "why": speaker.why(item),
            "findings": ways_table.groups(own, speaker),
            "name": f"{item['common']} on {item['patch_name']}",
            "asked": ways_table.asked_of(item, speaker),
            "tools": list(load().tools),
        }

    return plan_page(request, tract_id, "web/ways.html", one=shown)


@require_GET
def what_if(request: HttpRequest, tract_id: str, patch: str, species: str, state: str) -> HttpResponse:
    """The way taken, with something else tried: what was and what would be, side by side. Nothing is kept."""
    known = known_of(tract_id)
    plan = worked.plan_of(tract_id, clock.today(known.land), None)
    if plan is None:
        raise Http404
    speaker = Speaker(plan, units_of(request))
    item = _item(plan, patch, species, state)
    found = ways_table.tried(known.land, item, request.GET, clock.today(known.land), load(), speaker)
    return render(request, "web/what_if.html", {"tried": found})


@require_POST
def take(request: HttpRequest, tract_id: str, patch: str, species: str, state: str) -> HttpResponse:
    """Take a way, or leave the choice to the rule again."""
    known = known_of(tract_id)
    back = reverse("ways", args=[tract_id, patch, species, state])
    names = edits.names_of(known.parts, species)
    if "leave-to-rule" in request.POST:
        changes = edits.choice_edits(known.parts, patch, names, state, None)
        ask(request, tract_id, "choose", words={"what": "the rule's way"}, edits=changes)
        return redirect(back)
    body = ways_table.choice_from(request.POST, patch, species, state)
    changes = edits.choice_edits(known.parts, patch, names, state, body)
    common = load().species[species].common if species in load().species else species
    ask(request, tract_id, "choose", words={"what": f"{body['how']} for {common}"}, edits=changes)
    return redirect(back)


@require_GET
def findings(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every finding in the four weights."""
    return plan_page(
        request, tract_id, "web/findings.html",
        groups=lambda plan, speaker: ways_table.groups(plan["findings"], speaker),
    )  # fmt: skip


@require_GET
def mix(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The mixes with their pour ladders."""
    return plan_page(request, tract_id, "web/mix.html", mixes=shown_mixes)


def shown_mixes(plan: dict[str, Any], speaker: Speaker) -> list[dict[str, Any]]:
    """The mixes of a plan in words, with their pour ladders."""
    words = kept_lately("packet", (plan["code"], speaker.units), lambda: packet_data(plan, speaker.units, "letter"))
    shown = []
    for one in words["mixes"]:
        batches = [
            {**batch, "ladder_svg": mark_safe(batch["ladder"]["svg"]) if batch["ladder"] else ""}
            for batch in one["batches"]
        ]
        shown.append({**one, "batches": batches})
    return shown


@require_GET
def packet_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What the packet holds, to open or print."""

    def issued(plan: dict[str, Any], speaker: Speaker) -> dict[str, Any]:
        code = issued_code(known_of(tract_id).land)
        return {"code": code, "changed": bool(code) and code != plan["code"]}

    return plan_page(request, tract_id, "web/packet.html", issued=issued)


def issue(plan: dict[str, Any]) -> dict[str, Any]:
    """What is kept of a printed plan: its code, and its sheets, whose numbers people write down in the woods."""
    sheets = for_issue(plan)
    return {"code": plan["code"], "as_of": plan["as_of"]} | ({"sheets": sheets} if sheets else {})


def packet_pdf(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The packet as PDF. Asked for with a form it is written down as printed; a plain look is not."""
    known = known_of(tract_id)
    plan = worked.plan_of(tract_id, clock.today(known.land), None)
    if plan is None:
        raise Http404
    source = request.POST if request.method == "POST" else request.GET
    paper = "a4" if source.get("paper") == "a4" else "letter"
    pdf = kept_lately("pdf", (plan["code"], units_of(request), paper), lambda: packet(plan, units_of(request), paper))
    if request.method == "POST" and issued_code(known.land) != plan["code"]:
        at = clock.there(known.land)
        row = entry_row(request.POST["command"], ISSUED, at, who(), issue(plan))
        ask(request, tract_id, "write down", words={"what": f"plan {plan['code']} printed"}, entries=[row])
    answer = HttpResponse(pdf, content_type="application/pdf")
    answer["Content-Disposition"] = f'inline; filename="{plan["code"]}.pdf"'
    return answer
