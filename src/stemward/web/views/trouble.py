"""Pages for what did not go as asked."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def form_expired(request: HttpRequest, reason: str = "") -> HttpResponse:
    """A form without its token: an old page, or one from elsewhere."""
    lines = ["This page was open for too long, or the form came from elsewhere.",
             "Nothing was changed. Load the page again; what you typed may have to be typed again."]  # fmt: skip
    return render(request, "web/trouble.html", {"title": "Load the page again", "lines": lines}, status=403)


def not_found(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """An address that names nothing."""
    lines = ["There is nothing at this address. It may have been removed or renamed."]
    return render(request, "web/trouble.html", {"title": "Nothing here", "lines": lines}, status=404)
