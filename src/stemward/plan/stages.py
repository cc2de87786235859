"""The ordered steps of a treatment with the waits between them, as message ids and values."""

from typing import Any

from stemward.checks import Job
from stemward.handbook import Book
from stemward.label import Situation, resolve

SECONDS_PER_MINUTE = 60


def stages_of(job: Job, book: Book) -> list[dict[str, Any]]:
    """The stages of a job in order; room `say` words them."""
    how = job.way.how
    if how == "leave it":
        return [{"stage": "leave.look_again"}]
    if how == "cut only":
        return [{"stage": "cut_only.cut"}, {"stage": "cut_only.again"}, {"stage": "go_back"}]
    if how == "cut stump":
        return [
            {"stage": "cut_stump.cut"},
            {"stage": "cut_stump.clear"},
            {"stage": "cut_stump.wet", **_minutes(job, book)},
            {"stage": "mark"},
            {"stage": "go_back"},
        ]
    wait_days = book.defaults["stand_after_injection_days"].number
    return [
        {"stage": "hack.cut"},
        {"stage": "hack.fill"},
        {"stage": "mark"},
        {"stage": "hack.leave_standing", "wait_days": wait_days},
        {"stage": "go_back"},
    ]


def _minutes(job: Job, book: Book) -> dict[str, Any]:
    """How soon after the cut: the label's figure once read, else common practice, said to be so."""
    if job.product is None:
        return {}
    situation = Situation(
        method=job.way.how,
        carrier=job.way.carrier,
        site=job.sites[0] if job.sites else "",
        plant=job.target.species,
    )
    fact = resolve(job.product.facts, "longest from cut to treatment", situation).fact
    usual = book.defaults["cut_to_treat_min"]
    if fact is not None and isinstance(fact.value, float):
        return {"minutes": fact.value / SECONDS_PER_MINUTE, "from": "label", "page": fact.page}
    return {"minutes": usual.number, "from": "practice", "page": ""}
