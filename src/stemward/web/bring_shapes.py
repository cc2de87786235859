"""Shapes of a file brought in as outlines of patches or as things to keep from harm."""

from collections.abc import Mapping
from dataclasses import dataclass

from stemward.gate.foreign import Layer, LeftOut, shape_in_metres
from stemward.gate.foreign.match import bare
from stemward.gate.text import clean
from stemward.kinds import SPARED
from stemward.notebook import edits
from stemward.notebook.changes import Edit, Refused
from stemward.notebook.worked import Known

NAMES = ("name", "label", "patch", "title", "id", "tag")
"""Headings under which a shape's name is looked for, the first first (common practice, no source)."""
KINDS = SPARED.column("kind").choices
Origin = tuple[float, float] | None


@dataclass(frozen=True)
class Brought:
    """Edits that bring shapes in, how many they are, what was left out, and the origin that degrees were turned by."""

    edits: list[Edit]
    count: int
    left_out: tuple[LeftOut, ...]
    origin: Origin


def shapes_in(layer: Layer, known: Known, what: str, asked: Mapping[str, str]) -> Brought:
    """The shapes of a layer as `what`: "outlines" or "kept". Raises Refused for a kind that is not known."""
    kind = asked.get("kept_kind", "tree")
    if kind not in KINDS:
        raise Refused(f"There is no kind of thing called {clean(kind)}.")
    origin = known.land.origin
    if layer.degrees and origin is None:
        origin = _corner(layer)
    names, found, left = _names(layer), [], []
    taken = {one: set(edits.keys_of(known.parts, one)) for one in ("patch", "spared")}
    for number, (shape, line, name) in enumerate(zip(layer.shapes, layer.lines, names, strict=True), 1):
        if shape is None:
            left.append(LeftOut(line, "left.no_shape"))
        elif what == "outlines" and shape.kind != "polygon":
            left.append(LeftOut(line, "left.no_area"))
        elif what == "outlines":
            named = name or f"Patch {len(taken['patch']) + 1}"
            key = _key(named, taken["patch"])
            geometry = shape_in_metres(shape, layer, origin)
            feature = {"type": "Feature", "properties": {"id": key}, "geometry": geometry}
            found += [Edit("patch", key, {"id": key, "name": named}), Edit("outline", key, feature)]
        else:
            key = _key(name or f"{kind} {number}", taken["spared"])
            properties = {"id": key, "kind": kind, "note": name, "species": asked.get("kept_plant", "").strip()}
            told = {name: value for name, value in properties.items() if value}
            geometry = shape_in_metres(shape, layer, origin)
            found.append(Edit("spared", key, {"type": "Feature", "properties": told, "geometry": geometry}))
    return Brought(found, len(layer.shapes) - len(left), tuple(left), origin if layer.degrees else None)


def _corner(layer: Layer) -> Origin:
    """The south-west corner of all shapes, to a tenth of a metre."""
    spots = [corner for shape in layer.shapes if shape for ring in shape.rings for corner in ring]
    return (round(min(y for _, y in spots), 6), round(min(x for x, _ in spots), 6)) if spots else None


def _names(layer: Layer) -> list[str]:
    heads = [bare(heading) for heading in layer.headings]
    at = next((heads.index(word) for word in NAMES if word in heads), None)
    return [clean(row[at], 40) if at is not None else "" for row in layer.rows]


def _key(name: str, taken: set[str]) -> str:
    key = edits.free_key(name, taken)
    taken.add(key)
    return key
