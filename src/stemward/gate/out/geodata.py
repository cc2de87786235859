"""Stems, patches and what is kept as GeoJSON, GeoPackage and GPX."""

import json
import tempfile
import xml.etree.ElementTree as ET
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from stemward.gate.places import to_degrees
from stemward.handbook import load
from stemward.kinds import Shape, Tract

Origin = tuple[float, float]
NOTE = "Places are meters of the tract's own, east and north of its corner; it has no latitude and longitude yet."
DEGREE_DIGITS, METRE_DIGITS = 7, 2
GPX = "http://www.topografix.com/GPX/1/1"


def geojson(tract: Tract, origin: Origin | None) -> bytes:
    """Everything with a place, in one collection; each feature says what it is. Degrees (RFC 7946) where the origin
    (latitude, longitude) is known, else metres with a note that says so.
    """
    book = load()
    features = [
        _feature(p.shape, origin, what="patch", id=p.id, name=p.name, places=list(p.places))
        for p in tract.patches
        if p.shape is not None
    ]
    features += [
        _feature(s.shape, origin, what="keep from harm", id=s.id, kind=s.kind, species=s.species, note=s.note)
        for s in tract.spared
    ]
    stems = tract.stems
    x, y = _at(stems.x_m, stems.y_m, origin)
    for n in range(len(stems)):
        latin = str(stems.species[n])
        properties = {
            "what": "stem", "id": str(stems.id[n]), "patch": str(stems.patch[n]), "species": latin,
            "common_name": book.species[latin].common, "diameter_cm": round(float(stems.diameter_cm[n]), 2),
            "stems": int(stems.stems[n]), "state": str(stems.state[n]),
        }  # fmt: skip
        point = {"type": "Point", "coordinates": [float(x[n]), float(y[n])]}
        features.append({"type": "Feature", "properties": properties, "geometry": point})
    body: dict[str, Any] = {"type": "FeatureCollection", "name": tract.name}
    if origin is None:
        body["note"] = NOTE
    return json.dumps({**body, "features": features}, ensure_ascii=False).encode()


def _at(x_m: Any, y_m: Any, origin: Origin | None) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    x, y = np.asarray(x_m, float), np.asarray(y_m, float)
    if origin is None:
        return x.round(METRE_DIGITS), y.round(METRE_DIGITS)
    lon, lat = to_degrees(x, y, origin)
    return lon.round(DEGREE_DIGITS), lat.round(DEGREE_DIGITS)


def _rings(shape: Shape, origin: Origin | None) -> list[list[list[float]]]:
    rings = []
    for ring in shape.rings:
        x, y = _at([c[0] for c in ring], [c[1] for c in ring], origin)
        rings.append([[float(a), float(b)] for a, b in zip(x, y, strict=True)])
    return rings


def _feature(shape: Shape, origin: Origin | None, **properties: Any) -> dict[str, Any]:
    rings = _rings(shape, origin)
    names = {"point": ("Point", rings[0][0]), "line": ("LineString", rings[0]), "polygon": ("Polygon", rings)}
    name, coordinates = names[shape.kind]
    return {"type": "Feature", "properties": properties, "geometry": {"type": name, "coordinates": coordinates}}


def geopackage(tract: Tract, origin: Origin | None) -> bytes:
    """Three layers, stems, kept and patches. WGS 84 where the origin is known, else a local grid in metres.

    Bytes differ from time to time, since the format writes when it was made; values do not.
    """
    from pyogrio.raw import write

    crs = "EPSG:4326" if origin is not None else 'LOCAL_CS["tract",UNIT["metre",1]]'
    stems = tract.stems
    x, y = _at(stems.x_m, stems.y_m, origin)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "tract.gpkg"
        layers: list[tuple[str, list[Any], str, dict[str, Any]]] = [
            ("stems", list(shapely.points(x, y)), "Point",
             {"id": stems.id, "patch": stems.patch, "species": stems.species, "diameter_cm": stems.diameter_cm,
              "stems": stems.stems, "state": stems.state}),
            ("kept", [_geometry(s.shape, origin) for s in tract.spared], "Unknown",
             {"id": [s.id for s in tract.spared], "kind": [s.kind for s in tract.spared],
              "species": [s.species for s in tract.spared], "note": [s.note for s in tract.spared]}),
            ("patches", [_geometry(p.shape, origin) for p in tract.patches if p.shape], "Polygon",
             {"id": [p.id for p in tract.patches if p.shape], "name": [p.name for p in tract.patches if p.shape]}),
        ]  # fmt: skip
        for name, shapes, kind, fields in layers:
            if not shapes:
                continue
            data = [_column(values) for values in fields.values()]
            write(
                path, geometry=shapely.to_wkb(np.asarray(shapes, dtype=object)), field_data=data, fields=[*fields],
                layer=name, driver="GPKG", geometry_type=kind, crs=crs, append=path.exists(),
            )  # fmt: skip
        return path.read_bytes() if path.exists() else b""


def _column(values: Any) -> NDArray[Any]:
    column = np.asarray(values)
    return column if column.dtype.kind in "if" else column.astype(object)


def _geometry(shape: Shape, origin: Origin | None) -> Any:
    rings = _rings(shape, origin)
    if shape.kind == "point":
        return shapely.Point(rings[0][0])
    return shapely.LineString(rings[0]) if shape.kind == "line" else shapely.Polygon(rings[0], rings[1:])


def gpx(points: Sequence[tuple[str, float, float]], origin: Origin | None) -> bytes:
    """Waypoints (name, x_m, y_m) as GPX 1.1. Raises ValueError where the tract has no latitude and longitude."""
    if origin is None:
        raise ValueError("Waypoints need latitude and longitude, and the tract has none yet.")
    lon, lat = to_degrees(np.array([p[1] for p in points], float), np.array([p[2] for p in points], float), origin)
    root = ET.Element("gpx", {"version": "1.1", "creator": "Stemward", "xmlns": GPX})
    for (name, _, _), one_lon, one_lat in zip(points, lon.tolist(), lat.tolist(), strict=True):
        point = ET.SubElement(root, "wpt", {"lat": f"{one_lat:.7f}", "lon": f"{one_lon:.7f}"})
        ET.SubElement(point, "name").text = name
    return bytes(ET.tostring(root, encoding="utf-8", xml_declaration=True))
