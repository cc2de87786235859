"""Are the stems of a size for which the label gives this way?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job
from stemward.checks.limit import held
from stemward.kinds import Finding, Product
from stemward.label import Situation, resolve

ID = "stem-size"
SAME = 1e-9
ASKED = {"basal bark": ("greatest stem",), "hack and squirt": ("least stem",)}
"""Sizes that decide whether a way works at all; other sizes count where the label was read to have them."""


def run(case: Case) -> Iterator[Finding]:
    """A finding for each end of the range that the way or the label speaks of."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            yield from _ends(job, product, situation)


def _ends(job: Job, product: Product, situation: Situation) -> Iterator[Finding]:
    if not len(job.stems):
        return
    thinnest, thickest = float(job.stems.diameter_cm.min()), float(job.stems.diameter_cm.max())
    for kind in ("least stem", "greatest stem"):
        resolved = resolve(product.facts, kind, situation)
        if kind not in ASKED.get(job.way.how, ()) and resolved.outcome in ("unread", "proposed"):
            continue
        if kind == "least stem":
            yield held(
                ID, job, resolved, kind, lambda least: thinnest < least * (1 - SAME), {"size_cm": thinnest}, "limit_cm"
            )
        else:
            yield held(
                ID, job, resolved, kind, lambda most: thickest > most * (1 + SAME), {"size_cm": thickest}, "limit_cm"
            )


CHECK = Check(
    ID,
    "stems too thick or too thin for a way as the label gives it",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), restrictions",),
    run,
)
