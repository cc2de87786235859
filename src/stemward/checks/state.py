"""Is the product registered in the state, and does its label leave the state out?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Evidence, Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "state"
LOOK_HOLDS_DAYS = 365
"""Registrations run by the year in most states (common practice, no source); an older look is renewed."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a product: not registered is a stop, not looked up is to be found out."""
    for job, product in case.treated:
        yield _judge(case, job, product)


def _judge(case: Case, job: Job, product: Product) -> Finding:
    state = case.tract.state
    if not state:
        return finding(ID, Weight.FIND_OUT, "state_unknown", job)
    looks = [r for r in product.registrations if r.state == state]
    if not looks:
        return finding(ID, Weight.FIND_OUT, "not_looked_up", job, state=state)
    look = max(looks, key=lambda r: r.looked_on)
    seen = Evidence("state list", look.looked_on.isoformat(), f"looked up by {look.looked_by}")
    if not look.registered:
        return finding(ID, Weight.STOP, "not_registered", job, [seen], state=state)
    situation = Situation(method=job.way.how, carrier=job.way.carrier, state=state)
    excluded = resolve(product.facts, "state excluded", situation, of=state)
    weight = weigh(excluded, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED)
    if weight == Weight.STOP:
        return finding(ID, Weight.STOP, "excluded", job, place(*excluded.facts), state=state)
    only = resolve(product.facts, "state only", situation)
    named = {f.value for f in only.facts if f.reading == "read" and f.standing == "says"}
    if named and state not in named:
        return finding(ID, Weight.STOP, "not_among_states", job, place(*only.facts), state=state)
    if weight != Weight.CHECKED:
        return open_question(ID, excluded, job, "state excluded", state=state)
    if only.outcome in ("unread", "proposed"):
        return open_question(ID, only, job, "state only", state=state)
    if (case.as_of - look.looked_on).days > LOOK_HOLDS_DAYS:
        return finding(ID, Weight.FIND_OUT, "look_is_old", job, [seen], state=state, on=look.looked_on.isoformat())
    return finding(ID, Weight.CHECKED, "registered", job, [seen, *place(*excluded.facts)], state=state)


CHECK = Check(
    ID,
    "a product used where the state or its label does not let it be used",
    ("plan", "label facts", "state list"),
    ("FIFRA 24(a), 7 U.S.C. 136v: states regulate sale and use", "40 CFR 156.10(i), directions for use"),
    run,
)
