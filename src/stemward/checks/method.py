"""Does the label name this way of treating, or at least not prohibit it?"""

from collections.abc import Iterator

from stemward.checks.case import (
    FIFRA_METHOD,
    Case,
    Check,
    Job,
    by_force,
    finding,
    open_question,
    place,
    weigh,
)
from stemward.kinds import Evidence, Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "method"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and kind of place."""
    for job, product in case.treated:
        for situation in job.situations(case.tract):
            yield _judge(case, job, product, situation)


def _judge(case: Case, job: Job, product: Product, situation: Situation) -> Finding:
    how = job.way.how
    banned = resolve(product.facts, "method forbidden", situation, of=how)
    ban = weigh(banned, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED)
    if ban == Weight.STOP:
        return finding(ID, Weight.STOP, "forbidden", job, place(*banned.facts), how=how)
    named = resolve(product.facts, "method", situation, of=how)
    if named.outcome in ("unread", "proposed"):
        return open_question(ID, named, job, "method", how=how)
    weight = weigh(named, lambda f: Weight.CHECKED if f.standing == "says" else Weight.STOP)
    if weight == Weight.STOP:
        return _not_named(case, job, product, situation, ban)
    if weight == Weight.FIND_OUT:
        return open_question(ID, named, job, "method", how=how)
    if ban != Weight.CHECKED:
        return open_question(ID, banned, job, "method forbidden", how=how)
    return finding(ID, Weight.CHECKED, "named", job, place(*named.facts), how=how)


def _not_named(case: Case, job: Job, product: Product, situation: Situation, ban: Weight) -> Finding:
    how = job.way.how
    only = resolve(product.facts, "only listed methods", situation)
    limits = weigh(only, lambda f: Weight.STOP if f.value == "yes" else Weight.CHECKED)
    if limits == Weight.STOP:
        return finding(ID, Weight.STOP, "only_listed", job, place(*only.facts), how=how)
    if limits != Weight.CHECKED or ban != Weight.CHECKED:
        return open_question(ID, only, job, "only listed methods", how=how)
    if case.tract.state in case.book.strict_states:
        return finding(ID, Weight.FIND_OUT, "strict_state", job, how=how, state=case.tract.state)
    strongest = resolve(product.facts, "strongest mix", situation)
    if strongest.fact is None or strongest.fact.standing == "not found":
        return finding(ID, Weight.FIND_OUT, "no_strength_fits", job, how=how)
    clause = Evidence("clause", "", FIFRA_METHOD)
    return finding(ID, Weight.KNOW, "not_named", job, [clause, *place(*only.facts)], how=how)


CHECK = Check(
    ID,
    "a way of treating that the label prohibits or keeps to its own list",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), method of application", FIFRA_METHOD),
    run,
)
