"""Basal bark: the foot of a stem from the side, the band that is wetted, and a boot for scale."""

import math
import random
from collections.abc import Mapping

from stemward.drawings.svg import Drawing, area, document, line, path, ruler, text, wet

WIDE_MM, HIGH_MM = 120.0, 96.0
BOOT_CM = (30.0, 25.0)
"""Length and height of a work boot (engineering guess), for scale."""
ABOVE = 1.45
"""How much of the stem is shown, over the height of the band."""


def band(diameter_cm: float, band_cm: float, seed: str, labels: Mapping[str, str]) -> Drawing:
    """A stem from the side with its band hatched from the ground up, and a boot beside it.

    labels: "across" and "band", figures with their unit. The bark follows from `seed` alone. numbers: diameter_cm,
    band_cm, wet_cm2 (all round). Raises ValueError for sizes that are not above 0.
    """
    if not (0 < diameter_cm < math.inf and 0 < band_cm < math.inf):
        raise ValueError(f"Expected sizes above 0, got {diameter_cm} and {band_cm}.")
    ground = HIGH_MM - 14.0
    scale = min((ground - 6.0) / (band_cm * ABOVE * 10), 46.0 / (diameter_cm * 10), 1.0)
    per_cm = 10 * scale
    middle, half = 44.0, diameter_cm * per_cm / 2
    high, top = band_cm * per_cm, max(ground - band_cm * ABOVE * per_cm, 4.0)

    def banded(inset: float) -> str:
        left, right = middle - half + inset, middle + half - inset
        return path([(left, ground - high + inset), (right, ground - high + inset), (right, ground - inset),
                     (left, ground - inset)])  # fmt: skip

    body = _stem(middle, half, top, ground, seed)
    body += wet(banded, (middle - half, ground - high, middle + half, ground), 0.8)
    body += line(f"M4 {ground:.2f}H{WIDE_MM - 4:.2f}", 0.8, "bark") + _boot(middle + half + 10, ground, per_cm)
    body += line(ruler(middle - half, middle + half, ground + 4, 1.6), 0.4)
    body += text(middle, ground + 9.6, labels["across"], 4.4, "middle", True)
    aside = middle - half - 5
    ends = "".join(f"M{aside - 1.6:.2f} {y:.2f}h3.2" for y in (ground, ground - high))
    body += line(f"M{aside:.2f} {ground:.2f}V{ground - high:.2f}{ends}", 0.4)
    body += text(aside - 2.4, ground - high / 2 + 1.5, labels["band"], 4.4, "end", True)
    numbers = {"diameter_cm": diameter_cm, "band_cm": band_cm, "wet_cm2": math.pi * diameter_cm * band_cm}
    return Drawing(document(WIDE_MM, HIGH_MM, body), WIDE_MM, HIGH_MM, scale, numbers)


def _stem(middle: float, half: float, top: float, ground: float, seed: str) -> str:
    """The stem: paper between two edges of bark, torn off above, with the flare of the root collar."""
    chance = random.Random(f"band {seed}")
    tear = [(middle - half + 2 * half * n / 8, top + chance.uniform(0, 2.4)) for n in range(9)]
    stem = path([*tear, (middle + half, ground), (middle - half, ground)])
    edges = f"M{middle - half:.2f} {tear[0][1]:.2f}V{ground:.2f}M{middle + half:.2f} {tear[-1][1]:.2f}V{ground:.2f}"
    flare = "".join(
        f"M{middle + side * half:.2f} {ground - 2.5:.2f}q{side * 0.6:.2f} 2.2 {side * 2.6:.2f} 2.5" for side in (-1, 1)
    )
    return area(stem, "page") + line(edges + flare, 1.2, "bark")


def _boot(left: float, ground: float, per_cm: float) -> str:
    """A boot, toe outward."""
    long, high = BOOT_CM[0] * per_cm, BOOT_CM[1] * per_cm
    shaft = long * 0.42
    d = (
        f"M{left:.2f} {ground - high:.2f}h{shaft:.2f}l{long * 0.05:.2f} {high * 0.55:.2f}"
        f"q{long * 0.35:.2f} {high * 0.06:.2f} {long * 0.5:.2f} {high * 0.25:.2f}v{high * 0.2:.2f}H{left:.2f}Z"
    )
    sole = f"M{left:.2f} {ground - high * 0.08:.2f}h{long * 0.97:.2f}"
    return area(d, "paper") + line(d, 0.8, "ink") + line(sole, 0.5, "ink")
