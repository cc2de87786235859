"""Read a label on the screen: its pages beside one question at a time. Nothing counts until a person has read it."""

from collections.abc import Mapping, Sequence
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from stemward.gate.fields import MOST_SIGNS_LONG
from stemward.gate.proposed import as_facts, fits, usable
from stemward.label import KINDS
from stemward.notebook import edits, worked
from stemward.notebook.changes import Edit, Refused
from stemward.notebook.entries import issued_code
from stemward.notebook.models import LabelFile
from stemward.say.en import label_read as words
from stemward.say.en.shelf import DECIDING, STANDINGS
from stemward.units import EXAMPLE
from stemward.web import clock, label_files
from stemward.web.door import who
from stemward.web.frame import known_of, page
from stemward.web.label_items import (
    Item,
    alike,
    answered,
    ask_words,
    differences,
    items_of,
    next_open,
    of_item,
    sentence_item,
)
from stemward.web.label_shown import named, shown
from stemward.web.tried import tried
from stemward.web.views.land import ask
from stemward.web.views.shelf import body_of, fact_words, label_page, order_of, wanted_kinds

Scope = dict[str, list[str]]


@require_POST
def send(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """Read a label's PDF, keep it, and keep what it may say as proposed."""
    have = body_of(tract_id, product)

    def act() -> HttpResponse:
        upload = request.FILES.get("label")
        if upload is None:
            raise Refused(words.NO_FILE)
        before = label_files.newest(tract_id, product)
        file, found = label_files.read_and_keep(tract_id, product, upload.read(), upload.name or "label.pdf")
        known = {(fact["kind"], str(fact.get("scope", {}))) for fact in label_files.facts_read(have)}
        kept = [fact for fact in have.get("facts", ()) if not fact.get("proposed")]
        new = [f for f in as_facts(usable(found.proposed)) if (f["kind"], str(f.get("scope", {}))) not in known]
        if new:
            told = words.PROPOSED.format(count=len(new), pages=found.pages)
            changed = [Edit("product", product, {**have, "facts": kept + new})]
            ask(request, tract_id, "put", words={"what": told}, edits=changed)
        if before is not None and before.digest != file.digest:
            return redirect("label-differs", tract_id, product)
        return redirect("label-read", tract_id, product)

    answer, lines = tried(request, act)
    return answer or label_page(request, tract_id, product, lines)


def file_of(tract_id: str, product: str) -> LabelFile:
    """The newest label file of a product. Raises Http404."""
    file = label_files.newest(tract_id, product)
    if file is None:
        raise Http404
    return file


def read(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """One question about the label, its place marked on the page; before the first, whether it is the jug's label."""
    have = body_of(tract_id, product)
    file = label_files.newest(tract_id, product)
    if file is None:
        # Without a file it is read from the booklet.
        slug = request.GET.get("kind", "").replace(" ", "-")
        return redirect(reverse("label", args=[tract_id, product]) + (f"#fact-{slug}" if slug else ""))
    if not file.confirmed:
        return same(request, tract_id, product)
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land), 0.1)
    wanted = wanted_kinds(plan, product)
    deciding = [*wanted, *(kind for kind in DECIDING if kind not in wanted)]
    items = items_of(file.reading, order_of(wanted), deciding)
    item = chosen(request, file, items, have.get("facts", ()))
    answer, lines = tried(request, lambda: keep(request, tract_id, product, have, file, item, items))
    if answer is not None:
        return answer
    return page(
        request, "web/label_read.html", tract_id, "shelf", status=422 if lines else 200, lines=lines,
        **shown(request, tract_id, product, have, file, items, item),
    )  # fmt: skip


def chosen(request: HttpRequest, file: LabelFile, items: Sequence[Item], facts: Sequence[Mapping[str, Any]]) -> Item:
    """The question asked for: by its name, a sentence made a fact, a kind; else the first that is open."""
    asked = {**request.GET.dict(), **request.POST.dict()}
    key, kind = asked.get("fact", ""), asked.get("kind", "")
    if key.startswith("s") and key[1:].isdigit():
        made = sentence_item(file.reading, int(key[1:]), kind or "strongest mix")
        if made:
            return made
    by_name = next((item for item in items if item.key == key), None)
    by_kind = next((item for item in items if item.kind == kind), None)
    first_open = next((item for item in items if not answered(item, facts)), items[0])
    return by_name or by_kind or first_open


def keep(
    request: HttpRequest, tract_id: str, product: str, have: dict[str, Any], file: LabelFile, item: Item,
    items: Sequence[Item],
) -> HttpResponse:  # fmt: skip
    """Write down what was answered, and go on to the next question. Raises Refused."""
    given = request.POST.get("answer", "")
    if given not in words.ANSWERS:
        raise Refused(words.NO_ANSWER)
    today = clock.today(known_of(tract_id).land).isoformat()
    by = request.POST.get("read_by", "").strip() or who()
    place = request.POST.get("page", "").strip() or (str(item.page) if item.page else "")
    scope = scope_of(request)
    base: dict[str, Any] = {"page": place, "read_by": by, "read_on": today} | ({"scope": scope} if scope else {})
    if item.said and given != "not there":
        base["words"] = item.said[:MOST_SIGNS_LONG]
    if item.force != "must" and given != "not there":
        base["force"] = item.force
    if given == "not there":
        pages = request.POST.get("looked", "").strip()
        if not pages:
            raise Refused(words.LOOKED_WHERE)
        new = [{**base, "kind": item.kind, "standing": "not found", "page": pages}]
    elif given == "no limit":
        if not KINDS[item.kind].no_limit:
            raise Refused(words.NO_SUCH)
        if not place:
            raise Refused(words.WHICH_PAGE)
        new = [{**base, "kind": item.kind, "standing": "no limit"}]
    else:
        new = [{**base, "kind": item.kind, "says": value} for value in values_of(request, item, given)]
        if not place:
            raise Refused(words.WHICH_PAGE)
    facts = [fact for fact in have.get("facts", ()) if not replaced(fact, item, scope)] + new
    told = f"{ask_words(item.kind).lower()}"
    ask(request, tract_id, "read", words={"what": told}, edits=[Edit("product", product, {**have, "facts": facts})])
    after = next_open(items, item, facts)
    address = reverse("label-read", args=[tract_id, product])
    return redirect(f"{address}?fact={after.key}#fact" if after else f"{address}?all=read#fact")


def replaced(fact: Mapping[str, Any], item: Item, scope: Scope) -> bool:
    """True for a fact in whose place the answer comes: of the same place, or of the same kind and scope."""
    if fact["kind"] != item.kind:
        return False
    same_scope = fact.get("scope", {}) == scope
    return of_item(fact, item) or (same_scope and (not KINDS[item.kind].many or bool(fact.get("standing"))))


def values_of(request: HttpRequest, item: Item, given: str) -> list[str]:
    """The values an answer holds. A figure that can hurt is typed; where it differs from the reader's it is asked for
    twice. Raises Refused."""
    typed = [one.strip() for one in request.POST.getlist("says") if one.strip()]
    if given == "says" and not item.typed:
        if not item.values:
            raise Refused(words.NOTHING_PROPOSED)
        return list(item.values)
    if not typed:
        raise Refused(words.TYPE_IT)
    for one in typed:
        if not fits(KINDS[item.kind], one):
            example = EXAMPLE.get(KINDS[item.kind].dimension, "")
            raise Refused(words.NOT_UNDERSTOOD.format(typed=one[:60], example=example))
    if item.typed and item.values and request.POST.get("again", "") != typed[0]:
        kind = KINDS[item.kind]
        if not any(alike(kind, typed[0], value) for value in item.values):
            raise Refused(words.DIFFERS.format(typed=typed[0], reader=", ".join(item.values), page=item.page))
    return typed


def scope_of(request: HttpRequest) -> Scope:
    """For what an answer is, as it was ticked."""
    found = {name: request.POST.getlist(f"for-{name}") for name in words.SCOPES}
    return {name: values for name, values in found.items() if values}


@require_GET
def picture(_request: HttpRequest, tract_id: str, product: str, digest: str, number: int) -> HttpResponse:
    """A page as a picture. A file never changes under its digest, so it may be kept by this browser."""
    known_of(tract_id)
    answer = HttpResponse(label_files.picture(tract_id, product, digest, number), content_type="image/png")
    answer["Cache-Control"] = "private, max-age=86400, immutable"
    return answer


def same(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """Is this the label of the jug? Its number and edition are compared before anything is read."""
    have, file = body_of(tract_id, product), file_of(tract_id, product)

    def act() -> HttpResponse | None:
        number, edition = (request.POST.get(name, "").strip() for name in ("number", "edition"))
        if not number:
            raise Refused(words.NUMBER_FIRST)
        if printed and not any(_basic(number) == _basic(one) for one in printed):
            raise Refused(words.OTHER_LABEL.format(jug=number, file=", ".join(printed)))
        file.confirmed = {"number": number, "edition": edition, "by": who(), "on": clock.now().isoformat()}
        file.save(update_fields=["confirmed"])
        if not have.get("number") and edits.body_of(known_of(tract_id).parts, "product", product) is not None:
            body = {**have, "number": number} | ({"edition_jug": edition} if edition else {})
            ask(
                request,
                tract_id,
                "put",
                words={"what": have.get("name", product)},
                edits=[Edit("product", product, body)],
            )
        return redirect("label-read", tract_id, product)

    printed = [one["value"] for one in file.reading["proposed"] if one["kind"] == "registration number"]
    editions = [one["value"] for one in file.reading["proposed"] if one["kind"] == "label edition"]
    confirming = request.method == "POST" and "number" in request.POST
    answer, lines = tried(request, act) if confirming else (None, [])
    return answer or page(
        request, "web/label_same.html", tract_id, "shelf", **named(tract_id, product),
        file=file, lines=lines, printed=printed, editions=editions,
        number=request.POST.get("number", have.get("number", "")),
        edition=request.POST.get("edition", have.get("edition_jug", "")), pictures=file.reading.get("pictures"),
        status=422 if lines else 200,
    )  # fmt: skip


def _basic(number: str) -> str:
    """The first two parts of a registration number: a distributor's third part is the same label."""
    return "-".join(number.replace("–", "-").replace(" ", "").split("-")[:2])


@require_GET
def part(request: HttpRequest, tract_id: str, product: str, number: int) -> HttpResponse:
    """One part of the label as large plain text."""
    file = file_of(tract_id, product)
    if not 0 <= number < len(file.reading["parts"]):
        raise Http404
    one = file.reading["parts"][number]
    return page(
        request, "web/label_part.html", tract_id, "shelf", **named(tract_id, product),
        part={**one, "words": words.PARTS.get(one["name"], one["name"])}, paragraphs=one["text"].split("\n"),
    )  # fmt: skip


@require_GET
def printed(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """The facts that were read, with pages, to print."""
    have = body_of(tract_id, product)
    read_facts = [fact_words(fact) | {"quote": fact.get("words", "")} for fact in label_files.facts_read(have)]
    return page(
        request, "web/label_facts.html", tract_id, "shelf", **named(tract_id, product),
        facts=read_facts, file=label_files.newest(tract_id, product), standings=STANDINGS, no_step=True,
    )  # fmt: skip


def differs(request: HttpRequest, tract_id: str, product: str) -> HttpResponse:
    """What a newer file of the label says otherwise, and what leans on it. Read facts that changed are asked again."""
    have, files = body_of(tract_id, product), label_files.files_of(tract_id, product)
    if len(files) < 2:
        return redirect("label-read", tract_id, product)
    rows = differences(files[-2].reading, files[-1].reading)
    touched = [fact for fact in label_files.facts_read(have) if any(_touches(row, fact) for row in rows)]

    def act() -> HttpResponse:
        kept = [fact for fact in have.get("facts", ()) if fact not in touched and not fact.get("proposed")]
        new = as_facts(usable([one for row in rows for one in row["now"]]))
        old = [fact for fact in have.get("facts", ()) if fact.get("proposed")]
        known = {(fact["kind"], str(fact.get("scope", {}))) for fact in new}
        rest = [fact for fact in old if (fact["kind"], str(fact.get("scope", {}))) not in known]
        body = {**have, "facts": kept + rest + new}
        if kept + rest + new != list(have.get("facts", ())):
            told = words.AGAIN.format(count=len(touched))
            ask(request, tract_id, "put", words={"what": told}, edits=[Edit("product", product, body)])
        return redirect("label-read", tract_id, product)

    answer, lines = tried(request, act)
    if answer is not None:
        return answer
    land = known_of(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land))
    treatments = [
        f"{t['common']}, {t['patch_name']}"
        for t in (plan or {}).get("treatments", ())
        if product in (t["product"], t["partner"])
    ]
    return page(
        request, "web/label_differs.html", tract_id, "shelf", product=land.product(product), key=product, lines=lines,
        was=files[-2], now=files[-1], touched=len(touched), treatments=treatments,
        issued=issued_code(land),
        rows=[
            {"ask": ask_words(row["kind"]), "scope": "; ".join(", ".join(v) for v in row["scope"].values()),
             "was": row["was"], "now": row["now"], "hurts": KINDS[row["kind"]].typed}
            for row in rows
        ],
    )  # fmt: skip


def _touches(row: Mapping[str, Any], fact: Mapping[str, Any]) -> bool:
    scope = {name: tuple(values) for name, values in fact.get("scope", {}).items() if isinstance(values, list | tuple)}
    return bool(row["kind"] == fact["kind"] and row["scope"] == scope)
