"""What worked: kill rates with what stands behind them, ways held against each other, what else was learned."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_GET

from stemward.drawings.tally import ten_stems
from stemward.gate.out.rates import rates_csv
from stemward.handbook import load
from stemward.ledger.revisits import works
from stemward.plan.killed import comparisons, killed, others, parts_of
from stemward.plan.rates import rates_of
from stemward.plan.why_failed import why_failed
from stemward.say.en import rates as words
from stemward.say.en.revisits import WHY_NOTE, WHY_TITLE
from stemward.say.worked import apart_words, held_words, killed_words, other_words, why_words
from stemward.web.frame import known_of, page, units_of
from stemward.web.views.records import names_of


def worked_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Every way that was used, books and own stems as two rows of ten."""
    land, book = known_of(tract_id).land, load()
    found, names = killed(land, book), names_of(land)
    rows = [_drawn(killed_words(one, names, book) | {"apart": apart_words(parts_of(one, land))}) for one in found]
    held = [held_words(one, names, book) for one in comparisons(found, land)]
    failed = [(work, why_failed(work, land, book)) for work in works(land, book)]
    why = [why_words(work, reasons, names, book, units_of(request)) for work, reasons in reversed(failed) if reasons]
    return page(
        request, "web/worked.html", tract_id, "after", rows=rows, held=held, others=other_words(others(land, book)),
        rates=words if any(one.seen for one in found) else None, why=why, why_title=WHY_TITLE, why_note=WHY_NOTE,
    )  # fmt: skip


@require_GET
def rates(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Kill rates to hand on, as CSV. Raises Http404 where nothing has a verdict."""
    book = load()
    found = rates_of(known_of(tract_id).land, book)
    if not found:
        raise Http404
    answer = HttpResponse(rates_csv(found, book), content_type="text/csv; charset=utf-8")
    answer["Content-Disposition"] = f'attachment; filename="{words.FILE}"'
    return answer


def _drawn(said: dict[str, Any]) -> dict[str, Any]:
    drawn = {name: mark_safe(ten_stems(*said[name])) if said[name] else "" for name in ("books", "ten")}
    return {**said, **drawn}
