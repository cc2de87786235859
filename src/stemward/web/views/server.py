"""Coming in, signs of life, and stopping."""

import hmac
from pathlib import Path

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseForbidden
from django.shortcuts import redirect, render
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_GET, require_POST

from stemward.web import home
from stemward.web.door import COOKIE, door
from stemward.web.frame import page
from stemward.web.icon import put_icon


@require_GET
def enter(request: HttpRequest, word: str) -> HttpResponse:
    """Open the notebook with a link that works once; the cookie lasts until the browser or server ends."""
    to = door.open(word)
    if to is None:
        return render(request, "web/closed.html", {"used": True}, status=403)
    answer = redirect(to)
    answer.set_cookie(COOKIE, door.key, httponly=True, samesite="Strict", path="/")
    return answer


@require_GET
def alive(request: HttpRequest) -> HttpResponse:
    """A sign of life, for pages that tell when the server is gone."""
    return HttpResponse("alive", content_type="text/plain")


@csrf_exempt
@require_POST
def again(request: HttpRequest) -> HttpResponse:
    """A fresh link, for a second start by the same user, who alone can read the word."""
    word = request.headers.get("X-Stemward-Word", "")
    if home.running is None or not hmac.compare_digest(word.encode(), home.running.word.encode()):
        return HttpResponseForbidden("", content_type="text/plain")
    link = door.new_link(home.example_page() if request.headers.get("X-Stemward-To") == "example" else "/")
    return HttpResponse(f"http://{home.HOST}:{home.running.port}/enter/{link}", content_type="text/plain")


@require_POST
def icon(request: HttpRequest) -> HttpResponse:
    """Put an icon that starts the notebook on the desktop of the person whose computer this is."""
    if home.running is None:
        raise Http404
    try:
        put = put_icon(Path(settings.DATA), Path.home())
    except OSError as error:
        return page(request, "web/icon.html", wrong=f"The icon cannot be written: {error.strerror}.", status=422)
    return page(request, "web/icon.html", put=put, status=200 if put else 422)


@require_POST
def leave(request: HttpRequest) -> HttpResponse:
    """Stop the server; the page that says so is the last that it sends."""
    home.stop()
    return render(request, "web/stopped.html")
