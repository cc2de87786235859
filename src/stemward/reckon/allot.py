"""What can be done for a given sum of hours or money a year: where to go first, and what the next hour would bring.

Each year the sum goes, piece by piece, to the target where a piece kills most plants for what it takes, until it is
used up. Paths by chance are carried along: what has lived through a visit is hard to kill, so going back brings less.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
_PIECES = 10
"""A target is treated in so many pieces, so that a sum may end in the middle of one."""


@dataclass(frozen=True, slots=True, eq=False)
class Allotted:
    """share: years by t, how much of each target is visited. spent: years by t. gain: years by t, plants killed for
    one unit of the sum by the piece taken last, 0 where none was. next_gain: by year, what one more unit would have
    killed at best, 0 where all was done. left: years + 1 by t, plants expected to live."""

    share: Floats
    spent: Floats
    gain: Floats
    next_gain: Floats
    left: Floats


def allot(
    plants: Floats, kill_frac: Floats, find_frac: Floats, takes: Floats, back_takes: Floats, budget: Floats
) -> Allotted:
    """Share out a sum each year.

    plants: t. kill_frac, find_frac: t by d. takes, back_takes: t, hours or money for a plant that stands, and for one
    that came back. budget: one sum a year. ValueError for a plant that takes nothing.
    """
    if (takes <= 0).any() or (back_takes <= 0).any():
        raise ValueError("each plant takes something")
    targets, paths = kill_frac.shape
    years = len(budget)
    up = np.repeat(plants[:, None], paths, axis=1).astype(float)
    back = np.zeros_like(up)
    share, spent, gain = (np.zeros((years, targets)) for _ in range(3))
    next_gain, left = np.zeros(years), np.empty((years + 1, targets))
    left[0] = plants
    for year, sum_ in enumerate(budget):
        # All of a target's pieces are alike within a year, so the order by gain is the best use of one year's sum.
        cost = (find_frac * (up * takes[:, None] + back * back_takes[:, None])).mean(axis=1)
        killed = (find_frac * kill_frac * (up + back)).mean(axis=1)
        each = np.divide(killed, cost, out=np.zeros(targets), where=cost > 1e-12)
        rest = float(sum_)
        for target in np.argsort(-each, kind="stable"):
            piece = cost[target] / _PIECES
            many = min(_PIECES, int(rest / piece + 1e-9)) if piece > 0 else 0
            share[year, target] = many / _PIECES
            spent[year, target] = many * piece
            gain[year, target] = each[target] if many else 0.0
            rest -= many * piece
        undone = share[year] < 1
        next_gain[year] = float(each[undone].max()) if undone.any() else 0.0
        done = find_frac * share[year][:, None]
        back = back * (1 - done) + (up + back) * done * (1 - kill_frac)
        up = up * (1 - done)
        left[year + 1] = (up + back).mean(axis=1)
    return Allotted(share, spent, gain, next_gain, left)
