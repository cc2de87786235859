"""A stump from above: what is wetted, at true size where the page allows it."""

import math
import random
from collections.abc import Mapping

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import Drawing, document, line, ring, ruler, tag, text, wet

BARK_MM = 3.0
TRUE_SIZE_UP_TO_MM = 152.4
"""Stumps up to 6 in are drawn 1 : 1; larger ones 1 : 2, 1 : 4 and so on."""
ROOM_MM = 14.0
MM_PER_CM = 10.0


def check_bar(long_cm: float, label: str) -> Drawing:
    """A bar of a known length, to check that a page came out of the printer at true size."""
    long_mm = long_cm * MM_PER_CM
    body = line(ruler(3, 3 + long_mm, 5, 3), 0.8)
    body += text(6 + long_mm, 6.6, label, 4.2)
    return Drawing(document(long_mm + 30, 10.0, body), long_mm + 30, 10.0, 1.0)


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
    while diameter_mm * scale > TRUE_SIZE_UP_TO_MM:
        scale /= 2
    return scale


def stump(diameter_cm: float, ring_cm: float | None, seed: str, labels: Mapping[str, str]) -> Drawing:
    """A stump from above. ring_cm: width of the wetted outer ring, None for the whole face.

    labels: "across" and "ring", figures with their unit. The wobble of the bark follows from `seed` alone. User
    units are millimetres of wood; the bark stands outside the diameter, so that the wetted area is true.
    """
    radius = diameter_cm * MM_PER_CM / 2
    scale = scale_for(2 * radius)
    room = ROOM_MM / scale
    below = room * (1.2 if ring_cm is None else 1.8)
    size, height = 2 * (radius + room), 2 * radius + room / 2 + BARK_MM + below
    body = _bark(radius, seed) + _wet(radius, ring_cm, scale) + _heart(radius, ring_cm, scale)
    body += _dimensions(radius, ring_cm, labels, scale)
    svg = document(size, height, body, -size / 2, -radius - room / 2)
    return Drawing(svg, size * scale, height * scale, scale)


def _bark(radius: float, seed: str) -> str:
    wobble = random.Random(f"bark {seed}")
    phases = [(n, wobble.uniform(0, 2 * math.pi), wobble.uniform(0.3, 0.9) / n) for n in (3, 5, 8, 13)]
    outline = []
    for step in range(180):
        angle = math.pi * step / 90
        out = radius + BARK_MM + sum(a * math.sin(n * angle + p) for n, p, a in phases)
        outline.append(f"{'M' if step == 0 else 'L'}{out * math.cos(angle):.4g} {out * math.sin(angle):.4g}")
    return tag("path", d=" ".join(outline) + "Z", fill=LIGHT["bark"])


def _wet(radius: float, ring_cm: float | None, scale: float) -> str:
    heart = 0.0 if ring_cm is None else max(radius - ring_cm * MM_PER_CM, 0.0)
    face = tag("circle", cx=0, cy=0, r=radius, fill=LIGHT["paper"])
    area = ring(radius) + (ring(heart) if heart else "")
    return face + wet(area, (-radius, -radius, radius, radius), 0.5 / scale)


def _heart(radius: float, ring_cm: float | None, scale: float) -> str:
    heart = radius if ring_cm is None else radius - ring_cm * MM_PER_CM
    if ring_cm is None or heart <= 0:
        return ""
    return "".join(
        tag("circle", cx=0, cy=0, r=heart * part, fill="none", stroke=LIGHT["chaff"], stroke_width=0.5 / scale)
        for part in (0.35, 0.7)
    )


def _dimensions(radius: float, ring_cm: float | None, labels: Mapping[str, str], scale: float) -> str:
    thin, size, tick = 0.4 / scale, 4.2 / scale, 2 / scale
    y = radius + 8 / scale
    drawn = line(ruler(-radius, radius, y, tick), thin) + text(
        0, y + 5.5 / scale, labels["across"], size, "middle", True
    )
    if ring_cm is not None and radius > ring_cm * MM_PER_CM:
        inner, y = radius - ring_cm * MM_PER_CM, radius + 16 / scale
        drawn += line(ruler(inner, radius, y, tick), thin)
        drawn += text((inner + radius) / 2, y + 5.5 / scale, labels["ring"], size, "middle")
    return drawn
