"""The weeks of the year in words: those that are named lie in the best time of plant and way."""

from dataclasses import replace
from datetime import date, timedelta

from plan.test_open_hours import hours as some
from stemward.handbook.field import Season
from stemward.plan.weeks import Week
from stemward.say.weeks import runs, strip_words, week_lines


def season(first, last, best):
    """Part of a year."""
    return Season("cut stump", (), first, last, best, "sap rises" if not best else "", None)


def weeks(days):
    """Fifty-two weeks with as many working days as `days` says of each, from two years."""
    firsts = [date(2001, 1, 1) + timedelta(days=7 * n) for n in range(52)]
    return [Week(n + 1, (f.month, f.day), (days(n),) * 2, days(n), days(n), days(n)) for n, f in enumerate(firsts)]


def named(days, *seasons):
    """The sentence that names weeks."""
    made = replace(some(), kind="history", source="a place")
    return week_lines(weeks(days), made, seasons)[1]


def test_weeks_that_follow_each_other_are_one():
    """As a span from the first to the last."""
    assert runs([(1, "Jan 1"), (2, "Jan 8"), (3, "Jan 15"), (9, "Feb 26")]) == ["Jan 1 to Jan 15", "Feb 26"]
    assert runs([]) == []


def test_the_weeks_that_are_named_lie_in_the_best_time():
    """Seven days in every week of spring, six in autumn: spring is poor, so autumn is named."""
    best, poor = season((9, 1), (11, 30), True), season((3, 1), (5, 31), False)

    def days(n):
        return 7.0 if 8 < n < 22 else 6.0 if 34 < n < 48 else 2.0

    assert named(days, best, poor) == ("Most working days within the best time of year, weeks from: Sep 3 to Nov 26.")
    assert "weather alone" in named(days, poor) and "Mar" not in named(days, poor)
    assert "Mar 5 to May 28" in named(days)


def test_a_best_time_without_a_working_day_is_said():
    """Weeks outside of it are not put in its place."""
    said = named(lambda n: 7.0 if n < 10 else 0.0, season((9, 1), (11, 30), True))
    assert said == "In the best time of year no week had a working day."


def test_what_stands_under_the_strip():
    """Only of lines that are drawn."""
    assert len(strip_words([])) == 1
    assert len(strip_words([season((9, 1), (11, 30), True)])) == 2
