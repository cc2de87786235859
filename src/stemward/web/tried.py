"""A form that is sent: what it asks for is done, or the page comes again with what is wrong."""

from collections.abc import Callable
from typing import Any

from django.http import HttpRequest, HttpResponse

from stemward.notebook.changes import Refused

NOTHING = "Nothing was changed."


def tried(request: HttpRequest, act: Callable[[], HttpResponse | None]) -> tuple[HttpResponse | None, list[str]]:
    """What `act` answers if the form was sent and nothing was refused; else None with the sentences for the page.

    Without a form there is neither.
    """
    if request.method != "POST":
        return None, []
    try:
        return act(), []
    except Refused as refused:
        return None, [*refused.lines, NOTHING]


class Gathered:
    """Reads fields one after another and keeps all that is refused, so that it is told at once."""

    def __init__(self) -> None:
        self.lines: list[str] = []

    def __call__(self, how: Any, *args: Any) -> Any:
        try:
            return how(*args)
        except Refused as refused:
            self.lines += refused.lines
            return None
