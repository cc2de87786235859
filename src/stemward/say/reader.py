"""Proposed facts in words."""

from collections.abc import Sequence

from stemward.label import KINDS
from stemward.label.reader import Proposed
from stemward.say.en import reader as words

MOST_WORDS = 240
"""Signs of a label's words that are shown beside a proposal: engineering guess."""


def fact_lines(found: Sequence[Proposed], pages: int, pictures: bool = False) -> list[str]:
    """A heading, then each fact with its page, how sure the reader is, and the label's words."""
    if not found:
        return [words.NOTHING.format(pages=pages)]
    lines = [words.HEAD.format(count=len(found), pages=pages)]
    if pictures:
        lines.append(words.PICTURES)
    order = {kind: n for n, kind in enumerate(KINDS)}
    for one in sorted(found, key=lambda p: (order.get(p.kind, len(order)), p.page)):
        scope = "; ".join(", ".join(values) for _, values in one.scope)
        lines.append(
            words.LINE.format(
                kind=one.kind, value=_short(one.value), scope=f" ({scope})" if scope else "", page=one.page,
                sure=words.SURE[one.sure], also=_also(one),
            )
        )  # fmt: skip
        if one.value != one.words:
            lines.append(words.WORDS.format(words=_short(one.words)))
    return lines


def _also(one: Proposed) -> str:
    pages = sorted({place.page for place in one.also} - {one.page})
    return words.ALSO.format(pages=", ".join(map(str, pages))) if pages else ""


def _short(text: str) -> str:
    return text if len(text) <= MOST_WORDS else f"{text[:MOST_WORDS]}…"
