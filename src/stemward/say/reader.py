"""Proposed facts in words, as data, and as the facts of a shelf."""

import json
from collections.abc import Sequence
from dataclasses import asdict

import tomli_w

from stemward.label import KINDS
from stemward.label.reader import Proposed
from stemward.say.en import reader as words

MOST_WORDS = 240
"""Signs of a label's words that are shown beside a proposal: engineering guess."""


def fact_lines(found: Sequence[Proposed], pages: int) -> list[str]:
    """A heading, then each fact with its page, how sure the reader is, and the label's words."""
    if not found:
        return [words.NOTHING.format(pages=pages)]
    lines = [words.HEAD.format(count=len(found), pages=pages)]
    order = {kind: n for n, kind in enumerate(KINDS)}
    for one in sorted(found, key=lambda p: (order.get(p.kind, len(order)), p.page)):
        scope = "; ".join(", ".join(values) for _, values in one.scope)
        lines.append(
            words.LINE.format(
                kind=one.kind, value=_short(one.value), scope=f" ({scope})" if scope else "", page=one.page,
                sure=words.SURE[one.sure],
            )
        )  # fmt: skip
        if one.value != one.words:
            lines.append(words.WORDS.format(words=_short(one.words)))
    return lines


def _short(text: str) -> str:
    return text if len(text) <= MOST_WORDS else f"{text[:MOST_WORDS]}…"


def as_json(found: Sequence[Proposed], pages: int) -> str:
    """The facts as JSON; boxes in points from the page's upper left corner."""
    rows = [{**asdict(one), "scope": {name: list(values) for name, values in one.scope}} for one in found]
    return json.dumps({"schema": 1, "pages": pages, "proposed": rows}, indent=1, ensure_ascii=False)


def as_facts(found: Sequence[Proposed]) -> list[dict[str, object]]:
    """The facts as the shelf holds them: proposed, with page and words, and read by nobody."""
    facts = []
    for one in found:
        fact: dict[str, object] = {"kind": one.kind, "says": one.value, "page": str(one.page), "proposed": True}
        fact["words"] = one.words[:500]
        if one.force != "must":
            fact["force"] = one.force
        if one.scope:
            fact["scope"] = {name: list(values) for name, values in one.scope}
        facts.append(fact)
    return facts


def as_toml(found: Sequence[Proposed]) -> str:
    """The facts as the end of a shelf's file."""
    return tomli_w.dumps({"facts": as_facts(found)}, multiline_strings=False)
