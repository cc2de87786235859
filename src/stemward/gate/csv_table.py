"""A CSV text to columns of text, with the line of every row, whatever its delimiter and quoting."""

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stemward.gate.problems import Problems
from stemward.gate.text import clean, near
from stemward.kinds import Table

if TYPE_CHECKING:
    import polars as pl

DELIMITERS = (",", ";", "\t", "|")
MOST_COLUMNS = 200

Lines = NDArray[np.int64]


@dataclass(frozen=True, eq=False)
class Cells:
    """Columns of a table as trimmed text, null where empty; `lines` holds the line each row begins on."""

    file: str
    columns: dict[str, "pl.Series"]
    headings: dict[str, str]
    lines: Lines

    def __len__(self) -> int:
        return len(self.lines)

    def has(self, name: str) -> bool:
        """True if the file has this column, under whatever heading."""
        return name in self.columns

    def heading(self, name: str) -> str:
        """The column's heading as it stands in the file, or its own name if it has none."""
        return self.headings.get(name, name)


@dataclass(frozen=True, eq=False)
class _Grid:
    """Columns by place, before their headings are known."""

    heads: list[str]
    frame: "pl.DataFrame"
    lines: Lines
    head_line: int


def read_cells(text: str, table: Table, file: str, problems: Problems) -> Cells | None:
    """Read a table by its headings; None if it has no usable heading line or its quoting is broken.

    Rows of blanks only are left out. Problems with headings and with rows that are too long or short are
    noted; what can be read is given all the same, so that its cells can be looked at too.
    """
    first = text.lstrip("\n").partition("\n")[0]
    delimiter = _delimiter(first, table)
    if first.count(delimiter) >= MOST_COLUMNS:
        count = first.count(delimiter) + 1
        problems.add("csv.too_wide", file, 1, columns=count, most=MOST_COLUMNS)
        return None
    grid = _plain(text, delimiter) or _quoted(text, delimiter, file, problems)
    if grid is None:
        return None
    trimmed = grid.frame.select(_trim(name) for name in grid.frame.columns)
    full = trimmed.select(_any_filled(trimmed.columns)).to_series()
    trimmed, lines = trimmed.filter(full), grid.lines[full.to_numpy()]
    at = _match(grid, trimmed, table, file, problems)
    if at is None:
        return None
    if not len(lines):
        problems.add("csv.no_rows", file, expected=_example(table, delimiter))
    columns = {name: trimmed.to_series(place) for name, place in at.items()}
    return Cells(file, columns, {name: clean(grid.heads[place]) for name, place in at.items()}, lines)


def _trim(name: str) -> "pl.Expr":
    import polars as pl

    cell = pl.col(name).str.strip_chars()
    return pl.when(cell == "").then(None).otherwise(cell).alias(name)


def _any_filled(names: Sequence[str]) -> "pl.Expr":
    import polars as pl

    return pl.any_horizontal(pl.col(name).is_not_null() for name in names)


def _example(table: Table, delimiter: str) -> str:
    return delimiter.join(column.name for column in table.columns if column.required)


def _known(table: Table) -> dict[str, str]:
    """Column name by every heading that is understood for it."""
    return {word: column.name for column in table.columns for word in (column.name, *column.words)}


def _bare(heading: str) -> str:
    return heading.strip().casefold().replace(" ", "_")


def _delimiter(line: str, table: Table) -> str:
    """The delimiter that makes most known headings of the heading line; the comma if none does better."""
    known = _known(table)

    def score(delimiter: str) -> int:
        return sum(_bare(cell.strip('"')) in known for cell in line.split(delimiter))

    return max(DELIMITERS, key=score)


def _plain(text: str, delimiter: str) -> _Grid | None:
    """The fast way, for text without quotes and blank lines and with the same delimiters in each line."""
    import polars as pl

    text = text.rstrip("\n")
    head, _, body = text.partition("\n")
    if '"' in text or not head or "\n\n" in body or body.startswith("\n"):
        return None
    heads = head.split(delimiter)
    rows = body.count("\n") + 1 if body else 0
    if body.count(delimiter) != rows * (len(heads) - 1):
        return None
    names = [str(place) for place in range(len(heads))]
    empty = pl.DataFrame(schema=dict.fromkeys(names, pl.String))
    if not body:
        return _Grid(heads, empty, np.zeros(0, np.int64), 1)
    try:
        frame = pl.read_csv(
            body.encode(),
            has_header=False,
            new_columns=names,
            separator=delimiter,
            quote_char=None,
            infer_schema=False,
        )
    except pl.exceptions.PolarsError:
        return None
    if frame.shape != (rows, len(heads)):
        return None
    return _Grid(heads, frame, np.arange(2, rows + 2, dtype=np.int64), 1)


def _quoted(text: str, delimiter: str, file: str, problems: Problems) -> _Grid | None:
    """The slow way, for everything else; names each row whose cells do not fit the headings."""
    import polars as pl

    rows: list[list[str]] = []
    lines: list[int] = []
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    begun = 1
    try:
        for row in reader:
            if any(cell.strip() for cell in row):
                rows.append(row)
                lines.append(begun)
            begun = reader.line_num + 1
    except csv.Error:
        problems.add("csv.quotes", file, begun)
        return None
    heads, body = rows[0], rows[1:]
    if len(heads) > MOST_COLUMNS:
        problems.add("csv.too_wide", file, lines[0], columns=len(heads), most=MOST_COLUMNS)
        return None
    fit = []
    for row, line in zip(body, lines[1:], strict=True):
        if len(row) != len(heads):
            problems.add("csv.ragged", file, line, cells=len(row), columns=len(heads))
        fit.append((row + [""] * len(heads))[: len(heads)])
    columns = {str(place): [row[place] for row in fit] for place in range(len(heads))}
    frame = pl.DataFrame(columns, schema=dict.fromkeys(columns, pl.String))
    return _Grid(heads, frame, np.asarray(lines[1:], dtype=np.int64), lines[0])


def _match(
    grid: _Grid, trimmed: "pl.DataFrame", table: Table, file: str, problems: Problems
) -> dict[str, int] | None:
    """Place of each declared column in the file; None if no heading is known."""
    known, at = _known(table), dict[str, int]()
    strange: list[tuple[int, str]] = []
    for place, head in enumerate(grid.heads):
        shown, name = clean(head.strip()), known.get(_bare(head))
        if name is None:
            strange.append((place, shown))
        elif name in at:
            first = clean(grid.heads[at[name]])
            problems.add("csv.column_twice", file, grid.head_line, shown, first=first)
        else:
            at[name] = place
    if not at:
        found = clean(", ".join(grid.heads))
        problems.add("csv.no_headings", file, grid.head_line, expected=_example(table, ","), found=found)
        return None
    for place, shown in strange:
        _strange(place, shown, grid, trimmed, table, file, problems)
    _missing(at, [shown for _, shown in strange], grid.head_line, table, file, problems)
    return at


def _strange(
    place: int, shown: str, grid: _Grid, trimmed: "pl.DataFrame", table: Table, file: str, problems: Problems
) -> None:
    """Notes a column that is not known; one without heading counts only if something stands in it."""
    names = [column.name for column in table.columns]
    if shown:
        problems.add(
            "csv.unknown_column",
            file,
            grid.head_line,
            shown,
            ", ".join(names),
            near=near(shown, _known(table)),
        )
    elif trimmed.to_series(place).count():
        problems.add("csv.no_heading", file, grid.head_line, expected=", ".join(names), at=place + 1)


def _missing(
    at: dict[str, int], strange: list[str], line: int, table: Table, file: str, problems: Problems
) -> None:
    for column in table.columns:
        if column.required and column.name not in at:
            meant = near(column.name, strange)
            problems.add("csv.missing_column", file, line, column.name, column.example, near=meant)
    for group in table.one_of:
        if not any(name in at for name in group):
            problems.add("csv.missing_one_of", file, line, group[0], columns=", ".join(group))
