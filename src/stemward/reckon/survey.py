"""Plots in a thicket: how many stems there are, how surely, and how many more plots would help."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import ndtr, ndtri, stdtrit

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Estimate:
    """What plots say: mean a plot, total, standard error of the total, and the ends of its interval.

    corrected: whether the share of the patch that was looked at counts (finite population).
    """

    plots: int
    mean: float
    total: float
    se: float
    low: float
    high: float
    corrected: bool


def estimate(
    counts: ArrayLike, plot_m2: float, patch_m2: float, level: float = 0.90, corrected: bool = True
) -> Estimate:
    """Total of a patch from counts in plots of one size. ValueError for fewer than two plots.

    Equal-sized plots laid at random: mean, variance and t interval (Freese 1962, Elementary Forest Sampling).
    """
    found = np.asarray(counts, float)
    if len(found) < 2:
        raise ValueError("at least two plots")
    many = patch_m2 / plot_m2
    share = min(len(found) / many, 1.0) if corrected else 0.0
    mean = float(found.mean())
    error = standard_error(found, share) * many
    reach = float(stdtrit(len(found) - 1, 0.5 + level / 2)) * error
    return Estimate(len(found), mean, mean * many, error, max(mean * many - reach, 0.0), mean * many + reach, corrected)


def standard_error(counts: ArrayLike, looked_at_frac: float = 0.0) -> float:
    """Standard error of the mean of counts, with the share that was looked at counted out."""
    found = np.asarray(counts, float)
    return float(np.sqrt(found.var(ddof=1) / len(found) * (1 - looked_at_frac)))


def plots_wanted(cv_frac: float, error_frac: float, t: float, all_plots: float = math.inf) -> float:
    """Plots for an error under a share of the mean, before rounding up: 1 / (E2 / (t2 CV2) + 1 / N)."""
    return 1 / (error_frac**2 / (t**2 * cv_frac**2) + (0 if math.isinf(all_plots) else 1 / all_plots))


def allocated(plots: float, weights: Sequence[float], spreads: Sequence[float]) -> tuple[float, ...]:
    """Plots for each patch in proportion to its share times its spread (Neyman), before rounding."""
    parts = [w * s for w, s in zip(weights, spreads, strict=True)]
    return tuple(plots * part / sum(parts) for part in parts)


def weighted(values: Sequence[float], weights: Sequence[float]) -> float:
    """Mean of values by weight."""
    return sum(v * w for v, w in zip(values, weights, strict=True)) / sum(weights)


def per_ground(tallied: float, plots: int, factor: float) -> float:
    """Stems on an acre (or hectare) from the stems tallied in plots of 1 / factor acre."""
    return tallied / plots * factor


def plot_radius_m(plot_m2: float) -> float:
    """Radius of a round plot of that ground, m."""
    return math.sqrt(plot_m2 / math.pi)


def t_reach(plots: int, level: float = 0.95) -> float:
    """How many standard errors an interval reaches either way."""
    return float(stdtrit(plots - 1, 0.5 + level / 2))


def proportion_se(share: float, seen: int) -> float:
    """Standard error of a share from a simple random sample, with n - 1 (Freese 1962)."""
    return math.sqrt(share * (1 - share) / (seen - 1))


def proportion_reach(share: float, seen: int, z: float) -> float:
    """How far an interval for a share reaches either way: z standard errors and half a unit (Freese 1962)."""
    return z * proportion_se(share, seen) + 1 / (2 * seen)


def variance(counts: ArrayLike) -> float:
    """Variance of counts, with n - 1."""
    return float(np.asarray(counts, float).var(ddof=1))


def plots_needed(cv_frac: float, error_frac: float, all_plots: float = math.inf, level: float = 0.95) -> int:
    """How many plots for an error under a share of the mean, worked again until t fits."""
    if not error_frac > 0 or cv_frac <= 0:
        raise ValueError("shares above 0")
    n = 30.0
    for _ in range(50):
        t = float(stdtrit(max(n - 1, 1), 0.5 + level / 2))
        wanted = plots_wanted(cv_frac, error_frac, t, all_plots)
        if math.ceil(wanted) == math.ceil(n):
            break
        n = max(wanted, 2.0)
    return math.ceil(n - 1e-9)


def stratified(parts: Sequence[Estimate]) -> tuple[float, float]:
    """Total and its standard error over patches that were sampled each on its own."""
    return sum(p.total for p in parts), math.sqrt(sum(p.se**2 for p in parts))


def ratio(stems: ArrayLike, clumps: ArrayLike) -> tuple[float, float]:
    """Stems a clump over plots, and its standard error."""
    y, x = np.asarray(stems, float), np.asarray(clumps, float)
    r = float(y.sum() / x.sum())
    off = y - r * x
    return r, float(np.sqrt((off**2).sum() / (len(x) - 1) / len(x)) / x.mean())


def bootstrap(
    counts: ArrayLike, rng: np.random.Generator, level: float = 0.90, draws: int = 2000
) -> tuple[float, float]:
    """Interval of the mean by bias-corrected and accelerated resampling (BCa), for counts with many zeros."""
    found = np.asarray(counts, float)
    n = len(found)
    if n < 2 or np.all(found == found[0]):
        return float(found.mean()), float(found.mean())
    means = found[rng.integers(0, n, (draws, n))].mean(axis=1)
    below = float(np.clip((means < found.mean()).mean(), 1 / draws, 1 - 1 / draws))
    bias = float(ndtri(below))
    left_out = (found.sum() - found) / (n - 1)
    off = left_out.mean() - left_out
    accel = float((off**3).sum() / (6 * max((off**2).sum(), 1e-300) ** 1.5))
    ends = []
    for tail in ((1 - level) / 2, (1 + level) / 2):
        z = bias + float(ndtri(tail))
        ends.append(float(np.quantile(means, float(ndtr(bias + z / (1 - accel * z))))))
    return ends[0], ends[1]


def disagree(one: tuple[float, float], other: tuple[float, float], share: float = 0.25) -> bool:
    """True if two intervals differ by more than a share of the wider: then both are shown."""
    wide = max(one[1] - one[0], other[1] - other[0])
    return wide > 0 and max(abs(one[0] - other[0]), abs(one[1] - other[1])) > share * wide


def class_means(low_cm: float, high_cm: float) -> tuple[float, float]:
    """Mean of d and mean of d2 for sizes spread evenly over a class, cm and cm2: the midpoint is biased for faces."""
    return (low_cm + high_cm) / 2, (low_cm**2 + low_cm * high_cm + high_cm**2) / 3


def belt_m2(length_m: float, width_m: float) -> float:
    """Ground of a belt transect, m2."""
    return length_m * width_m


def circle_m2(radius_m: float) -> float:
    """Ground of a round plot, m2: 3.59 m is a hundredth of an acre."""
    return math.pi * radius_m**2
