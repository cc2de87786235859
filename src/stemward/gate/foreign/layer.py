"""One table or layer of a foreign file: cells as typed, and shapes where it has them."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from stemward.gate.problems import Problem, Unreadable
from stemward.kinds import Shape

Sort = Literal["csv", "xlsx", "gpx", "kml", "geojson", "gpkg", "shapefile"]
MOST_BYTES = 64 * 1024 * 1024
MOST_ROWS = 400_000
MOST_COLUMNS = 200
"""Engineering guesses, some times what the largest tract needs."""


@dataclass(frozen=True, eq=False)
class Layer:
    """Rows of cells under headings, with the line or number of each, and its shape or None.

    degrees: True where shapes are longitude and latitude (WGS 84); else they stand as they are in the file.
    """

    name: str
    sort: Sort
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    lines: tuple[int, ...]
    shapes: tuple[Shape | None, ...] = ()
    degrees: bool = False


def own_names(headings: Iterable[str]) -> tuple[str, ...]:
    """Headings each with a name of its own: of two that are alike the later one gets a number."""
    found: dict[str, None] = {}
    for heading in headings:
        name, number = heading, 1
        while name in found:
            number += 1
            name = f"{heading} ({number})"
        found[name] = None
    return tuple(found)


def refuse(message: str, name: str, **values: str | float) -> Unreadable:
    """What is wrong with a whole file, as an error to raise."""
    return Unreadable((Problem(message, dict(values), name),), 1)
