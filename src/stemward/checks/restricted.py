"""If the product is for restricted use, is someone certified?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding, open_question, place
from stemward.kinds import Finding, Product, Weight
from stemward.label import Situation, resolve

ID = "restricted-use"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job."""
    for job, product in case.treated:
        yield _judge(case, job, product)


def _judge(case: Case, job: Job, product: Product) -> Finding:
    resolved = resolve(product.facts, "restricted use", Situation(state=case.tract.state))
    if resolved.fact is None:
        return open_question(ID, resolved, job, "restricted use")
    seen = place(resolved.fact)
    if resolved.fact.value != "yes":
        return finding(ID, Weight.CHECKED, "not_restricted", job, seen)
    applying = [p.certified for p in case.tract.people if "apply" in p.does]
    if "yes" in applying:
        return finding(ID, Weight.FIND_OUT, "category", job, seen)
    if "unknown" in applying or not applying:
        return finding(ID, Weight.FIND_OUT, "certified_unknown", job, seen)
    return finding(ID, Weight.STOP, "nobody_certified", job, seen)


CHECK = Check(
    ID,
    "products that only certified people may use",
    ("plan", "label facts", "people"),
    ("FIFRA 12(a)(2)(F), 7 U.S.C. 136j; 40 CFR 171.1",),
    run,
)
