"""Who may be there after the work, and when?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding, open_question, place
from stemward.kinds import Finding, Weight
from stemward.label import resolve

ID = "entry"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job: how long people keep out, and whether farm workers' rules apply."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            resolved = resolve(product.facts, "entry interval", situation)
            fact = resolved.fact
            if fact is None:
                yield open_question(ID, resolved, job, "entry interval")
            elif fact.standing == "says" and isinstance(fact.value, float):
                hours = fact.value / 3600
                yield finding(ID, Weight.KNOW, "keep_out", job, place(fact), wait_h=hours)
            elif fact.standing == "does not apply" and job.patch.answer("for_sale") != "no":
                yield finding(ID, Weight.FIND_OUT, "farm_use", job, place(fact))
            elif fact.standing == "not found":
                yield finding(ID, Weight.FIND_OUT, "not_found", job, place(fact))
            else:
                yield finding(ID, Weight.CHECKED, "none", job, place(fact))


CHECK = Check(
    ID,
    "people who walk into wet herbicide",
    ("plan", "label facts", "site facts"),
    ("40 CFR 156.208, restricted-entry statements", "40 CFR 170, worker protection"),
    run,
)
