"""Kill rates of others: brought in as a table, and what part of their stems counts here."""

from dataclasses import replace
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse

from stemward.gate.names import FindSpecies
from stemward.gate.problems import Problems, Unreadable
from stemward.gate.rates import read_rates
from stemward.gate.text import clean, decode
from stemward.handbook import load
from stemward.kinds import OthersRate
from stemward.notebook.changes import Edit, Refused
from stemward.notebook.edits import rate_body, rate_edits
from stemward.plan.behind import counted_stems
from stemward.say.en import rates as words
from stemward.say.en.stages import HOW
from stemward.say.problems import problem_lines
from stemward.say.worked import plant_name
from stemward.web.frame import known_of, page
from stemward.web.tried import tried
from stemward.web.views.land import ask

MOST_WHOSE = 60


def others_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Bring in a table; choose for each row what it counts for; take rows away."""
    known = known_of(tract_id)

    def act() -> HttpResponse:
        if "weigh" in request.POST:
            ask(request, tract_id, "weigh", edits=_weighed(request, known.land.rates))
        else:
            whose = clean(request.POST.get("whose", "").strip(), MOST_WHOSE)
            found = _read(request, whose)
            ask(request, tract_id, "rates", words={"what": whose}, edits=tuple(rate_edits(known.parts, found)))
        return redirect(reverse("others", args=[tract_id]) + "#rows")

    done, lines = tried(request, act)
    if done:
        return done
    book = load()
    rows = [_row_words(one, book) for one in known.land.rates]
    return page(
        request, "web/others.html", tract_id, "after", words=words, rows=rows, lines=lines, typed=request.POST,
        status=422 if lines else 200,
    )  # fmt: skip


def _read(request: HttpRequest, whose: str) -> tuple[OthersRate, ...]:
    """The rows of the table that was sent. Raises Refused with every line that is wrong."""
    upload = request.FILES.get("table")
    if upload is None or not whose:
        raise Refused(words.NO_FILE)
    book, problems, name = load(), Problems(), clean(upload.name or "the table")
    text = decode(upload.read(), name, problems)
    find: FindSpecies = book.find_species
    try:
        problems.raise_if_any()
        return read_rates(text or "", name, find, {ingredient for ingredient, _ in book.ingredients}, whose)
    except Unreadable as wrong:
        raise Refused(*problem_lines(wrong.problems)) from None


def _weighed(request: HttpRequest, rates: tuple[OthersRate, ...]) -> tuple[Edit, ...]:
    """What was chosen for each row; a row that is ticked to go goes."""
    allowed = dict(words.SHARES)
    edits = []
    for one in rates:
        share = request.POST.get(f"share-{one.id}", "")
        if f"gone-{one.id}" in request.POST:
            edits.append(Edit("rates", one.id, None))
        elif share in allowed and float(share) != one.share:
            edits.append(Edit("rates", one.id, rate_body(replace(one, share=float(share)))))
    return tuple(edits)


def _row_words(one: OthersRate, book: Any) -> dict[str, Any]:
    strength = f", {one.percent:g} %" if one.percent else ""
    return {
        "id": one.id, "whose": one.whose, "plant": plant_name(one.species, book),
        "way": f"{HOW.get(one.method, one.method)}, {' + '.join(one.ingredients)}{strength}",
        "seen": f"{one.dead} of {one.seen} dead, {one.works} day{'s' if one.works != 1 else ''}", "season": one.season,
        "shares": [(value, said, float(value) == one.share) for value, said in words.SHARES],
        "counts": words.COUNTS.format(stems=counted_stems(one)) if one.share else words.COUNTS_NOT,
    }  # fmt: skip
