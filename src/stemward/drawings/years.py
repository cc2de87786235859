"""What lives in the years ahead: a band and its middle line over the years, drawn small, one drawing a strategy."""

from collections.abc import Sequence

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import area, document, line, num, path, text

WIDE, HIGH = 240.0, 110.0
LEFT, RIGHT, TOP, FOOT = 34.0, 6.0, 8.0, 18.0
SIZE = 11.0


def years_band(rows: Sequence[tuple[float, float, float]], most: float) -> str:
    """rows: low, middle and high of each year, the first row now. most: what the height stands for, the same on all
    drawings that are held side by side."""
    last = max(len(rows) - 1, 1)

    def at(year: int, value: float) -> tuple[float, float]:
        share = min(value / most, 1.0) if most else 0.0
        return LEFT + (WIDE - LEFT - RIGHT) * year / last, HIGH - FOOT - (HIGH - FOOT - TOP) * share

    numbered = list(enumerate(rows))
    band = [at(n, high) for n, (_, _, high) in numbered] + [at(n, low) for n, (low, _, _) in reversed(numbered)]
    foot = HIGH - FOOT
    return document(WIDE, HIGH, "".join([
        area(path(band), "moss_wash", stroke=LIGHT["moss"], stroke_width=0.8, stroke_dasharray="3 2"),
        line(path([at(n, middle) for n, (_, middle, _) in numbered], closed=False), 2.0),
        line(f"M{num(LEFT)} {num(TOP)}V{num(foot)}H{num(WIDE - RIGHT)}", 1.0),
        text(LEFT - 4, TOP + 8, f"{most:.0f}", SIZE, "end"), text(LEFT - 4, foot, "0", SIZE, "end"),
        text(LEFT, HIGH - 4, "now", SIZE), text(WIDE - RIGHT, HIGH - 4, f"year {last}", SIZE, "end"),
    ]))  # fmt: skip
