"""Is every stump reached within the label's time from cut to treatment, saw and walk included?"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stemward.checks.case import Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.handbook import Book
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
    thickest = float(job.stems.diameter_cm.max(initial=0.0))
    pace = lot_paces(case.book, job.heights_m, thickest)
    return lot_size(limit_s, pace.walk_s, pace.clear_s, pace.cut_s_cm * thickest, pace.treat_s)


@dataclass(frozen=True, slots=True)
class LotPaces:
    """Times that decide how many stumps a lot holds, seconds. walk_s: over the distance kept from a saw, clear_s: until
    the all-clear, both 0 where nobody saws; cut_s_cm: to cut through a centimetre; treat_s: for one stump."""

    walk_s: float
    clear_s: float
    cut_s_cm: float
    treat_s: float


def lot_paces(book: Book, heights_m: NDArray[np.float64], thickest_cm: float) -> LotPaces:
    """The paces for stems of these heights (NaN where not known), the thickest so thick."""
    value = {key: book.defaults[key].number for key in _KEYS}
    tallest_m = float(np.nanmax(heights_m)) if np.any(~np.isnan(heights_m)) else value["height_unknown_m"]
    sawn = thickest_cm >= value["small_stem_cm"]
    return LotPaces(
        value["tree_lengths"] * tallest_m / value["walk_m_s"] if sawn else 0.0,
        value["felling_clear_min"] * SECONDS if sawn else 0.0,
        value["cut_pace_s_cm"],
        value["treat_s_per_stump"],
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
