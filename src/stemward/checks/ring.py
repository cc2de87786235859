"""Does a narrow ring make a larger stump take less than a smaller one?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight
from stemward.reckon.dose import dose_can_fall

ID = "ring"


def run(case: Case) -> Iterator[Finding]:
    """Something to know for cut stumps whose ring is under half of the size up to which the whole face is wet."""
    for job, _ in case.treated:
        if job.way.how != "cut stump":
            continue
        whole = case.book.defaults["whole_up_to_cm"]
        ring_cm = case.book.defaults["ring_cm"].number if job.way.ring_cm is None else job.way.ring_cm
        source = [Evidence(whole.id, whole.place, whole.source)]
        falls = dose_can_fall(whole.number, ring_cm)
        weight, message = (Weight.KNOW, "falls") if falls else (Weight.CHECKED, "grows")
        yield finding(ID, weight, message, job, source, ring_cm=ring_cm, whole_cm=whole.number)


CHECK = Check(
    ID,
    "large stumps that get less than small ones",
    ("plan", "handbook"),
    ("Arithmetic: a ring of width w meets in the middle at a diameter of 2 w",),
    run,
)
