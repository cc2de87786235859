"""Foliar: a plant against a person's outline, with what the hand can reach."""

import math
import random
from collections.abc import Mapping

from stemward.drawings.shapes import placed
from stemward.drawings.svg import Drawing, document, line, path, ring, text, wet

WIDE_MM, HIGH_MM = 120.0, 90.0
PERSON_M, REACH_M = 1.75, 1.83
"""Height of the person drawn, and how high spray goes evenly from the ground: 6 ft, Texas A&M AgriLife Extension."""


def plant(height_m: float, width_share: float, seed: str, labels: Mapping[str, str]) -> Drawing:
    """A crown of that height beside a person; over reach it bears the sign "know".

    labels: "height" and "reach", figures with their unit. width_share: width of the crown over its height. numbers:
    height_m, over_reach (1 or 0). Raises ValueError for sizes that are not above 0.
    """
    if not (0 < height_m < math.inf and 0 < width_share < math.inf):
        raise ValueError(f"Expected sizes above 0, got {height_m} and {width_share}.")
    ground = HIGH_MM - 10.0
    per_m = min((ground - 8.0) / max(height_m, PERSON_M + 0.35), 70.0 / (height_m * width_share))
    middle, high = 40.0, height_m * per_m
    half = high * width_share / 2
    over = height_m > REACH_M + 1e-9

    def crown(inset: float) -> str:
        return path(_crown(middle, ground, half, high, seed, inset))

    body = line(f"M{middle:.2f} {ground:.2f}V{ground - high * 0.5:.2f}", 1.4, "bark")
    body += wet(crown, (middle - half, ground - high, middle + half, ground), 0.8)
    body += line(f"M4 {ground:.2f}H{WIDE_MM - 4:.2f}", 0.8, "bark") + _person(92.0, ground, per_m)
    reach = ground - REACH_M * per_m
    body += line(f"M{middle + half + 3:.2f} {reach:.2f}H{WIDE_MM - 6:.2f}", 0.4, stroke_dasharray="2 1.4")
    body += text(WIDE_MM - 6, reach - 1.6, labels["reach"], 4.4, "end")
    aside = max(middle - half - 4, 3.0)
    ends = "".join(f"M{aside - 1.6:.2f} {y:.2f}h3.2" for y in (ground, ground - high))
    body += line(f"M{aside:.2f} {ground:.2f}V{ground - high:.2f}{ends}", 0.4)
    body += text(middle, ground + 6.4, labels["height"], 4.4, "middle", True)
    if over:
        body += placed("know", middle, max(ground - high + 8, 8.0), 9.0)
    numbers = {"height_m": height_m, "over_reach": float(over)}
    return Drawing(document(WIDE_MM, HIGH_MM, body), WIDE_MM, HIGH_MM, None, numbers)


def _crown(
    middle: float, ground: float, half: float, high: float, seed: str, inset: float
) -> list[tuple[float, float]]:
    """A crown as if cut with scissors, from a little above the ground to the top."""
    chance = random.Random(f"plant {seed}")
    bottom = ground - high * 0.12
    mid_y, half_y = (bottom + ground - high) / 2, (bottom - ground + high) / 2
    points = []
    for n in range(48):
        angle = 2 * math.pi * n / 48
        out = 1 - 0.09 * chance.random()
        points.append(
            (
                middle + max(half * out - inset, 0.2) * math.cos(angle),
                mid_y + max(half_y * out - inset, 0.2) * math.sin(angle),
            )
        )
    return points


def _person(x: float, ground: float, per_m: float) -> str:
    """An outline of a person with one arm up and forward."""
    tall = PERSON_M * per_m
    head = tall * 0.07
    neck, hip = ground - tall * 0.84, ground - tall * 0.48
    limbs = (
        f"M{x:.2f} {neck:.2f}V{hip:.2f}M{x:.2f} {hip:.2f}L{x - tall * 0.1:.2f} {ground:.2f}"
        f"M{x:.2f} {hip:.2f}L{x + tall * 0.1:.2f} {ground:.2f}"
        f"M{x:.2f} {neck + tall * 0.04:.2f}L{x - tall * 0.2:.2f} {neck + tall * 0.12:.2f}"
        f"L{x - tall * 0.34:.2f} {neck - tall * 0.02:.2f}"
        f"M{x:.2f} {neck + tall * 0.04:.2f}L{x + tall * 0.1:.2f} {hip:.2f}"
    )
    return line(limbs, 1.6, stroke_linecap="round") + line(ring(head, x, ground - tall + head), 1.6)
