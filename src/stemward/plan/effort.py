"""Hours, money and months of a way."""

import datetime
import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stemward.checks import Job
from stemward.handbook import Book
from stemward.handbook.field import Season
from stemward.kinds import Tract
from stemward.plan.learned import HIGH, LOW, Learned
from stemward.reckon.effort import hours_band, money_band_cents, shown_hours

SLOW_SHARE = 1 / 3
"""A third of the pace in thorns: practitioner's judgement, no source."""
THORNS = "thorns"
HOUR_S = 3600
Floats = NDArray[np.float64]


def hours_of(job: Job, book: Book, days: Learned | None = None) -> tuple[float, float]:
    """Fewest and most hours of a job, rounded outward for show; (0, 0) where nothing is done.

    days: what past days teach about how long the method takes here; without any, the usual paces.
    """
    low, high = _band(job, book)
    if high and days is not None:
        middle = math.sqrt(low * high)
        low, high = middle * days.factor(LOW), middle * days.factor(HIGH)
    return shown_hours(low, high) if high else (0.0, 0.0)


def reckoned_h(job: Job, book: Book) -> float:
    """The middle of the usual band, hours, against which days are held that were really worked."""
    low, high = _band(job, book)
    return math.sqrt(low * high)


def _band(job: Job, book: Book) -> tuple[float, float]:
    fast_s, slow_s = seconds_of(job.way.how, job.target.species, job.stems.diameter_cm, job.stems.stems, book)
    return float(fast_s.sum()) / HOUR_S, float(slow_s.sum()) / HOUR_S


def seconds_of(how: str, species: str, diameter_cm: Floats, count: Any, book: Book) -> tuple[Floats, Floats]:
    """Seconds for each row of plants at the fast and at the slow end of the usual paces; 0 where no pace is known.

    diameter_cm, count: (n,), size and number of plants. Plants with thorns go at a third of the pace.
    """
    sizes, count = np.asarray(diameter_cm, dtype=float), np.asarray(count, dtype=float)
    fast_s, slow_s = np.zeros(len(sizes)), np.zeros(len(sizes))
    share = SLOW_SHARE if any(hazard.hazard == THORNS for hazard in book.hazards(species)) else 1.0
    for pace in book.paces:
        if pace.method == how:
            of_size = (sizes >= pace.low_cm) & (sizes < pace.high_cm)
            least_h, most_h = hours_band(1.0, pace.low_per_hour * share, pace.high_per_hour * share)
            fast_s[of_size], slow_s[of_size] = least_h * HOUR_S, most_h * HOUR_S
    return fast_s * count, slow_s * count


def money_of(job: Job, hours: tuple[float, float], tract: Tract, book: Book) -> tuple[int, int] | None:
    """Least and most of wage and product, cents; None unless the wage and the price of every jug are written down."""
    if tract.wage_cents_h is None:
        return None
    low, high = money_band_cents(*hours, tract.wage_cents_h, 0, 0, 0, 1)
    total_ml = float(job.mix_ml.sum())
    spread = book.defaults["spread_factor"].number
    for view, product in job.by_product:
        priced = [c for c in product.containers if c.price_cents is not None]
        if not priced:
            return None
        jug, share = priced[0], view.way.concentration_frac or 0.0
        least, most = total_ml * share / spread, total_ml * share * spread
        ends = money_band_cents(0, 0, 0, least, most, jug.price_cents or 0, jug.capacity_ul / 1000)
        low, high = low + ends[0], high + ends[1]
    return low, high


def when_of(job: Job, book: Book, as_of: datetime.date) -> str:
    """Where the day stands in the year of a way: "best", "poor", "open", or "" where nothing is on record."""
    seasons = book.seasons(job.target.species, job.way.how)
    if not seasons:
        return ""
    held = held_on(seasons, as_of)
    if any(not season.best for season in held):
        return "poor"
    return "best" if any(season.best for season in held) else "open"


def held_on(seasons: tuple[Season, ...], as_of: datetime.date) -> tuple[Season, ...]:
    """The seasons that hold on a day."""
    return tuple(season for season in seasons if season.holds((as_of.month, as_of.day)))


def stems_treated(job: Job) -> int:
    """How many stems a job is about."""
    return int(np.sum(job.stems.stems))
