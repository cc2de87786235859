"""Labels for bottles: of the plan's mixes before they are made, and of a batch that is kept."""

from django.http import Http404, HttpRequest, HttpResponse

from stemward.ledger import batches, in_force
from stemward.notebook import worked
from stemward.paper.bottle_label import SIZES, Bottle, TooSmall, bottle_of, bottles_of, label_lines, label_pdf
from stemward.web import clock
from stemward.web.frame import known_of, page, units_of


def labels(request: HttpRequest, tract_id: str) -> HttpResponse:
    """Which labels there are, and in which sizes they are printed."""
    return _page(request, tract_id, [])


def _page(request: HttpRequest, tract_id: str, lines: list[str]) -> HttpResponse:
    land = known_of(tract_id).land
    batch = request.GET.get("batch", "")
    shown = [label_lines(bottle, land, units_of(request)) for bottle in _bottles(tract_id, batch)]
    return page(request, "web/labels.html", tract_id, "plan" if not batch else "after", sizes=list(SIZES), batch=batch,
                labels=shown, lines=lines, status=422 if lines else 200)  # fmt: skip


def _bottles(tract_id: str, batch: str) -> list[Bottle]:
    land = known_of(tract_id).land
    if batch:
        found = batches(land.entries).get(batch)
        if found is None:
            raise Http404
        by = next((e.by for e in in_force(land.entries) if e.kind == "batch mixed" and e.body["batch"] == batch), "")
        return [bottle_of(found, by)]
    plan = worked.plan_of(tract_id, clock.today(land), None)
    return bottles_of(plan) if plan else []


def pdf(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The labels in one size; a size that cannot be read is refused with those that can."""
    land = known_of(tract_id).land
    bottles = _bottles(tract_id, request.GET.get("batch", ""))
    if not bottles:
        raise Http404
    try:
        content = label_pdf(bottles, land, units_of(request), request.GET.get("size", ""), clock.today(land))
    except TooSmall as small:
        return _page(request, tract_id, [str(small)])
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="bottle-labels.pdf"'
    return answer
