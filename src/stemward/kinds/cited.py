"""A value that says where it comes from."""

from dataclasses import dataclass
from typing import Literal

Grade = Literal["read", "proposed", "published", "practice", "memory", "guess", "invented", "own"]
"""How a value came to be known.

read: by a person on a label; proposed: by a reader of PDFs; published: author, title, year;
practice: common practice, no source; memory: recalled, never a limit; guess: engineering guess;
invented: belongs to the demo; own: measured or chosen by the user.
"""


@dataclass(frozen=True, slots=True)
class Cited:
    """One value with its unit, its source, its place in the source and how it is known.

    id: stable name by which sums refer to it, for example "default.ring_cm".
    value: number, or word where the value is a word.
    unit: metric unit as written in names ("cm", "ml", "frac"), "" for words and counts.
    """

    id: str
    value: float | str
    unit: str
    source: str
    place: str
    grade: Grade
    note: str = ""

    @property
    def number(self) -> float:
        """The value as a number; TypeError when it is a word."""
        if isinstance(self.value, str):
            raise TypeError(f"{self.id} holds a word, not a number")
        return self.value
