"""The tally stick: seven notches, one a step; and ten stems of which some die."""

from collections.abc import Sequence

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import document, tag

WIDE, HIGH = 364.0, 40.0
PAPER, BARK, INK = LIGHT["paper"], LIGHT["bark"], LIGHT["ink"]
STEM_MM, GAP_MM = 20.0, 4.0


def tally_stick(states: Sequence[str], now: int) -> str:
    """Elements on a 364 by 40 ground. states: of each of seven steps; now: number of the step the peg is over.

    Done is a cut notch, changed since a notch filled with hatch; begun and not begun are marks.
    """
    edge = ["M4 20"]
    marks = []
    for number, state in enumerate(states):
        x = 26 + 52 * number
        if state in ("done", "changed since"):
            edge.append(f"H{x - 6}L{x} 29L{x + 6} 20")
            if state == "changed since":
                hatch = f"M{x - 4} 22L{x - 1} 19M{x - 2} 25L{x + 3} 20M{x} 27L{x + 5} 22"
                marks.append(tag("path", d=hatch, fill="none", stroke=BARK, stroke_width=1.5))
        else:
            long = 6 if state == "not begun" else 10
            marks.append(tag("path", d=f"M{x} 20V{20 + long}", fill="none", stroke=BARK, stroke_width=2))
    edge.append("H360L364 23V33L360 36H4L0 33V23Z")
    stick = tag("path", d="".join(edge), fill=PAPER, stroke=BARK, stroke_width=2)
    x = 26 + 52 * now
    return stick + "".join(marks) + tag("path", d=f"M{x - 6} 4H{x + 6}L{x} 15Z", fill=INK)


def ten_stems(low: int, high: int) -> str:
    """Ten stems in a row, 236 by 24: crosses for the dead, dashed rings for those that may die, then shoots.

    low, high: how many of ten die, rounded outward; 0 <= low <= high <= 10.
    """
    drawn = []
    for number in range(10):
        x = STEM_MM / 2 + number * (STEM_MM + GAP_MM)
        if number < low:
            drawn.append(_cross(x))
        elif number < high:
            drawn.append(_ring(x, dashes="3.4 3.4"))
        else:
            drawn.append(_ring(x) + tag("path", d=f"M{x} 7V1M{x} 4L{x - 3} 1M{x} 4L{x + 3} 1", fill="none",
                                        stroke=INK, stroke_width=1.8))  # fmt: skip
    return document(236.0, 24.0, "".join(drawn))


def _cross(x: float) -> str:
    return tag("path", d=f"M{x - 6} 8L{x + 6} 20M{x + 6} 8L{x - 6} 20", fill="none", stroke=INK, stroke_width=3)


def _ring(x: float, dashes: str = "") -> str:
    look = {"stroke_dasharray": dashes} if dashes else {}
    return tag("circle", cx=x, cy=14, r=6, fill="none", stroke=INK, stroke_width=1.8, **look)
