"""Stems, patches and what is kept as tables for a spreadsheet."""

import csv
import datetime
import io
import zipfile
from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np

from stemward.handbook import load
from stemward.kinds import STEMS, Tract

RISKY = ("=", "+", "-", "@", "\t", "\r")
"""First signs by which a spreadsheet takes text for a formula."""
MADE = datetime.datetime(2020, 1, 1)  # noqa: DTZ001  a workbook's date has no zone; fixed, so that bytes are the same
HEAD = (*(column.name for column in STEMS.columns), "patch_name", "common_name")
NUMBERS = ("x_m", "y_m", "diameter_cm", "diameter_in", "height_m", "stems")


def stem_table(tract: Tract) -> list[list[Any]]:
    """A row a stem, in the order of HEAD; numbers as numbers, None where nothing is known."""
    book, stems = load(), tract.stems
    names = {patch.id: patch.name for patch in tract.patches}
    columns: list[list[Any]] = []
    for column in STEMS.columns:
        values = getattr(stems, column.name)
        if column.name == "diameter_cm":
            values = np.where(np.isnan(stems.diameter_in), values, np.nan)  # inches stay as typed
        if values.dtype.kind == "f":
            columns.append([None if np.isnan(v) else float(f"{v:.6g}") for v in values.tolist()])
        else:
            columns.append(values.tolist())
    columns.append([names.get(one, one) for one in stems.patch.tolist()])
    columns.append([book.species[one].common if one in book.species else one for one in stems.species.tolist()])
    return [list(row) for row in zip(*columns, strict=True)]


def stems_csv(tract: Tract) -> bytes:
    """The stems as CSV, UTF-8. Text that a spreadsheet would take for a formula is led by an apostrophe."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEAD)
    writer.writerows([safe_cell(value) for value in row] for row in stem_table(tract))
    return out.getvalue().encode()


def noted_csv(notes: Sequence[str], head: Sequence[str], rows: Iterable[Sequence[Any]]) -> bytes:
    """A table as CSV, UTF-8, under lines that tell how it was made, each led by #."""
    out = io.StringIO()
    out.writelines(f"# {note}\r\n" for note in notes)
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([safe_cell(value) for value in row] for row in rows)
    return out.getvalue().encode()


def safe_cell(value: Any) -> Any:
    """A cell of a CSV; text that a spreadsheet would take for a formula is led by an apostrophe."""
    if isinstance(value, str) and value.startswith(RISKY):
        return f"'{value}"
    return "" if value is None else value


def stems_xlsx(tract: Tract) -> bytes:
    """Stems, what is kept, and patches as a workbook of three sheets. Text is always text, never a formula."""
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = MADE
    book.remove(book.active)
    kept = [[s.id, s.kind, s.species, s.dbh_cm, s.shape.kind, s.note] for s in tract.spared]
    patches = [[p.id, p.name, ", ".join(p.places), p.area_m2] for p in tract.patches]
    _sheet(book, "stems", HEAD, stem_table(tract))
    _sheet(book, "keep from harm", ("id", "kind", "species", "dbh_cm", "shape", "note"), kept)
    _sheet(book, "patches", ("id", "name", "places", "area_m2"), patches)
    out = io.BytesIO()
    book.save(out)
    return _same_bytes(out.getvalue())


def _sheet(book: Any, title: str, head: Sequence[str], rows: Iterable[Sequence[Any]]) -> None:
    from openpyxl.styles import Font

    sheet = book.create_sheet(title)
    sheet.append(list(head))
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    sheet.freeze_panes = "A2"
    for row in rows:
        sheet.append([None if value == "" else value for value in row])
    for row in sheet.iter_rows(min_row=2):
        for cell in row:
            if isinstance(cell.value, str):
                cell.data_type = "s"
    for number, name in enumerate(head, 1):
        sheet.column_dimensions[sheet.cell(1, number).column_letter].width = max(10, min(30, len(name) + 4))


def _same_bytes(raw: bytes) -> bytes:
    """The workbook with fixed dates, so that the same rows give the same bytes."""
    import re

    out = io.BytesIO()
    stamp = MADE.strftime("%Y-%m-%dT%H:%M:%SZ").encode()
    with zipfile.ZipFile(io.BytesIO(raw)) as source, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as target:
        for info in source.infolist():
            content = source.read(info)
            if info.filename == "docProps/core.xml":
                content = re.sub(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", stamp, content)
            fixed = zipfile.ZipInfo(info.filename, (2020, 1, 1, 0, 0, 0))
            fixed.compress_type = zipfile.ZIP_DEFLATED
            target.writestr(fixed, content)
    return out.getvalue()
