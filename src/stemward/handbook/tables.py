"""Reading the packaged tables: a row that does not say where it comes from is not read."""

import csv
from pathlib import Path
from typing import get_args

from stemward.kinds import Cited, Grade

Row = dict[str, str]
GRADES = get_args(Grade)


class HandbookError(Exception):
    """A packaged table that cannot be used; the text names file, row and what is wrong."""


def read_table(folder: Path, name: str) -> list[Row]:
    """The data rows of a table. Raises HandbookError with file and row where source or grade is missing."""
    with (folder / name).open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    for number, row in enumerate(rows, 1):
        if None in row or None in row.values():
            raise HandbookError(f"{name}, row {number}: more or fewer cells than columns. Nothing was loaded.")
        if not row.get("source", "").strip():
            raise HandbookError(f"{name}, row {number}: no source. Nothing was loaded.")
        if row.get("grade") not in GRADES:
            raise HandbookError(
                f"{name}, row {number}: grade '{row.get('grade')}' is not one of {', '.join(GRADES)}. "
                "Nothing was loaded."
            )
    return rows


def figure(row: Row, column: str) -> float | None:
    """A number of a row, None for an empty cell."""
    text = row[column]
    return float(text) if text else None


def parts(text: str, mark: str = "|") -> tuple[str, ...]:
    """The parts of a cell that holds several."""
    return tuple(part.strip() for part in text.split(mark) if part.strip())


def cite(row: Row, ref: str, value: float | str, unit: str = "") -> Cited:
    """A value of a row with that row's source. Typed figures that differ from the value stand in the note."""
    typed = row.get("typed", "")
    note = "; ".join(part for part in (f"as published: {typed}" if typed else "", row.get("note", "")) if part)
    return Cited(ref, value, unit, row["source"], row["place"], row["grade"], note)  # type: ignore[arg-type]


def cite_value(row: Row, ref: str = "") -> Cited:
    """The value of a row of a one-value-a-row table, under the row's own id unless `ref` is given."""
    return cite(row, ref or row["id"], number_or_word(row["value"]), row["unit"])


def number_or_word(text: str) -> float | str:
    """A number where the text is one, else the text."""
    try:
        return float(text)
    except ValueError:
        return text
