"""A tract folder out: all files of it or none."""

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path, PurePosixPath


class NotWritten(Exception):
    """A folder that was not written; its text is a sentence for the person."""


def write_texts(files: Mapping[str, str], folder: Path) -> None:
    """Write texts by relative name ("shelf/x.toml") into a new or empty folder, or over files of those names.

    Everything is written aside first and then moved, so that a full disk leaves nothing by halves. Raises
    NotWritten, with nothing changed, if the folder holds anything else or cannot be written.
    """
    for name in files:
        parts = PurePosixPath(name).parts
        if not parts or PurePosixPath(name).is_absolute() or ".." in parts or "\\" in name:
            raise NotWritten(f"Cannot write {name!r}: not a name within the folder.")
    try:
        there = folder.exists() or folder.is_symlink()
        if there:
            _refuse_others(files, folder)
        home = folder if there else folder.parent
        home.mkdir(parents=True, exist_ok=True)
        aside = Path(tempfile.mkdtemp(prefix=".stemward-", dir=home))
        try:
            _write_all(files, aside)
            if there:
                _move_each(files, aside, folder)
            else:
                aside.chmod(0o777 & ~_umask())
                aside.rename(folder)
        finally:
            shutil.rmtree(aside, ignore_errors=True)
    except OSError as error:
        raise NotWritten(f"Cannot write {folder}: {error.strerror or error}.") from None


def _refuse_others(files: Mapping[str, str], folder: Path) -> None:
    """Raises NotWritten unless every file in the folder has the name of a file to be written."""
    if not folder.is_dir():
        raise NotWritten(f"{folder} is a file, not a folder.")
    wanted = {PurePosixPath(name) for name in files}
    folders = {parent for name in wanted for parent in name.parents}
    for path in sorted(folder.rglob("*")):
        name = PurePosixPath(path.relative_to(folder).as_posix())
        if path.is_symlink() or name not in (folders if path.is_dir() else wanted):
            raise NotWritten(f"{folder} holds {name} already. Name a new or an empty folder.")


def _write_all(files: Mapping[str, str], aside: Path) -> None:
    for name, text in files.items():
        path = aside / name
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("w", encoding="utf-8", newline="\n") as out:
            out.write(text)
            out.flush()
            os.fsync(out.fileno())


def _move_each(files: Mapping[str, str], aside: Path, folder: Path) -> None:
    # tract.toml goes last: until then an empty folder is no tract, so a breakdown is not taken for one.
    for name in sorted(files, key=lambda name: name == "tract.toml"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (aside / name).replace(folder / name)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
