"""Whether intervals for a kill rate hold what they say, on tracts made up with a known truth.

    python bench/calibration.py

2,000 tracts: the true share drawn from a prior of 6 dead and 2 alive (with half a stem more each, as the program adds),
5 batches of 12 stems, then a next batch of 40. Once the stems are alone, once those of a batch are alike, as far as the
program expects. The plain binomial takes stems of one batch as alone; "by moments" widens it by the design effect.
"""

import numpy as np
from scipy.stats import betabinom

from stemward.reckon.alike import _JEFFREYS, LIKENESS, believe, next_batch, share_interval
from stemward.reckon.outcome import Prior, design_effect, interval, posterior

TRACTS, BATCHES, STEMS, NEXT, LEVEL = 2000, 5, 12, 40, 0.90
PRIOR = Prior(6.0, 2.0)


def batch_shares(share: float, likeness: float, count: int, chance: np.random.Generator) -> np.ndarray:
    """Shares of batches about the common one."""
    if likeness == 0:
        return np.full(count, share)
    worth = (1 - likeness) / likeness
    return chance.beta(share * worth + 1e-12, (1 - share) * worth + 1e-12, count)


def covered(alike: bool, seed: int) -> dict[str, float]:
    """How often each interval holds the truth."""
    chance = np.random.default_rng(seed)
    found: dict[str, list[bool]] = {}
    for _ in range(TRACTS):
        share = chance.beta(PRIOR.a + _JEFFREYS, PRIOR.b + _JEFFREYS)
        likeness = chance.beta(LIKENESS.a, LIKENESS.b) if alike else 0.0
        own = batch_shares(share, likeness, BATCHES + 1, chance)
        dead = chance.binomial(STEMS, own[:-1])
        then = chance.binomial(NEXT, own[-1])
        seen = [STEMS] * BATCHES
        prior = Prior(PRIOR.a + _JEFFREYS, PRIOR.b + _JEFFREYS)
        plain = posterior(prior, int(dead.sum()), BATCHES * STEMS)
        widened = design_effect(dead.tolist(), seen)
        less = posterior(prior, dead.sum() / widened, BATCHES * STEMS / widened)
        belief = believe(PRIOR, dead.tolist(), seen)
        low, high = next_batch(belief, NEXT, LEVEL)
        plain_low, plain_high = betabinom.ppf([0.05, 0.95], NEXT, plain.a, plain.b)
        for name, ends, truth in (
            ("share, plain binomial", interval(plain.a, plain.b, LEVEL), share),
            ("share, by moments", interval(less.a, less.b, LEVEL), share),
            ("share, ours", share_interval(belief, LEVEL), share),
            ("next batch, plain binomial", (plain_low, plain_high), then),
            ("next batch, ours", (low, high), then),
        ):
            found.setdefault(name, []).append(bool(ends[0] <= truth <= ends[1]))
    return {name: float(np.mean(held)) for name, held in found.items()}


def main() -> int:
    """Print a table for each kind of tract."""
    for alike in (False, True):
        print(f"{'stems of a batch alike' if alike else 'stems alone'}: 90 % intervals hold, of {TRACTS} tracts")
        for name, share in covered(alike, 7).items():
            print(f"  {name:28s} {100 * share:.1f} %")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
