"""patches.geojson and spared.geojson: shapes in the tract's own metres, checked corner by corner."""

import json
import math
from collections.abc import Callable
from typing import Any

import shapely
from shapely.validation import explain_validity

from stemward.gate.problems import Problems
from stemward.kinds import SPARED, Shape, Spared
from stemward.units import UnitError, convert, read

PATCHES, SPARED_FILE = "patches.geojson", "spared.geojson"
FARTHEST_M = 1e7


def features(text: str, file: str, problems: Problems) -> list[tuple[int, dict[str, Any]]] | None:
    """The features of a file with their line, or None with the problem noted."""
    try:
        data = json.loads(text)
    except json.JSONDecodeError as error:
        problems.add("json.broken", file, error.lineno, str(error.colno), why=error.msg)
        return None
    except RecursionError:
        problems.add("json.broken", file, why="too deeply nested")
        return None
    if (
        not isinstance(data, dict)
        or data.get("type") != "FeatureCollection"
        or not isinstance(data.get("features"), list)
    ):
        problems.add("geo.not_features", file)
        return None
    lines = [n for n, line in enumerate(text.split("\n"), 1) for _ in range(line.count('"Feature"'))]
    found = []
    for number, feature in enumerate(data["features"]):
        line = lines[number] if number < len(lines) else None
        if not isinstance(feature, dict) or not isinstance(feature.get("geometry"), dict):
            problems.add("geo.no_geometry", file, line, number=number + 1)
        else:
            found.append((line or 0, feature))
    return found


def _corner(pair: Any) -> tuple[float, float] | None:
    if not isinstance(pair, list) or len(pair) < 2:
        return None
    x, y = pair[0], pair[1]
    if isinstance(x, bool) or isinstance(y, bool) or not isinstance(x, int | float) or not isinstance(y, int | float):
        return None
    if not (math.isfinite(x) and math.isfinite(y)) or max(abs(x), abs(y)) > FARTHEST_M:
        return None
    return float(x), float(y)


def shape_of(geometry: dict[str, Any], file: str, line: int, name: str, problems: Problems) -> Shape | None:
    """A point, line or polygon; None with the problem noted."""
    kind, coordinates = geometry.get("type"), geometry.get("coordinates")
    if kind not in ("Point", "LineString", "Polygon"):
        problems.add("geo.kind", file, line, typed=str(kind)[:40], name=name)
        return None
    rings = {"Point": [[coordinates]], "LineString": [coordinates], "Polygon": coordinates}[kind]
    if not isinstance(rings, list) or not rings or not all(isinstance(ring, list) and ring for ring in rings):
        problems.add("geo.coordinates", file, line, name=name)
        return None
    made = []
    for ring in rings:
        corners = [_corner(pair) for pair in ring]
        if any(corner is None for corner in corners):
            problems.add("geo.coordinates", file, line, name=name)
            return None
        made.append(tuple(c for c in corners if c is not None))
    shape = Shape({"Point": "point", "LineString": "line", "Polygon": "polygon"}[kind], tuple(made))  # type: ignore[arg-type]
    return shape if _sound(shape, file, line, name, problems) else None


def _sound(shape: Shape, file: str, line: int, name: str, problems: Problems) -> bool:
    if shape.kind == "line" and len(shape.rings[0]) < 2:
        problems.add("geo.too_few_corners", file, line, name=name, least=2)
        return False
    if shape.kind != "polygon":
        return True
    for ring in shape.rings:
        if len(set(ring)) < 3:
            problems.add("geo.too_few_corners", file, line, name=name, least=3)
            return False
        if ring[0] != ring[-1]:
            problems.add("geo.open_ring", file, line, name=name)
            return False
    polygon = shapely.Polygon(shape.rings[0], shape.rings[1:])
    if not polygon.is_valid:
        why = explain_validity(polygon)
        where = why[why.find("[") + 1 : why.find("]")] if "[" in why else ""
        crosses = "Self-intersection" in why
        problems.add("geo.crosses_itself" if crosses else "geo.unsound", file, line, name=name, where=where)
        return False
    if polygon.area <= 0:
        problems.add("geo.no_area", file, line, name=name)
        return False
    return True


def read_outlines(text: str, problems: Problems) -> dict[str, Shape]:
    """Outlines by patch id."""
    outlines: dict[str, Shape] = {}
    for line, feature in features(text, PATCHES, problems) or ():
        name = str((feature.get("properties") or {}).get("id", ""))
        if not name:
            problems.add("geo.no_id", PATCHES, line)
            continue
        if name in outlines:
            problems.add("id.twice", PATCHES, line, "id", typed=name, earlier=0)
            continue
        shape = shape_of(feature["geometry"], PATCHES, line, name, problems)
        if shape is not None and shape.kind != "polygon":
            problems.add("geo.kind", PATCHES, line, typed=str(feature["geometry"].get("type")), name=name)
        elif shape is not None:
            outlines[name] = shape
    return outlines


def read_spared(text: str, find_species: Callable[[str], Any], problems: Problems) -> tuple[Spared, ...]:
    """What is kept from harm."""
    made: dict[str, Spared] = {}
    for line, feature in features(text, SPARED_FILE, problems) or ():
        row = feature.get("properties") or {}
        if not isinstance(row, dict):
            row = {}
        name = str(row.get("id", ""))
        kind = str(row.get("kind", ""))
        choices = SPARED.column("kind").choices
        if not name:
            problems.add("geo.no_id", SPARED_FILE, line)
            continue
        if name in made:
            problems.add("id.twice", SPARED_FILE, line, "id", typed=name, earlier=0)
            continue
        if kind not in choices:
            problems.add("cell.not_a_choice", SPARED_FILE, line, "kind", ", ".join(choices), typed=kind[:40])
            continue
        shape = shape_of(feature["geometry"], SPARED_FILE, line, name, problems)
        species = _latin(str(row.get("species", "")), line, find_species, problems)
        dbh_cm = _size(row, "dbh_cm", line, problems)
        dbh_in = _size(row, "dbh_in", line, problems)
        crown_m = _size(row, "crown_radius_m", line, problems)
        if shape is not None:
            size = dbh_cm if dbh_cm is not None else dbh_in * convert(1.0, "in", "cm") if dbh_in is not None else None
            made[name] = Spared(name, kind, shape, species, size, crown_m, str(row.get("note", "")))
    return tuple(made.values())


def _latin(name: str, line: int, find_species: Callable[[str], Any], problems: Problems) -> str:
    if not name:
        return ""
    found = find_species(name)
    if hasattr(found, "latin"):
        return str(found.latin)
    near = ", ".join(common for common, _ in getattr(found, "candidates", ()))
    problems.add("species.unknown", SPARED_FILE, line, "species", typed=name[:60], near=near)
    return ""


def _size(row: dict[str, Any], name: str, line: int, problems: Problems) -> float | None:
    column = SPARED.column(name)
    typed = row.get(name)
    if typed in (None, ""):
        return None
    try:
        value = read(str(typed), "length", column.unit).to(column.unit)
    except UnitError:
        problems.add("cell.not_understood", SPARED_FILE, line, name, column.example, typed=str(typed)[:40])
        return None
    if (column.low is not None and value < column.low) or (column.high is not None and value > column.high):
        problems.add("cell.out_of_range", SPARED_FILE, line, name, column.example, typed=str(typed)[:40])
        return None
    return value
