"""Does any circle of one acre carry more than the label's most in a year?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, Load, Values, finding
from stemward.kinds import Finding, LabelFact, Product, Weight
from stemward.label import Situation, resolve
from stemward.units.table import ACRE_M2

ID = "densest-acre"
SAME = 1e-9


def run(case: Case) -> Iterator[Finding]:
    """A caution beside the yearly most: one finding a job and ingredient with a yearly most that was read."""
    for job, product in case.treated:
        names = {content.ingredient for content in product.contents}
        for load in case.loads:
            if load.ingredient in names and load.densest is not None:
                for situation in job.situations(case.tract)[:1]:
                    yield from _judge(job, product, load, situation)


def _judge(job: Job, product: Product, load: Load, situation: Situation) -> Iterator[Finding]:
    facts: tuple[LabelFact, ...] = resolve(product.facts, "most per year", situation).facts
    limits = [f.value for f in facts if f.reading == "read" and isinstance(f.value, float)]
    if not limits or load.densest is None:
        return
    low, high = (grams / float(ACRE_M2) for grams in (load.densest.low_g, load.densest.high_g))
    limit = min(limits)
    values: Values = {"ingredient": load.ingredient, "used_g_m2": high, "limit_g_m2": limit}
    if low > limit * (1 + SAME):
        yield finding(ID, Weight.KNOW, "over", job, values=values)
    elif high > limit * (1 + SAME):
        yield finding(ID, Weight.KNOW, "may_be_over", job, values=values)
    else:
        yield finding(ID, Weight.CHECKED, "within", job, values=values)


CHECK = Check(
    ID,
    "one acre that carries too much although every patch on average does not",
    ("plan", "records", "the yearly most"),
    ("Arithmetic: the greatest sum in any circle of one acre",),
    run,
)
