"""A stump from above: what is wetted, at true size where the page allows it."""

import math
import random
from collections.abc import Mapping

from stemward.drawings.svg import Drawing, area, document, line, path, ring, ruler, text, wet

BARK_MM = 3.0
TRUE_SIZE_UP_TO_MM = 152.4
"""Stumps up to 6 in are drawn 1 : 1; larger ones 1 : 2, 1 : 4 and so on."""
ROOM_MM = 0.8
"""Between bark and edge: a stump of 6 in is then 160 mm wide with all, which both papers hold."""
NARROWEST_MM = 30.0
MM_PER_CM = 10.0


def check_bar(long_cm: float, label: str) -> Drawing:
    """A bar of a known length, to check that a page came out of the printer at true size.

    It is as long as told from outer edge to outer edge. numbers: bar_cm.
    """
    long_mm = long_cm * MM_PER_CM
    half = f"M{3 + long_mm / 2:g} 3.4V6.6"
    # The ends are as thick as their line; it is their outer edges that are so far apart.
    body = line(ruler(3.4, 2.6 + long_mm, 5, 3), 0.8) + line(half, 0.5) + text(6 + long_mm, 6.6, label, 4.4, bold=True)
    return Drawing(document(long_mm + 30, 10.0, body), long_mm + 30, 10.0, 1.0, {"bar_cm": long_cm})


def ring_of(diameter_cm: float, wet_cm2: float) -> float | None:
    """Width of the wet ring from its area, cm; None where the whole face is wet."""
    face_cm2 = math.pi * diameter_cm**2 / 4
    if wet_cm2 >= face_cm2 * (1 - 1e-6):
        return None
    heart_cm = math.sqrt(diameter_cm**2 - 4 * wet_cm2 / math.pi)
    return (diameter_cm - heart_cm) / 2


def scale_for(diameter_mm: float) -> float:
    """1, 1/2, 1/4 ...: the largest at which the stump fits a page."""
    scale = 1.0
    while diameter_mm * scale > TRUE_SIZE_UP_TO_MM * (1 + 1e-9):
        scale /= 2
    return scale


def stump(
    diameter_cm: float,
    ring_cm: float | None,
    seed: str,
    labels: Mapping[str, str],
    paper_scale: float | None = None,
) -> Drawing:
    """A stump from above. ring_cm: width of the wetted outer ring, None for the whole face.

    labels: "across" and "ring", figures with their unit. The bark follows from `seed` alone. paper_scale: millimetres
    on paper per millimetre of wood, None for the largest that fits. User units are millimetres of wood; the bark
    stands outside the diameter, so that the wetted area is true. numbers: diameter_cm, ring_cm, wet_cm2, wet_frac.
    Raises ValueError for a diameter that is not above 0.
    """
    if not 0 < diameter_cm < math.inf:
        raise ValueError(f"Expected diameter_cm > 0, got {diameter_cm}.")
    radius = diameter_cm * MM_PER_CM / 2
    scale = paper_scale or scale_for(2 * radius)
    heart = 0.0 if ring_cm is None else max(radius - ring_cm * MM_PER_CM, 0.0)
    # As thick as told at true size, and still to be seen on a smaller drawing.
    bark = BARK_MM / scale**0.7
    top = radius + bark + ROOM_MM / scale
    half = max(top, NARROWEST_MM / 2 / scale)
    below = (23 if heart else 15) / scale
    body = _bark(radius, bark, scale, seed) + _face(radius, heart, scale, seed)
    body += _dimensions(radius, heart, radius + bark, labels, scale)
    width, height = 2 * half, top + radius + bark + below
    svg = document(width, height, body, -half, -top)
    return Drawing(svg, width * scale, height * scale, scale, _numbers(diameter_cm, radius, heart))


def _numbers(diameter_cm: float, radius: float, heart: float) -> dict[str, float]:
    wet_frac = 1 - (heart / radius) ** 2
    ring_cm = (radius - heart) / MM_PER_CM
    wet_cm2 = wet_frac * math.pi * diameter_cm**2 / 4
    return {"diameter_cm": diameter_cm, "ring_cm": ring_cm, "wet_cm2": wet_cm2, "wet_frac": wet_frac}


def _bark(radius: float, thick: float, scale: float, seed: str) -> str:
    """Bark as if cut with scissors: straight snips, a slow wobble, and furrows."""
    chance = random.Random(f"bark {seed}")
    slow = [(n, chance.uniform(0, 2 * math.pi), chance.uniform(0.02, 0.07)) for n in (2, 3, 5)]
    snips = max(36, round(2 * math.pi * radius * scale / 2.4))
    outline = []
    for step in range(snips):
        angle = 2 * math.pi * (step + chance.uniform(-0.3, 0.3)) / snips
        furrow = chance.choice((0.0, 0.0, 0.0, 0.3, 0.42))
        wobble = sum(share * math.sin(n * angle + phase) for n, phase, share in slow)
        # Never thinner than two fifths of the bark, never outside the room left for it.
        out = radius + thick * min(max(0.9 + wobble - furrow, 0.4), 1.2)
        outline.append((out * math.cos(angle), out * math.sin(angle)))
    return area(path(outline), "bark")


def _face(radius: float, heart: float, scale: float, seed: str) -> str:
    """The wet part, and in the dry heart paper with two thin growth rings."""

    def outline(inset: float) -> str:
        return ring(radius - inset) + (ring(heart + inset) if heart else "")

    # Larger faces are hatched wider, so that none looks darker than another.
    unit = min(0.45 + radius * scale / 250, 0.8) / scale
    dry = area(ring(heart), "paper") if heart else ""
    return dry + wet(outline, (-radius, -radius, radius, radius), unit) + _growth(heart, scale, seed)


def _growth(heart: float, scale: float, seed: str) -> str:
    """Two growth rings and the pith, a little off the middle; nothing where they would only smudge."""
    if heart * scale < 3:
        return ""
    chance = random.Random(f"heart {seed}")
    x, y = (chance.uniform(-0.08, 0.08) * heart for _ in range(2))
    rings = (ring(heart * part, x * (1 - part), y * (1 - part)) for part in (0.38, 0.72))
    return area(ring(0.5 / scale, x, y), "chaff") + "".join(line(d, 0.5 / scale, "chaff") for d in rings)


def _dimensions(radius: float, heart: float, below: float, labels: Mapping[str, str], scale: float) -> str:
    """A line across and, where there is one, a line for the ring, under the stump."""
    thin, size, tick = 0.4 / scale, 4.4 / scale, 1.6 / scale
    y = below + 4 / scale
    words = text(0.0, y + 5.6 / scale, labels["across"], size, "middle", True)
    drawn = line(ruler(-radius, radius, y, tick), thin) + words
    if heart:
        y += 10 / scale
        drawn += line(ruler(heart, radius, y, tick), thin)
        drawn += text(radius, y + 5.6 / scale, labels["ring"], size, "end")
    return drawn
