"""Rows taken over as stems: matched columns, sizes as typed, places, duplicates, and why the rest was left out."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.gate import folder
from stemward.gate.foreign import guess, look, shape_in_metres, take_stems
from stemward.gate.foreign.match import TRADE_WORDS
from stemward.gate.foreign.taken import COLUMNS
from stemward.gate.pieces import Parts, Piece, join
from stemward.gate.places import to_degrees, to_metres
from stemward.handbook import load
from stemward.kinds import Shape
from stemward.label import KINDS
from stemward.say.en.bring import LEFT

FIXED = {"patch": "fence", "species": "glossy buckthorn", "stems": "1", "state": "standing"}


def taken(raw: bytes, origin=None, there=None, outline=None, **fixed):
    """Stems of a file, its columns matched by guess. outline: of the patch fence."""
    layer = look(raw, "x")[0]
    patches = {"fence": outline, "rim": None}
    return take_stems(layer, guess(layer.headings, {}), FIXED | fixed, origin, there, load().find_species, patches)


def test_rows_outside_the_outline_of_their_patch_are_left_out():
    """As the tract's reader does: within 10 m a phone may be off, beyond that it is another place."""
    square = Shape("polygon", (((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0), (0.0, 0.0)),))
    found = taken(b"Tag,DBH,x,y\nin,3,10,10\nnear,3,29,10\nfar,3,31,10\n", outline=square)
    assert [cell(r, "id") for r in found.rows] == ["in", "near"]
    assert [(one.line, one.reason, one.values) for one in found.left_out] == [
        (4, "left.outside", (("typed", "fence"),))
    ]


def cell(row, name: str) -> str:
    """One cell of a taken row."""
    return row[COLUMNS.index(name)]


def land_of(rows):
    """The tract that the rows make, read as any other."""
    pieces = (Piece("tract", "", {"name": "X"}), Piece("patch", "fence", {"id": "fence", "places": ["woods"]}))
    return folder.read_texts(join(Parts(pieces, rows)), load().find_species, KINDS).tract


@pytest.mark.parametrize(
    ("headings", "found"),
    [
        (("Tag", "Species", "DBH", "Easting", "Northing"),
         {"id": "Tag", "species": "Species", "size": "DBH", "x_m": "Easting", "y_m": "Northing"}),
        (("Tree No.", "dbh_in", "lat", "lon"), {"id": "Tree No.", "diameter_in": "dbh_in", "y_m": "lat", "x_m": "lon"}),
        (("DIAMETER (CM)", "X", "Y"), {"diameter_cm": "DIAMETER (CM)", "x_m": "X", "y_m": "Y"}),
        (("specees", "Longitude"), {"species": "specees", "x_m": "Longitude"}),
        (("alpha", "beta"), {}),
    ],
)  # fmt: skip
def test_headings_are_guessed(headings, found):
    """Trade headings, other letter case and slips of the pen find their column."""
    assert guess(headings, {}) == found


def test_what_was_matched_before_goes_first():
    """A heading that a person matched once is matched so again."""
    assert guess(("Girth", "DBH"), {"girth": "size"}) == {"size": "Girth"}


@given(st.lists(st.sampled_from([w for words in TRADE_WORDS.values() for w in words]), max_size=12))
def test_no_heading_is_used_twice(headings):
    """Each column has a heading of its own."""
    found = guess(headings, {})
    assert len(set(found.values())) == len(found)
    assert set(found.values()) <= set(headings)


def test_inches_stay_as_typed():
    """A size of 2 1/2 in is kept so, and the tract reads it so."""
    found = taken(b"Tag,DBH,x,y\nt1,2 1/2,1,2\nt2,3,9,2\n", unit="in")
    assert [cell(r, "diameter_in") for r in found.rows] == ["2 1/2", "3"]
    assert land_of(found.rows).stems.diameter_in.tolist() == [2.5, 3.0]


def test_rows_without_a_name_get_one():
    """Ids are made where the file has none, clear of those that are there."""
    found = taken(b"DBH,x,y\n2,1,2\n3,9,2\n")
    assert [cell(r, "id") for r in found.rows] == ["i1", "i2"]
    more = taken(b"DBH,x,y\n2,50,2\n", there=land_of(found.rows).stems)
    assert [cell(r, "id") for r in more.rows] == ["i3"]


@pytest.mark.parametrize(
    ("rows", "why"),
    [
        (b"t1,x,1,1", "left.figure"),
        (b"t1,-2,1,1", "left.figure"),
        (b"t1,,1,1", "left.no_size"),
        (b"t1,2,,1", "left.no_place"),
        (b"t1,2,1,1\nt1,3,50,50", "left.id_twice"),
        (b"t1,2,1,1\nt2,2.1,1.3,1", "left.twice"),
        (b"t1,2,1,1\nt2,9,1.3,1", ""),
        (b"t1,2,1,1\nt2,2,3,1", ""),
    ],
)
def test_what_is_left_out_says_why(rows, why):
    """A row that cannot be taken is named with its line and reason; the rest come in."""
    found = taken(b"Tag,DBH,x,y\n" + rows + b"\n")
    assert [one.reason for one in found.left_out] == ([why] if why else [])
    assert len(found.rows) + len(found.left_out) == rows.count(b"\n") + 1
    for one in found.left_out:
        assert LEFT[one.reason].format(**dict(one.values))


def test_unknown_plants_and_patches_are_left_out():
    """A plant or patch that nobody knows is left out with its name."""
    found = taken(b"species,patch,DBH,x,y\nbuckthorm,fence,2,1,1\nglossy buckthorn,moon,2,9,9\n,,2,30,30\n")
    assert [(one.line, one.reason, dict(one.values)["typed"]) for one in found.left_out] == [
        (2, "left.species", "buckthorm"), (3, "left.patch", "moon"),
    ]  # fmt: skip
    assert len(found.rows) == 1


def test_what_is_there_already_is_not_taken_twice():
    """The same file brought again brings nothing."""
    raw = b"DBH,x,y\n2,1,2\n3,9,2\n"
    first = taken(raw)
    again = taken(raw, there=land_of(first.rows).stems)
    assert again.rows == []
    assert {one.reason for one in again.left_out} == {"left.twice_there"}


def test_degrees_become_metres_about_the_corner():
    """GPS points are turned about the tract's origin, or make one where it has none."""
    raw = b"DBH,lat,lon\n2,43.100000,-89.500000\n3,43.101000,-89.499000\n"
    found = taken(raw)
    assert found.origin == (43.1, -89.5)
    north_m = float(cell(found.rows[1], "y_m"))
    assert north_m == pytest.approx(111.1, abs=0.3)  # a thousandth of a degree of latitude, WGS 84
    assert taken(raw, origin=(43.0, -89.5)).origin == (43.0, -89.5)


@settings(max_examples=50, deadline=None)
@given(
    lat=st.floats(-70, 70), lon=st.floats(-179, 179),
    x=st.floats(-20_000, 20_000), y=st.floats(-20_000, 20_000),
)  # fmt: skip
def test_metres_to_degrees_and_back(lat, lon, x, y):
    """Within 20 km of the corner a place comes back within a millimetre."""
    a, b = to_degrees([x], [y], (lat, lon))
    back_x, back_y = to_metres(a, b, (lat, lon))
    assert np.hypot(back_x - x, back_y - y)[0] < 1e-3


def test_shapes_are_turned_into_metres():
    """A ring and a point in degrees about the origin."""
    import json

    ring = [[-89.5, 43.1], [-89.499, 43.1], [-89.499, 43.101], [-89.5, 43.1]]
    shapes = [{"type": "Polygon", "coordinates": [ring]}, {"type": "Point", "coordinates": [-89.5, 43.1]}]
    features = [{"type": "Feature", "properties": {"n": n}, "geometry": shape} for n, shape in enumerate(shapes)]
    layer = look(json.dumps({"type": "FeatureCollection", "features": features}).encode(), "x")[0]
    area, point = (shape_in_metres(shape, layer, (43.1, -89.5)) for shape in layer.shapes)
    assert (area["type"], area["coordinates"][0][0]) == ("Polygon", [0.0, 0.0])
    # A thousandth of a degree of latitude is 111.1 m here (WGS 84, by series; from memory).
    assert abs(area["coordinates"][0][2][1] - 111.1) < 0.1
    assert point == {"type": "Point", "coordinates": [0.0, 0.0]}
