"""Hack and squirt: the bark unrolled with its cuts, and the stem from above with the same cuts as gaps."""

import math
import random
from collections.abc import Mapping

from stemward.drawings.svg import Drawing, area, document, drop, line, path, ring, ruler, text

WIDE, TOP, HIGH, LEFT = 150.0, 10.0, 30.0, 4.0
RADIUS = 16.0
STRIP = 2 * math.pi * RADIUS
"""The strip is as long as the stem beside it is round."""
MOST_DRAWN = 40
MOST_NUMBERED = 16


def cuts(count: int, labels: Mapping[str, str], diameter_cm: float | None = None, seed: str = "") -> Drawing:
    """A strip of bark and the stem from above. Cuts are evenly spaced; the strip is as long as the stem is round.

    labels: "across", and "spacing" where it is to be written. The bark follows from `seed` alone. More than 40 cuts
    are drawn as 40. numbers: cuts, drawn, and with a diameter also diameter_cm and spacing_cm (from the middle of a
    cut to the middle of the next, along the bark). Raises ValueError for a count below 1.
    """
    if count < 1:
        raise ValueError(f"Expected count >= 1, got {count}.")
    drawn = min(count, MOST_DRAWN)
    step = STRIP / drawn
    xs = [LEFT + step * (n + 0.5) for n in range(drawn)]
    body = _strip(seed) + "".join(_cut(x, step) for x in xs)
    if drawn <= MOST_NUMBERED:
        body += "".join(text(x, TOP + HIGH + 6, str(n), 4.4, "middle") for n, x in enumerate(xs, 1))
    if "spacing" in labels and drawn > 1:
        body += _spacing(xs[0], xs[1], labels["spacing"])
    middle = WIDE - RADIUS - 5
    body += _above(middle, TOP + HIGH / 2, drawn)
    body += line(ruler(middle - RADIUS, middle + RADIUS, TOP + HIGH + 6, 1.6), 0.4)
    body += text(middle, TOP + HIGH + 12.5, labels["across"], 4.4, "middle", True)
    numbers = {"cuts": float(count), "drawn": float(drawn)}
    if diameter_cm is not None:
        numbers |= {"diameter_cm": diameter_cm, "spacing_cm": math.pi * diameter_cm / count}
    return Drawing(document(WIDE, TOP + HIGH + 16, body), WIDE, TOP + HIGH + 16, None, numbers)


def _strip(seed: str) -> str:
    """Bark laid flat: cut by hand above and below, furrowed, open at the ends, which meet on the stem."""
    chance = random.Random(f"strip {seed}")
    xs = [LEFT + STRIP * n / 34 for n in range(35)]
    upper = [(x, TOP + chance.uniform(-0.5, 0.5)) for x in xs]
    lower = [(x, TOP + HIGH + chance.uniform(-0.5, 0.5)) for x in reversed(xs)]
    furrows = ""
    for n in range(40):
        # Above and below the cuts, so that drops stand on plain bark.
        x, y = LEFT + STRIP * (n + chance.uniform(0.2, 0.8)) / 40, chance.choice((2.2, 22.2))
        y += TOP + chance.uniform(-1.6, 1.6)
        furrows += f"M{x:.2f} {y:.2f}l{chance.uniform(-0.4, 0.4):.2f} {chance.uniform(2, 4.5):.2f}"
    ground = area(path(upper + lower), "page") + line(furrows, 0.5, "chaff", stroke_linecap="round")
    ends = f"M{LEFT:.2f} {TOP - 2:.2f}v{HIGH + 4:.2f}m{STRIP:.2f} 0v{-HIGH - 4:.2f}"
    rims = line(path(upper, False) + path(lower, False), 1.2, "bark")
    return ground + rims + line(ends, 0.6, "bark", stroke_dasharray="2 1.4")


def _cut(x: float, step: float) -> str:
    """One cut, slanting, with its dose under it."""
    half, y = min(5.0, step * 0.34), TOP + 10
    slit = f"M{x - half:.2f} {y + 1.4:.2f}Q{x:.2f} {y - 2.2:.2f} {x + half:.2f} {y - 1.6:.2f}"
    slit += f"Q{x:.2f} {y + 2.2:.2f} {x - half:.2f} {y + 1.4:.2f}Z"
    return area(slit, "bark") + drop(x, y + 2.6, min(7.5, max(step * 1.1, 2.2)))


def _spacing(from_: float, to: float, label: str) -> str:
    """From the first cut to the second, with its figure."""
    return line(ruler(from_, to, TOP - 4, 1.4), 0.4) + text(to + 2, TOP - 2.5, label, 4.4)


def _above(cx: float, cy: float, count: int) -> str:
    """The stem from above: wood, bark broken by a gap at each cut, and the dose in each gap."""
    drawn = area(ring(RADIUS - 1.4, cx, cy), "paper")
    drawn += "".join(line(ring(RADIUS * part, cx, cy), 0.5, "chaff") for part in (0.25, 0.52))
    turn = 2 * math.pi / count
    gap, r = min(0.5, turn * 0.42), RADIUS - 1.5
    for n in range(count):
        middle = turn * (n + 0.5) - math.pi / 2
        (x0, y0), (x1, y1) = (_at(cx, cy, r, middle + a) for a in (gap / 2, turn - gap / 2))
        large = int(turn - gap > math.pi)
        drawn += line(f"M{x0:.2f} {y0:.2f}A{r:g} {r:g} 0 {large} 1 {x1:.2f} {y1:.2f}", 3.0, "bark")
        mouth = (_at(cx, cy, RADIUS - 0.4, middle + a) for a in (-gap * 0.36, gap * 0.36))
        drawn += area(path([*mouth, _at(cx, cy, RADIUS - 5.2, middle)]), "dye")
    return drawn


def _at(cx: float, cy: float, radius: float, angle: float) -> tuple[float, float]:
    return cx + radius * math.cos(angle), cy + radius * math.sin(angle)
