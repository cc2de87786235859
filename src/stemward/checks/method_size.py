"""Are the stems of a size at which this way works and can be done?"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from stemward.checks.case import Case, Check, Job, finding
from stemward.kinds import Cited, Evidence, Finding, Weight

ID = "method-size"

TOO_THIN = {"cut stump": "stump_least_cm", "hack and squirt": "hack_least_dbh_cm", "girdle": "girdle_least_cm"}
TOO_THICK = {"basal bark": "basal_most_cm", "pull": "pull_most_cm"}


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and end of the range; leaves go by height."""
    for job in case.jobs:
        if job.way.how in ("leave it", "cut only") or not len(job.stems):
            continue
        found = [*_by_diameter(case, job), *_by_height(case, job)]
        yield from found or [finding(ID, Weight.CHECKED, "fits", job, how=job.way.how)]


def _by_diameter(case: Case, job: Job) -> Iterator[Finding]:
    sizes = job.stems.diameter_cm
    for table, message in ((TOO_THIN, "too_thin"), (TOO_THICK, "too_thick")):
        if job.way.how in table:
            limit = case.book.defaults[table[job.way.how]]
            out = sizes < limit.number * (1 - 1e-9) if message == "too_thin" else sizes > limit.number * (1 + 1e-9)
            if out.any():
                yield _say(case, job, message, out, limit, "limit_cm")


def _by_height(case: Case, job: Job) -> Iterator[Finding]:
    if job.way.how != "foliar" or job.way.first:
        return
    heights = job.heights_m
    unknown = np.isnan(heights)
    if unknown.any():
        ids = job.stems.id[unknown]
        yield finding(ID, Weight.FIND_OUT, "height_unknown", job, stems=ids, count=int(unknown.sum()))
    most = case.book.defaults["spray_most_m"]
    tall = np.nan_to_num(heights, nan=0.0) > most.number * (1 + 1e-9)
    if tall.any():
        yield _say(case, job, "too_tall", tall, most, "limit_m")
    least = case.book.defaults["sprout_least_m"]
    small = (job.stems.form == "sprout") & (np.nan_to_num(heights, nan=9.0) < least.number)
    if small.any():
        yield _say(case, job, "sprouts_small", small, least, "limit_m")


def _say(case: Case, job: Job, message: str, out: NDArray[np.bool_], limit: Cited, name: str) -> Finding:
    del case
    seen = [Evidence(limit.id, limit.place, limit.source)]
    values = {name: limit.number, "count": int(out.sum()), "how": job.way.how}
    return finding(ID, Weight.KNOW, message, job, seen, stems=job.stems.id[out], values=values)


CHECK = Check(
    ID,
    "stems that a way does not kill, or that cannot be reached with it",
    ("plan", "handbook"),
    (
        "Alabama Cooperative Extension (stumps under 1/2 in), Rutgers (hack and squirt over 1 in dbh)",
        "Woody Invasives of the Great Lakes Collaborative (basal bark up to 6 in), Texas A&M AgriLife (spray to 6 ft)",
    ),
    run,
)
