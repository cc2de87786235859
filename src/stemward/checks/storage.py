"""What does the label ask for where the jug is kept?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding, place
from stemward.kinds import Finding, Weight
from stemward.label import resolve

ID = "storage"


def run(case: Case) -> Iterator[Finding]:
    """Something to know where the label has a least heat for storage."""
    for job, product in case.treated:
        for situation in job.situations(case.tract)[:1]:
            resolved = resolve(product.facts, "least storage heat", situation)
            fact = resolved.fact
            if fact is not None and isinstance(fact.value, float):
                yield finding(ID, Weight.KNOW, "keep_above", job, place(fact), least_c=fact.value)
            else:
                yield finding(ID, Weight.KNOW, "usual", job)


CHECK = Check(
    ID,
    "product that freezes or spoils on the shelf",
    ("plan", "label facts", "shelf"),
    ("40 CFR 156.10(i)(2), storage and disposal",),
    run,
)
