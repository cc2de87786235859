"""Does the label shut this time of year?"""

from collections.abc import Iterator
from dataclasses import replace

from stemward.checks.case import Case, Check, by_force, finding, open_question, place, worst
from stemward.kinds import Finding, Weight
from stemward.label import listed, resolve

ID = "label-season"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; what a label shuts stands as a rule with its dates."""
    for job, product in case.treated:
        for situation in job.situations(case.tract, on=case.as_of)[:1]:
            shut = listed(product.facts, "season forbidden", situation)
            if shut:
                weight = worst(by_force(fact) for fact in shut)
                yield finding(ID, weight, "shut", job, place(*shut), season=str(shut[0].value))
                continue
            # Looked for at all: a rule for another time of year counts as looked for.
            any_time = [replace(f, scope=replace(f.scope, dates=None)) for f in product.facts]
            resolved = resolve(any_time, "season forbidden", situation)
            if resolved.outcome in ("unread", "proposed"):
                yield open_question(ID, resolved, job, "season forbidden")
            else:
                yield finding(ID, Weight.CHECKED, "not_shut", job, place(*resolved.facts))


CHECK = Check(
    ID,
    "work at a time of year that the label shuts",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), frequency and timing of application",),
    run,
)
