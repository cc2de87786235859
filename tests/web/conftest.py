"""The pages: asked in-process, and served for real to a real browser."""

import datetime
import json
import os
import shutil
import signal
import subprocess
import sys
import urllib.request
from contextlib import contextmanager
from pathlib import Path

import pytest

from notebook.some import name
from stemward.gate import demo
from stemward.gate.pieces import split
from stemward.notebook import worked
from stemward.notebook.changes import Asked, begin

NOW = datetime.datetime(2026, 10, 10, 9, 14, tzinfo=datetime.UTC)
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.fixture
def client(db):
    """Someone who came in by the link."""
    del db
    from django.test import Client

    from stemward.web.door import COOKIE, door

    worked.forget()
    made = Client(HTTP_HOST="127.0.0.1")
    made.cookies[COOKIE] = door.key
    yield made
    worked.forget()


@pytest.fixture
def hollow(client) -> str:
    """The example in the notebook; its id."""
    del client
    tract = name()
    begin(Asked(name(), tract, "owner", "begin"), split(demo.texts()), NOW, example=True)
    return tract


class Served:
    """A server on a folder of its own."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.process: subprocess.Popen[str] | None = None
        folder.mkdir(parents=True, exist_ok=True)
        # A file and no pipe: nobody reads a pipe, and a server that fills one stands still.
        self.log = folder.with_name(f"{folder.name}.log")
        self.start()

    def start(self) -> None:
        """Start it and wait for the link, which is its last line."""
        env = {**os.environ, "STEMWARD_TODAY": "2026-10-10", "PYTHONUNBUFFERED": "1"}
        env.pop("DATABASE_URL", None)
        env.pop("DJANGO_SETTINGS_MODULE", None)
        with self.log.open("a") as said:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "stemward.cli", "serve", "--data", str(self.folder), "--no-browser"],
                stdout=subprocess.PIPE, stderr=said, text=True, env=env,
            )  # fmt: skip
        self.first_link = ""
        for line in self.process.stdout:
            if line.startswith("http"):
                self.first_link = line.strip()
                break

    @property
    def home(self) -> str:
        """Address of the opening page."""
        return self.first_link.partition("/enter/")[0]

    def link(self) -> str:
        """A fresh link, asked for as a second start does."""
        found = json.loads((self.folder / "running.json").read_text())
        request = urllib.request.Request(
            f"{self.home}/again", method="POST", headers={"X-Stemward-Word": found["word"]}
        )
        with urllib.request.urlopen(request, timeout=10) as answer:
            return answer.read().decode()

    def end(self, how: int = signal.SIGTERM) -> int:
        """Stop it; the exit status."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        status = self.process.wait(20)
        self.process.stdout.close()
        return status


@pytest.fixture(scope="session")
def served(tmp_path_factory):
    """One server for the browser's tests."""
    server = Served(tmp_path_factory.mktemp("notebook"))
    yield server
    server.end()
    said = server.log.read_text()
    assert "Traceback" not in said, said[-8000:]
    assert "Internal Server Error" not in said, said[-8000:]


@contextmanager
def opened(chromium, served, **options):
    """A page of a new visitor who came in by a link."""
    context = chromium.new_context(viewport={"width": 1100, "height": 900}, **options)
    page = context.new_page()
    page.set_default_timeout(15_000)
    page.goto(served.link())
    yield page
    context.close()


@pytest.fixture
def page(chromium, served):
    """A page at the opening, its errors and refusals collected."""
    with opened(chromium, served) as made:
        made.wrong = []
        made.on("pageerror", lambda error: made.wrong.append(str(error)))
        made.on(
            "console", lambda said: made.wrong.append(said.text) if "Content Security Policy" in said.text else None
        )
        yield made
        assert made.wrong == []


@pytest.fixture(scope="session")
def example(chromium, served) -> str:
    """The example's address on the server, its plan worked out."""
    with opened(chromium, served) as made:
        made.get_by_role("button", name="Look round an example").click()
        made.wait_for_url("**/land/*/")
        made.locator(".stepped").wait_for()
        return made.url
