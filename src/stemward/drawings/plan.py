"""The scaled plan: outlines, stems as rounds, what is kept as squares, north and a bar in feet and paces."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stemward.drawings.frame import EDGE, FOOT, Frame, Point, bounds, extent_m, fit, held
from stemward.drawings.lines import walked, waves
from stemward.drawings.palette import LIGHT
from stemward.drawings.placing import Sheet, heading, label
from stemward.drawings.shapes import placed
from stemward.drawings.svg import Box, Drawing, area, document, line, num, oblong, path, ring, tag, text
from stemward.units import convert

WIDTH, HEIGHT = 170.0, 185.0
SIGN, LEAST_SIGN, WORDS, NAMES, WALKED = 5.6, 1.8, 3.6, 4.4, 3.2
MOST_NAMES = 60
"""Of more signs than this, those of what is kept stand without their names: a page has no room for them."""
LEAST_MM, MOST_ROUNDS = 0.4, 20_000
"""Least radius of a stem's round, and how many are drawn one by one."""
PACE_FT = 2.5
"""One pace is about two and a half feet (common practice, no source)."""
ROUND_FT = (10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
ROUND_M = (5, 10, 20, 50, 100, 200, 500, 1000, 2000)

LOOKS = {
    "water": ((0.6, "ink", ""),),
    "lane": ((2.0, "ash", ""), (1.4, "white", "")),
    "boundary": ((0.6, "ink", "4 1.2 0.8 1.2"),),
}
"""Lines and outlines of what is kept, undermost first: width, colour, dashes."""
PLAIN = ((0.7, "moss", "2 1.2"),)

Points = Sequence[Sequence[float]]
Patch = tuple[str, Sequence[Points]]
Kept = tuple[str, str, Mapping[str, Any]]
Place = tuple[str, str, Point]
Route = tuple[Points, Sequence[tuple[str, Point]]]
DASHES = ("", "3 1.4", "0.9 1.3", "5 1.4 0.9 1.4", "1.8 0.7", "7 1.4", "3 0.8 3 3", "0.5 0.9", "4 2.6", "2 0.8 0.5 0.8")
"""How the walks of up to ten people are told apart, without a colour."""


def plan_drawing(
    patches: Sequence[Patch],
    stems: Sequence[Point],
    kept_places: Sequence[Kept],
    units: str,
    paces: str,
    places: Sequence[Place] = (),
    view_m: Box | None = None,
    width_mm: float = WIDTH,
    height_mm: float = HEIGHT,
    routes: Sequence[Route] = (),
) -> Drawing:
    """The plan, north up; all coordinates in metres, x to the east and y to the north.

    patches: name and rings (outer, then holes). stems: x, y. kept_places: name, kind and shape as plain data ("kind"
    point, line or polygon; "rings"). units: "us" or "metric", for the bar; paces: the word for paces. places: sign
    ("mixing", "refill", "gate"), name and place. view_m: west, south, east, north of the ground to show, None for
    all patches and stems and what is kept near them; what is kept beyond stands at the edge with an arrow.
    height_mm: at most. routes: walks, each the places it goes over and words at
    some of them. numbers: patches, stems, kept, kept_named, kept_beyond, bar_m, bar_paces.
    """
    ground = np.asarray(stems, dtype=float).reshape(-1, 2)
    others = [c for _, rings in patches for c in rings[0]] + [place for _, _, place in places]
    others += [(x, y) for over, _ in routes for x, y in over]
    work = np.vstack([ground, np.asarray(others, dtype=float).reshape(-1, 2)])
    kept = [c for _, _, shape in kept_places for c in shape["rings"][0]]
    frame = fit(view_m or extent_m(work, kept), width_mm, height_mm)
    there, foot = _stems_there(ground, frame), frame.box[3] + EDGE
    rounds = _thinned(there)
    sheet = Sheet((1.0, 1.0, width_mm - 1, foot - 2), np.vstack([rounds, _along(patches, kept_places, frame)]))
    signs, words, beyond = _signs(kept_places, places, frame, sheet)
    walks, numbered = _routes(routes, frame, sheet)
    names = "".join(_patch_name(name, rings, frame, sheet) for name, rings in patches)
    bar, bar_m = _bar(frame.per_m, units, paces, foot + 3)
    body = _ground(patches, kept_places, frame) + walks + _stems(rounds) + numbered + signs + words + names
    body += bar + _north(width_mm - 9, foot + 3)
    kept_named = len(kept_places) if len(kept_places) + len(places) <= MOST_NAMES else 0
    numbers = {"patches": len(patches), "stems": len(there), "kept": len(kept_places), "kept_beyond": beyond}
    paced = {"kept_named": kept_named, "bar_m": bar_m, "bar_paces": bar_m / convert(PACE_FT, "ft", "m")}
    svg = document(width_mm, foot + FOOT, body)
    return Drawing(svg, width_mm, foot + FOOT, frame.per_m / 1000, {**numbers, **paced})


def _routes(routes: Sequence[Route], frame: Frame, sheet: Sheet) -> tuple[str, str]:
    """The walks as lines, each with dashes of its own, and the words at their places."""
    lines, words = "", ""
    for n, (over, marks) in enumerate(routes):
        there = [frame.at(place) for place in over]
        if len(there) < 2:
            continue
        dashes = DASHES[n % len(DASHES)]
        more = {"stroke_dasharray": dashes} if dashes else {}
        d = path(there, False)
        lines += line(d, 1.6, "white", stroke_linejoin="round") + line(d, 0.6, "ash", stroke_linejoin="round", **more)
        words += "".join(label(sheet, said, *frame.at(place), WALKED, 1.2) for said, place in marks)
    return lines, words


def _stems_there(ground: NDArray[np.float64], frame: Frame) -> NDArray[np.float64]:
    """Places on paper of the stems in view, n x 2."""
    x, y = ground[:, 0], ground[:, 1]
    seen = (x >= frame.west) & (x <= frame.east) & (y >= frame.south) & (y <= frame.north)
    return np.column_stack(frame.at((x[seen], y[seen])))  # type: ignore[arg-type]


def _thinned(there: NDArray[np.float64]) -> NDArray[np.float64]:
    """The places of rounds: all stems, or where too many stand too close to be told apart, one for several."""
    grid_mm = 2 * LEAST_MM
    while len(there) > MOST_ROUNDS:
        there = np.unique(np.round(there / grid_mm), axis=0) * grid_mm
        grid_mm *= 1.25
    return there


def _ground(patches: Sequence[Patch], kept_places: Sequence[Kept], frame: Frame) -> str:
    """Patches and the outlines of what is kept, cut off where the view ends."""
    drawn = ""
    for _, rings in patches:
        outline = "".join(path(map(frame.at, outer)) for outer in rings)
        drawn += area(outline, "page") + line(outline, 0.8, "bark", stroke_linejoin="round")
    drawn += "".join(_outline(kind, shape, frame) for _, kind, shape in kept_places)
    left, top, right, bottom = frame.box
    edge = oblong((left - EDGE / 2, top - EDGE / 2, right + EDGE / 2, bottom + EDGE / 2))
    clip = tag("clipPath", tag("path", d=edge), id="view")
    return clip + tag("g", drawn, clip_path="url(#view)") if drawn else ""


def _outline(kind: str, shape: Mapping[str, Any], frame: Frame) -> str:
    """The line or outline of what is kept where it is more than a point."""
    if shape["kind"] == "point":
        return ""
    closed = shape["kind"] == "polygon"
    outers = [[frame.at(c) for c in outer] for outer in shape["rings"]]
    d = waves(outers[0]) if kind == "water" and not closed else "".join(path(outer, closed) for outer in outers)
    drawn = area(d, "paper") if closed else ""
    for width, colour, dashes in LOOKS.get(kind, PLAIN):
        more = {"stroke_dasharray": dashes} if dashes else {}
        drawn += line(d, width, colour, stroke_linejoin="round", **more)
    return drawn


def _stems(there: NDArray[np.float64]) -> str:
    """All stems in one path, so that thousands draw as quickly as ten; the closer they stand, the smaller."""
    if not len(there):
        return ""
    west, north, east, south = bounds(there)
    room_mm2 = max((east - west) * (south - north), 1.0) / len(there)
    radius = min(max(0.28 * math.sqrt(room_mm2), LEAST_MM), 1.4)
    rounds = "".join(ring(radius, x, y) for x, y in there.tolist())
    return tag("path", d=rounds, fill=LIGHT["paper"], stroke=LIGHT["ink"], stroke_width=0.35 * radius)


def _along(patches: Sequence[Patch], kept_places: Sequence[Kept], frame: Frame) -> NDArray[np.float64]:
    """Places every millimetre or two along all lines, n x 2, for words to keep off."""
    lines = [outer for _, rings in patches for outer in rings]
    lines += [outer for _, _, shape in kept_places for outer in shape["rings"] if shape["kind"] != "point"]
    return np.vstack([np.empty((0, 2)), *(walked([frame.at(c) for c in outer], 1.5)[0] for outer in lines)])


def _signs(kept_places: Sequence[Kept], places: Sequence[Place], frame: Frame, sheet: Sheet) -> tuple[str, str, int]:
    """The signs, then their words, and how many of what is kept lie beyond the edge."""
    size = _sign_mm(len(kept_places) + len(places), frame)
    marks = [(name, kind, *held(_spot(shape), frame), _clear(shape, frame)) for name, kind, shape in kept_places]
    marks += [(name, kind, *held(place, frame), SIGN / 2 + 1) for kind, name, place in places]
    for _, _, (x, y), _, _ in marks:
        sheet.taken.append((x - size / 2, y - size / 2, x + size / 2, y + size / 2))
    signs = "".join(placed(kind, *at, size) + _arrow(at, turn) for _, kind, at, turn, _ in marks)
    named = marks if len(marks) <= MOST_NAMES else marks[len(kept_places) :]
    words = "".join(label(sheet, name, *at, WORDS, clear) for name, _, at, _, clear in named)
    return signs, words, sum(mark[3] is not None for mark in marks[: len(kept_places)])


def _sign_mm(count: int, frame: Frame) -> float:
    """How wide signs are: smaller where there are too many to stand side by side."""
    left, top, right, bottom = frame.box
    room_mm = math.sqrt((right - left) * (bottom - top) / max(count, 1))
    return min(max(room_mm / 2.2, LEAST_SIGN), SIGN)


def _clear(shape: Mapping[str, Any], frame: Frame) -> float:
    """How far from the middle of a sign its words begin: outside the sign, and outside a small outline."""
    if shape["kind"] != "polygon":
        return SIGN / 2 + 1
    west, south, east, north = bounds(shape["rings"][0])
    half = max(east - west, north - south) * frame.per_m / 2
    return max(SIGN / 2, half if half < 12 else 0.0) + 1


def _spot(shape: Mapping[str, Any]) -> Point:
    """Where the sign of a shape stands: the point, halfway along the line, the middle of the corners."""
    corners = np.asarray(shape["rings"][0], dtype=float)
    if shape["kind"] == "line" and len(corners) > 1:
        x, y = walked(shape["rings"][0], math.inf)[0][1]
        return float(x), float(y)
    if shape["kind"] == "polygon" and len(corners) > 1 and (corners[0] == corners[-1]).all():
        corners = corners[:-1]
    return float(corners[:, 0].mean()), float(corners[:, 1].mean())


def _arrow(at: Point, turn: float | None) -> str:
    """An arrow outward from a sign at the edge."""
    if turn is None:
        return ""
    x, y = at[0] + math.cos(turn) * SIGN * 0.78, at[1] + math.sin(turn) * SIGN * 0.78
    where = f"translate({num(x)} {num(y)}) rotate({num(math.degrees(turn))})"
    return area("M-0.4 -1.7L2.2 0L-0.4 1.7Z", "ink", transform=where)


def _patch_name(name: str, rings: Sequence[Points], frame: Frame, sheet: Sheet) -> str:
    """The name over the highest corner of a patch that is in view, or where there is room."""
    return heading(sheet, name, [held(corner, frame)[0] for corner in rings[0]], NAMES, 1.6)


def _bar(per_m: float, units: str, paces: str, y: float) -> tuple[str, float]:
    """The bar with its words, and how many metres it is long."""
    foot_m = convert(1.0, "ft", "m")
    sizes, unit, unit_m = (ROUND_FT, "ft", foot_m) if units == "us" else (ROUND_M, "m", 1.0)
    long = max(n for n in sizes if n * unit_m * per_m <= 60 or n == sizes[0])
    wide = long * unit_m * per_m
    words = f"{long} {unit}, {long * unit_m / (PACE_FT * foot_m):.0f} {paces}"
    half = area(oblong((EDGE, y, EDGE + wide / 2, y + 1.6)), "ink")
    frame = line(oblong((EDGE, y, EDGE + wide, y + 1.6)), 0.4)
    return frame + half + text(EDGE + wide + 3, y + 2.2, words, 4.0), long * unit_m


def _north(x: float, y: float) -> str:
    arrow = area(f"M{num(x)} {num(y - 6.5)}l2.6 9.5l-2.6 -2.2l-2.6 2.2Z", "ink")
    return arrow + text(x + 3.6, y + 2.6, "N", 4.6, bold=True)
