"""Have the facts that this work leans on been read by a person, even those no other check weighs?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.kinds import Finding, Product, Weight
from stemward.label import resolve

ID = "facts-read"

LEANS_ON = (
    "registration number",
    "signal word",
    "first aid",
    "hours without rain",
)
"""What the packet prints and the work day follows, whichever way is chosen."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a product: the facts nobody has read, or that all have been."""
    for job, product in case.treated:
        unread = [kind for kind in LEANS_ON if not _read(case, job, product, kind)]
        if unread:
            yield finding(ID, Weight.FIND_OUT, "unread", job, facts=", ".join(unread), count=len(unread))
        else:
            yield finding(ID, Weight.CHECKED, "read", job, facts=", ".join(LEANS_ON), count=len(LEANS_ON))


def _read(case: Case, job: Job, product: Product, kind: str) -> bool:
    return all(resolve(product.facts, kind, situation).outcome == "decided" for situation in job.situations(case.tract))


CHECK = Check(
    ID,
    "work that leans on a part of the label nobody has read",
    ("plan", "label facts"),
    ("40 CFR 156.10(a)(1), parts of a label",),
    run,
)
