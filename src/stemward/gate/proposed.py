"""Proposed facts as data, and as the facts of a shelf's file."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import asdict

import tomli_w

from stemward.gate.fields import MOST_SIGNS
from stemward.label import KINDS
from stemward.label.facts import FactKind
from stemward.label.reader import Proposed
from stemward.units import UnitError, read


def usable(found: Iterable[Proposed]) -> list[Proposed]:
    """Those proposed facts whose words a shelf can hold: figures with a unit, choices of the list, text."""
    return [one for one in found if one.kind in KINDS and fits(KINDS[one.kind], one.value)]


def fits(kind: FactKind, value: str) -> bool:
    """True if a value, as typed, is one that this kind of fact can have."""
    if kind.value == "number":
        try:
            read(value, kind.dimension, "" if kind.dimension == "count" else None)
        except UnitError:
            return False
        return True
    if kind.value == "yes-no":
        return value in ("yes", "no")
    return value in kind.choices if kind.choices else 0 < len(value) <= MOST_SIGNS


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
    """Those facts that a shelf can hold, as the end of its file."""
    return tomli_w.dumps({"facts": as_facts(usable(found))}, multiline_strings=False)
