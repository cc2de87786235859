"""Is anything kept so near that what splashes or runs off is on it?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, Values, finding
from stemward.checks.near import near, nearest_m, rooted
from stemward.kinds import Evidence, Finding, Product, Weight

ID = "splash"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job for the nearest plant."""
    for job, product in case.treated:
        yield _judge(case, job, product)


def _judge(case: Case, job: Job, product: Product) -> Finding:
    splash, basal = case.book.defaults["splash_m"], case.book.defaults["basal_near_m"]
    oily = job.way.how == "basal bark" or job.way.carrier == "oil" or product.formulation == "ready-to-use oil"
    source = [Evidence(splash.id, splash.place, splash.source)]
    away = nearest_m(job, case.tract.spared)
    living = rooted(case.tract.spared, case.book).rooted
    near_by = np.flatnonzero(living & (away <= splash.number)).tolist()
    if not near_by:
        return finding(ID, Weight.CHECKED, "no_route_known", job, source, limit_m=splash.number)
    number = min(near_by, key=lambda n: float(away[n]))
    kept, distance = case.tract.spared[number], float(away[number])
    rows, _ = near(job, kept, splash.number)
    ids = job.stems.id[rows]
    values: Values = {"spared": kept.id, "distance_m": distance, "count": len(rows)}
    climbing = bool((job.stems.form[rows] == "vine").any())
    if oily and (distance <= basal.number or climbing):
        return finding(ID, Weight.STOP, "much", job, source, stems=ids, values=values)
    return finding(ID, Weight.KNOW, "some", job, source, stems=ids, values=values)


CHECK = Check(
    ID,
    "plants that stand against the stem that is treated, and trees that a vine climbs",
    ("plan", "what is kept from harm"),
    ("Practitioner's judgement, no source: 0.5 m; basal oil within 12 in of a kept stem treats that stem",),
    run,
)
