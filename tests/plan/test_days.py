"""Work days: no hour is given twice, no day is overfull, the scarcest work comes first, what is left is told."""

import datetime

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plan.test_open_hours import hours
from stemward.handbook import load
from stemward.plan.days import MOST_DAY_H, Work, work_days
from stemward.plan.open_hours import Doing, judge

BOOK = load()
CUT = judge(Doing("cut stump", "water"), hours(), BOOK)
LEAVES = judge(Doing("foliar", "water"), hours(), BOOK)


def length_h(slot):
    """Hours from start to end."""
    return (slot.end - slot.start) / datetime.timedelta(hours=1)


def test_work_goes_into_the_first_run_that_holds_it_and_says_until_when_it_stays_dry():
    """Three hours of stumps in the first day's open hours; six hours after have to stay dry (from memory)."""
    found = work_days([Work("stumps", CUT, (2.0, 3.0))])
    (slot,) = found.slots
    assert slot.end - slot.start == datetime.timedelta(hours=3)
    assert found.left_h == (0.0,)
    assert slot.rain_from - slot.end == datetime.timedelta(hours=6)


def test_what_finds_no_place_is_left():
    """Leaves are open on the first day alone, since the forecast ends too soon for the second."""
    found = work_days([Work("leaves", LEAVES, (10.0, 20.0))])
    assert sum(length_h(s) for s in found.slots) == MOST_DAY_H
    assert found.left_h == (20.0 - MOST_DAY_H,)


def test_the_scarcest_comes_first():
    """Leaves have fewer hours than stumps, so the first day is theirs."""
    found = work_days([Work("stumps", CUT, (5.0, 6.0)), Work("leaves", LEAVES, (5.0, 6.0))])
    by_day = {slot.day: slot.work for slot in found.slots}
    assert list(by_day.values()) == [1, 0]
    assert found.left_h == (0.0, 0.0)


def test_short_works_come_one_after_the_other():
    """Five works of up to 20 minutes: each a half hour by quarters, all within two and a half hours of one day."""
    five = work_days([Work(str(n), CUT, (0.1, 1 / 3)) for n in range(5)])
    assert [length_h(slot) for slot in five.slots] == [0.5] * 5
    assert all(a.end == b.start for a, b in zip(five.slots, five.slots[1:], strict=False))


def test_what_is_more_than_a_day_goes_to_the_next():
    """Five works of an hour each on the first day; the seventh goes to the second."""
    five = work_days([Work(str(n), CUT, (0.5, 1.0)) for n in range(5)])
    assert len({slot.day for slot in five.slots}) == 1
    seven = work_days([Work(str(n), CUT, (0.5, 1.0)) for n in range(7)])
    assert len({slot.day for slot in seven.slots}) == 2


def test_nothing_to_do():
    """No treatments, no days."""
    assert work_days([]).slots == ()


@settings(deadline=None, max_examples=40)
@given(st.lists(st.tuples(st.booleans(), st.floats(0, 30)), max_size=5))
def test_hours_are_given_once_and_only_where_open(wanted):
    """Conservation: given and left add up to at least what was asked for; no hour holds two; days are not overfull."""
    works = [Work(str(n), CUT if cut else LEAVES, (0.0, need)) for n, (cut, need) in enumerate(wanted)]
    found = work_days(works)
    at = hours().at
    for one, then in zip(found.slots, found.slots[1:], strict=False):
        assert one.end <= then.start
    for slot in found.slots:
        states = works[slot.work].judged.states()
        first, last = (np.datetime64(t.replace(tzinfo=None), "s") for t in (slot.start, slot.end))
        over = (at + np.timedelta64(3600, "s") > first) & (at < last)
        assert over.any() and all(states[n] == "open" for n in np.flatnonzero(over))
    for number, work in enumerate(works):
        given_h = sum(length_h(s) for s in found.slots if s.work == number)
        assert given_h + found.left_h[number] >= work.need_h[1] - 1e-9
        assert given_h + found.left_h[number] < work.need_h[1] + 0.25 + 1e-9 or given_h == pytest.approx(0)
    for day in {slot.day for slot in found.slots}:
        assert sum(length_h(s) for s in found.slots if s.day == day) <= MOST_DAY_H
