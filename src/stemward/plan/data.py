"""Parts of a plan as plain data: land, ways, what stands behind them."""

from typing import Any

from stemward.checks import Case
from stemward.kinds import LabelFact, Shape, Tract
from stemward.label import listed, resolve
from stemward.plan.behind import Behind
from stemward.plan.laid_out import LaidOut
from stemward.plan.ways import Weighed


def tract_data(tract: Tract, case: Case) -> dict[str, Any]:
    """What paper and screens show of the land and people, and the read facts of the products used."""
    used = {product.id: product for _, product in case.treated}
    return {
        "name": tract.name,
        "place": tract.place,
        "state": tract.state,
        "who": tract.who,
        "invented": tract.invented,
        "emergency": dict(tract.emergency),
        "common_names": {
            s.species: case.book.species[s.species].common for s in tract.spared if s.species in case.book.species
        },
        "shelf": {product.id: product.name for product in tract.shelf},
        "patches": [
            {
                "id": p.id,
                "name": p.name,
                "places": list(p.places),
                "answers": dict(p.answers),
                "shape": _shape(p.shape),
            }
            for p in tract.patches
        ],
        "spared": [
            {"id": s.id, "kind": s.kind, "species": s.species, "note": s.note, "shape": _shape(s.shape)}
            for s in tract.spared
        ],
        "calibrations": [
            {"tool": c.tool, "ml_per_stroke": c.ml_per_stroke, "by": c.by, "on": c.on} for c in tract.calibrations
        ],
        "people": [{"role": p.role, "does": list(p.does), "gear": list(p.gear)} for p in tract.people],
        "products": [
            {
                "id": product.id,
                "name": product.name,
                "number": product.number,
                "formulation": product.formulation,
                "invented": product.invented,
                "contents": [
                    {"ingredient": c.ingredient, "form": c.form, "strength_ae_g_l": c.strength_ae_g_l}
                    for c in product.contents
                ],
                "facts": [_fact(f) for f in product.facts],
                "signal": _said(case, product.id, "signal word"),
                "first_aid": _said(case, product.id, "first aid"),
                "container": _said(case, product.id, "container"),
                "disposal": _said(case, product.id, "disposal"),
                "entry_h": _entry_h(case, product.id),
            }
            for product in used.values()
        ],
        "asked": [
            {
                "message": q.message,
                "values": dict(q.values),
                "file": q.file,
                "line": q.line,
                "column": q.column,
            }
            for q in tract.questions
        ],
    }


def _said(case: Case, product_id: str, kind: str) -> list[str]:
    """What the read label says under one kind, in the label's order, each once."""
    for job, product in case.treated:
        if product.id == product_id:
            facts = (f for s in job.situations(case.tract) for f in listed(product.facts, kind, s))
            return list(dict.fromkeys(str(f.value) for f in facts))
    return []


def _entry_h(case: Case, product_id: str) -> float | None:
    """The longest entry interval read for any use in the plan, hours; None where none was read."""
    found = [
        resolve(product.facts, "entry interval", situation).fact
        for job, product in case.treated
        if product.id == product_id
        for situation in job.situations(case.tract)
    ]
    hours = [fact.value / 3600 for fact in found if fact is not None and isinstance(fact.value, float)]
    return max(hours, default=None)


def _fact(fact: LabelFact) -> dict[str, Any]:
    return {
        "kind": fact.kind,
        "standing": fact.standing,
        "value": fact.value,
        "typed": fact.typed,
        "reading": fact.reading,
        "force": fact.force,
        "page": fact.page,
        "scope": {
            name: list(getattr(fact.scope, name))
            for name in ("method", "carrier", "site", "state", "part", "plants", "role")
            if getattr(fact.scope, name)
        },
        "read_by": fact.read_by,
        "read_on": fact.read_on.isoformat() if fact.read_on else "",
    }


def _shape(shape: Shape | None) -> dict[str, Any] | None:
    if shape is None:
        return None
    return {"kind": shape.kind, "rings": [[list(corner) for corner in ring] for ring in shape.rings]}


def way_data(weighed: Weighed) -> dict[str, Any]:
    """One weighed way with what the rule compares and its stops and questions."""
    way = weighed.way
    return {
        "how": way.how,
        "first": way.first,
        "partner": way.partner,
        "partner_frac": way.partner_frac,
        "product": way.product,
        "concentration_frac": way.concentration_frac,
        "carrier": way.carrier,
        "tool": way.tool,
        "stops": weighed.stops,
        "to_find_out": weighed.to_find_out,
        "evidence_tier": weighed.evidence_tier,
        "evidence_kind": weighed.behind.kind,
        "reach": weighed.reach,
        "on_shelf": weighed.on_shelf,
        "need_ml": weighed.need_ml,
        "ae_g": weighed.ae_g,
        "low": weighed.behind.low,
        "high": weighed.behind.high,
        **own_data(weighed.behind),
        "trials": sum(row.kind == "trial" for row in weighed.behind.rows),
        "wide": weighed.behind.wide,
        "hours_low": weighed.hours_low,
        "hours_high": weighed.hours_high,
        "hours_days": weighed.hours_days,
        "when": weighed.when,
        "money_low_cents": weighed.money_cents[0] if weighed.money_cents else None,
        "money_high_cents": weighed.money_cents[1] if weighed.money_cents else None,
        "stopped_by": [
            {"check": f.check, "message": f.message, "values": dict(f.values)}
            for f in weighed.findings
            if f.weight.word == "stop"
        ][:3],
    }


def laid_out_data(laid: LaidOut) -> dict[str, Any]:
    """Which ways are shown in which group, as numbers into the list of ways."""
    groups = [{"group": name, "ways": list(members)} for name, members in laid.groups]
    return {"pinned": list(laid.pinned), "groups": groups, "more": laid.more}


def own_data(seen: Behind) -> dict[str, int | None]:
    """One's own stems, and what the books would say without them."""
    return {name: getattr(seen, name) for name in ("own_dead", "own_seen", "books_low", "books_high")}


def behind_data(seen: Behind) -> dict[str, Any]:
    """What stands behind the way taken: of ten stems how many die, and the rows, trials first."""
    shown = ("id", "kind", "rating", "typed", "season", "source")
    return {
        "tier": seen.tier,
        "evidence_kind": seen.kind,
        "low": seen.low,
        "high": seen.high,
        **own_data(seen),
        "wide": seen.wide,
        "worth": seen.worth,
        "others_worth": seen.others_worth,
        "trials": sum(row.kind == "trial" for row in seen.rows),
        "rows": [{name: getattr(row, name) for name in shown} for row in seen.rows[:6]],
    }
