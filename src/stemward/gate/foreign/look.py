"""What a file is, told by its bytes, and its layers."""

import io
import json
import stat
import zipfile
from collections.abc import Callable, Sequence
from pathlib import PurePosixPath
from typing import Any

from stemward.gate.csv_table import read_any
from stemward.gate.foreign.child import read_apart
from stemward.gate.foreign.layer import MOST_BYTES, MOST_COLUMNS, MOST_ROWS, Layer, own_names, refuse
from stemward.gate.problems import Problems, Unreadable
from stemward.gate.text import clean, decode
from stemward.kinds import Shape

MOST_MEMBERS = 200
MOST_UNPACKED = 256 * 1024 * 1024
SQLITE = b"SQLite format 3\x00"
ZIP = b"PK\x03\x04"
KML_SPACES = ("http://www.opengis.net/kml/", "http://earth.google.com/kml/")


def look(raw: bytes, name: str) -> tuple[Layer, ...]:
    """The layers of a file. Its name is only said in sentences; what it is, its bytes tell.

    Raises Unreadable with a sentence for anything that is not one of the kinds, is too large, or is hostile.
    """
    shown = clean(name)
    if len(raw) > MOST_BYTES:
        raise refuse("foreign.too_large", shown, most_mb=MOST_BYTES / 1_000_000)
    if not raw.strip():
        raise refuse("file.empty", shown)
    layers = _reader(raw)(raw, shown)
    for layer in layers:
        if len(layer.rows) > MOST_ROWS or len(layer.headings) > MOST_COLUMNS:
            raise refuse("foreign.too_many", shown, rows=len(layer.rows), most=MOST_ROWS)
    found = tuple(layer for layer in layers if layer.rows)
    if not found:
        raise refuse("foreign.no_rows", shown)
    return found


def _reader(raw: bytes) -> Callable[[bytes, str], Sequence[Layer]]:
    if raw.startswith(SQLITE):
        return _geopackage
    if raw.startswith(ZIP):
        return _zipped
    start = raw[:4096].removeprefix(b"\xef\xbb\xbf").lstrip()
    if start.startswith(b"<"):
        return _xml
    if start.startswith((b"{", b"[")):
        return _geojson
    return _csv


def _csv(raw: bytes, name: str) -> Sequence[Layer]:
    problems = Problems()
    text = decode(raw, name, problems)
    if text is None and problems.has("file.not_utf8"):
        text = _old_encoding(raw, name)
    elif text is None:
        problems.raise_if_any()
    found = read_any(text or "", name, problems := Problems())
    problems.raise_if_any()
    if found is None:
        raise refuse("foreign.unknown", name)
    headings, rows, lines = found
    return [Layer(name, "csv", own_names(headings), rows, lines)]


def _old_encoding(raw: bytes, name: str) -> str:
    """Text of older spreadsheets, when it holds nothing but what that encoding has."""
    try:
        text = raw.decode("cp1252")
    except UnicodeDecodeError:
        raise refuse("foreign.encoding", name) from None
    if any(ord(sign) < 32 and sign not in "\t\r\n" for sign in text):
        raise refuse("foreign.encoding", name)
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _zipped(raw: bytes, name: str) -> Sequence[Layer]:
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as archive:
            members = [info for info in archive.infolist() if not info.is_dir()]
            _look_at_members(members, name)
            names = [info.filename for info in members]
            if "[Content_Types].xml" in names:
                return _xlsx(raw, name)
            ends = {PurePosixPath(one).suffix.lower(): one for one in names}
            if ".kml" in ends:
                return _xml(archive.read(ends[".kml"]), name)
            if ".shp" in ends:
                wanted = (".shp", ".shx", ".dbf", ".prj", ".cpg")
                parts = {end: archive.read(ends[end]) for end in wanted if end in ends}
                return _from_child("shapefile", parts, name)
    except (zipfile.BadZipFile, NotImplementedError, EOFError, RuntimeError, OSError, ValueError):
        raise refuse("foreign.damaged", name) from None
    raise refuse("foreign.unknown", name)


def _look_at_members(members: list[zipfile.ZipInfo], name: str) -> None:
    if not members or len(members) > MOST_MEMBERS or sum(m.file_size for m in members) > MOST_UNPACKED:
        raise refuse("foreign.zip_large", name)
    for info in members:
        parts = PurePosixPath(info.filename).parts
        outside = info.filename.startswith("/") or "\\" in info.filename or ".." in parts
        if outside or stat.S_ISLNK(info.external_attr >> 16) or info.flag_bits & 0x1:
            raise refuse("foreign.zip_outside", name)


def _xlsx(raw: bytes, name: str) -> Sequence[Layer]:
    # openpyxl reads XML through defusedxml where that is there, which refuses entities.
    from defusedxml.common import DefusedXmlException
    from openpyxl import load_workbook
    from openpyxl.utils.exceptions import InvalidFileException

    layers = []
    try:
        book = load_workbook(io.BytesIO(raw), read_only=True, data_only=True, keep_links=False)
        for sheet in book.worksheets:
            rows = []
            for number, row in enumerate(sheet.iter_rows(values_only=True, max_col=MOST_COLUMNS), 1):
                if number > MOST_ROWS + 1:
                    raise refuse("foreign.too_many", name, rows=number, most=MOST_ROWS)
                cells = tuple(_cell(value) for value in row)
                if any(cells):
                    rows.append((number, cells))
            if len(rows) > 1:
                width = max(n for _, cells in rows for n, cell in enumerate(cells, 1) if cell)
                full = [(cells + ("",) * width)[:width] for _, cells in rows]
                lines = tuple(number for number, _ in rows[1:])
                layers.append(Layer(str(sheet.title), "xlsx", _headings(full[0]), tuple(full[1:]), lines))
    except Unreadable:
        raise
    except (InvalidFileException, DefusedXmlException, KeyError, ValueError, TypeError, AttributeError, IndexError):
        raise refuse("foreign.damaged", name) from None
    except Exception as error:
        if type(error).__name__ in ("ParseError", "XMLSyntaxError", "BadZipFile", "EntitiesForbidden"):
            raise refuse("foreign.damaged", name) from None
        raise
    return layers


def _headings(cells: Sequence[str]) -> tuple[str, ...]:
    return own_names(cell or f"column {n}" for n, cell in enumerate(cells, 1))


def _cell(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    # JSON can hold half a character, which no text can be written with.
    return f"{value:.10g}" if isinstance(value, float) else str(value).encode("utf-8", "replace").decode().strip()


def _geojson(raw: bytes, name: str) -> Sequence[Layer]:
    try:
        data = json.loads(raw)
    except (ValueError, RecursionError):
        raise refuse("foreign.damaged", name) from None
    features = data.get("features") if isinstance(data, dict) else None
    if isinstance(data, dict) and data.get("type") == "Feature":
        features = [data]
    if not isinstance(features, list):
        raise refuse("foreign.unknown", name)
    rows = []
    for number, one in enumerate(features, 1):
        if isinstance(one, dict) and isinstance(one.get("properties") or {}, dict):
            rows.append((number, one.get("properties") or {}, _shape(one.get("geometry"))))
    degrees = not (isinstance(data, dict) and ("crs" in data or "note" in data)) and _as_degrees(rows)
    return [_table(name, "geojson", rows, degrees)]


def _as_degrees(rows: Sequence[tuple[int, Any, Shape | None]]) -> bool:
    """True unless some place can be no longitude and latitude: the format means degrees."""
    spots = [corner for _, _, shape in rows if shape for ring in shape.rings for corner in ring]
    return all(abs(x) <= 180 and abs(y) <= 90 for x, y in spots)


def _shape(geometry: Any) -> Shape | None:
    """A point, line or polygon; the first part of a shape in several parts that has only one; None for others."""
    if not isinstance(geometry, dict):
        return None
    kind = str(geometry.get("type"))
    places: Any = geometry.get("coordinates")
    try:
        if kind.startswith("Multi") and isinstance(places, list) and len(places) == 1:
            kind, places = kind.removeprefix("Multi"), places[0]
        if kind == "Point":
            return Shape("point", (((float(places[0]), float(places[1])),),))
        if kind == "LineString":
            return Shape("line", (tuple((float(p[0]), float(p[1])) for p in places),))
        if kind == "Polygon":
            return Shape("polygon", tuple(tuple((float(p[0]), float(p[1])) for p in ring) for ring in places))
    except (TypeError, ValueError, IndexError, KeyError):
        return None
    return None


def _table(name: str, sort: Any, rows: Sequence[tuple[int, Any, Shape | None]], degrees: bool) -> Layer:
    keys = tuple(dict.fromkeys(str(key) for _, properties, _ in rows for key in properties))[:MOST_COLUMNS]
    cells = tuple(tuple(_cell(properties.get(key)) for key in keys) for _, properties, _ in rows)
    headings = own_names(_cell(key) or f"column {n}" for n, key in enumerate(keys, 1))
    return Layer(name, sort, headings, cells, tuple(n for n, _, _ in rows), tuple(s for _, _, s in rows), degrees)


def _xml(raw: bytes, name: str) -> Sequence[Layer]:
    """GPX and KML. Entities and document types are refused before anything is read."""
    from defusedxml.common import DefusedXmlException
    from defusedxml.ElementTree import ParseError, fromstring

    try:
        root = fromstring(raw, forbid_dtd=True)
    except (ParseError, DefusedXmlException, ValueError, RecursionError):
        raise refuse("foreign.damaged", name) from None
    space, _, tag = root.tag.rpartition("}")
    space = space.lstrip("{")
    if tag == "gpx":
        return _gpx(root, f"{{{space}}}" if space else "", name)
    if tag == "kml" and (not space or space.startswith(KML_SPACES)):
        return _kml(root, f"{{{space}}}" if space else "", name)
    raise refuse("foreign.unknown", name)


def _gpx(root: Any, space: str, name: str) -> Sequence[Layer]:
    points, lines = [], []
    for number, one in enumerate(root.iter(f"{space}wpt"), 1):
        points.append((number, _texts(one, space, ("name", "cmt", "desc", "sym", "type", "ele")), _spot([one])))
    for number, one in enumerate([*root.iter(f"{space}trk"), *root.iter(f"{space}rte")], 1):
        spots = [*one.iter(f"{space}trkpt"), *one.iter(f"{space}rtept")]
        lines.append((number, _texts(one, space, ("name", "cmt", "desc", "type")), _spot(spots, line=True)))
    found = (("waypoints", points), ("tracks and routes", lines))
    return [_table(f"{name}: {words}", "gpx", rows, True) for words, rows in found if rows]


def _texts(element: Any, space: str, tags: Sequence[str]) -> dict[str, str]:
    found = {tag: element.findtext(f"{space}{tag}") for tag in tags}
    return {tag: text.strip() for tag, text in found.items() if text and text.strip()}


def _spot(elements: Sequence[Any], line: bool = False) -> Shape | None:
    try:
        ring = tuple((float(e.get("lon")), float(e.get("lat"))) for e in elements)
    except (TypeError, ValueError):
        return None
    if not all(abs(x) <= 180 and abs(y) <= 90 for x, y in ring):
        return None
    return Shape("line" if line else "point", (ring,)) if ring else None


def _kml(root: Any, space: str, name: str) -> Sequence[Layer]:
    rows = []
    for number, one in enumerate(root.iter(f"{space}Placemark"), 1):
        words = _texts(one, space, ("name", "description"))
        for data in one.iter(f"{space}Data"):
            words[str(data.get("name"))] = (data.findtext(f"{space}value") or "").strip()
        for data in one.iter(f"{space}SimpleData"):
            words[str(data.get("name"))] = (data.text or "").strip()
        rows.append((number, words, _kml_shape(one, space)))
    return [_table(name, "kml", rows, True)] if rows else []


def _kml_shape(mark: Any, space: str) -> Shape | None:
    for tag, kind in (("Polygon", "polygon"), ("LineString", "line"), ("Point", "point")):
        found = mark.find(f".//{space}{tag}")
        if found is not None:
            rings = [_kml_ring(one.text or "") for one in found.iter(f"{space}coordinates")]
            if rings and all(rings):
                return Shape(kind, tuple(rings[:1] if kind != "polygon" else rings))  # type: ignore[arg-type]
    return None


def _kml_ring(text: str) -> tuple[tuple[float, float], ...]:
    try:
        spots = [tuple(float(v) for v in one.split(",")[:2]) for one in text.split()]
    except ValueError:
        return ()
    return tuple((s[0], s[1]) for s in spots if len(s) == 2 and abs(s[0]) <= 180 and abs(s[1]) <= 90)


def _geopackage(raw: bytes, name: str) -> Sequence[Layer]:
    return _from_child("gpkg", {".gpkg": raw}, name)


def _from_child(sort: Any, parts: dict[str, bytes], name: str) -> Sequence[Layer]:
    """Layers that only the geodata library reads, read apart."""
    layers = []
    for found in read_apart(sort, parts, name):
        rows = [(n, dict(zip(found["headings"], cells, strict=True)), _shape(geometry))
                for n, (cells, geometry) in enumerate(found["rows"], 1)]  # fmt: skip
        layers.append(_table(found["name"], sort, rows, bool(found["degrees"])))
    return layers
