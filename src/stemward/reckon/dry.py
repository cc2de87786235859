"""The chance of staying dry for some hours: what is least and most possible, and an estimate with persistence.

Hourly chances are not independent: rain comes in spells. A chance that is given for many hours is one event.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

NEWARK_ODDS = (124.0,)
"""Odds ratio of one hour's rain with the next's at Newark in 2013: wet 0.068, wet after wet 0.721 (open data set)."""


@dataclass(frozen=True, slots=True)
class Dry:
    """Chance of no rain at all over some hours. least and most: bounds that hold whatever the hours have to do with one
    another. persistent: neighbouring hours tied by one odds ratio; nan where a block of hours has one chance."""

    least: float
    most: float
    persistent: float


def odds_ratio(wet: ArrayLike) -> float:
    """How strongly neighbouring hours hold together, from a series of wet (True) and dry hours without gaps.

    P11 P00 / (P10 P01), half a case added to each so that a short series gives a number.
    """
    series = np.asarray(wet, bool)
    before, after = series[:-1], series[1:]
    counts = [np.count_nonzero((before == a) & (after == b)) + 0.5 for a, b in ((1, 1), (0, 0), (1, 0), (0, 1))]
    return float(counts[0] * counts[1] / (counts[2] * counts[3]))


def both_wet(first: float, second: float, odds: float) -> float:
    """Chance that two neighbouring hours are both wet, given each one's and their odds ratio (Plackett 1965)."""
    total = 1 + (first + second) * (odds - 1)
    root = np.sqrt(max(0.0, total * total - 4 * odds * (odds - 1) * first * second))
    return float(2 * odds * first * second / (total + root)) if total + root > 0 else 0.0


def dry_hours(chances: Sequence[float], odds: float = NEWARK_ODDS[0]) -> Dry:
    """Chance of staying dry over hours with these chances of rain (0 to 1), in order."""
    p = [min(1.0, max(0.0, float(one))) for one in chances]
    if not p:
        return Dry(1.0, 1.0, 1.0)
    dry = 1 - p[0]
    for before, now in pairwise(p):
        if before >= 1:
            dry = 0.0
            break
        both_dry = 1 - before - now + both_wet(before, now, odds)
        dry *= min(1.0, max(0.0, both_dry / (1 - before)))
    least, most = max(0.0, 1 - sum(p)), 1 - max(p)
    return Dry(least, most, min(most, max(least, dry)))


def dry_blocks(whole: Sequence[float], touched: Sequence[float]) -> Dry:
    """The same from chances for blocks of hours: `whole` for blocks that lie within the hours asked for, `touched` for
    those that only reach into them. A block is one event; any part of it is at least as likely dry as the whole."""
    every = [*whole, *touched]
    least = max(0.0, 1 - sum(every))
    return Dry(least, 1 - max(whole, default=0.0), float("nan"))


def observed_dry(wet: ArrayLike, hours: int) -> NDArray[np.bool_]:
    """For each hour of a series without gaps: was it and were the hours after it, `hours` in all, dry?"""
    series = np.concatenate([[0], np.cumsum(np.asarray(wet, int))])
    return np.asarray(series[hours:] - series[:-hours] == 0)
