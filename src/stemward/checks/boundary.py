"""Whose tree is it, and does the treatment reach across the boundary?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, nearest_m
from stemward.kinds import Finding, Weight

ID = "boundary"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; where no boundary is drawn it says so once."""
    lines = [n for n, s in enumerate(case.tract.spared) if s.kind == "boundary"]
    jobs = [job for job in case.jobs if job.way.how != "leave it"]
    if jobs and not lines:
        yield finding(ID, Weight.KNOW, "not_drawn")
    elif lines:
        for job in jobs:
            yield from _judge(case, job, lines)


def _judge(case: Case, job: Job, lines: list[int]) -> Iterator[Finding]:
    near_m = case.book.defaults["boundary_near_m"].number
    graft_m = case.book.defaults["graft_same_m"].number
    away = nearest_m(job, case.tract.spared)
    number = min(lines, key=lambda n: float(away[n]))
    spared, distance = case.tract.spared[number], float(away[number])
    if distance <= near_m:
        rows, _ = near(job, spared, near_m)
        ids = job.stems.id[rows]
        yield finding(ID, Weight.FIND_OUT, "whose", job, stems=ids, distance_m=distance, count=len(ids))
    elif job.product is not None and (job.species.clone or job.species.grafts) and distance <= graft_m:
        yield finding(ID, Weight.KNOW, "kin_across", job, distance_m=distance)
    else:
        yield finding(ID, Weight.CHECKED, "inside", job, distance_m=min(distance, 9999.0))


CHECK = Check(
    ID,
    "a neighbor's trees",
    ("plan", "what is kept from harm"),
    ("Engineering guess, no source: within 10 ft",),
    run,
)
