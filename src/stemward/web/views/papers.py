"""Papers for others: season report, cost share, bid packet; on the screen and as PDF."""

from collections.abc import Mapping, Sequence
from typing import Any

from django.db.models import QuerySet
from django.http import Http404, HttpRequest, HttpResponse
from django.urls import reverse
from django.utils.safestring import mark_safe

from stemward.drawings.tally import ten_stems
from stemward.gate.text import clean
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.ledger.revisits import works
from stemward.notebook import worked
from stemward.notebook.models import Photo
from stemward.paper.pages import pages_pdf
from stemward.say import Speaker
from stemward.say.en.season import TITLES
from stemward.say.parts import Part
from stemward.say.season import Season, bid_parts, footer, season_parts, share_parts, title
from stemward.web import clock
from stemward.web.day_form import MOST
from stemward.web.frame import known_of, page, units_of
from stemward.web.views.evening import WAIT_S

NAMES = {"season": "Season report", "share": "Cost share", "bid": "Bid packet"}


def paper(request: HttpRequest, tract_id: str, which: str) -> HttpResponse:
    """One paper on the screen."""
    about, parts = _parts(request, tract_id, which, WAIT_S)
    if parts is None:
        return page(request, "web/working.html", tract_id, "after", no_step=True)
    kept = set(_photos(tract_id, parts).values_list("digest", flat=True))
    shown = [
        {"part": part, "figures": [(w, mark_safe(ten_stems(low, high))) for w, low, high, _ in part.tens],
         "pictures": [
             (said, reverse("phone-photo-file", args=[tract_id, digest]) if digest in kept else "")
             for digest, said in part.pictures
         ],
         "rows": [list(zip(part.head_row, row, strict=True)) for row in part.rows]}
        for part in parts
    ]  # fmt: skip
    years = sorted({w.day.year for w in works(about.tract, about.book)} | {about.today.year}, reverse=True)
    return page(
        request, "web/papers.html", tract_id, "after", title=title(which, about), parts=shown, which=which,
        names=NAMES.items(), year=about.year, years=years, query=request.GET.urlencode(), typed=request.GET,
    )  # fmt: skip


def paper_pdf(request: HttpRequest, tract_id: str, which: str) -> HttpResponse:
    """The same as PDF."""
    about, parts = _parts(request, tract_id, which, None)
    if parts is None:
        raise Http404
    size = "a4" if request.GET.get("paper") == "a4" else "letter"
    pictures = {row.digest: bytes(row.content) for row in _photos(tract_id, parts)}
    pdf = pages_pdf(title(which, about), parts, footer(about), about.today, size, pictures)
    answer = HttpResponse(pdf, content_type="application/pdf")
    answer["Content-Disposition"] = f'inline; filename="{which}.pdf"'
    return answer


def _photos(tract_id: str, parts: Sequence[Part]) -> QuerySet[Photo]:
    """The photos that a paper names and that are kept here."""
    return Photo.objects.filter(tract_id=tract_id, digest__in=[digest for part in parts for digest, _ in part.pictures])


def _parts(
    request: HttpRequest, tract_id: str, which: str, wait_s: float | None
) -> tuple[Season, list[Part] | None]:  # fmt: skip
    """A paper's parts, None while the plan is being worked out. Raises Http404 for a paper that is none."""
    if which not in TITLES:
        raise Http404
    land = known_of(tract_id).land
    about = Season(land, load(), _year(request, land), clock.today(land), units_of(request))
    if which == "share":
        code, number = (clean(request.GET.get(k, "").strip(), MOST)[:40] for k in ("code", "number"))
        return about, share_parts(about, code, number)
    plan = worked.plan_of(tract_id, about.today, wait_s)
    if plan is None:
        return about, None
    return about, season_parts(about, plan) if which == "season" else bid_parts(about, plan, _ways(plan, about))


def _ways(plan: Mapping[str, Any], about: Season) -> dict[str, str]:
    speaker = Speaker(plan, about.units)
    return {item["id"]: speaker.way(item) for item in plan["treatments"]}


def _year(request: HttpRequest, land: Tract) -> int:
    """The year asked for; else this one, or the last with work or looks."""
    typed = request.GET.get("year", "")
    if typed.isdigit() and len(typed) == 4:
        return int(typed)
    return clock.today(land).year
