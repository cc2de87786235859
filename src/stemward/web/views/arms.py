"""Test two ways first: a target split into two arms with flags."""

import datetime

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from stemward.handbook import load
from stemward.ledger.revisits import due_dates, verdict_months
from stemward.ledger.stems import to_do
from stemward.notebook.arms import NOT_LISTED, arms_of, one_by_one
from stemward.notebook.changes import Refused
from stemward.notebook.edits import names_of
from stemward.plan import targets_of
from stemward.reckon.arms import told_apart
from stemward.say.en import arms as words
from stemward.web import clock
from stemward.web.frame import known_of, page
from stemward.web.tried import tried
from stemward.web.views.land import ask

USUAL_EACH = 20
"""Plants in an arm that are proposed: engineering guess; the page says what they can tell apart."""


def arms(request: HttpRequest, tract_id: str, patch: str, species: str, state: str) -> HttpResponse:
    """What a test tells, and the split itself, which undo takes back. Raises Http404 for no such target."""
    known = known_of(tract_id)
    land, book = to_do(known.land), load()
    target = next((t for t in targets_of(land) if (t.patch, t.species, t.state) == (patch, species, state)), None)
    if target is None:
        raise Http404
    common = book.species[species].common if species in book.species else species
    place = land.patch(patch).name

    def act() -> HttpResponse:
        typed = request.POST.get("each", "").strip()
        if not (typed.isascii() and typed.isdigit()):
            raise Refused(words.NOT_UNDERSTOOD)
        edits, moved = arms_of(
            known.parts, land.stems, patch, species, names_of(known.parts, species), state, int(typed), words.FLAGS
        )
        ask(request, tract_id, "split", words={"what": f"{common} on {place}"}, edits=edits, stems=moved)
        return redirect("plan", tract_id)

    answer, lines = tried(request, act)
    if answer is not None:
        return answer
    most = len(one_by_one(land.stems, patch, species, state)) // 2
    each = min(USUAL_EACH, most)
    suckers = species in book.species and (book.species[species].root_suckers == "yes" or book.species[species].clone)
    return page(
        request, "web/arms.html", tract_id, "plan", lines=lines, words=words,
        title=words.TITLE.format(plants=common, patch=place), each=request.POST.get("each", str(each)),
        hint=words.EACH_HINT.format(most=most), apart=_apart(each, most), most=most, not_listed=NOT_LISTED,
        verdict=_verdict(clock.today(land), bool(suckers)), back=(patch, species, state), status=422 if lines else 200,
    )  # fmt: skip


def _apart(each: int, most: int) -> list[str]:
    """What some sizes of arms tell apart."""
    lines = []
    for count in dict.fromkeys(n for n in (10, each, 40, most) if 5 <= n <= most):
        found = told_apart(count)
        if found is None:
            lines.append(words.APART_NONE.format(each=count))
        else:
            lines.append(words.APART.format(each=count, dead=found[0], other=found[1]))
    return lines


def _verdict(today: datetime.date, suckers: bool) -> str:
    book = load()
    due = due_dates(today, "cut stump", (), suckers, book)
    months = verdict_months(suckers, book)
    on = due["verdict"]
    return words.VERDICT.format(on=f"{on:%b} {on.day}, {on.year}", months=f"{months:g}")
