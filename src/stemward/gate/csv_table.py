"""A CSV text to columns of text, with the line of every row, whatever its delimiter and quoting."""

import csv
import io
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
    grid = _fast(text, delimiter) or _slow(text, delimiter, file, problems)
    if grid is None:
        return None
    trimmed, lines = _trimmed(grid.frame, grid.lines)
    at = _match(grid, trimmed, table, file, problems)
    if at is None:
        return None
    if not len(lines):
        problems.add("csv.no_rows", file, expected=_example(table, delimiter))
    columns = {name: trimmed.to_series(place) for name, place in at.items()}
    return Cells(file, columns, {name: clean(grid.heads[place]) for name, place in at.items()}, lines)


def read_any(
    text: str, file: str, problems: Problems
) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...], tuple[int, ...]] | None:
    """Headings, rows and their lines of a table whose headings are anyone's; None where it is no table."""
    first = text.lstrip("\n").partition("\n")[0]
    delimiter = max(DELIMITERS, key=first.count)
    if not first.count(delimiter) or first.count(delimiter) >= MOST_COLUMNS:
        return None
    grid = _fast(text, delimiter) or _slow(text, delimiter, file, problems)
    if grid is None:
        return None
    trimmed, lines = _trimmed(grid.frame, grid.lines)
    heads = tuple(clean(head.strip()) or f"column {n}" for n, head in enumerate(grid.heads, 1))
    return heads, tuple(trimmed.fill_null("").rows()), tuple(lines.tolist())


def _trimmed(frame: "pl.DataFrame", lines: Lines) -> tuple["pl.DataFrame", Lines]:
    """Cells without blanks at their ends, null where nothing is left, and without rows that are all blank."""
    import polars as pl

    frame = frame.with_columns(pl.all().str.strip_chars())
    blank = [name for name in frame.columns if (frame.to_series(int(name)) == "").any()]
    if blank:
        frame = frame.with_columns(pl.when(pl.col(blank) != "").then(pl.col(blank)))
    full = frame.select(pl.any_horizontal(pl.all().is_not_null())).to_series()
    if full.all():
        return frame, lines
    return frame.filter(full), lines[full.to_numpy()]


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


def _fast(text: str, delimiter: str) -> _Grid | None:
    """The fast way, for a text whose quotes are all regular and whose rows all fit; None for any other."""
    import polars as pl

    text = text.rstrip("\n")
    head, _, body = text.partition("\n")
    if not head.strip() or not body or head.count('"') % 2:
        return None
    heads, raw = next(csv.reader([head], delimiter=delimiter)), body.encode()
    quoted = '"' in body
    lines = row_lines(raw, delimiter, len(heads)) if quoted else _plain_lines(body, delimiter, len(heads))
    if lines is None:
        return None
    try:
        frame = pl.read_csv(
            raw,
            has_header=False,
            new_columns=[str(place) for place in range(len(heads))],
            separator=delimiter,
            quote_char='"' if quoted else None,
            infer_schema=False,
        )
    except pl.exceptions.PolarsError:
        return None
    if frame.shape != (len(lines), len(heads)):
        return None
    return _Grid(heads, frame, lines + 1, 1)


def _plain_lines(body: str, delimiter: str, columns: int) -> Lines | None:
    """Line of each row within a text without quotes; None unless its delimiters make up full rows.

    A long and a short row can make up for each other here; reading then fails on the long one.
    """
    rows = body.count("\n") + 1
    if "\n\n" in body or body.startswith("\n") or body.count(delimiter) != rows * (columns - 1):
        return None
    return np.arange(1, rows + 1, dtype=np.int64)


def row_lines(raw: bytes, delimiter: str, columns: int) -> Lines | None:
    """Line on which each row of a quoted text begins; None if a quote is out of place or a row does not fit.

    Quotes are regular if they open at the start of a cell, close at its end, and stand doubled within it.
    """
    sign = np.frombuffer(raw, np.uint8)
    quote, ends, cuts = (np.flatnonzero(sign == code) for code in (ord('"'), ord("\n"), ord(delimiter)))
    if len(quote) % 2:
        return None
    edge = np.frombuffer(f'"\n{delimiter}'.encode(), np.uint8)
    before = np.concatenate([[ord("\n")], sign])[quote[0::2]]
    after = np.concatenate([sign, [ord("\n")]])[quote[1::2] + 1]
    if not np.isin(before, edge).all() or not np.isin(after, edge).all():
        return None
    row_ends = ends[np.searchsorted(quote, ends) % 2 == 0]
    cell_ends = cuts[np.searchsorted(quote, cuts) % 2 == 0]
    per_row = np.diff(np.searchsorted(cell_ends, row_ends), prepend=0, append=len(cell_ends))
    per_row[-1] = len(cell_ends) - (np.searchsorted(cell_ends, row_ends[-1]) if len(row_ends) else 0)
    starts = np.concatenate([[0], row_ends + 1])
    blank = np.diff(starts, append=len(raw) + 1) == 1
    if blank.any() or (per_row != columns - 1).any():
        return None
    return np.searchsorted(ends, starts).astype(np.int64) + 1


def _slow(text: str, delimiter: str, file: str, problems: Problems) -> _Grid | None:
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


def _match(grid: _Grid, trimmed: "pl.DataFrame", table: Table, file: str, problems: Problems) -> dict[str, int] | None:
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


def _missing(at: dict[str, int], strange: list[str], line: int, table: Table, file: str, problems: Problems) -> None:
    for column in table.columns:
        if column.required and column.name not in at:
            meant = near(column.name, strange)
            problems.add("csv.missing_column", file, line, column.name, column.example, near=meant)
    for group in table.one_of:
        if not any(name in at for name in group):
            problems.add("csv.missing_one_of", file, line, group[0], columns=", ".join(group))
