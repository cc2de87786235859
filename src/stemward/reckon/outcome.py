"""What died, and what the books let one expect: shares as so many stems, dead and alive."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from scipy.special import betaincinv


@dataclass(frozen=True, slots=True)
class Prior:
    """What is expected before one's own stems are counted: as if `a` had died and `b` had lived."""

    a: float
    b: float


def prior_from_percent(dead_frac: float, stems: float) -> Prior:
    """A share known without a count, taken as so many stems. ValueError outside 0 to 1 or for no stems."""
    if not 0 <= dead_frac <= 1 or stems <= 0:
        raise ValueError("a share is between 0 and 1, and counts for some stems")
    return Prior(stems * dead_frac, stems * (1 - dead_frac))


def pool(priors: Sequence[Prior], weights: Sequence[float]) -> Prior:
    """Several priors as one: dead and living stems added up, each times its weight."""
    return Prior(
        sum(p.a * w for p, w in zip(priors, weights, strict=True)),
        sum(p.b * w for p, w in zip(priors, weights, strict=True)),
    )


def interval(a: float, b: float, level: float = 0.90) -> tuple[float, float]:
    """The middle `level` of a beta distribution, least and greatest share."""
    tail = (1 - level) / 2
    return float(betaincinv(a, b, tail)), float(betaincinv(a, b, 1 - tail))


def ten_stems(low_frac: float, high_frac: float) -> tuple[int, int]:
    """How many of ten stems die, least and most, rounded outward: 0.70 to 0.80 is 7 to 8, 0.62 to 0.91 is 6 to 10."""
    return math.floor(10 * low_frac + 1e-9), math.ceil(10 * high_frac - 1e-9)
