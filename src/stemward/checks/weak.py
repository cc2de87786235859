"""Is the ingredient known to be weak on this plant this way?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding, form_of
from stemward.kinds import Evidence, Finding, Weight

ID = "weak"


def run(case: Case) -> Iterator[Finding]:
    """Something to know where a source says so; where none does, what stands behind the way."""
    for job, product in case.treated:
        for content in product.contents:
            plant, how, form = job.target.species, job.way.how, form_of(case.book, content)
            weak = case.book.weak(plant, how, content.ingredient, form)
            tier = case.book.evidence_tier(plant, how, content.ingredient, form)
            if weak is not None:
                source = [Evidence(weak.id, weak.place, weak.source)]
                yield finding(ID, Weight.KNOW, "weak", job, source, plant=plant, ingredient=content.ingredient, how=how)
            elif tier == 0:
                yield finding(ID, Weight.KNOW, "no_trial", job, plant=plant, ingredient=content.ingredient, how=how)
            else:
                rows = case.book.evidence(plant, how, content.ingredient, form)
                sources = [Evidence(row.id, row.place, row.source) for row in rows[:3]]
                yield finding(
                    ID, Weight.CHECKED, "known", job, sources, plant=plant, ingredient=content.ingredient,
                    how=how, rows=len(rows), tier=tier,
                )  # fmt: skip


CHECK = Check(
    ID,
    "herbicide spent on a plant that shrugs it off",
    ("plan", "handbook"),
    ("Handbook rows, each with its source",),
    run,
)
