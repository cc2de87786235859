"""Does the mix hold the adjuvant that the label asks for, and none that it forbids?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding, open_question, place
from stemward.kinds import Finding, Product, Weight
from stemward.label import Situation, listed, resolve

ID = "adjuvant"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job in water that is sprayed on leaves, or whose label asks for an adjuvant."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            if job.way.carrier == "water":
                yield from _judge(job, product, situation)


def _judge(job: Job, product: Product, situation: Situation) -> Iterator[Finding]:
    asked = listed(product.facts, "adjuvant required", situation)
    banned = listed(product.facts, "adjuvant forbidden", situation)
    leaves = job.way.how == "foliar"
    if asked and banned:
        yield finding(ID, Weight.FIND_OUT, "both", job, place(*asked, *banned), adjuvant=str(asked[0].value))
    elif asked:
        weight, message = (Weight.CHECKED, "added") if leaves else (Weight.FIND_OUT, "wanted")
        yield finding(ID, weight, message, job, place(*asked), adjuvant=str(asked[0].value))
    elif leaves:
        required = resolve(product.facts, "adjuvant required", situation)
        if required.outcome in ("unread", "proposed"):
            yield open_question(ID, required, job, "adjuvant required")
        else:
            yield finding(ID, Weight.CHECKED, "none_asked", job, place(*required.facts))


CHECK = Check(
    ID,
    "spray that rolls off the leaves, or an additive that the label forbids",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), directions for mixing", "PNW Weed Management Handbook 2016: 0.25 to 0.5 % surfactant"),
    run,
)
