"""How much more or less than reckoned a person puts on, learned from batches; and how much to mix last."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import integrate
from scipy.special import gammaln, stdtr, stdtrit


@dataclass(frozen=True, slots=True)
class UseRate:
    """What is believed of ln(used / reckoned): normal with unknown mean and spread (normal-inverse-gamma).

    a, b: of the spread. mean, kappa: of the mean, and how many batches it counts for. batches: really seen.
    """

    a: float = 3.0
    b: float = 0.125
    mean: float = 0.0
    kappa: float = 0.283
    batches: int = 0


PRIOR = UseRate()
"""Before any batch: the rate has a standard deviation of 0.47 on the log scale, a factor 1.6 (engineering guess)."""


def learn(rate: UseRate, ln_ratios: Sequence[float]) -> UseRate:
    """What is believed after batches with these ln(used / reckoned). Conjugate, so that order changes nothing."""
    n = len(ln_ratios)
    if n == 0:
        return rate
    mean = math.fsum(ln_ratios) / n
    spread = math.fsum((y - mean) ** 2 for y in ln_ratios)
    kappa = rate.kappa + n
    off = rate.kappa * n * (mean - rate.mean) ** 2 / (2 * kappa)
    middle = (rate.kappa * rate.mean + n * mean) / kappa
    return UseRate(rate.a + n / 2, rate.b + spread / 2 + off, middle, kappa, rate.batches + n)


def _student(rate: UseRate) -> tuple[float, float, float]:
    """Degrees of freedom, middle and scale of the next batch's ln ratio."""
    return 2 * rate.a, rate.mean, math.sqrt(rate.b * (rate.kappa + 1) / (rate.a * rate.kappa))


def need_quantile_ml(rate: UseRate, reckoned_ml: float, share: float) -> float:
    """The amount that the day's need stays under with this chance, mL. The mean does not exist and is never given."""
    freedom, middle, scale = _student(rate)
    return reckoned_ml * math.exp(middle + scale * float(stdtrit(freedom, share)))


def chance_short(rate: UseRate, reckoned_ml: float, mixed_ml: float) -> float:
    """The chance that an amount does not reach."""
    if mixed_ml <= 0 or reckoned_ml <= 0:
        return 1.0 if reckoned_ml > 0 else 0.0
    freedom, middle, scale = _student(rate)
    return 1.0 - float(stdtr(freedom, (math.log(mixed_ml / reckoned_ml) - middle) / scale))


def expected_left_ml(rate: UseRate, reckoned_ml: float, mixed_ml: float) -> float:
    """What is left over on average, counting nothing where it does not reach: E[(mixed - need)+], mL."""
    if mixed_ml <= 0:
        return 0.0
    if reckoned_ml <= 0:
        return mixed_ml
    freedom, middle, scale = _student(rate)
    top = (math.log(mixed_ml / reckoned_ml) - middle) / scale
    norm = gammaln((freedom + 1) / 2) - gammaln(freedom / 2) - 0.5 * math.log(freedom * math.pi)

    def left(t: float) -> float:
        density = math.exp(norm - (freedom + 1) / 2 * math.log1p(t * t / freedom))
        return (mixed_ml - reckoned_ml * math.exp(middle + scale * t)) * density

    return float(integrate.quad(left, -np.inf, top, limit=200)[0])


def last_batch_quantile(minutes_back: float) -> float:
    """Which share of days the last batch should reach on, by the way back to the jug.

    Being short costs the way back and another mix, being over a rest to use up: engineering guess, no source, 0.3 up
    to five minutes and rising to 0.8 for a long walk. ValueError for less than no minutes.
    """
    if minutes_back < 0:
        raise ValueError("minutes back to the jug are not negative")
    cost_short, cost_over = 3.0 + max(minutes_back - 5.0, 0.0) * 0.5, 7.0
    return min(cost_short / (cost_short + cost_over), 0.8)


_SHARED = 0.5
"""Which part of how rates differ comes from the place and tools, that people share: engineering guess, no source."""


def start_from(others: Sequence[Sequence[float]], prior: UseRate = PRIOR) -> UseRate:
    """What is believed of a person before their own batches, from the ln ratios of the others, each person's apart.

    Rates are taken as a part that all share and a part of each person's own, together as wide as the prior; all
    spreads are in units of a batch's own, so that nothing need be known of that. Without others: the prior.
    """
    whole = 1.0 / prior.kappa
    shared, own = _SHARED * whole, (1 - _SHARED) * whole
    precision, weighed = 1.0 / shared, prior.mean / shared
    for ratios in others:
        if ratios:
            each = 1.0 / (own + 1.0 / len(ratios))
            precision += each
            weighed += each * math.fsum(ratios) / len(ratios)
    return UseRate(prior.a, prior.b, weighed / precision, 1.0 / (1.0 / precision + own))
