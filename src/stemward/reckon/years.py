"""The years ahead: what lives, what it takes and costs, for strategies side by side, as paths drawn by chance.

A plant is one live root. Three pools: standing plants, plants that sprout again after a treatment (several small stems
each), seedlings. A visit finds a share of all; those found die by a chance that is not known but believed, and is the
same through the years of one path. Putting the mean of that chance into the recursion would promise too much: the few
paths with a poor kill hold nearly all that is left.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from scipy.special import betaincinv, betaln, comb

from stemward.reckon.outcome import Prior

Floats = NDArray[np.float64]
Small = NDArray[np.float32]
POOLS = ("standing", "sprouts", "seedlings")
MEASURES = ("hours", "mix_ml", "ae_g", "cents")
Measure = Literal["hours", "mix_ml", "ae_g", "cents"]
BAND = (0.05, 0.50, 0.95)


@dataclass(frozen=True, slots=True, eq=False)
class Ahead:
    """What is believed of t targets in d paths.

    plants: t, live now. find_frac, sprouts, seedlings, decline_frac: t by d. find_frac: share of plants that a visit
    finds; sprouts: stems of a plant that comes back; seedlings: a year for each plant at the start, in the first year;
    decline_frac: of one year's seedlings the next year's share; grow_years: years in which small ones stand.
    """

    plants: Floats
    find_frac: Floats
    sprouts: Floats
    seedlings: Floats
    decline_frac: Floats
    grow_years: float = 4.0


@dataclass(frozen=True, slots=True, eq=False)
class Doing:
    """One way of treating. kill_frac: t by d. takes: for each of MEASURES t by 3, for one stem of each of POOLS."""

    kill_frac: Floats
    takes: Floats


@dataclass(frozen=True, slots=True)
class Strategy:
    """Which way is used in which year: index into the doings, None for no visit. stop_frac: no visit while fewer than
    this share of a target's plants live."""

    name: str
    years: tuple[int | None, ...]
    stop_frac: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Path:
    """One strategy. stems: years + 1 by d, live stems of all targets, the first row now. used: measures by years by d.
    plants: years + 1 by d."""

    name: str
    stems: Small
    plants: Small
    used: Small

    def band(self, of: Literal["stems", "plants"] = "stems") -> Floats:
        """Years + 1 by 3: the 5 %, middle and 95 % path of what lives."""
        values = self.stems if of == "stems" else self.plants
        found: Floats = np.quantile(values, BAND, axis=1).T.astype(float)
        return found

    def spent(self, measure: Measure, discount_frac: float = 0.0) -> Small:
        """Years by d: what has been used up to and with each year, later years worth less by `discount_frac` a year."""
        rows = self.used[MEASURES.index(measure)]
        worth = (1 + discount_frac) ** -np.arange(len(rows), dtype=np.float32)
        found: Small = np.cumsum(rows * worth[:, None], axis=0)
        return found


def run(ahead: Ahead, doings: Sequence[Doing], strategies: Sequence[Strategy]) -> list[Path]:
    """All strategies over the same paths, so that they differ by what is done alone. Deterministic."""
    return [_run(ahead, doings, one) for one in strategies]


def _run(ahead: Ahead, doings: Sequence[Doing], strategy: Strategy) -> Path:
    small = np.float32
    find, each, seed, decline = (
        np.ascontiguousarray(v, dtype=small)
        for v in (ahead.find_frac, ahead.sprouts, ahead.seedlings, ahead.decline_frac)
    )
    start = ahead.plants.astype(small)[:, None]
    targets, paths = find.shape
    kill = {n: doings[n].kill_frac.astype(small) for n in {*strategy.years} if n is not None}
    takes = {n: doings[n].takes.astype(small) for n in kill}
    grow = small(1 / ahead.grow_years)
    up = np.repeat(start, paths, axis=1)
    back, young = np.zeros((targets, paths), small), np.zeros((targets, paths), small)
    new = seed * start
    years = len(strategy.years)
    stems, plants = np.empty((years + 1, paths), small), np.empty((years + 1, paths), small)
    used = np.zeros((len(MEASURES), years, paths), small)
    stems[0] = plants[0] = up.sum(axis=0)
    for year, way in enumerate(strategy.years):
        grown_back, grown_young = back * grow, young * grow
        if way is None:
            up += grown_back + grown_young
            back -= grown_back
            young -= grown_young
        else:
            found = find
            if strategy.stop_frac:
                found = find * (up + back + young >= strategy.stop_frac * start)
            got = [found * pool for pool in (up, back, young)]
            for pool, stems_each in zip(range(3), (None, each, None), strict=True):
                treated = got[pool] if stems_each is None else got[pool] * stems_each
                used[:, year] += takes[way][:, :, pool] @ treated
            rest = small(1) - found
            alive = (got[0] + got[1] + got[2]) * (small(1) - kill[way])
            up = up * rest + (grown_back + grown_young) * rest
            back = (back - grown_back) * rest + alive
            young = (young - grown_young) * rest
        young += new
        new = new * decline
        stems[year + 1] = (up + back * each + young).sum(axis=0)
        plants[year + 1] = (up + back + young).sum(axis=0)
    return Path(strategy.name, stems, plants, used)


def years_to_gone(path: Path, share: float) -> tuple[float | None, float]:
    """The middle number of years until under a share of the plants live, None where half the paths never get there;
    and the share of paths that do."""
    under = path.plants <= share * path.plants[0]
    there = under.any(axis=0)
    first = np.where(there, under.argmax(axis=0), np.inf)
    middle = float(np.median(first))
    return (middle if np.isfinite(middle) else None), float(there.mean())


def break_even(path: Path, cutting: Path, measure: Measure = "cents", discount_frac: float = 0.0) -> int | None:
    """The first year from which on a strategy has, in the middle, used no more than cutting alone; None for never."""
    behind = np.median(path.spent(measure, discount_frac) - cutting.spent(measure, discount_frac), axis=1)
    cheaper = behind <= 0
    if not cheaper.any() or not cheaper[-1]:
        return None
    return int(len(cheaper) - np.argmin(cheaper[::-1])) + 1 if not cheaper.all() else 1


def beta_draws(belief: Prior, count: int, chance: np.random.Generator) -> Floats:
    """Draws of a beta distribution, one from each of `count` equal parts, in an order left to chance."""
    return np.asarray(betaincinv(belief.a, belief.b, spread(count, chance)))


def spread(count: int, chance: np.random.Generator) -> Floats:
    """Numbers between 0 and 1, one from the middle of each of `count` equal parts, in an order left to chance."""
    return chance.permutation((np.arange(count) + 0.5) / count)


def expected_left(belief: Prior, find_frac: float, visits: int) -> float:
    """Share of plants expected to live after so many visits, fixed finding, no seedlings: the moments of the beta
    distribution, the sum over j of C(t, j) (-f)^j B(a + j, b) / B(a, b)."""
    j = np.arange(visits + 1)
    terms = comb(visits, j) * (-find_frac) ** j * np.exp(betaln(belief.a + j, belief.b) - betaln(belief.a, belief.b))
    return float(terms.sum())
