"""A list or GPS file of stems: looked at, matched, brought in, with a report of what was left out and why."""

from collections import Counter
from typing import Any

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.urls import reverse

from stemward.gate.foreign import Layer, LeftOut, guess, look, take_stems
from stemward.gate.foreign.match import SIZE, bare
from stemward.gate.problems import Unreadable
from stemward.handbook import load
from stemward.kinds import STEMS
from stemward.notebook import edits
from stemward.notebook.changes import Asked, Edit, Refused, change
from stemward.notebook.models import Kept
from stemward.notebook.worked import Known
from stemward.say.en.bring import BRING, LEFT
from stemward.say.problems import problem_sentence
from stemward.web import clock
from stemward.web.bring_shapes import KINDS, shapes_in
from stemward.web.door import who
from stemward.web.frame import known_of, page
from stemward.web.kept import kept_lately, lately
from stemward.web.progress import far, teller

REMEMBERED = "import columns"
SAMPLE = 8
MOST_LEFT_SHOWN = 100
ASKED = (
    "id",
    "patch",
    "species",
    "x_m",
    "y_m",
    "diameter_in",
    "diameter_cm",
    SIZE,
    "stems",
    "height_m",
    "state",
    "note",
)
"""Columns that are matched, in the order they are asked."""


def bring_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Choose a file; match its columns; bring it in."""
    known_of(tract_id)
    if request.method != "POST":
        return _choose(request, tract_id, [])
    if "token" in request.POST:
        return _bring(request, tract_id)
    upload = request.FILES.get("file")
    if upload is None:
        return _choose(request, tract_id, ["Choose a file first."])
    try:
        layers = look(upload.read(), upload.name or "the file")
    except Unreadable as unreadable:
        return _choose(request, tract_id, [problem_sentence(one) for one in unreadable.problems])
    token = request.POST["command"]
    kept_lately("brought", (tract_id, token), lambda: layers)
    return _match(request, tract_id, token, layers, [])


def bring_progress(request: HttpRequest, tract_id: str) -> HttpResponse:
    """How far a list that is being brought in has come, for the page that waits."""
    known_of(tract_id)
    now = far(request.GET.get("of", ""))
    return JsonResponse({"words": "", "done": 0, "of": 0} if now is None else now._asdict())


def _choose(request: HttpRequest, tract_id: str, lines: list[str]) -> HttpResponse:
    lines = [*lines, "Nothing was changed."] if lines else []
    return page(request, "web/import.html", tract_id, "land", lines=lines, asked=request.GET or request.POST,
                status=422 if lines else 200)  # fmt: skip


def _remembered() -> dict[str, str]:
    return dict(Kept.objects.filter(name=REMEMBERED).values_list("body", flat=True).first() or {})


def _layer(layers: tuple[Layer, ...], typed: Any) -> int:
    number = str(typed.get("layer", "0"))
    return min(int(number), len(layers) - 1) if number.isdigit() else 0


def _match(
    request: HttpRequest, tract_id: str, token: str, layers: tuple[Layer, ...], lines: list[str]
) -> HttpResponse:
    """The first rows, and for each column the heading that is probably meant."""
    number = _layer(layers, request.POST)
    layer, land = layers[number], known_of(tract_id).land
    found = guess(layer.headings, _remembered())
    shaped = any(shape is not None for shape in layer.shapes)
    rows = [
        {"name": name, "words": _words_of(name), "options": [(h, found.get(name) == h) for h in layer.headings]}
        for name in ASKED
        if not (shaped and name in ("x_m", "y_m"))
    ]
    asked = request.POST
    only_patch = land.patches[0].id if len(land.patches) == 1 else ""
    return page(
        request, "web/import_match.html", tract_id, "land",
        layers=[(n, one.name, len(one.rows)) for n, one in enumerate(layers)],
        number=number, layer=layer, sample=layer.rows[:SAMPLE], columns=rows, token=token, lines=lines,
        count=len(layer.rows), shaped=shaped, kinds=KINDS, what=asked.get("what", "stems"),
        unit_asked=SIZE in found, patches=land.patches, plants=_plants(),
        patch=asked.get("patch") or only_patch, species=asked.get("species", ""), first=asked.get("first", ""),
        species_found="species" in found, patch_found="patch" in found, status=422 if lines else 200,
    )  # fmt: skip


def _plants() -> list[str]:
    return sorted({species.common for species in load().species.values()})


def _words_of(name: str) -> str:
    if name == SIZE:
        return "size across, whose unit you say below"
    column = STEMS.column(name)
    return f"{column.meaning} ({column.unit})" if column.unit else column.meaning


def _bring(request: HttpRequest, tract_id: str) -> HttpResponse:
    token = request.POST["token"]
    layers: tuple[Layer, ...] | None = lately("brought", (tract_id, token))
    if layers is None:
        return _choose(request, tract_id, ["The file is not at hand any more. Choose it again."])
    if "look-again" in request.POST:
        return _match(request, tract_id, token, layers, [])
    layer = layers[_layer(layers, request.POST)]
    if request.POST.get("what", "stems") != "stems":
        return _bring_shapes(request, tract_id, token, layers, layer)
    columns = {name: request.POST[f"column-{name}"] for name in ASKED if request.POST.get(f"column-{name}")}
    fixed = {key: request.POST.get(f"fixed-{key}", "").strip() for key in ("patch", "species", "unit", "measured_at")}
    fixed = {key: value for key, value in fixed.items() if value} | {"stems": "1", "state": "standing"}
    known = known_of(tract_id)
    tell = teller(request.POST["command"])
    tell(BRING["comparing"].format(count=len(layer.rows)), 0, 0)
    try:
        if not any(name in columns for name in ("diameter_in", "diameter_cm", SIZE)):
            raise Refused("Which heading holds the size across the stem?")
        taken = take_stems(
            layer, columns, fixed, known.land.origin, known.land.stems, load().find_species,
            {patch.id: patch.shape for patch in known.land.patches},
        )  # fmt: skip
        if not taken.rows:
            raise Refused("No row can be taken.", *_reasons(taken.left_out))
        changes = _origin(known, taken.origin)
        change(
            Asked(request.POST["command"], tract_id, who(), "import", {"count": len(taken.rows)}, changes,
                  added=taken.rows), clock.now(),
            lambda done, of: tell(BRING["writing"].format(done=done, of=of), done, of),
        )  # fmt: skip
    except Refused as refused:
        return _match(request, tract_id, token, layers, [*refused.lines, "Nothing was changed."])
    matches = _remembered() | {bare(heading): name for name, heading in columns.items()}
    Kept.objects.update_or_create(name=REMEMBERED, defaults={"body": matches})
    after = (
        reverse("first-screen", args=[tract_id, 6]) if request.POST.get("first") else reverse("land", args=[tract_id])
    )
    return _done(request, tract_id, len(taken.rows), taken.left_out, after)


def _done(request: HttpRequest, tract_id: str, count: int, left_out: tuple[LeftOut, ...], after: str) -> HttpResponse:
    """What came in, what did not, and why."""
    left = [{"line": one.line, "why": _why(one)} for one in left_out[:MOST_LEFT_SHOWN]]
    return page(
        request, "web/import_done.html", tract_id, "land", taken=count, left=left, left_count=len(left_out),
        reasons=_reasons(left_out), after=after,
    )  # fmt: skip


def _bring_shapes(
    request: HttpRequest, tract_id: str, token: str, layers: tuple[Layer, ...], layer: Layer
) -> HttpResponse:
    """Shapes as outlines of new patches, or as things to keep from harm."""
    known = known_of(tract_id)
    what = "outlines" if request.POST["what"] == "outlines" else "kept"
    try:
        found = shapes_in(layer, known, what, request.POST)
        if not found.count:
            raise Refused("Nothing can be taken.", *_reasons(found.left_out))
        words = {"what": BRING[what].format(count=found.count)}
        edit_list = [*_origin(known, found.origin), *found.edits]
        change(Asked(request.POST["command"], tract_id, who(), "add", words, edit_list), clock.now())
    except Refused as refused:
        return _match(request, tract_id, token, layers, [*refused.lines, "Nothing was changed."])
    return _done(request, tract_id, found.count, found.left_out, reverse("land", args=[tract_id]))


def _origin(known: Known, origin: tuple[float, float] | None) -> list[Edit]:
    """Where degrees are counted from, written down if the tract had none. Raises Refused where it lies nobody knows."""
    if origin is None or known.land.origin is not None:
        return []
    if edits.mapped(known.parts):
        raise Refused(BRING["no_origin"])
    body = edits.body_of(known.parts, "tract") or {}
    return [Edit("tract", "", body | {"origin": {"lat": origin[0], "lon": origin[1]}})]


def _why(one: LeftOut) -> str:
    values = dict(one.values)
    near = f"; perhaps {values['near']}" if values.get("near") else ""
    return LEFT[one.reason].format(**(values | {"near": near}))


def _reasons(left: tuple[LeftOut, ...]) -> list[str]:
    """How many rows were left out for each reason."""
    counts = Counter(_why(one) for one in left)
    return [f"{count} {'row' if count == 1 else 'rows'}: {why}" for why, count in counts.most_common(8)]
