"""The fast and the slow way of reading a table give the same cells and lines."""

import csv
import io

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.gate import csv_table
from stemward.gate.csv_table import read_cells
from stemward.gate.problems import Problems
from stemward.kinds import STEMS

HEAD = ("id", "patch", "species", "note")
CELL = st.text(alphabet=["a", "ß", " ", '"', ",", "\n", ";", "1"], max_size=5)
ROWS = st.lists(st.tuples(*[CELL] * len(HEAD)), min_size=1, max_size=6)


def cells_of(text, fast):
    """Cells by either way, as plain lists."""
    with pytest.MonkeyPatch.context() as patch:
        if not fast:
            patch.setattr(csv_table, "_fast", lambda *_: None)
        read = read_cells(text, STEMS, "stems.csv", Problems())
    assert read is not None
    return {name: column.to_list() for name, column in read.columns.items()}, read.lines.tolist()


@settings(max_examples=100, deadline=None)
@given(ROWS, st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
def test_both_ways_agree(rows, quoting):
    """Whatever stands in the cells, both ways give the same, and the lines on which rows begin."""
    out = io.StringIO()
    writer = csv.writer(out, quoting=quoting, lineterminator="\n")
    begun = []
    for row in (HEAD, *rows):
        begun.append(out.getvalue().count("\n") + 1)
        writer.writerow(row)
    text = out.getvalue()

    columns, lines = cells_of(text, fast=True)

    assert (columns, lines) == cells_of(text, fast=False)
    kept = [n for n, row in enumerate(rows) if any(cell.strip() for cell in row)]
    assert lines == [begun[n + 1] for n in kept]
    assert columns["note"] == [rows[n][3].strip() or None for n in kept]


def test_fast_way_is_taken():
    """Plain and regularly quoted texts take the fast way."""
    plain = csv_table._fast("id,note\n1,a\n2,b\n", ",")
    quoted = csv_table._fast('id,note\n1,"a\nb"\n2,"c ""d"" e"\n', ",")

    assert plain is not None and plain.lines.tolist() == [2, 3]
    assert quoted is not None and quoted.lines.tolist() == [2, 4]


@pytest.mark.parametrize(
    "body", ['1,"a', '1,a"b"', '1,"a"b', '1,"a" ', "1,a\n\n2,b", "1\n2,b,c", '1,"a\n2,b\n3,c"d', '1,3"']
)
def test_fast_way_is_left_for_anything_odd(body):
    """Quotes out of place, blank lines and rows that do not fit go the slow way, which names them."""
    assert csv_table._fast("id,note\n" + body, ",") is None


def test_row_lines_of_one_row():
    """A text of one row has it on its first line."""
    np.testing.assert_array_equal(csv_table.row_lines(b'"a","b"', ",", 2), [1])
