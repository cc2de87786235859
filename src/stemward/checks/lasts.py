"""Will an ingredient still act in the soil when something else is to grow there?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Values, finding
from stemward.handbook import Ingredient
from stemward.kinds import Evidence, Finding, Weight
from stemward.reckon.roots import remaining_frac

ID = "lasts"
NEXT_SEASON_DAYS = 180
STILL_THERE_FRAC = 0.25
"""More than a quarter left after half a year: practitioner's judgement, no source."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a job and ingredient; one that is not the main ingredient of its jug is asked about."""
    for job, product in case.treated:
        main = max(product.contents, key=lambda c: c.strength_ae_g_l, default=None)
        for content in product.contents:
            ingredient = case.book.ingredient(content.ingredient, content.form)
            if ingredient is None or ingredient.dt50_high_d is None:
                yield finding(ID, Weight.FIND_OUT, "unknown", job, ingredient=content.ingredient)
                continue
            long = ingredient.dt50_high_d
            source = [Evidence(long.id, long.place, long.source)]
            share = float(remaining_frac(NEXT_SEASON_DAYS, long.number))
            values: Values = {"ingredient": content.ingredient, "left_frac": share, "half_days": long.number}
            if not _acts(ingredient) or share < STILL_THERE_FRAC:
                yield finding(ID, Weight.CHECKED, "fades", job, source, values=values)
            elif content is not main:
                yield finding(ID, Weight.FIND_OUT, "second", job, source, values=values)
            else:
                yield finding(ID, Weight.KNOW, "stays", job, source, values=values)


def _acts(ingredient: Ingredient) -> bool:
    return ingredient.soil_active != "no" or ingredient.exuded


CHECK = Check(
    ID,
    "what is planted or comes up by itself where an ingredient still acts",
    ("plan", "handbook"),
    ("First-order decay over half a year from the longest half-life on record; each half-life has its source",),
    run,
)
