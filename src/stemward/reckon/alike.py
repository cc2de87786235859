"""What is believed of a share when stems of one batch are alike: mean and likeness together, on a grid.

Stems treated from one bottle on one day share its strength, its weather and a person's hand, so twenty of them tell
less than twenty stems of twenty days. Each batch has a share of its own about the common one (beta-binomial); how far
apart the batches lie is learned with it. Nothing is drawn by chance here: the grid gives the same figures each time.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import betaincinv, betaln

from stemward.reckon.outcome import Prior

Floats = NDArray[np.float64]
SHARES, LIKENESSES = 161, 12
LIKENESS = Prior(1.0, 9.0)
"""What is expected of the likeness of a batch's stems before any are counted, 0 alone to 1 all one: on the average
0.1, seldom over 0.3 (engineering guess, no source)."""
_JEFFREYS = 0.5
"""Added to both sides of what is expected, so that no book makes a thing certain."""


@dataclass(frozen=True, slots=True, eq=False)
class Belief:
    """share: n shares; likeness: m likenesses of one batch's stems; weight: n by m, together 1."""

    share: Floats
    likeness: Floats
    weight: Floats

    @property
    def mean(self) -> float:
        """The expected share."""
        return float(self.weight.sum(axis=1) @ self.share)


def believe(prior: Prior, dead: Sequence[int] = (), seen: Sequence[int] = ()) -> Belief:
    """The prior with one's own stems, by batch. ValueError for more dead than seen in any batch."""
    if any(not 0 <= d <= n for d, n in zip(dead, seen, strict=True)):
        raise ValueError("no more can be dead than were seen")
    angle = (np.arange(SHARES) + 0.5) * np.pi / 2 / SHARES
    share = np.sin(angle) ** 2
    likeness = betaincinv(LIKENESS.a, LIKENESS.b, (np.arange(LIKENESSES) + 0.5) / LIKENESSES)
    # Even steps of the angle put more shares near 0 and 1; half a power more on each side makes up for it.
    logs = (prior.a + _JEFFREYS - 0.5) * np.log(share) + (prior.b + _JEFFREYS - 0.5) * np.log1p(-share)
    logs = np.repeat(logs[:, None], LIKENESSES, axis=1)
    a, b = _ends(share, likeness)
    for d, n in zip(dead, seen, strict=True):
        logs += betaln(a + d, b + n - d) - betaln(a, b)
    weight = np.exp(logs - logs.max())
    return Belief(share, likeness, weight / weight.sum())


def _ends(share: Floats, likeness: Floats) -> tuple[Floats, Floats]:
    """The two numbers of the beta distribution of a batch's own share, n by m."""
    worth = (1 - likeness) / likeness
    return share[:, None] * worth, (1 - share)[:, None] * worth


def share_interval(belief: Belief, level: float = 0.90) -> tuple[float, float]:
    """The middle `level` of what is believed of the share."""
    low, high = quantiles(belief, [(1 - level) / 2, (1 + level) / 2])
    return float(low), float(high)


def quantiles(belief: Belief, at: Sequence[float] | Floats) -> Floats:
    """Shares under which what is believed holds so much, read off between the grid's points."""
    held = belief.weight.sum(axis=1)
    edges = np.sin(np.arange(SHARES + 1) * np.pi / 2 / SHARES) ** 2
    found: Floats = np.interp(at, np.concatenate(([0.0], np.cumsum(held))), edges)
    return found


def draws(belief: Belief, count: int, chance: np.random.Generator) -> Floats:
    """Shares as believed, drawn by chance."""
    return quantiles(belief, chance.random(count))


def next_batch(belief: Belief, stems: int, level: float = 0.90) -> tuple[int, int]:
    """How many of a next batch of so many stems will be dead, least and most.

    Whole stems cannot hold a level exactly; each end is the one whose tail comes nearest.
    """
    held = np.concatenate(([0.0], np.cumsum(next_chances(belief, stems))))
    tail = (1 - level) / 2
    low = int(np.argmin(np.abs(held[:-1] - tail)))
    high = int(np.argmin(np.abs(held[1:] - (1 - tail))))
    return low, max(low, high)


def next_chances(belief: Belief, stems: int) -> Floats:
    """The chance of each number of dead, 0 to `stems`, in a next batch."""
    a, b = _ends(belief.share, belief.likeness)
    k = np.arange(float(stems))[:, None, None]
    # From none dead upwards, each number of dead by its ratio to the one before.
    steps = np.log((stems - k) / (k + 1) * (a + k) / (b + stems - k - 1))
    logs = np.concatenate((np.zeros((1, *a.shape)), np.cumsum(steps, axis=0))) + betaln(a, b + stems) - betaln(a, b)
    each: Floats = np.einsum("ksl,sl->k", np.exp(logs), belief.weight)
    return each


def effect(belief: Belief, stems_a_batch: float) -> float:
    """By how much one's own stems count for less than so many stems apart: 1 + (n - 1) x likeness (Kish 1965, from
    memory)."""
    likeness = float(belief.weight.sum(axis=0) @ belief.likeness)
    return 1 + max(stems_a_batch - 1, 0) * likeness
