"""The notebook's server on this computer: one for each folder, on the loopback address, closed to others."""

import datetime
import json
import os
import secrets
import signal
import sys
import threading
import urllib.request
import webbrowser
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any

from stemward.web.place import data_folder

HOST = "127.0.0.1"
USUAL_PORT = 8717
"""A free port of those nobody has registered: engineering guess."""
RUNNING = "running.json"
THREADS = 8


class CannotStart(Exception):
    """The server was not started; its text is a sentence for the person."""


@dataclass(frozen=True)
class Running:
    """A server that runs: its port, and the word that lets this computer's user ask it for a link."""

    port: int
    word: str


running: Running | None = None
_server: Any = None


def serve(port: int | None, open_browser: bool, example: bool = False, phones: tuple[str, int] | None = None) -> int:
    """Start the notebook and wait until it is stopped; a second start finds the first. Returns the exit status.

    With `example` it opens on the invented example, put in if it is not there. phones: address and port under which
    phones of a private network reach the phone's page, and nothing else.

    The last line printed before waiting is the link that opens it once. Raises CannotStart with a sentence.
    """
    data = data_folder()
    lock = _lock(data)
    if lock is None:
        if phones:
            raise CannotStart("Stemward runs already, for this computer alone. Quit it first, then share.")
        return _again(data, open_browser, example)
    _prepare(data)
    from stemward.web.door import door

    server, at = _bind(port)
    global running, _server
    running, _server = Running(at, secrets.token_urlsafe(32)), server
    _write_running(data, running)
    link = f"http://{HOST}:{at}/enter/{door.new_link(example_page() if example else '/')}"
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, lambda *_: stop())
    try:
        other = _for_phones(data, phones) if phones else None
    except CannotStart:
        server.stop()
        raise
    print(f"The notebook is kept in {data}")
    print("Stop with Ctrl-C, or Quit on any page. Open it with this link, once:")
    print(link, flush=True)
    if open_browser:
        threading.Timer(0.3, webbrowser.open, [link]).start()
    try:
        server.serve()
    finally:
        if other is not None:
            other.stop()
        (data / RUNNING).unlink(missing_ok=True)
        lock.close()
    print("Stemward has stopped. Everything is kept.")
    return 0


def _for_phones(data: Path, phones: tuple[str, int]) -> Any:
    """Open the door for phones. Raises CannotStart."""
    from stemward.web import share
    from stemward.web.wsgi import application

    try:
        server = share.listen(phones[0], phones[1], data, application, THREADS)
    except OSError as error:
        why = error.strerror or "the port is taken, or the address is not this computer's"
        raise CannotStart(f"Phones cannot be let in at {phones[0]}, port {phones[1]}: {why}.") from None
    opened = share.now()
    assert opened is not None
    print(f"Phones on this network reach the phone page at {opened.address}/phone/ and nothing else.")
    print(f"It vouches for itself; its authority has the fingerprint {opened.fingerprint}")
    return server


def example_page() -> str:
    """Address of the example."""
    from django.urls import reverse

    from stemward.web.views.opening import example_there

    return reverse("land", args=(example_there(),))


def stop() -> None:
    """Stop the server, letting requests under way end."""
    if _server is not None:
        threading.Thread(target=_server.stop, name="stop").start()


def _prepare(folder: Path) -> None:
    """A dated copy, then the tables as this version has them."""
    import django

    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "stemward.web.settings")
    django.setup()
    from django.conf import settings
    from django.core.management import call_command
    from django.db.utils import DatabaseError

    from stemward.notebook.copies import NoCopy, dated_copy

    try:
        if "sqlite3" in settings.DATABASES["default"]["ENGINE"]:
            dated_copy(folder / "notebook.sqlite3", datetime.datetime.now())  # noqa: DTZ005  a name for people
        call_command("migrate", verbosity=0, interactive=False)
    except NoCopy as error:
        raise CannotStart(str(error)) from None
    except DatabaseError as error:
        raise CannotStart(f"The notebook in {folder} cannot be opened: {error}.") from None


def _bind(port: int | None) -> tuple[Any, int]:
    """A server on the wanted port, or on the usual one, or on any that is free."""
    from cheroot import wsgi

    from stemward.web.wsgi import application

    for wanted in (port,) if port is not None else (USUAL_PORT, 0):
        server = wsgi.Server((HOST, wanted), application, numthreads=THREADS, server_name=HOST, shutdown_timeout=10)
        server.error_log = _quiet
        try:
            server.prepare()
        except OSError:
            continue
        return server, int(server.bind_addr[1])
    raise CannotStart(f"Port {port} is taken. Leave --port out, or name another one.")


def _quiet(msg: str = "", level: int = 20, traceback: bool = False) -> None:  # noqa: ARG001
    """Broken connections of browsers are no news; anything else goes to standard error."""
    if level >= 40:
        print(msg, file=sys.stderr)


def _lock(folder: Path) -> IO[str] | None:
    """The folder's lock, held as long as the file is open; None if another server holds it."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        handle = (folder / "lock").open("a")
    except OSError as error:
        raise CannotStart(f"The folder {folder} cannot be used: {error.strerror}.") from None
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        handle.close()
        return None
    return handle


def _write_running(folder: Path, now: Running) -> None:
    path = folder / RUNNING
    path.unlink(missing_ok=True)
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "w") as out:
        json.dump({"port": now.port, "word": now.word}, out)


def _again(folder: Path, open_browser: bool, example: bool) -> int:
    """Ask the server that runs already for a link."""
    try:
        found = json.loads((folder / RUNNING).read_text())
        request = urllib.request.Request(
            f"http://{HOST}:{found['port']}/again", method="POST",
            headers={"X-Stemward-Word": found["word"], "X-Stemward-To": "example" if example else ""},
        )  # fmt: skip
        with urllib.request.urlopen(request, timeout=5) as answer:
            link = answer.read().decode()
    except (OSError, ValueError, KeyError):
        raise CannotStart(f"Another Stemward holds {folder} and does not answer. Stop it, then start again.") from None
    print(f"Stemward runs already; its notebook is in {folder}")
    print(link, flush=True)
    if open_browser:
        webbrowser.open(link)
    return 0


@contextmanager
def hold(folder: Path) -> Iterator[None]:
    """Hold a notebook's folder while it is changed from outside. Raises CannotStart while a server runs on it."""
    lock = _lock(folder)
    if lock is None:
        raise CannotStart(f"Stemward runs on {folder}. Quit it first, then try again.")
    try:
        yield
    finally:
        lock.close()
