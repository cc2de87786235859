"""Does this plan alone stay under the label's most per acre in one application?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Values
from stemward.checks.limit import held
from stemward.kinds import Finding
from stemward.label import resolve

ID = "most-per-application"
SAME = 1e-9


def run(case: Case) -> Iterator[Finding]:
    """One finding an ingredient, job and kind of place; the cluster that carries most per area decides."""
    for job, product in case.treated:
        names = {content.ingredient for content in product.contents}
        for load in case.loads:
            if load.ingredient not in names:
                continue
            for situation in job.situations(case.tract):
                resolved = resolve(product.facts, "most per application", situation)
                used = load.planned_g_m2
                values: Values = {"ingredient": load.ingredient, "used_g_m2": used, "stems": load.cluster_stems}
                yield held(
                    ID, job, resolved, "most per application",
                    lambda most, used=used: used > most * (1 + SAME), values, "limit_g_m2",  # type: ignore[misc]
                )  # fmt: skip


CHECK = Check(
    ID,
    "more of one ingredient on an acre at once than the label lets lie there",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), maximum rate per treatment",),
    run,
)
