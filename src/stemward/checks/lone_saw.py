"""Is one person alone with large stems and a saw?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "lone-saw"
SAWN = ("cut only", "cut stump", "girdle")


def run(case: Case) -> Iterator[Finding]:
    """Something to know where large stems are cut and one person is listed; others are not spoken of."""
    large_cm = case.book.defaults["large_stem_cm"].number
    for job in case.jobs:
        if job.way.how not in SAWN or not len(job.stems):
            continue
        large = job.stems.diameter_cm > large_cm
        if not large.any():
            yield finding(ID, Weight.CHECKED, "small", job, limit_cm=large_cm)
        elif len(case.tract.people) <= 1:
            count = int(large.sum())
            yield finding(ID, Weight.KNOW, "alone", job, stems=job.stems.id[large], count=count, limit_cm=large_cm)
        else:
            yield finding(ID, Weight.CHECKED, "not_alone", job, people=len(case.tract.people))


CHECK = Check(
    ID,
    "someone under a tree with nobody to call for help",
    ("plan", "people"),
    ("Engineering guess, no source: over 6 in",),
    run,
)
