"""Each rule of the hours fires and clears; the label's limit goes before common practice; nothing unknown is open."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checks.build import fact
from stemward.handbook import load
from stemward.kinds.hours import Hours, RainBlock, Site
from stemward.plan.open_hours import Doing, chance_dry, judge, spans

BOOK = load()
SITE = Site(40.0, -75.0, 100.0, "America/New_York")
N = 48
AT = np.arange("2026-09-15T04:00", "2026-09-17T04:00", 3600, dtype="datetime64[s]")
"""Two whole days at 75 degrees west, from midnight by the sun's clock less one."""
NOON = 12
FOLIAR = Doing("foliar", "water")


def hours(**columns):
    """Fair weather in every column, but for those given: one value for all hours, or a column."""
    usual = {
        "temp_c": 20.0, "dew_c": 12.0, "wind_m_s": 2.5, "gust_m_s": 3.5, "wind_from_deg": 200.0, "rain_mm": 0.0,
        "rain_chance_frac": 0.0, "cloud_frac": 0.6, "pressure_hpa": 1000.0, "snow_m": 0.0,
    }  # fmt: skip
    made = {
        name: np.full(N, value) if np.isscalar(value) else np.array(value, float)
        for name, value in (usual | columns).items()
    }
    return Hours(SITE, AT, **made, kind="forecast", source="invented")


def at_noon(value, otherwise):
    """A column with one value at noon of the first day."""
    column = np.full(N, float(otherwise))
    column[NOON] = value
    return column


def why(doing, given, at=NOON):
    """State at an hour, and the matters that speak of it."""
    judged = judge(doing, given, BOOK)
    return (
        judged.states()[at],
        {r.rule.matter for r in judged.reasons if r.closed[at]},
        {r.rule.matter for r in judged.reasons if r.unknown[at]},
    )


def test_fair_weather_is_open_by_day_and_dark_by_night():
    """Noon is open for leaves, midnight is not for anyone."""
    assert why(FOLIAR, hours())[0] == "open"
    assert why(FOLIAR, hours(), at=1)[:2] == ("shut", {"dark"})
    assert why(Doing("pull"), hours(), at=1)[0] == "shut"


CUT, OIL_CUT = Doing("cut stump", "water"), Doing("cut stump", "oil", "ester")
BARK, HACK = Doing("basal bark", "oil", "ester"), Doing("hack and squirt", "undiluted")
CASES = [
    # matter, work, weather that shuts it, weather beside the limit that does not; limits as in the handbook's table
    ("raining", CUT, {"rain_mm": at_noon(0.5, 0)}, {"rain_mm": at_noon(0.05, 0)}),
    ("wind over", FOLIAR, {"gust_m_s": at_noon(4.6, 3)}, {"gust_m_s": at_noon(4.4, 3)}),
    ("wind under", FOLIAR, {"wind_m_s": at_noon(1.2, 2)}, {"wind_m_s": at_noon(1.4, 2)}),
    ("gust over", CUT, {"gust_m_s": at_noon(9.0, 3)}, {"gust_m_s": at_noon(8.8, 3)}),
    ("heat over", FOLIAR, {"temp_c": at_noon(33, 20), "dew_c": 18.0}, {"temp_c": at_noon(32, 20), "dew_c": 18.0}),
    ("heat over", BARK, {"temp_c": at_noon(33, 20), "dew_c": 8.0}, {"temp_c": at_noon(26, 20)}),
    ("heat coming", BARK, {"temp_c": at_noon(27, 20)}, {"temp_c": at_noon(26.5, 20)}),
    ("cold under", BARK, {"temp_c": -8.0, "dew_c": -14.0}, {"temp_c": -6.0, "dew_c": -14.0}),
    ("cold under", CUT, {"temp_c": -0.5, "dew_c": -5.0}, {"temp_c": 0.5, "dew_c": -5.0}),
    ("air thirsty", FOLIAR, {"temp_c": 31.0, "dew_c": 6.0}, {"temp_c": 25.0, "dew_c": 12.0}),
    ("snow", BARK, {"snow_m": 0.05}, {"snow_m": 0.01}),
    ("bark wet", BARK, {"rain_mm": [*([0.0] * 11), 2.0, *([0.0] * 36)]}, {"rain_mm": [*([0.0] * 7), 2.0, *([0.0] * 40)]}),
    ("bark wet", OIL_CUT, {"rain_mm": [*([0.0] * 11), 2.0, *([0.0] * 36)]}, {}),
    ("rain behind", FOLIAR, {"rain_mm": [*([0.0] * 30), 1.0, *([0.0] * 17)]}, {}),
    ("rain behind", CUT, {"rain_mm": [*([0.0] * 17), 1.0, *([0.0] * 30)]}, {"rain_mm": [*([0.0] * 18), 1.0, *([0.0] * 29)]}),
    ("rain behind", HACK, {"rain_mm": [*([0.0] * 17), 1.0, *([0.0] * 30)]}, {"rain_mm": [*([0.0] * 18), 1.0, *([0.0] * 29)]}),
    ("rain behind", BARK, {"rain_mm": [*([0.0] * 12), 1.0, *([0.0] * 35)]}, {"rain_mm": [*([0.0] * 13), 1.0, *([0.0] * 34)]}),
    ("rain behind", OIL_CUT, {"rain_mm": [*([0.0] * 13), 1.0, *([0.0] * 34)]}, {"rain_mm": [*([0.0] * 14), 1.0, *([0.0] * 33)]}),
    ("rain likely", CUT, {"rain_chance_frac": [*([0.0] * 15), 0.5, *([0.0] * 32)]}, {"rain_chance_frac": [*([0.0] * 15), 0.3, *([0.0] * 32)]}),
]  # fmt: skip


@pytest.mark.parametrize(("matter", "doing", "shuts", "clears"), CASES, ids=[f"{c[0]}, {c[1].method}" for c in CASES])
def test_each_rule_fires_and_clears(matter, doing, shuts, clears):
    """The hour is shut by that rule, and open just beside its limit."""
    state, closed, _ = why(doing, hours(**shuts))
    assert state == "shut"
    assert matter in closed
    state, closed, _ = why(doing, hours(**clears))
    assert matter not in closed
    assert state == "open"


def test_an_inversion_shuts_leaves_and_not_a_dauber():
    """A still clear hour after sunrise: no spraying; stumps go on."""
    still = {"wind_m_s": 1.5, "gust_m_s": 2.0, "cloud_frac": 0.1}
    state, closed, _ = why(FOLIAR, hours(**still), at=7)
    assert (state, "inversion" in closed) == ("shut", True)
    assert "inversion" not in why(FOLIAR, hours(**still))[1]
    assert why(CUT, hours(**still), at=7)[0] == "open"


def test_bees_shut_leaves_where_something_is_in_bloom():
    """By day and warm: shut with flowers, to be found out where nobody has looked, open without; a dauber goes on."""
    assert why(replace(FOLIAR, in_bloom="yes"), hours())[:2] == ("shut", {"bees"})
    state, _, unknown = why(replace(FOLIAR, in_bloom="unknown"), hours())
    assert (state, "bees" in unknown) == ("find out", True)
    assert "bees" not in why(replace(FOLIAR, in_bloom="yes"), hours(temp_c=12.0, dew_c=5.0))[1]
    assert why(replace(CUT, in_bloom="yes"), hours())[0] == "open"


def test_water_at_the_foot_of_the_stems_shuts_bark_and_stumps():
    """Where someone said so; a cut higher up goes on."""
    for doing in (BARK, CUT):
        assert why(replace(doing, standing_water="yes"), hours())[:2] == ("shut", {"standing water"})
        assert why(replace(doing, standing_water="unknown"), hours())[0] == "open"
    assert why(replace(HACK, standing_water="yes"), hours())[0] == "open"


def test_a_time_of_year_that_the_label_forbids_is_told():
    """Its words are for a person to compare; without such a fact nothing is told."""
    some = replace(CUT, facts=(fact("season forbidden", "heavy sap flow"),))
    assert "label season" in why(some, hours())[1]
    assert "label season" not in why(replace(CUT, facts=(fact("strongest wind", 9.0),)), hours())[1]
    assert "label season" not in why(CUT, hours())[1]


def test_what_only_tells_shuts_nothing():
    """Dew and damp air are told beside an hour that is open."""
    damp = hours(temp_c=18.0, dew_c=16.8)
    state, closed, _ = why(FOLIAR, damp)
    assert state == "open"
    assert {"air damp", "leaf wet"} <= closed


def test_the_label_goes_before_common_practice():
    """15 mph on the label opens what 10 mph would shut; 5 mph shuts what 10 would leave open; each says who."""
    windy, breezy = hours(gust_m_s=5.0), hours(gust_m_s=3.0)
    assert why(FOLIAR, windy)[0] == "shut"
    loose = replace(FOLIAR, facts=(fact("strongest wind", 6.7),))
    assert why(loose, windy)[0] == "open"
    strict = replace(FOLIAR, facts=(fact("strongest wind", 2.2),))
    judged = judge(strict, breezy, BOOK)
    (reason,) = [r for r in judged.reasons if r.rule.matter == "wind over"]
    assert (reason.by, reason.limit, bool(reason.closed[NOON])) == ("label", 2.2, True)
    (usual,) = [r for r in judge(FOLIAR, breezy, BOOK).reasons if r.rule.matter == "wind over"]
    assert usual.by == "practice"


def test_the_label_s_rain_free_hours_are_needed_behind_a_start():
    """One hour on the label where a day is usual; one more hour of rain shuts it."""
    quick = replace(FOLIAR, facts=(fact("hours without rain", 3600.0),))
    assert judge(quick, hours(), BOOK).dry_h == 1.0
    rain = hours(rain_mm=[*([0.0] * 14), 1.0, *([0.0] * 33)])
    assert why(quick, rain)[0] == "open"
    assert "rain behind" in why(quick, rain, at=13)[1] or why(quick, rain, at=13)[0] == "open"
    assert "rain behind" in why(FOLIAR, rain)[1]


def test_what_nobody_has_read_is_told():
    """A label with other facts leaves these kinds unread; common practice stands in."""
    some = replace(FOLIAR, facts=(fact("strongest wind", 4.0),))
    assert "hours without rain" in judge(some, hours(), BOOK).unread
    assert "strongest wind" not in judge(some, hours(), BOOK).unread


@pytest.mark.parametrize("column", ["wind_m_s", "temp_c", "dew_c"])
def test_what_is_not_known_is_found_out_and_never_open(column):
    """A column without values leaves no hour open for leaves."""
    gone = hours(**{column: np.nan}, **({"gust_m_s": np.nan} if column == "wind_m_s" else {}))
    states = judge(FOLIAR, gone, BOOK).states()
    assert "open" not in states
    assert "find out" in states


def test_the_forecast_s_end_is_the_end_of_what_is_known():
    """A day before the end a spray that needs a dry day is to be found out, not open."""
    assert why(FOLIAR, hours(), at=36)[0] == "find out"
    assert "rain behind" in why(FOLIAR, hours(), at=36)[2]
    assert why(CUT, hours(), at=36)[0] == "open"


def test_one_chance_for_many_hours_is_one_event():
    """30 % for twelve hours: at least 70 % dry in any six of them, and not multiplied."""
    given = replace(
        hours(rain_chance_frac=np.nan), blocks=(RainBlock(AT[6], AT[6] + np.timedelta64(12, "h"), 0.3),)
    )  # fmt: skip
    found = chance_dry(given, NOON, 6.0, 124.0)
    assert found.least == pytest.approx(0.7)
    assert np.isnan(found.persistent)
    assert chance_dry(hours(rain_chance_frac=np.nan), NOON, 6.0, 124.0) is None


def test_a_gap_ends_a_span():
    """Hours that are missing are not bridged."""
    whole = hours()
    keep = np.ones(N, bool)
    keep[[12, 13]] = False
    names = ("temp_c", "dew_c", "wind_m_s", "gust_m_s", "wind_from_deg", "rain_mm", "rain_chance_frac", "cloud_frac",
             "pressure_hpa", "snow_m")  # fmt: skip
    cut = replace(whole, at=AT[keep], **{name: getattr(whole, name)[keep] for name in names})
    found = [span for span in spans(judge(Doing("pull"), cut, BOOK)) if span.state == "open"]
    assert len(found) == 3


@settings(deadline=None, max_examples=40)
@given(st.floats(0.5, 8), st.floats(0, 4), st.integers(0, N - 1), st.floats(0.1, 5))
def test_stricter_and_wetter_never_opens_an_hour(limit, tighter, at, rain):
    """A lower limit of wind and an hour more of rain leave no hour open that was shut."""
    windy = hours(gust_m_s=np.linspace(0, 9, N), wind_m_s=3.0)
    loose, strict = (replace(FOLIAR, facts=(fact("strongest wind", max(0.1, limit - by)),)) for by in (0.0, tighter))
    was, now = (np.array(judge(one, windy, BOOK).states()) == "open" for one in (loose, strict))
    assert not (now & ~was).any()
    column = np.zeros(N)
    column[at] = rain
    dry, wet = (np.array(judge(CUT, hours(rain_mm=one), BOOK).states()) == "open" for one in (np.zeros(N), column))
    assert not (wet & ~dry).any()
