"""Is the jug a concentrate, or garden strength that is too weak for this work?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "garden-strength"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and product."""
    for job, product in case.treated:
        if product.formulation.startswith("ready-to-use"):
            yield finding(ID, Weight.KNOW, "ready", job)
            continue
        weakest = min((c.strength_ae_g_l for c in product.contents), default=0.0)
        strength = [case.book.strength(c.ingredient, c.form, job.way.how, c.strength_ae_g_l) for c in product.contents]
        least_g_l = case.book.defaults["garden_strength_g_l"].number
        if len(product.contents) == 1 and strength[0] is None and weakest < least_g_l:
            yield finding(ID, Weight.FIND_OUT, "weak_jug", job, strength_g_l=weakest)
        elif len(product.contents) == 1 and strength[0] is None:
            yield finding(ID, Weight.KNOW, "not_on_record", job, strength_g_l=weakest)
        else:
            yield finding(ID, Weight.CHECKED, "concentrate", job, strength_g_l=weakest)


CHECK = Check(
    ID,
    "work done with a product too weak to do it",
    ("plan", "handbook"),
    ("Common practice, no source: garden products hold a tenth of what a concentrate holds",),
    run,
)
