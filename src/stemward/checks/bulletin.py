"""Does the label send its reader to a bulletin on endangered species?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding, open_question, place, weigh
from stemward.kinds import Finding, Weight
from stemward.label import resolve

ID = "bulletin"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and product."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            resolved = resolve(product.facts, "endangered species bulletin", situation)
            weight = weigh(resolved, lambda f: Weight.FIND_OUT if f.value == "yes" else Weight.CHECKED)
            if weight == Weight.CHECKED:
                yield finding(ID, weight, "none", job, place(*resolved.facts))
            elif resolved.outcome == "decided":
                month = f"{case.as_of:%B %Y}"
                yield finding(ID, weight, "fetch", job, place(*resolved.facts), month=month)
            else:
                yield open_question(ID, resolved, job, "endangered species bulletin")


CHECK = Check(
    ID,
    "endangered plants and animals of the place",
    ("plan", "label facts"),
    ("EPA Label Review Manual ch. 8: bulletins hold for place and month, fetched at most six months before use",),
    run,
)
