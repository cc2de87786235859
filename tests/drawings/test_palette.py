"""Colours: their contrast, and that dye and brick mean one thing each."""

import json
import re
from pathlib import Path

import pytest

from stemward.drawings import DUSK, LIGHT, SUN, contrast, kept, sign
from stemward.drawings.shapes import FINDINGS, INSIDE

# Contrast ratios of ink on ground, computed by the WCAG 2.2 formula for relative luminance.
TABLE = [
    ("ink", "paper", 16.28), ("ink", "page", 14.41), ("ink", "dye_wash", 12.41), ("ink", "brick_wash", 13.35),
    ("ash", "paper", 9.01), ("ash", "white", 9.64), ("bark", "paper", 11.86), ("moss", "paper", 5.59),
    ("dye", "paper", 8.94), ("dye", "dye_wash", 6.82), ("brick", "paper", 6.87), ("chaff", "paper", 1.77),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other", "ratio"), TABLE)
def test_contrast(one, other, ratio):
    """The contrast of each pair is what the palette was chosen for."""
    assert contrast(LIGHT[one], LIGHT[other]) == pytest.approx(ratio, abs=0.01)


def test_black_on_white_is_twenty_one_to_one():
    """The formula's own ends: 21 for black on white, 1 for a colour on itself."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#4F6B43", "#4F6B43") == 1.0


@pytest.mark.parametrize("theme", [LIGHT, SUN, DUSK])
def test_words_and_lines_keep_their_floors(theme):
    """Words at least 7 : 1 on their ground, lines and symbols at least 4.5 : 1."""
    for ground in ("paper", "page"):
        for words in ("ink", "ash"):
            assert contrast(theme[words], theme[ground]) >= 7
        for lines in ("bark", "dye", "brick", "moss"):
            assert contrast(theme[lines], theme[ground]) >= 4.5


def test_dye_is_herbicide_and_brick_is_stop():
    """No sign but stop holds brick, no sign of any kind holds dye."""
    for weight in FINDINGS:
        assert (LIGHT["brick"] in sign(weight)) == (weight == "stop")
        assert LIGHT["dye"] not in sign(weight)
    for kind in INSIDE:
        assert LIGHT["dye"] not in kept(kind) and LIGHT["brick"] not in kept(kind)


def test_only_the_wet_things_use_dye():
    """In the code, dye appears only where herbicide is drawn; in the packet, brick only where a stop is."""
    rooms = Path(__file__).parents[2] / "src/stemward"
    users = {p.stem for p in (rooms / "drawings").glob("*.py") if re.search(r'LIGHT\["dye', p.read_text())}
    assert users == {"svg", "cuts"}
    packet = (rooms / "paper/packet.typ").read_text()
    assert "dye" not in packet.replace("d.palette.dye", "").split("#set document")[1]
    uses = [line for line in packet.splitlines() if re.search(r"\bbrick(-wash)?\b", line)][2:]
    assert uses and all('"stop"' in line for line in uses)
    assert json.dumps(LIGHT)
