"""What died, and what the books let one expect: shares as so many stems, dead and alive."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from scipy.special import betaincinv, betaln, ndtri


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


def posterior(prior: Prior, dead: float, seen: float) -> Prior:
    """The prior with one's own stems added. ValueError for more dead than seen."""
    if not 0 <= dead <= seen:
        raise ValueError("no more can be dead than were seen")
    return Prior(prior.a + dead, prior.b + seen - dead)


def wilson(dead: float, seen: float, level: float = 0.95) -> tuple[float, float]:
    """Wilson's interval for a share that was seen (Wilson 1927; check values from Newcombe 1998)."""
    if seen <= 0:
        return 0.0, 1.0
    z = float(ndtri(0.5 + level / 2))
    share = dead / seen
    middle = share + z * z / (2 * seen)
    reach = z * math.sqrt(share * (1 - share) / seen + z * z / (4 * seen * seen))
    whole = 1 + z * z / seen
    return max((middle - reach) / whole, 0.0), min((middle + reach) / whole, 1.0)


def newcombe(
    dead: float, seen: float, other_dead: float, other_seen: float, level: float = 0.95
) -> tuple[float, float]:
    """Interval of the difference of two shares, from the two Wilson intervals (Newcombe 1998, method 10)."""
    one, other = dead / seen, other_dead / other_seen
    (low, high), (other_low, other_high) = wilson(dead, seen, level), wilson(other_dead, other_seen, level)
    apart = one - other
    return (
        apart - math.hypot(one - low, other_high - other),
        apart + math.hypot(high - one, other - other_low),
    )


def fisher_p(dead: int, alive: int, other_dead: int, other_alive: int) -> float:
    """Fisher's exact test of two groups, both sides: the chance of tables no likelier than the one seen."""
    row, other_row, column = dead + alive, other_dead + other_alive, dead + other_dead
    low, high = max(0, column - other_row), min(row, column)

    # Logarithms of the chances up to a common factor, which the sum takes out again.
    logs = [
        -float(betaln(k + 1, row - k + 1) + betaln(column - k + 1, other_row - column + k + 1))
        for k in range(low, high + 1)
    ]
    chances = [math.exp(one - max(logs)) for one in logs]
    seen = chances[dead - low]
    return min(sum(p for p in chances if p <= seen * (1 + 1e-7)) / sum(chances), 1.0)


def exact_interval(dead: int, seen: int, level: float = 0.95) -> tuple[float, float]:
    """Clopper and Pearson's interval for a share that was seen, which never covers too seldom."""
    tail = (1 - level) / 2
    low = 0.0 if dead == 0 else float(betaincinv(dead, seen - dead + 1, tail))
    high = 1.0 if dead == seen else float(betaincinv(dead + 1, seen - dead, 1 - tail))
    return low, high


def design_effect(dead: Sequence[int], seen: Sequence[int]) -> float:
    """How much wider an interval is because stems of one batch and day are alike: method of moments, at least 1.

    dead, seen: by batch. One batch alone says nothing: 1.
    """
    batches, total = len(seen), sum(seen)
    if batches < 2 or total == 0:
        return 1.0
    share = sum(dead) / total
    if share in (0.0, 1.0):
        return 1.0
    off = sum((d - n * share) ** 2 / (n * share * (1 - share)) for d, n in zip(dead, seen, strict=True) if n)
    return max(off / (batches - 1), 1.0)
