"""The weeks of the year: in which of them work can be done, out of years of hours, each year one case."""

import datetime
import math
from dataclasses import dataclass

import numpy as np

from stemward.plan.open_hours import Judged

DAY_OF_WORK_H = 4
"""Open hours that make a day worth going out for: engineering guess."""
LEAST_YEARS = 3
"""Years from which an interval is worked out; of fewer the least and the most are shown."""
LEVEL = 0.9


@dataclass(frozen=True, slots=True)
class Week:
    """One week of the year. first: its first day as (month, day). days: working days in each year, of 7 that were
    known, scaled up where some were not. low, high: an interval of the mean, or least and most of few years."""

    number: int
    first: tuple[int, int]
    days: tuple[float, ...]
    mean: float
    low: float
    high: float


def weeks_of(judged: Judged, zone: datetime.tzinfo | None = None) -> list[Week]:
    """Working days to expect in each of 52 weeks from 1 January (the last holds the year's end)."""
    hours = judged.hours
    offset = _offset(hours.at[0], zone) if len(hours.at) else np.timedelta64(0, "s")
    local = hours.at + offset
    day = local.astype("datetime64[D]")
    open_now = np.array([state == "open" for state in judged.states()])
    days, at = np.unique(day, return_inverse=True)
    counts = np.bincount(at, weights=open_now.astype(float))
    known = np.bincount(at)
    year = days.astype("datetime64[Y]").astype(int) + 1970
    of_year = (days - days.astype("datetime64[Y]").astype("datetime64[D]")).astype(int)
    week = np.minimum(of_year // 7, 51)
    found = []
    for number in range(52):
        per_year = []
        for one in np.unique(year).tolist():
            mine = (week == number) & (year == one) & (known >= 20)
            if mine.sum() >= 4:
                per_year.append(7 * float(np.mean(counts[mine] >= DAY_OF_WORK_H)))
        first = datetime.date(2001, 1, 1) + datetime.timedelta(days=7 * number)
        mean, low, high = _interval(per_year)
        found.append(Week(number + 1, (first.month, first.day), tuple(per_year), mean, low, high))
    return found


def _offset(at: np.datetime64, zone: datetime.tzinfo | None) -> np.timedelta64:
    """Standard time of a place against UTC: weeks are counted without daylight saving."""
    if zone is None:
        return np.timedelta64(0, "s")
    year = int(str(at)[:4])
    january = datetime.datetime(year, 1, 10, tzinfo=zone).utcoffset() or datetime.timedelta()
    return np.timedelta64(int(january.total_seconds()), "s")


def _interval(values: list[float]) -> tuple[float, float, float]:
    """Mean with a 90 % t interval of it, or with the least and the most of few; nan of none."""
    if not values:
        return math.nan, math.nan, math.nan
    mean = float(np.mean(values))
    if len(values) < LEAST_YEARS:
        return mean, min(values), max(values)
    from scipy.stats import t

    half = float(t.ppf((1 + LEVEL) / 2, len(values) - 1)) * float(np.std(values, ddof=1)) / math.sqrt(len(values))
    return mean, max(0.0, mean - half), min(7.0, mean + half)
