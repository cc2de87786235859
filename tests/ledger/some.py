"""Entries and land to fold."""

from dataclasses import replace
from functools import cache

from stemward.gate import demo
from stemward.gate.folder import read_texts
from stemward.handbook import load
from stemward.kinds import Entry, Tract
from stemward.label import KINDS

OFFSET = -300


def entry(key: str, kind: str, at: str = "2026-09-12T09:00", corrects: str = "", **body) -> Entry:
    """One entry."""
    return Entry(key, kind, at, OFFSET, "owner", body, corrects=corrects)


@cache
def _read() -> Tract:
    return read_texts(demo.texts(), load().find_species, KINDS).tract


def hollow(**changes) -> Tract:
    """The example without its own entries."""
    return replace(_read(), **({"entries": ()} | changes))
