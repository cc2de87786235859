"""May the two products go into one mix?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, by_force, finding, open_question, place, weigh
from stemward.kinds import Evidence, Finding, Weight
from stemward.label import resolve

ID = "mix-partner"
FIFRA_MIX = "EPA PR Notice 82-1: two products may go into one mix where neither label prohibits it"


def run(case: Case) -> Iterator[Finding]:
    """One finding for each product of a mix of two; single products are not spoken of."""
    for job in case.jobs:
        views = job.by_product
        if len(views) < 2:
            continue
        for view, product in views:
            other = next(p for _, p in views if p is not product)
            for situation in view.situations(case.tract)[:1]:
                names = ("any", *(c.ingredient for c in other.contents))
                found = [resolve(product.facts, "mix partner forbidden", situation, of=name) for name in names]
                weights = [weigh(r, lambda f: by_force(f) if f.standing == "says" else Weight.CHECKED) for r in found]
                worst = max(weights)
                resolved = found[weights.index(worst)]
                with_ = ", ".join(names[1:])
                if worst == Weight.STOP:
                    yield finding(ID, worst, "forbidden", view, place(*resolved.facts), partner=with_)
                elif worst == Weight.FIND_OUT:
                    yield open_question(ID, resolved, view, "mix partner forbidden", partner=with_)
                else:
                    clause = Evidence("clause", "", FIFRA_MIX)
                    yield finding(ID, Weight.KNOW, "not_forbidden", view, [clause], partner=with_)


CHECK = Check(
    ID,
    "two products in one mix that a label keeps apart",
    ("plan", "label facts"),
    (FIFRA_MIX,),
    run,
)
