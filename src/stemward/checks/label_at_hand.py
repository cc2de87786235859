"""Is there a label at hand, and has a person read what a program only proposed?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "label-at-hand"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and product; a fact that is only proposed is no fact."""
    for job, product in case.treated:
        proposed = [fact.kind for fact in product.facts if fact.reading == "proposed"]
        if not product.facts:
            yield finding(ID, Weight.STOP, "none", job)
        elif proposed:
            kinds = ", ".join(sorted(set(proposed)))
            yield finding(ID, Weight.FIND_OUT, "only_proposed", job, facts=kinds, count=len(proposed))
        else:
            yield finding(ID, Weight.CHECKED, "read", job, count=len(product.facts))


CHECK = Check(
    ID,
    "work with a product whose label nobody has in hand",
    ("plan", "label facts"),
    ("FIFRA 12(a)(2)(G), 7 U.S.C. 136j, as given in EPA's Label Review Manual",),
    run,
)
