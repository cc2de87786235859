"""Land: what is there, what is to be kept from harm, drawn, counted, listed."""

import json
from typing import Any

import numpy as np
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from stemward.gate.pieces import STEM_COLUMNS, Parts
from stemward.handbook import load
from stemward.kinds import STEMS, Tract
from stemward.ledger.duties import duties_of, keep_until_of
from stemward.ledger.records import records
from stemward.notebook import edits, worked
from stemward.notebook.changes import Asked, Edit, Refused, change
from stemward.notebook.entries import set_aside
from stemward.notebook.models import Tract as Row
from stemward.say.en.forms import OPTIONS
from stemward.units import UnitError, convert, read
from stemward.web import background, clock, forms, steps
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of

PAGE_ROWS = 1000
"""Rows of the stem sheet sent at a time."""
KEPT_ASKED = (
    ("tree", "Trees I want to keep", True),
    ("small plants", "Flowers, grass or small plants beneath", False),
    ("water", "Water: stream, pond, ditch", False),
    ("well", "A well or spring", False),
    ("garden", "A garden", False),
    ("building", "A building", False),
    ("boundary", "A neighbor's land", False),
)
"""What the first screens and the patch page ask about: kind, words, and whether a plant is named with it."""


def ask(request: HttpRequest, tract_id: str, verb: str, **what: Any) -> None:
    """Make a change that a form asks for. Raises Refused."""
    change(Asked(request.POST["command"], tract_id, who(), verb, **what), clock.now())


def overview(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Everything on the land, by patch, beside the drawing."""
    land = known_of(tract_id).land
    book = load()
    answer = page(
        request, "web/land.html", tract_id, "land",
        patches=[patch_words(land, one.id, book) for one in land.patches],
        people=land.people, vessels=land.vessels, measures=land.measures, calibrations=land.calibrations,
        kept=_kept_groups(land, book), stem_count=len(land.stems),
    )  # fmt: skip
    return background.with_policy(answer, tract_id)


def _kept_groups(land: Tract, book: Any) -> list[dict[str, Any]]:
    """What is kept, alike things together."""
    groups: dict[str, list[dict[str, Any]]] = {}
    for one in land.spared:
        words = _kept_words(one, book)
        groups.setdefault(words["plant"] or words["kind"], []).append(words)
    return [{"name": name, "rows": rows} for name, rows in groups.items()]


def patch_words(land: Tract, patch_id: str, book: Any) -> dict[str, Any]:
    """A patch with its plants by species and size class."""
    patch = land.patch(patch_id)
    stems = land.stems
    rows = np.flatnonzero(stems.patch == patch_id)
    plants = []
    for latin in dict.fromkeys(stems.species[rows].tolist()):
        own = rows[stems.species[rows] == latin]
        sizes = stems.diameter_cm[own] / convert(1.0, "in", "cm")
        count = stems.stems[own]
        bands = ((0, 1), (1, 3), (3, 6), (6, np.inf))
        plants.append(
            {
                "latin": latin,
                "common": book.species[latin].common,
                "classes": [int(count[(sizes > low) & (sizes <= high)].sum()) for low, high in bands],
                "count": int(count.sum()),
                "cut": int(count[stems.state[own] == "cut"].sum()),
            }
        )
    return {
        "id": patch.id,
        "name": patch.name,
        "places": ", ".join(OPTIONS.get(one, one) for one in patch.places) or "kind of place not said",
        "plants": plants,
        "drawn": patch.shape is not None,
        "asked": patch_id in land.kept_asked,
        "aside": set_aside(land, clock.today(land)).get(patch_id, ""),
        "plots": len({t.plot for t in land.plots if t.patch == patch_id}),
    }


def _kept_words(one: Any, book: Any) -> dict[str, Any]:
    plant = book.species[one.species].common if one.species in book.species else one.species
    return {"id": one.id, "kind": one.kind, "plant": plant, "note": one.note, "form": one.shape.kind}


def step(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The next step alone, for a page that came before it was worked out."""
    known_of(tract_id)
    found = steps.step_of(tract_id, units_of(request), 0.1)
    return render(request, "web/step_later.html", {"step": found, "tract_id": tract_id})


def about(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Facts of the tract itself."""
    return _form(request, tract_id, "tract", "", "About this land", reverse("land", args=[tract_id]))


def piece(request: HttpRequest, tract_id: str, kind: str, key: str = "") -> HttpResponse:
    """A person, bottle, measure, calibration or something kept: seen, changed, added or taken away."""
    titles = {"person": "Someone who works here", "vessel": "A bottle or tank", "measure": "A measure",
              "calibration": "What one squirt gives", "spared": "Keep from harm"}  # fmt: skip
    if kind not in titles or (kind == "spared" and not key):
        raise Http404
    return _form(request, tract_id, kind, key, titles[kind], reverse("land", args=[tract_id]) + "#people")


def _form(request: HttpRequest, tract_id: str, kind: str, key: str, title: str, back: str) -> HttpResponse:
    """The form of one piece. Taking away needs no question back: undo brings it again."""
    parts = known_of(tract_id).parts
    have = edits.body_of(parts, kind, key)
    if have is None and (key or kind == "tract"):
        raise Http404
    lines: list[str] = []
    typed = None
    if request.method == "POST":
        typed = request.POST
        try:
            _keep(request, tract_id, parts, kind, key, have)
            return redirect(back)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    fields = forms.fields_of(kind, have or {}, typed)
    return page(
        request, "web/piece.html", tract_id, "land", title=title, fields=fields, lines=lines, back=back,
        has_more=any(f["more"] for f in fields), more_open=bool(lines), can_go=bool(key),
        status=422 if lines else 200,
    )  # fmt: skip


def _keep(request: HttpRequest, tract_id: str, parts: Parts, kind: str, key: str, have: dict[str, Any] | None) -> None:
    named = {"person": "role", "vessel": "id", "measure": "id", "calibration": "tool"}
    if "take-away" in request.POST:
        ask(request, tract_id, "take away", words={"what": key}, edits=[Edit(kind, key, None)])
        return
    body = forms.body_from(kind, have or {}, request.POST)
    new = key
    if kind in named:
        new = str(body.get(named[kind], "")).strip() or "?"
        if new != key and new in edits.keys_of(parts, kind):
            raise Refused(f"There is another of the name {new}.")
    changes = [Edit(kind, key, None)] if have is not None and new != key else []
    what = new or str(body.get("name", "the land"))
    ask(request, tract_id, "put" if have is not None else "add", words={"what": what},
        edits=[*changes, Edit(kind, new, body)])  # fmt: skip


def add_patch(request: HttpRequest, tract_id: str) -> HttpResponse:
    """A new patch."""
    parts = known_of(tract_id).parts
    lines: list[str] = []
    if request.method == "POST":
        body = forms.body_from("patch", {}, request.POST)
        key = edits.new_key(parts, "patch", str(body.get("name", "")))
        try:
            ask(request, tract_id, "add", words={"what": body.get("name", key)},
                edits=[Edit("patch", key, {"id": key, **body})])  # fmt: skip
            return redirect("patch", tract_id, key)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    fields = forms.fields_of("patch", {}, request.POST if lines else None)
    return page(
        request, "web/piece.html", tract_id, "land", title="A new patch", fields=fields, lines=lines, has_more=True,
        more_open=False, back=reverse("land", args=[tract_id]), status=422 if lines else 200,
    )  # fmt: skip


def patch(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """One patch: its facts, plants, what is kept near it, plots."""
    known = known_of(tract_id)
    have = edits.body_of(known.parts, "patch", patch)
    if have is None:
        raise Http404
    lines: list[str] = []
    if request.method == "POST":
        try:
            if "take-away" in request.POST:
                gone, stems_gone = edits.without_patch(known.parts, patch)
                ask(
                    request,
                    tract_id,
                    "take away",
                    words={"what": have.get("name", patch)},
                    edits=gone,
                    taken=stems_gone,
                )
                return redirect("land", tract_id)
            body = forms.body_from("patch", have, request.POST)
            ask(request, tract_id, "put", words={"what": body.get("name", patch)}, edits=[Edit("patch", patch, body)])
            return redirect("patch", tract_id, patch)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    return _patch_page(request, tract_id, patch, lines, request.POST if lines else None)


def _patch_page(
    request: HttpRequest, tract_id: str, patch: str, lines: list[str], typed: Any = None, **more: Any
) -> HttpResponse:
    known = known_of(tract_id)
    have = edits.body_of(known.parts, "patch", patch) or {}
    fields = forms.fields_of("patch", have, typed)
    book = load()
    return page(
        request, "web/patch.html", tract_id, "land",
        patch=patch_words(known.land, patch, book), fields=fields, has_more=True, more_open=False, lines=lines,
        classes=edits.CLASSES, heights=edits.HEIGHTS, kept_asked=KEPT_ASKED, plants_known=plants_known(book),
        status=422 if lines else 200, **more,
    )  # fmt: skip


def plants_known(book: Any) -> list[str]:
    """Names that can be typed for a plant, for the list that helps typing."""
    return sorted({species.common for species in book.species.values()})


@require_POST
def count(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """Plants counted by size."""
    known = known_of(tract_id)
    try:
        rows = counted_rows(request, known.parts, patch)
        ask(request, tract_id, "count", words={"count": sum(int(r[STEM_COLUMNS.index("stems")]) for r in rows)},
            added=rows)  # fmt: skip
    except Refused as refused:
        return _patch_page(request, tract_id, patch, [*refused.lines, "Nothing was changed."], count_typed=request.POST)
    return redirect(reverse("patch", args=[tract_id, patch]))


def counted_rows(request: HttpRequest, parts: Parts, patch: str) -> list[tuple[str, ...]]:
    """Rows for the counts of a form. Raises Refused for what is no count or no plant."""
    species = request.POST.get("species", "").strip()
    if not species:
        raise Refused("Which plant? Write its common or Latin name.")
    counts = {}
    for one in edits.CLASSES:
        typed = request.POST.get(one.name, "").strip()
        if typed and not (typed.isascii() and typed.isdigit() and len(typed) <= 5):
            raise Refused(f"Not understood: {typed}. Write a whole number of stems, for example 12.")
        counts[one.name] = int(typed or 0)
    if not any(counts.values()):
        raise Refused("No number was given. Write how many there are of at least one size.")
    height, state = request.POST.get("height", ""), request.POST.get("state", "standing")
    return edits.counted(parts, patch, species, counts, height, "cut" if state == "cut" else "standing")


@require_POST
def kept(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """What must not be harmed near a patch, by distance; or that someone looked and knows of none."""
    known = known_of(tract_id)
    try:
        near = kept_from(request)
        more = edits.kept_at(known.parts, patch, near) if near else []
        ask(request, tract_id, "put", words={"what": "what is kept from harm"},
            edits=[*more, edits.asked_kept(known.parts, patch)])  # fmt: skip
    except Refused as refused:
        return _patch_page(request, tract_id, patch, [*refused.lines, "Nothing was changed."])
    return redirect(reverse("patch", args=[tract_id, patch]) + "#kept")


def kept_from(request: HttpRequest) -> list[tuple[str, str, float]]:
    """Kind, plant and distance (m) of what a form ticks. Raises Refused for a distance that cannot be read."""
    found = []
    for kind, words, plant in KEPT_ASKED:
        if kind not in request.POST.getlist("kept"):
            continue
        typed = request.POST.get(f"far-{kind}", "").strip()
        if not typed:
            raise Refused(f"How far is it? {words}: give the nearest, for example 30 ft.")
        try:
            found.append((kind, request.POST.get("kept-plant", "").strip() if plant else "",
                          read(typed, "length", "ft").to("m")))  # fmt: skip
        except UnitError as error:
            raise Refused(str(error)) from None
    return found


def plots(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """Sample plots of a patch: laid out, tallied, worked out."""
    from stemward.web.plots import plots_page

    return plots_page(request, tract_id, patch)


@require_GET
def plot_file(request: HttpRequest, tract_id: str, patch: str, what: str) -> HttpResponse:
    """Plots as GPX, or the sheet to carry."""
    from stemward.web.plots import plots_file

    return plots_file(request, tract_id, patch, what)


@require_GET
def drawing(request: HttpRequest, tract_id: str) -> JsonResponse:
    """What the drawing shows, metres."""
    land = known_of(tract_id).land
    stems, book = land.stems, load()
    names = dict.fromkeys(stems.species.tolist())
    common = {name: book.species[name].common for name in names}
    return JsonResponse(
        {
            "patches": [
                {"id": p.id, "name": p.name, "rings": p.shape.rings} for p in land.patches if p.shape is not None
            ],
            "stems": {
                "id": stems.id.tolist(),
                "x": stems.x_m.round(2).tolist(),
                "y": stems.y_m.round(2).tolist(),
                "cm": stems.diameter_cm.round(1).tolist(),
                "species": [common[name] for name in stems.species.tolist()],
                "state": stems.state.tolist(),
            },
            "spared": [
                {"id": s.id, "kind": s.kind, "name": s.note or s.kind, "form": s.shape.kind, "rings": s.shape.rings}
                for s in land.spared
            ],
            "all": [{"id": p.id, "name": p.name, "drawn": p.shape is not None} for p in land.patches],
            "background": background.shown(tract_id, land.origin),
        }
    )


@require_POST
def draw(request: HttpRequest, tract_id: str) -> JsonResponse:
    """Something drawn: a patch, a plant to treat, or something kept."""
    parts = known_of(tract_id).parts
    try:
        asked = json.loads(request.body)
        edit_list, moved, rows, what = _drawn(parts, asked)
        wanted = Asked(str(asked["command"]), tract_id, who(), "draw", {"what": what}, edit_list, moved, rows)
        change(wanted, clock.now())
    except (ValueError, KeyError, TypeError, IndexError):
        return JsonResponse({"sentence": "The drawing was not understood. Nothing was changed."}, status=400)
    except Refused as refused:
        return JsonResponse({"sentence": " ".join([*refused.lines, "Nothing was changed."])}, status=422)
    return JsonResponse({"reload": True})


Drawn = tuple[list[Edit], list[tuple[str, tuple[str, ...]]], list[tuple[str, ...]], str]
"""Edits, stems that are moved by it, new stems, and what it is."""


def _drawn(parts: Parts, asked: dict[str, Any]) -> Drawn:
    rings = [[[round(float(x), 2), round(float(y), 2)] for x, y in ring] for ring in asked["rings"]]
    if not rings or not all(rings):
        raise ValueError("a drawing without corners")
    if asked["what"] == "stem":
        return [], [], [_drawn_stem(parts, asked, rings[0][0])], "a plant to treat"
    if asked["what"] == "patch":
        key = str(asked.get("id") or "")
        added = []
        if key and edits.body_of(parts, "patch", key) is None:
            raise Refused(f"There is no patch {key} any more.")
        if not key:
            name = str(asked.get("name") or f"Patch {len(edits.keys_of(parts, 'patch')) + 1}")
            key = edits.new_key(parts, "patch", name)
            added = [Edit("patch", key, {"id": key, "name": name})]
        outline, moved = edits.outlined(parts, key, {"type": "Polygon", "coordinates": _closed(rings)})
        return [*added, *outline], moved, [], f"the outline of {key}"
    kind = str(asked.get("kind") or {"point": "tree", "line": "water", "polygon": "small plants"}[asked["form"]])
    key = str(asked.get("id") or edits.new_key(parts, "spared", kind))
    shapes = {"point": ("Point", rings[0][0]), "line": ("LineString", rings[0]), "polygon": ("Polygon", _closed(rings))}
    name, coordinates = shapes[asked["form"]]
    have = edits.body_of(parts, "spared", key) or {"type": "Feature", "properties": {"id": key, "kind": kind}}
    body = {**have, "geometry": {"type": name, "coordinates": coordinates}}
    return [Edit("spared", key, body)], [], [], f"{kind} to keep"


def _closed(rings: list[list[list[float]]]) -> list[list[list[float]]]:
    return [ring if ring[0] == ring[-1] else [*ring, ring[0]] for ring in rings]


def _drawn_stem(parts: Parts, asked: dict[str, Any], spot: list[float]) -> tuple[str, ...]:
    """A stem where it was drawn; plant and size as the last one had, to be changed on its row."""
    patch = _patch_at(parts, spot)
    last = dict(zip(STEM_COLUMNS, parts.stems[-1], strict=True)) if len(parts.stems) else {}
    species = str(asked.get("species") or last.get("species", ""))
    if not species or not patch:
        raise Refused("Draw a patch first, and count or list one plant, so that its name and size are known.")
    size = last.get("diameter_in") or "2"
    return edits.stem_row(
        id=edits.new_stem_ids(parts, 1, "d")[0], patch=patch, species=species, x_m=f"{spot[0]:g}", y_m=f"{spot[1]:g}",
        diameter_in=str(asked.get("diameter_in") or size), measured_at="stump", state="standing",
    )  # fmt: skip


def _patch_at(parts: Parts, spot: list[float]) -> str:
    from shapely.geometry import Point, shape

    for one in parts.pieces:
        if one.kind == "outline" and shape(one.body["geometry"]).buffer(1e-6).contains(Point(spot)):
            return one.key
    keys = edits.keys_of(parts, "patch")
    return keys[0] if len(keys) == 1 else ""


def stems(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every stem as a sheet."""
    land = known_of(tract_id).land
    return page(request, "web/stems.html", tract_id, "land", count=len(land.stems))


@require_GET
def stem_rows(request: HttpRequest, tract_id: str) -> JsonResponse:
    """Rows of the sheet, as typed."""
    parts = known_of(tract_id).parts
    first = max(0, int(request.GET.get("offset", "0") or 0)) if request.GET.get("offset", "0").isdigit() else 0
    limit = request.GET.get("limit", "")
    most = min(int(limit), 50_000) if limit.isdigit() else 50_000
    rows = parts.stems[first : first + most]
    columns = [
        {"name": c.name, "words": c.name.replace("_", " "), "type": c.type, "unit": c.unit, "choices": list(c.choices)}
        for c in STEMS.columns
    ]
    return JsonResponse(
        {"columns": columns, "rows": [list(row) for row in rows], "ids": [row[0] for row in rows],
         "total": len(parts.stems), "offset": first}
    )  # fmt: skip


@require_POST
def stem_edit(request: HttpRequest, tract_id: str) -> JsonResponse:
    """Cells changed, rows added or taken away on the sheet, as one change."""
    parts = known_of(tract_id).parts
    try:
        asked = json.loads(request.body)
        cells, added, taken = _sheet(parts, asked)
        verb, many = (
            ("take stems", len(taken)) if taken and not cells and not added else ("stems", len(cells) + len(added))
        )
        change(
            Asked(str(asked["command"]), tract_id, who(), verb, {"count": many}, (), cells, added, taken), clock.now()
        )
    except (ValueError, KeyError, TypeError, IndexError, AttributeError):
        return JsonResponse({"sentence": "The change was not understood. Nothing was changed."}, status=400)
    except Refused as refused:
        return JsonResponse({"sentence": " ".join([*refused.lines, "Nothing was changed."])}, status=422)
    return JsonResponse({"reload": True, "total": len(known_of(tract_id).parts.stems)})


def _sheet(
    parts: Parts, asked: dict[str, Any]
) -> tuple[list[tuple[str, tuple[str, ...]]], list[tuple[str, ...]], list[str]]:
    """Changed stems, new rows and ids to take away. Raises Refused where a cell was changed elsewhere meanwhile."""
    by_id = {row[0]: row for row in parts.stems}
    changed: dict[str, list[str]] = {}
    for cell in asked.get("cells", ()):
        key, at = str(cell["id"]), STEM_COLUMNS.index(cell["column"])
        if key not in by_id:
            raise Refused(f"There is no stem {key} any more.")
        if "was" in cell and by_id[key][at] != cell["was"]:
            raise Refused(f"{cell['column']} of stem {key} was changed elsewhere meanwhile, to {by_id[key][at]}.")
        changed.setdefault(key, list(by_id[key]))[at] = str(cell["value"]).strip()
    rows = [
        edits.stem_row(**{k: str(v).strip() for k, v in row.items() if k in STEM_COLUMNS})
        for row in asked.get("rows", ())
    ]
    missing = [n for n, row in enumerate(rows) if not row[0]]
    for n, key in zip(missing, edits.new_stem_ids(parts, len(missing), "n"), strict=True):
        rows[n] = (key, *rows[n][1:])
    return [(key, tuple(cells)) for key, cells in changed.items()], rows, [str(one) for one in asked.get("delete", ())]


@require_POST
def remove(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Put a tract among those removed; it can be brought back for 30 days. Not while its records are to be kept."""
    land = known_of(tract_id).land
    keep = [day for record in records(land) if (day := keep_until_of(duties_of(record, land, load())))]
    example = Row.objects.values_list("example", flat=True).get(id=tract_id)
    if keep and max(keep) > clock.today(land) and not example:
        raise Refused(f"Records of what was treated here are to be kept until {max(keep)}, so this land stays.")
    Row.objects.filter(id=tract_id).update(removed_at=clock.now())
    worked.forget()
    return redirect("opening")
