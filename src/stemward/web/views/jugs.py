"""Jugs: what is left in each, what happened to it, how it is rinsed; and what to buy."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from stemward.gate.text import clean
from stemward.kinds import JUG_EVENTS, Product, Tract
from stemward.label import listed
from stemward.ledger import in_force, jugs
from stemward.ledger.balances import Matter
from stemward.notebook import edits, worked
from stemward.notebook.changes import Edit, Refused
from stemward.plan.to_buy import to_buy
from stemward.say.en import records as words
from stemward.say.numbers import figure
from stemward.web import clock
from stemward.web.day_form import MOST, a_day, measured
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.tried import tried
from stemward.web.views.evening import rows_from
from stemward.web.views.land import ask

WITHOUT_AMOUNT = ("opened", "emptied and rinsed")
RINSES, QUARTER = 3, 0.25
"""Three times, a quarter full: the stricter of the published ways (40 CFR 156.146, EPA farm guidance)."""


def jug(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """Each jug of a product with its balance; what happened to one is written down, a new one put beside it."""
    land = known_of(tract_id).land
    have = edits.body_of(known_of(tract_id).parts, "product", product)
    if have is None:
        raise Http404

    def act() -> HttpResponse:
        if "event" in request.POST:
            _happened(request, tract_id, land, product)
        else:
            _put(request, tract_id, land, product, have)
        return redirect("jug", tract_id, product)

    done, lines = tried(request, act)
    if done:
        return done
    units = units_of(request)
    known, matters = jugs(land.entries, land.shelf)
    own = [one for (of, _), one in known.items() if of == product]
    typed_jugs = {c["id"]: c for c in have.get("containers", ())}
    touched = _touched(land, product)
    return page(
        request, "web/jug.html", tract_id, "shelf", name=have.get("name", product), lines=lines, typed=request.POST,
        today=clock.today(land).isoformat(),
        jugs=[
            {"id": one.jug, "left": left_words(one.left_ul, units), "empty": one.rinsed, "opened": one.opened,
             "water": figure("water_ml", RINSES * QUARTER * one.capacity_ul / 1000, units) if one.capacity_ul else ""}
            for one in own
        ],
        events=JUG_EVENTS, matters=matters_words([m for m in matters if m.product == product], land, units),
        label=rinse_words(next(p for p in land.shelf if p.id == product)),
        rows=[*({**c, "touched": c["id"] in touched} for c in typed_jugs.values()), {}],
        status=422 if lines else 200,
    )  # fmt: skip


def left_words(left_ul: int | None, units: Any) -> str:
    """What is left, in words."""
    if left_ul is None:
        return "not looked"
    amount = figure("left_ml", abs(left_ul) / 1000, units)
    return amount if left_ul >= 0 else f"{amount} overdrawn"


def matters_words(matters: list[Matter], land: Tract, units: Any) -> list[str]:
    """What is to be told of balances."""
    names = {p.id: p.name for p in land.shelf}
    said = []
    for m in matters:
        jug_name = f"{names.get(m.product, m.product)}, {m.jug}"
        said.append(words.JUG_MATTERS[m.what].format(jug=jug_name, amount=figure("amount_ml", m.ul / 1000, units)))
    return said


def rinse_words(product: Product) -> list[str]:
    """What the label says of container and leftovers, as read; [] where nothing was read."""
    return [str(f.value) for kind in ("container", "disposal") for f in listed(product.facts, kind, None)]


def _touched(land: Tract, product: str) -> set[str]:
    """Jugs that an entry speaks of: what is left in them follows from entries and is not typed over."""
    found = set()
    for entry in in_force(land.entries):
        if entry.kind == "jug" and entry.body["product"] == product:
            found.add(str(entry.body["jug"]))
        if entry.kind == "batch mixed":
            found |= {d["jug"] for d in entry.body["drawn"] if d["product"] == product}
    return found


def _happened(request: HttpRequest, tract_id: str, land: Tract, product: str) -> None:
    typed = request.POST
    what, jug_id = typed.get("event", ""), clean(typed.get("jug", "").strip(), MOST)
    if what not in JUG_EVENTS or not jug_id:
        raise Refused("What happened to which jug? Choose both.")
    ml = measured(typed.get("amount", ""), "volume", "ml", "Amount")
    if ml is None and what not in WITHOUT_AMOUNT:
        raise Refused("How much? Write it, for example 4 fl oz.")
    have = jugs(land.entries, land.shelf)[0].get((product, jug_id))
    takes = what in ("drawn", "spilled", "discarded")
    more = have is not None and have.left_ul is not None and ml is not None and round(ml * 1000) > have.left_ul
    if takes and have and more and "agree" not in typed:
        raise Refused(
            f"{jug_id} held {left_words(have.left_ul, units_of(request))}, and more than that is said to have left it. "
            "If it was so, tick “It was so” and write it down again."
        )
    day = a_day(typed.get("day", "") or clock.today(land).isoformat(), clock.today(land))
    body = {"what": what, "product": product, "jug": jug_id} | ({} if ml is None else {"ml": round(ml, 3)})
    note = clean(typed.get("note", "").strip(), MOST)
    at = day.isoformat()
    if day == clock.today(land):
        at = f"{at}T{clock.there(land):%H:%M:%S.%f}"
    rows = rows_from(typed["command"], land, [("jug", at, body | ({"note": note} if note else {}))], who())
    ask(request, tract_id, "write down", words={"what": f"{jug_id} {what}"}, entries=rows)


def _put(request: HttpRequest, tract_id: str, land: Tract, product: str, have: dict[str, Any]) -> None:
    """What a jug holds when full, its price, and a new jug beside it."""
    before = {c["id"]: c for c in have.get("containers", ())}
    touched = _touched(land, product)
    found = []
    for n in range(len(before) + 1):
        row = {k: request.POST.get(f"{k}-{n}", "").strip() for k in ("id", "holds", "left", "price")}
        if row["holds"]:
            name = row["id"] or _free(before)
            if name in touched and "left" in before.get(name, {}):
                row["left"] = before[name]["left"]
            found.append({k: v for k, v in row.items() if v} | {"id": name})
    ask(request, tract_id, "put", words={"what": f"the jugs of {have.get('name', product)}"},
        edits=[Edit("product", product, {**have, "containers": found})])  # fmt: skip


def _free(before: dict[str, Any]) -> str:
    number = len(before) + 1
    while f"jug {number}" in before:
        number += 1
    return f"jug {number}"


def _left(left_ml: float | None, units: Any) -> str:
    return "not looked" if left_ml is None else figure("left_ml", left_ml, units)


def buying(tract_id: str, land: Tract, units: Any) -> list[dict[str, str]]:
    """What the plan takes and the shelf has; empty while the plan is not worked out."""
    plan = worked.plan_of(tract_id, clock.today(land), 0.05)
    if plan is None:
        return []
    return [
        {
            "what": one.what, "need": figure("need_ml", one.need_ml, units),
            "left": "not followed" if not one.product else _left(one.left_ml, units),
            "short": figure("short_ml", one.short_ml, units) if one.short_ml > 0 else "",
        }
        for one in to_buy(plan, land)
    ]  # fmt: skip
