"""patches.geojson and spared.geojson as drawing programs and hands leave them."""

import json

import pytest

SQUARE = [[0, 0], [90, 0], [90, 100], [0, 100], [0, 0]]
OTHER = [[100, 0], [200, 0], [200, 100], [100, 100], [100, 0]]


def feature(shape, coordinates, **properties):
    """One feature."""
    geometry = {"type": shape, "coordinates": coordinates}
    return {"type": "Feature", "properties": properties, "geometry": geometry}


def collection(*features, **more):
    """A collection with each feature on a line of its own, the first on line 2."""
    head = json.dumps({"type": "FeatureCollection", **more})[:-1]
    return head + ', "features": [\n' + ",\n".join(json.dumps(f) for f in features) + "\n]}\n"


def rim(*rings):
    """The patch "rim" with these rings."""
    return feature("Polygon", list(rings), id="rim")


def outlines(tract, *features, **more):
    """Write patches.geojson, and give its one problem."""
    tract.write("patches.geojson", collection(*features, **more))
    return tract.problem()


def kept(tract, *features):
    """Write spared.geojson."""
    tract.write("spared.geojson", collection(*features))


def test_polygon_that_crosses_itself(tract):
    """A bow tie is refused with the place where it crosses itself, in metres."""
    problem = outlines(tract, rim([[0, 0], [90, 100], [90, 0], [0, 100], [0, 0]]))

    assert (problem.message, problem.file, problem.line) == ("geo.crosses_itself", "patches.geojson", 2)
    assert problem.values == {"x_m": 45.0, "y_m": 50.0}


def test_ring_that_touches_itself(tract):
    """A ring that runs twice through one corner is refused with that corner."""
    problem = outlines(tract, rim([[0, 0], [90, 0], [45, 50], [90, 100], [0, 100], [45, 50], [0, 0]]))

    assert (problem.message, problem.values) == ("geo.crosses_itself", {"x_m": 45.0, "y_m": 50.0})


def test_hole_outside_its_outline(tract):
    """A hole that lies outside is refused."""
    problem = outlines(tract, rim(SQUARE, [[300, 0], [310, 0], [310, 10], [300, 0]]))

    assert problem.message == "geo.hole"


def test_hole_is_kept(tract):
    """A stem in a hole of its patch is outside of it."""
    hole = [[30, 30], [70, 30], [70, 70], [30, 70], [30, 30]]
    tract.change("stems.csv", "12.5,48", "50,50")
    problem = outlines(tract, rim(SQUARE, hole), feature("Polygon", [OTHER], id="meadow"))

    assert (problem.message, problem.values["distance_m"]) == ("stems.outside_all", 20.0)


def test_ring_that_is_not_closed(tract):
    """A ring whose last corner is not its first is refused with the gap; it is not closed by guess."""
    problem = outlines(tract, rim(SQUARE[:-1]))

    assert (problem.message, problem.values, problem.expected) == (
        "geo.not_closed", {"gap_m": 100.0}, "[0.0, 0.0]",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("ring", "message"),
    [
        ([[0, 0], [1, 1], [0, 0]], "geo.too_few"),
        ([[0, 0], [1, 1], [1, 1], [0, 0]], "geo.no_area"),
        ([[0, 0], [1, 1], [2, 2], [0, 0]], "geo.crosses_itself"),
    ],
)
def test_ring_without_area(tract, ring, message):
    """Two corners, or three in one line, enclose nothing."""
    assert outlines(tract, rim(ring)).message == message


@pytest.mark.parametrize("position", [["12", 3], [1], [1, 2, 3, 4], [True, 1], None, [1e30, 1], [[1, 2]], {"x": 1}])
def test_position_that_is_none(tract, position):
    """A corner that is not two numbers within the world is refused."""
    assert outlines(tract, rim([position, *SQUARE])).message == "geo.position"


@pytest.mark.parametrize("coordinates", [None, [], {}, [[]], 3, "x"])
def test_coordinates_that_are_none(tract, coordinates):
    """Anything but rings of corners is refused."""
    problem = outlines(tract, feature("Polygon", coordinates, id="rim"))

    assert problem.message in ("geo.position", "geo.too_few")


def test_heights_are_left_out(tract):
    """A third number, the height, is taken and left out."""
    ring = [[x, y, 310.5] for x, y in SQUARE]
    tract.write("patches.geojson", collection(rim(ring)))

    assert tract.read().tract.patches[0].shape.rings[0][1] == (90.0, 0.0)


def test_several_polygons_in_one(tract):
    """A patch of several polygons is refused."""
    problem = outlines(tract, feature("MultiPolygon", [[SQUARE], [OTHER]], id="rim"))

    assert (problem.message, problem.values) == ("geo.many_parts", {"what": "MultiPolygon"})


@pytest.mark.parametrize("shape", ["Point", "LineString", "Circle", ""])
def test_patch_that_is_no_polygon(tract, shape):
    """A patch has an area."""
    problem = outlines(tract, feature(shape, [1, 2], id="rim"))

    assert (problem.message, problem.values["wanted"]) == ("geo.wrong_shape", "Polygon")


def test_feature_without_shape(tract):
    """A feature without geometry is named by its line."""
    problem = outlines(tract, rim(SQUARE), {"type": "Feature", "properties": {"id": "meadow"}, "geometry": None})

    assert (problem.message, problem.line) == ("geo.no_shape", 3)


@pytest.mark.parametrize("text", ['{"type": "Polygon"}', "[]", '"x"', '{"type": "FeatureCollection"}'])
def test_no_collection(tract, text):
    """Anything but a collection of features is refused."""
    tract.write("patches.geojson", text)

    assert tract.problem().message == "geo.not_a_collection"


def test_collection_of_something_else(tract):
    """A thing in the collection that is no feature is named by its line."""
    problem = outlines(tract, rim(SQUARE), 3)

    assert (problem.message, problem.line) == ("geo.not_a_feature", 3)


def test_broken_json(tract):
    """A missing comma is told with line and place."""
    tract.change("patches.geojson", '"rim"},\n', '"rim"}\n')

    problem = tract.problem()
    assert (problem.message, problem.file, problem.line) == ("json.syntax", "patches.geojson", 3)


@pytest.mark.parametrize("name", ["patches.geojson", "spared.geojson", "records.jsonl"])
@pytest.mark.parametrize("opening", ["[", '{"a":', '{"features": ['])
def test_json_nested_without_end(tract, name, opening):
    """A hundred thousand brackets are refused, not followed."""
    tract.write(name, opening * 100_000)

    assert ("json.too_deep", name) in {(p.message, p.file) for p in tract.problems()}


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1" * 5000])
def test_numbers_that_are_none(tract, number):
    """Numbers that JSON has not, and whole numbers without end, are refused."""
    tract.change("patches.geojson", "[90, 100]", f"[90, {number}]")

    assert tract.problem().message == "json.number"


def test_key_twice(tract):
    """A key that stands twice is refused: nobody knows which is meant."""
    tract.change("patches.geojson", '{"id": "rim"}', '{"id": "meadow", "id": "rim"}')

    problem = tract.problem()
    assert (problem.message, problem.values) == ("json.key_twice", {"name": "id"})


def test_patch_without_id(tract):
    """An outline without id belongs to no patch."""
    problem = outlines(tract, feature("Polygon", [SQUARE], name="rim"))

    assert (problem.message, problem.line, problem.column) == ("geo.missing_property", 2, "id")


def test_patch_without_properties(tract):
    """An outline without properties is told so."""
    tract.write("patches.geojson", collection({**rim(SQUARE), "properties": None}))

    assert [p.message for p in tract.problems()] == ["geo.no_properties", "geo.missing_property"]


def test_outline_of_an_unknown_patch(tract):
    """An outline whose id no patch has is named with near ones."""
    problem = outlines(tract, feature("Polygon", [SQUARE], id="rimm"))

    assert (problem.message, problem.line, problem.column) == ("geo.unknown_patch", 2, "id")
    assert problem.values == {"patch": "rimm", "near": "rim"}


def test_outline_twice(tract):
    """Two outlines of one patch are named with both lines."""
    problem = outlines(tract, rim(SQUARE), feature("Polygon", [OTHER], id="meadow"), rim(SQUARE))

    assert (problem.message, problem.line) == ("geo.id_twice", 4)
    assert problem.values == {"id": "rim", "first_line": 2}


def test_degrees(tract):
    """An outline in degrees is refused: in metres it would be smaller than a hand."""
    ring = [[-90.12345 + x / 1e6, 43.12345 + y / 1e6] for x, y in SQUARE]
    problem = outlines(tract, rim(ring))

    assert (problem.message, problem.line) == ("geo.degrees", 2)
    assert problem.values["span_x"] == pytest.approx(90e-6)


@pytest.mark.parametrize("system", ["urn:ogc:def:crs:OGC:1.3:CRS84", "EPSG:4326", "urn:ogc:def:crs:EPSG::4269"])
def test_system_of_degrees_named(tract, system):
    """A file that says its coordinates are degrees is refused."""
    problem = outlines(tract, rim(SQUARE), crs={"type": "name", "properties": {"name": system}})

    assert (problem.message, problem.values) == ("geo.degrees_named", {"system": system})


def test_other_system_named(tract):
    """A file that names a grid in metres is read, and whether the stems are in it too is asked."""
    tract.write("patches.geojson", collection(rim(SQUARE), crs={"properties": {"name": "EPSG:26915"}}))

    question = tract.question()
    assert (question.message, dict(question.values)) == ("ask.grid", {"system": "EPSG:26915"})


def test_patches_that_overlap(tract):
    """Two patches that share ground are asked about, with how much; a sliver along a border is not."""
    wide = [[80, 0], [200, 0], [200, 100], [80, 100], [80, 0]]
    tract.write("patches.geojson", collection(rim(SQUARE), feature("Polygon", [wide], id="meadow")))
    question = tract.question()
    assert (question.message, question.line) == ("ask.overlap", 3)
    assert dict(question.values) == {"patch": "rim", "other": "meadow", "area_m2": 1000.0}

    sliver = [[89.995, 0], [200, 0], [200, 100], [89.995, 100], [89.995, 0]]
    tract.write("patches.geojson", collection(rim(SQUARE), feature("Polygon", [sliver], id="meadow")))
    assert tract.questions() == ()


def test_area_that_is_not_the_drawn_one(tract):
    """A stated area far from the drawn one is asked about: one hectare is a hundred metres square."""
    tract.change("tract.toml", 'area = "0.9 ha"', 'area = "0.9 acre"')

    question = tract.question()
    assert (question.message, question.line) == ("ask.area_differs", 13)
    assert dict(question.values)["drawn_m2"] == 9000.0


# what is kept from harm


def test_spared_without_kind(tract):
    """What is kept from harm has a kind."""
    kept(tract, feature("Point", [1, 2], id="oak-1"))

    problem = tract.problem()
    assert (problem.message, problem.file, problem.line) == ("geo.missing_property", "spared.geojson", 2)
    assert (problem.column, problem.expected) == ("kind", '"kind": "tree"')


def test_spared_of_unknown_kind(tract):
    """A kind that is none is named with the near one."""
    kept(tract, feature("Point", [1, 2], id="well", kind="wel"))

    problem = tract.problem()
    assert (problem.message, problem.line, problem.column) == ("cell.not_a_choice", 2, "kind")
    assert problem.values == {"typed": "wel", "near": "well"}


def test_spared_id_twice(tract):
    """Two things kept from harm have two names."""
    kept(tract, *(feature("Point", [n, 2], id="well", kind="well") for n in range(2)))

    problem = tract.problem()
    assert (problem.message, problem.line, problem.values) == (
        "geo.id_twice",
        3,
        {"id": "well", "first_line": 2},
    )


def test_spared_with_unknown_property(tract):
    """A property that is not known is named with near ones."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", dbh_mm=400, crown_radius_m=5))

    problem = tract.problem()
    assert (problem.message, problem.column) == ("geo.unknown_property", "dbh_mm")
    assert problem.values["near"].split(", ")[0] in ("dbh_cm", "dbh_in")


def test_spared_of_unknown_species(tract):
    """A plant the handbook does not know is kept from harm all the same, and asked about."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", species="burr oak", dbh_cm=40))

    question = tract.question()
    assert (question.message, question.line) == ("ask.spared_species", 2)
    assert dict(question.values)["near"] == "bur oak (Quercus macrocarpa)"
    assert tract.read().tract.spared[0].species == ""


def test_spared_tree_without_size(tract):
    """How far the roots of a tree without a size reach nobody can say, so the size is asked for."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", species="bur oak"))

    question = tract.question()
    assert (question.message, dict(question.values)) == ("ask.spared_no_size", {"id": "oak"})


def test_spared_with_both_sizes(tract):
    """A tree with a size in inches and another in centimetres is refused."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", dbh_cm=40, dbh_in="16"))

    problem = tract.problem()
    assert (problem.message, problem.column) == ("geo.two_sizes", "dbh_in")


@pytest.mark.parametrize(
    ("size", "message"),
    [("wide", "cell.not_a_number"), ("16,5", "cell.decimal_comma"), ("16 in", "cell.other_unit"),
     (0, "cell.out_of_range"), (-4, "cell.out_of_range"),
     ([1], "record.wrong_type"), (True, "record.wrong_type"),
     (1e300, "cell.out_of_range"), (10**400, "cell.out_of_range")],
)  # fmt: skip
def test_spared_with_a_bad_size(tract, size, message):
    """A size that is no figure, or cannot be, is refused with an example."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", dbh_cm=size))

    problem = tract.problem()
    assert (problem.message, problem.line, problem.column) == (message, 2, "dbh_cm")


def test_spared_with_an_odd_size(tract):
    """A trunk of four metres is asked about."""
    kept(tract, feature("Point", [1, 2], id="oak", kind="tree", dbh_cm=400))

    assert tract.question().message == "ask.odd_size"


def test_spared_line_without_length(tract):
    """A line has two places."""
    kept(tract, feature("LineString", [[1, 2], [1, 2]], id="creek", kind="water"))

    assert tract.problem().message == "geo.too_few"


def test_half_characters(tract):
    """Half a character, which could not be written out again, is refused."""
    tract.change("spared.geojson", '"creek"', '"\\ud800"')

    problem = tract.problem()
    assert (problem.message, problem.column) == ("cell.odd_sign", "id")
