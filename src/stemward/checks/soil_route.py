"""Can what reaches the soil be taken up by the roots of a plant that is to be kept?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, nearest_m, reach_of, rooted
from stemward.handbook import Ingredient
from stemward.kinds import Evidence, Finding, Spared, Weight
from stemward.reckon.roots import Level, Reach, soil_level, soil_mass_g

ID = "soil-route"
LOOK_M = 60.0
"""Laterals of over 50 m are on record for few species (Stone & Kalisz 1991, from memory)."""

WEIGHT = {
    Level.NO_ROUTE_KNOWN: Weight.CHECKED,
    Level.LITTLE: Weight.KNOW,
    Level.SOME: Weight.KNOW,
    Level.MUCH: Weight.STOP,
}


def run(case: Case) -> Iterator[Finding]:
    """The worst level per job and ingredient and the plant concerned; trees without a size are asked about."""
    for job, product in case.treated:
        for content in product.contents:
            ingredient = case.book.ingredient(content.ingredient, content.form)
            if ingredient is None:
                yield finding(ID, Weight.FIND_OUT, "ingredient_unknown", job, ingredient=content.ingredient)
                continue
            yield from _for_ingredient(case, job, ingredient)


def drips(case: Case, job: Job) -> tuple[float, float]:
    """Share of the mix that reaches the soil, low and high, by method and tool."""
    by_method = {"hack and squirt": "injection", "basal bark": "basal", "foliar": "foliar"}
    if job.way.how in by_method:
        name = by_method[job.way.how]
        low, high = (case.book.defaults[f"{name}_drip_{end}_frac"].number for end in ("low", "high"))
        if name == "basal" and len(job.stems) and job.stems.diameter_cm.min() < thin_cm(case):
            high = case.book.defaults["basal_drip_thin_frac"].number
        return low, high
    tool = case.book.tools[job.way.tool]
    return tool.drip_low_frac.number, tool.drip_high_frac.number


def thin_cm(case: Case) -> float:
    """Stems under this size lose more of what is put on them."""
    return case.book.defaults["small_stem_cm"].number


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient) -> Iterator[Finding]:
    low, high = drips(case, job)
    low_g, high_g = soil_mass_g(job.ae_g[ingredient.name], low, high, ingredient.exuded)
    source = Evidence(ingredient.soil_cited.id, ingredient.soil_cited.place, ingredient.soil_cited.source)
    spared, kept = case.tract.spared, rooted(case.tract.spared, case.book)
    away_m = nearest_m(job, spared)
    here = kept.rooted & (away_m <= LOOK_M)
    unsized = [spared[n].id for n in np.flatnonzero(here & kept.unsized).tolist()]
    if unsized and ingredient.soil_active != "no":
        yield finding(
            ID,
            Weight.FIND_OUT,
            "size_unknown",
            job,
            [source],
            ingredient=ingredient.name,
            spared=", ".join(unsized[:5]),
            count=len(unsized),
        )
    sized = np.flatnonzero(here & ~kept.unsized)
    if not len(sized):
        if not unsized:
            yield finding(ID, Weight.CHECKED, "nothing_near", job, [source], ingredient=ingredient.name)
        return
    # The nearest stem decides for each plant: levels never fall when nearer.
    levels = soil_level(away_m, kept.reach, ingredient.soil_active, float(np.max(high_g, initial=0.0)))[sized]
    at = int(sized[np.lexsort((away_m[sized], -levels))[0]])
    level = Level(int(levels.max()))
    reach = reach_of(kept, at)
    ids, count = _stems(job, ingredient, spared[at], reach, level)
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [source],
        stems=ids,
        ingredient=ingredient.name,
        soil_active=ingredient.soil_active,
        spared=spared[at].id,
        spared_species=spared[at].species,
        distance_m=float(away_m[at]),
        reach_m=float(reach.likely_m),
        count=count,
        mass_low_g=float(np.sum(low_g)),
        mass_high_g=float(np.sum(high_g)),
    )


def _stems(job: Job, ingredient: Ingredient, kept: Spared, reach: Reach, level: Level) -> tuple[tuple[str, ...], int]:
    """The stems at that level from the plant, nearest first, and how many they are."""
    if level == Level.NO_ROUTE_KNOWN:
        return (), 0
    rows, away_m = near(job, kept, LOOK_M)
    here = soil_level(away_m, reach, ingredient.soil_active, job.ae_g[ingredient.name][rows]) == level
    order = np.argsort(away_m[here], kind="stable")
    return tuple(job.stems.id[rows[here]][order][:20]), int(here.sum())


CHECK = Check(
    ID,
    "wanted plants whose roots reach soil that holds the ingredient",
    ("plan", "what is kept from harm", "handbook"),
    (
        "Root spread: Univ. of Florida, root growth pages; NC State Extension, tree protection figures",
        "Common practice, no source: glyphosate hardly moves in soil, imazapyr does",
    ),
    run,
)
