"""Phones on the local network: a second door with TLS, through which nothing but the phone's page and rows goes."""

import datetime
import socket
import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from stemward.field.authority import CERTIFICATE, FOLDER, is_private, papers_for

ALLOWED = "/phone/"
"""The only addresses that this door opens."""
Wsgi = Callable[[dict[str, Any], Callable[..., Any]], Iterable[bytes]]


@dataclass(frozen=True)
class Shared:
    """The door while it is open: its address, and the fingerprint of the authority that vouches for it."""

    address: str
    fingerprint: str


_now: Shared | None = None


def now() -> Shared | None:
    """The door, if it is open."""
    return _now


def open_door(at: Shared | None) -> None:
    """Note that the door is open, or closed."""
    global _now
    _now = at


def only_phones(application: Wsgi) -> Wsgi:
    """The application with every address but the phone's closed."""

    def answer(environ: dict[str, Any], start: Callable[..., Any]) -> Iterable[bytes]:
        path = environ.get("PATH_INFO", "")
        if not path.startswith(ALLOWED):
            start("403 Forbidden", [("Content-Type", "text/plain; charset=utf-8")])
            return [b"Only the phone's page is here.\n"]
        environ.pop("HTTP_COOKIE", None)
        return application(environ, start)

    return answer


def own_address() -> str:
    """This computer's address on a private network; "" where none is found. Nothing is sent to find it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asked:
        try:
            asked.connect(("192.0.2.1", 9))  # an address for documentation (RFC 5737): only the route is looked up
        except OSError:
            return ""
        found = str(asked.getsockname()[0])
    return found if is_private(found) else ""


def authority(data: Path) -> bytes | None:
    """The authority that phones have to trust; None where none was made."""
    path = data / FOLDER / CERTIFICATE
    return path.read_bytes() if path.exists() else None


def listen(address: str, port: int, data: Path, application: Wsgi, threads: int) -> Any:
    """Open the door for phones; the server, which runs in a thread of its own. OSError where the port is taken."""
    from cheroot import wsgi
    from cheroot.ssl.builtin import BuiltinSSLAdapter

    papers = papers_for(data, address, datetime.datetime.now(datetime.UTC))
    server = wsgi.Server((address, port), only_phones(application), numthreads=threads, server_name=address)
    server.ssl_adapter = BuiltinSSLAdapter(str(papers.certificate), str(papers.key))
    server.error_log = lambda *_, **__: None
    server.prepare()
    open_door(Shared(f"https://{address}:{server.bind_addr[1]}", papers.fingerprint))
    threading.Thread(target=server.serve, name="phones", daemon=True).start()
    return server
