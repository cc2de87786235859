"""Are stems far enough from water and wells for the label?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.checks.near import nearest_m
from stemward.kinds import Finding, LabelFact, Product, Spared, Weight
from stemward.label import Situation, resolve

ID = "water"
KINDS = (("water", "distance to water"), ("well", "distance to wells"))
LOOK_M = 150.0
"""Farther water is not spoken of; the widest buffer among the handbook's rules is under 100 m (streamside
zones by state, Water Air Soil Pollut. Focus 2004)."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and water or well within 150 m."""
    for job, product in case.treated:
        for kind, fact_kind in KINDS:
            away = nearest_m(job, case.tract.spared)
            nearest = [
                (float(away[n]), s) for n, s in enumerate(case.tract.spared) if s.kind == kind and away[n] <= LOOK_M
            ]
            if nearest:
                away_m, spared = min(nearest, key=lambda pair: (pair[0], pair[1].id))
                for situation in job.situations(case.tract):
                    yield _judge(job, product, situation, fact_kind, away_m, spared)


def _judge(job: Job, product: Product, situation: Situation, fact_kind: str, away_m: float, spared: Spared) -> Finding:
    resolved = resolve(product.facts, fact_kind, situation)

    def judge(fact: LabelFact) -> Weight:
        if fact.standing == "not found":
            return Weight.FIND_OUT
        if fact.standing != "says" or not isinstance(fact.value, float):
            return Weight.CHECKED
        return by_force(fact) if away_m * 100 < fact.value else Weight.CHECKED

    weight = weigh(resolved, judge)
    limits = [f.value for f in resolved.facts if isinstance(f.value, float)]
    values: dict[str, str | float] = {"distance_m": away_m, "spared": spared.id, "kind": spared.kind}
    if limits:
        values["limit_m"] = max(limits) / 100
    seen = place(*resolved.facts)
    if weight == Weight.STOP:
        return finding(ID, weight, "too_near", job, seen, values=values)
    if weight == Weight.CHECKED:
        return finding(ID, weight, "far_enough" if limits else "no_limit", job, seen, values=values)
    if resolved.fact is not None:
        message = "not_found" if resolved.fact.standing == "not found" else "nearer_than_advised"
        return finding(ID, weight, message, job, seen, fact=fact_kind, values=values)
    return open_question(ID, resolved, job, fact_kind, values=values)


CHECK = Check(
    ID,
    "streams, springs, ponds and wells",
    ("plan", "label facts", "what is kept from harm"),
    ("40 CFR 156.10(i)(2), restrictions", "California 3 CCR 6609 (wells, mixing 100 ft)"),
    run,
)
