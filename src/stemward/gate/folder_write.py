"""Text files into a new or empty folder, all of them or none."""

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path


class NotWritten(Exception):
    """Why a folder was not written, as a sentence. Nothing was changed."""


def write_texts(files: Mapping[str, str], folder: Path) -> None:
    """Write relative names and texts into `folder`, which must be new, empty, or hold only these very files.

    Everything is written beside it first and moved into place at the end. Raises NotWritten.
    """
    try:
        if folder.is_symlink() or (folder.exists() and not folder.is_dir()):
            raise NotWritten(f"{folder} is not a folder.")
        if folder.is_dir():
            there = {str(p.relative_to(folder)) for p in folder.rglob("*") if not p.is_dir()}
            if there - set(files):
                extra = ", ".join(sorted(there - set(files))[:3])
                raise NotWritten(f"{folder} holds other files ({extra}). Name a new or empty folder.")
        folder.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(tempfile.mkdtemp(dir=folder.parent, prefix=f".{folder.name}."))
        try:
            for name, content in files.items():
                path = beside / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(content, encoding="utf-8", newline="\n")
            beside.chmod(0o755)
            if folder.is_dir():
                shutil.rmtree(folder)
            beside.replace(folder)
        except BaseException:
            shutil.rmtree(beside, ignore_errors=True)
            raise
    except OSError as error:
        why = error.strerror or os.strerror(error.errno or 0)
        raise NotWritten(f"Cannot write {folder}: {why}.") from None
