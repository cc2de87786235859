"""What a check may look at, and the few moves that all checks share."""

import datetime
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import islice
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stemward.handbook import Book, Species
from stemward.kinds import (
    Content,
    Evidence,
    Finding,
    LabelFact,
    Patch,
    Product,
    Stems,
    Target,
    Tract,
    Way,
    Weight,
    Where,
)
from stemward.label import Resolved, Situation
from stemward.reckon.densest import Densest

FIFRA_LESS = "FIFRA 2(ee), less than the label's dose, strength or frequency (7 U.S.C. 136(ee))"
FIFRA_PLANT = "FIFRA 2(ee), a plant not named on a place that is named (7 U.S.C. 136(ee))"
FIFRA_METHOD = "FIFRA 2(ee), a method that is not prohibited (7 U.S.C. 136(ee))"


Values = Mapping[str, str | float | int]


@dataclass(frozen=True, eq=False)
class Job:
    """One target with one way, and the sums that go with it.

    mix_ml: finished mix per row of `stems`. ae_g: acid equivalent per row, by ingredient. Both length n.
    partner: a second product in the same mix.
    """

    id: str
    target: Target
    patch: Patch
    species: Species
    way: Way
    product: Product | None
    stems: Stems
    mix_ml: NDArray[np.float64]
    ae_g: dict[str, NDArray[np.float64]]
    partner: Product | None = None

    @cached_property
    def by_product(self) -> tuple[tuple["Job", Product], ...]:
        """The job as each of its products sees it, so that every rule is held against every label."""
        if self.product is None:
            return ()
        if self.partner is None:
            return ((self, self.product),)
        way = replace(self.way, product=self.partner.id, concentration_frac=self.way.partner_frac)
        return ((self, self.product), (replace(self, way=way, product=self.partner), self.partner))

    @cached_property
    def heights_m(self) -> NDArray[np.float64]:
        """Heights of the stems as they stand when treated, NaN where nobody wrote one down."""
        return np.where(self.stems.height_m > 0, self.stems.height_m, np.nan)

    @cached_property
    def sites(self) -> tuple[str, ...]:
        """Kinds of place the label has to name: the patch's own, and those its answers add."""
        added = {"right_of_way": "right-of-way", "standing_water_today": "wet", "seasonally_wet": "wet"}
        places = list(self.patch.places)
        places += [site for question, site in added.items() if self.patch.answer(question) == "yes"]
        return tuple(dict.fromkeys(places))

    def situations(self, tract: Tract, on: datetime.date | None = None, **more: Any) -> tuple[Situation, ...]:
        """The situation of this job on each kind of place, for resolving label facts. on: the day of the work."""
        if on is not None:
            more["date"] = (on.month, on.day)
        sizes = self.stems.diameter_cm
        span = (float(sizes.min()), float(sizes.max())) if len(sizes) else None
        return tuple(
            Situation(
                method=self.way.how,
                carrier=self.way.carrier,
                site=site,
                state=tract.state,
                plant=self.target.species,
                stem_cm=span,
                **more,
            )
            for site in self.sites or ("",)
        )


@dataclass(frozen=True, slots=True)
class Load:
    """How much of one ingredient lies on the ground, over this plan and this year's records.

    planned_g_m2: this plan's own load in the cluster that carries most of it. greatest_g_m2: with the records, in
    the cluster that carries most per area, which decides. mean_g_m2: over all treated clusters together, shown
    beside it. products: those in the plan that hold the ingredient. densest: the densest acre, None where it was
    not worked out because the way is only being weighed.
    """

    ingredient: str
    greatest_g_m2: float
    mean_g_m2: float
    cluster_area_m2: float
    cluster_stems: int
    recorded_g: float
    products: tuple[str, ...]
    planned_g_m2: float = 0.0
    densest: Densest | None = None


@dataclass(frozen=True, slots=True)
class Pour:
    """How one batch came out: the job it is for, why it cannot be measured (or empty), a measure that would do."""

    job: str
    refused: str
    would_do: str
    dyed: bool


@dataclass(frozen=True, eq=False)
class Case:
    """All that the checks look at: land, day, handbook, every job, and the load by ingredient."""

    tract: Tract
    as_of: datetime.date
    book: Book
    jobs: tuple[Job, ...]
    loads: tuple[Load, ...] = ()
    pours: tuple[Pour, ...] = ()

    @property
    def treated(self) -> Iterator[tuple[Job, Product]]:
        """The jobs that use a product, with it; a mix of two products comes once for each."""
        return (pair for job in self.jobs for pair in job.by_product)


@dataclass(frozen=True, slots=True)
class Check:
    """A registered check. protects, needs: words for the generated page. sources: who says so."""

    id: str
    protects: str
    needs: tuple[str, ...]
    sources: tuple[str, ...]
    run: Callable[[Case], Iterable[Finding]]


def finding(
    check: str,
    weight: Weight,
    message: str,
    job: Job | None = None,
    evidence: Iterable[Evidence] = (),
    stems: Iterable[str] = (),
    values: Values | None = None,
    **more: str | float | int,
) -> Finding:
    """A finding of this check about this job; message ids are "check.what"."""
    said = {**(values or {}), **more}
    where = Where()
    if job is not None:
        product = job.product.id if job.product else ""
        where = Where(job.patch.id, job.target.species, product, tuple(str(s) for s in islice(stems, 20)))
    return Finding(check, weight, f"{check}.{message}", tuple(sorted(said.items())), where, tuple(evidence))


def place(*facts: LabelFact) -> tuple[Evidence, ...]:
    """Where on the label a finding stands."""
    return tuple(
        Evidence(fact.kind, fact.page, f"label, read by {fact.read_by}" if fact.read_by else "label") for fact in facts
    )


def open_question(
    check: str, resolved: Resolved, job: Job, fact_kind: str, values: Values | None = None, **more: str | float
) -> Finding:
    """The finding for a matter that nobody has read, that is only proposed, or on which scopes disagree."""
    return finding(
        check, Weight.FIND_OUT, resolved.outcome, job, place(*resolved.facts), (), values, fact=fact_kind, **more
    )


def weigh(resolved: Resolved, judge: Callable[[LabelFact], Weight]) -> Weight:
    """The weight of a resolved matter: what its facts say, and find out where they disagree.

    Facts of scopes that do not nest are each judged; if all forbid it is a stop, if they differ it is to be
    found out, so that another restriction never makes the answer milder.
    """
    if resolved.outcome in ("unread", "proposed"):
        return Weight.FIND_OUT
    weights = {judge(fact) for fact in resolved.facts}
    if weights == {Weight.STOP}:
        return Weight.STOP
    return max(weights) if resolved.outcome == "decided" else Weight.FIND_OUT


def by_force(fact: LabelFact) -> Weight:
    """How heavy a broken rule is: must is a stop, avoid is to be found out, should is something to know."""
    return {"must": Weight.STOP, "avoid": Weight.FIND_OUT, "should": Weight.KNOW}[fact.force]


def form_of(book: Book, content: Content) -> str:
    """The form of a product's ingredient as the handbook names it, empty if it knows none."""
    known = book.ingredient(content.ingredient, content.form)
    return known.form if known else ""


def worst(weights: Iterable[Weight]) -> Weight:
    """The heaviest of some weights; checked if there are none."""
    return max(weights, default=Weight.CHECKED)
