"""From the needs of the jobs to what is poured into which bottle, in marks a person can read."""

from dataclasses import dataclass
from typing import Any

from stemward.checks import Job, Pour
from stemward.handbook import Book
from stemward.kinds import UL_PER_ML, Product, Tract, Vessel
from stemward.label import listed, resolve
from stemward.plan.learned import MIDDLE, Learned
from stemward.plan.sums import Ledger
from stemward.reckon import mix, use_rate


@dataclass(frozen=True)
class MixNeed:
    """Jobs that take the same mix: same product, strength and carrier."""

    id: str
    product: Product
    concentration_frac: float
    carrier: str
    jobs: tuple[Job, ...]
    partner: Product | None = None
    partner_frac: float | None = None


def group(jobs: tuple[Job, ...]) -> tuple[MixNeed, ...]:
    """The jobs grouped by the mix they take, in order of first use."""
    groups: dict[tuple[object, ...], list[Job]] = {}
    for job in jobs:
        if job.product is not None and job.way.concentration_frac is not None:
            way = job.way
            # A mix for leaves carries a surfactant, one for cut wood does not: they are not one batch.
            key = (
                way.product, round(way.concentration_frac or 0.0, 9), way.carrier, way.partner,
                round(way.partner_frac or 0.0, 9), way.how == "foliar",
            )  # fmt: skip
            groups.setdefault(key, []).append(job)
    return tuple(_need(f"m{n}", members) for n, members in enumerate(groups.values(), 1))


def _need(mix_id: str, members: list[Job]) -> MixNeed:
    first = members[0]
    assert first.product is not None and first.way.concentration_frac is not None
    return MixNeed(
        mix_id, first.product, first.way.concentration_frac, first.way.carrier, tuple(members), first.partner,
        first.way.partner_frac,
    )  # fmt: skip


def draw_mix(need: MixNeed, tract: Tract, book: Book, sums: Ledger) -> dict[str, Any]:
    """One mix as plain data: need with its spread, batches in marks, and what is left over by intent."""
    refs = "+".join(f"step:{job.id}.need_ml" for job in need.jobs)
    need_ml = float(sums.work(f"{need.id}.need_ml", "total", "ml", each=refs))
    use = _use_of(need, sums)
    spread = sums.cite(book.defaults["spread_factor"] if use is None else sums.cited[f"learned.spread.{_how(need)}"])
    low_ml = sums.work(f"{need.id}.need_low_ml", "spread_low", "ml", middle=f"step:{need.id}.need_ml", factor=spread)
    high_ml = sums.work(f"{need.id}.need_high_ml", "spread_high", "ml", middle=f"step:{need.id}.need_ml", factor=spread)
    vessel = _vessel(tract, book, need)
    low_frac, high_frac = strength_range(need, tract, book)
    assigned = mix.split_assigned(round(need_ml * UL_PER_ML), vessel.capacity_ul)
    measures = _measures(tract, book)
    over_frac = book.defaults["most_over_frac"].number
    more = extras(need, book)
    # All full bottles are poured alike, so at most two sizes are worked out.
    poured = {
        ul: mix.round_batch(ul, low_frac, high_frac, measures, measures, vessel.capacity_ul, over_frac, more)
        for ul in dict.fromkeys(assigned)
    }
    batches = [{"number": n, **_as_data(poured[ul], ul)} for n, ul in enumerate(assigned, 1)]
    mixed_ml = sum(float(b.get("mixed_ml", 0.0)) for b in batches)
    rate = use_rate.PRIOR if use is None else use.rate
    reckoned_ml = need_ml if use is None else need_ml / use.factor(MIDDLE)
    return {
        "id": need.id,
        "product": need.product.id,
        "product_name": need.product.name,
        "concentration_frac": need.concentration_frac,
        "lowest_frac": low_frac,
        "highest_frac": high_frac,
        "carrier": need.carrier,
        "partner": need.partner.id if need.partner else "",
        "partner_name": need.partner.name if need.partner else "",
        "partner_frac": need.partner_frac,
        "surfactant": _takes_surfactant(need),
        "treatments": [job.id for job in need.jobs],
        "need_ml": need_ml,
        "need_low_ml": low_ml,
        "need_high_ml": high_ml,
        "vessel": {"id": vessel.id, "capacity_ml": vessel.capacity_ul / UL_PER_ML},
        "ae_g_l": _ae_g_l(need),
        "mixed_ml": mixed_ml,
        "short_chance_frac": use_rate.chance_short(rate, reckoned_ml, mixed_ml),
        "expected_left_ml": use_rate.expected_left_ml(rate, reckoned_ml, mixed_ml),
        "learned": _learned_data(use),
        "left_over_ml": sum(b.get("left_over_ml", 0.0) for b in batches),
        "product_ml": sum(p["ml"] for b in batches for p in b.get("parts", ()) if p["what"] == "product"),
        "batches": batches,
    }


def _how(need: MixNeed) -> str:
    return need.jobs[0].way.how


def _use_of(need: MixNeed, sums: Ledger) -> Learned | None:
    """What was learned of the method of a mix; None for a mix of several methods, which learn apart."""
    if len({job.way.how for job in need.jobs}) > 1:
        return None
    found: Learned | None = sums.shared.get(("use", _how(need)))
    return found


def _learned_data(use: Learned | None) -> dict[str, Any] | None:
    if use is None:
        return None
    each = [{"person": person, "factor": factor} for person, factor in use.each]
    return {
        "factor": use.factor(MIDDLE),
        "batches": use.count,
        "people": use.people,
        "person": use.person,
        "each": each,
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


def _ae_g_l(need: MixNeed) -> dict[str, float]:
    """Acid equivalent in a litre of the mix as chosen, by ingredient, over both products."""
    shares = [(need.product, need.concentration_frac)]
    if need.partner is not None:
        shares.append((need.partner, need.partner_frac or 0.0))
    found: dict[str, float] = {}
    for product, share in shares:
        for content in product.contents:
            found[content.ingredient] = found.get(content.ingredient, 0.0) + share * content.strength_ae_g_l
    return found


def _takes_surfactant(need: MixNeed) -> bool:
    """Leaves need a surfactant where the label asks for one; a label that forbids it rules."""
    if need.carrier != "water" or need.jobs[0].way.how != "foliar":
        return False
    asked = listed(need.product.facts, "adjuvant required", None)
    forbidden = listed(need.product.facts, "adjuvant forbidden", None)
    return bool(asked) and not forbidden


def _vessel(tract: Tract, book: Book, need: MixNeed) -> Vessel:
    """The largest bottle that the mix does not attack; a backpack for leaves and bark if there is one."""
    fit = [v for v in tract.vessels if v.lining not in ("unlined steel", "galvanised steel")]
    tool = need.jobs[0].way.tool
    fit = [v for v in fit if v.id == tool] or [v for v in fit if v.id != "backpack"] or fit
    if fit:
        return max(fit, key=lambda v: (v.capacity_ul, v.id))
    return Vessel("bottle", round(book.defaults["bottle_ml"].number * UL_PER_ML))


def _measures(tract: Tract, book: Book) -> tuple[mix.Measure, ...]:
    own = tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in tract.measures)
    return own or tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in book.measures)


def extras(need: MixNeed, book: Book) -> tuple[mix.Extra, ...]:
    """What goes in beside product and carrier: a second product, a surfactant, dye."""
    found = []
    if need.partner is not None and need.partner_frac is not None:
        tolerance = book.defaults["lower_tolerance_frac"].number
        found.append(mix.Extra("partner", need.partner_frac * (1 - tolerance), need.partner_frac, needed=True))
    if _takes_surfactant(need):
        low, high = (book.defaults[f"surfactant_{end}_frac"].number for end in ("low", "high"))
        found.append(mix.Extra("surfactant", low, high, needed=True))
    low, high = (book.defaults[f"dye_{end}_frac"].number for end in ("low", "high"))
    found.append(mix.Extra("dye", low, high))
    return tuple(found)


def pours_of(mixes: list[dict[str, Any]]) -> tuple[Pour, ...]:
    """How each batch came out, for the checks."""
    return tuple(
        Pour(
            mix_data["treatments"][0],
            batch.get("refused", ""),
            (batch.get("would_do") or {}).get("name", ""),
            any(part["what"] == "dye" for part in batch.get("parts", ())),
        )
        for mix_data in mixes
        for batch in mix_data["batches"]
    )


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
