"""Phones on the local network: a second door with TLS, through which nothing but the phone's page and rows goes."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

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
