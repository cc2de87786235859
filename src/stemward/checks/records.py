"""Who asks for a record of this, within how many days, and for how long it is kept?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight
from stemward.ledger.duties import due_of, duties_of, keep_until_of
from stemward.ledger.records import Record, key_of

ID = "records"
HABIT = "minimum"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job with herbicide."""
    for job, product in case.treated:
        key = key_of(case.as_of, job.patch.id, product.id)
        empty = Record(key, case.as_of, job.patch.id, product.id, {"method": (job.way.how,)}, {}, ())
        duties = [d for d in duties_of(empty, case.tract, case.book) if d.rule.id != HABIT]
        if not duties:
            yield finding(ID, Weight.CHECKED, "none", job)
            continue
        seen = [Evidence(d.rule.id, d.rule.cited.place, d.rule.cited.source) for d in duties]
        due, keep = due_of(duties), keep_until_of(duties)
        values = {"rules": "; ".join(d.rule.name for d in duties)}
        values |= {"days": str((due - case.as_of).days) if due else "no stated number of"}
        values |= {"years": str(keep.year - case.as_of.year) if keep else "no stated number of"}
        certain = all(d.certain for d in duties)
        weight, message = (Weight.KNOW, "wanted") if certain else (Weight.FIND_OUT, "perhaps")
        yield finding(ID, weight, message, job, seen, values=values)


CHECK = Check(
    ID,
    "records that are asked for and were never written",
    ("plan", "label facts", "site facts", "record rules"),
    ("each rule set stands in its own dated row with its source",),
    run,
)
