"""When to go back: how soon a first look tells something, by method and ingredient."""

from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.tables import cite, read_table
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class FirstLook:
    """Months after which a first look tells something; ingredient "" for any."""

    method: str
    ingredient: str
    months: int
    cited: Cited


def load_first_looks(folder: Path) -> tuple[FirstLook, ...]:
    """All rows, in the table's order."""
    return tuple(
        FirstLook(row["method"], row["ingredient"], int(row["first_months"]), cite(row, row["id"], row["first_months"]))
        for row in read_table(folder, "revisits.csv")
    )


def first_look(rows: tuple[FirstLook, ...], method: str, ingredients: tuple[str, ...]) -> FirstLook | None:
    """The row of a method; one that names an ingredient stands in for the general one."""
    fits = [r for r in rows if r.method == method and r.ingredient in ("", *ingredients)]
    return max(fits, key=lambda r: bool(r.ingredient), default=None)
