"""Kill rates to hand on: what was seen, by plant, way, strength and season, without place, day, name or product."""

from dataclasses import dataclass

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.revisits import Work, works
from stemward.plan.apart import percent_of, season_of
from stemward.plan.killed import verdicts


@dataclass(frozen=True, slots=True)
class Rate:
    """Dead and seen of works alike.

    ingredients: with form and g ae/L where the shelf tells them. percent: of product in the mix, 0 where none is known.
    season: quarter of the year, 0 is December to February. months: the shortest time to the look. works: how many days'
    works, since those of one day go alike.
    """

    species: str
    method: str
    ingredients: tuple[str, ...]
    percent: float
    season: int
    works: int
    dead: int
    seen: int
    months: float


def rates_of(tract: Tract, book: Book) -> tuple[Rate, ...]:
    """All looks that count, added up; in the order of plant, method, ingredient, strength and season."""
    found: dict[tuple[str, str, tuple[str, ...], float, int], list[tuple[int, int, float]]] = {}
    for work, seen in verdicts(works(tract, book)):
        key = (work.species, work.method, _ingredients(work, tract), percent_of(work), season_of(work))
        found.setdefault(key, []).append((seen.dead, seen.judged, seen.months))
    return tuple(
        Rate(*key, len(rows), sum(r[0] for r in rows), sum(r[1] for r in rows), min(r[2] for r in rows))
        for key, rows in sorted(found.items())
    )


def _ingredients(work: Work, tract: Tract) -> tuple[str, ...]:
    product = next((p for p in tract.shelf if p.id == work.product), None)
    if product is None or not product.contents:
        return tuple(sorted(work.ingredients))
    return tuple(
        " ".join(filter(None, (c.ingredient, c.form, f"{c.strength_ae_g_l:.0f} g ae/L"))) for c in product.contents
    )
