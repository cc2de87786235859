"""Are plants that were cut before treated in one of the three ways that reach their roots?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "already-cut"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job on plants already cut; standing ones are not spoken of."""
    for job, product in case.treated:
        if job.target.state != "cut":
            continue
        oily = job.way.carrier == "oil" or product.formulation == "ready-to-use oil"
        if job.way.how == "cut stump" and job.way.first == "fresh face":
            yield finding(ID, Weight.KNOW, "fresh_face", job)
        elif job.way.how in ("cut stump", "basal bark") and oily:
            yield finding(ID, Weight.KNOW, "oil", job)
        elif job.way.how == "foliar":
            yield finding(ID, Weight.KNOW, "sprouts", job)
        else:
            yield finding(ID, Weight.STOP, "old_face", job, how=job.way.how)


CHECK = Check(
    ID,
    "herbicide on a face that has dried and takes nothing up",
    ("plan",),
    ("Kochenderfer et al. 2013, J. Appl. For. 30(3):118-124: control fell after 96 to 120 h in one species",),
    run,
)
