"""Signs: one table, each kind of thing by its own outline."""

import io
import itertools
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from stemward.drawings import LIGHT, Drawing, fragment, placed, sign
from stemward.drawings.shapes import FINDINGS, KEPT, PLACES, SHAPES, STEMS
from stemward.kinds.columns import SPARED_KINDS

sys.path.insert(0, str(Path(__file__).parents[2] / "tools"))
from pictures import drawing_png


def grey(name, high_mm=24.0, pixels=24):
    """A sign as shades of grey, without colour."""
    ppi = pixels / (high_mm / 25.4)
    return np.asarray(Image.open(io.BytesIO(drawing_png(Drawing(sign(name), high_mm, high_mm), ppi))).convert("L"))


def test_everything_that_can_be_kept_has_a_sign():
    """Each kind of thing to keep from harm has its square."""
    assert set(KEPT) == set(SPARED_KINDS)


def test_dye_is_treated_and_brick_is_stop():
    """No sign but treated stems holds dye; no sign but stop holds brick."""
    for name in SHAPES:
        assert (LIGHT["dye"] in sign(name)) == name.startswith("treated")
        assert (LIGHT["brick"] in sign(name)) == (name == "stop")


def test_families_have_their_outlines():
    """Round to treat, square to keep: squares begin with the square, findings and stems never hold it."""
    for name in KEPT:
        assert "M3 3H21V21H3Z" in sign(name) and LIGHT["moss"] in sign(name)
    for name in (*STEMS, *FINDINGS, *PLACES):
        assert "M3 3H21V21H3Z" not in sign(name) and LIGHT["moss"] not in sign(name)


@pytest.mark.parametrize("family", [STEMS, KEPT, FINDINGS, PLACES], ids=["stems", "kept", "findings", "places"])
def test_signs_of_a_family_differ_without_colour(family):
    """At 24 px and in grey, any two signs of a family differ in at least a tenth of what they cover."""
    dark = {name: grey(name) < 150 for name in family}
    for one, other in itertools.combinations(family, 2):
        differs = (dark[one] ^ dark[other]).sum() / (dark[one] | dark[other]).sum()
        assert differs > 0.1, (one, other, differs)


@pytest.mark.parametrize("name", sorted(SHAPES))
def test_signs_are_sound_and_stay_on_their_ground(name):
    """Every sign is sound XML and reaches no farther than its ground of 24 by 24."""
    ET.fromstring(sign(name))
    wide = Drawing(sign(name).replace("0 0 24 24", "-4 -4 32 32"), 32.0, 32.0)
    shades = np.asarray(Image.open(io.BytesIO(drawing_png(wide, 25.4 * 4))).convert("L"))
    rim = np.ones(shades.shape, bool)
    rim[16:-16, 16:-16] = False
    assert (shades[rim] > 200).all() and (shades[~rim] < 150).any()


def test_a_sign_is_placed_by_its_middle():
    """A sign placed at a point lies as far to its left as to its right."""
    assert 'transform="translate(8 18) scale(0.16667)"' in placed("tree", 10.0, 20.0, 4.0).replace(".000", "")
    assert fragment("tree") in placed("tree", 10.0, 20.0, 4.0)
