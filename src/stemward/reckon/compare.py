"""Two ways held against each other: how far apart they are, and whether chance alone might do it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from stemward.reckon.outcome import design_effect, fisher_p, newcombe

Verdict = Literal["more", "less", "not told apart", "nothing seen"]


@dataclass(frozen=True, slots=True)
class Group:
    """What was seen of one way, by batch."""

    dead: Sequence[int]
    seen: Sequence[int]

    @property
    def share(self) -> float:
        """Dead of those seen; 0 where none were."""
        return sum(self.dead) / sum(self.seen) if sum(self.seen) else 0.0


@dataclass(frozen=True, slots=True)
class Comparison:
    """apart: the one share less the other; low, high: its 95 % interval, widened by `effect` for stems that went alike.

    p: Fisher's exact test of the plain counts; it knows nothing of batches, so the interval decides the verdict.
    """

    apart: float
    low: float
    high: float
    p: float
    effect: float
    verdict: Verdict


def compare(one: Group, other: Group, least_effect: float = 1.0) -> Comparison:
    """The first way against the second.

    least_effect: by how much stems count for less at the least since those of one day go alike; of a single batch the
    counts themselves cannot tell it, so without it one good day would pass for a better way.
    """
    if not sum(one.seen) or not sum(other.seen):
        return Comparison(0.0, -1.0, 1.0, 1.0, 1.0, "nothing seen")
    first, second = (max(least_effect, design_effect(some.dead, some.seen)) for some in (one, other))
    low, high = newcombe(
        sum(one.dead) / first, sum(one.seen) / first, sum(other.dead) / second, sum(other.seen) / second
    )
    alive, other_alive = sum(one.seen) - sum(one.dead), sum(other.seen) - sum(other.dead)
    p = fisher_p(sum(one.dead), alive, sum(other.dead), other_alive)
    verdict: Verdict = "more" if low > 0 else "less" if high < 0 else "not told apart"
    return Comparison(one.share - other.share, low, high, p, max(first, second), verdict)
