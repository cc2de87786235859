"""Columns of text to columns of numbers and words, as the column is declared; a million cells at a time."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from stemward.gate.csv_table import Cells
from stemward.gate.figures import PLAIN, FigureError, figure, half_digit
from stemward.gate.problems import MOST_SHOWN, Problems
from stemward.gate.text import ODD_SIGNS, clean, near
from stemward.kinds import Column

if TYPE_CHECKING:
    import polars as pl

Mask = NDArray[np.bool_]
Floats = NDArray[np.float64]
Words = NDArray[np.str_]

MOST_SIGNS = {"id": 40, "text": 200}


def complain(
    problems: Problems,
    cells: Cells,
    column: Column,
    message: str,
    wrong: Mask,
    values: Callable[[int], dict[str, str | float]],
) -> None:
    """Note a problem for each row of `wrong`; beyond those that can be shown only their number."""
    rows = np.flatnonzero(wrong)
    for row in rows[:MOST_SHOWN].tolist():
        line, heading = int(cells.lines[row]), cells.heading(column.name)
        problems.add(message, cells.file, line, heading, column.example, **values(row))
    problems.only_counted += max(0, len(rows) - MOST_SHOWN)


def is_empty(cells: Cells, name: str) -> Mask:
    """True for each row with nothing in that column."""
    if not cells.has(name):
        return np.ones(len(cells), bool)
    return cells.columns[name].is_null().to_numpy()


def no_blanks(cells: Cells, column: Column, problems: Problems) -> None:
    """Note each empty cell of a column that is there and must be filled."""
    if cells.has(column.name):
        complain(problems, cells, column, "cell.empty", is_empty(cells, column.name), lambda _: {})


def numbers(cells: Cells, column: Column, problems: Problems) -> Floats:
    """The column as numbers in its unit, NaN where empty or wrong."""
    import polars as pl

    if not cells.has(column.name):
        return np.full(len(cells), np.nan)
    text = cells.columns[column.name]
    plain = text.str.contains(PLAIN)
    value = text.cast(pl.Float64, strict=False)
    others = text.filter(~plain.fill_null(True)).unique().to_list()
    if others:
        value = _with_others(cells, column, text, value, plain, others, problems)
    found = np.array(value.fill_null(np.nan).to_numpy(), dtype=float)
    return _within_range(cells, column, text, found, problems)


def _with_others(
    cells: Cells,
    column: Column,
    text: "pl.Series",
    value: "pl.Series",
    plain: "pl.Series",
    others: list[str],
    problems: Problems,
) -> "pl.Series":
    """Values with every cell that is no plain decimal read by the grammar, each different text once."""
    import polars as pl

    read: dict[str, float | None] = {}
    wrong: dict[str, FigureError] = {}
    for typed in others:
        try:
            read[typed] = figure(typed, column)
        except FigureError as error:
            read[typed], wrong[typed] = None, error
    looked_up = text.replace_strict(
        list(read), pl.Series(list(read.values()), dtype=pl.Float64), default=None, return_dtype=pl.Float64
    )
    for message in dict.fromkeys(error.message for error in wrong.values()):
        these = pl.Series([t for t in wrong if wrong[t].message == message], dtype=pl.String)
        where = text.is_in(these.implode()).fill_null(False).to_numpy()

        def values(row: int) -> dict[str, str | float]:
            return {"typed": clean(text[row]), **wrong[text[row]].values}

        complain(problems, cells, column, message, where, values)
    return value.zip_with(plain.fill_null(True), looked_up)


def _within_range(cells: Cells, column: Column, text: "pl.Series", found: Floats, problems: Problems) -> Floats:
    low = -np.inf if column.low is None else column.low
    high = np.inf if column.high is None else column.high
    with np.errstate(invalid="ignore"):
        wrong = (found < low) | (found > high)

    def values(row: int) -> dict[str, str | float]:
        return {"typed": clean(text[row]), "low": low, "high": high, "unit": column.unit}

    complain(problems, cells, column, "cell.out_of_range", wrong, values)
    found[wrong] = np.nan
    return found


def half_digits(cells: Cells, name: str) -> Floats:
    """Half of the last digit written in each cell, zero where the column is empty."""
    import polars as pl

    if not cells.has(name):
        return np.zeros(len(cells))
    text = cells.columns[name]
    plain = text.str.contains(PLAIN).fill_null(True)
    after_point = text.str.len_bytes().cast(pl.Int64) - 1 - text.str.find(".", literal=True).cast(pl.Int64)
    half = 0.5 * 10.0 ** -after_point.fill_null(0).to_numpy().astype(float)
    half[text.is_null().to_numpy()] = 0.0
    others = text.filter(~plain).unique().to_list()
    if others:
        halves = pl.Series([half_digit(typed) for typed in others], dtype=pl.Float64)
        rows = (~plain).to_numpy()
        half[rows] = text.filter(~plain).replace_strict(others, halves).to_numpy()
    return half


def counts(cells: Cells, column: Column, problems: Problems, default: int) -> NDArray[np.int64]:
    """The column as whole numbers, the default where empty or wrong."""
    value = numbers(cells, column, problems)
    broken = np.isfinite(value) & (value != np.floor(value))
    if broken.any():
        text = cells.columns[column.name]
        complain(problems, cells, column, "cell.not_whole", broken, lambda row: {"typed": clean(text[row])})
    return np.where(np.isfinite(value) & ~broken, value, default).astype(np.int64)


def words(cells: Cells, column: Column, problems: Problems) -> Words:
    """The column as words, "" where empty; too long ones and odd signs are noted."""
    if not cells.has(column.name):
        return np.zeros(len(cells), "U1")
    text = cells.columns[column.name]
    most = MOST_SIGNS[column.type]
    length = text.str.len_chars().fill_null(0).to_numpy()
    too_long = length > most
    complain(
        problems,
        cells,
        column,
        "cell.too_long",
        too_long,
        lambda row: {"length": int(length[row]), "most": most},
    )
    strange = odd(text)
    complain(problems, cells, column, "cell.odd_sign", strange, lambda _: {})
    if (too_long | strange).any():
        return np.zeros(len(cells), "U1")
    # Names of stems are all different, and few words of other columns are.
    return text.fill_null("").to_numpy().astype("U") if column.type == "id" else as_array(text)


def odd(text: "pl.Series") -> Mask:
    """True for cells that hold a sign that no name holds."""
    # Half characters cannot be in text that was decoded, and Polars' pattern language does not know them.
    pattern = ODD_SIGNS.pattern.replace("\ud800-\udfff", "")
    return text.str.contains(pattern).fill_null(False).to_numpy()


def as_array(text: "pl.Series") -> Words:
    """Text as a numpy array of words, "" for null; made for columns in which few words stand often."""
    distinct, code = by_code(text.fill_null(""))
    return np.array(distinct or [""], dtype="U")[code]


def by_code(text: "pl.Series") -> tuple[list[Any], NDArray[np.intp]]:
    """The different values of a column in order of first use, and the number of each row's own."""
    import polars as pl

    distinct = text.unique(maintain_order=True)
    if not len(distinct):
        return [], np.zeros(0, np.intp)
    number = pl.Series(range(len(distinct)), dtype=pl.UInt32)
    return distinct.to_list(), text.replace_strict(distinct, number).to_numpy().astype(np.intp)


def choices(cells: Cells, column: Column, problems: Problems, default: str = "") -> Words:
    """The column as words of its choices, whatever their letter case; the default where empty or wrong."""
    if not cells.has(column.name):
        return np.full(len(cells), default)
    text = cells.columns[column.name]
    folded = text.str.to_lowercase()
    wrong = ~folded.is_in(list(column.choices)).fill_null(True).to_numpy()

    def values(row: int) -> dict[str, str | float]:
        typed = clean(text[row])
        return {"typed": typed, "near": near(typed, column.choices)}

    complain(problems, cells, column, "cell.not_a_choice", wrong, values)
    return np.full(len(cells), default) if wrong.any() else as_array(folded.fill_null(default))
