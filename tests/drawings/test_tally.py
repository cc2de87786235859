"""The tally stick and ten stems."""

import re
import xml.etree.ElementTree as ET

import pytest

from stemward.drawings.tally import tally_stick, ten_stems


@pytest.mark.parametrize(("low", "high"), [(0, 0), (6, 9), (7, 8), (10, 10), (0, 10)])
def test_ten_stems_show_dead_perhaps_and_sprouting(low, high):
    """Crosses for the dead, dashed rings for perhaps, shoots for the rest: ten in all."""
    root = ET.fromstring(ten_stems(low, high))
    shapes = [one.attrib for one in root]
    crosses = [a for a in shapes if a.get("stroke-width") == "3"]
    dashed = [a for a in shapes if "stroke-dasharray" in a]
    rings = [a for a in shapes if a.get("r") and "stroke-dasharray" not in a]
    assert (len(crosses), len(dashed), len(rings)) == (low, high - low, 10 - high)


def test_notches_stand_for_steps():
    """A done step is a cut notch, a changed one is hatched, the peg stands over the step that is now."""
    states = ["done", "done", "changed since", "begun", "not begun", "not begun", "not begun"]
    drawn = tally_stick(states, 3)
    assert len(re.findall(r"L\d+ 29L", drawn)) == 3
    assert "M176 4H188" in drawn
    assert "style" not in drawn
