"""200,000 stems from a CSV into the notebook, against a bare executemany of the same rows into the same table.

    python bench/import_stems.py [STEMS]

Both end on the disk in one transaction, on SQLite in a new folder, with one row of the trace. Prints seconds and the
ratio; the aim is at most 2.
"""

import csv
import datetime
import io
import os
import sys
import tempfile
import time
import uuid
from pathlib import Path

import numpy as np

AIM = 2.0
NOW = datetime.datetime(2026, 10, 10, 9, tzinfo=datetime.UTC)


def a_file(count: int) -> bytes:
    """A list as a person's spreadsheet gives it: a tag, a plant, a size, a place."""
    rng = np.random.default_rng(1)
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(["Tag", "Species", "DBH", "x", "y"])
    side_m = float(np.sqrt(count / 400 * 10_000))
    x, y = (rng.uniform(0, side_m, count).round(2).tolist() for _ in range(2))
    sizes = np.clip(rng.lognormal(0.9, 0.5, count), 0.4, 20).round(1).tolist()
    for n in range(count):
        writer.writerow([f"t{n}", "red maple", sizes[n], x[n], y[n]])
    return out.getvalue().encode()


def new_notebook(folder: Path) -> str:
    """A notebook with one tract of one patch; the tract's id."""
    from django.core.management import call_command

    from stemward.gate.pieces import Parts, Piece
    from stemward.notebook.changes import Asked, begin

    del folder
    call_command("migrate", verbosity=0)
    tract = str(uuid.uuid4())
    pieces = (Piece("tract", "", {"name": "Bench"}), Piece("patch", "p", {"id": "p", "name": "P", "places": ["woods"]}))
    begin(Asked(str(uuid.uuid4()), tract, "owner", "begin"), Parts(pieces), NOW)
    return tract


def bare(tract: str, rows: list[tuple[str, ...]]) -> float:
    """Seconds for executemany of these rows and one row of the trace, committed."""
    from django.db import connection, transaction

    from stemward.notebook import store
    from stemward.notebook.models import Change

    start = time.perf_counter()
    change = str(uuid.uuid4())
    full = [(tract, n, change, "", 0, "", *row) for n, row in enumerate(rows)]
    with transaction.atomic(), connection.cursor() as cursor:
        cursor.executemany(store.INSERT_STEM, full)
        Change.objects.create(id=change, tract_id=tract, number=2, who="owner", at=NOW, verb="import", words={},
                              asked="", before={}, after={}, added=len(rows), taken=0, of="")  # fmt: skip
    return time.perf_counter() - start


def ours(tract: str, raw: bytes) -> tuple[float, int]:
    """Seconds from the file's bytes to the committed change, and how many stems were taken."""
    from stemward.gate.foreign import guess, look, take_stems
    from stemward.handbook import load
    from stemward.notebook import worked
    from stemward.notebook.changes import Asked, change

    find = load().find_species
    worked.known(tract)
    fixed = {"patch": "p", "unit": "in", "measured_at": "breast", "stems": "1", "state": "standing"}
    steps = [time.perf_counter()]
    layer = look(raw, "stems.csv")[0]
    columns = guess(layer.headings, {})
    steps.append(time.perf_counter())
    taken = take_stems(layer, columns, fixed, None, None, find, {"p": None})
    steps.append(time.perf_counter())
    change(Asked(str(uuid.uuid4()), tract, "owner", "import", {"count": len(taken.rows)}, added=taken.rows), NOW)
    steps.append(time.perf_counter())
    print("look {:.2f} s, take {:.2f} s, write {:.2f} s".format(*np.diff(steps)))
    return steps[-1] - steps[0], len(taken.rows)


def main() -> int:
    """Run both in turn, three times; the ratio of the medians."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200_000
    raw = a_file(count)
    times: dict[str, list[float]] = {"bare": [], "ours": []}
    with tempfile.TemporaryDirectory() as name:
        os.environ["STEMWARD_DATA"] = name
        os.environ["DJANGO_SETTINGS_MODULE"] = "stemward.web.settings"
        import django

        django.setup()
        from django.db import connection

        from stemward.notebook import store

        rows: list[tuple[str, ...]] = []
        for _ in range(3):
            for which in ("ours", "bare"):
                connection.close()
                for old in Path(name).glob("notebook.sqlite3*"):
                    old.unlink()
                tract = new_notebook(Path(name))
                if which == "ours":
                    seconds, taken = ours(tract, raw)
                    rows = list(store.parts_of(tract).stems)
                    assert taken == len(rows) <= count
                else:
                    seconds = bare(tract, rows)
                times[which].append(seconds)
    middle = {which: float(np.median(found)) for which, found in times.items()}
    ratio = middle["ours"] / middle["bare"]
    print(f"{len(rows):,} of {count:,} stems: ours {middle['ours']:.2f} s, bare {middle['bare']:.2f} s, "
          f"ratio {ratio:.2f} (aim {AIM:g})")  # fmt: skip
    return 0


if __name__ == "__main__":
    sys.exit(main())
