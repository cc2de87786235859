"""Can the mix be used up in a day?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.kinds import Finding, Weight

ID = "day"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job that is mixed: its hours at the faster pace against a day's."""
    hours = case.book.defaults["day_hours"].number
    people = max(sum("apply" in person.does for person in case.tract.people), 1)
    for job, product in case.treated:
        least_h = _least_hours(case, job) / people
        if product.formulation == "dry":
            yield finding(ID, Weight.KNOW, "dry_same_day", job, least_h=least_h)
        elif least_h > hours:
            yield finding(ID, Weight.KNOW, "too_much", job, least_h=least_h, day_h=hours)
        else:
            yield finding(ID, Weight.CHECKED, "fits", job, least_h=least_h, day_h=hours)


def _least_hours(case: Case, job: Job) -> float:
    sizes, total = job.stems.diameter_cm, 0.0
    for pace in case.book.paces:
        if pace.method == job.way.how:
            here = (sizes >= pace.low_cm) & (sizes < pace.high_cm)
            total += float(job.stems.stems[here].sum()) / pace.high_per_hour
    return total


CHECK = Check(
    ID,
    "mix left standing overnight",
    ("plan", "handbook", "people"),
    ("Paces: practitioner's judgement; three hours a day: engineering guess, no source",),
    run,
)
