"""The time from cut to treatment while it runs: how much is left, and whether it is half gone or over."""

import math


def clock_left_s(limit_s: float, waited_s: float) -> float:
    """Seconds left; below 0 once it is over. Both in seconds; a wait below 0, from a clock put back, counts as none."""
    return limit_s - max(waited_s, 0.0)


def clock_part(limit_s: float, waited_s: float) -> str:
    """ "first half", "second half" or "over". The limit itself is within it, as "within" is read."""
    left_s = clock_left_s(limit_s, waited_s)
    if left_s < 0:
        return "over"
    return "second half" if left_s <= limit_s / 2 else "first half"


def minutes_shown(left_s: float) -> int:
    """Whole minutes left as they are shown, cut off, so that no more is shown than there is; over shows 0."""
    return max(0, math.floor(left_s / 60))
