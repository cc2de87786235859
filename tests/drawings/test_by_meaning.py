"""Drawings say what the numbers say: measured in their pixels, not by their looks."""

import io
import math
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from stemward import drawings

sys.path.insert(0, str(Path(__file__).parents[2] / "tools"))
from pictures import drawing_png

LABELS = {"across": "6 in", "ring": "2 in"}
DYE, WASH = (0x12, 0x3F, 0x99), (0xCB, 0xDB, 0xF4)


def pixels(drawn, ppi=200.0):
    """A drawing's pixels, and millimetres on paper per pixel."""
    image = np.asarray(Image.open(io.BytesIO(drawing_png(drawn, ppi))).convert("RGB")).astype(int)
    return image, drawn.width_mm / image.shape[1]


def dyed(image):
    """Pixels between the wash and the dye, which is all that hatching mixes."""
    wash, dye = np.array(WASH), np.array(DYE)
    along = (image - wash) @ (dye - wash) / ((dye - wash) @ (dye - wash))
    off = np.linalg.norm(image - (wash + np.clip(along, 0, 1)[..., None] * (dye - wash)), axis=-1)
    return (off < 14) & (along > -0.05) & (along < 1.05)


@pytest.mark.parametrize(
    ("diameter_cm", "ring_cm"), [(2.54, None), (7.62, None), (15.24, 5.08), (15.24, 3.0), (30.0, 5.08), (60.0, 5.0)]
)
def test_dyed_pixels_are_the_dosed_area(diameter_cm, ring_cm):
    """Dye pixels times scale squared equal the area that is dosed within 2 %."""
    drawn = drawings.stump(diameter_cm, ring_cm, "s1", LABELS)
    image, mm_per_pixel = pixels(drawn, 250.0)
    area_cm2 = dyed(image).sum() * (mm_per_pixel / drawn.scale / 10) ** 2
    heart_cm = 0.0 if ring_cm is None else diameter_cm - 2 * ring_cm
    assert area_cm2 == pytest.approx(math.pi / 4 * (diameter_cm**2 - heart_cm**2), rel=0.02)


def test_small_stumps_are_drawn_at_true_size():
    """Up to 6 in one millimetre of wood is one millimetre of paper; larger ones are halved until they fit."""
    assert drawings.stump(15.24, 5.08, "s", LABELS).scale == 1.0
    assert drawings.stump(15.5, 5.08, "s", LABELS).scale == 0.5
    assert drawings.stump(35.0, 5.08, "s", LABELS).scale == 0.25


@pytest.mark.parametrize(("carrier_ml", "product_ml"), [(300.0, 300.0), (100.0, 25.0), (400.0, 200.0)])
def test_fill_height_is_proportional_to_volume(carrier_ml, product_ml):
    """The herbicide's slice is as high as its share of the bottle."""
    slices = [("carrier", carrier_ml, False), ("herbicide", product_ml, True)]
    drawn = drawings.pour_ladder(700.0, [], slices, ["a", "b"])
    image, mm_per_pixel = pixels(drawn)
    high_mm = dyed(image).sum(axis=0).max() * mm_per_pixel
    assert high_mm == pytest.approx(product_ml / 700 * 100, rel=0.03, abs=0.3)


def test_wet_and_dry_differ_without_colour():
    """In grey, the hatch stands out from the heart by at least 3 : 1."""
    image, _ = pixels(drawings.stump(15.24, 5.08, "s1", LABELS))
    assert drawings.contrast(drawings.LIGHT["dye"], drawings.LIGHT["paper"]) >= 3
    grey = image.mean(axis=-1)
    wet = dyed(image)
    assert grey[wet].min() < 90 < 200 < grey[wet].max()


SEVERAL = {
    "stump": drawings.stump(15.24, 5.08, "s1", LABELS),
    "whole": drawings.stump(2.0, None, "s2", LABELS),
    "cuts": drawings.cuts(7, LABELS),
    "ladder": drawings.pour_ladder(700, [(100, "100")], [("carrier", 50, False), ("herbicide", 50, True)], ["1", "2"]),
    "bar": drawings.check_bar(5.08, "2 in"),
    "plan": drawings.plan_drawing(
        [("meadow", [[(0, 0), (50, 0), (50, 40), (0, 0)]])],
        [(3.0, 2.0), (9.0, 4.0)],
        [(k, k, {"kind": "point", "rings": [[(10, 10)]]}) for k in ("tree", "water", "well", "garden", "small plants")],
        "us",
        "paces",
    ),
    **dict.fromkeys(()),
}


@pytest.mark.parametrize("name", sorted(SEVERAL))
def test_svg_holds_attributes_only(name):
    """No style sheet, no style, no class, no script: a strict content policy and Typst take it as it is."""
    root = ET.fromstring(SEVERAL[name].svg)
    for element in root.iter():
        assert element.tag.rpartition("}")[2] not in ("style", "script", "foreignObject")
        assert not set(element.attrib) & {"style", "class", "onload"}


def test_the_same_seed_draws_the_same():
    """The wobble of the bark comes from the stem's name alone."""
    assert drawings.stump(9.0, None, "s1", LABELS) == drawings.stump(9.0, None, "s1", LABELS)
    assert drawings.stump(9.0, None, "s1", LABELS).svg != drawings.stump(9.0, None, "s2", LABELS).svg


@given(st.text(max_size=30).filter(lambda t: t.isprintable()))
def test_names_are_words_and_never_markup(name):
    """Whatever a patch or a tree is called, the drawing stays sound."""
    patch = (name, [[(0, 0), (5, 0), (5, 5), (0, 0)]])
    tree = (name, "tree", {"kind": "point", "rings": [[(1, 1)]]})
    drawn = drawings.plan_drawing([patch], [], [tree], "us", "paces")
    texts = [e.text or "" for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("text")]
    assert texts.count(name) == 2 + (name == "N") or not name


def test_scale_bar_is_as_long_as_it_says():
    """The bar's length on paper is its length on the ground times the scale."""
    drawn = drawings.plan_drawing([("a", [[(0, 0), (200, 0), (200, 100), (0, 0)]])], [], [], "metric", "paces")
    words = next(
        e.text for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("text") and "paces" in (e.text or "")
    )
    metres = float(words.split(" m")[0])
    paths = [e.attrib["d"] for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("path")]
    bar = next(d for d in paths if "H" in d and d.startswith("M9 "))
    long_mm = float(bar.split("H")[1].split("M")[0]) - 9
    assert long_mm == pytest.approx(metres * drawn.scale, rel=1e-3)
