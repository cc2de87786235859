"""Does the label name this kind of place?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "site"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and kind of place; a place not on the label is a stop, without exception."""
    for job, product in case.treated:
        if not job.sites:
            yield finding(ID, Weight.FIND_OUT, "place_unknown", job)
        for situation in job.situations(case.tract):
            if situation.site:
                yield _judge(job, product, situation)


def _judge(job: Job, product: Product, situation: Situation) -> Finding:
    site = situation.site
    forbidden = resolve(product.facts, "site forbidden", situation, of=site)
    ban = weigh(forbidden, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED)
    if ban == Weight.STOP:
        return finding(ID, Weight.STOP, "forbidden", job, place(*forbidden.facts), site=site)
    named = resolve(product.facts, "site", situation, of=site)
    if named.outcome in ("unread", "proposed"):
        whole = resolve(product.facts, "all sites listed", situation)
        if whole.fact is not None and whole.fact.standing == "says" and whole.fact.value == "yes":
            return finding(ID, Weight.STOP, "not_named", job, place(whole.fact), site=site)
        return open_question(ID, named, job, "site", site=site)
    weight = weigh(named, lambda f: Weight.CHECKED if f.standing == "says" else Weight.STOP)
    if weight == Weight.STOP:
        return finding(ID, Weight.STOP, "not_named", job, place(*named.facts), site=site)
    if weight == Weight.FIND_OUT:
        return open_question(ID, named, job, "site", site=site)
    if ban != Weight.CHECKED:
        if forbidden.outcome == "decided" and ban == Weight.KNOW:
            return finding(ID, Weight.KNOW, "advised_against", job, place(*forbidden.facts), site=site)
        return open_question(ID, forbidden, job, "site forbidden", site=site)
    return finding(ID, Weight.CHECKED, "named", job, place(*named.facts), site=site)


CHECK = Check(
    ID,
    "places for which the label was not written",
    ("plan", "label facts", "site facts"),
    ("40 CFR 156.10(i)(2), sites of application", "FIFRA 12(a)(2)(G), 7 U.S.C. 136j"),
    run,
)
