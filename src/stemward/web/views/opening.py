"""The opening page, the example, a folder that was sent, and how pages look."""

import uuid

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from stemward.gate import demo
from stemward.gate.pieces import Parts, split
from stemward.notebook import worked
from stemward.notebook.changes import Asked, Refused, begin
from stemward.notebook.models import Change, Tract
from stemward.plan.next_step import ROWS
from stemward.web import clock, home, steps
from stemward.web.door import who
from stemward.web.frame import COOKIES, LIGHTS, SIZES, UNITS, page, units_of

LONG_S = 365 * 24 * 3600
MOST_WORKED = 3
"""Tracts whose next step is worked out while the opening page waits; the rest show their name alone."""


def opening(request: HttpRequest) -> HttpResponse:
    """Every tract with its next step, the most pressing first; without any, what to do first."""
    rows = []
    for tract in Tract.objects.filter(removed_at=None).order_by("made_at"):
        land = worked.known(tract.id).land
        step = steps.step_of(tract.id, units_of(request), 0.02)
        rank = ROWS.index(step["row"]) if step else len(ROWS)
        rows.append({"id": tract.id, "name": land.name, "example": tract.example, "step": step, "rank": rank})
    rows.sort(key=lambda row: (row["rank"], row["name"]))
    return page(request, "web/opening.html", tracts=rows, data=_data_words(), here=home.running)


def _data_words() -> str:
    from django.conf import settings

    return str(settings.DATA) if "sqlite3" in settings.DATABASES["default"]["ENGINE"] else "the shared database"


@require_POST
def example(request: HttpRequest) -> HttpResponse:
    """Put the example into the notebook, or put it back as it was."""
    for old in Tract.objects.filter(example=True, removed_at=None):
        Tract.objects.filter(id=old.id).update(removed_at=clock.now())
    return redirect("land", put_example(request.POST.get("command") or str(uuid.uuid4())))


def put_example(command: str) -> str:
    """Put the example into the notebook as it was made; its id."""
    return begin_tract(split(demo.texts()), command, example=True)


def example_there() -> str:
    """The example that is in the notebook, put there if there is none; its id."""
    there = Tract.objects.filter(example=True, removed_at=None).order_by("-made_at").first()
    return str(there.id) if there else put_example(str(uuid.uuid4()))


def begin_tract(parts: Parts, command: str, example: bool = False) -> str:
    """A new tract; its id. The same command gives the same tract. Raises Refused where the parts cannot be read."""
    before = Change.objects.filter(id=command).values_list("tract_id", flat=True).first()
    if before:
        return str(before)
    tract_id = str(uuid.uuid4())
    begin(Asked(command, tract_id, who(), "begin"), parts, clock.now(), example)
    return tract_id


def bring(request: HttpRequest) -> HttpResponse:
    """A tract folder that was sent, as one zip: a new tract, or a merge with the one it came from."""
    from stemward.gate.out import NotAFolder, folder_unzip

    if request.method != "POST":
        return page(request, "web/bring.html")
    upload = request.FILES.get("folder")
    if upload is None:
        return page(request, "web/bring.html", lines=["Choose the zip file first."], status=422)
    try:
        texts = folder_unzip(upload.read())
        read_or_refuse(texts)
        tract_id = begin_tract(split(texts), request.POST["command"])
    except NotAFolder as error:
        return page(request, "web/bring.html", lines=[str(error), "Nothing was changed."], status=422)
    except Refused as refused:
        return page(request, "web/bring.html", lines=[*refused.lines, "Nothing was changed."], status=422)
    return redirect("land", tract_id)


def read_or_refuse(texts: dict[str, str]) -> None:
    """Raises Refused with file, line and sentence for all that is wrong with a folder's texts."""
    from stemward.gate.folder import Unreadable, read_texts
    from stemward.handbook import load
    from stemward.label import KINDS
    from stemward.say.problems import problem_lines

    if "tract.toml" not in texts:
        raise Refused("tract.toml is missing; this is not a tract folder.")
    try:
        read_texts(texts, load().find_species, KINDS)
    except Unreadable as unreadable:
        raise Refused(*problem_lines(unreadable.problems)) from None


def settings(request: HttpRequest) -> HttpResponse:
    """Type size, light and units, kept in this browser."""
    back = request.GET.get("back") or request.POST.get("back") or reverse("opening")
    if not url_has_allowed_host_and_scheme(back, allowed_hosts=None):
        back = reverse("opening")
    if request.method == "POST":
        answer = HttpResponseRedirect(back)
        allowed = {"size": tuple(SIZES), "light": tuple(LIGHTS), "units": UNITS}
        for name, cookie in COOKIES.items():
            value = request.POST.get(name, "")
            if value in allowed[name]:
                answer.set_cookie(cookie, value, max_age=LONG_S, samesite="Strict", httponly=True)
        return answer
    have = {name: request.COOKIES.get(cookie, "") for name, cookie in COOKIES.items()}
    groups = [
        ("size", "Size of type", SIZES.items(), have["size"]),
        ("light", "Light", LIGHTS.items(), have["light"]),
        ("units", "Units", (("us", "gallons and inches"), ("metric", "liters and centimeters")), units_of(request)),
    ]
    return page(request, "web/settings.html", groups=groups, back=back)
