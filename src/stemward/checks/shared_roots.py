"""Can the treatment pass through grafted or shared roots into a plant that is to be kept?"""

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, nearest_m
from stemward.handbook import Ingredient
from stemward.kinds import Evidence, Finding, Spared, Weight
from stemward.reckon.roots import Level, shared_root_level

ID = "shared-roots"
LOOK_M = 100.0
"""Kin farther off than this are not spoken of; grafts are on record within a third of it."""
WEIGHT = {
    Level.NO_ROUTE_KNOWN: Weight.CHECKED,
    Level.LITTLE: Weight.KNOW,
    Level.SOME: Weight.KNOW,
    Level.MUCH: Weight.STOP,
}


def run(case: Case) -> Iterator[Finding]:
    """The worst level per job and ingredient over all spared plants of the same kind."""
    for job, product in case.treated:
        for content in product.contents:
            ingredient = case.book.ingredient(content.ingredient, content.form)
            if ingredient is not None:
                yield from _for_ingredient(case, job, ingredient)


def kinship(case: Case, job: Job, spared: Spared) -> tuple[float, bool] | None:
    """Graft distance of a kept tree, metres, and whether it may be one plant with the target; None if no kin."""
    book = case.book
    if spared.kind != "tree" or not spared.species:
        return None
    if spared.species == job.target.species:
        oak = job.species.genus == "Quercus"
        return book.defaults["graft_oak_m" if oak else "graft_same_m"].number, job.species.clone
    if job.species.genus == "Quercus" and spared.species.startswith("Quercus "):
        return book.defaults["graft_oak_m"].number, False
    return None


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient) -> Iterator[Finding]:
    spared = case.tract.spared
    unnamed = [s.id for s in spared if s.kind == "tree" and not s.species]
    if unnamed:
        yield finding(ID, Weight.FIND_OUT, "kind_unknown", job, spared=", ".join(unnamed[:5]), count=len(unnamed))
    away_m = nearest_m(job, spared)
    worst: tuple[Level, float, Spared | None, float, bool] = (Level.NO_ROUTE_KNOWN, math.inf, None, 0.0, False)
    for number, one in enumerate(spared):
        kin = kinship(case, job, one)
        # One clone is one plant at any distance; otherwise what stands far beyond the graft distance says nothing.
        if kin is None or (not kin[1] and away_m[number] > LOOK_M):
            continue
        nearest = float(away_m[number])
        level = Level(int(_level(job, nearest, kin, ingredient)))
        if worst[2] is None or (level, -nearest) > (worst[0], -worst[1]):
            worst = (level, nearest, one, *kin)
    level, nearest, kept, graft_m, clone = worst
    if kept is None:
        if not unnamed:
            yield finding(ID, Weight.CHECKED, "no_kin", job, ingredient=ingredient.name)
        return
    ids, count = _stems(job, kept, level, (graft_m, clone), ingredient)
    source = case.book.defaults["graft_same_m"]
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [Evidence(source.id, source.place, source.source)],
        stems=ids,
        ingredient=ingredient.name,
        spared=kept.id,
        spared_species=kept.species,
        distance_m=nearest,
        graft_m=graft_m,
        count=count,
        clone=int(clone),
    )


def _level(job: Job, away_m: ArrayLike, kin: tuple[float, bool], ingredient: Ingredient) -> NDArray[np.int64]:
    return shared_root_level(away_m, kin[0], kin[1], ingredient.translocated, job.way.how == "cut stump")


def _stems(
    job: Job, kept: Spared, level: Level, kin: tuple[float, bool], ingredient: Ingredient
) -> tuple[tuple[str, ...], int]:
    """The stems at that level from the tree, nearest first, and how many they are."""
    if level == Level.NO_ROUTE_KNOWN:
        return (), 0
    rows, away_m = near(job, kept, math.inf if kin[1] else LOOK_M)
    here = _level(job, away_m, kin, ingredient) == level
    order = np.argsort(away_m[here], kind="stable")
    return tuple(job.stems.id[rows[here]][order][:20]), int(here.sum())


CHECK = Check(
    ID,
    "wanted trees that share roots with the trees treated",
    ("plan", "what is kept from harm", "handbook"),
    (
        "DiTomaso & Kyser 2007, Arboric. & Urban For. 33(1):59 (same kind, about 5 m)",
        "Kochenderfer et al. 2004, North. J. Appl. For. 21(1):40-49 (beech, shared roots)",
        "radiata pine tracer study 1970, Austral. J. Bot. 18:251 (cut stumps pass more)",
    ),
    run,
)
