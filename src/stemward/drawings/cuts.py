"""Hack and squirt: the bark unrolled with its cuts, and the stem from above with the same cuts as gaps."""

import math
from collections.abc import Mapping

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import Drawing, document, line, tag, text

WIDTH, STRIP_TOP, STRIP_HIGH = 150.0, 12.0, 26.0
DROP = "M0 0C1.6 2.4 2.2 3.4 2.2 4.6A2.2 2.2 0 1 1 -2.2 4.6C-2.2 3.4 -1.6 2.4 0 0Z"
MOST_DRAWN = 40


def cuts(count: int, labels: Mapping[str, str]) -> Drawing:
    """A strip of bark and the stem from above. labels: "across". Not to scale; cuts are evenly spaced.

    More than 40 cuts are drawn as 40.
    """
    drawn = min(count, MOST_DRAWN)
    strip_wide = 96.0
    strip = {"x": 4, "y": STRIP_TOP, "width": strip_wide, "height": STRIP_HIGH}
    body = tag("rect", fill=LIGHT["page"], stroke=LIGHT["bark"], stroke_width=1.2, **strip)
    step = strip_wide / drawn
    for n in range(drawn):
        x = 4 + step * (n + 0.5)
        half = min(5.0, step * 0.36)
        y = STRIP_TOP + 9
        cut = f"M{x - half:.4g} {y + 1.6:.4g}L{x + half:.4g} {y - 1.6:.4g}"
        body += line(cut, 2.2, "bark", stroke_linecap="round")
        body += tag("path", d=DROP, transform=f"translate({x:.4g} {y + 4:.4g})", fill=LIGHT["dye"])
        body += text(x, STRIP_TOP + STRIP_HIGH + 6, str(n + 1), 4.4, "middle") if drawn <= 16 else ""
    body += _above(126.0, STRIP_TOP + STRIP_HIGH / 2, 16.0, drawn)
    body += text(126.0, STRIP_TOP + STRIP_HIGH + 13, labels["across"], 4.6, "middle", True)
    height = STRIP_TOP + STRIP_HIGH + 18
    return Drawing(document(WIDTH, height, body), WIDTH, height)


def _above(cx: float, cy: float, radius: float, count: int) -> str:
    """The stem from above: wood, bark broken by a gap at each cut, and the dose in each gap."""
    drawn = tag("circle", cx=cx, cy=cy, r=radius - 1.5, fill=LIGHT["paper"], stroke=LIGHT["chaff"], stroke_width=0.5)
    drawn += tag("circle", cx=cx, cy=cy, r=radius * 0.5, fill="none", stroke=LIGHT["chaff"], stroke_width=0.5)
    gap = min(0.42, 2 * math.pi / count * 0.4)
    for n in range(count):
        middle = 2 * math.pi * (n + 0.5) / count - math.pi / 2
        begin, end = middle + gap / 2, middle + 2 * math.pi / count - gap / 2
        x0, y0 = cx + radius * math.cos(begin), cy + radius * math.sin(begin)
        x1, y1 = cx + radius * math.cos(end), cy + radius * math.sin(end)
        large = int(end - begin > math.pi)
        arc = f"M{x0:.4g} {y0:.4g}A{radius:.4g} {radius:.4g} 0 {large} 1 {x1:.4g} {y1:.4g}"
        drawn += tag("path", d=arc, fill="none", stroke=LIGHT["bark"], stroke_width=3)
        x, y = cx + (radius - 1.2) * math.cos(middle), cy + (radius - 1.2) * math.sin(middle)
        drawn += tag("circle", cx=x, cy=y, r=1.5, fill=LIGHT["dye"])
    return drawn
