"""The pour ladder: a bottle with its marks and what is poured up to which level."""

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import Drawing, document, line, tag, text, wet
from stemward.units import convert

WIDE, HIGH, LEFT, TOP = 34.0, 100.0, 22.0, 12.0


def even_marks(capacity_ml: float, units: str) -> list[float]:
    """Round marks up to a bottle's capacity, mL: every 1, 2, 4 ... fl oz, or every 10, 20, 50 ... mL."""
    unit_ml = convert(1.0, "fl oz", "ml") if units == "us" else 10.0
    steps = (1, 2, 4, 8, 16, 32, 64) if units == "us" else (1, 2, 5, 10, 20, 50, 100)
    step = next((s for s in steps if capacity_ml / (s * unit_ml) <= 9), steps[-1])
    return [n * step * unit_ml for n in range(1, int(capacity_ml / (step * unit_ml) + 1e-9) + 1)]


def pour_ladder(
    capacity_ml: float,
    marks_ml: list[tuple[float, str]],
    slices: list[tuple[str, float, bool]],
    levels: list[str],
) -> Drawing:
    """A bottle filled in steps; fill height is proportional to volume.

    marks_ml: the bottle's marks with their figures. slices: name, mL and whether it is herbicide, in the order of
    pouring from the bottom. levels: figure at the top of each slice.
    """
    per_ml = HIGH / capacity_ml
    bottom = TOP + HIGH
    body = _fill(slices, per_ml, bottom)
    body += line(f"M{LEFT} {TOP}V{bottom}H{LEFT + WIDE}V{TOP}", 1.4)
    for ml, figure in marks_ml:
        y = bottom - ml * per_ml
        body += tag("path", d=f"M{LEFT - 4:.4g} {y:.5g}H{LEFT:.4g}", stroke=LIGHT["ink"], stroke_width=0.6)
        body += text(LEFT - 5, y + 1.3, figure, 3.6, "end")
    body += _arrows(slices, levels, per_ml, bottom)
    height = bottom + 6
    return Drawing(document(LEFT + WIDE + 52, height, body), LEFT + WIDE + 52, height)


def _fill(slices: list[tuple[str, float, bool]], per_ml: float, bottom: float) -> str:
    drawn, level = "", bottom
    for _, ml, herbicide in slices:
        high = ml * per_ml
        level -= high
        if herbicide and high > 0:
            area = f"M{LEFT} {level:.6g}H{LEFT + WIDE}V{level + high:.6g}H{LEFT}Z"
            drawn += wet(area, (LEFT, level, LEFT + WIDE, level + high), 0.5)
        else:
            drawn += tag("rect", x=LEFT, y=level, width=WIDE, height=high, fill=LIGHT["page"])
        drawn += tag("path", d=f"M{LEFT} {level:.6g}H{LEFT + WIDE}", stroke=LIGHT["ink"], stroke_width=0.5)
    return drawn


def _arrows(slices: list[tuple[str, float, bool]], levels: list[str], per_ml: float, bottom: float) -> str:
    """Numbered arrows at the levels; words keep apart where levels are close."""
    drawn, level, last = "", bottom, bottom + 14
    for number, ((name, ml, _), figure) in enumerate(zip(slices, levels, strict=True), 1):
        level -= ml * per_ml
        y = min(level, last - 11)
        last = y
        x = LEFT + WIDE
        drawn += tag("path", d=f"M{x + 2:.4g} {level:.5g}L{x + 9:.4g} {y:.5g}", stroke=LIGHT["ink"], stroke_width=0.6)
        drawn += tag("path", d=f"M{x + 1:.4g} {level:.5g}l3.2 -1.6v3.2Z", fill=LIGHT["ink"])
        drawn += text(x + 10, y + 0.6, f"{number}. {name}", 4.4, bold=True) + text(x + 10, y + 5.4, figure, 4.0)
    return drawn
