"""Would spray fall on blooms with bees?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "bloom"

SAID = {"yes": (Weight.KNOW, "bees"), "no": (Weight.CHECKED, "none"), "unknown": (Weight.FIND_OUT, "unknown")}


def run(case: Case) -> Iterator[Finding]:
    """One finding a job that sprays leaves; other ways are not spoken of."""
    for job, _ in case.treated:
        if job.way.how != "foliar":
            continue
        weight, message = SAID[job.patch.answer("in_bloom")]
        yield finding(ID, weight, message, job)


CHECK = Check(
    ID,
    "bees and other visitors of flowers",
    ("plan", "site facts"),
    ("Common practice, no source: spray no blooms that are visited",),
    run,
)
