"""Is there enough on the shelf?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "stock"


def run(case: Case) -> Iterator[Finding]:
    """One finding a product, for all jobs that use it together."""
    need_ml: dict[str, float] = {}
    for job, product in case.treated:
        share = job.way.concentration_frac or 0.0
        need_ml[product.id] = need_ml.get(product.id, 0.0) + float(job.mix_ml.sum()) * share
    seen: set[str] = set()
    for job, product in case.treated:
        if product.id in seen:
            continue
        seen.add(product.id)
        left = [c.left_ul for c in product.containers]
        need = need_ml[product.id]
        if not left:
            yield finding(ID, Weight.KNOW, "none", job, need_ml=need)
        elif any(ul is None for ul in left):
            yield finding(ID, Weight.FIND_OUT, "unknown", job, need_ml=need)
        else:
            left_ml = sum(ul or 0 for ul in left) / 1000
            weight, message = (Weight.CHECKED, "enough") if left_ml >= need else (Weight.KNOW, "short")
            yield finding(ID, weight, message, job, need_ml=need, left_ml=left_ml)


CHECK = Check(ID, "a day's work that stops half way", ("plan", "shelf"), ("Arithmetic",), run)
