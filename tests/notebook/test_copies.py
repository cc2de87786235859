"""Copies of the notebook: whole or not at all, and put back."""

import datetime
import sqlite3
from contextlib import closing

import pytest

from stemward.notebook.copies import MOST_KEPT, TABLES, NoCopy, copy_to, dated_copy, look_at, restore

NOW = datetime.datetime(2026, 10, 10, 9, 14, tzinfo=datetime.UTC)


@pytest.fixture
def notebook(tmp_path):
    """A file with the tables of a notebook and two tracts, one of them removed."""
    path = tmp_path / "notebook.sqlite3"
    fill(path, "('a', NULL), ('b', '2026-01-01')")
    return path


def fill(path, rows: str) -> None:
    """Make the tables of a notebook with rows of tracts."""
    with closing(sqlite3.connect(path)) as connection, connection:
        for table in sorted(TABLES - {"notebook_tract"}):
            connection.execute(f"CREATE TABLE {table} (id)")
        connection.execute("CREATE TABLE notebook_tract (id, removed_at)")
        connection.execute(f"INSERT INTO notebook_tract VALUES {rows}")


def test_a_copy_holds_what_the_notebook_holds(notebook, tmp_path):
    """A copy is a whole notebook of its own."""
    copy_to(notebook, tmp_path / "elsewhere" / "copy.sqlite3")
    assert look_at(tmp_path / "elsewhere" / "copy.sqlite3") == 1


def test_a_copy_that_cannot_be_written_leaves_nothing(notebook, tmp_path):
    """A place that is no folder is said in a sentence, and no half of a copy stays."""
    (tmp_path / "file").write_text("")
    with pytest.raises(NoCopy, match="cannot be written"):
        copy_to(notebook, tmp_path / "file" / "copy.sqlite3")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["file", "notebook.sqlite3"]


def test_ten_dated_copies_are_kept(notebook):
    """The oldest beyond ten go."""
    for minute in range(MOST_KEPT + 3):
        dated_copy(notebook, NOW + datetime.timedelta(minutes=minute))
    names = sorted(p.name for p in (notebook.parent / "copies").iterdir())
    assert (len(names), names[0]) == (MOST_KEPT, "notebook-20261010-091700.sqlite3")


def test_a_copy_is_put_back_and_what_was_there_is_kept(notebook, tmp_path):
    """Restoring gives the copy's tracts, and a dated copy of what it replaced."""
    copy_to(notebook, tmp_path / "copy.sqlite3")
    with closing(sqlite3.connect(notebook)) as connection, connection:
        connection.execute("DELETE FROM notebook_tract")

    assert restore(tmp_path / "copy.sqlite3", notebook, NOW) == 1
    assert look_at(notebook) == 1
    assert len(list((tmp_path / "copies").iterdir())) == 1


@pytest.mark.parametrize("raw", [b"", b"not a database", b"SQLite format 3\x00" + b"\x00" * 200])
def test_what_is_no_notebook_is_not_put_back(notebook, tmp_path, raw):
    """Anything else is refused and the notebook stays."""
    (tmp_path / "other").write_bytes(raw)
    with pytest.raises(NoCopy, match=r"not a copy|damaged"):
        restore(tmp_path / "other", notebook, NOW)
    assert look_at(notebook) == 1
    assert not (tmp_path / "copies").exists()
