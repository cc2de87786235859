"""The shape of a GeoJSON feature: corners are positions, rings close and do not cross themselves."""

import math
import re
from typing import Any

import shapely

from stemward.gate.problems import Problems
from stemward.gate.text import clean
from stemward.kinds import STEMS, Shape
from stemward.kinds.land import Ring

SHAPES = {"Point": "point", "LineString": "line", "Polygon": "polygon"}
LEAST_CORNERS = {"line": 2, "polygon": 4}

Limits = tuple[float, float]


def read_shape(geometry: Any, wanted: tuple[str, ...], file: str, line: int | None, problems: Problems) -> Shape | None:
    """A checked shape, or None with what is wrong noted."""
    expected = f'"type": "{wanted[-1]}"'
    if not isinstance(geometry, dict):
        problems.add("geo.no_shape", file, line, "geometry", expected)
        return None
    what = clean(str(geometry.get("type", "")))
    if what not in wanted:
        several = what.startswith("Multi") or what == "GeometryCollection"
        if several:
            problems.add("geo.many_parts", file, line, "geometry", expected, what=what)
        else:
            problems.add("geo.wrong_shape", file, line, "geometry", expected, what=what, wanted=", ".join(wanted))
        return None
    kind, positions = SHAPES[what], geometry.get("coordinates")
    nested = {"point": [[positions]], "line": [positions], "polygon": positions}[kind]
    rings = _rings(nested)
    if rings is None:
        problems.add("geo.position", file, line, "coordinates", "[12.5, 48.0]")
        return None
    shape = Shape(kind, rings)  # type: ignore[arg-type]
    return shape if _fits(shape, file, line, problems) else None


def _rings(nested: Any) -> tuple[Ring, ...] | None:
    """Rings of (x, y) in metres; a third number, a height, is left out. None if anything is no position."""
    if not isinstance(nested, list) or not nested:
        return None
    rings = []
    for ring in nested:
        if not isinstance(ring, list) or not all(_is_position(position) for position in ring):
            return None
        rings.append(tuple((float(position[0]), float(position[1])) for position in ring))
    return tuple(rings)


def _limits() -> tuple[Limits, Limits]:
    x, y = STEMS.column("x_m"), STEMS.column("y_m")
    return (x.low or 0.0, x.high or 0.0), (y.low or 0.0, y.high or 0.0)


def _is_position(position: Any) -> bool:
    if not isinstance(position, list) or not 2 <= len(position) <= 3:
        return False
    numbers = all(isinstance(n, int | float) and not isinstance(n, bool) for n in position)
    return numbers and all(
        low <= n <= high and math.isfinite(n) for n, (low, high) in zip(position, _limits(), strict=False)
    )


def _fits(shape: Shape, file: str, line: int | None, problems: Problems) -> bool:
    """True if the shape has enough corners, and a polygon closes and does not cross itself."""
    least = LEAST_CORNERS.get(shape.kind, 1)
    for ring in shape.rings:
        if len(ring) < least:
            problems.add("geo.too_few", file, line, "coordinates", corners=len(ring), least=least)
            return False
        gap_m = math.dist(ring[0], ring[-1])
        if shape.kind == "polygon" and gap_m > 0:
            problems.add("geo.not_closed", file, line, "coordinates", str(list(ring[0])), gap_m=gap_m)
            return False
    if shape.kind == "line" and len(set(shape.rings[0])) < 2:
        problems.add("geo.too_few", file, line, "coordinates", corners=1, least=2)
        return False
    return shape.kind != "polygon" or _simple(shape, file, line, problems)


def _simple(shape: Shape, file: str, line: int | None, problems: Problems) -> bool:
    if any(len(set(ring)) < 3 for ring in shape.rings):
        problems.add("geo.no_area", file, line, "coordinates")
        return False
    polygon = geometry(shape)
    if not shapely.is_valid(polygon):
        why = shapely.is_valid_reason(polygon)
        at = re.search(r"\[(\S+) (\S+)\]", why)
        x_m, y_m = (float(at[1]), float(at[2])) if at else shape.rings[0][0]
        message = "geo.crosses_itself" if "elf-intersection" in why else "geo.hole"
        problems.add(message, file, line, "coordinates", x_m=x_m, y_m=y_m)
        return False
    if polygon.area <= 0:
        problems.add("geo.no_area", file, line, "coordinates")
        return False
    return True


def geometry(shape: Shape) -> Any:
    """The shapely polygon of a polygon shape."""
    return shapely.Polygon(shape.rings[0], shape.rings[1:])
