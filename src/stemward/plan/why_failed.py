"""Why plants came back: what the record shows for each usual reason, what it speaks against, what to find out."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from stemward.handbook import Book
from stemward.kinds import Cited, Entry, Tract
from stemward.ledger.in_force import in_force
from stemward.ledger.revisits import Seen, Work
from stemward.plan.apart import marks_of

Says = Literal["for", "against", "find out"]

TOO_LITTLE_FRAC = 0.7
"""Under this share of the mix that was reckoned, rings may have gone dry: engineering guess, no source."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One usual reason. values: the figures behind it, named with their unit. cited: who says so; None for the record
    alone."""

    id: str
    says: Says
    values: tuple[tuple[str, float | str], ...] = ()
    cited: Cited | None = None


@dataclass(frozen=True, eq=False)
class _Case:
    work: Work
    seen: Seen
    entries: tuple[Entry, ...]
    marks: tuple[Entry, ...]
    tract: Tract
    book: Book


def why_failed(work: Work, tract: Tract, book: Book) -> tuple[Reason, ...]:
    """Every usual reason for a work of which plants came back at the last look, early looks included; () where none
    came back. What the record shows comes first, then what is to be found out, then what it speaks against."""
    seen = next((one for one in reversed(work.seen) if one.judged), None)
    if seen is None or not seen.resprouting:
        return ()
    held = in_force(tract.entries)
    ids = set(work.entries)
    entries = tuple(e for e in held if e.id in ids)
    case = _Case(work, seen, entries, marks_of(work, tract), tract, book)
    found = [reason for ask in REASONS if (reason := ask(case)) is not None]
    return tuple(sorted(found, key=lambda reason: ORDER.index(reason.says)))


ORDER: tuple[Says, ...] = ("for", "find out", "against")


def _strength(case: _Case) -> Reason | None:
    """Weaker than any strength on record for this ingredient, form and method?"""
    work = case.work
    product = next((p for p in case.tract.shelf if p.id == work.product), None)
    if not work.product:
        return None
    if product is None or not work.concentration_frac or not product.contents:
        return Reason("strength", "find out")
    content = product.contents[0]
    known = case.book.strength(content.ingredient, content.form, work.method, content.strength_ae_g_l)
    if known is None:
        return Reason("strength", "find out", (("used_frac", work.concentration_frac),))
    values = (("used_frac", work.concentration_frac), ("low_frac", known.low_frac), ("high_frac", known.high_frac))
    weak = work.concentration_frac < known.low_frac - 1e-9
    return Reason("strength", "for" if weak else "against", values, known.cited)


def _minutes(case: _Case) -> Reason | None:
    """Reached later than the label's time from the cut?"""
    if case.work.method != "cut stump":
        return None
    timed = [e.body for e in case.marks if e.body.get("waited_s") is not None and e.body.get("limit_s")]
    if not timed:
        return Reason("minutes", "find out")
    late = [body for body in timed if body["waited_s"] > body["limit_s"]]
    longest_s = max(float(body["waited_s"]) for body in timed)
    count = sum(sum(body["rows"].values()) for body in (late or timed))
    values = (("count", float(count)), ("longest_s", longest_s), ("limit_s", float(timed[0]["limit_s"])))
    return Reason("minutes", "for" if late else "against", values)


def _rain(case: _Case) -> Reason | None:
    """Rain too soon after it? No record holds the rain that fell, so somebody has to look it up."""
    if case.work.method not in ("cut stump", "basal bark", "hack and squirt", "foliar"):
        return None
    until = max((str(e.body["until"]) for e in case.entries if e.body.get("until")), default="")
    return Reason("rain", "find out", (("until", until),) if until else ())


def _month(case: _Case) -> Reason | None:
    """A poor time of year for this way on this plant?"""
    seasons = case.book.seasons(case.work.species, case.work.method)
    if not seasons:
        return Reason("month", "find out")
    on = [season for season in seasons if season.holds((case.work.day.month, case.work.day.day))]
    poor = next((season for season in on if not season.best), None)
    if poor:
        return Reason("month", "for", (("why", poor.why),), poor.cited)
    best = next((season for season in on if season.best), None)
    return Reason("month", "against" if best else "find out", (), best.cited if best else None)


def _ring(case: _Case) -> Reason | None:
    """So little mix on so many plants that rings or bark can have stayed dry?"""
    if not case.work.product:
        return None
    pairs = [(e.body["mix_ml"], e.body["reckoned_ml"]) for e in case.entries
             if e.body.get("mix_ml") and e.body.get("reckoned_ml")]  # fmt: skip
    if not pairs:
        return Reason("ring", "find out")
    share = sum(a for a, _ in pairs) / sum(b for _, b in pairs)
    values = (("used_frac", share), ("mix_ml", float(sum(a for a, _ in pairs))))
    return Reason("ring", "for" if share < TOO_LITTLE_FRAC else "against", values)


def _suckers(case: _Case) -> Reason | None:
    """Does it sucker from roots that the treatment did not reach?"""
    plant = case.book.species.get(case.work.species)
    if not case.work.suckers:
        return Reason("suckers", "against" if plant is not None and plant.root_suckers == "no" else "find out")
    return Reason("suckers", "for", (("sprouts", case.seen.sprouts or 0.0),))


def _missed(case: _Case) -> Reason | None:
    """Stems that nobody treated, and that look as if they came back?"""
    if case.seen.untreated:
        return Reason("missed", "for", (("count", float(case.seen.untreated)),))
    counted = next((e for e in case.tract.entries if e.id == case.seen.entry), None)
    told = counted is not None and "untreated" in counted.body
    return Reason("missed", "against" if told else "find out")


def _ingredient(case: _Case) -> Reason | None:
    """An ingredient that is weak on this plant this way?"""
    if not case.work.ingredients:
        return None
    product = next((p for p in case.tract.shelf if p.id == case.work.product), None)
    form = product.contents[0].form if product and product.contents else ""
    work = case.work
    for name in work.ingredients:
        weak = case.book.weak(work.species, work.method, name, form)
        if weak is not None and weak.value == "conflict":
            return Reason("disputed", "find out", (("ingredient", name),), weak)
        if weak is not None:
            return Reason("ingredient", "for", (("ingredient", name),), weak)
    tier = max(case.book.evidence_tier(work.species, work.method, name, form) for name in work.ingredients)
    values = (("ingredient", ", ".join(work.ingredients)),)
    return Reason("ingredient", "against" if tier >= 2 else "find out", values)


REASONS: tuple[Callable[[_Case], Reason | None], ...] = (
    _strength, _minutes, _rain, _month, _ring, _suckers, _missed, _ingredient,
)  # fmt: skip
