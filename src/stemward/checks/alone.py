"""Will someone be alone all day?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "alone"


def run(case: Case) -> Iterator[Finding]:
    """One line a plan: who knows, and when to check in."""
    if len(case.tract.people) == 1 and any(case.treated):
        yield finding(ID, Weight.KNOW, "one", person=case.tract.people[0].role)
    elif any(case.treated):
        yield finding(ID, Weight.CHECKED, "several", people=len(case.tract.people))


CHECK = Check(
    ID,
    "someone hurt whom nobody misses",
    ("people",),
    ("Common practice, no source: someone knows where and until when",),
    run,
)
