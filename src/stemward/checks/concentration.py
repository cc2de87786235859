"""Is the mix no stronger than the label lets it be, and is a weaker one let be?"""

from collections.abc import Iterator

from stemward.checks.case import FIFRA_LESS, Case, Check, Job, by_force, finding, open_question, place, weigh
from stemward.kinds import Evidence, Finding, LabelFact, Product, Weight
from stemward.label import Situation, resolve

ID = "concentration"
SAME = 1e-9


def run(case: Case) -> Iterator[Finding]:
    """The strongest mix first, then the weakest; one finding each per job and kind of place."""
    for job, product in case.treated:
        if job.way.concentration_frac is None:
            continue
        for situation in job.situations(case.tract):
            yield _strongest(job, product, situation, job.way.concentration_frac)
            yield from _weakest(case, job, product, situation, job.way.concentration_frac)


def _strongest(job: Job, product: Product, situation: Situation, mix_frac: float) -> Finding:
    resolved = resolve(product.facts, "strongest mix", situation)

    def judge(fact: LabelFact) -> Weight:
        if fact.standing == "not found":
            return Weight.FIND_OUT
        if fact.standing != "says" or not isinstance(fact.value, float):
            return Weight.CHECKED
        if mix_frac <= fact.value + SAME:
            return Weight.CHECKED
        # Above a strength that a label only recommends, someone has to ask what the label means.
        return Weight.FIND_OUT if fact.force == "should" else by_force(fact)

    weight = weigh(resolved, judge)
    figures = [f.value for f in resolved.facts if isinstance(f.value, float)]
    limit = {"limit_frac": min(figures)} if figures else {}
    seen = place(*resolved.facts)
    if weight == Weight.STOP:
        return finding(ID, weight, "too_strong", job, seen, mix_frac=mix_frac, values=limit)
    if weight == Weight.CHECKED:
        return finding(ID, weight, "within" if limit else "no_limit", job, seen, mix_frac=mix_frac, values=limit)
    fact = resolved.fact
    if fact is not None:
        message = "not_found" if fact.standing == "not found" else "above_recommended"
        return finding(ID, weight, message, job, seen, mix_frac=mix_frac, fact="strongest mix", values=limit)
    return open_question(ID, resolved, job, "strongest mix", mix_frac=mix_frac)


def _weakest(case: Case, job: Job, product: Product, situation: Situation, mix_frac: float) -> Iterator[Finding]:
    resolved = resolve(product.facts, "weakest mix", situation)
    if resolved.outcome in ("unread", "proposed"):
        yield open_question(ID, resolved, job, "weakest mix", mix_frac=mix_frac)
        return
    figures = [f.value for f in resolved.facts if f.standing == "says" and isinstance(f.value, float)]
    if not figures or mix_frac >= max(figures) - SAME:
        return
    least = max(figures)
    rule = resolve(product.facts, "less is forbidden", situation)
    weight = weigh(rule, lambda f: Weight.STOP if f.value == "yes" else Weight.CHECKED)
    values = {"mix_frac": mix_frac, "least_frac": least}
    if weight == Weight.STOP:
        yield finding(ID, weight, "less_forbidden", job, place(*rule.facts), values=values)
    elif weight != Weight.CHECKED:
        yield open_question(ID, rule, job, "less is forbidden", values=values)
    elif case.tract.state in case.book.strict_states:
        yield finding(ID, Weight.FIND_OUT, "strict_state", job, state=case.tract.state, values=values)
    else:
        clause = Evidence("clause", "", FIFRA_LESS)
        yield finding(ID, Weight.KNOW, "weaker", job, [clause, *place(*resolved.facts)], values=values)


CHECK = Check(
    ID,
    "a mix stronger than the label, or weaker where the label forbids that",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), dose and dilution", FIFRA_LESS),
    run,
)
