"""Were the stems measured where the rule for their dose speaks of?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "measured-at"
SPEAKS_OF = {"cut stump": "stump", "basal bark": "stump", "hack and squirt": "breast"}
"""Foliar work goes by the height."""


def run(case: Case) -> Iterator[Finding]:
    """Something to know where stems were measured elsewhere; to be found out where nobody wrote it down."""
    for job, _ in case.treated:
        wanted = SPEAKS_OF.get(job.way.how)
        if wanted is None:
            continue
        unsaid = job.stems.id[job.stems.measured_at == ""]
        other = job.stems.id[(job.stems.measured_at != wanted) & (job.stems.measured_at != "")]
        if len(unsaid):
            yield finding(ID, Weight.FIND_OUT, "not_said", job, stems=unsaid, count=len(unsaid), wanted=wanted)
        if len(other):
            message = "measured_at_breast" if wanted == "stump" else "measured_at_stump"
            yield finding(ID, Weight.KNOW, message, job, stems=other, count=len(other), how=job.way.how)
        if not len(unsaid) and not len(other):
            yield finding(ID, Weight.CHECKED, "as_meant", job, wanted=wanted)


CHECK = Check(
    ID,
    "doses worked out from the wrong diameter",
    ("plan",),
    ("Common practice, no source: stumps are wider than the stem at breast height",),
    run,
)
