"""From the needs of the jobs to what is poured into which bottle, in marks a person can read."""

from dataclasses import dataclass
from typing import Any

from stemward.checks import Job
from stemward.handbook import Book
from stemward.kinds import Product, Tract, Vessel
from stemward.label import resolve
from stemward.plan.sums import Ledger
from stemward.reckon import mix

UL_PER_ML = 1000


@dataclass(frozen=True)
class MixNeed:
    """Jobs that take the same mix: same product, strength and carrier."""

    id: str
    product: Product
    concentration_frac: float
    carrier: str
    jobs: tuple[Job, ...]


def group(jobs: tuple[Job, ...]) -> tuple[MixNeed, ...]:
    """The jobs grouped by the mix they take, in order of first use."""
    groups: dict[tuple[str, float, str], list[Job]] = {}
    for job in jobs:
        if job.product is not None and job.way.concentration_frac is not None:
            key = (job.product.id, round(job.way.concentration_frac, 9), job.way.carrier)
            groups.setdefault(key, []).append(job)
    return tuple(
        MixNeed(f"m{n}", members[0].product, share, carrier, tuple(members))  # type: ignore[arg-type]
        for n, ((_, share, carrier), members) in enumerate(groups.items(), 1)
    )


def draw_mix(need: MixNeed, tract: Tract, book: Book, sums: Ledger) -> dict[str, Any]:
    """One mix as plain data: need with its spread, batches in marks, and what is left over by intent."""
    refs = "+".join(f"step:{job.id}.need_ml" for job in need.jobs)
    need_ml = float(sums.work(f"{need.id}.need_ml", "total", "ml", each=refs))
    spread = sums.cite(book.defaults["spread_factor"])
    low_ml = sums.work(f"{need.id}.need_low_ml", "spread_low", "ml", middle=f"step:{need.id}.need_ml", factor=spread)
    high_ml = sums.work(f"{need.id}.need_high_ml", "spread_high", "ml", middle=f"step:{need.id}.need_ml", factor=spread)
    vessel = _vessel(tract, book)
    low_frac, high_frac = strength_range(need, tract, book)
    assigned = mix.split_assigned(round(need_ml * UL_PER_ML), vessel.capacity_ul)
    measures = _measures(tract, book)
    over_frac = book.defaults["most_over_frac"].number
    batches: list[dict[str, Any]] = []
    for number, assigned_ul in enumerate(assigned, 1):
        poured = mix.round_batch(
            assigned_ul, low_frac, high_frac, measures, measures, vessel.capacity_ul, over_frac, _dye(book)
        )
        batches.append({"number": number, **_as_data(poured, assigned_ul)})
    return {
        "id": need.id,
        "product": need.product.id,
        "product_name": need.product.name,
        "concentration_frac": need.concentration_frac,
        "lowest_frac": low_frac,
        "highest_frac": high_frac,
        "carrier": need.carrier,
        "treatments": [job.id for job in need.jobs],
        "need_ml": need_ml,
        "need_low_ml": low_ml,
        "need_high_ml": high_ml,
        "vessel": {"id": vessel.id, "capacity_ml": vessel.capacity_ul / UL_PER_ML},
        "ae_g_l": {c.ingredient: need.concentration_frac * c.strength_ae_g_l for c in need.product.contents},
        "mixed_ml": sum(b.get("mixed_ml", 0.0) for b in batches),
        "left_over_ml": sum(b.get("left_over_ml", 0.0) for b in batches),
        "product_ml": sum(p["ml"] for b in batches for p in b.get("parts", ()) if p["what"] == "product"),
        "batches": batches,
    }


def strength_range(need: MixNeed, tract: Tract, book: Book) -> tuple[float, float]:
    """Least and greatest share of product a batch may come out at.

    The chosen strength is the most; a little less is let be (default 5 % of it, common practice, no source)
    unless the label forbids less than its figure. Undiluted stays undiluted.
    """
    chosen = need.concentration_frac
    if chosen >= 1.0:
        return 1.0, 1.0
    tolerance = book.defaults["lower_tolerance_frac"].number
    for situation in need.jobs[0].situations(tract):
        rule = resolve(need.product.facts, "less is forbidden", situation)
        weakest = resolve(need.product.facts, "weakest mix", situation)
        less_may_be_forbidden = rule.fact is None or rule.fact.value == "yes"
        if less_may_be_forbidden and weakest.fact is not None and isinstance(weakest.fact.value, float):
            return max(chosen * (1 - tolerance), min(weakest.fact.value, chosen)), chosen
    return chosen * (1 - tolerance), chosen


def _vessel(tract: Tract, book: Book) -> Vessel:
    fit = [v for v in tract.vessels if v.lining not in ("unlined steel", "galvanised steel")]
    if fit:
        return max(fit, key=lambda v: (v.capacity_ul, v.id))
    return Vessel("bottle", round(book.defaults["bottle_ml"].number * UL_PER_ML))


def _measures(tract: Tract, book: Book) -> tuple[mix.Measure, ...]:
    own = tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in tract.measures)
    return own or tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in book.measures)


def _dye(book: Book) -> tuple[tuple[str, float, float], ...]:
    return (("dye", book.defaults["dye_low_frac"].number, book.defaults["dye_high_frac"].number),)


def _as_data(poured: mix.Batch | mix.Refusal, assigned_ul: int) -> dict[str, Any]:
    if isinstance(poured, mix.Refusal):
        would = poured.would_do
        return {
            "assigned_ml": assigned_ul / UL_PER_ML,
            "refused": poured.reason,
            "would_do": None if would is None else {"name": would.name, "mark_ml": would.mark_ul / UL_PER_ML},
        }
    return {
        "assigned_ml": poured.assigned_ul / UL_PER_ML,
        "mixed_ml": poured.mixed_ul / UL_PER_ML,
        "left_over_ml": (poured.mixed_ul - poured.assigned_ul) / UL_PER_ML,
        "concentration_frac": poured.concentration_frac,
        "parts": [
            {
                "what": part.name,
                "ml": part.amount_ul / UL_PER_ML,
                "measure": part.measure.name if part.measure else "",
                "mark_ml": part.measure.mark_ul / UL_PER_ML if part.measure else 0.0,
                "fills": part.fills,
            }
            for part in poured.parts
            if part.amount_ul
        ],
    }
