"""Every way to treat a target, weighed, and the printed rule that suggests one."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from stemward.checks import ALL, Case, Job, run
from stemward.handbook import Book, Species
from stemward.kinds import (
    HERBICIDE_METHODS,
    Choice,
    Finding,
    Patch,
    Product,
    Stems,
    Target,
    Tract,
    Way,
    Weight,
)
from stemward.label import Situation, resolve
from stemward.ledger.revisits import works
from stemward.plan.behind import Behind, behind
from stemward.plan.effort import hours_of, money_of, when_of
from stemward.plan.job import work_job
from stemward.plan.killed import own_of
from stemward.plan.learned import hours_of_days, use_of
from stemward.plan.loads import loads_of
from stemward.plan.sums import Ledger
from stemward.reckon.mix import concentration_for
from stemward.reckon.roots import Level

NOT_NOW = ("season.poor_now", "season.sprouts_not_by_then", "label-season.shut", "oak-wilt.wound")
"""Findings that say: not at this time of year."""

RULE = (
    "nothing_stops",
    "in_season",
    "right_size",
    "fewest_to_find_out",
    "best_evidence",
    "least_reach",
    "on_the_shelf",
    "least_work",
    "least_herbicide",
)
"""The order in which ways are compared; the first difference decides. Room `say` prints it."""

TOOLS = {
    "cut stump": "squirt bottle",
    "hack and squirt": "squirt bottle",
    "basal bark": "backpack",
    "foliar": "backpack",
}
OIL_STUMP_TOOL = "hand trigger"
ROUTES = ("soil-route", "shared-roots", "drift", "splash")
"""Checks whose message is the level of a route by which harm can reach what is kept."""


@dataclass(frozen=True)
class Weighed:
    """A way with what speaks for and against it. reach is a root level, 0 (no route known) to 3 (much)."""

    way: Way
    findings: tuple[Finding, ...]
    evidence_tier: int
    reach: int
    on_shelf: bool
    need_ml: float
    ae_g: float
    behind: Behind
    hours_low: float = 0.0
    hours_high: float = 0.0
    when: str = ""
    money_cents: tuple[int, int] | None = None
    rows: int = 0
    hours_days: int = 0
    """From how many days of one's own the hours are known; 0 for the usual paces."""

    @property
    def stops(self) -> int:
        """How many findings stop this way."""
        return sum(f.weight == Weight.STOP for f in self.findings)

    @property
    def to_find_out(self) -> int:
        """How many findings are to be found out."""
        return sum(f.weight == Weight.FIND_OUT for f in self.findings)

    @property
    def not_now(self) -> bool:
        """True if something says: not at this time of year."""
        return any(f.message in NOT_NOW for f in self.findings)

    @property
    def misfit(self) -> bool:
        """True if most stems are of a size that this way does not do."""
        sized = [dict(f.values).get("count", 0) for f in self.findings if f.check == "method-size" and f.weight]
        return any(2 * int(count) > self.rows for count in sized)

    @property
    def rank(self) -> tuple[Any, ...]:
        """What the rule compares, smaller first; the way's own words settle a full tie."""
        return (
            self.stops > 0,
            self.not_now,
            self.misfit,
            self.to_find_out,
            -self.evidence_tier,
            self.reach,
            not self.on_shelf,
            self.hours_low,
            round(self.ae_g, 6),
            (self.way.how, self.way.first, self.way.product, self.way.partner),
        )


def ways_for(target: Target, patch: Patch, stems: Stems, tract: Tract, book: Book) -> Iterator[Way]:
    """Without herbicide, and each method with each product and each known mixture for which a strength is on record.

    Plants already cut have three routes: a fresh face, oil on face, bark and collar, or waiting for the sprouts.
    """
    if target.state == "cut":
        yield Way("leave it")
        for product in tract.shelf:
            yield from _for_stumps(product, patch, tract, book)
        return
    yield from _without(stems, book)
    for product in tract.shelf:
        for how in HERBICIDE_METHODS:
            way = way_with(how, product, patch, tract, book)
            if way is not None:
                yield way
                if how == "foliar":
                    yield replace(way, first="cut")
    for product in tract.shelf:
        for partner in tract.shelf:
            yield from _mixtures(product, partner, patch, tract, book)


def _without(stems: Stems, book: Book) -> Iterator[Way]:
    """Ways without herbicide; girdling for trees and pulling for plants of a size for it, by the middle stem."""
    yield Way("leave it")
    yield Way("cut only")
    middle_cm = float(np.median(stems.diameter_cm)) if len(stems) else 0.0
    if middle_cm >= book.defaults["girdle_least_cm"].number:
        yield Way("girdle")
    if middle_cm <= book.defaults["pull_most_cm"].number:
        yield Way("pull")


def _for_stumps(product: Product, patch: Patch, tract: Tract, book: Book) -> Iterator[Way]:
    stump = way_with("cut stump", product, patch, tract, book)
    if stump is not None:
        yield stump if stump.carrier == "oil" else replace(stump, first="fresh face")
    leaves = way_with("foliar", product, patch, tract, book)
    if leaves is not None:
        yield replace(leaves, first="sprouts")


def _mixtures(product: Product, partner: Product, patch: Patch, tract: Tract, book: Book) -> Iterator[Way]:
    """Ways with two products for which a mixture is on record."""
    if len(product.contents) != 1 or len(partner.contents) != 1:
        return
    for mixture in book.mixtures:
        one, other = product.contents[0], partner.contents[0]
        if not mixture.fits(one.ingredient, one.form, other.ingredient, other.form):
            continue
        share = concentration_for(mixture.ae_g_l, one.strength_ae_g_l)
        partner_share = concentration_for(mixture.partner_ae_g_l, other.strength_ae_g_l)
        if share + partner_share < 1:
            yield Way(
                mixture.method,  # type: ignore[arg-type]
                product.id, _limited(share, mixture.method, mixture.carrier, product, patch, tract), mixture.carrier,
                TOOLS[mixture.method], None, "", partner.id,
                _limited(partner_share, mixture.method, mixture.carrier, partner, patch, tract),
            )  # fmt: skip


def _limited(share: float, how: str, carrier: str, product: Product, patch: Patch, tract: Tract) -> float:
    """A share, never above what the label was read to say for the places of the patch."""
    for site in patch.places:
        limit = resolve(
            product.facts, "strongest mix", Situation(method=how, carrier=carrier, site=site, state=tract.state)
        ).fact
        if limit is not None and isinstance(limit.value, float):
            share = min(share, limit.value)
    return share


def way_with(how: str, product: Product, patch: Patch, tract: Tract, book: Book) -> Way | None:
    """The usual way with this product: the strength on record, never above what the label was read to say.

    None if the handbook has no strength for the ingredient, form and method, or it is not sold in that form.
    """
    if product.formulation.startswith("ready-to-use"):
        oily = product.formulation == "ready-to-use oil"
        fits = how in (("cut stump", "basal bark") if oily else ("cut stump", "hack and squirt", "foliar"))
        return Way(how, product.id, 1.0, "undiluted", TOOLS[how]) if fits else None  # type: ignore[arg-type]
    if len(product.contents) != 1:
        return None
    content = product.contents[0]
    strength = book.strength(content.ingredient, content.form, how, content.strength_ae_g_l)
    if strength is None:
        return None
    carrier = strength.carrier if strength.usual_frac < 1.0 else "undiluted"
    share = _limited(strength.usual_frac, how, carrier, product, patch, tract)
    return Way(how, product.id, share, carrier, tool_for(how, carrier))  # type: ignore[arg-type]


def tool_for(how: str, carrier: str) -> str:
    """The tool usually taken for a method and carrier."""
    return OIL_STUMP_TOOL if (how, carrier) == ("cut stump", "oil") else TOOLS[how]


def chosen_way(choice: Choice, patch: Patch, tract: Tract, book: Book) -> Way:
    """The way a person chose, with what was not said filled in from the usual way."""
    if not choice.product:
        return Way(choice.how)  # type: ignore[arg-type]
    product = tract.product(choice.product)
    usual = way_with(choice.how, product, patch, tract, book)
    share = choice.concentration_frac
    if share is None and usual is not None:
        share = usual.concentration_frac
    carrier = choice.carrier or (usual.carrier if usual else "water")
    if share is not None and share >= 1.0 and not choice.carrier:
        carrier = "undiluted"
    tool = choice.tool or (usual.tool if usual else tool_for(choice.how, carrier))
    return Way(
        choice.how,  # type: ignore[arg-type]
        choice.product, share, carrier, tool, choice.ring_cm,
        choice.first,  # type: ignore[arg-type]
        choice.partner, choice.partner_frac,
    )  # fmt: skip


def weigh_way(
    way: Way,
    target: Target,
    patch: Patch,
    species: Species,
    stems: Stems,
    tract: Tract,
    book: Book,
    as_of: datetime.date,
    shared: dict[Any, Any],
) -> Weighed:
    """Work out one way on its own, run every check on it, and note what the rule compares."""
    sums = Ledger(shared=shared, written=False)
    product, partner = products_of(way, tract)
    use = sums.once(("use", way.how), lambda: use_of(tract, way.how))
    job = work_job("w", target, patch, species, way, product, stems, book, sums, partner, use)
    case = Case(tract, as_of, book, (job,), loads_of((job,), tract, book, as_of, sums))
    findings = run(case, ALL)
    seen = behind(job, book, *own_stems(way, target, tract, book, shared), tract.rates)
    days = sums.once(("hours", way.how), lambda: hours_of_days(tract, way.how))
    hours = hours_of(job, book, days)
    return Weighed(
        way,
        findings,
        seen.tier,
        max((_level(f) for f in findings), default=0),
        _on_shelf(job),
        float(job.mix_ml.sum()),
        sum(float(g.sum()) for g in job.ae_g.values()),
        seen,
        *hours,
        when_of(job, book, as_of),
        money_of(job, hours, tract, book),
        len(stems),
        days.count if days and any(hours) else 0,
    )


def own_stems(
    way: Way, target: Target, tract: Tract, book: Book, shared: dict[Any, Any]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Dead and seen of one's own stems by work, for a way on a plant; looks are folded once."""
    if "works" not in shared:
        shared["works"] = works(tract, book)
    return own_of(shared["works"], target.species, way, book.defaults["strength_near_factor"].number)


def products_of(way: Way, tract: Tract) -> tuple[Product | None, Product | None]:
    """The product of a way and its partner, None where there is none."""
    return (
        tract.product(way.product) if way.product else None,
        tract.product(way.partner) if way.partner else None,
    )


def suggest(weighed: list[Weighed], species: Species) -> Weighed:
    """The way the rule suggests: among treating ways, or cut only where the plant does not sprout.

    Where every treating way is stopped it is "leave it", which is always there.
    """
    by_how = {w.way.how: w for w in weighed if not w.way.product}
    if species.stump_sprouts == "no" and species.root_suckers != "yes" and "cut only" in by_how:
        return by_how["cut only"]
    treating = [w for w in weighed if w.way.product and not w.stops]
    return min(treating, key=lambda w: w.rank) if treating else by_how["leave it"]


def _level(finding: Finding) -> int:
    if finding.check not in ROUTES:
        return 0
    name = finding.message.partition(".")[2].upper()
    return int(Level[name]) if name in Level.__members__ else 0


def _on_shelf(job: Job) -> bool:
    total_ml = float(job.mix_ml.sum())
    return all(_left_ml(product) >= total_ml * (view.way.concentration_frac or 0.0) for view, product in job.by_product)


def _left_ml(product: Product) -> float:
    return sum((c.left_ul or 0) for c in product.containers) / 1000
