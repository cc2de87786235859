"""The server on this computer: one-time link, second start, quitting, being killed."""

import json
import os
import signal
import sqlite3
import subprocess
import sys
import urllib.error
import urllib.parse
import urllib.request
from contextlib import closing
from http.cookiejar import CookieJar

import pytest

from notebook.some import name
from web.conftest import Served


@pytest.fixture
def server(tmp_path):
    """A server of its own, ended afterwards."""
    made = Served(tmp_path / "notebook")
    yield made
    made.end()


def bare_env() -> dict[str, str]:
    """The environment without what the tests set for Django."""
    return {k: v for k, v in os.environ.items() if k not in ("DJANGO_SETTINGS_MODULE", "DATABASE_URL")}


class Visitor:
    """Someone with a browser's cookies."""

    def __init__(self, link: str) -> None:
        self.cookies = CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.cookies))
        self.home = link.partition("/enter/")[0]
        self.get(link.removeprefix(self.home))

    def get(self, path: str) -> str:
        """A page."""
        with self.opener.open(self.home + path, timeout=20) as answer:
            self.at = answer.geturl()
            return answer.read().decode()

    def post(self, path: str, **fields: str) -> str:
        """A form sent, with the token of the last page."""
        text = self.get("/settings")
        token = text.partition('name="csrf" content="')[2].partition('"')[0]
        data = urllib.parse.urlencode({"csrfmiddlewaretoken": token, **fields}).encode()
        with self.opener.open(urllib.request.Request(self.home + path, data=data), timeout=20) as answer:
            self.at = answer.geturl()
            return answer.read().decode()


def test_the_link_works_once_and_others_stay_out(server):
    """The first to open the link is in; the link and the bare address are closed to others."""
    Visitor(server.first_link)
    for address in (server.first_link, f"{server.home}/"):
        with pytest.raises(urllib.error.HTTPError) as closed:
            urllib.request.urlopen(address, timeout=10)
        assert closed.value.code == 403
        closed.value.close()


def test_a_second_start_finds_the_first(server):
    """Started again on the same folder it prints a link of the one that runs, and ends."""
    done = subprocess.run(
        [sys.executable, "-m", "stemward.cli", "serve", "--data", str(server.folder), "--no-browser"],
        capture_output=True, text=True, timeout=30, check=False,
        env=bare_env(),
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    link = done.stdout.strip().splitlines()[-1]
    assert link.startswith(f"{server.home}/enter/")
    assert "What would you like to do?" in Visitor(link).get("/")


def test_it_opens_on_the_example_if_asked(server):
    """Asked for, at a first or a second start, the example is put in once, and the link leads to it."""
    run = [sys.executable, "-m", "stemward.cli", "serve", "--data", str(server.folder), "--no-browser", "--example"]
    for _ in range(2):
        done = subprocess.run(run, capture_output=True, text=True, timeout=60, check=True, env=bare_env())
        visitor = Visitor(done.stdout.strip().splitlines()[-1])
        assert "/land/" in visitor.at
    with closing(sqlite3.connect(server.folder / "notebook.sqlite3")) as connection:
        assert connection.execute("SELECT count(*) FROM notebook_tract").fetchone() == (1,)


def test_the_icon_is_put_by_a_button(tmp_path, monkeypatch):
    """The button on the opening page writes it; a computer without a desktop gets a sentence."""
    monkeypatch.setenv("HOME", str(tmp_path))
    made = Served(tmp_path / "notebook")
    try:
        visitor = Visitor(made.first_link)
        with pytest.raises(urllib.error.HTTPError) as none:
            visitor.post("/icon")
        assert "no desktop folder" in none.value.read().decode()
        (tmp_path / "Desktop").mkdir()
        assert "Stemward.desktop" in visitor.post("/icon")
        assert (tmp_path / "Desktop/Stemward.desktop").is_file()
    finally:
        made.end()


def test_the_word_for_a_second_start_is_its_owners_alone(server):
    """The file with the word and the key of forms are readable by their owner only; a wrong word gets nothing."""
    for file in ("running.json", "secret"):
        assert (server.folder / file).stat().st_mode & 0o077 == 0
    request = urllib.request.Request(f"{server.home}/again", method="POST", headers={"X-Stemward-Word": "guess"})
    with pytest.raises(urllib.error.HTTPError) as refused:
        urllib.request.urlopen(request, timeout=10)
    assert refused.value.code == 403
    refused.value.close()


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_it_stops_cleanly_by_signal(server, how):
    """Ctrl-C ends it with status 0 and takes its note away."""
    assert server.end(how) == 0
    assert not (server.folder / "running.json").exists()


def test_quit_stops_it_with_a_page_that_says_so(server):
    """The last page says that it has stopped, and it does."""
    visitor = Visitor(server.first_link)
    assert "Stemward has stopped" in visitor.post("/quit")
    assert server.process.wait(15) == 0


def test_a_folder_that_cannot_be_used_is_said_in_a_sentence(tmp_path):
    """No traceback for a folder that is a file."""
    (tmp_path / "file").write_text("")
    done = subprocess.run(
        [sys.executable, "-m", "stemward.cli", "serve", "--data", str(tmp_path / "file"), "--no-browser"],
        capture_output=True, text=True, timeout=30, check=False,
        env=bare_env(),
    )  # fmt: skip
    assert done.returncode == 2
    assert "cannot be used" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_dated_copy_is_made_at_each_start_and_can_be_put_back(server):
    """The second start leaves a copy of the first run's notebook; `copy` takes one and puts it back."""
    visitor = Visitor(server.first_link)
    visitor.post("/example", command=name())
    server.end()
    server.start()
    assert len(list((server.folder / "copies").glob("*.sqlite3"))) >= 1

    copy = server.folder.parent / "elsewhere.sqlite3"
    run = [sys.executable, "-m", "stemward.cli", "copy", str(copy), "--data", str(server.folder)]
    env = bare_env()
    assert subprocess.run(run, env=env, capture_output=True, check=False).returncode == 0
    busy = subprocess.run([*run, "--put-back"], env=env, capture_output=True, text=True, check=False)
    assert busy.returncode == 2
    assert "Quit it first" in busy.stderr
    server.end()
    back = subprocess.run([*run, "--put-back"], env=env, capture_output=True, text=True, check=False)
    assert back.returncode == 0
    assert "1 tracts" in back.stdout


def test_a_server_that_is_killed_keeps_what_it_acknowledged(server):
    """Killed between and during requests, every answered change is there at the next start and nothing by halves."""
    visitor = Visitor(server.first_link)
    visitor.post("/example", command=name())
    tract = visitor.at.rstrip("/").rpartition("/")[2]
    sent: list[str] = []
    for turn in range(3):
        for n in range(3):
            fields = {"role": f"helper {turn} {n}", "does-asked": "1", "does": "apply", "command": name()}
            visitor.post(f"/land/{tract}/piece/person", **fields)
            sent.append(fields["role"])
        server.process.kill()
        server.end()
        server.start()
        visitor = Visitor(server.first_link)
        page = visitor.get(f"/land/{tract}/")
        assert all(role in page for role in sent)
    with closing(sqlite3.connect(server.folder / "notebook.sqlite3")) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert json.dumps(connection.execute("PRAGMA foreign_key_check").fetchall()) == "[]"
