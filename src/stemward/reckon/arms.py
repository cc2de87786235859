"""Two arms of a test: plants drawn into pairs alike in size and place, one of each pair by a seeded coin."""

from bisect import bisect_left

import numpy as np
from numpy.typing import NDArray

from stemward.reckon.outcome import newcombe

Floats = NDArray[np.float64]
_CLASSES_CM = (2.54, 7.62, 15.24)
_USUAL_DEAD = 0.9
# The size classes people count in (1, 3 and 6 in), and the share dead at which arms are held beside each other.


def two_arms(
    diameter_cm: Floats, x_m: Floats, y_m: Floats, each: int, rng: np.random.Generator
) -> tuple[list[int], list[int]]:
    """Rows of two arms with `each` plants, or as many as there are pairs. Columns (n,).

    Plants of a size class are put in order of place, along a curve that keeps neighbours together, and taken in pairs;
    where there are more pairs than wanted, pairs evenly through the order. A coin sends one of a pair to each arm.
    """
    order = sorted(
        range(len(diameter_cm)),
        key=lambda n: (int(np.searchsorted(_CLASSES_CM, diameter_cm[n], side="right")), _along(x_m, y_m, n), n),
    )
    pairs = [(order[n], order[n + 1]) for n in range(0, len(order) - 1, 2)]
    wanted = max(0, min(each, len(pairs)))
    taken = [pairs[int(n)] for n in np.floor((np.arange(wanted) + rng.uniform()) * len(pairs) / max(wanted, 1))]
    heads = rng.integers(0, 2, len(taken)).tolist()
    one = sorted(pair[head] for pair, head in zip(taken, heads, strict=True))
    other = sorted(pair[1 - head] for pair, head in zip(taken, heads, strict=True))
    return one, other


def _along(x_m: Floats, y_m: Floats, n: int, bits: int = 8) -> int:
    """How far along a Z-order curve over all places one lies (Morton 1966, from memory)."""
    found = 0
    for axis, values in enumerate((x_m, y_m)):
        span = float(np.ptp(values)) or 1.0
        step = min(int((values[n] - values.min()) / span * 2**bits), 2**bits - 1)
        for bit in range(bits):
            found |= (step >> bit & 1) << (2 * bit + axis)
    return found


def told_apart(each: int) -> tuple[int, int] | None:
    """With so many plants in each arm and nine of ten dead in one: (dead in that one, the most dead in the other that
    is told apart); None where nothing would be. By Newcombe's interval, stems that stand alone."""
    dead = round(_USUAL_DEAD * each)

    def not_told(other: int) -> bool:
        return newcombe(dead, each, other, each)[0] <= 0

    # The fewer are dead in the other, the easier it is told: once it is not, it stays so.
    first_not = bisect_left(range(dead), True, key=not_told)
    return (dead, first_not - 1) if first_not else None
