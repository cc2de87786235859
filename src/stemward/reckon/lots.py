"""How many stumps may be cut before they are treated."""

import math


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
