"""Foreign files: what each is by its bytes, its rows and places; hostile ones refused with a sentence."""

import io
import json
import zipfile

import numpy as np
import pytest
import shapely
from openpyxl import Workbook
from pyogrio.raw import write

from stemward.gate.foreign import look
from stemward.gate.foreign.layer import MOST_BYTES
from stemward.gate.problems import Unreadable
from stemward.say.problems import problem_sentence

CSV = b"Tag,Species,DBH\n1,glossy buckthorn,2 1/2\n2,glossy buckthorn,3\n"
GPX = b"""<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="43.1" lon="-89.5"><name>one</name><cmt>3 in</cmt></wpt><wpt lat="43.2" lon="-89.4"><name>two</name></wpt>
<trk><name>edge</name><trkseg><trkpt lat="43.1" lon="-89.5"/><trkpt lat="43.2" lon="-89.5"/></trkseg></trk></gpx>"""
KML = b"""<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document><Placemark><name>oak</name>
<ExtendedData><Data name="dbh"><value>14</value></Data></ExtendedData>
<Point><coordinates>-89.5,43.1,0</coordinates></Point></Placemark></Document></kml>"""
GEOJSON = json.dumps(
    {
        "type": "FeatureCollection",
        "features": [
            {"type": "Feature", "properties": {"tag": 7}, "geometry": {"type": "Point", "coordinates": [-89.5, 43.1]}}
        ],
    }
).encode()
VIRTUAL = (
    b"""<OGRVRTDataSource><OGRVRTLayer name="x"><SrcDataSource>%s</SrcDataSource></OGRVRTLayer></OGRVRTDataSource>"""
)


def xlsx(rows) -> bytes:
    """A workbook of one sheet."""
    book, out = Workbook(), io.BytesIO()
    for row in rows:
        book.active.append(row)
    book.save(out)
    return out.getvalue()


def zipped(**members: bytes) -> bytes:
    """A zip of these members."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, raw in members.items():
            # One date for all, so that the bytes are the same whenever they are made.
            archive.writestr(zipfile.ZipInfo(name, (2026, 10, 10, 9, 0, 0)), raw, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def geopackage(path) -> bytes:
    """A GeoPackage with two points."""
    points = shapely.to_wkb(np.array([shapely.Point(-89.5, 43.1), shapely.Point(-89.4, 43.2)], dtype=object))
    write(path, geometry=points, field_data=[np.array(["a", "b"], dtype=object)], fields=["tag"], layer="trees",
          driver="GPKG", geometry_type="Point", crs="EPSG:4326")  # fmt: skip
    return path.read_bytes()


def shapefile(folder) -> bytes:
    """A zipped Shapefile with one point."""
    points = shapely.to_wkb(np.array([shapely.Point(-89.5, 43.1)], dtype=object))
    write(folder / "trees.shp", geometry=points, field_data=[np.array(["a"], dtype=object)], fields=["tag"],
          driver="ESRI Shapefile", geometry_type="Point", crs="EPSG:4326")  # fmt: skip
    return zipped(**{p.name: p.read_bytes() for p in folder.iterdir() if p.stem == "trees"})


def sentence(raw: bytes, name: str = "brought.csv") -> str:
    """What is said of a file that is refused."""
    with pytest.raises(Unreadable) as caught:
        look(raw, name)
    return problem_sentence(caught.value.problems[0])


@pytest.mark.parametrize(
    ("raw", "sort", "headings", "first"),
    [
        (CSV, "csv", ("Tag", "Species", "DBH"), ("1", "glossy buckthorn", "2 1/2")),
        (CSV.replace(b",", b";"), "csv", ("Tag", "Species", "DBH"), ("1", "glossy buckthorn", "2 1/2")),
        (CSV.decode().encode("utf-16"), "csv", ("Tag", "Species", "DBH"), ("1", "glossy buckthorn", "2 1/2")),
        ("Tag,Note\n1,Bäume\n".encode("cp1252"), "csv", ("Tag", "Note"), ("1", "Bäume")),
        (xlsx([["Tag", "DBH"], [1, 2.5], [2.0, "3 1/4"]]), "xlsx", ("Tag", "DBH"), ("1", "2.5")),
        (GPX, "gpx", ("name", "cmt"), ("one", "3 in")),
        (KML, "kml", ("name", "dbh"), ("oak", "14")),
        (zipped(**{"doc.kml": KML}), "kml", ("name", "dbh"), ("oak", "14")),
        (GEOJSON, "geojson", ("tag",), ("7",)),
    ],
    ids=range(9),
)
def test_each_kind_is_told_by_its_bytes(raw, sort, headings, first):
    """Whatever the file is called, its bytes tell what it is."""
    layer = look(raw, "anything.txt")[0]
    assert (layer.sort, layer.headings, layer.rows[0]) == (sort, headings, first)


def test_places_come_as_longitude_and_latitude():
    """GPX, KML and GeoJSON give degrees; tracks are lines."""
    for raw in (GPX, KML, GEOJSON):
        layer = look(raw, "x")[0]
        assert layer.degrees
        assert layer.shapes[0].rings == (((-89.5, 43.1),),)
    assert look(GPX, "x")[1].shapes[0].kind == "line"


def test_a_geopackage_and_a_shapefile_are_read_apart(tmp_path):
    """Both come through the child process with cells and places."""
    for raw in (geopackage(tmp_path / "t.gpkg"), shapefile(tmp_path)):
        layer = look(raw, "x")[0]
        assert layer.rows[0] == ("a",)
        assert layer.degrees
        assert layer.shapes[0].rings[0][0] == pytest.approx((-89.5, 43.1))


@pytest.mark.parametrize("end", ["geojson", "gpx", "kml", "gpkg", "zip", "shp", "csv"])
def test_a_file_that_names_other_files_is_not_followed(end, tmp_path):
    """A virtual layer is refused under any name, and nothing of the file it names is seen."""
    secret = tmp_path / "secret.csv"
    secret.write_text("name\nhidden words\n")
    said = sentence(VIRTUAL % str(secret).encode(), f"brought.{end}")
    assert "none of the kinds" in said
    assert "hidden" not in said


def test_a_shapefile_whose_parts_are_a_virtual_layer_is_not_followed(tmp_path):
    """The child opens nothing but the expected kind, even if the library would know better."""
    secret = tmp_path / "secret.csv"
    secret.write_text("name\nhidden words\n")
    raw = zipped(**{"trees.shp": VIRTUAL % str(secret).encode()})
    said = sentence(raw, "trees.zip")
    assert "cannot be read" in said
    assert "hidden" not in said


def test_a_database_of_another_kind_is_refused():
    """SQLite bytes that are no GeoPackage are refused in the child."""
    import sqlite3

    with sqlite3.connect(":memory:") as connection:
        connection.execute("CREATE TABLE secrets (word)")
        raw = connection.serialize()
    connection.close()
    assert "cannot be read" in sentence(raw, "x.gpkg") or "no rows" in sentence(raw, "x.gpkg")


BOMB = b"""<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]>
<gpx xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="1" lon="1"><name>&b;</name></wpt></gpx>"""
OUTSIDE = b"""<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY e SYSTEM "file:///etc/hostname">]>
<gpx xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="1" lon="1"><name>&e;</name></wpt></gpx>"""


@pytest.mark.parametrize("raw", [BOMB, OUTSIDE, BOMB.replace(b"gpx", b"kml"), b"<gpx", b"<a/>" * 3])
def test_entities_and_broken_xml_are_refused(raw):
    """No entity is ever put in, and no other file is read for one."""
    assert "cannot be read" in sentence(raw, "x.gpx")


def test_entities_in_a_workbook_are_refused():
    """A workbook is XML within a zip, and held to the same."""
    raw, out = xlsx([["Tag"], [1]]), io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(raw)) as source, zipfile.ZipFile(out, "w") as target:
        for info in source.infolist():
            content = source.read(info)
            if info.filename == "xl/worksheets/sheet1.xml":
                content = b'<!DOCTYPE x [<!ENTITY a "aaaa">]>' + content.partition(b"?>")[2]
            target.writestr(info.filename, content)
    assert "cannot be read" in sentence(out.getvalue(), "x.xlsx")


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b"", "empty"),
        (b"   \n", "empty"),
        (b"one column only\nno delimiter\n", "none of the kinds"),
        (b"%PDF-1.7\n1,2\n", "looks like PDF"),
        (b"\x00\x01\x02,\x03\n" * 5, "zero byte|looks like UTF-16"),
        (b'Tag,Note\n1,"open\n2,x\n', "quote"),
        (zipped(**{"readme.txt": b"x"}), "none of the kinds"),
        (zipped(**{"../up.kml": KML}), "outside of its folder"),
        (zipped(**{"/abs.kml": KML}), "outside of its folder"),
        (zipped(**{"a.kml": KML})[:60], "cannot be read"),
        (b'{"type": "FeatureCollection", "features": "many"}', "none of the kinds"),
        (b"{" * 5000, "cannot be read"),
        (b'{"type": "FeatureCollection", "features": []}', "no rows"),
        (xlsx([["only a heading"]]), "no rows"),
        (b"SQLite format 3\x00" + b"\x00" * 84, "cannot be read"),
    ],
    ids=range(15),
)
def test_what_cannot_be_read_is_said_in_a_sentence(raw, words):
    """Each refusal names what is wrong."""
    import re

    assert re.search(words, sentence(raw))


def test_what_is_too_large_is_not_looked_at():
    """A file over the limit is refused before anything reads it; so is a zip that unpacks to more."""
    assert "larger than the 67 MB" in sentence(b"a,b\n" + b"1" * MOST_BYTES)
    bomb = io.BytesIO()
    with zipfile.ZipFile(bomb, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("a.kml", b"0" * (257 * 1024 * 1024))
    assert "larger than the 256 MB" in sentence(bomb.getvalue(), "x.kmz")


def test_a_script_in_a_name_stays_words():
    """Text is taken as it stands; showing it is the page's matter."""
    layer = look(b"Tag,Note\n1,<script>alert(1)</script>\n", "x.csv")[0]
    assert layer.rows[0][1] == "<script>alert(1)</script>"


def test_half_a_character_becomes_a_sign_that_can_be_written():
    """JSON can name half of a character, in words and in headings; what is kept can be written as UTF-8."""
    raw = b'{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"a\\ud800": "b\\udfff"}}]}'
    layer = look(raw, "x")[0]
    assert (layer.headings, layer.rows) == (("a?",), (("b?",),))


def test_headings_that_are_alike_get_names_of_their_own():
    """Two columns under one heading can both be chosen."""
    assert look(b"Tag,Size,Size\n1,2,3\n", "x")[0].headings == ("Tag", "Size", "Size (2)")
