"""How much of each ingredient would lie on the ground, over all jobs and this year's records."""

import datetime

import numpy as np

from stemward.checks import Job, Load
from stemward.handbook import Book
from stemward.kinds import Product, Tract
from stemward.ledger import in_force
from stemward.plan.sums import Ledger
from stemward.reckon.densest import Densest, densest_acre
from stemward.reckon.limits import mean_rate_g_m2


def loads_of(jobs: tuple[Job, ...], tract: Tract, book: Book, as_of: datetime.date, sums: Ledger) -> tuple[Load, ...]:
    """The load by ingredient: clusters are drawn over all jobs together, whatever patch they are in.

    What the records say was used in a patch this year or in the last 12 months (the greater) is added to
    every cluster with a stem in that patch, as if it lay on the cluster: never too little.
    """
    names = sorted({name for job in jobs for name in job.ae_g})
    return tuple(_load(name, jobs, tract, book, as_of, sums) for name in names)


def _load(name: str, jobs: tuple[Job, ...], tract: Tract, book: Book, as_of: datetime.date, sums: Ledger) -> Load:
    here = [job for job in jobs if name in job.ae_g and len(job.stems)]
    products = tuple(sorted({p.id for job in here for _, p in job.by_product if name in _held(p)}))
    if not here:
        return Load(name, 0.0, 0.0, 0.0, 0, 0.0, products)
    refs = {axis: "+".join(f"column:{job.id}/{axis}" for job in here) for axis in ("x_m", "y_m")}
    terms = {key: sums.cite(book.defaults[key]) for key in ("link_m", "cluster_buffer_m", "least_area_m2")}
    step = f"load.{name}"
    labels = sums.work(f"{step}.cluster", "clusters", "", link_m=terms["link_m"], **refs)
    area_m2 = sums.work(
        f"{step}.area_m2",
        "cluster_area_m2",
        "m2",
        labels=f"step:{step}.cluster",
        buffer_m=terms["cluster_buffer_m"],
        least_m2=terms["least_area_m2"],
        **refs,
    )
    planned = sums.work(
        f"{step}.planned_g_m2",
        "rate_g_m2",
        "g_m2",
        ae_g="+".join(f"step:{job.id}.ae_g.{name}" for job in here),
        labels=f"step:{step}.cluster",
        area_m2=f"step:{step}.area_m2",
    )
    used = recorded(tract, name, as_of)
    patches = np.concatenate([job.stems.patch for job in here])
    recorded_g = np.zeros(len(area_m2))
    for patch, grams in used.items():
        recorded_g[np.unique(labels[patches == patch])] += grams
    rate = sums.work(
        f"{step}.rate_g_m2",
        "with_recorded_g_m2",
        "g_m2",
        rate_g_m2=f"step:{step}.planned_g_m2",
        recorded_g=sums.column(step, "recorded_g", recorded_g),
        area_m2=f"step:{step}.area_m2",
    )
    sums.work(f"{step}.greatest_g_m2", "greatest", "g_m2", each=f"step:{step}.rate_g_m2")
    worst = int(np.argmax(rate))
    planned_g = float((planned * area_m2).sum())
    return Load(
        name,
        float(rate[worst]),
        mean_rate_g_m2([planned_g, *used.values()], area_m2),
        float(area_m2[worst]),
        int((labels == worst).sum()),
        float(recorded_g[worst]),
        products,
        float(np.max(planned, initial=0.0)),
        _densest(name, here, used) if sums.written else None,
    )


def _densest(name: str, jobs: list[Job], used: dict[str, float]) -> Densest:
    """The densest acre over the plan; what the records say for a patch lies evenly on its stems that are planned."""
    x_m, y_m = (np.concatenate([getattr(job.stems, axis) for job in jobs]) for axis in ("x_m", "y_m"))
    grams = np.concatenate([job.ae_g[name] for job in jobs])
    patches = np.concatenate([job.stems.patch for job in jobs])
    for patch, recorded_g in used.items():
        own = patches == patch
        if own.any():
            grams[own] += recorded_g / own.sum()
    return densest_acre(x_m, y_m, grams)


def _held(product: Product) -> set[str]:
    return {content.ingredient for content in product.contents}


def recorded(tract: Tract, ingredient: str, as_of: datetime.date) -> dict[str, float]:
    """Grams of an ingredient that the records say were used, by patch: this calendar year or the last
    12 months up to `as_of`, whichever is more. Corrected entries do not count."""
    year: dict[str, float] = {}
    rolling: dict[str, float] = {}
    for entry in in_force(tract.entries):
        if entry.kind != "treated":
            continue
        on = datetime.date.fromisoformat(entry.at[:10])
        grams = float(entry.body.get("ae_g", {}).get(ingredient, 0.0))
        patch = str(entry.body.get("patch", ""))
        if on > as_of:
            continue
        if on.year == as_of.year:
            year[patch] = year.get(patch, 0.0) + grams
        if (as_of - on).days < 365:
            rolling[patch] = rolling.get(patch, 0.0) + grams
    return {p: max(year.get(p, 0.0), rolling.get(p, 0.0)) for p in {*year, *rolling}}
