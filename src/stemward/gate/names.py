"""Plant names in files, looked up in the handbook or whatever stands in for it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

from stemward.gate.text import clean


class Plant(Protocol):
    """A plant that was found."""

    @property
    def latin(self) -> str:
        """The name the other rooms use."""
        ...

    @property
    def max_dbh_cm(self) -> float | None:
        """Greatest diameter usually met, None if not known."""
        ...


class Near(Protocol):
    """A name that is no plant's: what it may be meant for, as (common, latin)."""

    @property
    def candidates(self) -> Sequence[tuple[str, str]]:
        """Best first; may be empty."""
        ...


FindSpecies = Callable[[str], Plant | Near]


@dataclass(frozen=True, slots=True)
class Named:
    """A looked-up name. latin is empty if it was not found; near then lists what may be meant."""

    latin: str
    near: str = ""
    max_dbh_cm: float | None = None


def look_up(text: str, find_species: FindSpecies) -> Named:
    """The plant a name stands for, or the names near it."""
    found = find_species(text)
    latin = getattr(found, "latin", "")
    if latin:
        return Named(str(latin), "", getattr(found, "max_dbh_cm", None))
    candidates: Sequence[tuple[str, str]] = getattr(found, "candidates", ())
    return Named("", "; ".join(f"{clean(common)} ({clean(name)})" for common, name in candidates[:5]))
