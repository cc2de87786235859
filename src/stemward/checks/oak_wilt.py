"""Would oaks be wounded in the months in which oak wilt spreads?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import nearest_m
from stemward.kinds import Evidence, Finding, Weight

ID = "oak-wilt"
WOUNDS = ("cut only", "girdle", "cut stump", "hack and squirt")


def run(case: Case) -> Iterator[Finding]:
    """One finding a job that wounds oaks, or cuts among kept oaks; others are not spoken of."""
    for job in case.jobs:
        cuts = job.way.how in WOUNDS or job.way.first in ("cut", "fresh face")
        if not cuts:
            continue
        oaks_near = _kept_oaks(case, job)
        if job.species.genus == "Quercus":
            yield _judge(case, job, "wound", Weight.STOP if oaks_near else Weight.KNOW)
        elif oaks_near:
            yield _judge(case, job, "beside", Weight.KNOW)


def _judge(case: Case, job: Job, message: str, weight: Weight) -> Finding:
    months = case.book.wilt.get(case.tract.state)
    if months is None or months.cited.grade == "memory":
        # What is only remembered never decides.
        return finding(ID, Weight.FIND_OUT, "months_unknown", job, state=case.tract.state or "the state")
    seen = [Evidence(months.cited.id, months.cited.place, months.cited.source)]
    span = f"{_day(*months.first)} to {_day(*months.last)}"
    today = (case.as_of.month, case.as_of.day)
    if months.first <= today <= months.last:
        return finding(ID, weight, message, job, seen, months=span)
    return finding(ID, Weight.CHECKED, "outside", job, seen, months=span)


def _day(month: int, day: int) -> str:
    return f"{MONTHS[month - 1]} {day}"


MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip


def _kept_oaks(case: Case, job: Job) -> bool:
    """True if an oak is kept within the distance at which oaks are known to graft."""
    near_m = case.book.defaults["graft_oak_m"].number
    away = nearest_m(job, case.tract.spared).tolist()
    return any(s.species.startswith("Quercus") and a <= near_m for a, s in zip(away, case.tract.spared, strict=True))


CHECK = Check(
    ID,
    "kept oaks, which a fresh wound nearby or on their kin can infect",
    ("plan", "what is kept from harm", "state rules"),
    ("Wisconsin Department of Natural Resources bulletin: April through July; each state has its own row",),
    run,
)
