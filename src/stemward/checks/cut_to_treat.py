"""Is every stump reached within the label's time from cut to treatment, saw and walk included?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Evidence, Finding, LabelFact, Weight
from stemward.label import Resolved, resolve
from stemward.reckon.lots import lot_size

ID = "cut-to-treat"
SECONDS = 60


def run(case: Case) -> Iterator[Finding]:
    """One finding a job of cut stumps in water: how many stumps may be cut before the first must be treated."""
    for job, product in case.treated:
        if job.way.how != "cut stump" or job.way.carrier == "oil" or product.formulation == "ready-to-use oil":
            continue
        for situation in job.situations(case.tract)[:1]:
            yield _judge(case, job, resolve(product.facts, "longest from cut to treatment", situation))


def _judge(case: Case, job: Job, resolved: Resolved) -> Finding:
    usual = case.book.defaults["cut_to_treat_min"]

    def lot_of(fact: LabelFact | None) -> int:
        said = fact.value if fact is not None and isinstance(fact.value, float) else usual.number * SECONDS
        return stumps_in_lot(case, job, said)

    def judge(fact: LabelFact) -> Weight:
        if lot_of(fact) < 1:
            return by_force(fact)
        return Weight.FIND_OUT if fact.standing == "not found" else Weight.CHECKED

    weight = weigh(resolved, judge)
    lot = min((lot_of(fact) for fact in resolved.facts), default=lot_of(None))
    limits = [fact.value / SECONDS for fact in resolved.facts if isinstance(fact.value, float)]
    values = {"limit_min": min(limits, default=usual.number), "lot": lot}
    seen = place(*resolved.facts) or (Evidence(usual.id, usual.place, usual.source),)
    if weight == Weight.STOP:
        return finding(ID, weight, "too_short", job, seen, values=values)
    if weight == Weight.CHECKED:
        return finding(ID, weight, "lot", job, seen, values=values)
    if resolved.fact is None:
        return open_question(ID, resolved, job, "longest from cut to treatment", lot=lot)
    message = "not_found" if resolved.fact.standing == "not found" else "hurried"
    return finding(ID, weight, message, job, seen, values=values)


def stumps_in_lot(case: Case, job: Job, limit_s: float) -> int:
    """Stumps that may be cut before the saw is shut off and they are treated, for the tallest and thickest stem."""
    value = {key: case.book.defaults[key].number for key in _KEYS}
    heights = job.heights_m
    tallest = float(np.nanmax(heights)) if np.any(~np.isnan(heights)) else value["height_unknown_m"]
    thickest = float(job.stems.diameter_cm.max(initial=0.0))
    sawn = thickest >= value["small_stem_cm"]
    return lot_size(
        limit_s,
        walk_s=value["tree_lengths"] * tallest / value["walk_m_s"] if sawn else 0.0,
        clear_s=value["felling_clear_min"] * SECONDS if sawn else 0.0,
        cut_s=value["cut_pace_s_cm"] * thickest,
        treat_s=value["treat_s_per_stump"],
    )


_KEYS = (
    "height_unknown_m", "small_stem_cm", "tree_lengths", "walk_m_s", "felling_clear_min", "cut_pace_s_cm",
    "treat_s_per_stump",
)  # fmt: skip

CHECK = Check(
    ID,
    "stumps that have dried before the herbicide meets them, and people too near a saw",
    ("plan", "label facts", "people"),
    (
        "29 CFR 1910.266, two tree lengths (OSHA logging rule)",
        "Paces: engineering guess, no source",
    ),
    run,
)
