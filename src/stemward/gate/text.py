"""From bytes to text: encodings, marks, and files that are something else."""

import codecs
import difflib
import re
from collections.abc import Iterable

from stemward.gate.problems import Problems

LOOKS_LIKE = (
    (b"PK\x03\x04", "spreadsheet or zip"),
    (b"\xd0\xcf\x11\xe0", "old spreadsheet"),
    (b"%PDF", "PDF"),
    (b"\x1f\x8b", "gzip"),
    (b"{\\rtf", "rich text"),
    (b"<!DOCTYPE", "web page"),
    (b"<html", "web page"),
)
"""First bytes of files that people give the wrong ending; from each format's own specification."""

MOSTLY_NUL = 0.25
"""Share of NUL bytes from which a file is taken for UTF-16 without a mark; plain text has about half."""

ODD_SIGNS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
"""Signs no name holds: controls that can upset a terminal or turn text around, and half characters."""


def decode(raw: bytes, file: str, problems: Problems) -> str | None:
    """The text of a file with "\\n" line ends; None if it cannot be read, with the problem noted.

    UTF-8 with or without a mark, or UTF-16 with a mark. Nothing else is guessed.
    """
    if not raw.strip():
        problems.add("file.empty", file)
        return None
    for first, what in LOOKS_LIKE:
        if raw.startswith(first):
            problems.add("file.looks_like", file, what=what)
            return None
    text = _decoded(raw, file, problems)
    if text is None:
        return None
    if "\0" in text:
        problems.add("file.nul", file, _line(text, text.index("\0")))
        return None
    if not text.strip():
        problems.add("file.empty", file)
        return None
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def _decoded(raw: bytes, file: str, problems: Problems) -> str | None:
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        try:
            return raw.decode("utf-16")
        except UnicodeDecodeError:
            problems.add("file.broken_utf16", file)
            return None
    raw = raw.removeprefix(codecs.BOM_UTF8)
    if raw.count(0) > MOSTLY_NUL * len(raw):
        problems.add("file.looks_utf16", file)
        return None
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as error:
        before = raw[: error.start]
        problems.add(
            "file.not_utf8",
            file,
            before.count(b"\n") + 1,
            byte=f"0x{raw[error.start]:02X}",
            perhaps=ODD_SIGNS.sub("?", bytes([raw[error.start]]).decode("latin-1")),
            at=error.start - before.rfind(b"\n"),
        )
        return None


def _line(text: str, position: int) -> int:
    return text.count("\n", 0, position) + 1


def near(typed: str, known: Iterable[str]) -> str:
    """Known words that may be meant, best first, with commas between; empty if none is like it."""
    by_fold = {word.casefold(): word for word in known}
    alike = difflib.get_close_matches(typed.casefold()[:60], by_fold, 3, 0.6)
    return ", ".join(by_fold[word] for word in alike)


def clean(typed: str, most: int = 60) -> str:
    """Something typed as it may be shown: without odd signs, and not endless."""
    shown = ODD_SIGNS.sub("?", typed)
    return shown if len(shown) <= most else shown[:most] + "…"
