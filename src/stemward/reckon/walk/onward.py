"""A new order from where someone stands: what a phone can reckon without a signal."""

import math
from collections.abc import Sequence

_LEAST = 1e-6


def onward(places: Sequence[Sequence[float]], here: Sequence[float]) -> list[int]:
    """Numbers of the places in an order that begins near `here` (x, y, metres): always the nearest next, then pieces
    turned about as long as that makes the way shorter; it ends where it ends. Straight lines, nothing walked around.
    """
    left, order, at = list(range(len(places))), [], here
    while left:
        best = min(left, key=lambda n: (math.hypot(places[n][0] - at[0], places[n][1] - at[1]), n))
        left.remove(best)
        order.append(best)
        at = places[best]
    return _turned_about(places, here, order)


def _turned_about(places: Sequence[Sequence[float]], here: Sequence[float], order: list[int]) -> list[int]:
    """The order with pieces turned about, the first that helps each time, until none does."""

    def apart_m(a: Sequence[float], b: Sequence[float]) -> float:
        return math.hypot(a[0] - b[0], a[1] - b[1])

    better = True
    while better:
        better = False
        for first in range(len(order) - 1):
            before = places[order[first - 1]] if first else here
            for last in range(first + 1, len(order)):
                start, end = places[order[first]], places[order[last]]
                was, new = apart_m(before, start), apart_m(before, end)
                if last + 1 < len(order):
                    after = places[order[last + 1]]
                    was, new = was + apart_m(end, after), new + apart_m(start, after)
                if new < was - _LEAST:
                    order[first : last + 1] = order[first : last + 1][::-1]
                    better = True
    return order
