"""Plain pages of headings, lines, tables and figures: one template for sheets that need no layout of their own."""

import datetime
from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from stemward.drawings.tally import ten_stems
from stemward.paper.compile import to_pdf
from stemward.say.parts import Part

SIZES = {"letter": "us-letter", "a4": "a4"}


def pages_pdf(title: str, parts: Sequence[Part], footer: str, as_of: datetime.date, paper: str = "letter") -> bytes:
    """The pages as PDF/UA-1. The same parts, day and paper give the same bytes."""
    data: dict[str, Any] = {
        "title": title, "footer": footer, "paper": SIZES[paper], "parts": [_data(part) for part in parts]
    }  # fmt: skip
    return to_pdf("pages.typ", data, as_of)


def _data(part: Part) -> dict[str, Any]:
    return asdict(part) | {
        "figures": [{"words": words, "svg": ten_stems(low, high), "alt": alt} for words, low, high, alt in part.tens],
        "widths": list(part.widths or [1.0] * len(part.head_row)),
    }
