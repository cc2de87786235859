"""Is there a short way down to groundwater?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, Values, finding
from stemward.checks.near import nearest_m
from stemward.kinds import Evidence, Finding, Weight
from stemward.reckon.roots import gus

ID = "ground"
SHORT_WAYS = ("fractured", "karst", "limestone", "water table", "gravel", "sinkhole")
"""Words in what the soil lies over."""
MOVES_FROM = 1.8
"""Gustafson 1989: below this an ingredient does not leach (the limit from memory)."""
SINKHOLE_M = 60.0


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and ingredient on ground with a short way down; where nobody said what lies below, nothing."""
    for job, product in case.treated:
        over = job.patch.soil.over.lower()
        sink = _sinkhole(case, job)
        if not over and not sink:
            yield finding(ID, Weight.KNOW, "not_said", job)
            continue
        short = sink or next((word for word in SHORT_WAYS if word in over), "")
        if not short:
            yield finding(ID, Weight.CHECKED, "no_short_way", job, over=over)
            continue
        for content in product.contents:
            ingredient = case.book.ingredient(content.ingredient, content.form)
            if ingredient is None or ingredient.dt50_typical_d is None or ingredient.koc_typical_ml_g is None:
                yield finding(ID, Weight.FIND_OUT, "unknown", job, ingredient=content.ingredient, over=over or short)
                continue
            days, koc = ingredient.dt50_typical_d, ingredient.koc_typical_ml_g
            seen = [Evidence(c.id, c.place, c.source) for c in (days, koc)]
            score = gus(max(days.number, 1.0), koc.number)
            weight, message = (Weight.KNOW, "moves") if score >= MOVES_FROM else (Weight.CHECKED, "held_fast")
            values: Values = {"ingredient": content.ingredient, "over": over or short, "score": round(score, 1)}
            yield finding(ID, weight, message, job, seen, values=values)


def _sinkhole(case: Case, job: Job) -> str:
    away = nearest_m(job, case.tract.spared).tolist()
    near_by = (s.id for a, s in zip(away, case.tract.spared, strict=True) if s.kind == "sinkhole" and a <= SINKHOLE_M)
    return next(near_by, "")


CHECK = Check(
    ID,
    "groundwater under thin soil, fractured rock and sinkholes",
    ("plan", "handbook", "site facts"),
    ("Gustafson 1989, Environ. Toxicol. Chem. 8:339-357 (score); it gives no distance to anything",),
    run,
)
