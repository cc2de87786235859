"""A test patch: a target split into two arms, each a patch of its own with a flag, so that plan, sheets and records
keep them apart by themselves."""

import hashlib
from collections.abc import Collection

import numpy as np
from numpy.typing import NDArray

from stemward.gate.pieces import STEM_COLUMNS, Parts
from stemward.kinds import Stems
from stemward.kinds.land import ARMS, COUNTED
from stemward.notebook.changes import Edit, Refused
from stemward.notebook.edits import body_of, choice_edits, keys_of
from stemward.notebook.store import Cells
from stemward.reckon.arms import two_arms

LEAST_EACH = 5
"""Plants in an arm, under which nothing could be told apart: engineering guess."""
TOO_FEW = (
    "There are too few plants for two arms of {each}: at most {most} fit. Write a smaller number, {least} or more."
)
NOT_LISTED = (
    "These plants were counted by size, so nothing says which one is in which arm. List them one by one first: draw "
    "them on the land, type them in as a table, or bring a file of stems."
)
TWICE = "{name} is itself an arm of a test. Split the patch it came from, or wait for its verdict."


def one_by_one(stems: Stems, patch: str, species: str, state: str) -> NDArray[np.intp]:
    """Rows of a target's plants that are listed one by one; plants that were counted cannot be told apart."""
    cut = stems.state == "cut"
    return np.flatnonzero(
        (stems.patch == patch)
        & (stems.species == species)
        & (stems.state != "dead")
        & (cut if state == "cut" else ~cut)
        & (stems.note != COUNTED)
    )


def arms_of(
    parts: Parts,
    stems: Stems,
    patch: str,
    species: str,
    names: Collection[str],
    state: str,
    each: int,
    flags: dict[str, str],
) -> tuple[list[Edit], list[tuple[str, Cells]]]:
    """Edits and moved stems that make two arms of a target. species: Latin name; names: what the files may call it.

    flags: words by flag, put behind the patch's name. Raises Refused for too few plants, or an arm of an arm.
    """
    body = body_of(parts, "patch", patch) or {}
    name = str(body.get("name") or patch)
    if patch.rpartition("-")[2] in ARMS and patch.rpartition("-")[0] in keys_of(parts, "patch"):
        raise Refused(TWICE.format(name=name))
    rows = one_by_one(stems, patch, species, state)
    if not len(rows):
        raise Refused(NOT_LISTED)
    if each < LEAST_EACH or len(rows) // 2 < each:
        raise Refused(TOO_FEW.format(each=each, most=len(rows) // 2, least=LEAST_EACH))
    # The same target and size give the same arms, however often it is asked.
    seed = int.from_bytes(hashlib.sha256(f"{patch}/{species}/{state}/{each}".encode()).digest()[:4], "big")
    found = two_arms(stems.diameter_cm[rows], stems.x_m[rows], stems.y_m[rows], each, np.random.default_rng(seed))
    at, cells_of = STEM_COLUMNS.index("patch"), {row[0]: row for row in parts.stems}
    edits: list[Edit] = []
    moved: list[tuple[str, Cells]] = []
    asked = (body_of(parts, "tract") or {}).get("kept_asked", [])
    for flag, own in zip(ARMS, found, strict=True):
        key = f"{patch}-{flag}"
        if key in keys_of(parts, "patch"):
            raise Refused(TWICE.format(name=f"{name}, {flags[flag]}"))
        edits.append(Edit("patch", key, {**body, "id": key, "name": f"{name}, {flags[flag]}"}))
        outline = body_of(parts, "outline", patch)
        if outline:
            edits.append(Edit("outline", key, {**outline, "properties": {**outline["properties"], "id": key}}))
        edits += _choices(parts, patch, key, names, state)
        for stem in stems.id[rows[own]].tolist():
            cells = list(cells_of[stem])
            cells[at] = key
            moved.append((stem, tuple(cells)))
    if patch in asked:
        tract = body_of(parts, "tract") or {}
        edits.append(Edit("tract", "", {**tract, "kept_asked": [*asked, *(f"{patch}-{flag}" for flag in ARMS)]}))
    return edits, moved


def _choices(parts: Parts, patch: str, key: str, names: Collection[str], state: str) -> list[Edit]:
    """The way taken for the whole goes along to the arm, where it is one and the other is changed."""
    chosen = [
        piece.body
        for piece in parts.pieces
        if piece.kind == "choice"
        and piece.body["patch"] == patch
        and piece.body["species"] in names
        and piece.body.get("state", "standing") == state
    ]
    return [
        edit for body in chosen[:1] for edit in choice_edits(parts, key, list(names), state, {**body, "patch": key})
    ]
