"""The years ahead: strategies side by side, sliders for what is weakly known, a budget."""

from typing import Any

from django.http import HttpRequest, HttpResponse, QueryDict
from django.utils.safestring import mark_safe

from stemward.drawings.years import years_band
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.notebook import worked
from stemward.plan.ahead import INPUTS, MOST_YEARS, Known, Outlook, inputs_of, outlook
from stemward.say import ahead as say
from stemward.say.en import ahead as words
from stemward.web import clock
from stemward.web.frame import known_of, page, units_of
from stemward.web.views.evening import WAIT_S

SLIDERS = {"find_frac": (40, 100, 1, 100), "sprouts": (1, 12, 0.5, 1), "seedlings": (0, 100, 1, 100),
           "decline_frac": (0, 100, 5, 100)}  # fmt: skip
"""Least, most, step as shown, and by how much what is shown is larger than the value."""
USUAL_YEARS = 10


def years(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Everything on one page; each slider asks for it again."""
    land, book = known_of(tract_id).land, load()
    plan = worked.plan_of(tract_id, clock.today(land), WAIT_S)
    if plan is None:
        return page(request, "web/working.html", tract_id, "after", no_step=True)
    ahead = min(max(int(_number(request.GET, "years", USUAL_YEARS, 1, MOST_YEARS)), 1), MOST_YEARS)
    hours = _number(request.GET, "hours", 0.0, 0.0, 10_000.0)
    given = _given(request.GET, land)
    found = outlook(land, plan, book, ahead, given, hours or None)
    units = units_of(request)
    shown = _shown(found, units) if found else {}
    sliders = [_slider(name, found.inputs[name]) for name in INPUTS] if found else []
    return page(
        request, "web/years.html", tract_id, "after", found=shown, sliders=sliders, years=ahead, hours=f"{hours:g}",
        most_years=MOST_YEARS, nothing=words.NO_TARGETS, budget=words.BUDGET.format(hours=f"{hours:g}"),
        budget_note=words.BUDGET_NOTE, most_words=words.MOST,
    )  # fmt: skip


def _given(typed: QueryDict, land: Tract) -> dict[str, float]:
    """Inputs that were moved away from where they stand by themselves."""
    found = {}
    for name, known in inputs_of(land, load(), {}).items():
        low, high, step, scale = SLIDERS[name]
        value = _number(typed, name, known.middle * scale, low, high)
        if name in typed and abs(value - known.middle * scale) > step / 2 + 1e-9:
            found[name] = value / scale
    return found


def _number(typed: QueryDict, name: str, usual: float, low: float, high: float) -> float:
    """A number of the address between its ends; the usual one for what is none."""
    try:
        value = float(typed.get(name, ""))
    except ValueError:
        return usual
    return min(max(value, low), high) if value == value else usual


def _slider(name: str, known: Known) -> dict[str, Any]:
    low, high, step, scale = SLIDERS[name]
    value = min(max(round(known.middle * scale / step) * step, low), high)
    of = words.SET if known.set else words.OWN.format(count=known.behind) if known.behind else words.HANDBOOK
    return {"name": name, "label": words.INPUTS[name], "low": low, "high": high, "step": step, "value": f"{value:g}",
            "unit": " of 100" if scale == 100 else "", "of": of}  # fmt: skip


def _shown(found: Outlook, units: Any) -> dict[str, Any]:
    most = max(float(path.band().max()) for path in found.paths)
    heads, budget_heads = say.head(found), say.budget_head(found)
    return {
        "head": heads,
        "rows": [
            {"cells": list(zip(heads[1:], row[1:], strict=True)), "name": row[0],
             "drawn": mark_safe(years_band(path.band().tolist(), most))}
            for row, path in zip(say.strategy_rows(found, units), found.paths, strict=True)
        ],
        "shares": say.shares(found), "notes": say.notes(found),
        "budget_head": budget_heads,
        "budget": [list(zip(budget_heads, row, strict=True)) for row in say.budget_rows(found)],
    }  # fmt: skip
