"""Is the place where mixing and rinsing are done far enough from wells and water?"""

from collections.abc import Iterator

import shapely

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.limit import held
from stemward.checks.near import geometry
from stemward.kinds import Evidence, Finding, Product, Weight
from stemward.label import Resolved, resolve

ID = "mixing-place"
KINDS = ("well", "water", "sinkhole")


def run(case: Case) -> Iterator[Finding]:
    """One finding a plan where no place is written down; else one a job by label and by common practice."""
    usual = case.book.defaults["mix_from_well_m"]
    if case.tract.mixing_place is None and any(True for _ in case.treated):
        seen = [Evidence(usual.id, usual.place, usual.source)]
        yield finding(ID, Weight.FIND_OUT, "not_said", None, seen, limit_m=usual.number)
    for job, product in case.treated:
        yield from _judge(case, job, product)


def _judge(case: Case, job: Job, product: Product) -> Iterator[Finding]:
    usual = case.book.defaults["mix_from_well_m"]
    seen = [Evidence(usual.id, usual.place, usual.source)]
    guarded = [s for s in case.tract.spared if s.kind in KINDS]
    if case.tract.mixing_place is None:
        return
    here = shapely.Point(case.tract.mixing_place)
    away = [(float(shapely.distance(here, geometry(s.shape))), s) for s in guarded]
    wells = [distance for distance, s in away if s.kind == "well"]
    if wells:
        for situation in job.situations(case.tract)[:1]:
            resolved = resolve(product.facts, "mixing distance to wells", situation)
            yield _near_well(job, resolved, min(wells))
    near_by = [(distance, s.id) for distance, s in away if distance < usual.number]
    if near_by:
        distance, name = min(near_by)
        yield finding(ID, Weight.KNOW, "near", job, seen, distance_m=distance, spared=name, limit_m=usual.number)
    else:
        yield finding(ID, Weight.CHECKED, "far", job, seen, limit_m=usual.number)


def _near_well(job: Job, resolved: Resolved, distance_m: float) -> Finding:
    values = {"distance_m": distance_m}
    return held(ID, job, resolved, "mixing distance to wells", lambda m: distance_m * 100 < m, values, "limit_cm")


CHECK = Check(
    ID,
    "wells, springs and streams, from the concentrate",
    ("plan", "what is kept from harm", "people"),
    ("California 3 CCR 6609 (100 ft from a well); many places advise the same",),
    run,
)
