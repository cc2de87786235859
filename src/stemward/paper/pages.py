"""Plain pages of headings, lines, tables and figures: one template for sheets that need no layout of their own."""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from types import MappingProxyType
from typing import Any

from stemward.drawings.tally import ten_stems
from stemward.paper.compile import to_pdf
from stemward.say.parts import Part

SIZES = {"letter": "us-letter", "a4": "a4"}


def pages_pdf(
    title: str, parts: Sequence[Part], footer: str, as_of: datetime.date, paper: str = "letter",
    pictures: Mapping[str, bytes] = MappingProxyType({}),
) -> bytes:  # fmt: skip
    """The pages as PDF/UA-1. The same parts, pictures, day and paper give the same bytes.

    pictures: JPEGs by digest; of one that is not there only the words are printed.
    """
    data: dict[str, Any] = {
        "title": title, "footer": footer, "paper": SIZES[paper], "parts": [_data(part, pictures) for part in parts]
    }  # fmt: skip
    return to_pdf("pages.typ", data, as_of)


def _data(part: Part, pictures: Mapping[str, bytes]) -> dict[str, Any]:
    return asdict(part) | {
        "figures": [{"words": words, "svg": ten_stems(low, high), "alt": alt} for words, low, high, alt in part.tens],
        "pictures": [{"words": said, "jpeg": list(pictures.get(digest, b""))} for digest, said in part.pictures],
        "widths": list(part.widths or [1.0] * len(part.head_row)),
    }
