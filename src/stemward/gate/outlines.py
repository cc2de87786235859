"""patches.geojson: outlines of the patches, and how they lie to one another and to the stems."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from stemward.gate.geojson import read_features
from stemward.gate.problems import MOST_SHOWN, Problems
from stemward.gate.shapes import geometry
from stemward.gate.stems import StemsFile
from stemward.gate.text import clean, near
from stemward.kinds import Patch, Shape

FILE = "patches.geojson"

Outlines = Mapping[str, tuple[Shape, int | None]]
"""Outline and line by patch id."""

PHONE_OFF_M = 10.0
"""Nearer than that is only asked: a phone under leaves is off by 5 to 10 m (common practice, no source)."""

SHARED_M2 = 1.0
"""Outlines drawn along one border overlap by slivers: engineering guess, no source."""

AREA_DIFFERS = 1.25
"""Ratio of stated and drawn area from which is asked: engineering guess, no source."""


def read_outlines(text: str, patches: Collection[str] | None, problems: Problems) -> Outlines:
    """Outline by patch id, with its line. patches: those of the tract, None if not known."""
    found: dict[str, tuple[Shape, int | None]] = {}
    seen: dict[str, int | None] = {}
    for feature in read_features(text, FILE, ("Polygon",), problems):
        ident = feature.properties.get("id")
        line = feature.line_of("id")
        if not isinstance(ident, str) or not ident.strip():
            problems.add("geo.missing_property", FILE, feature.line, "id", '"id": "rim"')
            continue
        ident = ident.strip()
        if patches is not None and ident not in patches:
            shown = clean(ident)
            meant = near(shown, patches)
            problems.add("geo.unknown_patch", FILE, line, "id", ", ".join(patches), patch=shown, near=meant)
        elif ident in seen:
            problems.add("geo.id_twice", FILE, line, "id", id=ident, first_line=seen[ident] or 0)
        elif feature.shape is not None:
            found[ident] = feature.shape, line
        seen.setdefault(ident, line)
    if patches is not None:
        _overlaps(found, problems)
    return found


def _overlaps(found: Outlines, problems: Problems) -> None:
    names = list(found)
    polygons = np.array([geometry(found[name][0]) for name in names], dtype=object)
    if len(names) < 2:
        return
    for one, other in sorted(map(tuple, shapely.STRtree(polygons).query(polygons, "intersects").T.tolist())):
        if one >= other or problems.only_asked:
            continue
        area_m2 = float(shapely.area(shapely.intersection(polygons[one], polygons[other])))
        if area_m2 > SHARED_M2:
            _, line = found[names[other]]
            values: dict[str, Any] = {"patch": names[one], "other": names[other], "area_m2": area_m2}
            problems.ask("ask.overlap", FILE, line, "coordinates", **values)


def with_outlines(
    patches: Sequence[Patch],
    outlines: Outlines,
    lines: Mapping[str, int],
    problems: Problems,
) -> tuple[Patch, ...]:
    """The patches with their outlines; asks where the stated area is far from the drawn one."""
    done = []
    for patch in patches:
        shape, _ = outlines.get(patch.id, (None, None))
        if shape is not None and patch.area_m2:
            drawn_m2 = float(geometry(shape).area)
            if max(drawn_m2, patch.area_m2) > AREA_DIFFERS * min(drawn_m2, patch.area_m2):
                problems.ask(
                    "ask.area_differs", "tract.toml", lines.get(patch.id), "patches.area",
                    patch=patch.id, stated_m2=patch.area_m2, drawn_m2=drawn_m2,
                )  # fmt: skip
        done.append(replace(patch, shape=shape))
    return tuple(done)


def place_stems(read: StemsFile, outlines: Outlines, problems: Problems) -> None:
    """Notes stems that stand outside the outline of their own patch; within 10 m of it only asks."""
    stems = read.stems
    whole = shapely.union_all([geometry(shape) for shape, _ in outlines.values()])
    for patch, (shape, _) in outlines.items():
        rows = np.flatnonzero((stems.patch == patch) & np.isfinite(stems.x_m) & np.isfinite(stems.y_m))
        away_m = outside_by(shape, stems.x_m[rows], stems.y_m[rows])
        out, away_m = rows[away_m > 0], away_m[away_m > 0]
        if not out.size:
            continue
        far = away_m > PHONE_OFF_M
        _outside(read, patch, out[far], away_m[far], whole, outlines, problems)
        if not far.all():
            _nearly(read, patch, out[~far], away_m[~far], problems)


def outside_by(shape: Shape, x_m: NDArray[np.float64], y_m: NDArray[np.float64]) -> NDArray[np.float64]:
    """How far points stand outside an outline, in metres; 0 within it."""
    polygon = geometry(shape)
    shapely.prepare(polygon)
    away_m = np.zeros(len(x_m))
    out = np.flatnonzero(~shapely.intersects_xy(polygon, x_m, y_m))
    away_m[out] = shapely.distance(polygon, shapely.points(x_m[out], y_m[out]))
    return away_m


def _outside(
    read: StemsFile,
    patch: str,
    rows: NDArray[np.intp],
    away_m: NDArray[np.float64],
    whole: Any,
    outlines: Outlines,
    problems: Problems,
) -> None:
    stems = read.stems
    for row, distance_m in zip(rows[:MOST_SHOWN].tolist(), away_m.tolist(), strict=False):
        x, y, line, ident = stems.x_m[row], stems.y_m[row], int(read.lines[row]), str(stems.id[row])
        values: dict[str, Any] = {"id": ident, "patch": patch, "distance_m": distance_m}
        if shapely.intersects_xy(whole, x, y):
            inside = next(p for p, (s, _) in outlines.items() if shapely.intersects_xy(geometry(s), x, y))
            problems.add("stems.outside_patch", "stems.csv", line, "patch", inside, inside=inside, **values)
        else:
            problems.add("stems.outside_all", "stems.csv", line, "x_m", **values)
    problems.only_counted += max(0, len(rows) - MOST_SHOWN)


def _nearly(
    read: StemsFile, patch: str, rows: NDArray[np.intp], away_m: NDArray[np.float64], problems: Problems
) -> None:
    worst = int(np.argmax(away_m))
    problems.ask(
        "ask.outside", "stems.csv", int(read.lines[rows[worst]]), "x_m",
        patch=patch, count=len(rows), distance_m=float(away_m[worst]), id=str(read.stems.id[rows[worst]]),
    )  # fmt: skip
