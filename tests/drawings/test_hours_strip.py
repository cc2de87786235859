"""The strip of hours tells open, find out and shut apart without colour."""

import pytest

from stemward.drawings.hours_strip import hours_strip


def test_each_state_has_a_shape_of_its_own():
    """Open is filled, find out is struck through, shut is an empty box, not known is nothing."""
    states = ["open"] * 3 + ["find out"] * 2 + ["shut"] + [""] * 18
    drawn = hours_strip([("Tue Sep 15", states)], [(6, "6 am")])
    assert drawn.numbers["open"] == 3
    assert "Tue Sep 15" in drawn.svg and "6 am" in drawn.svg
    empty = hours_strip([("Tue Sep 15", [""] * 24)], [])
    shut = hours_strip([("Tue Sep 15", ["shut"] + [""] * 23)], [])
    ask = hours_strip([("Tue Sep 15", ["find out"] + [""] * 23)], [])
    assert empty.svg.count("<path") < shut.svg.count("<path") < ask.svg.count("<path")


def test_a_day_has_24_hours():
    """Anything else is refused."""
    with pytest.raises(ValueError, match="24 hours"):
        hours_strip([("Tue", ["open"])], [])
