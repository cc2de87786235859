"""Does all that was and will be used this year stay under the label's most per acre and year?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, Load, by_force, finding, open_question, place, weigh
from stemward.kinds import Finding, LabelFact, Product, Weight
from stemward.label import Situation, resolve
from stemward.reckon.limits import mix_ml_left_per_acre

ID = "yearly-most"
SAME = 1e-9


def run(case: Case) -> Iterator[Finding]:
    """One finding an ingredient, job and kind of place; the cluster that carries most per area decides."""
    for job, product in case.treated:
        held = {content.ingredient for content in product.contents}
        for load in case.loads:
            if load.ingredient in held:
                for situation in job.situations(case.tract):
                    yield _judge(job, product, load, situation)


def _judge(job: Job, product: Product, load: Load, situation: Situation) -> Finding:
    resolved = resolve(product.facts, "most per year", situation)

    def judge(fact: LabelFact) -> Weight:
        if fact.standing == "not found":
            return Weight.FIND_OUT
        if fact.standing != "says" or not isinstance(fact.value, float):
            return Weight.CHECKED
        return by_force(fact) if load.greatest_g_m2 > fact.value * (1 + SAME) else Weight.CHECKED

    weight = weigh(resolved, judge)
    limits = [f.value for f in resolved.facts if isinstance(f.value, float)]
    values: dict[str, str | float | int] = {
        "ingredient": load.ingredient,
        "used_g_m2": load.greatest_g_m2,
        "mean_g_m2": load.mean_g_m2,
        "area_m2": load.cluster_area_m2,
        "stems": load.cluster_stems,
        "recorded_g": load.recorded_g,
        "products": len(load.products),
    }
    if limits:
        values["limit_g_m2"] = min(limits)
        mix_g_l = (job.way.concentration_frac or 0.0) * sum(
            c.strength_ae_g_l for c in product.contents if c.ingredient == load.ingredient
        )
        if mix_g_l > 0:
            values["left_mix_ml"] = mix_ml_left_per_acre(min(limits), load.greatest_g_m2, mix_g_l)
    seen = place(*resolved.facts)
    if weight == Weight.STOP:
        return finding(ID, weight, "over", job, seen, values=values)
    if weight == Weight.CHECKED:
        message = "within" if limits else "no_limit"
        return finding(ID, weight, message, job, seen, values=values)
    if resolved.fact is not None and resolved.fact.standing == "not found":
        return finding(ID, Weight.FIND_OUT, "not_found", job, seen, fact="most per year", values=values)
    return open_question(ID, resolved, job, "most per year", values=values)


CHECK = Check(
    ID,
    "more of one ingredient on an acre in a year than the label lets lie there",
    ("plan", "label facts", "records"),
    ("40 CFR 156.10(i)(2), maximum rates per treatment and per year",),
    run,
)
