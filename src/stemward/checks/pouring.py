"""Can the mix be measured with what is at hand, and can it be seen on the stem?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "pouring"


def run(case: Case) -> Iterator[Finding]:
    """One finding for each batch that cannot be measured, one for mixes without dye, else that all can be poured."""
    for poured in case.pours:
        job = next(job for job in case.jobs if job.id == poured.job)
        if poured.refused:
            yield finding(ID, Weight.FIND_OUT, poured.refused, job, measure=poured.would_do or "a finer measure")
        elif not poured.dyed and job.way.carrier == "water":
            yield finding(ID, Weight.KNOW, "no_dye", job)
        elif job.way.carrier == "oil":
            yield finding(ID, Weight.KNOW, "oil_dye", job)
        else:
            yield finding(ID, Weight.CHECKED, "measured", job)


CHECK = Check(
    ID,
    "mixes of a strength nobody can measure, and stems that nobody can tell are done",
    ("plan", "shelf"),
    ("Arithmetic on the marks of the measures at hand", "Texas A&M AgriLife Extension: 0.25 to 0.5 % blue dye"),
    run,
)
