"""Lots along a walk: nobody's stump waits over the limit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon.lots import longest_wait_s, lot_size, lots_along


def test_the_wait_by_hand():
    # Two stumps, 20 s to cut each, 10 s apart, 5 s to treat each; 30 s until the first is reached.
    # First: cut at 20, the second done at 50, reached at 80, wetted at 85: waits 65. Second: cut at 50, 100: waits 50.
    assert longest_wait_s([10.0, 0.0], [20.0, 20.0], [5.0, 5.0], 30.0, 0, 2) == 65.0


def test_like_the_sum_for_even_stumps():
    # With the way to the next counted into cutting and treating, both sums are the same.
    size = lot_size(300.0, walk_s=40.0, clear_s=60.0, cut_s=25.0, treat_s=12.0)
    lots = lots_along([0.0] * 50, [25.0] * 50, [12.0] * 50, lambda *_: 0.0, 300.0, 40.0, 60.0)
    assert lots[0] == (0, size)


times = st.lists(st.tuples(st.floats(1, 60), st.floats(1, 60), st.floats(1, 40)), min_size=1, max_size=30)


@given(times, st.floats(30, 600), st.floats(0, 120))
def test_no_stump_waits_too_long(rows, limit_s, away_s):
    legs, cuts, treats = (list(column) for column in zip(*rows, strict=True))
    lots = lots_along(legs, cuts, treats, lambda i, j: 2.0 * (j - i), limit_s, away_s, 30.0)
    assert [n for a, b in lots for n in range(a, b)] == list(range(len(rows)))
    for first, last in lots:
        wait_s = longest_wait_s(legs, cuts, treats, 2.0 * (last - 1 - first) + away_s + 30.0, first, last)
        assert wait_s <= limit_s or last == first + 1
        if last < len(rows):
            more_s = longest_wait_s(legs, cuts, treats, 2.0 * (last - first) + away_s + 30.0, first, last + 1)
            assert more_s > limit_s


def test_no_stumps():
    assert lots_along([], [], [], lambda *_: pytest.fail(), 1.0, 0.0, 0.0) == []
