"""What a check says."""

from dataclasses import dataclass
from enum import IntEnum


class Weight(IntEnum):
    """How much a finding weighs; a greater number is worse."""

    CHECKED = 0
    KNOW = 1
    FIND_OUT = 2
    STOP = 3

    @property
    def word(self) -> str:
        """The word used in files: checked, know, find out, stop."""
        return self.name.lower().replace("_", " ")


@dataclass(frozen=True, slots=True)
class Where:
    """What a finding is about: patch, species, product and some stems (by id, at most 20 are kept)."""

    patch: str = ""
    species: str = ""
    product: str = ""
    stems: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Evidence:
    """What a finding leans on: a label place, a table row, a distance. `place` is page or row."""

    what: str
    place: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding: the check's id, its weight, a message id with typed values, and what it leans on.

    values: numbers carry their unit in the name ("distance_m"); room `say` makes the sentence.
    """

    check: str
    weight: Weight
    message: str
    values: tuple[tuple[str, str | float | int], ...] = ()
    where: Where = Where()
    evidence: tuple[Evidence, ...] = ()
