"""The first plan, one question a screen. Every answer is kept at once; a skipped one becomes something to find out."""

import uuid
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse

from stemward.gate.pieces import Parts, Piece
from stemward.handbook import Near, load
from stemward.notebook import edits
from stemward.notebook.changes import Edit, Refused
from stemward.notebook.models import Kept
from stemward.say.en.forms import OPTIONS
from stemward.units import UnitError, read
from stemward.web.frame import known_of, page
from stemward.web.views.land import KEPT_ASKED, ask, counted_rows, kept_from, plants_known
from stemward.web.views.opening import begin_tract
from stemward.web.views.shelf import add_product, ingredient_choices

LAST = 9
MINUTES_LEFT = {1: 10, 2: 9, 3: 8, 4: 7, 5: 5, 6: 4, 7: 3, 8: 2, 9: 1}
"""Minutes left at each screen: engineering guess, to be measured with people."""
MEASURES = (
    ("syringe", "a 5 mL syringe with 0.2 mL marks", {"mark": "0.2 mL", "capacity": "5 mL"}),
    ("measuring cup", "an 8 fl oz cup with half-ounce marks", {"mark": "1/2 fl oz", "capacity": "8 fl oz"}),
    ("quart measure", "a quart measure with ounce marks", {"mark": "1 fl oz", "capacity": "32 fl oz"}),
)


@dataclass(frozen=True)
class Begun:
    """What the screens speak of: the tract's parts, the patch and plant now asked about."""

    tract: str
    parts: Parts
    patch: str
    plant: str


def start(request: HttpRequest) -> HttpResponse:
    """Screen 1: where the land is. Answering or skipping makes the tract."""
    lines: list[str] = []
    if request.method == "POST":
        state, place = (request.POST.get(key, "").strip() for key in ("state", "place"))
        if "skip" in request.POST:
            state = place = ""
        body: dict[str, Any] = {"name": request.POST.get("name", "").strip() or "My land"}
        body |= {key: value for key, value in (("state", state), ("place", place)) if value}
        try:
            tract_id = begin_tract(Parts((Piece("tract", "", body),)), request.POST.get("command") or str(uuid.uuid4()))
            return redirect("first-screen", tract_id, 2)
        except Refused as refused:
            lines = [*refused.lines]
    return page(request, "web/first.html", lines=lines, number=1, minutes=MINUTES_LEFT[1], typed=request.POST,
                status=422 if lines else 200)  # fmt: skip


def screen(request: HttpRequest, tract_id: str, number: int) -> HttpResponse:
    """Screens 2 to 9."""
    if not 2 <= number <= LAST:
        raise Http404
    begun = _begun(tract_id)
    lines: list[str] = []
    if request.method == "POST":
        try:
            if "skip" not in request.POST and number in KEEP:
                KEEP[number](request, begun)
            return redirect(_next(tract_id, number, _begun(tract_id)))
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
        except UnitError as error:
            lines = [str(error), "Nothing was changed."]
    if number == LAST:
        return redirect(_next(tract_id, number, begun))
    book = load()
    return page(
        request, "web/first.html", tract_id, "", no_step=True, lines=lines, number=number,
        minutes=MINUTES_LEFT[number], typed=request.POST, begun=begun, who=_options("own", "hire", "public", "adviser"),
        places=_options("woods", "non-crop", "right-of-way", "pasture", "yard", "wet"), classes=edits.CLASSES,
        heights=edits.HEIGHTS, kept_asked=KEPT_ASKED, plants_known=plants_known(book),
        ingredients=ingredient_choices(book), measures=MEASURES, back=_back(tract_id, number),
        status=422 if lines else 200,
    )  # fmt: skip


def _options(*names: str) -> list[tuple[str, str]]:
    return [(name, OPTIONS[name]) for name in names]


def _back(tract_id: str, number: int) -> str:
    return reverse("first-screen", args=[tract_id, number - 1]) if number > 2 else reverse("about", args=[tract_id])


def _next(tract_id: str, number: int, begun: Begun) -> str:
    if number + 1 < LAST:
        return reverse("first-screen", args=[tract_id, number + 1])
    land = known_of(tract_id).land
    for latin in land.stems.species.tolist():
        state = "cut" if land.stems.state[0] == "cut" else "standing"
        return reverse("ways", args=[tract_id, str(land.stems.patch[0]), latin, state])
    return reverse("land", args=[tract_id])


def _memory(tract_id: str) -> str:
    return f"first {tract_id}"


def _begun(tract_id: str) -> Begun:
    parts = known_of(tract_id).parts
    body = Kept.objects.filter(name=_memory(tract_id)).values_list("body", flat=True).first() or {}
    patches = edits.keys_of(parts, "patch")
    patch = body.get("patch", "") if body.get("patch") in patches else (patches[-1] if patches else "")
    return Begun(tract_id, parts, patch, body.get("plant", ""))


def _remember(tract_id: str, **what: str) -> None:
    have = Kept.objects.filter(name=_memory(tract_id)).values_list("body", flat=True).first() or {}
    Kept.objects.update_or_create(name=_memory(tract_id), defaults={"body": {**have, **what}})


def _need_patch(request: HttpRequest, begun: Begun) -> tuple[str, list[Edit]]:
    """The patch asked about; where its screen was skipped, a new one of which nothing is known."""
    if begun.patch:
        return begun.patch, []
    del request
    key = edits.new_key(begun.parts, "patch", "patch 1")
    return key, [Edit("patch", key, {"id": key, "name": "First patch"})]


def _whose(request: HttpRequest, begun: Begun) -> None:
    body = dict(edits.body_of(begun.parts, "tract") or {})
    who = request.POST.get("who", "")
    if who:
        ask(
            request,
            begun.tract,
            "put",
            words={"what": "who does the work"},
            edits=[Edit("tract", "", body | {"who": who})],
        )


def _place(request: HttpRequest, begun: Begun) -> None:
    name = request.POST.get("name", "").strip() or "First patch"
    key = begun.patch or edits.new_key(begun.parts, "patch", name)
    have = edits.body_of(begun.parts, "patch", key) or {"id": key}
    places = [one for one in request.POST.getlist("places") if one]
    body = {**have, "name": name} | ({"places": places} if places else {})
    if request.POST.get("for_sale") in ("yes", "no"):
        body["answers"] = {**have.get("answers", {}), "for_sale": request.POST["for_sale"]}
    changes = [Edit("patch", key, body)]
    if request.POST.get("water") == "yes" and request.POST.get("water-far", "").strip():
        far_m = read(request.POST["water-far"].strip(), "length", "ft").to("m")
        pieces = Parts((*begun.parts.pieces, Piece("patch", key, body)), begun.parts.stems)
        changes += edits.kept_at(pieces if not begun.patch else begun.parts, key, [("water", "", far_m)])
    ask(request, begun.tract, "add" if not begun.patch else "put", words={"what": name}, edits=changes)
    _remember(begun.tract, patch=key)


def _plant(request: HttpRequest, begun: Begun) -> None:
    typed = request.POST.get("plant", "").strip()
    if not typed:
        raise Refused("Which plant? Write its name, or choose Skip.")
    found = load().find_species(typed)
    if isinstance(found, Near):
        meant = ", ".join(common for common, _ in found.candidates[:3])
        raise Refused(f"No plant of the name {typed} is known." + (f" Did you mean {meant}?" if meant else ""))
    if request.POST.get("sure") == "no":
        body = dict(edits.body_of(begun.parts, "tract") or {})
        unsure = [*body.get("unsure", ())]
        if found.common not in unsure:
            ask(request, begun.tract, "put", words={"what": f"that nobody is sure of {found.common}"},
                edits=[Edit("tract", "", body | {"unsure": [*unsure, found.common]})])  # fmt: skip
    _remember(begun.tract, plant=found.common)


def _many(request: HttpRequest, begun: Begun) -> None:
    patch, changes = _need_patch(request, begun)
    post = request.POST.copy()
    post["species"] = post.get("species", "").strip() or begun.plant
    request.POST = post  # type: ignore[assignment]
    if not any(post.get(one.name, "").strip() for one in edits.CLASSES):
        raise Refused("Count them by size, bring a file, or choose Skip.")
    parts = Parts((*begun.parts.pieces, *(Piece(e.kind, e.key, e.body or {}) for e in changes)), begun.parts.stems)
    rows = counted_rows(request, parts, patch)
    ask(request, begun.tract, "count", words={"count": len(rows)}, edits=changes, added=rows)


def _near(request: HttpRequest, begun: Begun) -> None:
    if not begun.patch:
        return
    none = request.POST.get("none") == "yes"
    near = [] if none else kept_from(request)
    if not near and not none:
        raise Refused("Tick what is there, or None that I know of, or choose Skip.")
    more = edits.kept_at(begun.parts, begun.patch, near)
    ask(request, begun.tract, "put", words={"what": "what is kept from harm"},
        edits=[*more, edits.asked_kept(begun.parts, begun.patch)])  # fmt: skip


def _jug(request: HttpRequest, begun: Begun) -> None:
    if request.POST.get("have") == "nothing":
        return
    add_product(request, begun.tract, request.POST)


def _with_what(request: HttpRequest, begun: Begun) -> None:
    changes = []
    people = request.POST.get("people", "").strip() or "1"
    if not people.isdigit() or not 1 <= int(people) <= 10:
        raise Refused(f"Not understood: {people}. Write how many people work, 1 to 10.")
    names = ["owner", *(f"helper {n}" for n in range(1, int(people)))]
    have = edits.keys_of(begun.parts, "person")
    changes += [
        Edit("person", name, {"role": name, "does": ["mix", "apply", "saw"] if name == "owner" else ["apply"]})
        for name in names
        if name not in have
    ]
    bottle = request.POST.get("bottle", "").strip()
    if bottle:
        changes.append(
            Edit("vessel", "squirt bottle", {"id": "squirt bottle", "capacity": bottle, "lining": "plastic"})
        )
    chosen = request.POST.getlist("measures")
    changes += [Edit("measure", name, {"id": name, **body}) for name, _, body in MEASURES if name in chosen]
    ask(request, begun.tract, "put", words={"what": "who works, with what"}, edits=changes)


KEEP: dict[int, Callable[[HttpRequest, Begun], None]] = {
    2: _whose, 3: _place, 4: _plant, 5: _many, 6: _near, 7: _jug, 8: _with_what,
}  # fmt: skip
"""What each screen's answer comes to."""
