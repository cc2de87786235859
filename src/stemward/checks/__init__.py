"""Rules, one file a check, each with its sources. `ALL` is the registry."""

from collections.abc import Iterable
from dataclasses import replace

from stemward.checks import (
    chemistry,
    concentration,
    cut_first,
    doubts,
    edition,
    equipment,
    facts_read,
    kept,
    measured,
    method,
    plant,
    restricted,
    ring,
    shared_roots,
    site,
    site_facts,
    soil_route,
    state,
    stock,
    water,
    weak,
    yearly_most,
)
from stemward.checks.case import Case, Check, Job, Load
from stemward.kinds import Finding, Where

ALL: tuple[Check, ...] = (
    site.CHECK,
    state.CHECK,
    method.CHECK,
    concentration.CHECK,
    yearly_most.CHECK,
    soil_route.CHECK,
    shared_roots.CHECK,
    chemistry.CHECK,
    equipment.CHECK,
    restricted.CHECK,
    water.CHECK,
    plant.CHECK,
    site_facts.CHECK,
    kept.CHECK,
    measured.CHECK,
    ring.CHECK,
    doubts.CHECK,
    edition.CHECK,
    facts_read.CHECK,
    cut_first.CHECK,
    weak.CHECK,
    stock.CHECK,
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


__all__ = ["ALL", "RETIRED", "Case", "Check", "Job", "Load", "run"]
