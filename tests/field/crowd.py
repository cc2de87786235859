"""Fifty phones that send at once to a server that is killed now and then; what was acknowledged is remembered."""

import contextlib
import http.client
import json
import os
import random
import signal
import socket
import subprocess
import sys
import threading
import time
import uuid
from dataclasses import dataclass, field
from pathlib import Path

BEGIN = """
import datetime, json, os, sys, uuid
os.environ["DJANGO_SETTINGS_MODULE"] = "stemward.web.settings"
import django; django.setup()
from django.core.management import call_command
call_command("migrate", verbosity=0)
from stemward.field.joined import new_phone
from stemward.gate import demo
from stemward.gate.pieces import split
from stemward.notebook.changes import Asked, begin
now = datetime.datetime(2026, 9, 1, tzinfo=datetime.UTC)
tract = str(uuid.uuid4())
begin(Asked(str(uuid.uuid4()), tract, "owner", "begin"), split(demo.texts()), now, example=True)
print(json.dumps([tract, [new_phone(tract, f"phone {n}", now) for n in range(int(sys.argv[1]))]]))
"""
READ = """
import json, os
os.environ["DJANGO_SETTINGS_MODULE"] = "stemward.web.settings"
import django; django.setup()
from stemward.notebook.models import Entry, Tract
from stemward.notebook import worked
rows = [key for key, row in Entry.objects.values_list("key", "row") if row.get("device")]
worked.known(Tract.objects.get().id)
print(json.dumps(rows))
"""


@dataclass
class Crowd:
    """What came of it. acknowledged: ids that the server said it keeps, by phone. seconds: of each answered request."""

    acknowledged: set = field(default_factory=set)
    wanted: set = field(default_factory=set)
    kept: list = field(default_factory=list)
    seconds: list = field(default_factory=list)
    kills: int = 0
    log: str = ""


class Server:
    """The notebook's server on a port of its own, killed and started again."""

    def __init__(self, folder: Path, env: dict[str, str]) -> None:
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        self.folder, self.env, self.log = folder, env, folder.parent / "server.log"
        self.start()

    def start(self) -> None:
        """Start it and wait until it answers."""
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "stemward.cli", "serve", "--data", str(self.folder), "--no-browser", "--port",
                 str(self.port)],
                stdout=subprocess.DEVNULL, stderr=log, env=self.env,
            )  # fmt: skip
        for _ in range(200):
            with contextlib.suppress(OSError):
                socket.create_connection(("127.0.0.1", self.port), 1).close()
                return
            time.sleep(0.05)
        raise RuntimeError("the server does not start")

    def kill(self) -> None:
        """End it at once, and start it again."""
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()
        self.start()

    def end(self) -> None:
        """Stop it."""
        self.process.terminate()
        self.process.wait(30)


def crowd(folder: Path, phones: int, rows: int, lot: int, kills: int, seed: int, database: str = "") -> Crowd:
    """Let so many phones send so many rows each, in lots; the server is killed so often at random moments."""
    env = {**os.environ, "STEMWARD_DATA": str(folder)}
    env.pop("DATABASE_URL", None)
    env.pop("DJANGO_SETTINGS_MODULE", None)
    if database:
        env["DATABASE_URL"] = database
    made = subprocess.run(
        [sys.executable, "-c", BEGIN, str(phones)], env=env, capture_output=True, text=True, check=True
    )
    _, words = json.loads(made.stdout)
    server, found, lock = Server(folder, env), Crowd(), threading.Lock()
    try:
        threads = [
            threading.Thread(target=_phone, args=(server.port, word, n, rows, lot, seed, found, lock))
            for n, word in enumerate(words)
        ]
        for thread in threads:
            thread.start()
        dice = random.Random(seed)
        for _ in range(kills):
            time.sleep(dice.uniform(0.4, 1.2))
            if any(thread.is_alive() for thread in threads):
                server.kill()
                found.kills += 1
        for thread in threads:
            thread.join(120)
    finally:
        server.end()
    read = subprocess.run([sys.executable, "-c", READ], env=env, capture_output=True, text=True, check=True)
    found.kept = json.loads(read.stdout)
    found.log = server.log.read_text(errors="replace")
    return found


def _phone(port, word, number, rows, lot, seed, found, lock):
    """One phone: sends what waits, drops a row only on its answer, and waits longer after each failure."""
    dice = random.Random(seed * 1000 + number)
    outbox = [
        {"id": str(uuid.UUID(int=dice.getrandbits(128))), "kind": "marked", "at": f"2026-09-02T10:{n % 60:02d}:00",
         "offset": -240, "by": "crew 1", "device": f"phone {number}",
         "body": {"what": "treated", "rows": {f"p{number}-{n}": 1}, "patch": "rim"}}
        for n in range(rows)
    ]  # fmt: skip
    with lock:
        found.wanted |= {row["id"] for row in outbox}
    failures = 0
    time.sleep(dice.uniform(0, 2))
    while outbox:
        began = time.monotonic()
        answers = _post(port, word, outbox[:lot])
        if answers is None:
            failures += 1
            time.sleep(min(4.0, 0.1 * 2 ** min(failures, 5)) * dice.uniform(0.5, 1))
            continue
        failures = 0
        done = {one["id"] for one in answers if one["state"] in ("kept", "again")}
        with lock:
            found.acknowledged |= done
            found.seconds.append(time.monotonic() - began)
        outbox = [row for row in outbox if row["id"] not in done]
        time.sleep(1.5 * dice.uniform(0.3, 1.3) if outbox else 0)  # as the page does


def _post(port, word, rows):
    """The answers, or None."""
    body = json.dumps({"form": "stemward phone rows", "device": rows[0]["device"], "sent_at": "2026-09-02T14:00:00+00:00",
                       "rows": rows})  # fmt: skip
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    try:
        connection.request("POST", "/phone/rows", body, {"X-Stemward-Phone": word, "Content-Type": "application/json"})
        answer = connection.getresponse()
        raw = answer.read()
        return json.loads(raw)["answers"] if answer.status == 200 else None
    except (OSError, http.client.HTTPException, ValueError):
        return None
    finally:
        connection.close()
