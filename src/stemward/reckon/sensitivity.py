"""What an answer depends on most: one input at a time, and by the share of the answer's variance."""

from collections.abc import Callable, Mapping

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
_SLICES = 25


def variance_share(given: Floats, answer: Floats, slices: int = _SLICES) -> float:
    """Share of the answer's variance that knowing one input would take away (first order; Saltelli et al. 2008, from
    memory), from paths already drawn: the variance of the means of equal slices, less what chance alone gives them.

    given, answer: one value a path. 0 where the input or the answer does not vary.
    """
    if np.ptp(given) == 0 or np.ptp(answer) == 0:
        return 0.0
    order = np.argsort(given, kind="stable")
    parts = np.array_split(answer[order], slices)
    sizes = np.array([len(p) for p in parts])
    means = np.array([p.mean() for p in parts])
    total = float(answer.var())
    between = float(np.average((means - answer.mean()) ** 2, weights=sizes))
    within = float(np.average([p.var() for p in parts], weights=sizes))
    # Means of slices differ a little even where nothing depends on the input.
    noise = within * slices / len(answer)
    return min(max((between - noise) / total, 0.0), 1.0)


def one_at_a_time(
    answer: Callable[[Mapping[str, float]], float], ends: Mapping[str, tuple[float, float, float]]
) -> dict[str, tuple[float, float]]:
    """The answer with each input at its low and its high end and all others in the middle.

    ends: (low, middle, high) of each input.
    """
    middle = {name: mid for name, (_, mid, _) in ends.items()}
    return {name: (answer({**middle, name: low}), answer({**middle, name: high}))
            for name, (low, _, high) in ends.items()}  # fmt: skip
