"""Killed in the middle of any change, a notebook keeps what it acknowledged and nothing by halves."""

import os
import shutil
import signal
import sqlite3
import struct
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

import pytest

KILLS = 200
ROWS = 3
CHILD = """
import os, sys, uuid
import django
django.setup()
from notebook.some import NOW, stem
from stemward.notebook.changes import Asked, Edit, change
import polars, shapely, tomli_w  # loaded before the children begin; polars is not used, since its threads do not fork
from stemward.handbook import load
load().find_species("glossy buckthorn")
patch = {"id": "fence", "name": "Fence", "places": ["woods"]}
print("ready", flush=True)
for line in sys.stdin:
    turn, child = line.strip(), os.fork()
    if child == 0:
        number = 0
        while True:
            number += 1
            rows = [stem(f"{turn}-{number}-{n}", x_m=str(number), y_m=str(n)) for n in range(3)]
            edit = Edit("patch", "fence", {**patch, "name": f"{turn}-{number}"})
            body = {"what": "drawn", "product": "blue", "jug": "jug 1", "ml": 1}
            lines = [{"id": f"{turn}-{number}-{n}", "kind": "jug", "at": "2026-10-10", "offset": 0, "by": "owner",
                      "body": body} for n in range(2)]
            asked = Asked(f"{turn}-{number}", "tract", "owner", "put", edits=[edit], added=rows, entries=lines)
            change(asked, NOW)
            os.write(1, f"{turn}-{number}\\n".encode())
    print(f"child {child}", flush=True)
    os.waitpid(child, 0)
    print("gone", flush=True)
"""
SETUP = """
import django
django.setup()
from django.core.management import call_command
call_command("migrate", verbosity=0)
from notebook.some import NOW
from stemward.gate.pieces import Parts, Piece
from stemward.notebook.changes import Asked, begin
pieces = (Piece("tract", "", {"name": "Small"}),
          Piece("patch", "fence", {"id": "fence", "name": "Fence", "places": ["woods"]}))
begin(Asked("begin", "tract", "owner", "begin"), Parts(pieces), NOW)
"""


def environment(folder: Path) -> dict[str, str]:
    """What a child needs to find the notebook and the tests' helpers."""
    tests = str(Path(__file__).parents[1])
    env = {**os.environ, "STEMWARD_DATA": str(folder), "DJANGO_SETTINGS_MODULE": "stemward.web.settings"}
    env.pop("DATABASE_URL", None)
    return env | {"PYTHONPATH": os.pathsep.join([tests, *sys.path])}


@pytest.fixture
def notebook(tmp_path):
    """A notebook with one small tract, in a folder of its own."""
    folder = tmp_path / "notebook"
    folder.mkdir()
    subprocess.run([sys.executable, "-c", SETUP], env=environment(folder), check=True)
    return folder


def looked_at(path: Path) -> tuple[set[str], dict[str, int], str]:
    """Ids of changes, stems of each change, and the name of the patch."""
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        changes = {row[0] for row in connection.execute("SELECT id FROM notebook_change")}
        stems = dict(connection.execute("SELECT made_by, count(*) FROM notebook_stem GROUP BY made_by").fetchall())
        body = connection.execute("SELECT body FROM notebook_piece WHERE kind = 'patch'").fetchone()[0]
    return changes, stems, body


def test_killed_two_hundred_times_nothing_is_lost(notebook):
    """After each kill: every acknowledged change is there with all of its rows, and no change has some of them."""
    process = subprocess.Popen(
        [sys.executable, "-c", CHILD], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1,
        env=environment(notebook),
    )  # fmt: skip
    assert process.stdout.readline() == "ready\n"
    acknowledged: set[str] = set()
    for turn in range(KILLS):
        process.stdin.write(f"t{turn}\n")
        process.stdin.flush()
        line = process.stdout.readline()
        while not line.startswith("child"):
            acknowledged.add(line.strip())
            line = process.stdout.readline()
        # From before its first change to after some: a different moment each time.
        time.sleep(0.01 + (turn % 40) * 0.005)
        os.kill(int(line.split()[1]), signal.SIGKILL)
        while (line := process.stdout.readline()) != "gone\n":
            acknowledged.add(line.strip())
        if turn % 20 == 19 or turn == KILLS - 1:
            changes, stems, body = looked_at(notebook / "notebook.sqlite3")
            assert acknowledged <= changes
            assert all(stems.get(one) == ROWS for one in changes - {"begin"})
            assert {*stems} <= changes
            with closing(sqlite3.connect(notebook / "notebook.sqlite3")) as connection:
                keys = [row[0] for row in connection.execute("SELECT key FROM notebook_entry")]
            assert sorted(keys) == sorted(f"{one}-{n}" for one in changes - {"begin"} for n in range(2))
            last = body.partition('"name": "')[2].partition('"')[0]
            assert last == "Fence" or last in changes
    process.stdin.close()
    process.wait(20)
    process.stdout.close()
    assert len(acknowledged) > KILLS / 4


ACKNOWLEDGED = """
import django, os
django.setup()
from notebook.some import NOW, stem
from stemward.notebook.changes import Asked, change
for number in range(10):
    change(Asked(f"a-{number}", "tract", "owner", "put", added=[stem(f"a-{number}")]), NOW)
    os.write(1, f"acknowledged {number}\\n".encode())
"""


def test_each_change_is_on_the_disk_before_it_is_acknowledged(notebook, tmp_path):
    """Between any two acknowledgements the system was told to write through, at least once.

    Killing alone cannot show this: what the system holds in memory survives the death of a program.
    """
    if shutil.which("strace") is None:
        pytest.skip("no strace on this computer")
    traced = tmp_path / "calls"
    done = subprocess.run(
        ["strace", "-f", "-e", "trace=fdatasync,fsync,write", "-o", str(traced), sys.executable, "-c", ACKNOWLEDGED],
        env=environment(notebook), capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    through, counts = 0, []
    for line in traced.read_text(errors="replace").splitlines():
        if "sync(" in line and "= 0" in line:
            through += 1
        elif 'write(1, "acknowledged' in line:
            counts.append(through)
            through = 0
    assert len(counts) == 10
    assert min(counts) >= 1


TWELVE = """
import django, os, signal
django.setup()
from notebook.some import NOW, stem
from stemward.notebook.changes import Asked, Edit, change
patch = {"id": "fence", "name": "Fence", "places": ["woods"]}
for number in range(1, 13):
    rows = [stem(f"t-{number}-{n}", x_m=str(number), y_m=str(n)) for n in range(3)]
    edit = Edit("patch", "fence", {**patch, "name": f"t-{number}"})
    change(Asked(f"t-{number}", "tract", "owner", "put", edits=[edit], added=rows), NOW)
os.kill(os.getpid(), signal.SIGKILL)
"""


def test_a_log_cut_off_anywhere_opens_as_it_was_at_some_change(notebook, tmp_path):
    """The log ahead cut at every frame, and in the middle of one, as by a power cut: changes whole or not there."""
    subprocess.run([sys.executable, "-c", TWELVE], env=environment(notebook), check=False)
    log = notebook / "notebook.sqlite3-wal"
    raw = log.read_bytes() if log.exists() else b""
    if len(raw) < 32:
        pytest.fail("the log ahead was written back already; nothing to cut")
    page = struct.unpack(">I", raw[8:12])[0]
    frame = 24 + page
    whole = (len(raw) - 32) // frame
    seen = set()
    for number in range(whole + 1):
        for extra in (0, frame // 2):
            folder = tmp_path / "cut"
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir()
            shutil.copy(notebook / "notebook.sqlite3", folder)
            (folder / "notebook.sqlite3-wal").write_bytes(raw[: 32 + number * frame + extra])
            changes, stems, _ = looked_at(folder / "notebook.sqlite3")
            assert all(stems.get(one) == ROWS for one in changes - {"begin"})
            assert {*stems} <= changes
            seen.add(len(changes))
    assert len(seen) > 3


FULL = """
import django, os, resource, signal, sys
django.setup()
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
from pathlib import Path
from django.test import Client
from django.db import connection
from stemward.web.door import COOKIE, door
import stemward.plan, stemward.web.urls
client = Client(HTTP_HOST="127.0.0.1")
client.cookies[COOKIE] = door.key
def send(n):
    body = {"command": f"c-{n}", "what": "other", "step": "asked for", "name": "x" * 150, "day": "2026-10-01"}
    answer = client.post("/land/tract/permits", body)
    return answer.status_code, answer.content.decode()
print("first", send(0)[0], flush=True)
log = Path(str(connection.settings_dict["NAME"]) + "-wal")
most = max(log.stat().st_size, os.stat(connection.settings_dict["NAME"]).st_size) + 40_000
resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))
for n in range(1, 400):
    status, text = send(n)
    print(n, status, "no room left" in text, flush=True)
    if status != 302:
        break
"""


def test_a_disk_that_fills_up_takes_nothing_that_was_acknowledged(notebook):
    """Entries are sent until no file may grow: the last is refused with a sentence, all before it are there, whole."""
    done = subprocess.run(
        [sys.executable, "-c", FULL], env=environment(notebook) | {"STEMWARD_TODAY": "2026-10-10"},
        capture_output=True, text=True, check=False, timeout=300,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-2000:]
    lines = [line.split() for line in done.stdout.splitlines()]
    assert lines[0] == ["first", "302"]
    assert lines[-1][1:] == ["503", "True"], lines[-1]
    acknowledged = {f"c-{line[0]}" for line in lines[1:] if line[1] == "302"} | {"c-0"}
    changes, _, _ = looked_at(notebook / "notebook.sqlite3")
    with closing(sqlite3.connect(notebook / "notebook.sqlite3")) as connection:
        entries = connection.execute("SELECT count(*) FROM notebook_entry").fetchone()[0]
    assert changes == acknowledged | {"begin"}
    assert entries == len(acknowledged) > 3


HELD = """
import django
django.setup()
from django.db import connection
from django.test import Client
from stemward.web.door import COOKIE, door
with connection.cursor() as cursor:
    cursor.execute("PRAGMA busy_timeout = 100")
client = Client(HTTP_HOST="127.0.0.1")
client.cookies[COOKIE] = door.key
body = {"command": "c", "what": "other", "step": "asked for", "name": "x", "day": "2026-10-01"}
answer = client.post("/land/tract/permits", body)
print(answer.status_code, "Another program holds the notebook" in answer.content.decode())
"""


def test_another_program_on_the_database_is_noticed(notebook):
    """While another process holds the notebook a change is refused with a sentence, and goes through afterwards."""
    env = environment(notebook) | {"STEMWARD_TODAY": "2026-10-10"}

    def sent() -> list[str]:
        done = subprocess.run([sys.executable, "-c", HELD], env=env, capture_output=True, text=True, check=True)
        return done.stdout.split()

    with closing(sqlite3.connect(notebook / "notebook.sqlite3", isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        assert sent() == ["503", "True"]
        other.execute("ROLLBACK")
    assert sent()[0] == "302"
