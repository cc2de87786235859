"""The scaled plan: outlines, stems as rounds, what is kept as squares, north and a bar in feet and paces."""

from collections.abc import Mapping, Sequence
from typing import Any

from stemward.drawings.palette import LIGHT
from stemward.drawings.shapes import kept
from stemward.drawings.svg import Drawing, document, line, path, ruler, tag, text
from stemward.units import convert

WIDTH, HEIGHT, EDGE, FOOT = 180.0, 190.0, 9.0, 14.0
SIGN = 5.2
PACE_FT = 2.5
"""One pace is about two and a half feet (common practice, no source)."""
ROUND_FT = (10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
ROUND_M = (5, 10, 20, 50, 100, 200, 500, 1000, 2000)

Points = Sequence[Sequence[float]]


def plan_drawing(
    patches: Sequence[tuple[str, Sequence[Points]]],
    stems: Sequence[tuple[float, float]],
    kept_places: Sequence[tuple[str, str, Mapping[str, Any]]],
    units: str,
    paces: str,
) -> Drawing:
    """The plan. patches: name and rings in metres. stems: x, y. kept_places: name, kind and shape as plain data.

    units: "us" or "metric", for the bar; paces: the word for paces. North is up.
    """
    corners = [c for _, rings in patches for c in rings[0]] + list(stems)
    corners += [c for _, _, shape in kept_places for c in shape["rings"][0]]
    if not corners:
        corners = [(0.0, 0.0), (10.0, 10.0)]
    west, east = min(c[0] for c in corners), max(c[0] for c in corners)
    south, north = min(c[1] for c in corners), max(c[1] for c in corners)
    per_m = min((WIDTH - 2 * EDGE) / max(east - west, 1.0), (HEIGHT - 2 * EDGE - FOOT) / max(north - south, 1.0))

    def at(corner: Sequence[float]) -> tuple[float, float]:
        return EDGE + (corner[0] - west) * per_m, EDGE + (north - corner[1]) * per_m

    body = "".join(_patch(name, [[at(c) for c in ring] for ring in rings]) for name, rings in patches)
    body += "".join(_extent(shape, [at(c) for c in shape["rings"][0]]) for _, _, shape in kept_places)
    body += _stems([at(c) for c in stems])
    body += "".join(_kept(name, kind, _middle([at(c) for c in shape["rings"][0]])) for name, kind, shape in kept_places)
    body += _bar(per_m, units, paces, EDGE + (north - south) * per_m + 10) + _north()
    height = EDGE + (north - south) * per_m + EDGE + FOOT
    return Drawing(document(WIDTH, height, body), WIDTH, height, per_m)


def _middle(corners: Sequence[tuple[float, float]]) -> tuple[float, float]:
    return sum(c[0] for c in corners) / len(corners), sum(c[1] for c in corners) / len(corners)


def _patch(name: str, rings: list[list[tuple[float, float]]]) -> str:
    outline = "".join(path(ring) for ring in rings)
    look = {"fill": LIGHT["page"], "fill_rule": "evenodd", "stroke": LIGHT["bark"], "stroke_width": 0.7}
    drawn = tag("path", d=outline, **look)
    left, top = min(c[0] for c in rings[0]), min(c[1] for c in rings[0])
    return drawn + text(left, top - 1.6, name, 4.2, bold=True)


def _extent(shape: Mapping[str, Any], corners: list[tuple[float, float]]) -> str:
    """The outline of what is kept where it is more than a point."""
    if shape["kind"] == "point":
        return ""
    closed = shape["kind"] == "polygon"
    return tag(
        "path",
        d=path(corners, closed),
        fill=LIGHT["paper"] if closed else "none",
        stroke=LIGHT["moss"],
        stroke_width=0.8,
        stroke_dasharray="2 1.2",
    )


def _stems(places: Sequence[tuple[float, float]]) -> str:
    """All stems in one path, so that thousands draw as quickly as ten."""
    radius = 1.3 if len(places) <= 400 else 0.7
    rounds = "".join(
        f"M{x - radius:.5g} {y:.5g}a{radius} {radius} 0 1 0 {2 * radius} 0a{radius} {radius} 0 1 0 {-2 * radius} 0Z"
        for x, y in places
    )
    return tag("path", d=rounds, fill=LIGHT["paper"], stroke=LIGHT["ink"], stroke_width=0.45) if rounds else ""


def _kept(name: str, kind: str, place: tuple[float, float]) -> str:
    x, y = place
    scale = SIGN / 24
    drawn = tag("g", kept(kind), transform=f"translate({x - SIGN / 2:.5g} {y - SIGN / 2:.5g}) scale({scale:.5g})")
    return drawn + text(x + SIGN / 2 + 0.8, y + 1.2, name, 3.4)


def _bar(per_m: float, units: str, paces: str, y: float) -> str:
    foot_m = convert(1.0, "ft", "m")
    if units == "us":
        length_ft = max(ft for ft in ROUND_FT if ft * foot_m * per_m <= 60 or ft == ROUND_FT[0])
        wide, words = length_ft * foot_m * per_m, f"{length_ft} ft, {length_ft / PACE_FT:.0f} {paces}"
    else:
        length_m = max(m for m in ROUND_M if m * per_m <= 60 or m == ROUND_M[0])
        wide, words = length_m * per_m, f"{length_m} m, {length_m / (PACE_FT * foot_m):.0f} {paces}"
    return line(ruler(EDGE, EDGE + wide, y, 1.5), 0.7) + text(EDGE + wide + 3, y + 1.4, words, 4.0)


def _north() -> str:
    x = WIDTH - 8
    return line(f"M{x} 16V5M{x - 2.4} 8.6L{x} 4L{x + 2.4} 8.6", 0.9) + text(x, 21, "N", 4.6, "middle", True)
