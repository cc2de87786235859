"""What the trade knows: plants, ingredients, evidence, rules and defaults, each row with its source."""

from stemward.handbook.book import Book, load
from stemward.handbook.tables import HandbookError
from stemward.handbook.values import (
    Caution,
    CutRule,
    Evidence,
    Gear,
    Ingredient,
    Near,
    Species,
    Strength,
    Tool,
    WiltMonths,
)

__all__ = [
    "Book",
    "Caution",
    "CutRule",
    "Evidence",
    "Gear",
    "HandbookError",
    "Ingredient",
    "Near",
    "Species",
    "Strength",
    "Tool",
    "WiltMonths",
    "load",
]
