"""Drawings say what the numbers say: measured in their pixels, not by their looks."""

import io
import math
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from stemward import drawings
from stemward.drawings.ladder import HIGH, spread
from stemward.drawings.svg import NOT_XML

sys.path.insert(0, str(Path(__file__).parents[2] / "tools"))
import itertools

from pictures import drawing_png

LABELS = {"across": "6 in", "ring": "2 in"}
LIGHT = drawings.LIGHT
WIDEST_MM = 160.0
"""Text is 170 mm wide on A4 with margins of 20 mm, 176 mm on letter."""


def rgb(colour):
    """Red, green, blue of a colour of the palette."""
    return np.array([int(LIGHT[colour][i : i + 2], 16) for i in (1, 3, 5)])


def pixels(drawn, ppi=200.0):
    """A drawing's pixels, and millimetres on paper per pixel."""
    image = np.asarray(Image.open(io.BytesIO(drawing_png(drawn, ppi))).convert("RGB")).astype(int)
    return image, drawn.width_mm / image.shape[1]


def dyed(image):
    """Pixels between the wash and the dye, which is all that hatching mixes."""
    wash, dye = rgb("dye_wash"), rgb("dye")
    along = (image - wash) @ (dye - wash) / ((dye - wash) @ (dye - wash))
    off = np.linalg.norm(image - (wash + np.clip(along, 0, 1)[..., None] * (dye - wash)), axis=-1)
    return (off < 14) & (along > -0.05) & (along < 1.05)


@pytest.mark.parametrize(
    ("diameter_cm", "ring_cm"),
    [(1.0, None), (2.54, None), (5.08, 1.0), (7.62, None), (15.24, 5.08), (15.24, 3.0), (30.0, 5.08), (60.0, 5.0)],
)
def test_dyed_pixels_are_the_dosed_area(diameter_cm, ring_cm):
    """Dye pixels times scale squared equal the area that is dosed within 2 %, and so do the numbers of the drawing."""
    drawn = drawings.stump(diameter_cm, ring_cm, "s1", LABELS)
    image, mm_per_pixel = pixels(drawn, 300.0)
    area_cm2 = dyed(image).sum() * (mm_per_pixel / drawn.scale / 10) ** 2
    heart_cm = 0.0 if ring_cm is None else diameter_cm - 2 * ring_cm
    dosed_cm2 = math.pi / 4 * (diameter_cm**2 - heart_cm**2)
    assert area_cm2 == pytest.approx(dosed_cm2, rel=0.02)
    assert drawn.numbers["wet_cm2"] == pytest.approx(dosed_cm2)


@pytest.mark.parametrize("diameter_cm", [2.0, 7.62, 15.24, 24.0])
def test_stumps_are_as_wide_on_paper_as_their_scale_says(diameter_cm):
    """From the first wet pixel to the last is the diameter times the scale, on paper, within half a millimetre."""
    drawn = drawings.stump(diameter_cm, None, "s", LABELS)
    image, mm_per_pixel = pixels(drawn)
    across = np.flatnonzero(dyed(image).any(axis=0))
    assert (across[-1] - across[0] + 1) * mm_per_pixel == pytest.approx(diameter_cm * 10 * drawn.scale, abs=0.5)


def test_stumps_to_6_in_are_drawn_at_true_size():
    """Up to 6 in one millimetre of wood is one millimetre of paper; larger ones are halved until they fit."""
    assert drawings.stump(15.24, 5.08, "s", LABELS).scale == 1.0
    assert drawings.stump(15.5, 5.08, "s", LABELS).scale == 0.5
    assert drawings.stump(35.0, 5.08, "s", LABELS).scale == 0.25
    assert drawings.stump(5.0, None, "s", LABELS, paper_scale=0.5).scale == 0.5


@settings(max_examples=60, deadline=None)
@given(st.floats(0.3, 300), st.floats(0.1, 20) | st.none())
def test_no_stump_is_wider_than_the_page(diameter_cm, ring_cm):
    """Every stump with its bark fits between the margins, so that nothing has to be shrunk out of its scale."""
    drawn = drawings.stump(diameter_cm, ring_cm, "s", LABELS)
    assert drawn.width_mm <= WIDEST_MM + 1e-6 and drawn.scale in {2.0**-n for n in range(8)}


def test_bark_stands_outside_the_diameter():
    """No bark lies inside the diameter: it would hide what is dosed."""
    drawn = drawings.stump(8.0, 2.0, "s1", LABELS)
    image, mm_per_pixel = pixels(drawn)
    seen = dyed(image)
    rows, columns = np.flatnonzero(seen.any(axis=1)), np.flatnonzero(seen.any(axis=0))
    y, x = np.indices(seen.shape)
    off_mm = np.hypot(y - (rows[0] + rows[-1]) / 2, x - (columns[0] + columns[-1]) / 2) * mm_per_pixel
    bark = np.linalg.norm(image - rgb("bark"), axis=-1) < 6
    assert bark.any() and off_mm[bark].min() > 40.0 - 0.3


@pytest.mark.parametrize("diameter_cm", [0.0, -1.0, math.nan, math.inf])
def test_a_stump_without_a_size_is_refused(diameter_cm):
    """A diameter that is no size is an error, not a strange drawing."""
    with pytest.raises(ValueError, match="diameter_cm"):
        drawings.stump(diameter_cm, None, "s", LABELS)


@settings(max_examples=60, deadline=None)
@given(st.floats(1, 60), st.floats(0.05, 0.95))
def test_ring_of_an_area_wets_that_area(diameter_cm, share):
    """The ring worked out from a wet area has that area when drawn."""
    wet_cm2 = share * math.pi / 4 * diameter_cm**2
    ring_cm = drawings.ring_of(diameter_cm, wet_cm2)
    assert drawings.stump(diameter_cm, ring_cm, "s", LABELS).numbers["wet_cm2"] == pytest.approx(wet_cm2, rel=1e-6)


@pytest.mark.parametrize(
    ("carrier_ml", "product_ml"), [(300.0, 300.0), (100.0, 25.0), (400.0, 200.0), (0.0, 650.0), (600.0, 12.0)]
)
def test_fill_height_is_proportional_to_volume(carrier_ml, product_ml):
    """The herbicide's slice is as high as its share of the bottle."""
    slices = [("carrier", carrier_ml, False), ("herbicide", product_ml, True)]
    drawn = drawings.pour_ladder(700.0, [], slices, ["a", "b"])
    image, mm_per_pixel = pixels(drawn, 300.0)
    rows = dyed(image).sum(axis=1) * mm_per_pixel > 15
    assert rows.sum() * mm_per_pixel == pytest.approx(product_ml / 700 * HIGH, rel=0.01, abs=0.45)
    assert drawn.numbers == {"capacity_ml": 700, "filled_ml": carrier_ml + product_ml, "herbicide_ml": product_ml}


def test_herbicide_too_thin_to_see_is_a_drop():
    """A slice of less than a millimetre and a half has a drop over it, of dye for herbicide, empty for a marker."""
    thin, thick, marker = ([("water", 400, False), ("x", ml, herb)] for ml, herb in ((2, True), (90, True), (2, False)))
    solid = [
        (np.linalg.norm(pixels(drawings.pour_ladder(700, [], s, ["", ""]))[0] - rgb("dye"), axis=-1) < 6).sum(axis=1)
        for s in (thin, thick, marker)
    ]
    assert np.flatnonzero(solid[0] > 3).size > np.flatnonzero(solid[2] > 3).size + 20
    assert not solid[2].any()


def test_a_bottle_that_cannot_hold_the_slices_is_refused():
    """More poured than the bottle holds is an error."""
    with pytest.raises(ValueError, match="500 mL"):
        drawings.pour_ladder(500, [], [("water", 600, False)], ["a"])


@settings(max_examples=80)
@given(st.lists(st.floats(10, 90), min_size=1, max_size=6))
def test_words_of_close_levels_keep_apart(tops):
    """However close the levels, their words stand apart in the same order, within the drawing."""
    wanted = sorted(tops, reverse=True)
    places = spread(wanted, 10.5, 4.0, 94.0)
    assert all(a - b >= 10.5 - 1e-9 for a, b in itertools.pairwise(places))
    assert min(places) >= 4 - 1e-9 and max(places) <= 94 + 1e-9


@pytest.mark.parametrize("count", [1, 2, 7, 16, 40])
def test_as_many_cuts_are_drawn_as_are_told(count):
    """Each cut is one slit with one drop on the bark, and one gap in the stem from above."""
    drawn = drawings.cuts(count, {"across": "7 in"}, 17.78)
    image, mm_per_pixel = pixels(drawn, 300.0)
    dye = np.linalg.norm(image - rgb("dye"), axis=-1) < 12
    strip = int(110 / mm_per_pixel)
    drops = np.diff(dye[:, :strip].any(axis=0).astype(int))
    assert (drops == 1).sum() == count
    assert drawn.svg.count(f'fill="{LIGHT["dye"]}"') == 2 * count
    assert drawn.numbers["spacing_cm"] == pytest.approx(math.pi * 17.78 / count)


def test_many_cuts_are_drawn_as_forty_and_told_as_they_are():
    """The drawing stops at forty cuts; its numbers do not."""
    drawn = drawings.cuts(95, {"across": "95 in"})
    assert (drawn.numbers["cuts"], drawn.numbers["drawn"]) == (95, 40)
    with pytest.raises(ValueError, match="count"):
        drawings.cuts(0, {"across": ""})


def test_wet_and_dry_differ_without_colour():
    """In a grey copy the hatch stands out from its wash and from the dry heart by at least 3 : 1."""
    image, _ = pixels(drawings.stump(15.24, 5.08, "s1", LABELS), 300.0)
    wet = dyed(image)
    grey = np.asarray(Image.fromarray(image.astype("uint8")).convert("L"))
    hatch, wash = np.percentile(grey[wet], 2), np.percentile(grey[wet], 90)
    heart = grey[np.linalg.norm(image - rgb("paper"), axis=-1) < 6].min()
    shades = [f"#{int(shade):02X}" + f"{int(shade):02X}" * 2 for shade in (hatch, wash, heart)]
    assert drawings.contrast(shades[0], shades[1]) >= 3
    assert drawings.contrast(shades[0], shades[2]) >= 3


def test_bar_is_as_long_as_it_says():
    """From end to end the bar measures what is written beside it, within a tenth of a millimetre."""
    image, mm_per_pixel = pixels(drawings.check_bar(5.08, ""), 600.0)
    dark = np.flatnonzero((image.sum(axis=-1) < 200).sum(axis=0) > 20)
    assert (dark[-1] - dark[0] + 1) * mm_per_pixel == pytest.approx(50.8, abs=0.1)


SEVERAL = {
    "stump": drawings.stump(15.24, 5.08, "s1", LABELS),
    "whole": drawings.stump(2.0, None, "s2", LABELS),
    "cuts": drawings.cuts(7, {"across": "7 in", "spacing": "3 in"}, 17.8, "s3"),
    "ladder": drawings.pour_ladder(700, [(100, "100")], [("carrier", 50, False), ("herbicide", 50, True)], ["1", "2"]),
    "torn": drawings.pour_ladder(70, [(10, "")], [("carrier", 30, False), ("dye", 0.1, False)], ["1", "2"], torn=True),
    "bar": drawings.check_bar(5.08, "2 in"),
    "plan": drawings.plan_drawing(
        [("meadow", [[(0, 0), (50, 0), (50, 40), (0, 0)]])],
        [(3.0, 2.0), (9.0, 4.0)],
        [
            (k, k, {"kind": shape, "rings": [[(10, 10), (20, 20), (10, 30)][: 1 if shape == "point" else 3]]})
            for k in ("tree", "water", "well", "garden", "small plants", "lane", "boundary", "building")
            for shape in ("point", "line", "polygon")
        ],
        "us",
        "paces",
        [("mixing", "mixing place", (30, 30)), ("gate", "gate", (0, 30)), ("refill", "refill", (30, 0))],
    ),
}


@pytest.mark.parametrize("name", sorted(SEVERAL))
def test_svg_holds_attributes_only(name):
    """No style sheet, no style, no class, no script: a strict content policy and Typst take it as it is."""
    root = ET.fromstring(SEVERAL[name].svg)
    for element in root.iter():
        assert element.tag.rpartition("}")[2] not in ("style", "script", "foreignObject", "image", "use", "a")
        assert not {key.lower() for key in element.attrib} & {"style", "class", "href"}
        assert not any(key.lower().startswith("on") for key in element.attrib)
        if element.tag.endswith("text"):
            assert element.attrib["font-family"] == "Atkinson Hyperlegible"


@pytest.mark.parametrize("name", sorted(SEVERAL))
def test_letters_are_10_pt_or_more(name):
    """No words on paper are smaller than 10 pt (3.53 mm) at the drawing's own size."""
    drawn = SEVERAL[name]
    root = ET.fromstring(drawn.svg)
    mm_per_unit = drawn.width_mm / float(root.attrib["viewBox"].split()[2])
    sizes = [float(e.attrib["font-size"]) * mm_per_unit for e in root.iter() if e.tag.endswith("text")]
    assert sizes and min(sizes) >= 3.53


@pytest.mark.parametrize("name", sorted(SEVERAL))
def test_size_on_paper_has_the_shape_of_the_view(name):
    """Width to height on paper is width to height of the view, so that nothing is stretched."""
    drawn = SEVERAL[name]
    _, _, wide, high = map(float, ET.fromstring(drawn.svg).attrib["viewBox"].split())
    assert drawn.width_mm / drawn.height_mm == pytest.approx(wide / high, rel=1e-3)


def test_the_same_seed_draws_the_same():
    """The bark comes from the stem's name alone."""
    assert drawings.stump(9.0, None, "s1", LABELS) == drawings.stump(9.0, None, "s1", LABELS)
    assert drawings.stump(9.0, None, "s1", LABELS).svg != drawings.stump(9.0, None, "s2", LABELS).svg
    assert drawings.cuts(3, LABELS, None, "s1") == drawings.cuts(3, LABELS, None, "s1")
    assert drawings.cuts(3, LABELS, None, "s1").svg != drawings.cuts(3, LABELS, None, "s2").svg


@given(st.text(min_size=1, max_size=30))
def test_labels_are_words_and_never_markup(words):
    """Whatever stands in a label, the drawing stays sound and says it, but for what XML cannot hold."""
    shown = NOT_XML.sub("\ufffd", words).replace("\r\n", "\n").replace("\r", "\n")
    for drawn in (
        drawings.stump(5.0, 1.0, words, {"across": words, "ring": words}),
        drawings.cuts(2, {"across": words, "spacing": words}, 5.0, words),
        drawings.pour_ladder(9, [(3, words)], [(words, 3, True)], [words]),
        drawings.check_bar(5.0, words),
    ):
        texts = [e.text or "" for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("text")]
        assert any(shown in t for t in texts)


def test_hostile_words_stay_words():
    """Markup in a label is shown as it was typed."""
    drawn = drawings.check_bar(5.0, '</text><script>alert(1)</script>"&<!--')
    names = [e.tag.rpartition("}")[2] for e in ET.fromstring(drawn.svg).iter()]
    assert "script" not in names and names.count("text") == 1


@pytest.mark.parametrize(("diameter_cm", "band_cm"), [(2.5, 38.1), (7.62, 38.1), (12.0, 45.0)])
def test_the_band_is_as_high_and_wide_as_told(diameter_cm, band_cm):
    """Dye pixels of the band, bark lying over its edges, cover diameter times height at its scale within 8 %."""
    drawn = drawings.band(diameter_cm, band_cm, "s1", {"across": "x", "band": "y"})
    image, mm_per_pixel = pixels(drawn, 300.0)
    told_mm2 = diameter_cm * band_cm * 100 * drawn.scale**2
    assert dyed(image).sum() * mm_per_pixel**2 == pytest.approx(told_mm2, rel=0.08)
    assert drawn.numbers["wet_cm2"] == pytest.approx(math.pi * diameter_cm * band_cm)


def test_a_plant_over_reach_bears_the_sign_and_one_within_does_not():
    """Over 6 ft (Texas A&M AgriLife Extension) the sign "know" stands in the crown."""
    labels = {"height": "h", "reach": "r"}
    tall, low = (drawings.plant(h, 0.6, "s1", labels) for h in (2.4, 1.2))
    assert (tall.numbers["over_reach"], low.numbers["over_reach"]) == (1, 0)
    assert len(tall.svg) > len(low.svg)
    with pytest.raises(ValueError, match="above 0"):
        drawings.plant(0, 0.6, "s1", labels)
    with pytest.raises(ValueError, match="above 0"):
        drawings.band(1, 0, "s1", {"across": "", "band": ""})
