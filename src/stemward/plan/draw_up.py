"""From a tract to a frozen plan."""

import datetime
from dataclasses import asdict, replace
from typing import Any

import numpy as np

from stemward.checks import Case, Job, run
from stemward.handbook import Book
from stemward.kinds import STANDING_AS, Plan, Target, Tract
from stemward.ledger.balances import with_balances
from stemward.ledger.stems import to_do
from stemward.plan import formulae
from stemward.plan.behind import behind
from stemward.plan.data import behind_data, laid_out_data, tract_data, way_data
from stemward.plan.effort import reckoned_h
from stemward.plan.gear import gear_of
from stemward.plan.job import work_job
from stemward.plan.laid_out import lay_out
from stemward.plan.learned import use_of
from stemward.plan.loads import loads_of
from stemward.plan.mixing import draw_mix, group, pours_of
from stemward.plan.stages import stages_of
from stemward.plan.sums import Ledger
from stemward.plan.surveys import surveys_of
from stemward.plan.ways import RULE, chosen_way, own_stems, products_of, suggest, ways_for, weigh_way
from stemward.plan.write import frozen


def targets_of(tract: Tract) -> tuple[Target, ...]:
    """Plants to treat: the stems of one species in one patch, those standing apart from those already cut.

    In the tract's order of patches; dead stems are no targets.
    """
    stems = tract.stems
    order = {patch.id: n for n, patch in enumerate(tract.patches)}
    found = []
    for state in STANDING_AS:
        rows = np.flatnonzero((stems.state == "cut") if state == "cut" else ~np.isin(stems.state, ("cut", "dead")))
        patches, species = stems.patch[rows], stems.species[rows]
        for patch in np.unique(patches).tolist():
            in_patch = rows[patches == patch]
            for name in np.unique(species[patches == patch]).tolist():
                own = in_patch[stems.species[in_patch] == name]
                found.append(Target(str(patch), str(name), tuple(own.tolist()), state))
    return tuple(
        sorted(found, key=lambda t: (order.get(t.patch, len(order)), t.patch, t.species, t.state != "standing"))
    )


def draw_up(tract: Tract, book: Book, as_of: datetime.date, land_hash: str = "") -> Plan:
    """Draw up a plan: weigh every way for every target, take what was chosen or what the rule suggests, work
    the doses and mixes, run every check. `as_of` is the day the plan is for; nothing here reads a clock.

    Stems that entries say were treated are left out, and jugs hold what entries left in them.
    """
    tract = replace(to_do(tract), shelf=with_balances(tract.shelf, tract.entries))
    sums = Ledger()
    jobs: list[Job] = []
    treatments: list[dict[str, Any]] = []
    for number, target in enumerate(targets_of(tract), 1):
        job, data = _treatment(f"t{number}", target, tract, book, as_of, sums)
        jobs.append(job)
        treatments.append(data)
    loads = loads_of(tuple(jobs), tract, book, as_of, sums)
    mixes = [draw_mix(need, tract, book, sums) for need in group(tuple(jobs))]
    case = Case(tract, as_of, book, tuple(jobs), loads, pours_of(mixes))
    findings = run(case)
    for data, job in zip(treatments, jobs, strict=True):
        data.update(_sums_of(job, sums))
        data["stages"] = stages_of(job, book)
    return frozen(
        Plan(
            code="",
            as_of=as_of.isoformat(),
            tract=tract_data(tract, case),
            treatments=treatments,
            mixes=mixes,
            findings=list(findings),
            steps=list(sums.steps.values()),
            cited=sorted(sums.cited.values(), key=lambda c: c.id),
            columns=sums.columns,
            numbers=sums.numbers,
            gear=gear_of(case),
            surveys=surveys_of(tract, book),
            hashes={"land": land_hash, "handbook": book.hash(), "formulae": str(formulae.VERSION)},
        )
    )


def _treatment(
    job_id: str, target: Target, tract: Tract, book: Book, as_of: datetime.date, sums: Ledger
) -> tuple[Job, dict[str, Any]]:
    """One target: its ways weighed, the one taken, and the job worked out with it."""
    patch, species = tract.patch(target.patch), book.species[target.species]
    stems = tract.stems.where(np.asarray(target.stem_rows))
    weighed = [
        weigh_way(way, target, patch, species, stems, tract, book, as_of, sums.shared)
        for way in ways_for(target, patch, stems, tract, book)
    ]
    suggested = suggest(weighed, species)
    wanted = (target.patch, target.species, target.state)
    choice = next((c for c in tract.choices if (c.patch, c.species, c.state) == wanted), None)
    way = chosen_way(choice, patch, tract, book) if choice else suggested.way
    product, partner = products_of(way, tract)
    use = sums.once(("use", way.how), lambda: use_of(tract, way.how))
    job = work_job(job_id, target, patch, species, way, product, stems, book, sums, partner, use)
    return job, {
        "id": job_id,
        "patch": target.patch,
        "patch_name": patch.name,
        "species": target.species,
        "common": species.common,
        "state": target.state,
        "how": way.how,
        "first": way.first,
        "partner": way.partner,
        "partner_name": partner.name if partner else "",
        "partner_frac": way.partner_frac,
        "product": way.product,
        "product_name": product.name if product else "",
        "ingredients": [asdict(c) for c in product.contents] if product else [],
        "concentration_frac": way.concentration_frac,
        "carrier": way.carrier,
        "tool": way.tool,
        "ring_cm": way.ring_cm,
        "chosen_by": "person" if choice else "rule",
        "rule": list(RULE),
        "suggested": way_data(suggested),
        "ways": [way_data(w) for w in weighed],
        "laid_out": laid_out_data(lay_out(weighed, way)),
        "behind": behind_data(behind(job, book, *own_stems(way, target, tract, book, sums.shared), tract.rates)),
        "cautions": species.cautions,
        "verdict_months": 18 if species.root_suckers == "yes" or species.clone else 12,
        "stems": int(stems.stems.sum()),
        "rows": len(stems),
        "reckoned_h": reckoned_h(job, book),
    }


def _sums_of(job: Job, sums: Ledger) -> dict[str, Any]:
    """The figures of a worked job that faces show; each stands among the steps under the same name."""
    if job.product is None:
        return {"need_ml": 0.0, "ae_g": {}}
    value = sums.values
    rows_ml = value[f"{job.id}.row_ml"]
    each_ml = value[f"{job.id}.each_ml"]
    return {
        "need_ml": value[f"{job.id}.need_ml"],
        "need_low_ml": value[f"{job.id}.need_low_ml"],
        "need_high_ml": value[f"{job.id}.need_high_ml"],
        "least_ml": float(np.min(each_ml)),
        "most_ml": float(np.max(each_ml)),
        "typical": _typical(job, each_ml, sums),
        "ae_g": {name: value[f"{job.id}.total_ae_g.{name}"] for name in job.ae_g},
        "rows_ml": float(np.sum(rows_ml)),
    }


def _typical(job: Job, each_ml: Any, sums: Ledger) -> dict[str, Any]:
    """The stem of middle diameter, for the drawing and the worked example."""
    sizes = job.stems.diameter_cm
    at = int(np.argsort(sizes, kind="stable")[(len(sizes) - 1) // 2])
    cuts = sums.values.get(f"{job.id}.cuts")
    wet = sums.values.get(f"{job.id}.wet_face_cm2")
    height = sums.values.get(f"{job.id}.height_m", job.heights_m)
    return {
        "id": str(job.stems.id[at]),
        "diameter_cm": float(sizes[at]),
        "mix_ml": float(each_ml[at]),
        "cuts": None if cuts is None else int(cuts[at]),
        "wet_cm2": None if wet is None else float(wet[at]),
        "height_m": float(height[at]) if height[at] > 0 else None,
    }
