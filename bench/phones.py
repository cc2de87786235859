"""Fifty phones that send two hundred rows each at once, on SQLite or on the PostgreSQL that DATABASE_URL names.

    python bench/phones.py [PHONES] [ROWS]

Prints the 95th percentile of a request, from asking to the answer, and how many rows a second are taken; with the
server killed four times besides, what was lost and doubled. Beside it stands a bare write of as many rows, one
transaction each as large, to the same kind of database.
"""

import os
import sqlite3
import sys
import tempfile
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))
from field.crowd import crowd

AIM_S = 1.0
LOT = 25


def bare_s(folder: str, rows: int) -> float:
    """Seconds that SQLite alone takes for the rows, in transactions of LOT, on disk at each."""
    connection = sqlite3.connect(Path(folder) / "bare.sqlite3", isolation_level=None)
    connection.executescript(
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; CREATE TABLE t (k TEXT UNIQUE, b TEXT);"
    )
    start = time.perf_counter()
    for first in range(0, rows, LOT):
        connection.execute("BEGIN IMMEDIATE")
        connection.executemany("INSERT INTO t VALUES (?, ?)", [(str(n), "x" * 250) for n in range(first, first + LOT)])
        connection.execute("COMMIT")
    took = time.perf_counter() - start
    connection.close()
    return took


def main() -> int:
    """Run it; 1 where a row was lost or doubled."""
    phones = int(sys.argv[1]) if len(sys.argv) > 1 else 50
    rows = int(sys.argv[2]) if len(sys.argv) > 2 else 200
    url = os.environ.get("DATABASE_URL", "")
    with tempfile.TemporaryDirectory() as folder:
        bare = bare_s(folder, phones * rows)
        start = time.perf_counter()
        found = crowd(Path(folder) / "notebook", phones, rows, LOT, 0, 1, url)
        took = time.perf_counter() - start
    seconds = np.array(found.seconds)
    database = "PostgreSQL" if url else "SQLite"
    print(
        f"{phones} phones, {rows} rows each, {database}: {len(seconds)} requests of {LOT} rows, "
        f"median {np.median(seconds) * 1000:.0f} ms, 95th percentile {np.percentile(seconds, 95) * 1000:.0f} ms "
        f"(aim {AIM_S * 1000:g}), most {seconds.max() * 1000:.0f} ms; {took:.1f} s with starting and pauses; "
        f"SQLite alone writes them in {bare:.2f} s"
    )
    lost, doubled = len(found.wanted - set(found.kept)), len(found.kept) - len(set(found.kept))
    print(f"lost {lost}, doubled {doubled}")
    return 1 if lost or doubled else 0


if __name__ == "__main__":
    sys.exit(main())
