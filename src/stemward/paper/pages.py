"""Plain pages of headings, lines, tables and figures: one template for sheets that need no layout of their own."""

import datetime
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

from stemward.paper.compile import to_pdf

SIZES = {"letter": "us-letter", "a4": "a4"}


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a page. figures: (words, SVG, words for those who do not see it). widths: shares of the columns,
    all alike when empty. to_fill: rows high enough to write in."""

    head: str = ""
    lines: tuple[str, ...] = ()
    points: tuple[str, ...] = ()
    figures: tuple[tuple[str, str, str], ...] = ()
    head_row: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    widths: tuple[float, ...] = ()
    to_fill: bool = False


def pages_pdf(title: str, parts: Sequence[Part], footer: str, as_of: datetime.date, paper: str = "letter") -> bytes:
    """The pages as PDF/UA-1. The same parts, day and paper give the same bytes."""
    data: dict[str, Any] = {
        "title": title, "footer": footer, "paper": SIZES[paper], "parts": [_data(part) for part in parts]
    }  # fmt: skip
    return to_pdf("pages.typ", data, as_of)


def _data(part: Part) -> dict[str, Any]:
    return asdict(part) | {
        "figures": [{"words": words, "svg": svg, "alt": alt} for words, svg, alt in part.figures],
        "widths": list(part.widths or [1.0] * len(part.head_row)),
    }
