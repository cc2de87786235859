"""The ordered steps of a treatment with the waits between them, as message ids and values."""

from collections.abc import Mapping
from typing import Any

from stemward.checks import Job
from stemward.handbook import Book
from stemward.label import Situation, resolve

SECONDS_PER_MINUTE = 60


def stages_of(job: Job, book: Book) -> list[dict[str, Any]]:
    """The stages of a job in order, each with the wait before it where there is one; room `say` words them."""
    how = job.way.how
    first = [{"stage": name, **_wait(book, wait)} for name, wait in FIRST.get(job.way.first, ())]
    vine = bool(len(job.stems)) and bool((job.stems.form == "vine").all())
    own = VINE if how == "cut stump" and vine else OIL_STUMP if _oiled(job) else OWN[how]
    if job.way.first == "fresh face":
        own = own[1:]
    stages = [{"stage": name, **_wait(book, wait)} for name, wait in own]
    for stage in stages:
        if stage["stage"] in TIMED:
            stage |= _minutes(job, book)
    return [*first, *stages]


def _oiled(job: Job) -> bool:
    """True for an oil mix on a stump: bark and collar are wetted too, and there is no hurry."""
    if job.way.how != "cut stump" or job.product is None:
        return False
    return job.way.carrier == "oil" or job.product.formulation == "ready-to-use oil"


def _wait(book: Book, wait: str) -> dict[str, Any]:
    return {"wait_days": book.defaults[wait].number} if wait else {}


FIRST: dict[str, tuple[tuple[str, str], ...]] = {
    "cut": (("sprouts.cut", ""), ("sprouts.wait", "sprouts_wait_days")),
    "sprouts": (("sprouts.wait_only", "sprouts_wait_days"),),
    "fresh face": (("cut_stump.refresh", ""),),
}
"""What comes before the herbicide, with the default that gives the wait."""

OWN: dict[str, tuple[tuple[str, str], ...]] = {
    "leave it": (("leave.look_again", ""),),
    "cut only": (("cut_only.cut", ""), ("cut_only.again", ""), ("go_back", "")),
    "girdle": (("girdle.rings", ""), ("girdle.leave", ""), ("go_back", "")),
    "pull": (("pull.pull", ""), ("pull.lay", ""), ("go_back", "")),
    "cut stump": (
        ("cut_stump.cut", ""), ("cut_stump.clear", ""), ("cut_stump.wet", ""), ("mark", ""), ("go_back", ""),
    ),
    "basal bark": (
        ("basal.clear", ""), ("basal.wet", ""), ("mark", ""), ("basal.leave_standing", "stand_after_injection_days"),
        ("go_back", ""),
    ),
    "hack and squirt": (
        ("hack.cut", ""), ("hack.fill", ""), ("mark", ""), ("hack.leave_standing", "stand_after_injection_days"),
        ("go_back", ""),
    ),
    "foliar": (("foliar.wet", ""), ("foliar.keep_off", ""), ("mark", ""), ("go_back", "")),
}  # fmt: skip
OIL_STUMP = (
    ("cut_stump.cut", ""), ("cut_stump.clear", ""), ("cut_stump.oil", ""), ("mark", ""), ("go_back", ""),
)  # fmt: skip
VINE = (("vine.cut", ""), ("vine.dab", ""), ("vine.leave_top", ""), ("mark", ""), ("go_back", ""))
TIMED = ("cut_stump.wet", "vine.dab", "hack.fill")
"""Stages that must follow the cut within minutes."""


def timed_stage(item: Mapping[str, Any]) -> Mapping[str, Any] | None:
    """The stage of a planned treatment that must follow the cut within minutes, with its "minutes"; None without."""
    return next((s for s in item["stages"] if s["stage"] in TIMED and s.get("minutes")), None)


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
