"""Can the treatment pass through grafted or shared roots into a plant that is to be kept?"""

import math
from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check, Job, finding
from stemward.checks.near import near
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


def _kin(case: Case, job: Job) -> Iterator[tuple[Spared, float, bool]]:
    """Spared plants that may share roots with the target: graft distance and whether it may be one plant."""
    book = case.book
    for spared in case.tract.spared:
        if spared.kind != "tree" or not spared.species:
            continue
        other = book.species.get(spared.species)
        same = spared.species == job.target.species
        if same:
            oak = job.species.genus == "Quercus"
            yield spared, book.defaults["graft_oak_m" if oak else "graft_same_m"].number, job.species.clone
        elif other is not None and other.genus == job.species.genus == "Quercus":
            yield spared, book.defaults["graft_oak_m"].number, False


def _for_ingredient(case: Case, job: Job, ingredient: Ingredient) -> Iterator[Finding]:
    unnamed = [s.id for s in case.tract.spared if s.kind == "tree" and not s.species]
    if unnamed:
        yield finding(ID, Weight.FIND_OUT, "kind_unknown", job, spared=", ".join(unnamed[:5]), count=len(unnamed))
    worst: tuple[Level, float, Spared | None, tuple[str, ...], int, float] = (
        Level.NO_ROUTE_KNOWN, float("inf"), None, (), 0, 0.0,
    )  # fmt: skip
    for spared, graft_m, clone in _kin(case, job):
        # One clone is one plant at any distance; otherwise what stands far beyond the graft distance says nothing.
        rows, away_m = near(job, spared, math.inf if clone else LOOK_M)
        if not len(rows):
            continue
        levels = shared_root_level(away_m, graft_m, clone, ingredient.translocated, job.way.how == "cut stump")
        level = Level(int(levels.max()))
        here = levels == level
        nearest_m = float(away_m[here].min())
        if worst[2] is None or (level, -nearest_m) > (worst[0], -worst[1]):
            ids = tuple(job.stems.id[rows[here]][np.argsort(away_m[here], kind="stable")][:20])
            worst = (level, nearest_m, spared, ids, int(here.sum()), graft_m)
    level, nearest_m, kept, ids, count, graft_m = worst
    if kept is None:
        if not unnamed:
            yield finding(ID, Weight.CHECKED, "no_kin", job, ingredient=ingredient.name)
        return
    source = case.book.defaults["graft_same_m"]
    yield finding(
        ID,
        WEIGHT[level],
        level.name.lower(),
        job,
        [Evidence(source.id, source.place, source.source)],
        stems=ids if level > Level.NO_ROUTE_KNOWN else (),
        ingredient=ingredient.name,
        spared=kept.id,
        spared_species=kept.species,
        distance_m=nearest_m,
        graft_m=graft_m,
        count=count if level > Level.NO_ROUTE_KNOWN else 0,
        clone=int(job.species.clone and kept.species == job.target.species),
    )


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
