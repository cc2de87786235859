"""How long the years ahead take: 10,000 paths, 15 years, 6 strategies, 20 targets, with their bands.

    python bench/years.py

Beside it, in the same run, one plain multiplication of as many numbers, as a measure of the machine.
"""

import time

import numpy as np

from stemward.reckon.outcome import Prior
from stemward.reckon.years import BAND, MEASURES, Ahead, Doing, Strategy, beta_draws, run

TARGETS, PATHS, YEARS, STRATEGIES = 20, 10_000, 15, 6


def main() -> int:
    """Print seconds, and the ratio to the plain multiplication."""
    chance = np.random.default_rng(1)
    shape = (TARGETS, PATHS)
    land = Ahead(np.full(TARGETS, 100.0), chance.uniform(0.7, 0.95, shape), chance.uniform(1, 5, shape),
                 chance.uniform(0, 0.3, shape), chance.uniform(0.3, 0.7, shape))  # fmt: skip
    takes = np.full((len(MEASURES), TARGETS, 3), 0.1)
    doings = [
        Doing(np.stack([beta_draws(Prior(4 + n, 2), PATHS, chance) for _ in range(TARGETS)]), takes) for n in range(6)
    ]
    strategies = [Strategy(str(n), (n,) * YEARS, 0.01 * (n % 2)) for n in range(STRATEGIES)]
    began = time.perf_counter()
    for path in run(land, doings, strategies):
        path.band()
        for measure in MEASURES:
            np.quantile(path.spent(measure), BAND, axis=1)
    took = time.perf_counter() - began
    began = time.perf_counter()
    one = np.ones(shape, np.float32)
    for _ in range(YEARS * STRATEGIES):
        one = one * np.float32(0.999)
    plain = time.perf_counter() - began
    print(f"{PATHS} paths, {YEARS} years, {STRATEGIES} strategies, {TARGETS} targets: {took:.2f} s with bands "
          f"({took / plain:.0f} times one multiplication of as many numbers, {plain:.3f} s)")  # fmt: skip
    return 0 if took < 1 else 1


if __name__ == "__main__":
    raise SystemExit(main())
