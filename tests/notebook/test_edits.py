"""Wishes as edits: counted plants, what is kept near them, a patch taken away."""

import pytest

from notebook.some import NOW, asked, stem
from stemward.gate.pieces import Parts, Piece
from stemward.notebook import edits, store, worked
from stemward.notebook.changes import change
from stemward.reckon.dose import wet_share_frac

PARTS = Parts(
    (
        Piece("tract", "", {"name": "Small"}),
        Piece("patch", "fence", {"id": "fence", "name": "Fence", "places": ["woods"]}),
        Piece("patch", "rim", {"id": "rim", "name": "Rim", "places": ["woods"]}),
    ),
    (stem("c1"),),
)


def test_counted_plants_stand_for_their_class_at_its_upper_end():
    """12 of 1 to 3 in are one row of 12 stems at 3 in, under an id that is free."""
    rows = edits.counted(PARTS, "fence", "glossy buckthorn", {"1to3": 12, "over6": 0}, "chest")
    assert len(rows) == 1
    cells = dict(zip(store.CELLS, rows[0], strict=True))
    assert (cells["key"], cells["diameter_in"], cells["stems"], cells["height_m"]) == ("c2", "3", "12", "1.3")
    assert wet_share_frac(3 * 2.54, 7.62, 5.08) >= wet_share_frac(2 * 2.54, 7.62, 5.08) - 1e-9


def test_patches_that_are_counted_do_not_stand_near_each_other():
    """What one patch keeps from harm is far from the plants of another."""
    (x_one, _), (x_other, _) = edits.spot_of(PARTS, "fence"), edits.spot_of(PARTS, "rim")
    assert abs(x_one - x_other) >= edits.APART_M


def test_what_is_kept_stands_at_its_distance(small):
    """A tree said to be 30 ft away is 9.14 m from the counted plants, and the patch counts as asked."""
    parts = worked.known(small).parts
    rows = edits.counted(parts, "fence", "glossy buckthorn", {"under1": 5}, "")
    change(asked(small, added=rows), NOW)
    parts = worked.known(small).parts
    near = edits.kept_at(parts, "fence", [("tree", "bur oak", 9.144)])
    change(asked(small, edits=[*near, edits.asked_kept(parts, "fence")]), NOW)

    land = worked.known(small).land
    assert land.kept_asked == ("fence",)
    assert land.spared[0].species == "Quercus macrocarpa"
    assert land.spared[0].shape.rings[0][0] == pytest.approx((0.0, 9.14))


def test_a_patch_goes_with_all_that_stands_on_it(hollow):
    """Taking a patch away takes its stems, plots, choices and outline, and the rest can be read."""
    parts = worked.known(hollow).parts
    changes, taken = edits.without_patch(parts, "slope")
    change(asked(hollow, "take away", edits=changes, taken=taken), NOW)

    land = worked.known(hollow).land
    assert "slope" not in [p.id for p in land.patches]
    assert not (land.stems.patch == "slope").any()
    assert all(t.patch != "slope" for t in land.plots)


def test_names_are_short_and_their_own():
    """A key is made of the name's letters and no other has it."""
    assert edits.new_key(PARTS, "patch", "Fence") == "fence-2"
    assert edits.new_key(PARTS, "patch", "Über dem Bach!") == "ber-dem-bach"
    assert edits.new_key(PARTS, "patch", "¡¡") == "patch"
