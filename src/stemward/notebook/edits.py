"""What a person's wish comes to as edits of pieces and rows of stems. Pure functions: parts in, edits out."""

import math
import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from stemward.gate.pieces import STEM_COLUMNS, Parts, Piece
from stemward.handbook import load
from stemward.kinds import OthersRate
from stemward.kinds.land import COUNTED
from stemward.notebook.changes import Edit

APART_M = 1000.0
"""Patches that are counted and not mapped stand this far apart, so that none is near what another keeps."""
FT_M = 0.3048
NEAREST = "nearest, by its distance; not mapped"


@dataclass(frozen=True, slots=True)
class SizeClass:
    """A size class people count in, and the diameter that stands for it: its upper end, so no stem gets too little.

    Classes are those of the first screens; taking the upper end is common practice, no source.
    """

    name: str
    words: str
    diameter_in: str


CLASSES = (
    SizeClass("under1", "under 1 in", "1"),
    SizeClass("1to3", "1 to 3 in", "3"),
    SizeClass("3to6", "3 to 6 in", "6"),
    SizeClass("over6", "over 6 in", "9"),
)
HEIGHTS = {"knee": "0.5", "chest": "1.3", "over my head": "3", "a tree": "8"}
"""Metres for heights people name: engineering guess."""


def body_of(parts: Parts, kind: str, key: str = "") -> dict[str, Any] | None:
    """What a piece holds; None if there is none."""
    return next((p.body for p in parts.pieces if p.kind == kind and p.key == key), None)


def keys_of(parts: Parts, kind: str) -> list[str]:
    """Names of the pieces of a kind, in order."""
    return [p.key for p in parts.pieces if p.kind == kind]


def names_of(parts: Parts, species: str) -> list[str]:
    """What the choices of a tract call a plant, its Latin name first."""
    find = load().find_species
    said = {p.body["species"] for p in parts.pieces if p.kind == "choice"} - {species}
    return [species, *sorted(name for name in said if getattr(find(name), "latin", "") == species)]


def new_key(parts: Parts, kind: str, name: str, most: int = 30) -> str:
    """A short name for a new piece, made of what it is called, that no other of its kind has."""
    return free_key(name, set(keys_of(parts, kind)), most, kind)


def free_key(name: str, taken: Collection[str], most: int = 30, otherwise: str = "x") -> str:
    """A short name made of what something is called, that is not taken."""
    base = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:most] or otherwise
    key, number = base, 1
    while key in taken:
        number += 1
        key = f"{base}-{number}"
    return key


def rate_body(one: OthersRate) -> dict[str, Any]:
    """A kill rate of others as it stands in tract.toml; what is not told is left out."""
    body: dict[str, Any] = {
        "id": one.id, "whose": one.whose, "species": one.species, "method": one.method,
        "ingredients": list(one.ingredients), "works": one.works, "dead": one.dead, "seen": one.seen,
        "percent": one.percent, "ae_g_l": round(one.ae_g_l, 3), "months": one.months, "season": one.season,
        "share": f"{100 * one.share:g} %",
    }  # fmt: skip
    return {key: value for key, value in body.items() if value or key in ("dead", "share")}


def rate_edits(parts: Parts, found: Sequence[OthersRate]) -> list[Edit]:
    """New kill rates of others, each under a name that none has yet."""
    taken, made = set(keys_of(parts, "rates")), []
    for one in found:
        key = free_key(one.id, taken, 30, "r")
        taken.add(key)
        made.append(Edit("rates", key, rate_body(replace(one, id=key))))
    return made


def new_stem_ids(parts: Parts, count: int, lead: str = "c") -> list[str]:
    """Ids for new stems that no other has."""
    taken = {row[0] for row in parts.stems}
    ids: list[str] = []
    number = 0
    while len(ids) < count:
        number += 1
        if f"{lead}{number}" not in taken:
            ids.append(f"{lead}{number}")
    return ids


def spot_of(parts: Parts, patch: str) -> tuple[float, float]:
    """Where the plants of a patch stand that are counted and not mapped: in its outline, else a place of its own."""
    outline = body_of(parts, "outline", patch)
    if outline:
        from shapely.geometry import shape

        point = shape(outline["geometry"]).representative_point()
        return round(point.x, 2), round(point.y, 2)
    return APART_M * keys_of(parts, "patch").index(patch), 0.0


def mapped(parts: Parts) -> bool:
    """True if anything of a tract stands where it was drawn or measured, not just by count or distance."""
    note = STEM_COLUMNS.index("note")
    return any(
        piece.kind == "outline" or (piece.kind == "spared" and piece.body["properties"].get("note") != NEAREST)
        for piece in parts.pieces
    ) or any(row[note] != COUNTED for row in parts.stems)


def outlined(
    parts: Parts, patch: str, geometry: dict[str, Any]
) -> tuple[list[Edit], list[tuple[str, tuple[str, ...]]]]:
    """An outline for a patch, and all that was given by count or distance moved into it, so that distances hold.

    Edits, and stems by id as they are then.
    """
    outline = Edit("outline", patch, {"type": "Feature", "properties": {"id": patch}, "geometry": geometry})
    old = spot_of(parts, patch) if patch in keys_of(parts, "patch") else (math.nan, math.nan)
    new = spot_of(replace(parts, pieces=(Piece("outline", patch, outline.body or {}),)), patch)
    at = {name: STEM_COLUMNS.index(name) for name in ("id", "patch", "x_m", "y_m", "note")}
    stems = []
    for row in parts.stems:
        if row[at["patch"]] == patch and row[at["note"]] == COUNTED:
            cells = list(row)
            cells[at["x_m"]], cells[at["y_m"]] = (f"{value:g}" for value in new)
            stems.append((row[at["id"]], tuple(cells)))
    edits = [outline]
    for piece in parts.pieces:
        if piece.kind == "spared" and piece.body["properties"].get("note") == NEAREST:
            x, y = piece.body["geometry"]["coordinates"]
            if piece.key.startswith(f"{patch}-") and x == old[0]:
                point = {"type": "Point", "coordinates": [new[0], round(y + new[1] - old[1], 2)]}
                edits.append(Edit("spared", piece.key, {**piece.body, "geometry": point}))
    return edits, stems


def stem_row(**cells: str) -> tuple[str, ...]:
    """A row of stems.csv from named cells; the others are empty."""
    return tuple(cells.get(name, "") for name in STEM_COLUMNS)


def counted(
    parts: Parts, patch: str, species: str, counts: Mapping[str, int], height: str, state: str = "standing"
) -> list[tuple[str, ...]]:
    """Rows for plants counted by size: one row a class, standing for all its stems."""
    x_m, y_m = spot_of(parts, patch)
    classes = [one for one in CLASSES if counts.get(one.name, 0) > 0]
    return [
        stem_row(
            id=key, patch=patch, species=species, x_m=f"{x_m:g}", y_m=f"{y_m:g}", diameter_in=one.diameter_in,
            measured_at="stump", stems=str(counts[one.name]), height_m=HEIGHTS.get(height, ""), state=state,
            note=COUNTED,
        )
        for key, one in zip(new_stem_ids(parts, len(classes)), classes, strict=True)
    ]  # fmt: skip


def kept_at(parts: Parts, patch: str, near: Iterable[tuple[str, str, float]]) -> list[Edit]:
    """Pieces for what is to be kept near a patch: kind, plant ("" for none) and distance of the nearest, m.

    Without a map each stands at its distance from the plants, one beside the other.
    """
    x_m, y_m = spot_of(parts, patch)
    edits: list[Edit] = []
    taken = set(keys_of(parts, "spared"))
    for kind, plant, distance_m in near:
        key, number = f"{patch}-{kind.replace(' ', '-')}"[:36], 1
        while key in taken:
            number += 1
            key = f"{patch}-{kind.replace(' ', '-')}"[:33] + f"-{number}"
        taken.add(key)
        properties: dict[str, Any] = {"id": key, "kind": kind, "note": NEAREST}
        if plant:
            properties["species"] = plant
        point = {"type": "Point", "coordinates": [x_m, round(y_m + distance_m, 2)]}
        edits.append(Edit("spared", key, {"type": "Feature", "properties": properties, "geometry": point}))
    return edits


def asked_kept(parts: Parts, patch: str) -> Edit:
    """The tract with a patch among those for which someone has said what must not be harmed."""
    body = dict(body_of(parts, "tract") or {})
    said = [*body.get("kept_asked", ())]
    return Edit("tract", "", body | {"kept_asked": said if patch in said else [*said, patch]})


def without_patch(parts: Parts, patch: str) -> tuple[list[Edit], list[str]]:
    """A patch taken away with what stands on it: edits, and ids of its stems."""
    edits = [Edit("patch", patch, None)]
    if body_of(parts, "outline", patch):
        edits.append(Edit("outline", patch, None))
    for piece in parts.pieces:
        if piece.kind in ("choice", "tally") and piece.body.get("patch") == patch:
            edits.append(Edit(piece.kind, piece.key, None))
    body = dict(body_of(parts, "tract") or {})
    if patch in body.get("kept_asked", ()):
        edits.append(Edit("tract", "", body | {"kept_asked": [one for one in body["kept_asked"] if one != patch]}))
    at = STEM_COLUMNS.index("patch")
    return edits, [row[0] for row in parts.stems if row[at] == patch]


def choice_edits(parts: Parts, patch: str, names: Sequence[str], state: str, body: dict[str, Any] | None) -> list[Edit]:
    """Edits that leave one choice for a target: those under any of the plant's names go, the new one comes."""
    edits = [
        Edit("choice", p.key, None)
        for p in parts.pieces
        if p.kind == "choice"
        and p.body["patch"] == patch
        and p.body["species"] in names
        and p.body.get("state", "standing") == state
    ]
    if body is None:
        return edits
    key = "/".join((patch, str(body["species"]), state))
    return [*(one for one in edits if one.key != key), Edit("choice", key, body)]
