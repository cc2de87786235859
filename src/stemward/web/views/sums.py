"""Quick sums, without a tract."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse, QueryDict

from stemward.handbook import load
from stemward.kinds import HERBICIDE_METHODS
from stemward.say.numbers import System
from stemward.say.quick import NotUnderstood, dose_lines, mix_lines, near_lines, plant_lines
from stemward.web.came_back import CAUSES, causes_for
from stemward.web.frame import page, units_of

Q = QueryDict | Mapping[str, Any]
SUMS = {
    "stems": ("How much for these stems", "Sizes across the stem, and the way of treating."),
    "bottle": ("How much in this bottle", "Product and carrier for an amount of mix, in marks of common measures."),
    "near": ("What may reach the tree I keep", "Four routes: soil, shared roots, drift or vapor, splash."),
    "plant": ("What works on this plant", "Three ways, best months, what fails, and who says so."),
    "back": ("It came back: why", "What most often goes wrong, by what you saw."),
}


BEHIND = re.compile(r"[a-z_]+\.[a-z0-9_.]+ = ")
"""A line that names a number of the handbook and its source: behind the answer, not the answer."""


def sums(request: HttpRequest) -> HttpResponse:
    """The list of sums."""
    return page(request, "web/sums.html", sums=[(key, *value) for key, value in SUMS.items()])


def one(request: HttpRequest, which: str) -> HttpResponse:
    """One sum: what was asked stands in the address, so that it can be kept and sent."""
    if which not in SUMS:
        raise Http404
    book = load()
    lines: list[str] = []
    wrong: list[str] = []
    causes: list[Any] = []
    if which == "back":
        causes = causes_for(request.GET.getlist("seen"))
    elif request.GET:
        try:
            lines = WORK[which](request.GET, units_of(request))
        except NotUnderstood as error:
            wrong = [str(error).replace("--count ", "").replace("--tool ", "")]
    return page(
        request, "web/sum.html", which=which, title=SUMS[which][0], asked=request.GET,
        answer=[line for line in lines if not BEHIND.match(line)],
        behind=[line for line in lines if BEHIND.match(line)],
        lines=wrong, methods=HERBICIDE_METHODS, tools=list(book.tools),
        ingredients=sorted({name for name, _ in book.ingredients}),
        plants_known=sorted({s.common for s in book.species.values()}), causes=causes, seen=CAUSES, forms=FORMS,
        chosen=request.GET.getlist("seen"), status=422 if wrong else 200,
    )  # fmt: skip


def _stems(q: Q, units: System) -> list[str]:
    sizes = [one.strip() for one in str(q.get("sizes", "")).replace(";", ",").split(",") if one.strip()]
    count = str(q.get("count", "") or "1")
    if not count.isdigit() or len(count) > 7:
        raise NotUnderstood(f"Not understood: {count}. Write a whole number of stems, for example 12.")
    return dose_lines(str(q.get("how", "cut stump")), sizes, int(count), str(q.get("ring", "")), str(q.get("tool", "")),
                      q.get("oil") == "yes", str(q.get("per_squirt", "")), units=units)  # fmt: skip


def _bottle(q: Q, units: System) -> list[str]:
    share, ratio, gallon = (str(q.get(key, "")).strip() for key in ("concentration", "ratio", "per_gallon"))
    if not (share or ratio or gallon):
        raise NotUnderstood("How strong? Give a percent, parts like 1:3, or ounces for each gallon.")
    return mix_lines(str(q.get("amount", "")), share, "" if share else ratio, "" if share or ratio else gallon,
                     str(q.get("strength", "")), units=units)[0]  # fmt: skip


def _near(q: Q, units: System) -> list[str]:
    return near_lines(str(q.get("ingredient", "")), str(q.get("how", "cut stump")), str(q.get("distance", "")),
                      str(q.get("form", "") or "salt"), str(q.get("kind", "") or "other"), q.get("clone") == "yes",
                      str(q.get("trunk", "")), str(q.get("crown", "")), units)  # fmt: skip


def _plant(q: Q, units: System) -> list[str]:
    del units
    return plant_lines(str(q.get("plant", "")), str(q.get("state", "")).strip())


FORMS = ("salt", "amine", "choline", "ester", "acid", "dry")
WORK: dict[str, Callable[[Q, System], list[str]]] = {
    "stems": _stems, "bottle": _bottle, "near": _near, "plant": _plant,
}  # fmt: skip
