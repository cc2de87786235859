"""Copies of the notebook: dated ones beside it, one to keep elsewhere. PostgreSQL has tools of its own for that."""

import datetime
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

FOLDER = "copies"
MOST_KEPT = 10
"""Dated copies that are kept: engineering guess, a season of starts."""
TABLES = {"notebook_tract", "notebook_piece", "notebook_stem", "notebook_entry", "notebook_change", "django_migrations"}


class NoCopy(Exception):
    """A copy that was not made or cannot be used; its text is a sentence for the person."""


def copy_to(notebook: Path, target: Path) -> None:
    """Write a whole copy of a notebook, also while it is in use. Raises NoCopy, leaving no half of one."""
    if not notebook.exists():
        raise NoCopy(f"There is no notebook in {notebook.parent} yet.")
    aside = target.with_name(f".{target.name}.part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        aside.unlink(missing_ok=True)
        with closing(sqlite3.connect(notebook)) as connection:
            connection.execute("VACUUM INTO ?", (str(aside),))
        aside.replace(target)
    except (OSError, sqlite3.Error) as error:
        with suppress(OSError):
            aside.unlink(missing_ok=True)
        raise NoCopy(f"The copy cannot be written to {target}: {error}.") from None


def dated_copy(notebook: Path, now: datetime.datetime) -> Path | None:
    """A copy beside the notebook, named for the time; the oldest beyond ten go. None if there is nothing to copy."""
    if not notebook.exists():
        return None
    target = notebook.parent / FOLDER / f"notebook-{now:%Y%m%d-%H%M%S}.sqlite3"
    copy_to(notebook, target)
    for old in sorted(target.parent.glob("notebook-*.sqlite3"))[:-MOST_KEPT]:
        old.unlink(missing_ok=True)
    return target


def look_at(copy: Path) -> int:
    """How many tracts a copy holds. Raises NoCopy if it is no whole notebook."""
    try:
        with closing(sqlite3.connect(f"file:{copy}?mode=ro", uri=True)) as connection:
            tables = {row[0] for row in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
            if not tables >= TABLES:
                raise NoCopy("This is not a copy of a notebook.")
            if connection.execute("PRAGMA integrity_check").fetchone() != ("ok",):
                raise NoCopy("This copy is damaged.")
            row = connection.execute("SELECT count(*) FROM notebook_tract WHERE removed_at IS NULL").fetchone()
            return int(row[0])
    except sqlite3.Error:
        raise NoCopy("This is not a copy of a notebook.") from None


def restore(copy: Path, notebook: Path, now: datetime.datetime) -> int:
    """Put a copy in the notebook's place, after a dated copy of what is there. How many tracts it holds.

    Raises NoCopy, with nothing changed, if it is no whole notebook. Whoever calls forgets what was worked out.
    """
    tracts = look_at(copy)
    notebook.parent.mkdir(parents=True, exist_ok=True)
    dated_copy(notebook, now)
    try:
        with closing(sqlite3.connect(copy)) as source, closing(sqlite3.connect(notebook)) as target:
            source.backup(target)
    except sqlite3.Error as error:
        raise NoCopy(f"The copy could not be put back: {error}.") from None
    return tracts
