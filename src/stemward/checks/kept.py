"""Has someone said what must not be harmed in and around each patch?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "kept"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; nothing listed is not the same as nothing being there."""
    for job, _ in case.treated:
        if job.patch.id in case.tract.kept_asked:
            yield finding(ID, Weight.CHECKED, "asked", job, listed=len(case.tract.spared))
        else:
            yield finding(ID, Weight.FIND_OUT, "not_asked", job, listed=len(case.tract.spared))


CHECK = Check(
    ID,
    "wanted plants, water and people that nobody has listed",
    ("what is kept from harm",),
    ("Common practice, no source: survey before treating",),
    run,
)
