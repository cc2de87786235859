"""The years ahead of the example: strategies in the order one would expect, learned inputs, a budget kept."""

import datetime
from functools import cache

import numpy as np
import pytest

from ledger.some import hollow
from ledger.test_revisits import seen, treated
from stemward.handbook import load
from stemward.plan import as_data, draw_up
from stemward.plan.ahead import inputs_of, outlook
from stemward.say import ahead as say

BOOK = load()


@cache
def drawn(years=8, hours=None, **given):
    """The outlook of the example without entries."""
    tract = hollow()
    plan = as_data(draw_up(tract, BOOK, datetime.date(2026, 10, 3), "x"))
    return outlook(tract, plan, BOOK, years, given, hours)


def test_treating_leaves_fewer_than_cutting_and_cutting_costs_more_hours():
    """Treating yearly leaves least; leaving it leaves what there was and takes nothing."""
    left = {path.name: path.band()[-1] for path in drawn().paths}
    assert left["treat yearly"][1] < left["treat once"][1] < left["leave it"][1]
    hours = {path.name: np.median(path.spent("hours")[-1]) for path in drawn().paths}
    assert hours["leave it"] == 0 and hours["treat yearly"] < hours["cut yearly"]
    assert all(path.band()[0, 1] == drawn().paths[0].band()[0, 1] for path in drawn().paths)


def test_the_same_question_has_the_same_answer():
    """Paths are drawn with a fixed beginning."""
    first, again = drawn(5), drawn.__wrapped__(5)
    assert all((a.stems == b.stems).all() for a, b in zip(first.paths, again.paths, strict=True))


def test_inputs_learn_from_looks_and_can_be_set():
    """100 plants, 50 missed: the finding share goes down from 0.8 and its range narrows; a slider overrules both."""
    tract = hollow(entries=(treated(stems=100), seen("s", "2026-09-25", ["t1"], 90, 10, untreated=50, sprouts=6)))
    usual, own = inputs_of(hollow(), BOOK, {}), inputs_of(tract, BOOK, {})
    assert usual["find_frac"].middle == 0.8 and usual["find_frac"].behind == 0
    assert own["find_frac"].middle == pytest.approx((10 * 0.8 + 150 * 100 / 150) / 160)
    assert own["find_frac"].high - own["find_frac"].low < usual["find_frac"].high - usual["find_frac"].low
    assert own["sprouts"].middle > usual["sprouts"].middle
    set_ = inputs_of(tract, BOOK, {"find_frac": 0.9})["find_frac"]
    assert (set_.low, set_.middle, set_.high, set_.set) == (0.9, 0.9, 0.9, True)
    with pytest.raises(ValueError, match="find_frac"):
        inputs_of(tract, BOOK, {"find_frac": 1.4})


def test_finding_more_leaves_fewer():
    """A better search leaves fewer plants at the end."""
    few, many = (drawn(5, None, find_frac=f).paths[-1].plants[-1].mean() for f in (0.5, 0.95))
    assert many < few


def test_a_budget_is_kept_and_more_hours_leave_fewer():
    """No year spends more than it has; one hour a year leaves more than four."""
    small, large = drawn(3, 1.0).budget, drawn(3, 4.0).budget
    assert (small.spent.sum(axis=1) <= 1 + 1e-9).all()
    assert large.left[-1].sum() < small.left[-1].sum()
    assert small.next_gain[0] > 0


def test_words_hold_every_strategy_and_say_what_is_a_guess():
    """A row for each strategy; shares of variance with the greatest first; guesses are named."""
    found = drawn(4, 2.0)
    rows = say.strategy_rows(found, "us")
    assert len(rows) == 6 and all(len(row) == len(say.head(found)) for row in rows)
    assert len(say.shares(found)) == 5 and 1 <= len(say.budget_rows(found)) <= 4
    assert any("guess" in line for line in say.notes(found)) == bool(found.guessed)
    assert sum(found.shares.values()) <= 1.05


@pytest.mark.parametrize("years", [0, 16])
def test_years_have_ends(years):
    """1 to 15."""
    with pytest.raises(ValueError, match="years"):
        drawn(years)
