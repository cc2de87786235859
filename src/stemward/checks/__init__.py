"""Rules, one file a check, each with its sources. `ALL` is the registry."""

from collections.abc import Iterable
from dataclasses import replace

from stemward.checks import (
    adjuvant,
    alone,
    already_cut,
    bloom,
    boundary,
    bulletin,
    carrier,
    chemistry,
    concentration,
    cut_first,
    cut_to_treat,
    day,
    densest_acre,
    doubts,
    drift,
    edition,
    entry,
    equipment,
    facts_read,
    falling,
    garden_strength,
    grazing,
    ground,
    hazards,
    kept,
    label_at_hand,
    label_season,
    lasts,
    licence,
    lone_saw,
    measured,
    method,
    method_size,
    mix_partner,
    mixing_place,
    most_per_application,
    most_per_stem,
    oak_wilt,
    place_rules,
    plant,
    pouring,
    records,
    restricted,
    ring,
    season,
    shared_roots,
    site,
    site_facts,
    soil_route,
    splash,
    state,
    stem_size,
    stock,
    storage,
    vessel,
    water,
    water_permit,
    weak,
    yearly_most,
)
from stemward.checks.case import Case, Check, Job, Load, Pour
from stemward.kinds import Finding, Where

ALL: tuple[Check, ...] = (
    label_at_hand.CHECK,
    site.CHECK,
    state.CHECK,
    method.CHECK,
    concentration.CHECK,
    most_per_application.CHECK,
    yearly_most.CHECK,
    densest_acre.CHECK,
    most_per_stem.CHECK,
    carrier.CHECK,
    soil_route.CHECK,
    shared_roots.CHECK,
    splash.CHECK,
    drift.CHECK,
    falling.CHECK,
    chemistry.CHECK,
    mix_partner.CHECK,
    equipment.CHECK,
    restricted.CHECK,
    water.CHECK,
    water_permit.CHECK,
    plant.CHECK,
    label_season.CHECK,
    cut_to_treat.CHECK,
    stem_size.CHECK,
    vessel.CHECK,
    adjuvant.CHECK,
    entry.CHECK,
    grazing.CHECK,
    bulletin.CHECK,
    site_facts.CHECK,
    place_rules.CHECK,
    licence.CHECK,
    kept.CHECK,
    boundary.CHECK,
    oak_wilt.CHECK,
    season.CHECK,
    hazards.CHECK,
    already_cut.CHECK,
    measured.CHECK,
    ring.CHECK,
    method_size.CHECK,
    doubts.CHECK,
    edition.CHECK,
    facts_read.CHECK,
    mixing_place.CHECK,
    ground.CHECK,
    lasts.CHECK,
    bloom.CHECK,
    garden_strength.CHECK,
    cut_first.CHECK,
    weak.CHECK,
    pouring.CHECK,
    day.CHECK,
    stock.CHECK,
    storage.CHECK,
    records.CHECK,
    lone_saw.CHECK,
    alone.CHECK,
)
"""In order of what a mistake would cost; findings of one weight are shown in this order."""

RETIRED: tuple[str, ...] = ()
"""Ids that were in use once and are not given again."""


def run(case: Case, checks: Iterable[Check] = ALL) -> tuple[Finding, ...]:
    """All findings of all checks, heaviest first, the same question about one product asked once."""
    checks = tuple(checks)
    order = {check.id: place for place, check in enumerate(checks)}
    found = [finding for check in checks for finding in check.run(case)]
    merged = _asked_once(found)
    return tuple(sorted(merged, key=lambda f: (-f.weight, order[f.check])))


def _asked_once(found: Iterable[Finding]) -> list[Finding]:
    """Findings that say the same about the same product become one, which then names no single patch."""
    kept: dict[tuple[object, ...], Finding] = {}
    for one in found:
        key = (one.check, one.weight, one.message, one.values, one.where.product, one.evidence)
        if key not in kept:
            kept[key] = one
            continue
        first = kept[key].where
        stems = tuple(dict.fromkeys(first.stems + one.where.stems))[:20]
        patch = first.patch if first.patch == one.where.patch else ""
        species = first.species if first.species == one.where.species else ""
        kept[key] = replace(kept[key], where=Where(patch, species, first.product, stems))
    return list(kept.values())


__all__ = ["ALL", "RETIRED", "Case", "Check", "Job", "Load", "Pour", "run"]
