"""How many stumps may be cut before they are treated."""

import math
from collections.abc import Callable, Sequence


def wait_s(stumps: int, walk_s: float, clear_s: float, cut_s: float, treat_s: float) -> float:
    """The longest any stump of a lot waits for herbicide, seconds; all are cut, then treated in the same order.

    walk_s: over the distance kept from a saw. clear_s: until the saw is off and the all-clear is given. cut_s,
    treat_s: for one stump, the way to the next included. ValueError for no stumps.
    """
    if stumps < 1:
        raise ValueError("a lot holds at least one stump")
    # The first waits while the others are cut; where treating is slower than cutting the last waits longest.
    return clear_s + walk_s + max((stumps - 1) * cut_s + treat_s, stumps * treat_s)


def lot_size(limit_s: float, walk_s: float, clear_s: float, cut_s: float, treat_s: float) -> int:
    """The most stumps of which none waits longer than the limit; 0 where even one would."""
    left_s = limit_s - walk_s - clear_s
    if left_s < treat_s:
        return 0
    by_cutting = math.inf if cut_s <= 0 else (left_s - treat_s) / cut_s + 1
    by_treating = math.inf if treat_s <= 0 else left_s / treat_s
    return int(min(math.floor(min(by_cutting, by_treating, 1e6) + 1e-9), 1_000_000))


def lots_along(
    legs_s: Sequence[float], cut_s: Sequence[float], treat_s: Sequence[float], back_s: Callable[[int, int], float],
    limit_s: float, away_s: float, clear_s: float,
) -> list[tuple[int, int]]:  # fmt: skip
    """Lots of a walk: first stump and last (not in it) that are cut one after the other, then treated in that order.

    legs_s[i]: the way from stump i to i + 1. cut_s, treat_s: at each stump, the way to the next left out. back_s(i, j):
    the way back from j to i. away_s: over the distance kept from the saw; clear_s: until the all-clear. Each lot is as
    long as no stump in it waits over the limit; one that waits too long alone is a lot by itself.
    """
    lots, first = [], 0
    while first < len(cut_s):
        last = first + 1
        while last < len(cut_s) and longest_wait_s(
            legs_s, cut_s, treat_s, back_s(first, last) + away_s + clear_s, first, last + 1
        ) <= limit_s:  # fmt: skip
            last += 1
        lots.append((first, last))
        first = last
    return lots


def longest_wait_s(
    legs_s: Sequence[float], cut_s: Sequence[float], treat_s: Sequence[float], between_s: float, first: int, last: int
) -> float:  # fmt: skip
    """The longest any stump of a lot waits: from its own cut until it is wetted. between_s: from the last cut until the
    first is reached."""
    longest, cut_at, treated_at = 0.0, 0.0, 0.0
    since = sum(cut_s[first:last]) + sum(legs_s[first : last - 1])
    for n in range(first, last):
        cut_at, treated_at = cut_at + cut_s[n], treated_at + treat_s[n]
        longest = max(longest, since - cut_at + between_s + treated_at)
        if n < last - 1:
            cut_at, treated_at = cut_at + legs_s[n], treated_at + legs_s[n]
    return longest
