"""What is known of treating one plant: the best of each way, the best months, what fails, and who says so."""

from dataclasses import dataclass

from stemward.handbook import Book, Evidence, Species
from stemward.handbook.field import Hazard, Season
from stemward.kinds import METHODS, Cited
from stemward.plan.behind import TIER

MOST_WAYS = 3
RANK = {"excellent": 4, "good": 3, "fair": 2, "none-stated": 1, "poor": 0}


@dataclass(frozen=True, slots=True)
class Known:
    """One way on record for a plant: its rows, best first, and the months for it."""

    how: str
    ingredients: tuple[str, ...]
    rows: tuple[Evidence, ...]
    seasons: tuple[Season, ...]


@dataclass(frozen=True, slots=True)
class PlantKnown:
    """All that `stemward handbook` shows of a plant."""

    species: Species
    ways: tuple[Known, ...]
    fails: tuple[Evidence, ...]
    weak: tuple[Cited, ...]
    hazards: tuple[Hazard, ...]


def known_of(species: Species, book: Book) -> PlantKnown:
    """Three ways at most, those with trials and high ratings first; one way a method and set of ingredients."""
    rows = [row for row in book.rows_of(species.latin) if row.counts and row.method in METHODS]
    ways: dict[tuple[str, tuple[str, ...]], list[Evidence]] = {}
    for row in rows:
        if row.sense == "for" and (row.ingredients or row.method in METHODS[1:4]):
            ways.setdefault((row.method, row.ingredients), []).append(row)
    best = sorted(ways.items(), key=lambda item: _rank(item[1]), reverse=True)[:MOST_WAYS]
    pairs = {(row.method, name) for row in rows for name in row.ingredients}
    weak = {c.id: c for method, name in sorted(pairs) if (c := book.weak(species.latin, method, name)) is not None}
    return PlantKnown(
        species,
        tuple(
            Known(
                how,
                names,
                tuple(sorted(some, key=lambda r: _rank([r]), reverse=True)),
                book.seasons(species.latin, how),
            )
            for (how, names), some in best
        ),
        tuple(row for row in rows if row.sense == "against")[:6],
        tuple(weak.values()),
        book.hazards(species.latin),
    )


def _rank(rows: list[Evidence]) -> tuple[int, int, float, int]:
    """Trials before advice, better before worse, then more rows."""
    return (
        max(TIER[row.kind] for row in rows),
        max(RANK[row.rating] for row in rows),
        max((row.low_frac or 0.0) for row in rows),
        len(rows),
    )


def _rank_one(row: Evidence) -> tuple[int, int, float, int]:
    return _rank([row])
