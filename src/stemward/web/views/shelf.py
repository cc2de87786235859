"""Shelf: jugs, what is in them, and what their labels say, entered by hand."""

from collections.abc import Mapping, Sequence
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect

from stemward.handbook import Book, load
from stemward.kinds import Product
from stemward.label import KINDS
from stemward.ledger import jugs
from stemward.ledger.balances import with_balances
from stemward.notebook import edits, worked
from stemward.notebook.changes import Edit, Refused
from stemward.plan.shelf_check import shelf_check
from stemward.say import figure
from stemward.say.en import shelf as words
from stemward.say.en.forms import ON_LABELS
from stemward.units import EXAMPLE
from stemward.web import clock, forms, label_files
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.views.jugs import buying, matters_words
from stemward.web.views.land import ask

MOST_ROWS = 60
SCOPED = ("strongest mix", "weakest mix", "most per stem", "hours without rain", "longest from cut to treatment",
          "carrier", "greatest stem", "least stem")  # fmt: skip
"""Kinds that often differ by method; their row asks for which."""


def shelf(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every jug with what is left and what to know of it."""
    land = known_of(tract_id).land
    book, units = load(), units_of(request)
    rows = [
        {"product": one, "left": _left(one, units), "noted": noted_words(one, book, units), "facts": _counts(one)}
        for one in with_balances(land.shelf, land.entries)
    ]
    told = matters_words(list(jugs(land.entries, land.shelf)[1]), land, units)
    buy = buying(tract_id, land, units)
    return page(request, "web/shelf.html", tract_id, "shelf", rows=rows, told=told, buy=buy)


def _left(product: Product, units: Any) -> str:
    known = [c.left_ul for c in product.containers if c.left_ul is not None]
    return figure("left_ml", sum(known) / 1000, units) if known else "not looked"


def noted_words(product: Product, book: Book, units: Any) -> list[str]:
    """What is noticed of a product, in sentences."""
    said = []
    for one in shelf_check(product, book):
        values: dict[str, Any] = dict(one.values)
        if "strength_g_l" in values:
            values["strength"] = figure("strength_g_l", float(values["strength_g_l"]), units)
        text = words.NOTED[one.message].format(**values)
        said.append(text[:1].upper() + text[1:])
    return said


def _counts(product: Product) -> dict[str, int]:
    read = sum(f.reading == "read" for f in product.facts)
    return {"read": read, "proposed": sum(f.reading == "proposed" for f in product.facts)}


def add(request: HttpRequest, tract_id: str) -> HttpResponse:
    """A new jug: what stands on its front, and how much is left."""
    known = known_of(tract_id)
    lines: list[str] = []
    if request.method == "POST":
        try:
            key = add_product(request, tract_id, request.POST)
            return redirect("label", tract_id, key)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    del known
    return page(
        request, "web/product.html", tract_id, "shelf", title="A jug", lines=lines, typed=request.POST,
        fields=forms.fields_of("product", {}, request.POST if lines else None), has_more=True, more_open=False,
        ingredients=ingredient_choices(load()), new=True, status=422 if lines else 200,
    )  # fmt: skip


def ingredient_choices(book: Book) -> list[tuple[str, str]]:
    """Ingredients with their forms as one choice: value and words."""
    return [(f"{name}|{form}", f"{name}, {form}") for name, form in sorted(book.ingredients)]


def add_product(request: HttpRequest, tract_id: str, typed: QueryDict) -> str:
    """Put a jug on the shelf as a form describes it; its key. Raises Refused."""
    parts = known_of(tract_id).parts
    body = forms.body_from("product", {}, typed)
    name, _, form = typed.get("ingredient", "").partition("|")
    if not name:
        raise Refused("What is in it? Choose the ingredient that stands after ACTIVE INGREDIENT on the front.")
    body.setdefault("name", f"{name} {typed.get('strength', '').strip()}".strip())
    body.setdefault("formulation", "ester" if form == "ester" else "salt in water")
    key = edits.new_key(parts, "product", str(body["name"]))
    content = {"ingredient": name, "form": form, "strength": typed.get("strength", "").strip()}
    body |= {"id": key, "ingredients": [content]}
    jug = {k: typed.get(k, "").strip() for k in ("holds", "left", "price") if typed.get(k, "").strip()}
    if jug:
        body["containers"] = [{"id": "jug 1", **jug}]
    ask(request, tract_id, "add", words={"what": body["name"]}, edits=[Edit("product", key, body)])
    return key


def product(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """What is written down of a jug, but for its label."""
    have = body_of(tract_id, product)
    lines: list[str] = []
    if request.method == "POST":
        try:
            if "take-away" in request.POST:
                _take_away(request, tract_id, product)
                return redirect("shelf", tract_id)
            body = forms.body_from("product", have, request.POST)
            ask(request, tract_id, "put", words={"what": body.get("name", product)},
                edits=[Edit("product", product, body)])  # fmt: skip
            return redirect("shelf", tract_id)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    fields = forms.fields_of("product", have, request.POST if lines else None)
    return page(
        request, "web/product.html", tract_id, "shelf", title=have.get("name", product), lines=lines, fields=fields,
        has_more=True, more_open=bool(lines), new=False, status=422 if lines else 200,
    )  # fmt: skip


def _take_away(request: HttpRequest, tract_id: str, key: str) -> None:
    parts = known_of(tract_id).parts
    chosen = [
        p.key for p in parts.pieces if p.kind == "choice" and key in (p.body.get("product"), p.body.get("partner"))
    ]
    changes = [*(Edit("choice", one, None) for one in chosen), Edit("product", key, None)]
    ask(request, tract_id, "take away", words={"what": key}, edits=changes)


def body_of(tract_id: str, key: str) -> dict[str, Any]:
    """A product as it is written down. Raises Http404."""
    have = edits.body_of(known_of(tract_id).parts, "product", key)
    if have is None:
        raise Http404
    return have


def label(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """What the label says, typed from the booklet: first what this plan leans on, by what a mistake would cost."""
    known = known_of(tract_id)
    have = body_of(tract_id, product)
    lines: list[str] = []
    if request.method == "POST":
        try:
            facts, count = facts_from(request.POST, have, clock.today(known.land).isoformat())
            if not count:
                raise Refused("Nothing was typed, so nothing was kept.")
            body = {**have, "facts": facts}
            _register(body, request.POST, known.land.state, clock.today(known.land).isoformat())
            ask(request, tract_id, "read", words={"what": f"{count} places"}, edits=[Edit("product", product, body)])
            return redirect("label", tract_id, product)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    return label_page(request, tract_id, product, lines)


def label_page(request: HttpRequest, tract_id: str, product: str, lines: Sequence[str] = ()) -> HttpResponse:
    """The page on which a label is typed from the booklet, with what is wrong with what was sent, if anything is."""
    known, have = known_of(tract_id), body_of(tract_id, product)
    plan = worked.plan_of(tract_id, clock.today(known.land), 0.1)
    wanted = wanted_kinds(plan, product)
    rows = [fact_row(kind, have, request.POST if lines else None) for kind in order_of(wanted)]
    return page(
        request, "web/label.html", tract_id, "shelf", product=known.land.product(product), key=product, lines=lines,
        deciding=[r for r in rows if r["deciding"]], others=[r for r in rows if not r["deciding"]],
        facts=[fact_words(f) for f in have.get("facts", ())],
        noted=noted_words(known.land.product(product), load(), units_of(request)),
        registered=any(r["state"] == known.land.state for r in have.get("registered", ())), typed=request.POST,
        standings=words.STANDINGS, file=label_files.newest(tract_id, product), status=422 if lines else 200,
    )  # fmt: skip


def wanted_kinds(plan: dict[str, Any] | None, product: str) -> list[str]:
    """Kinds of fact that the plan says nobody has read on this label, heaviest first."""
    if plan is None:
        return []
    found: list[str] = []
    for one in plan["findings"]:
        if one["where"]["product"] == product and one["message"].partition(".")[2] in ("unread", "proposed"):
            names = str(one["values"].get("fact") or one["values"].get("facts", ""))
            found += [name for name in names.split(", ") if name in KINDS]
    return list(dict.fromkeys(found))


def order_of(wanted: list[str]) -> list[str]:
    """All kinds: those wanted first, in the order of what a mistake costs, then the deciding ones, then the rest."""
    cost = {kind: n for n, kind in enumerate(words.DECIDING)}
    first = sorted(wanted, key=lambda kind: cost.get(kind, len(cost)))
    rest = [kind for kind in (*words.DECIDING, *KINDS) if kind not in first]
    return [*first, *dict.fromkeys(rest)][:MOST_ROWS]


def fact_row(name: str, have: dict[str, Any], typed: QueryDict | None) -> dict[str, Any]:
    """One thing to look for: how it is typed, and what is read already."""
    kind = KINDS[name]
    own = [fact for fact in have.get("facts", ()) if fact["kind"] == name]
    slug = name.replace(" ", "-")
    if kind.value == "yes-no":
        way, options = "radio", ("yes", "no")
    elif kind.choices:
        way, options = ("many" if kind.many else "select"), kind.choices
    else:
        way, options = "text", ()
    negatives = {"not found": kind.not_found, "no limit": kind.no_limit, "does not apply": kind.not_apply}
    return {
        "name": name,
        "slug": slug,
        "ask": words.ASK.get(name, name[:1].upper() + name[1:]),
        "way": way,
        "options": [(one, ON_LABELS.get(one, one)) for one in options],
        "example": EXAMPLE.get(kind.dimension, "") if kind.value == "number" else "",
        "read": [fact_words(fact) for fact in own if "read_by" in fact],
        "proposed": [
            {"page": fact["page"], "says": "" if kind.typed else fact.get("says", ""), "words": fact.get("words", "")}
            for fact in own
            if fact.get("proposed")
        ],
        "deciding": name in words.DECIDING,
        "hurts": kind.typed,
        "scoped": name in SCOPED,
        "methods": KINDS["method"].choices,
        "negatives": [(key, words.STANDINGS[key]) for key, meaning in negatives.items() if meaning],
        "value": typed.get(f"says-{slug}", "") if typed else "",
        "page": typed.get(f"page-{slug}", "") if typed else "",
        "chosen": typed.getlist(f"says-{slug}") if typed else [],
    }


def fact_words(fact: Mapping[str, Any]) -> dict[str, str]:
    """A fact of the shelf in words: what it says, for what, where, and who read it."""
    says = str(fact.get("says", "")) or words.STANDINGS.get(fact.get("standing", ""), "")
    scope = "; ".join(", ".join(map(str, one)) for one in fact.get("scope", {}).values() if isinstance(one, list))
    by = f"{fact['read_by']}, {fact.get('read_on', '')}" if "read_by" in fact else "proposed, not read"
    return {"kind": fact["kind"], "says": says, "scope": scope or "all", "page": str(fact.get("page", "")), "by": by}


def facts_from(typed: QueryDict, have: dict[str, Any], today: str) -> tuple[list[dict[str, Any]], int]:
    """The facts of a label with those of a form put in, and how many were. Raises Refused."""
    facts = [dict(fact) for fact in have.get("facts", ())]
    usual_page, by, count = typed.get("page", "").strip(), typed.get("read_by", "").strip() or who(), 0
    for name in KINDS:
        slug = name.replace(" ", "-")
        standing = typed.get(f"standing-{slug}", "")
        said = [one.strip() for one in typed.getlist(f"says-{slug}") if one.strip()]
        place = typed.get(f"page-{slug}", "").strip() or usual_page
        if not said and not standing:
            continue
        if standing and said:
            raise Refused(f"{words.ASK.get(name, name)}: either what it says or that it is not there, not both.")
        if standing == "not found" and not place:
            raise Refused(f"{words.ASK.get(name, name)}: which pages were looked at? For example 1-12.")
        scope = {"method": typed.getlist(f"for-{slug}")} if typed.getlist(f"for-{slug}") else {}
        read = {"page": place, "read_by": by, "read_on": today} | ({"scope": scope} if scope else {})
        facts = [f for f in facts if not (f["kind"] == name and f.get("scope", {}) == scope)]
        if standing:
            facts.append({"kind": name, "standing": standing, **read})
        facts += [{"kind": name, "says": one, **read} for one in said]
        count += 1
    return facts, count


def _register(body: dict[str, Any], typed: QueryDict, state: str, today: str) -> None:
    """Write down whether the state's list has the product, where someone looked."""
    answer = typed.get("registered", "")
    if answer not in ("yes", "no") or not state:
        return
    rest = [row for row in body.get("registered", ()) if row["state"] != state]
    looked = {"state": state, "registered": answer == "yes", "looked_by": typed.get("read_by", "").strip() or who(),
              "looked_on": today}  # fmt: skip
    body["registered"] = [*rest, looked]
