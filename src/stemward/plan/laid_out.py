"""Which ways are shown, in which group and order."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from stemward.kinds import Way
from stemward.plan.ways import NOT_NOW, Weighed

PINNED = ("leave it", "cut only")
"""Always on top, not sorted: the measure for the rest."""
GROUPS = ("go_ahead", "find_out", "not_now", "stopped")
"""In this order; only those that hold a way are shown."""
MOST_SHOWN = 6


@dataclass(frozen=True)
class LaidOut:
    """Numbers of ways in the order they were weighed: pinned, then groups by name; how many are not shown."""

    pinned: tuple[int, ...]
    groups: tuple[tuple[str, tuple[int, ...]], ...]
    more: int


def group_of(weighed: Weighed) -> str:
    """The group a way belongs to; a stop that only means another time of year is no stop for good."""
    stops = [f.message for f in weighed.findings if f.weight.word == "stop"]
    if any(message not in NOT_NOW for message in stops):
        return "stopped"
    if weighed.not_now:
        return "not_now"
    return "find_out" if weighed.to_find_out else "go_ahead"


def order(weighed: Weighed) -> tuple[Any, ...]:
    """What is compared inside a group, smaller first: least that can reach what is kept; most of ten stems dead by
    the lower figure; least work; what is on the shelf; then least herbicide."""
    return (
        weighed.reach,
        -(weighed.behind.low or 0),
        weighed.hours_low,
        not weighed.on_shelf,
        round(weighed.ae_g, 6),
        (weighed.way.how, weighed.way.first, weighed.way.product, weighed.way.partner),
    )


def lay_out(weighed: Sequence[Weighed], chosen: Way) -> LaidOut:
    """At most six ways: the pinned ones, the one taken, and the first of the rest, each in its group."""
    pinned = tuple(n for n, w in enumerate(weighed) if w.way.how in PINNED)
    rest = sorted((n for n in range(len(weighed)) if n not in pinned), key=lambda n: _place(weighed[n]))
    taken = [n for n in rest if weighed[n].way == chosen]
    room = max(MOST_SHOWN - len(pinned) - len(taken), 0)
    kept = {*taken, *[n for n in rest if n not in taken][:room]}
    groups = []
    for name in GROUPS:
        members = tuple(n for n in rest if n in kept and group_of(weighed[n]) == name)
        if members:
            groups.append((name, members))
    return LaidOut(pinned, tuple(groups), len(weighed) - len(pinned) - len(kept))


def _place(weighed: Weighed) -> tuple[Any, ...]:
    return (GROUPS.index(group_of(weighed)), *order(weighed))
