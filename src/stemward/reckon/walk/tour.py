"""A first order of places by the shortest steps, and an order without detours: turned pieces, moved pieces."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_NEAR = 10
"""Nearest places that are tried beside each: more cost time and change little (Johnson & McGeoch 1997, from memory)."""
_MOST_MOVED = 3
_WINDOW = 50
_LEAST = 1e-9
# Numerical settings: places of a piece that is moved at most, how far along the round a shake reaches, and what a round
# must be shorter by to count as shorter, so that rounding never turns it to and fro.


def shortest_steps(dist_m: Floats) -> list[int]:
    """A round over all places, started with 0: the shortest step that makes no fork and no early ring, again and again.

    dist_m: (n, n), symmetric. Nicholson's "greedy edge" rule, as every textbook on the traveling salesman has it.
    """
    count = len(dist_m)
    if count < 3:
        return list(range(count))
    one, other = np.triu_indices(count, 1)
    shortest = np.argsort(dist_m[one, other], kind="stable")
    beside: list[list[int]] = [[] for _ in range(count)]
    piece = list(range(count))
    steps = 0
    for a, b in zip(one[shortest].tolist(), other[shortest].tolist(), strict=True):
        if len(beside[a]) < 2 and len(beside[b]) < 2 and _root(piece, a) != _root(piece, b):
            piece[_root(piece, a)] = _root(piece, b)
            beside[a].append(b)
            beside[b].append(a)
            steps += 1
            if steps == count - 1:
                break
    order, before = [next(n for n in range(count) if len(beside[n]) == 1)], -1
    while len(order) < count:
        here = order[-1]
        order.append(next(n for n in beside[here] if n != before))
        before = here
    first = order.index(0)
    return order[first:] + order[:first]


def _root(piece: list[int], n: int) -> int:
    while piece[n] != n:
        piece[n] = piece[piece[n]]
        n = piece[n]
    return n


def untangled(order: Sequence[int], dist_m: Floats) -> list[int]:
    """The round with pieces turned about (2-opt) and pieces of up to three places moved (or-opt) as long as it gets
    shorter; begins where it began. dist_m: (n, n), symmetric. Never longer than what came in.

    Croes 1958 and Or 1976, with the nearest places first and places looked at again only near a change (Bentley 1992);
    from memory.
    """
    return shaken(order, dist_m, 0, np.random.default_rng(0))


def shaken(order: Sequence[int], dist_m: Floats, times: int, rng: np.random.Generator) -> list[int]:
    """The same, and then, so many times: two short pieces change places, the round is untangled around them, and stays
    so if it is no longer than before (Martin, Otto & Felten 1991, from memory). Never longer than what came in.
    """
    if len(order) < 5:
        return _short_round(list(order), dist_m)
    used = np.array(order)
    own = dist_m[np.ix_(used, used)]
    rows = own.tolist()
    own = own.copy()
    np.fill_diagonal(own, np.inf)
    near = np.argsort(own, axis=1, kind="stable")[:, : min(_NEAR, len(order) - 1)].tolist()
    tour, at = list(range(len(order))), list(range(len(order)))
    _settle(tour, at, near, rows, tour[::-1])
    count = len(tour)
    window = min(_WINDOW, count - 1)
    for start, cuts in zip(
        rng.integers(0, count, times).tolist(), np.sort(rng.integers(1, window + 1, (times, 3))).tolist(), strict=True
    ):
        one, two, three = cuts
        if one == two or two == three:
            continue
        was, was_at = tour[:], at[:]
        piece = [tour[(start + n) % count] for n in range(three + 1)]
        new = [*piece[:one], *piece[two:three], *piece[one:two], piece[three]]
        ends = [piece[0], piece[one - 1], piece[one], piece[two - 1], piece[two], piece[three - 1], piece[three]]
        for n, place in enumerate(new):
            tour[(start + n) % count] = place
            at[place] = (start + n) % count
        lost = _long(new, rows) - _long(piece, rows)
        if _settle(tour, at, near, rows, list(dict.fromkeys(ends))) < lost - _LEAST:
            tour, at = was, was_at
    first = at[0]
    return [order[n] for n in tour[first:] + tour[:first]]


def _long(piece: list[int], rows: list[list[float]]) -> float:
    return sum(rows[a][b] for a, b in pairwise(piece))


def _settle(
    tour: list[int], at: list[int], near: list[list[int]], rows: list[list[float]], waiting: list[int]
) -> float:  # fmt: skip
    """Turn and move pieces near the waiting places until nothing gets shorter; what was gained."""
    gained, is_waiting = 0.0, set(waiting)
    while waiting:
        place = waiting.pop()
        is_waiting.discard(place)
        while True:
            gain, touched = _turned(tour, at, place, near[place], rows) or _moved(tour, at, place, near[place], rows)
            if not touched:
                break
            gained += gain
            fresh = [n for n in touched if n not in is_waiting]
            waiting += fresh
            is_waiting.update(fresh)
    return gained


def _short_round(order: list[int], dist_m: Floats) -> list[int]:
    """The best of the three rounds over four places; fewer have only one."""
    if len(order) < 4:
        return order
    a, b, c, d = order
    return min(([a, b, c, d], [a, b, d, c], [a, c, b, d]), key=lambda tour: round_m(tour, dist_m))


def round_m(order: Sequence[int], dist_m: Floats) -> float:
    """Length of the closed round, in the unit of the distances."""
    there = np.asarray(order, dtype=int)
    return float(dist_m[there, np.roll(there, -1)].sum()) if len(there) else 0.0


def _turned(
    tour: list[int], at: list[int], a: int, near: list[int], rows: list[list[float]]
) -> tuple[float, tuple[int, ...]] | None:  # fmt: skip
    """Turn a piece about so that `a` stands beside a nearer place; gain and places touched, None where none is."""
    for way in (1, -1):
        b = tour[(at[a] + way) % len(tour)]
        for c in near:
            gain = rows[a][b] - rows[a][c]
            if gain <= _LEAST:
                break
            d = tour[(at[c] + way) % len(tour)]
            if gain + rows[c][d] - rows[b][d] > _LEAST:
                low, high = sorted((at[a], at[c]))
                low, high = (low + 1, high + 1) if way == 1 else (low, high)
                piece = tour[low:high]
                piece.reverse()
                tour[low:high] = piece
                for n, place in enumerate(piece, low):
                    at[place] = n
                return gain + rows[c][d] - rows[b][d], (a, b, c, d)
    return None


def _moved(
    tour: list[int], at: list[int], a: int, near: list[int], rows: list[list[float]]
) -> tuple[float, tuple[int, ...]]:  # fmt: skip
    """Move a piece that begins with `a` to between two places that stand together; gain and what was touched."""
    for way, long in ((way, long) for long in range(1, _MOST_MOVED + 1) for way in (1, -1)):
        piece = [tour[(at[a] + way * n) % len(tour)] for n in range(long)]
        before, after = tour[(at[a] - way) % len(tour)], tour[(at[a] + way * long) % len(tour)]
        last = piece[-1]
        saved = rows[a][before] + rows[last][after] - rows[before][after]
        if before == after or before in piece:
            continue
        for c, d in _gaps(tour, at, near, piece, saved, rows[a]):
            if saved + rows[c][d] - rows[a][c] - rows[last][d] > _LEAST:
                rest = [n for n in tour if n not in piece]
                where = rest.index(c)
                if rest[(where + 1) % len(rest)] == d:
                    rest[where + 1 : where + 1] = piece
                else:
                    rest[where:where] = piece[::-1]
                tour[:] = rest
                for n, place in enumerate(rest):
                    at[place] = n
                return saved + rows[c][d] - rows[a][c] - rows[last][d], (a, last, before, after, c, d)
    return 0.0, ()


def _gaps(
    tour: list[int], at: list[int], near: list[int], piece: list[int], saved: float, from_a: list[float]
) -> Iterator[tuple[int, int]]:
    """Pairs that stand together, the first of them near `a`, outside the piece, as long as moving there can save."""
    for c in near:
        if from_a[c] >= saved:
            return
        if c not in piece:
            for d in (tour[(at[c] + 1) % len(tour)], tour[at[c] - 1]):
                if d not in piece:
                    yield c, d
