"""Does the label name the plant, or let plants be treated that it does not name?"""

from collections.abc import Iterator

from stemward.checks.case import FIFRA_PLANT, Case, Check, Job, finding, open_question, place, weigh
from stemward.kinds import Evidence, Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "plant"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and kind of place."""
    for job, product in case.treated:
        for situation in job.situations(case.tract):
            yield _judge(case, job, product, situation)


def _judge(case: Case, job: Job, product: Product, situation: Situation) -> Finding:
    plant = job.target.species
    named = resolve(product.facts, "plant", situation, of=plant)
    if named.outcome == "decided" and named.facts[0].standing == "says":
        return finding(ID, Weight.CHECKED, "named", job, place(*named.facts), plant=plant)
    only = resolve(product.facts, "only listed plants", situation)
    limits = weigh(only, lambda f: Weight.STOP if f.value == "yes" else Weight.CHECKED)
    if limits == Weight.STOP:
        if named.outcome == "decided":
            return finding(ID, Weight.STOP, "only_listed", job, place(*only.facts, *named.facts), plant=plant)
        return open_question(ID, named, job, "plant", plant=plant)
    if limits != Weight.CHECKED:
        return open_question(ID, only, job, "only listed plants", plant=plant)
    if case.tract.state in case.book.strict_states:
        return finding(ID, Weight.FIND_OUT, "strict_state", job, plant=plant, state=case.tract.state)
    clause = Evidence("clause", "", FIFRA_PLANT)
    message = "not_named" if named.outcome == "decided" else "not_looked_for"
    return finding(ID, Weight.KNOW, message, job, [clause, *place(*only.facts)], plant=plant)


CHECK = Check(
    ID,
    "a label that is limited to the plants it names",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), target pests", FIFRA_PLANT),
    run,
)
