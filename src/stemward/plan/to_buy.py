"""What must be bought before the next work day: what the plan's mixes take against what the jugs hold."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from stemward.kinds import Tract
from stemward.ledger.balances import with_balances

TINY_ML = 0.5
"""What is short by less clings to a jug's wall: engineering guess."""


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One thing that mixes take. product: its id, "" for carriers, surfactant and dye, which no shelf follows.

    left_ml: what the jugs hold, None where nobody has looked or it is not followed. short_ml: what is missing.
    """

    what: str
    product: str
    need_ml: float
    left_ml: float | None
    short_ml: float


def to_buy(plan: Mapping[str, Any], tract: Tract) -> list[ToBuy]:
    """Everything that the plan's batches take, in the order of the mixes: products first, then the rest together."""
    need: dict[tuple[str, str], float] = {}
    for mix in plan["mixes"]:
        for batch in mix["batches"]:
            for part in batch.get("parts", ()):
                key = _of(part["what"], mix)
                need[key] = need.get(key, 0.0) + part["ml"]
    shelf = {p.id: p for p in with_balances(tract.shelf, tract.entries)}
    found = []
    for (what, product), ml in sorted(need.items(), key=lambda one: not one[0][1]):
        if what == "water":
            continue
        known = [c.left_ul for c in shelf[product].containers] if product in shelf else [None]
        left = None if not known or any(ul is None for ul in known) else sum(ul or 0 for ul in known) / 1000
        if product and not known:
            left = 0.0
        short = 0.0 if left is None or ml - left < TINY_ML else ml - left
        found.append(ToBuy(what, product, ml, left, short))
    return found


def _of(what: str, mix: Mapping[str, Any]) -> tuple[str, str]:
    if what == "product":
        return mix["product_name"], mix["product"]
    if what == "partner":
        return mix["partner_name"], mix["partner"]
    return (mix["carrier"] if what == "carrier" else what), ""
