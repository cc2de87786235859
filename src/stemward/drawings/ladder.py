"""The pour ladder: a bottle with its marks and what is poured up to which level."""

from collections.abc import Sequence

from stemward.drawings.svg import Drawing, area, document, drop, line, num, oblong, text, wet
from stemward.units import convert

LEFT, TOP, WIDE, HIGH, PAGE = 19.0, 8.0, 25.0, 88.0, 78.0
RIGHT, BOTTOM = LEFT + WIDE, TOP + HIGH
THIN = 1.4
"""A slice lower than this, in mm, is shown by a drop as well."""
MOST_FRAC = 1.05
"""A bottle may be drawn a little overfull: volumes come rounded."""
APART = 10.5
"""Least distance of the words of two levels, mm."""

Slice = tuple[str, float, bool]


def even_marks(capacity_ml: float, units: str) -> list[float]:
    """Round marks up to a bottle's capacity, mL: every 1, 2, 4 ... fl oz, or every 10, 20, 50 ... mL."""
    unit_ml = convert(1.0, "fl oz", "ml") if units == "us" else 10.0
    steps = (1, 2, 4, 8, 16, 32, 64) if units == "us" else (1, 2, 5, 10, 20, 50, 100)
    step = next((s for s in steps if capacity_ml / (s * unit_ml) <= 9), steps[-1])
    return [n * step * unit_ml for n in range(1, int(capacity_ml / (step * unit_ml) + 1e-9) + 1)]


def pour_ladder(
    capacity_ml: float,
    marks_ml: Sequence[tuple[float, str]],
    slices: Sequence[Slice],
    levels: Sequence[str],
    torn: bool = False,
) -> Drawing:
    """A bottle filled in steps; fill height is proportional to volume.

    marks_ml: the bottle's marks with their figures, "" for a mark without one. slices: name, mL and whether it is
    herbicide, in the order of pouring from the bottom. levels: figure at the top of each slice. torn: only the lower
    part of the bottle is drawn, up to capacity_ml. numbers: capacity_ml, filled_ml, herbicide_ml.
    Raises ValueError where the slices do not fit.
    """
    filled_ml = sum(ml for _, ml, _ in slices)
    if not capacity_ml > 0 or filled_ml > capacity_ml * MOST_FRAC:
        raise ValueError(f"Expected slices of {capacity_ml} mL or less in all, got {filled_ml}.")
    tops = [BOTTOM - HIGH * sum(ml for _, ml, _ in slices[: n + 1]) / capacity_ml for n in range(len(slices))]
    body = _fill(slices, tops) + _marks(marks_ml, capacity_ml) + _walls(torn) + _levels(slices, levels, tops)
    herbicide_ml = sum(ml for _, ml, herbicide in slices if herbicide)
    numbers = {"capacity_ml": capacity_ml, "filled_ml": filled_ml, "herbicide_ml": herbicide_ml}
    return Drawing(document(PAGE, BOTTOM + 4, body), PAGE, BOTTOM + 4, None, numbers)


def _fill(slices: Sequence[Slice], tops: Sequence[float]) -> str:
    """What stands in the bottle; what is too thin to be seen hangs over it as drops."""
    bottoms = [BOTTOM, *tops[:-1]]
    drawn = "".join(_slice(herbicide, *ends) for (_, _, herbicide), *ends in zip(slices, tops, bottoms, strict=True))
    thin = [s for s, top, bottom in zip(slices, tops, bottoms, strict=True) if 0 < bottom - top < THIN]
    apart = WIDE / (len(thin) + 1)
    return drawn + "".join(drop(LEFT + apart * n, tops[-1] - 9, 6.0, s[2]) for n, s in enumerate(thin, 1))


def _slice(herbicide: bool, top: float, bottom: float) -> str:
    if bottom <= top:
        return ""
    level = line(f"M{num(LEFT)} {num(top)}H{num(RIGHT)}", 0.4)
    if not herbicide:
        return area(oblong((LEFT, top, RIGHT, bottom)), "page") + level

    def outline(inset: float) -> str:
        inset = min(inset, (bottom - top) / 2)
        return oblong((LEFT + inset, top + inset, RIGHT - inset, bottom - inset))

    return wet(outline, (LEFT, top, RIGHT, bottom), 0.5) + level


def _walls(torn: bool) -> str:
    """Walls outside of what they hold, so that it keeps its width; a lip, or a torn edge where more follows."""
    left, right, bottom = LEFT - 0.6, RIGHT + 0.6, BOTTOM + 0.6
    walls = line(f"M{num(left)} {num(TOP)}V{num(bottom)}H{num(right)}V{num(TOP)}", 1.2, stroke_linejoin="round")
    if torn:
        steps = "".join(f"l{num(WIDE / 16)} {1.6 if n % 2 else -1.6}" for n in range(16))
        return walls + line(f"M{num(LEFT)} {num(TOP + 0.8)}{steps}", 0.5, "bark")
    return walls + line(f"M{num(left - 1.8)} {num(TOP)}h1.8M{num(right)} {num(TOP)}h1.8", 1.2, stroke_linecap="round")


def _marks(marks_ml: Sequence[tuple[float, str]], capacity_ml: float) -> str:
    """The bottle's marks as a ruler at its left."""
    drawn, ticks = "", ""
    for ml, figure in marks_ml:
        y = BOTTOM - HIGH * ml / capacity_ml
        ticks += f"M{num(LEFT - 0.6)} {num(y)}h{-3.4 if figure else -1.8}"
        drawn += text(LEFT - 4.8, y + 1.3, figure, 3.6, "end") if figure else ""
    return drawn + (line(ticks, 0.5) if ticks else "")


def spread(wanted: Sequence[float], apart: float, top: float, bottom: float) -> list[float]:
    """Places as near to those wanted (from the bottom up) as lets them stand `apart`, between top and bottom."""
    places: list[float] = []
    for y in wanted:
        places.append(min(y, places[-1] - apart if places else bottom))
    for n in range(len(places) - 1, -1, -1):
        least = top if n == len(places) - 1 else places[n + 1] + apart
        places[n] = max(places[n], least)
    return places


def _levels(slices: Sequence[Slice], levels: Sequence[str], tops: Sequence[float]) -> str:
    """Numbered arrows at the levels; their words keep apart where levels are close."""
    drawn, x = "", RIGHT + 1.2
    rows = zip(slices, levels, tops, spread(tops, APART, 4.0, BOTTOM - 2), strict=True)
    for number, ((name, _, _), figure, top, y) in enumerate(rows, 1):
        drawn += line(f"M{num(x + 1.5)} {num(top)}L{num(x + 5.5)} {num(y)}h1.2", 0.5)
        drawn += area(f"M{num(x)} {num(top)}l3 -1.5v3Z", "ink")
        drawn += text(x + 7.8, y + 1.2, f"{number}. {name}", 4.2, bold=True) + text(x + 7.8, y + 6.0, figure, 3.8)
    return drawn
