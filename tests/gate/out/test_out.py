"""What is taken out: tables, geodata, the zipped folder, a calendar; harmless to those who open it, and read back."""

import csv
import datetime
import io
import json
import stat
import zipfile

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook
from pyogrio import list_layers
from pyogrio.raw import read as read_geodata

from stemward.gate import demo, folder
from stemward.gate.foreign import look
from stemward.gate.out import (
    Due,
    NotAFolder,
    calendar,
    folder_unzip,
    folder_zip,
    geojson,
    geopackage,
    gpx,
    stems_csv,
    stems_xlsx,
)
from stemward.handbook import load
from stemward.label import KINDS

ORIGIN = (43.1, -89.5)


@pytest.fixture(scope="module")
def hollow():
    """The example tract."""
    return folder.read_texts(demo.texts(), load().find_species, KINDS).tract


@pytest.fixture(scope="module")
def risky():
    """A tract with stems whose words would be formulas."""
    texts = demo.texts()
    lines = texts["stems.csv"].splitlines()
    rows = [f"={n},{line.partition(',')[2]}" for n, line in enumerate(lines[1:4])]
    texts["stems.csv"] = "\n".join(
        [lines[0] + ",note", *(f'{r},"{s}HYPERLINK(1)"' for r, s in zip(rows, "=+@", strict=True))]
    )
    return folder.read_texts(texts, load().find_species, KINDS).tract


def test_the_table_of_stems_holds_every_stem(hollow):
    """One row a stem, inches as typed, with the names of plant and patch."""
    rows = list(csv.DictReader(io.StringIO(stems_csv(hollow).decode())))
    assert len(rows) == len(hollow.stems)
    assert (rows[0]["common_name"], rows[0]["patch_name"]) == ("glossy buckthorn", "Spring meadow")
    assert [float(r["diameter_in"]) for r in rows] == hollow.stems.diameter_in.tolist()


def test_no_cell_is_a_formula(risky):
    """Words that begin like a formula are led by an apostrophe in CSV and are text in a workbook."""
    rows = list(csv.reader(io.StringIO(stems_csv(risky).decode())))
    assert all(not cell.startswith(("=", "+", "@", "-")) for row in rows for cell in row)
    assert rows[1][0] == "'=0"

    sheet = load_workbook(io.BytesIO(stems_xlsx(risky)))["stems"]
    kinds = {cell.data_type for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)}
    assert kinds == {"s"}
    assert sheet["A2"].value == "=0"


def test_a_workbook_has_three_sheets_and_the_same_bytes(hollow):
    """Stems, kept things and patches; made twice it is the same file."""
    raw = stems_xlsx(hollow)
    book = load_workbook(io.BytesIO(raw))
    assert book.sheetnames == ["stems", "keep from harm", "patches"]
    assert book["stems"].max_row == len(hollow.stems) + 1
    assert book["patches"].max_row == len(hollow.patches) + 1
    assert stems_xlsx(hollow) == raw


@pytest.mark.parametrize("origin", [None, ORIGIN])
def test_geojson_holds_everything_with_a_place(hollow, origin):
    """Stems, patches and kept things; degrees where the corner is known, else metres with a note."""
    data = json.loads(geojson(hollow, origin))
    what = [f["properties"]["what"] for f in data["features"]]
    assert what.count("stem") == len(hollow.stems)
    assert what.count("patch") == 4
    assert what.count("keep from harm") == len(hollow.spared)
    assert ("note" in data) == (origin is None)
    stem = next(f for f in data["features"] if f["properties"]["what"] == "stem")
    x, y = stem["geometry"]["coordinates"]
    if origin is None:
        assert (x, y) == (hollow.stems.x_m[0].round(2), hollow.stems.y_m[0].round(2))
    else:
        assert (abs(x - -89.5) < 0.1, abs(y - 43.1) < 0.1) == (True, True)


def test_what_goes_out_as_geojson_comes_in_again(hollow):
    """Our own importer reads the places back within a centimetre."""
    from stemward.gate.places import to_metres

    layer = look(geojson(hollow, ORIGIN), "x")[0]
    spots = [s.rings[0][0] for s, row in zip(layer.shapes, layer.rows, strict=True) if "stem" in row]
    x, y = to_metres([s[0] for s in spots], [s[1] for s in spots], ORIGIN)
    assert np.abs(x - hollow.stems.x_m).max() < 0.02
    assert np.abs(y - hollow.stems.y_m).max() < 0.02


@pytest.mark.parametrize("origin", [None, ORIGIN])
def test_a_geopackage_has_three_layers(hollow, tmp_path, origin):
    """Read back by the geodata library: every stem with its size."""
    path = tmp_path / "t.gpkg"
    path.write_bytes(geopackage(hollow, origin))
    assert sorted(list_layers(path)[:, 0].tolist()) == ["kept", "patches", "stems"]
    meta, _, shapes, fields = read_geodata(path, layer="stems")
    assert len(shapes) == len(hollow.stems)
    sizes = fields[meta["fields"].tolist().index("diameter_cm")]
    assert sizes == pytest.approx(hollow.stems.diameter_cm)


def test_waypoints_come_in_again():
    """GPX written here is read here; without a corner there is none."""
    raw = gpx([("1", 0.0, 0.0), ("2 <&>", 10.0, 20.0)], ORIGIN)
    layer = look(raw, "x.gpx")[0]
    assert [row[0] for row in layer.rows] == ["1", "2 <&>"]
    assert layer.shapes[0].rings[0][0] == pytest.approx((-89.5, 43.1), abs=1e-6)
    with pytest.raises(ValueError, match="latitude and longitude"):
        gpx([("1", 0.0, 0.0)], None)


NAMES = st.sampled_from(
    ["tract.toml", "stems.csv", "patches.geojson", "shelf/a.toml", "shelf/b-2.toml", "records.jsonl"]
)
WORDS = st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\r\ufeff"))


@given(st.dictionaries(NAMES, WORDS))
def test_a_folder_comes_back_from_its_zip(some):
    """The same texts in the same bytes, with or without a folder around them."""
    texts = {"tract.toml": "", **some}
    assert folder_unzip(folder_zip(texts)) == texts
    assert folder_unzip(folder_zip(texts, "quarry-hollow")) == texts
    assert folder_zip(texts) == folder_zip(dict(reversed(texts.items())))


def bad_zip(**members) -> bytes:
    """A zip of these members, names as given."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, raw in members.items():
            archive.writestr(name, raw)
    return out.getvalue()


def link_zip() -> bytes:
    """A zip whose member is a symbolic link."""
    out, info = io.BytesIO(), zipfile.ZipInfo("tract.toml")
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr(info, "/etc/hostname")
    return out.getvalue()


def twice_zip() -> bytes:
    """A zip that holds one name twice."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("tract.toml", "a")
        with pytest.warns(UserWarning, match="Duplicate"):
            archive.writestr("tract.toml", "b")
    return out.getvalue()


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: b"", "cannot be|can be read"),
        (lambda: b"PK\x03\x04 cut off", "can be read"),
        (lambda: bad_zip(), "empty"),
        (lambda: bad_zip(**{"../tract.toml": "x"}), "outside of its folder"),
        (lambda: bad_zip(**{"a/../../tract.toml": "x"}), "outside of its folder"),
        (lambda: bad_zip(**{"/tract.toml": "x"}), "outside of its folder"),
        (lambda: bad_zip(**{"C:\\tract.toml": "x"}), "outside of its folder"),
        (link_zip, "a link"),
        (twice_zip, "same name twice"),
        (lambda: bad_zip(**{"tract.toml": b"\xff\xfe\xfd"}), "not UTF-8"),
        (lambda: bad_zip(**{"tract.toml": b" " * 3_000_000}), "larger than the 2 MB"),
        (lambda: bad_zip(**{f"shelf/{n}.toml": "x" for n in range(500)}), "500 files"),
        (lambda: bad_zip(**{f"{n}.csv": b"0" * 30_000_000 for n in range(9)}), "256 MB"),
    ],
)
def test_a_zip_that_is_no_folder_is_refused(make, words):
    """Each in a sentence, before anything of it is used."""
    with pytest.raises(NotAFolder, match=words):
        folder_unzip(make())


def test_what_belongs_to_no_tract_is_left_out():
    """A photo beside the files is not read."""
    raw = bad_zip(**{"q/tract.toml": "a", "q/photo.jpg": b"\xff\xd8", "q/shelf/deep/er.toml": "x"})
    assert folder_unzip(raw) == {"tract.toml": "a"}


def unfolded(raw: bytes) -> list[str]:
    """Lines of a calendar file, put together again (RFC 5545, 3.1)."""
    assert all(len(line) <= 75 for line in raw.split(b"\r\n"))
    return raw.replace(b"\r\n ", b"").decode().split("\r\n")


def unescaped(text: str) -> str:
    """A text value as it was meant (RFC 5545, 3.3.11)."""
    out, signs = [], iter(text)
    for sign in signs:
        out.append({"n": "\n", "N": "\n"}.get(after := next(signs), after) if sign == "\\" else sign)
    return "".join(out)


TITLES = st.text(st.characters(blacklist_categories=("Cs", "Cc")), max_size=200)


@settings(max_examples=200)
@given(st.lists(st.tuples(st.dates(), TITLES), max_size=4))
def test_a_calendar_is_read_back(found):
    """Any title, however long and in whatever letters, comes back; days are whole days."""
    made_at = datetime.datetime(2026, 10, 10, 9, tzinfo=datetime.UTC)
    dues = [Due(f"{n}@x", min(day, datetime.date(9998, 1, 1)), title) for n, (day, title) in enumerate(found)]
    lines = unfolded(calendar(dues, made_at))

    assert [unescaped(line.partition(":")[2]) for line in lines if line.startswith("SUMMARY")] == [
        d.title for d in dues
    ]
    days = [line.partition(":")[2] for line in lines if line.startswith("DTSTART")]
    assert days == [d.on.strftime("%Y%m%d") for d in dues] or any(d.on.year < 1000 for d in dues)
    assert (lines[0], lines[-2]) == ("BEGIN:VCALENDAR", "END:VCALENDAR")
