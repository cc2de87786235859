"""What every answer carries, who may ask, and errors as sentences."""

import logging
from collections.abc import Callable

from django.conf import settings
from django.core.exceptions import RequestDataTooBig, SuspiciousOperation
from django.db import DatabaseError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render

from stemward.notebook.changes import Refused
from stemward.web.door import COOKIE, door

Answer = Callable[[HttpRequest], HttpResponse]

POLICY = (
    "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
    "worker-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'self'"
)
"""No script and no style but from our own files: a name with a script in it stays a name."""
OPEN_TO_ALL = ("/enter/", "/static/", "/alive", "/again", "/calendar/", "/phone/")
"""Addresses that need no cookie: the link itself, files without content of anyone, signs of life, and what asks for
the run's own secret, or for a secret word of its own, in their place; the phone's page holds nothing of anyone."""


def policy(get_response: Answer) -> Answer:
    """Adds the content security policy, and keeps pages out of caches."""

    def answer(request: HttpRequest) -> HttpResponse:
        response = get_response(request)
        response.headers.setdefault("Content-Security-Policy", POLICY)
        if not request.path.startswith("/static/"):
            response.headers.setdefault("Cache-Control", "no-store")
        return response

    return answer


def only_the_owner(get_response: Answer) -> Answer:
    """Refuses whoever did not come through the one-time link, and hosts that are not ours."""

    def answer(request: HttpRequest) -> HttpResponse:
        try:
            request.get_host()
        except SuspiciousOperation:
            return render(request, "web/trouble.html", {"title": "Not this address", "lines": [OTHER_HOST]}, status=400)
        known = door.knows(request.COOKIES.get(COOKIE, ""))
        if request.path.startswith(OPEN_TO_ALL):
            return get_response(request)
        if settings.PROFILE != "loopback":
            return render(request, "web/trouble.html", {"title": "Closed", "lines": [NO_ACCOUNTS]}, status=403)
        if not known:
            return render(request, "web/closed.html", status=403)
        return get_response(request)

    return answer


NO_ACCOUNTS = (
    "A notebook that several people share needs accounts, and this version has none yet, so nobody is let in. "
    "Run stemward on your own computer."
)
OTHER_HOST = "Stemward answers only under the address it was opened with. Open it again from its icon or link."


def plain_errors(get_response: Answer) -> Answer:
    """Turns what was refused or went wrong into a page with sentences."""
    return _PlainErrors(get_response)


class _PlainErrors:
    """Django calls process_exception on an object, so this is one."""

    def __init__(self, get_response: Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, error: Exception) -> HttpResponse | None:
        """A page for each kind of trouble; None leaves it to Django."""
        if isinstance(error, Http404):
            return None
        if isinstance(error, Refused):
            return _page(request, "Not changed", [*error.lines, "Nothing was changed."], 409)
        if isinstance(error, RequestDataTooBig):
            return _page(request, "Too large", [TOO_LARGE], 413)
        if isinstance(error, SuspiciousOperation):
            return None
        if isinstance(error, DatabaseError) and (lines := _of_database(str(error).lower())):
            return _page(request, "Not written down", lines, 503)
        logging.getLogger("stemward").exception("page %s failed", request.path)
        return _page(request, "Something went wrong here", [WENT_WRONG], 500)


def _of_database(said: str) -> list[str]:
    """What a database that cannot write means to a person; [] where it means a fault of the program."""
    if "full" in said or "disk i/o" in said or "readonly" in said or "no space" in said:
        return [NO_ROOM]
    return [HELD] if "locked" in said else []


NO_ROOM = (
    "The disk has no room left, or cannot be written to, so this was not written down and nothing was changed. "
    "Make room, then send it again; what you entered before is kept."
)
HELD = (
    "Another program holds the notebook just now, so this was not written down and nothing was changed. "
    "Close what else may have it open, then send it again."
)
TOO_LARGE = "The file is larger than the 64 MB that are read. Nothing was changed."
WENT_WRONG = (
    "This page could not be made; the fault is the program's, not yours. Nothing was changed. "
    "Go back and try again; what you entered before is kept."
)


def _page(request: HttpRequest, title: str, lines: list[str], status: int) -> HttpResponse:
    return render(request, "web/trouble.html", {"title": title, "lines": lines}, status=status)
