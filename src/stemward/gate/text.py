"""Bytes of a file to text: encodings, marks and signs that do not belong, each said and none guessed away."""

import codecs
import os
from pathlib import Path

from stemward.gate.problems import Problems

LARGEST_STEMS, LARGEST_OTHER = 400_000_000, 20_000_000
"""Bytes; a file beyond that is no tract folder's."""

_UTF16 = ((codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))


def read_bytes(folder: Path, name: str, problems: Problems, largest: int = LARGEST_OTHER) -> bytes | None:
    """The bytes of a file of the folder; None if there is none or it cannot be read, which is noted."""
    path = folder / name
    try:
        if not path.exists() and not path.is_symlink():
            return None
        if not path.resolve().is_relative_to(folder.resolve()):
            problems.add("file.outside", name)
            return None
        if path.is_dir():
            problems.add("file.is_folder", name)
            return None
        size = path.stat().st_size
        if size > largest:
            problems.add("file.too_large", name, size=size, largest=largest)
            return None
        with path.open("rb") as file:
            return file.read()
    except PermissionError:
        problems.add("file.no_permission", name)
    except OSError as error:
        problems.add("file.unreadable", name, why=os.strerror(error.errno) if error.errno else str(error))
    return None


def decode(content: bytes, name: str, problems: Problems) -> str | None:
    """Text of a file in UTF-8 (with or without a mark) or marked UTF-16; None if it is neither, which is noted."""
    if not content.strip():
        problems.add("file.empty", name)
        return None
    for mark, encoding in _UTF16:
        if content.startswith(mark):
            return _decoded(content, encoding, name, problems)
    if b"\0" in content:
        looks_16 = content[1::2].count(0) > len(content) // 4 or content[::2].count(0) > len(content) // 4
        line = content[: content.index(b"\0")].count(b"\n") + 1
        problems.add("file.utf16_unmarked" if looks_16 else "file.nul", name, line)
        return None
    return _decoded(content.removeprefix(codecs.BOM_UTF8), "utf-8", name, problems)


def _decoded(content: bytes, encoding: str, name: str, problems: Problems) -> str | None:
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        problems.add("file.not_utf8", name, line, byte=f"0x{content[error.start]:02x}")
        return None
    if "\0" in text:
        problems.add("file.nul", name, text[: text.index("\0")].count("\n") + 1)
        return None
    return text.replace("\r\n", "\n").replace("\r", "\n")


def read_text(folder: Path, name: str, problems: Problems, largest: int = LARGEST_OTHER) -> str | None:
    """The text of a file of the folder; None if missing or unusable (the latter is noted)."""
    content = read_bytes(folder, name, problems, largest)
    return None if content is None else decode(content, name, problems)
