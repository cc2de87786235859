"""Is this a time of year in which the way works on the plant?"""

import datetime
from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.handbook.field import Season
from stemward.kinds import Evidence, Finding, Weight

ID = "season"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; where sprouts are waited for, by the day on which they would be sprayed."""
    for job in case.jobs:
        if job.way.how == "leave it":
            continue
        if job.way.first in ("cut", "sprouts"):
            yield _sprouts(case, job)
            continue
        how = job.way.how
        if how == "cut stump" and job.way.carrier == "oil":
            # Oil goes through bark and is not carried off by sap (common practice); it is judged as bark work.
            how = "basal bark"
        yield _judge(case, job, case.book.seasons(job.target.species, how), how)


def _judge(case: Case, job: Job, seasons: tuple[Season, ...], how: str) -> Finding:
    day = (case.as_of.month, case.as_of.day)
    poor = [s for s in seasons if not s.best and s.holds(day)]
    best = [s for s in seasons if s.best]
    if poor:
        return finding(
            ID, Weight.KNOW, "poor_now", job, _seen(poor), why=poor[0].why, until=_day(*poor[0].last), how=how
        )
    if not best:
        return finding(ID, Weight.KNOW, "not_on_record", job, how=how)
    span = f"{_day(*best[0].first)} to {_day(*best[0].last)}"
    if any(s.holds(day) for s in best):
        return finding(ID, Weight.CHECKED, "good", job, _seen(best), span=span, how=how)
    return finding(ID, Weight.KNOW, "not_best", job, _seen(best), span=span, how=how)


def _sprouts(case: Case, job: Job) -> Finding:
    """Leaves are there for the spray only if the wait after the cut ends while plants are in leaf."""
    wait = case.book.defaults["sprouts_wait_days"]
    then = case.as_of + datetime.timedelta(days=wait.number)
    seasons = case.book.seasons(job.target.species, job.way.how)
    poor = [s for s in seasons if not s.best and s.holds((then.month, then.day))]
    if poor:
        day = _day(then.month, then.day)
        return finding(ID, Weight.KNOW, "sprouts_not_by_then", job, _seen(poor), day=day, why=poor[0].why)
    return finding(ID, Weight.CHECKED, "sprouts_by_then", job, _seen(list(seasons)), day=_day(then.month, then.day))


def _seen(seasons: list[Season]) -> list[Evidence]:
    return [Evidence(s.cited.id, s.cited.place, s.cited.source) for s in seasons[:2]]


def _day(month: int, day: int) -> str:
    return f"{MONTHS[month - 1]} {day}"


MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip

CHECK = Check(
    ID,
    "work at a time of year in which the plant does not carry herbicide to its roots",
    ("plan", "handbook"),
    ("Ballard & Nowak 2006 (April and June weak)", "Penn State Extension (not in heavy spring sap flow)"),
    run,
)
