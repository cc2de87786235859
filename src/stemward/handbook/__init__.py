"""What the trade knows, as tables in which every row has a source."""

from functools import cache

from stemward.handbook.book import Book
from stemward.handbook.tables import (
    BrokenHandbook,
    CutRule,
    Evidence,
    Ingredient,
    Near,
    Species,
    Strength,
    Tool,
)

__all__ = [
    "Book",
    "BrokenHandbook",
    "CutRule",
    "Evidence",
    "Ingredient",
    "Near",
    "Species",
    "Strength",
    "Tool",
    "load",
]


@cache
def load() -> Book:
    """The packaged handbook; its tables are read when first asked for."""
    return Book()
