"""Undo, redo, and the list of who changed what when."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from stemward.notebook.changes import redo, undo
from stemward.notebook.models import Change
from stemward.say.en.changes import change_words
from stemward.web import clock
from stemward.web.door import who
from stemward.web.frame import known_of, page

MOST_SHOWN = 200


@require_POST
def undo_view(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Take back this person's last change."""
    known_of(tract_id)
    undo(request.POST["command"], tract_id, who(), clock.now())
    return _back(request, tract_id)


@require_POST
def redo_view(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Make the change again that was taken back last."""
    known_of(tract_id)
    redo(request.POST["command"], tract_id, who(), clock.now())
    return _back(request, tract_id)


def _back(request: HttpRequest, tract_id: str) -> HttpResponse:
    if request.headers.get("Accept", "").startswith("application/json"):
        from django.http import JsonResponse

        return JsonResponse({"reload": True})
    from urllib.parse import urlsplit

    came = urlsplit(request.headers.get("Referer", "")).path
    return redirect(came if came.startswith(f"/land/{tract_id}/") else f"/land/{tract_id}/")


def changes(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The trace, newest first."""
    rows = Change.objects.filter(tract_id=tract_id).order_by("-number").values("number", "who", "at", "verb", "words")
    shown = [
        {
            "number": r["number"],
            "who": r["who"],
            "at": r["at"].astimezone(),
            "what": change_words(r["verb"], r["words"]),
        }
        for r in rows[:MOST_SHOWN]
    ]
    return page(request, "web/changes.html", tract_id, "land", rows=shown, now=clock.now())
