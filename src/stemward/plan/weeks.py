"""The weeks of the year: in which of them work can be done, out of years of hours, each year one case."""

import datetime
import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stemward.kinds.hours import Hours
from stemward.plan.open_hours import Judged
from stemward.reckon.air.ground import SAP, sap_flows, warmth_days

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
    """Working days to expect in each of 52 weeks from 1 January (the last holds the year's end).

    Out of hours a day counts from four open ones on. Out of days one counts that is dry, with the day after it where
    more than half a day has to stay dry, and whose mean temperature and wind shut nothing: the coarser of the two.
    Days of whose hours too few are known, or whose rain is not, are no days without work but left out.
    """
    hours = judged.hours
    offset = _offset(hours.at[0], zone) if len(hours.at) else np.timedelta64(0, "s")
    day = (hours.at + offset).astype("datetime64[D]")
    told = np.ones(len(hours.at)) if judged.dry_h <= 0 else np.where(np.isnan(hours.rain_mm), 0.0, 1.0)
    if hours.kind == "days":
        return _weeks(hours.at.astype("datetime64[D]"), _days_open(judged), np.asarray(24 * told, np.float64))
    open_now = np.array([state == "open" for state in judged.states()])
    days, at = np.unique(day, return_inverse=True)
    counts = np.bincount(at, weights=open_now.astype(float))
    return _weeks(days, counts >= DAY_OF_WORK_H, np.asarray(np.bincount(at, weights=told), np.float64))


OF_A_DAY = ("cold under", "heat over", "wind over", "snow")
"""Matters that a day's means can tell of."""
DRY_DAY_MM = 0.254
"""A day with less is dry: 0.01 in, as the weather service counts rain (American Meteorological Society, Glossary)."""


def _days_open(judged: Judged) -> NDArray[np.bool_]:
    """Days that count, out of a table of days; a day of which rain is not known does not."""
    with np.errstate(invalid="ignore"):
        dry = judged.hours.rain_mm < DRY_DAY_MM
    found = dry.copy()
    if judged.dry_h > 12:
        found &= np.append(dry[1:], False)
    for reason in judged.reasons:
        if reason.rule.matter in OF_A_DAY and reason.rule.weight == "shut":
            found &= ~reason.closed
    return np.asarray(found)


def _weeks(days: NDArray[np.datetime64], counts: NDArray[np.bool_], known: NDArray[np.float64]) -> list[Week]:
    """Weeks out of days: which count, and how many hours of each are known."""
    year = days.astype("datetime64[Y]").astype(int) + 1970
    of_year = (days - days.astype("datetime64[Y]").astype("datetime64[D]")).astype(int)
    week = np.minimum(of_year // 7, 51)
    found = []
    for number in range(52):
        per_year = []
        for one in np.unique(year).tolist():
            mine = (week == number) & (year == one) & (known >= 20)
            if mine.sum() >= 4:
                per_year.append(7 * float(np.mean(counts[mine])))
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


@dataclass(frozen=True, slots=True)
class Flow:
    """Sap and leaves of one year at a place, as days of the year from 1; None where it did not come to that."""

    year: int
    sap_from: int | None
    sap_to: int | None
    leaves_out: int | None


def flows_of(hours: Hours, zone: datetime.tzinfo | None = None) -> list[Flow]:
    """When sap rises strongly and leaves come out in each year of hours, from daily highest and lowest temperatures.

    Rules from memory (reckon.air.ground): a guide for maples and their like, before what a person sees.
    """
    if not len(hours.at):
        return []
    day = (hours.at + _offset(hours.at[0], zone)).astype("datetime64[D]")
    days, at = np.unique(day, return_inverse=True)
    most, least = np.full(len(days), -np.inf), np.full(len(days), np.inf)
    known = ~np.isnan(hours.temp_c)
    np.maximum.at(most, at[known], hours.temp_c[known])
    np.minimum.at(least, at[known], hours.temp_c[known])
    most, least = np.where(np.isinf(most), np.nan, most), np.where(np.isinf(least), np.nan, least)
    year = days.astype("datetime64[Y]").astype(int) + 1970
    found = []
    for one in np.unique(year).tolist():
        mine = year == one
        if mine.sum() < 300:
            continue
        flows = np.flatnonzero(sap_flows(most[mine], least[mine]))
        out = np.flatnonzero(warmth_days(most[mine], least[mine]) >= SAP[2])
        sap = (int(flows[0]) + 1, int(flows[-1]) + 1) if len(flows) else (None, None)
        found.append(Flow(one, sap[0], sap[1], int(out[0]) + 1 if len(out) else None))
    return found
