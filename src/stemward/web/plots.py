"""Sample plots of a patch: laid out inside its outline, tallied by size, and what they say."""

from typing import Any

import numpy as np
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from stemward.gate.out import gpx
from stemward.gate.pieces import PLOT_COLUMNS
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.notebook import edits
from stemward.notebook.changes import Asked, Edit, Refused, change
from stemward.paper.plot_sheet import PlotSheet, plot_sheet
from stemward.plan.surveys import surveys_of
from stemward.reckon.lay_plots import at_random, on_grid
from stemward.reckon.survey import plot_radius_m
from stemward.say import Speaker
from stemward.say.en.plots import ONE_OR_TWO
from stemward.units import UnitError, convert, read
from stemward.web import clock
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of

USUAL_PLOT = "1/100 acre"
USUAL_M2 = 40.468564224
"""A hundredth of an acre, a round plot of 11.8 ft radius (common practice, no source)."""
CLASS_ENDS = (("0", "1"), ("1", "3"), ("3", "6"), ("6", "12"))
"""Size classes in inches: those of counting by size, the last closed at a foot."""
MOST_PLOTS = 200


def plots_page(request: HttpRequest, tract_id: str, patch: str) -> HttpResponse:
    """The patch's plots, a form for one more, and where to lay them."""
    known = known_of(tract_id)
    if patch not in edits.keys_of(known.parts, "patch"):
        raise Http404
    lines: list[str] = []
    if request.method == "POST":
        try:
            _tally(request, tract_id, patch)
            return redirect("plots", tract_id, patch)
        except Refused as refused:
            lines = [*refused.lines, "Nothing was changed."]
    land = known.land
    own = [t for t in land.plots if t.patch == patch]
    book = load()
    return page(
        request, "web/plots.html", tract_id, "land", patch=land.patch(patch), lines=lines, typed=request.POST,
        classes=edits.CLASSES, said=_said(land, patch, units_of(request)), few=0 < len({t.plot for t in own}) < 3,
        few_words=ONE_OR_TWO, plants=sorted({s.common for s in book.species.values()}),
        tallied=[
            {"plot": t.plot, "plant": book.species[t.species].common, "count": t.count,
             "low": round(convert(t.low_cm, "cm", "in"), 1), "high": round(convert(t.high_cm, "cm", "in"), 1)}
            for t in own
        ],
        origin=land.origin is not None, next_plot=len({t.plot for t in own}) + 1, status=422 if lines else 200,
    )  # fmt: skip


def _said(land: Tract, patch: str, units: Any) -> list[str]:
    """What the plots say, in sentences."""
    plan = {"treatments": [], "tract": {"patches": [], "products": []}}
    speaker = Speaker(plan, units)
    return [speaker.survey(item) for item in surveys_of(land, load()) if item["patch"] == patch]


def _tally(request: HttpRequest, tract_id: str, patch: str) -> None:
    """One plot's counts as rows; a plot without a stem keeps a row of 0."""
    parts = known_of(tract_id).parts
    plot, species = request.POST.get("plot", "").strip(), request.POST.get("species", "").strip()
    if not plot or not species:
        raise Refused("Which plot, and which plant? For example plot 1, bush honeysuckles.")
    try:
        size = read(request.POST.get("size", "").strip() or USUAL_PLOT, "area", "acre").to("m2")
    except UnitError as error:
        raise Refused(str(error)) from None
    changes = []
    for one, (low, high) in zip(edits.CLASSES, CLASS_ENDS, strict=True):
        typed = request.POST.get(one.name, "").strip() or "0"
        if not (typed.isascii() and typed.isdigit() and len(typed) <= 5):
            raise Refused(f"Not understood: {typed}. Write a whole number of stems, for example 12.")
        row = {"plot": plot, "patch": patch, "species": species, "low_in": low, "high_in": high, "count": typed,
               "plot_m2": f"{size:.6g}"}  # fmt: skip
        body = {name: row.get(name, "") for name in PLOT_COLUMNS}
        key = "/".join(body[name] for name in ("plot", "patch", "species", "low_cm", "low_in"))
        if key in edits.keys_of(parts, "tally"):
            raise Refused(f"Plot {plot} has a tally of {species} already. Take it back, or name another plot.")
        changes.append(Edit("tally", key, body))
    asked = Asked(request.POST["command"], tract_id, who(), "add", {"what": f"the tally of plot {plot}"}, changes)
    change(asked, clock.now())


def plots_file(request: HttpRequest, tract_id: str, patch: str, what: str) -> HttpResponse:
    """The plots to be laid, as a sheet to carry or waypoints. The same seed gives the same plots."""
    known = known_of(tract_id)
    if patch not in edits.keys_of(known.parts, "patch") or what not in ("sheet.pdf", "plots.gpx"):
        raise Http404
    one = known.land.patch(patch)
    if one.shape is None:
        raise Refused("Plots are laid out inside the patch's outline, and it is not drawn yet. Draw it first.")
    centres = _centres(request, one.shape)
    if what == "plots.gpx":
        if known.land.origin is None:
            raise Refused("Waypoints need latitude and longitude, and the tract has none yet. Bring a GPS file first.")
        return _file(gpx(centres, known.land.origin), "application/gpx+xml", f"plots-{patch}.gpx")
    classes = [c.words for c in edits.CLASSES]
    sheet = PlotSheet(known.land.name, one.name, one.shape.rings, centres, plot_radius_m(USUAL_M2),
                      request.GET.get("species", ""), classes)  # fmt: skip
    paper = "a4" if request.GET.get("paper") == "a4" else "letter"
    pdf = plot_sheet(sheet, clock.today(known.land), units_of(request), paper)
    return _file(pdf, "application/pdf", f"plots-{patch}.pdf", "inline")


def _centres(request: HttpRequest, shape: Any) -> list[tuple[str, float, float]]:
    from shapely.geometry import Polygon

    count, seed = request.GET.get("count", "6"), request.GET.get("seed", "1")
    if not count.isdigit() or not 1 <= int(count) <= MOST_PLOTS:
        raise Refused(f"Not understood: {count}. Write how many plots, 1 to {MOST_PLOTS}.")
    polygon = Polygon(shape.rings[0], shape.rings[1:])
    rng = np.random.default_rng(int(seed) if seed.isdigit() and len(seed) < 10 else 1)
    spots = on_grid(polygon, int(count), rng) if request.GET.get("how") == "grid" else at_random(
        polygon, int(count), plot_radius_m(USUAL_M2), rng
    )  # fmt: skip
    return [(str(n), round(float(x), 1), round(float(y), 1)) for n, (x, y) in enumerate(spots, 1)]


def _file(content: bytes, kind: str, name: str, how: str = "attachment") -> HttpResponse:
    answer = HttpResponse(content, content_type=kind)
    answer["Content-Disposition"] = f'{how}; filename="{name}"'
    return answer
