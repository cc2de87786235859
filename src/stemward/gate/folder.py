"""A tract folder in: all of it, or everything that is wrong with it."""

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import shapely

from stemward.gate import geo, text
from stemward.gate.problems import Problem, Problems, Unreadable
from stemward.gate.product import read_product
from stemward.gate.stems import FILE as STEMS_FILE
from stemward.gate.stems import read_stems
from stemward.gate.tract import CHOICES, RECORDS, TRACT, TractFile, read_choices, read_records, read_tract
from stemward.handbook import load
from stemward.kinds import Patch, Product, Question, Shape, Stems, Tract
from stemward.label import FactKind

OFF_M = 10.0
"""A phone under leaves is off by 5 to 10 m (common practice, no source): so far outside is a question only."""
SHELF = "shelf"
MOST_FILES = 200

__all__ = ["Problem", "Read", "Unreadable", "read"]


@dataclass(frozen=True)
class Read:
    """A tract as read, and the SHA-256 of its files."""

    tract: Tract
    hash: str


def read(folder: Path, find_species: Callable[[str], Any], kinds: Mapping[str, FactKind]) -> Read:
    """Read a tract folder. Raises Unreadable with all problems found; nothing is loaded by halves.

    find_species: a name to something with `latin`, or with `candidates` where there is no such name.
    kinds: the closed list of label facts by name.
    """
    problems = Problems()
    names = _names(folder, problems)
    if problems:
        raise Unreadable(problems)
    texts = {
        name: text.read_text(folder, name, problems, text.LARGEST_STEMS if name == STEMS_FILE else text.LARGEST_OTHER)
        for name in names
    }
    for name in (TRACT, STEMS_FILE):
        if name not in texts:
            problems.add("file.missing", name)
    questions: list[Question] = []
    tract_file = read_tract(texts[TRACT] or "", load().states, problems) if texts.get(TRACT) else None
    outlines = geo.read_outlines(texts[geo.PATCHES] or "", problems) if texts.get(geo.PATCHES) else {}
    spared = geo.read_spared(texts[geo.SPARED_FILE] or "", find_species, problems) if texts.get(geo.SPARED_FILE) else ()
    shelf = _shelf(texts, kinds, problems)
    stems = read_stems(texts[STEMS_FILE] or "", find_species, problems, questions) if texts.get(STEMS_FILE) else None
    patch_ids = [p.id for p in tract_file.patches] if tract_file else []
    choices = (
        read_choices(texts[CHOICES] or "", patch_ids, [p.id for p in shelf], list(load().tools), find_species, problems)
        if texts.get(CHOICES)
        else ()
    )
    entries = read_records(texts[RECORDS] or "", problems) if texts.get(RECORDS) else ()
    if tract_file is not None:
        patches = _with_outlines(tract_file.patches, outlines, problems)
        if stems is not None:
            _places(stems, patches, problems, questions)
    if problems or tract_file is None or stems is None:
        raise Unreadable(problems)
    tract = _tract(tract_file, patches, stems, spared, shelf, choices, entries, tuple(questions))
    return Read(tract, _hash(folder, names))


def _names(folder: Path, problems: Problems) -> list[str]:
    """The files of the folder that belong to a tract, in order."""
    try:
        if not folder.exists():
            problems.add("folder.missing", str(folder))
        elif not folder.is_dir():
            problems.add("folder.is_file", str(folder))
        else:
            top = (TRACT, geo.PATCHES, STEMS_FILE, geo.SPARED_FILE, CHOICES, RECORDS)
            names = [name for name in top if (folder / name).exists() or (folder / name).is_symlink()]
            shelf = folder / SHELF
            inside = sorted(p.name for p in shelf.iterdir()) if shelf.is_dir() else []
            names += [f"{SHELF}/{name}" for name in inside if name.endswith(".toml")][:MOST_FILES]
            if not names:
                problems.add("folder.empty", str(folder))
            return names
    except PermissionError:
        problems.add("file.no_permission", str(folder))
    except OSError as error:
        problems.add("file.unreadable", str(folder), why=error.strerror or str(error))
    return []


def _hash(folder: Path, names: list[str]) -> str:
    digest = hashlib.sha256()
    for name in sorted(names):
        content = (folder / name).read_bytes()
        digest.update(f"{name}\0{len(content)}\0".encode())
        digest.update(content)
    return digest.hexdigest()


def _shelf(texts: Mapping[str, str | None], kinds: Mapping[str, FactKind], problems: Problems) -> list[Product]:
    made: dict[str, Product] = {}
    for name, content in texts.items():
        if name.startswith(f"{SHELF}/") and content:
            product = read_product(content, name, kinds, problems)
            if product is None:
                continue
            if product.id in made:
                problems.add("id.twice", name, None, "id", typed=product.id, earlier=0)
            made[product.id] = product
    return list(made.values())


def _with_outlines(patches: tuple[Patch, ...], outlines: Mapping[str, Shape], problems: Problems) -> tuple[Patch, ...]:
    known = {p.id for p in patches}
    for name in outlines:
        if name not in known:
            problems.add("patch.unknown", geo.PATCHES, None, "id", ", ".join(sorted(known)), typed=name[:40])
    return tuple(replace(p, shape=outlines.get(p.id)) for p in patches)


def _places(stems: Stems, patches: tuple[Patch, ...], problems: Problems, questions: list[Question]) -> None:
    """Every stem names a patch, and stands within its outline where there is one, give or take 10 m."""
    known = {p.id: p for p in patches}
    for name in np.unique(stems.patch).tolist():
        rows = np.flatnonzero(stems.patch == name)
        if name not in known:
            problems.add(
                "patch.unknown", STEMS_FILE, None, "patch", ", ".join(known), typed=str(name)[:40],
                stem=str(stems.id[rows[0]]), count=len(rows),
            )  # fmt: skip
            continue
        shape = known[name].shape
        if shape is None:
            continue
        outline = geo_polygon(shape)
        points = shapely.points(stems.x_m[rows], stems.y_m[rows])
        shapely.prepare(outline)
        outside = rows[~shapely.intersects(outline, points)]
        if not len(outside):
            continue
        away_m = shapely.distance(outline, shapely.points(stems.x_m[outside], stems.y_m[outside]))
        far = outside[away_m > OFF_M]
        if len(far):
            first = int(far[0])
            problems.add(
                "stem.outside", STEMS_FILE, first + 2, "x_m", str(name), stem=str(stems.id[first]),
                distance_m=float(away_m[away_m > OFF_M][0]), count=len(far), patch=str(name),
            )  # fmt: skip
        elif len(outside):
            values = (("count", len(outside)), ("first", str(stems.id[outside[0]])), ("patch", str(name)))
            questions.append(Question("stem.just_outside", values, STEMS_FILE, int(outside[0]) + 2, "x_m"))


def geo_polygon(shape: Shape) -> shapely.Polygon:
    """The polygon of an outline."""
    return shapely.Polygon(shape.rings[0], shape.rings[1:])


def _tract(
    file: TractFile,
    patches: tuple[Patch, ...],
    stems: Stems,
    spared: Any,
    shelf: list[Product],
    choices: Any,
    entries: Any,
    questions: tuple[Question, ...],
) -> Tract:
    return Tract(
        name=file.name,
        place=file.place,
        state=file.state,
        time_zone=file.time_zone,
        who=file.who,  # type: ignore[arg-type]
        invented=file.invented,
        patches=patches,
        stems=stems,
        spared=spared,
        kept_asked=file.kept_asked,
        shelf=tuple(shelf),
        people=file.people,
        vessels=file.vessels,
        measures=file.measures,
        choices=choices,
        entries=entries,
        emergency=file.emergency,
        questions=questions,
    )
