"""Does the label name what the product is mixed into, and does it forbid it?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "carrier"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and kind of place."""
    for job, product in case.treated:
        for situation in job.situations(case.tract):
            yield _judge(job, product, situation)


def _judge(job: Job, product: Product, situation: Situation) -> Finding:
    carrier = job.way.carrier
    banned = resolve(product.facts, "carrier forbidden", situation, of=carrier)
    ban = weigh(banned, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED)
    if ban == Weight.STOP:
        return finding(ID, ban, "forbidden", job, place(*banned.facts), carrier=carrier)
    if ban == Weight.FIND_OUT:
        return open_question(ID, banned, job, "carrier forbidden", carrier=carrier)
    named = resolve(product.facts, "carrier", situation, of=carrier)
    if named.outcome in ("unread", "proposed"):
        return finding(ID, Weight.KNOW, "not_looked_for", job, place(*banned.facts), carrier=carrier)
    weight = weigh(named, lambda f: Weight.CHECKED if f.standing == "says" else Weight.FIND_OUT)
    if weight != Weight.CHECKED:
        return finding(ID, Weight.FIND_OUT, "not_named", job, place(*named.facts), carrier=carrier)
    if ban == Weight.KNOW:
        return finding(ID, Weight.KNOW, "advised_against", job, place(*banned.facts), carrier=carrier)
    return finding(ID, Weight.CHECKED, "named", job, place(*named.facts), carrier=carrier)


CHECK = Check(
    ID,
    "a mix in oil or water that the label does not allow",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), dilution required and directions for mixing",),
    run,
)
