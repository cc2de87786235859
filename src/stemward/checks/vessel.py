"""Does the label forbid a material of which a bottle here is made?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "vessel"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job for the worst vessel."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            yield _judge(case, job, product, situation)


def _judge(case: Case, job: Job, product: Product, situation: Situation) -> Finding:
    for vessel in case.tract.vessels:
        banned = resolve(product.facts, "vessel forbidden", situation, of=vessel.lining)
        weight = weigh(banned, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED)
        if banned.outcome in ("unread", "proposed"):
            return open_question(ID, banned, job, "vessel forbidden")
        if weight != Weight.CHECKED:
            about = place(*banned.facts)
            return finding(ID, weight, "forbidden", job, about, vessel=vessel.id, lining=vessel.lining)
    if not case.tract.vessels:
        return finding(ID, Weight.FIND_OUT, "no_vessel", job)
    linings = ", ".join(sorted({vessel.lining for vessel in case.tract.vessels}))
    return finding(ID, Weight.CHECKED, "not_forbidden", job, lining=linings)


CHECK = Check(
    ID,
    "bottles and tanks that a mix attacks",
    ("plan", "label facts", "people"),
    ("40 CFR 156.10(i)(2), directions for mixing",),
    run,
)
