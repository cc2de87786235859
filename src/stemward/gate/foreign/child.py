"""GeoPackage and Shapefile, read by the geodata library in a child process.

That library opens whatever a file names, other files and addresses included, if the file says that it is of such a
kind. So the child is started with every kind of file switched off but the one expected, with little memory and time,
in an empty folder that holds only what was sent.
"""

import json
import os
import subprocess
import sys
import tempfile
from functools import cache
from pathlib import Path
from typing import Any

from stemward.gate.foreign.layer import MOST_ROWS, refuse

DRIVERS = {"gpkg": "GPKG", "shapefile": "ESRI Shapefile"}
MEMORY = 2 * 1024**3
SECONDS = 60
"""Address space, and processor and wall time of a child: engineering guesses; 400,000 points take some seconds."""


@cache
def _all_drivers() -> tuple[str, ...]:
    from pyogrio import list_drivers

    return tuple(list_drivers())


def read_apart(sort: str, parts: dict[str, bytes], name: str) -> list[dict[str, Any]]:
    """Layers of a file as plain data: name, headings, rows of (cells, GeoJSON geometry), degrees.

    parts: bytes by ending. Raises Unreadable with a sentence if the child cannot or does not answer.
    """
    driver = DRIVERS[sort]
    with tempfile.TemporaryDirectory() as folder:
        for end, raw in parts.items():
            (Path(folder) / f"brought{end}").write_bytes(raw)
        path = Path(folder) / f"brought{'.gpkg' if sort == 'gpkg' else '.shp'}"
        # The library parts the names at commas and blanks in some versions; both ways are given.
        skip = ",".join(one for one in _all_drivers() if one != driver)
        keep = {key: os.environ[key] for key in ("PATH", "LD_LIBRARY_PATH", "SYSTEMROOT") if key in os.environ}
        env = {**keep, "OGR_SKIP": skip, "GDAL_SKIP": skip, "GDAL_HTTP_MAX_RETRY": "0", "CPL_CURL_GZIP": "NO",
               "SHAPE_RESTORE_SHX": "YES", "PYTHONPATH": os.pathsep.join(sys.path)}  # fmt: skip
        try:
            done = subprocess.run(
                [sys.executable, "-m", "stemward.gate.foreign.child", str(path), driver],
                capture_output=True, timeout=SECONDS, env=env, cwd=folder, check=False,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            raise refuse("foreign.slow", name) from None
    if done.returncode != 0:
        raise refuse("foreign.damaged", name)
    return list(json.loads(done.stdout))


def _limit() -> None:
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        if sys.platform == "linux":
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def main(path: str, driver: str) -> int:
    """In the child: read every layer and print it. 0, or 1 for anything that is not of the expected kind."""
    _limit()
    from pyogrio import list_drivers, list_layers
    from pyogrio.raw import read

    if driver not in list_drivers() or set(list_drivers()) & {"OGR_VRT", "OAPIF", "WFS", "GDALG", "CSV"}:
        return 1
    import shapely

    layers = []
    for layer, _ in list_layers(path).tolist():
        meta, _, shapes, fields = read(path, layer=layer, max_features=MOST_ROWS + 1)
        places = [None if one is None else shapely.from_wkb(one) for one in (shapes if shapes is not None else [])]
        columns = [[None if value is None else str(value) for value in column.tolist()] for column in fields]
        crs = str(meta.get("crs") or "")
        rows = []
        for n in range(len(columns[0]) if columns else len(places)):
            shape = json.loads(shapely.to_geojson(places[n])) if n < len(places) and places[n] is not None else None
            rows.append(([column[n] for column in columns], shape))
        headings = [str(one) for one in meta["fields"].tolist()]
        layers.append({"name": str(layer), "headings": headings, "rows": rows, "degrees": crs == "EPSG:4326"})
    sys.stdout.write(json.dumps(layers))
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1], sys.argv[2]))
    except Exception as problem:
        # The parent says a sentence; nothing of the file's content goes to anyone's screen.
        sys.stderr.write(type(problem).__name__)
        sys.exit(1)
