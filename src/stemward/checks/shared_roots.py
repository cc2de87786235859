"""Can the treatment pass through grafted or shared roots into a plant that is to be kept?"""

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near, nearest_m, rooted
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


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient) -> Iterator[Finding]:
    spared = case.tract.spared
    names = rooted(spared, case.book).species
    trees = np.array([one.kind == "tree" for one in spared], bool)
    unnamed = [spared[n].id for n in np.flatnonzero(trees & (names == "")).tolist()]
    if unnamed:
        yield finding(ID, Weight.FIND_OUT, "kind_unknown", job, spared=", ".join(unnamed[:5]), count=len(unnamed))
    away_m = nearest_m(job, spared)
    same = trees & (names == job.target.species)
    oak = job.species.genus == "Quercus"
    kin = same | (trees & oak & np.char.startswith(names, "Quercus "))
    clone = same & job.species.clone
    # One clone is one plant at any distance; otherwise what stands far beyond the graft distance says nothing.
    near_kin = np.flatnonzero(kin & (clone | (away_m <= LOOK_M)))
    if not len(near_kin):
        if not unnamed:
            yield finding(ID, Weight.CHECKED, "no_kin", job, ingredient=ingredient.name)
        return
    graft_m = case.book.defaults["graft_oak_m" if oak else "graft_same_m"].number
    levels = np.array([_level(job, away_m[n], (graft_m, bool(clone[n])), ingredient) for n in near_kin.tolist()], int)
    at = int(near_kin[np.lexsort((away_m[near_kin], -levels))[0]])
    level, one_plant = Level(int(levels.max())), bool(clone[at])
    ids, count = _stems(job, spared[at], level, (graft_m, one_plant), ingredient)
    source = case.book.defaults["graft_same_m"]
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [Evidence(source.id, source.place, source.source)],
        stems=ids,
        ingredient=ingredient.name,
        spared=spared[at].id,
        spared_species=spared[at].species,
        distance_m=float(away_m[at]),
        graft_m=graft_m,
        count=count,
        clone=int(one_plant),
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
