"""What several commands share: reading arguments a person typed, and writing files whole or not at all."""

import datetime
import os
import sys
import tempfile
from pathlib import Path
from typing import Any


class Unusable(Exception):
    """Input that cannot be used; its text is a sentence for the person."""


def read_folder(folder: Path, as_of: str | None, book: Any) -> tuple[Any, datetime.date]:
    """What a tract's folder holds (tract and sha256 of its land) and the day it is for.

    Raises Unusable with all that is wrong, and where.
    """
    from stemward.gate import folder as gate
    from stemward.label import KINDS
    from stemward.say.problems import problem_lines

    try:
        # The command line is one of the two rooms that may look at the clock.
        day = datetime.date.fromisoformat(as_of) if as_of else datetime.datetime.now().astimezone().date()
    except ValueError:
        raise Unusable(f"Not understood: {as_of}. Write a date like 2026-10-03.") from None
    try:
        return gate.read(folder, book.find_species, KINDS), day
    except gate.Unreadable as unreadable:
        lines = [f"  {line}" for line in problem_lines(unreadable.problems)]
        raise Unusable("\n".join([f"{folder} cannot be used.", *lines])) from None


def say_unusable(problem: str) -> int:
    """Print what is wrong, and that nothing was changed; the exit status for it."""
    print(problem, "Nothing was changed.", sep="\n" if "\n" in problem else " ", file=sys.stderr)
    return 2


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that it is there whole or not at all; raises Unusable if it cannot be written."""
    try:
        handle, name = tempfile.mkstemp(dir=path.parent or Path(), prefix=f".{path.name}.")
        try:
            with os.fdopen(handle, "wb") as out:
                out.write(content)
                out.flush()
                os.fsync(out.fileno())
            Path(name).chmod(0o666 & ~_umask())
            Path(name).replace(path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise Unusable(f"Cannot write {path}: {error.strerror or error}.") from None


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
