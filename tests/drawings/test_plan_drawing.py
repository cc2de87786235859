"""The scaled plan: places, scale, words, and nothing to keep from harm left off."""

import re
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward import drawings
from stemward.drawings.lines import waves
from stemward.drawings.placing import Sheet, heading, label

sys.path.insert(0, str(Path(__file__).parents[2] / "tools"))
from pictures import drawing_png

PATCH = ("meadow", [[(0, 0), (200, 0), (200, 100), (0, 100)]])


def point(name, x, y, kind="tree"):
    """A point to be kept from harm."""
    return name, kind, {"kind": "point", "rings": [[(x, y)]]}


def plan(stems=(), kept=(), units="metric", **more):
    """A plan of one patch of 200 by 100 m."""
    return drawings.plan_drawing([PATCH], list(stems), list(kept), units, "paces", **more)


def texts(drawn):
    """All words of a drawing."""
    return [e.text or "" for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("text")]


def signs(drawn):
    """Middles of the signs, mm."""
    found = re.findall(r"translate\(([-\d.]+) ([-\d.]+)\) scale\(([-\d.]+)\)", drawn.svg)
    return [(float(x) + 12 * float(k), float(y) + 12 * float(k)) for x, y, k in found]


def test_scale_is_paper_over_ground():
    """Two signs lie as far apart on paper as on the ground, times the scale."""
    drawn = plan(kept=[point("a", 20, 30), point("b", 140, 80)])
    (x0, y0), (x1, y1) = signs(drawn)
    assert x1 - x0 == pytest.approx(120_000 * drawn.scale, abs=0.02)
    assert y0 - y1 == pytest.approx(50_000 * drawn.scale, abs=0.02), "north is up"


@pytest.mark.parametrize("units", ["us", "metric"])
def test_scale_bar_is_as_long_as_it_says(units):
    """The bar's length on paper is its length on the ground times the scale; a pace is 2.5 ft."""
    drawn = plan(units=units)
    words = next(t for t in texts(drawn) if "paces" in t)
    long, paces = (float(n) for n in re.findall(r"[\d.]+", words))
    metres = long * (0.3048 if units == "us" else 1)
    assert drawn.numbers["bar_m"] == pytest.approx(metres)
    assert paces == pytest.approx(metres / 0.762, abs=0.51)
    paths = [e.attrib["d"] for e in ET.fromstring(drawn.svg).iter() if e.tag.endswith("path")]
    bars = [re.fullmatch(r"M10 [\d.]+H([\d.]+)V[\d.]+H10Z", d) for d in paths]
    assert max(float(b[1]) for b in bars if b) - 10 == pytest.approx(metres * 1000 * drawn.scale, abs=0.01)


def test_every_stem_is_a_round_at_its_place():
    """Stems stand in one path, each at its place."""
    stems = [(50.0, 50.0), (150.0, 25.0)]
    drawn = plan(stems, [point("a", *stems[0]), point("b", *stems[1])])
    rounds = next(d for d in re.findall(r'd="([^"]+)"', drawn.svg) if d.count("a") == 4)
    starts = [(float(x), float(y)) for x, y in re.findall(r"M([\d.]+) ([\d.]+)a", rounds)]
    radius = float(re.search(r"a([\d.]+) ", rounds)[1])
    for (x, y), (sign_x, sign_y) in zip(starts, signs(drawn), strict=True):
        assert (x + radius, y) == pytest.approx((sign_x, sign_y), abs=0.02)
    assert drawn.numbers["stems"] == 2


def test_what_is_kept_far_away_stands_at_the_edge():
    """A well a mile off does not shrink the map and is not left off: it stands at the edge with an arrow."""
    near, far = plan(kept=[point("well", 230, 50, "well")]), plan(kept=[point("well", 1600, 50, "well")])
    assert far.scale == pytest.approx(plan().scale)
    assert (near.numbers["kept_beyond"], far.numbers["kept_beyond"]) == (0, 1)
    assert "well" in texts(far) and "rotate(0)" in far.svg and "rotate" not in near.svg
    assert all(0 < x < far.width_mm and 0 < y < far.height_mm for x, y in signs(far))


def test_a_view_shows_that_ground_only():
    """With a view, stems outside it are not drawn nor counted, and what is kept outside stands at the edge."""
    drawn = plan([(10, 10), (190, 90)], [point("oak", 190, 90)], view_m=(0, 0, 100, 50))
    assert (drawn.numbers["stems"], drawn.numbers["kept_beyond"]) == (1, 1)
    assert drawn.scale > plan().scale


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.floats(-1e4, 1e4), st.floats(-1e4, 1e4)), max_size=8),
    st.lists(st.tuples(st.floats(-1e5, 1e5), st.floats(-1e5, 1e5)), max_size=8),
)
def test_any_land_fits_the_page(stems, kept):
    """Wherever stems and trees lie, the drawing keeps its size and every sign stands on it."""
    places = [point(f"oak-{n}", *at) for n, at in enumerate(kept)]
    drawn = drawings.plan_drawing([], stems, places, "us", "paces")
    assert drawn.width_mm == 170 and 0 < drawn.height_mm <= 185 + 1e-6
    assert len(signs(drawn)) == len(kept) and drawn.numbers["stems"] == len(stems)
    assert all(0 < x < drawn.width_mm and 0 < y < drawn.height_mm for x, y in signs(drawn))


@given(st.text(max_size=30).filter(str.isprintable))
def test_names_are_words_and_never_markup(name):
    """Whatever a patch or a tree is called, the drawing stays sound and says it."""
    patch = (name, [[(0, 0), (5, 0), (5, 5), (0, 0)]])
    tree = (name, "tree", {"kind": "point", "rings": [[(1, 1)]]})
    found = texts(drawings.plan_drawing([patch], [], [tree], "us", "paces", [("gate", name, (2, 2))]))
    # What has no name is drawn without words; the patch's heading is written all the same.
    assert found.count(name) == (3 if name else 1) + (name == "N")


def test_words_keep_off_each_other():
    """Six trees in a clump have six names, and no two lie over one another."""
    sheet = Sheet((0, 0, 170, 185), np.empty((0, 2)))
    for n in range(6):
        label(sheet, f"oak-{n}", 80 + 4 * (n % 3), 80 + 4 * (n // 3), 3.6, 3.8)
    for n, one in enumerate(sheet.taken):
        for other in sheet.taken[:n]:
            wide = min(one[2], other[2]) - max(one[0], other[0])
            high = min(one[3], other[3]) - max(one[1], other[1])
            assert wide <= 0 or high <= 0


def test_names_of_patches_stand_at_a_free_corner():
    """A patch's name goes to its highest corner, or to the next where something stands there already."""
    corners = [(40.0, 60.0), (100.0, 50.0), (100.0, 120.0), (40.0, 120.0)]
    free, taken = (Sheet((0, 0, 170, 185), np.empty((0, 2))) for _ in range(2))
    taken.taken.append((70.0, 30.0, 140.0, 70.0))
    for sheet in (free, taken):
        heading(sheet, "Oak slope", corners, 4.4, 1.6)
    assert abs(free.taken[0][3] - 50) < 8 and free.taken[0][2] > 95
    assert taken.taken[1][2] < 70 and abs(taken.taken[1][3] - 60) < 8


def test_words_keep_off_stems():
    """A name goes to the side on which no stems stand."""
    right = np.column_stack([np.linspace(84, 120, 40), np.full(40, 80.0)])
    sheet = Sheet((0, 0, 170, 185), right)
    label(sheet, "oak-1", 80, 80, 3.6, 3.8)
    left, top, far, bottom = sheet.taken[0]
    inside = (right[:, 0] > left) & (right[:, 0] < far) & (right[:, 1] > top) & (right[:, 1] < bottom)
    assert not inside.any()


def test_a_thousand_trees_to_keep_are_all_drawn():
    """Where there is no room for names, every tree still has its square, smaller, and the numbers say so."""
    few, many = ([point(f"oak-{n}", n % 40 * 5, n // 40 * 4) for n in range(count)] for count in (30, 1000))
    assert plan(kept=few).numbers["kept_named"] == 30
    drawn = plan(kept=many)
    assert (drawn.numbers["kept"], drawn.numbers["kept_named"], len(signs(drawn))) == (1000, 0, 1000)
    assert "oak-1" not in texts(drawn)


def test_water_follows_its_line():
    """Waves leave the line of a stream by no more than a few millimetres on paper, and stay as long as it is."""
    numbers = np.array(re.findall(r"([-\d.]+) ([-\d.]+)", waves([(0, 0), (60, 0)])), dtype=float)
    assert np.abs(numbers[:, 1]).max() < 1.6
    assert (numbers[:, 0].min(), numbers[:, 0].max()) == pytest.approx((0, 60), abs=0.5)


def test_many_stems_stay_small_enough_to_print():
    """A hundred thousand stems are drawn as rounds that can be told apart, and counted whole."""
    chance = np.random.default_rng(1)
    stems = (chance.random((100_000, 2)) * (200, 100)).tolist()
    drawn = plan(stems)
    assert drawn.numbers["stems"] == 100_000 and len(drawn.svg) < 3_000_000
    assert drawing_png(drawn, 30.0).startswith(b"\x89PNG")
