"""What was done and stands in no plan: written down all the same, since a record never refuses the truth."""

from collections.abc import Mapping
from typing import Any

from django.http import HttpRequest, HttpResponse, QueryDict

from stemward.gate.text import clean
from stemward.handbook import Near, load
from stemward.kinds import CARRIERS, METHODS, Tract
from stemward.ledger.evening import DayTyped
from stemward.ledger.poured import FATES
from stemward.notebook.changes import Refused
from stemward.say.en import records as words
from stemward.say.en.stages import HOW
from stemward.web import clock
from stemward.web.day_form import MOST, day_typed, jugs_of, measured
from stemward.web.frame import known_of, page
from stemward.web.views.evening import sent

SHEET, MIX = "other", "other"
NOT_PLANNED = "it was in no plan"


def unplanned(request: HttpRequest, tract_id: str) -> HttpResponse:
    """A form for one treatment that no sheet holds."""
    land = known_of(tract_id).land

    def made() -> tuple[DayTyped, list[dict[str, Any]]]:
        sheet, form = _sheet(request.POST, land)
        return day_typed(form, [sheet], clock.today(land), ""), [sheet]

    done, lines, asked = sent(request, tract_id, land, made)
    if done:
        return done
    book = load()
    return page(
        request, "web/unplanned.html", tract_id, "after", typed=request.POST, asked=asked,
        lines=lines, today=clock.today(land).isoformat(),
        hows=[(how, HOW[how]) for how in METHODS if how != "leave it"], carriers=CARRIERS,
        fates=[(f, words.FATES[f]) for f in FATES], plants=sorted({s.common for s in book.species.values()}),
        jugs=[(f"{p.id}|{jug}", f"{p.name}, {jug}") for p in land.shelf for jug in jugs_of(land, p.id)],
        tools=list(book.tools), sources=words.WEATHER_FROM, status=422 if lines or asked else 200,
    )  # fmt: skip


def _sheet(typed: Mapping[str, str], land: Tract) -> tuple[dict[str, Any], QueryDict]:
    """A sheet of one row for what is typed, and the form as an evening's form. Raises Refused."""
    patch = next((p for p in land.patches if p.id == typed.get("patch")), None)
    how = typed.get("how", "")
    if patch is None or how not in METHODS:
        raise Refused("On which patch, and how? Choose both.")
    name = clean(typed.get("plants", "").strip(), MOST)
    plant = load().find_species(name)
    if not name or isinstance(plant, Near):
        meant = ", ".join(common for common, _ in plant.candidates[:3]) if isinstance(plant, Near) else ""
        near = f" Meant may be {meant}." if meant else ""
        raise Refused(f"Which plants? {name or 'Nothing'} is not known.{near}")
    count = typed.get("stems", "").strip()
    if not count.isdigit() or not 0 < int(count) < 1_000_000:
        raise Refused("How many stems were treated? Write a whole number.")
    product, _, jug = typed.get("jug", "").partition("|")
    known = next((p for p in land.shelf if p.id == product), None)
    share = measured(typed.get("strength", ""), "fraction", "frac", "Strength", "%")
    if known is not None and share is None:
        raise Refused("How strong was the mix? Write the product's share of it, for example 50 %; 100 % is undiluted.")
    carrier = typed.get("carrier", "")
    sheet = {
        "id": SHEET, "patch": patch.id, "patch_name": patch.name, "species": plant.latin, "common": plant.common,
        "state": "standing", "how": how, "first": "", "product": known.id if known else "",
        "product_name": known.name if known else "", "partner": "", "concentration_frac": share, "partner_frac": None,
        "carrier": carrier if carrier in CARRIERS else "", "tool": clean(typed.get("tool", "").strip(), MOST),
        "mix": MIX if known else "", "stopped": [NOT_PLANNED], "reckoned_h": 0.0, "ids": [""], "counts": [int(count)],
        "sizes_cm": [0.0], "row_ml": [0.0],
    }  # fmt: skip
    form = QueryDict(mutable=True)
    form.update({key: str(value) for key, value in typed.items()})
    form[f"ticks-{SHEET}"] = "1 treated"
    why = clean(typed.get("why", "").strip(), MOST - len(NOT_PLANNED) - 2)
    form[f"anyway-{SHEET}"] = f"{NOT_PLANNED}; {why}" if why else NOT_PLANNED
    form[f"area-{SHEET}"] = typed.get("area", "")
    for key in ("mixed", "left", "fate", "bottle"):
        form[f"{key}-{MIX}"] = typed.get(key, "")
    if known:
        form[f"jug-{MIX}-{known.id}"] = jug
    return sheet, form
