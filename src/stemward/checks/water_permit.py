"""Is a permit or notice needed for work in or beside water?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import nearest_m
from stemward.kinds import Evidence, Finding, Weight
from stemward.ledger.permits import Permit, granted

ID = "water-permit"
KINDS = ("water",)


def run(case: Case) -> Iterator[Finding]:
    """One finding a job on wet ground or near water; the state's rule stands beside it where it is on record."""
    for job, _ in case.treated:
        yield _judge(case, job)


def _judge(case: Case, job: Job) -> Finding:
    away_m = nearest_m(job, case.tract.spared)
    listed = [
        (float(away), s)
        for away, s in zip(away_m.tolist(), case.tract.spared, strict=True)
        if s.kind in KINDS and away <= case.book.defaults["water_permit_m"].number
    ]
    wet = "wet" in job.sites
    if not listed and not wet:
        return finding(ID, Weight.CHECKED, "dry", job)
    permit = granted(case.tract.entries, "permit for work at water", job.patch.id, case.as_of)
    if permit is not None:
        return _permitted(permit, job, case)
    rules = case.book.state_rules(case.tract.state, "water permit")
    seen = [Evidence(rule.cited.id, rule.cited.place, rule.cited.source) for rule in rules]
    values = {"state": case.tract.state or "the state"}
    if rules:
        values["rule"] = rules[0].what
        return finding(ID, Weight.FIND_OUT, "rule", job, seen, values=values)
    return finding(ID, Weight.FIND_OUT, "ask", job, values=values)


def _permitted(permit: Permit, job: Job, case: Case) -> Finding:
    """What someone wrote down of a permit: granted for the day, refused, or still asked for."""
    said: dict[str, str | float | int] = {"name": permit.name, "number": permit.number or "no number written down"}
    if permit.holds(case.as_of):
        return finding(ID, Weight.CHECKED, "granted", job, values=said | {"on": str(permit.granted_on)})
    if permit.step == "refused":
        return finding(ID, Weight.STOP, "refused", job, values=said)
    return finding(ID, Weight.FIND_OUT, "waiting", job, values=said)


CHECK = Check(
    ID,
    "marshes, springs, streams and shores, and the rules that guard them",
    ("plan", "site facts", "what is kept from harm", "state rules", "records"),
    ("Clean Water Act permits for pesticides are given by states; each state's rule stands in its own dated row",),
    run,
)
