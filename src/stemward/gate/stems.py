"""stems.csv to columns: read as text by Polars, cast at once where cells are plain, cell by cell where not."""

import difflib
import io
import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from stemward.gate.problems import Problems
from stemward.kinds import STEMS, Column, Question, Stems
from stemward.units import UnitError, convert, read

if TYPE_CHECKING:
    import polars as pl

FILE = "stems.csv"
DELIMITERS = ",;\t|"
IN_CM = convert(1.0, "in", "cm")
MOST_PER_KIND = 10
"""Of one kind of problem so many are told one by one; the rest are counted."""


def read_stems(
    text: str, find_species: Callable[[str], Any], problems: Problems, questions: list[Question]
) -> Stems | None:
    """Columns of all stems, or None with the problems noted. Species become Latin names."""
    frame = _frame(text, problems)
    if frame is None:
        return None
    lines = _lines(text, frame.height)
    before = len(problems)
    columns = {c.name: _texts(frame, c.name) for c in STEMS.columns}
    made = {
        c.name: _numbers(columns[c.name], c, lines, problems) for c in STEMS.columns if c.type in ("number", "count")
    }
    _required(columns, lines, problems)
    _choices(columns, lines, problems)
    _unique(columns["id"], lines, problems)
    species = _species(columns["species"], lines, find_species, problems)
    _diameters(columns, lines, problems)
    if len(problems) > before:
        return None
    inches = made["diameter_in"]
    stems = Stems(
        id=columns["id"],
        patch=columns["patch"],
        species=species,
        x_m=made["x_m"],
        y_m=made["y_m"],
        diameter_cm=np.where(np.isnan(inches), made["diameter_cm"], inches * IN_CM),
        diameter_in=inches,
        half_digit_cm=np.where(np.isnan(inches), _half_digits(columns["diameter_cm"]), 0.0),
        measured_at=columns["measured_at"],
        stems=np.where(np.isnan(made["stems"]), 1, made["stems"]).astype(np.int64),
        height_m=made["height_m"],
        form=columns["form"],
        state=columns["state"],
        note=columns["note"],
    )
    _odd(made, columns["id"], lines, questions)
    return stems


def _frame(text: str, problems: Problems) -> "pl.DataFrame | None":
    import polars as pl

    heading = text.split("\n", 1)[0]
    delimiter = max(DELIMITERS, key=heading.count)
    try:
        frame = pl.read_csv(
            io.BytesIO(text.encode()),
            separator=delimiter,
            infer_schema=False,
            truncate_ragged_lines=False,
        )
    except pl.exceptions.PolarsError as error:
        _ragged(text, delimiter, str(error), problems)
        return None
    return _renamed(frame, problems)


def _ragged(text: str, delimiter: str, why: str, problems: Problems) -> None:
    """Say which rows have too many cells or an open quote, by reading the plain way."""
    import csv

    try:
        rows = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
        width = len(next(rows))
        found = 0
        for row in rows:
            if row and len(row) > width and found < MOST_PER_KIND:
                problems.add("row.too_many_cells", FILE, rows.line_num, cells=len(row), columns=width)
                found += 1
        if found:
            return
        problems.add("table.unreadable", FILE, why=why.splitlines()[0][:120])
    except (csv.Error, StopIteration) as error:
        problems.add("table.unreadable", FILE, why=str(error)[:120])


def _renamed(frame: "pl.DataFrame", problems: Problems) -> "pl.DataFrame | None":
    known = {word: c.name for c in STEMS.columns for word in (c.name, *c.words)}
    names: dict[str, str] = {}
    before = len(problems)
    for heading in frame.columns:
        name = known.get(heading.strip().lower().replace(" ", "_"))
        if name is None:
            near = difflib.get_close_matches(heading.strip().lower(), known, n=1, cutoff=0.6)
            problems.add("column.unknown", FILE, 1, heading, near=near[0] if near else "")
        elif name in names.values():
            problems.add("column.twice", FILE, 1, name)
        else:
            names[heading] = name
    for column in STEMS.columns:
        if column.required and column.name not in names.values():
            problems.add("column.missing", FILE, 1, column.name, column.example)
    for group in STEMS.one_of:
        if not set(group) & set(names.values()):
            problems.add("column.one_of", FILE, 1, " or ".join(group))
    if len(problems) > before:
        return None
    if frame.height == 0:
        problems.add("table.no_rows", FILE)
        return None
    return frame.rename(names)


def _lines(text: str, rows: int) -> NDArray[np.int64]:
    """Line on which each row begins; rows need not be lines where a cell in quotes holds a line end."""
    if text.count("\n") - text.endswith("\n") == rows:
        return np.arange(2, rows + 2)
    import csv

    reader = csv.reader(io.StringIO(text, newline=""), delimiter=max(DELIMITERS, key=text.split("\n", 1)[0].count))
    next(reader, None)
    starts, last = [], reader.line_num
    for row in reader:
        if row:
            starts.append(last + 1)
        last = reader.line_num
    return np.asarray((starts + [last] * rows)[:rows])


def _texts(frame: "pl.DataFrame", name: str) -> NDArray[np.str_]:
    if name not in frame.columns:
        return np.full(frame.height, "", dtype="U1")
    return np.char.strip(frame[name].fill_null("").to_numpy().astype(str))


def _tell(
    rows: NDArray[np.intp],
    message: str,
    column: Column,
    lines: NDArray[np.int64],
    problems: Problems,
    texts: Any,
) -> None:
    for row in rows[:MOST_PER_KIND]:
        problems.add(message, FILE, int(lines[row]), column.name, column.example, typed=str(texts[row])[:40])
    if len(rows) > MOST_PER_KIND:
        problems.add("and_more", FILE, None, column.name, count=len(rows) - MOST_PER_KIND)


def _numbers(
    texts: NDArray[np.str_], column: Column, lines: NDArray[np.int64], problems: Problems
) -> NDArray[np.float64]:
    """A column as floats, NaN where empty; cells that are no plain decimals are read as people write them."""
    values = np.full(len(texts), np.nan)
    filled = texts != ""
    if not filled.any():
        return values
    import polars as pl

    plain = pl.Series(texts).cast(pl.Float64, strict=False).to_numpy().copy()
    # Only digits and a point are plain: an exponent, "inf" or "nan" is nothing a person means.
    odd = np.flatnonzero(filled & ~np.isfinite(plain))
    exponents = np.flatnonzero(filled & (np.char.find(np.char.lower(texts), "e") >= 0))
    values[filled] = plain[filled]
    wrong = [int(row) for row in exponents]
    for row in odd:
        value = _as_written(str(texts[row]), column)
        if value is None:
            wrong.append(int(row))
        else:
            values[row] = value
    _tell(np.asarray(sorted(set(wrong)), np.intp), "cell.not_understood", column, lines, problems, texts)
    with np.errstate(invalid="ignore"):
        beyond = np.zeros(len(texts), bool)
        if column.low is not None:
            beyond |= values < column.low
        if column.high is not None:
            beyond |= values > column.high
        if column.type == "count":
            beyond |= values != np.floor(values)
    beyond[wrong] = False
    beyond &= np.isfinite(values)
    _tell(np.flatnonzero(beyond), "cell.out_of_range", column, lines, problems, texts)
    return values


def _as_written(text: str, column: Column) -> float | None:
    """A cell such as "3 3/4" or "3 in" in the column's unit; None if it is not understood."""
    if not column.unit:
        return None
    try:
        return read(text, "length", column.unit).to(column.unit)
    except UnitError:
        return None


def _required(columns: dict[str, NDArray[np.str_]], lines: NDArray[np.int64], problems: Problems) -> None:
    for column in STEMS.columns:
        if column.required:
            empty = np.flatnonzero(columns[column.name] == "")
            _tell(empty, "cell.empty", column, lines, problems, columns[column.name])


def _choices(columns: dict[str, NDArray[np.str_]], lines: NDArray[np.int64], problems: Problems) -> None:
    for column in STEMS.columns:
        if column.type != "choice":
            continue
        lower = np.char.lower(columns[column.name])
        columns[column.name] = lower
        wrong = np.flatnonzero((lower != "") & ~np.isin(lower, column.choices))
        for row in wrong[:MOST_PER_KIND]:
            problems.add(
                "cell.not_a_choice",
                FILE,
                int(lines[row]),
                column.name,
                ", ".join(column.choices),
                typed=str(lower[row])[:40],
            )
        if len(wrong) > MOST_PER_KIND:
            problems.add("and_more", FILE, None, column.name, count=len(wrong) - MOST_PER_KIND)


def _unique(ids: NDArray[np.str_], lines: NDArray[np.int64], problems: Problems) -> None:
    _, first, inverse, counts = np.unique(ids, return_index=True, return_inverse=True, return_counts=True)
    if (counts == 1).all():
        return
    again = np.flatnonzero((counts[inverse] > 1) & (first[inverse] != np.arange(len(ids))) & (ids != ""))
    for row in again[:MOST_PER_KIND]:
        earlier = int(lines[first[inverse[row]]])
        problems.add("id.twice", FILE, int(lines[row]), "id", typed=str(ids[row]), earlier=earlier)
    if len(again) > MOST_PER_KIND:
        problems.add("and_more", FILE, None, "id", count=len(again) - MOST_PER_KIND)


def _species(
    names: NDArray[np.str_], lines: NDArray[np.int64], find_species: Callable[[str], Any], problems: Problems
) -> NDArray[np.str_]:
    distinct, first, inverse = np.unique(names, return_index=True, return_inverse=True)
    latin = []
    for name, row in zip(distinct.tolist(), first.tolist(), strict=True):
        found = find_species(name) if name else None
        if found is not None and hasattr(found, "latin"):
            latin.append(found.latin)
            continue
        latin.append("")
        if name:
            near = ", ".join(common for common, _ in getattr(found, "candidates", ()))
            problems.add("species.unknown", FILE, int(lines[row]), "species", typed=name[:60], near=near)
    return np.asarray(latin, dtype=str)[inverse]


def _diameters(columns: dict[str, NDArray[np.str_]], lines: NDArray[np.int64], problems: Problems) -> None:
    cm, inches = columns["diameter_cm"] != "", columns["diameter_in"] != ""
    column = STEMS.column("diameter_in")
    _tell(np.flatnonzero(cm & inches), "diameter.both", column, lines, problems, columns["diameter_in"])
    _tell(np.flatnonzero(~cm & ~inches), "diameter.missing", column, lines, problems, columns["diameter_in"])


def _half_digits(texts: NDArray[np.str_]) -> NDArray[np.float64]:
    """Half of the last digit written: 0.05 for "5.1", 0.5 for "5", 0 for an empty cell."""
    point = np.char.find(texts, ".")
    places = np.where(point < 0, 0, np.char.str_len(texts) - point - 1)
    return np.where(texts == "", 0.0, 0.5 * 10.0 ** (-places.astype(float)))


def _odd(
    made: dict[str, NDArray[np.float64]],
    ids: NDArray[np.str_],
    lines: NDArray[np.int64],
    questions: list[Question],
) -> None:
    """Sizes that can be true but seldom are: asked about once a column, with the first as example."""
    for column in STEMS.columns:
        if column.odd_above is None or column.name not in made:
            continue
        with np.errstate(invalid="ignore"):
            odd = np.flatnonzero(made[column.name] > column.odd_above)
        if len(odd):
            questions.append(
                Question(
                    "size.odd",
                    (
                        ("count", len(odd)),
                        ("first", str(ids[odd[0]])),
                        ("value", float(made[column.name][odd[0]])),
                    ),
                    FILE,
                    int(lines[odd[0]]),
                    column.name,
                )
            )


def looks_like_degrees(text: str) -> bool:
    """True if a cell looks like a latitude or longitude: small, with five or more decimals."""
    return re.fullmatch(r"-?\d{1,3}\.\d{5,}", text) is not None
