"""Can what reaches the soil be taken up by the roots of a plant that is to be kept?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, nearest_m, reach
from stemward.handbook import Ingredient
from stemward.kinds import Evidence, Finding, Spared, Weight
from stemward.reckon.roots import Level, soil_level, soil_mass_g

ID = "soil-route"
LOOK_M = 60.0
"""Laterals of over 50 m are on record for few species (Stone & Kalisz 1991, from memory)."""

WEIGHT = {
    Level.NO_ROUTE_KNOWN: Weight.CHECKED,
    Level.LITTLE: Weight.KNOW,
    Level.SOME: Weight.KNOW,
    Level.MUCH: Weight.STOP,
}
ROOTED = ("tree", "small plants", "garden")


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


def level_of(case: Case, job: Job, ingredient: Ingredient, spared: Spared, away_m: float) -> Level:
    """The level of the route through soil from the nearest stem, which is the worst: levels rise as it is nearer."""
    _, high = drips(case, job)
    mass_g = float(job.ae_g[ingredient.name].max(initial=0.0)) * (1.0 if ingredient.exuded else high)
    return Level(int(soil_level(away_m, reach(spared, case.book), ingredient.soil_active, mass_g)))


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient) -> Iterator[Finding]:
    low, high = drips(case, job)
    low_g, high_g = soil_mass_g(job.ae_g[ingredient.name], low, high, ingredient.exuded)
    source = Evidence(ingredient.soil_cited.id, ingredient.soil_cited.place, ingredient.soil_cited.source)
    away_m = nearest_m(job, case.tract.spared)
    worst: tuple[Level, float, Spared | None] = (Level.NO_ROUTE_KNOWN, float("inf"), None)
    unsized: list[str] = []
    for number in np.flatnonzero(away_m <= LOOK_M).tolist():
        spared = case.tract.spared[number]
        if spared.kind not in ROOTED:
            continue
        if spared.kind == "tree" and spared.dbh_cm is None and spared.crown_radius_m is None:
            unsized.append(spared.id)
            continue
        nearest = float(away_m[number])
        level = level_of(case, job, ingredient, spared, nearest)
        if worst[2] is None or (level, -nearest) > (worst[0], -worst[1]):
            worst = (level, nearest, spared)
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
    level, nearest, kept = worst
    if kept is None:
        if not unsized:
            yield finding(ID, Weight.CHECKED, "nothing_near", job, [source], ingredient=ingredient.name)
        return
    ids, count = _stems(case, job, ingredient, kept, level)
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [source],
        stems=ids,
        ingredient=ingredient.name,
        soil_active=ingredient.soil_active,
        spared=kept.id,
        spared_species=kept.species,
        distance_m=nearest,
        reach_m=float(reach(kept, case.book).likely_m),
        count=count,
        mass_low_g=float(np.sum(low_g)),
        mass_high_g=float(np.sum(high_g)),
    )


def _stems(case: Case, job: Job, ingredient: Ingredient, kept: Spared, level: Level) -> tuple[tuple[str, ...], int]:
    """The stems at that level from the plant, nearest first, and how many they are."""
    if level == Level.NO_ROUTE_KNOWN:
        return (), 0
    rows, away_m = near(job, kept, LOOK_M)
    levels = soil_level(away_m, reach(kept, case.book), ingredient.soil_active, job.ae_g[ingredient.name][rows])
    here = levels == level
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
