"""Would a killed tree that is left standing fall on something?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, Values, finding
from stemward.checks.near import near, nearest_m
from stemward.kinds import Finding, Weight

ID = "falling"
STANDING = ("girdle", "hack and squirt", "basal bark")
HARD = ("building", "wire")
UNDER = ("lane", "path", "fence", *HARD)
TALL_M = 3.0
"""Lower plants fall without harm: practitioner's judgement, no source."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a job that leaves dead trees standing, for the worst thing under them."""
    for job in case.jobs:
        if job.way.how in STANDING and len(job.stems):
            yield from _judge(case, job)


def _judge(case: Case, job: Job) -> Iterator[Finding]:
    multiple = case.book.defaults["fall_reach_multiple"].number
    away = nearest_m(job, case.tract.spared)
    heights = job.heights_m
    tallest = float(np.nanmax(heights)) if np.any(~np.isnan(heights)) else 0.0
    unknown = bool(np.isnan(heights).any())
    found: list[Finding] = []
    for number, spared in enumerate(case.tract.spared):
        reach_m = multiple * tallest
        if spared.kind not in UNDER or (away[number] > reach_m and not unknown):
            continue
        rows, distance_m = near(job, spared, max(reach_m, LOOK_M if unknown else 0.0))
        own = heights[rows]
        hit = (own >= TALL_M) & (distance_m <= multiple * own)
        if hit.any():
            weight, message = (Weight.STOP, "hard") if spared.kind in HARD else (Weight.KNOW, "under")
            ids = job.stems.id[rows[hit]]
            values: Values = {"spared": spared.id, "kind": spared.kind, "distance_m": float(distance_m[hit].min())}
            found.append(finding(ID, weight, message, job, stems=ids, values=values, count=int(hit.sum())))
        elif np.isnan(own).any():
            ids = job.stems.id[rows[np.isnan(own)]]
            found.append(finding(ID, Weight.FIND_OUT, "height_unknown", job, stems=ids, spared=spared.id))
    if found:
        yield max(found, key=lambda f: f.weight)
    else:
        yield finding(ID, Weight.CHECKED, "clear", job)


LOOK_M = 30.0

CHECK = Check(
    ID,
    "people on paths, wires, buildings and fences under dead trees",
    ("plan", "what is kept from harm"),
    ("Engineering guess, no source: 1.5 times the height",),
    run,
)
