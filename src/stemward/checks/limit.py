"""Holding a plan's figure against a label's figure: the shape that several checks share."""

from collections.abc import Callable, Mapping

from stemward.checks.case import Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Finding, LabelFact, Weight
from stemward.label import Resolved


def held(
    check: str,
    job: Job,
    resolved: Resolved,
    fact_kind: str,
    broken: Callable[[float], bool],
    values: Mapping[str, str | float | int],
    limit: str = "",
) -> Finding:
    """One finding: over, within, no_limit, not_found, advised, or open.

    broken: True if the label's figure is not kept. limit: name with unit under which the label's figure is shown.
    """

    def judge(fact: LabelFact) -> Weight:
        if fact.standing == "not found":
            return Weight.FIND_OUT
        if fact.standing != "says" or not isinstance(fact.value, float):
            return Weight.CHECKED
        return by_force(fact) if broken(fact.value) else Weight.CHECKED

    weight = weigh(resolved, judge)
    figures = [f.value for f in resolved.facts if isinstance(f.value, float)]
    said = dict(values)
    if limit and figures:
        said[limit] = min(figures, key=lambda figure: (not broken(figure), figure))
    seen = place(*resolved.facts)
    if weight == Weight.STOP:
        return finding(check, weight, "over", job, seen, values=said)
    if weight == Weight.CHECKED:
        return finding(check, weight, "within" if figures else "no_limit", job, seen, values=said)
    if resolved.fact is None:
        return open_question(check, resolved, job, fact_kind, values=said)
    message = "not_found" if resolved.fact.standing == "not found" else "advised"
    return finding(check, weight, message, job, seen, values=said)
