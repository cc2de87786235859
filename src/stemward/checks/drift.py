"""Can spray or vapor reach what is kept?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import nearest_m, rooted
from stemward.kinds import Evidence, Finding, Product, Weight
from stemward.reckon.roots import Level, drift_level

ID = "drift"
WEIGHT = {
    Level.NO_ROUTE_KNOWN: Weight.CHECKED,
    Level.LITTLE: Weight.KNOW,
    Level.SOME: Weight.KNOW,
    Level.MUCH: Weight.STOP,
}


def run(case: Case) -> Iterator[Finding]:
    """One finding a job for spray, and one for vapor from esters and dicamba whatever the way."""
    for job, product in case.treated:
        yield _spray(case, job)
        yield from _vapour(case, job, product)


def _spray(case: Case, job: Job) -> Finding:
    if job.way.how != "foliar":
        return finding(ID, Weight.CHECKED, "not_sprayed", job, how=job.way.how)
    far = case.book.defaults["drift_m"]
    near_m = case.book.defaults["drift_much_m"].number
    away = nearest_m(job, case.tract.spared)
    leafy = np.flatnonzero(rooted(case.tract.spared, case.book).rooted & (away <= far.number)).tolist()
    source = [Evidence(far.id, far.place, far.source)]
    if not leafy:
        return finding(ID, Weight.CHECKED, "no_route_known", job, source, distance_m=far.number)
    number = min(leafy, key=lambda n: float(away[n]))
    kept = case.tract.spared[number]
    level = Level(int(drift_level(np.array([away[number]]), near_m, far.number)[0]))
    return finding(
        ID, WEIGHT[level], level.name.lower(), job, source, spared=kept.id, distance_m=float(away[number]),
        count=len(leafy),
    )  # fmt: skip


def _vapour(case: Case, job: Job, product: Product) -> Iterator[Finding]:
    rising = [c.ingredient for c in product.contents if "ester" in c.form or c.ingredient == "dicamba"]
    if rising:
        heat = case.book.defaults["vapour_heat_c"]
        seen = [Evidence(heat.id, heat.place, heat.source)]
        yield finding(ID, Weight.KNOW, "vapor", job, seen, ingredient=rising[0], heat_c=heat.number)


CHECK = Check(
    ID,
    "leaves of wanted plants, gardens and neighbors' crops",
    ("plan", "what is kept from harm"),
    ("USDA Forest Service GTR SRS-131: esters and dicamba above 80 F", "Distances: engineering guess, no source"),
    run,
)
