"""Every way to treat a target, weighed, and the printed rule that suggests one."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from stemward.checks import ALL, Case, Job, run
from stemward.checks.case import form_of
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
from stemward.plan.job import work_job
from stemward.plan.loads import loads_of
from stemward.plan.sums import Ledger
from stemward.reckon.roots import Level

RULE = (
    "nothing_stops",
    "fewest_to_find_out",
    "best_evidence",
    "least_reach",
    "on_the_shelf",
    "least_herbicide",
)
"""The order in which ways are compared; the first difference decides. Room `say` prints it."""

WITHOUT = (Way("leave it"), Way("cut only"))


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

    @property
    def stops(self) -> int:
        """How many findings stop this way."""
        return sum(f.weight == Weight.STOP for f in self.findings)

    @property
    def to_find_out(self) -> int:
        """How many findings are to be found out."""
        return sum(f.weight == Weight.FIND_OUT for f in self.findings)

    @property
    def rank(self) -> tuple[Any, ...]:
        """What the rule compares, smaller first; the way's own words settle a full tie."""
        return (
            self.stops > 0,
            self.to_find_out,
            -self.evidence_tier,
            self.reach,
            not self.on_shelf,
            round(self.ae_g, 6),
            (self.way.how, self.way.product),
        )


def ways_for(patch: Patch, tract: Tract, book: Book) -> Iterator[Way]:
    """Leave it, cut only, and each method with each product for which a strength is on record."""
    yield from WITHOUT
    for product in tract.shelf:
        for how in HERBICIDE_METHODS:
            way = way_with(how, product, patch, tract, book)
            if way is not None:
                yield way


def way_with(how: str, product: Product, patch: Patch, tract: Tract, book: Book) -> Way | None:
    """The usual way with this product: the strength on record, never above what the label was read to say.

    None if the handbook has no strength for the ingredient, form and method, or it is not sold in that form.
    """
    if len(product.contents) != 1:
        return None
    content = product.contents[0]
    strength = book.strength(content.ingredient, content.form, how, content.strength_ae_g_l)
    if strength is None:
        return None
    share = strength.usual_frac
    carrier = strength.carrier if share < 1.0 else "undiluted"
    for site in patch.places:
        limit = resolve(
            product.facts,
            "strongest mix",
            Situation(method=how, carrier=carrier, site=site, state=tract.state),
        ).fact
        if limit is not None and isinstance(limit.value, float):
            share = min(share, limit.value)
    tool = "squirt bottle" if how == "hack and squirt" else _stump_tool(book)
    return Way(how, product.id, share, carrier, tool)  # type: ignore[arg-type]


def _stump_tool(book: Book) -> str:
    return "squirt bottle" if "squirt bottle" in book.tools else next(iter(book.tools))


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
    tool = choice.tool or (usual.tool if usual else "squirt bottle")
    return Way(choice.how, choice.product, share, carrier, tool, choice.ring_cm)  # type: ignore[arg-type]


def weigh_way(
    way: Way,
    target: Target,
    patch: Patch,
    species: Species,
    stems: Stems,
    tract: Tract,
    book: Book,
    as_of: Any,
    shared: dict[Any, Any],
) -> Weighed:
    """Work out one way on its own, run every check on it, and note what the rule compares."""
    product = tract.product(way.product) if way.product else None
    sums = Ledger(shared=shared)
    job = work_job("w", target, patch, species, way, product, stems, book, sums)
    case = Case(tract, as_of, book, (job,), loads_of((job,), tract, book, as_of, sums))
    findings = run(case, ALL)
    return Weighed(
        way,
        findings,
        _tier(job, book),
        max((_level(f) for f in findings), default=0),
        _on_shelf(job),
        float(job.mix_ml.sum()),
        sum(float(g.sum()) for g in job.ae_g.values()),
    )


def suggest(weighed: list[Weighed], species: Species) -> Weighed:
    """The way the rule suggests: among treating ways, or cut only where the plant does not sprout.

    Where every treating way is stopped it is "leave it", which is always there.
    """
    by_how = {w.way.how: w for w in weighed if not w.way.product}
    if species.stump_sprouts == "no" and species.root_suckers != "yes":
        return by_how["cut only"]
    treating = [w for w in weighed if w.way.product and not w.stops]
    return min(treating, key=lambda w: w.rank) if treating else by_how["leave it"]


def _tier(job: Job, book: Book) -> int:
    if job.product is None:
        return 0
    plant, how = job.target.species, job.way.how
    return min(book.evidence_tier(plant, how, c.ingredient, form_of(book, c)) for c in job.product.contents)


def _level(finding: Finding) -> int:
    if finding.check not in ("soil-route", "shared-roots"):
        return 0
    name = finding.message.partition(".")[2].upper()
    return int(Level[name]) if name in Level.__members__ else 0


def _on_shelf(job: Job) -> bool:
    if job.product is None:
        return True
    left_ml = sum((c.left_ul or 0) for c in job.product.containers) / 1000
    return left_ml >= float(job.mix_ml.sum()) * (job.way.concentration_frac or 0.0)
