"""Can what reaches the soil be taken up by the roots of a plant that is to be kept?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, reach
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
        rooted = [s for s in case.tract.spared if s.kind in ROOTED]
        for content in product.contents:
            ingredient = case.book.ingredient(content.ingredient, content.form)
            if ingredient is None:
                yield finding(ID, Weight.FIND_OUT, "ingredient_unknown", job, ingredient=content.ingredient)
                continue
            yield from _for_ingredient(case, job, ingredient, rooted)


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient, rooted: list[Spared]) -> Iterator[Finding]:
    tool = case.book.tools[job.way.tool]
    drips = (tool.drip_low_frac, tool.drip_high_frac)
    if job.way.how == "hack and squirt":
        drips = (case.book.defaults["injection_drip_low_frac"], case.book.defaults["injection_drip_high_frac"])
    low_g, high_g = soil_mass_g(job.ae_g[ingredient.name], drips[0].number, drips[1].number, ingredient.exuded)
    worst: tuple[Level, float, Spared | None, tuple[str, ...], int] = (
        Level.NO_ROUTE_KNOWN,
        float("inf"),
        None,
        (),
        0,
    )
    source = Evidence(ingredient.soil_cited.id, ingredient.soil_cited.place, ingredient.soil_cited.source)
    unsized: list[str] = []
    for spared in rooted:
        rows, away_m = near(job, spared, LOOK_M)
        if not len(rows):
            continue
        if spared.kind == "tree" and spared.dbh_cm is None and spared.crown_radius_m is None:
            unsized.append(spared.id)
            continue
        levels = soil_level(away_m, reach(spared, case.book), ingredient.soil_active, np.asarray(high_g)[rows])
        level = Level(int(levels.max()))
        here = levels == level
        nearest_m = float(away_m[here].min())
        if (level, -nearest_m) > (worst[0], -worst[1]) or worst[2] is None:
            ids = tuple(job.stems.id[rows[here]][np.argsort(away_m[here], kind="stable")][:20])
            worst = (level, nearest_m, spared, ids, int(here.sum()))
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
    level, nearest_m, kept, ids, count = worst
    if kept is None:
        if not unsized:
            yield finding(ID, Weight.CHECKED, "nothing_near", job, [source], ingredient=ingredient.name)
        return
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [source],
        stems=ids if level > Level.NO_ROUTE_KNOWN else (),
        ingredient=ingredient.name,
        soil_active=ingredient.soil_active,
        spared=kept.id,
        spared_species=kept.species,
        distance_m=nearest_m,
        reach_m=float(reach(kept, case.book).likely_m),
        count=count if level > Level.NO_ROUTE_KNOWN else 0,
        mass_low_g=float(np.sum(low_g)),
        mass_high_g=float(np.sum(high_g)),
    )


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
