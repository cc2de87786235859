"""A better answer: PyVRP moves stems between people and trips, and every trip is shaken into a shorter order."""

import math
import warnings
from collections.abc import Sequence
from typing import Any

import numpy as np

from stemward.reckon.walk.task import _MOST_UNLIKE, Round, Task, Walker, measure, unlike
from stemward.reckon.walk.tour import shaken

_PASSES = 3
_TRIES, _FEW = 600, 200
_SHAKES, _SHAKES_EACH = 3000, 40
_CM, _TENTHS, _HUNDREDTHS = 100, 10, 100
_FAR_CM = 50_000_000
_NO_END_ML, _NO_END_S = 1e9, 1e9
# Numerical settings: passes of the solver, tries in each, and below how many stems there are more of them; how often a
# walk is shaken, in all and for each stem; whole centimetres, tenths of a second and hundredths of a millilitre, since
# the solver reckons in whole numbers; a way that is not there counts as 500 km, a bottle without an end as 1,000 m3.


def bettered(
    task: Task, walkers: Sequence[Walker], stems: list[int], plans: list[list[int]], seed: int, effort: float
) -> list[list[int]]:  # fmt: skip
    """The solver's passes from the first pieces on, then every walk shaken; days alike come before short ways.

    One walk without a refill that fits into the day needs no solver: only the order is sought.
    """
    missing = len(stems) - sum(n >= task.stations for stops in plans for n in stops)
    refills = any(n < task.stations for stops in plans for n in stops[1:-1])
    bound_s = math.inf if missing else max(_rounds(task, walkers, plans), key=lambda one: one.time_s).time_s
    best = plans
    for number in range(_PASSES if len(walkers) > 1 or missing or refills else 0):
        # Where there are few stems a try costs little.
        tries = max(1, int(_TRIES * effort * max(1.0, _FEW / len(stems))))
        plans = _solved(task, walkers, stems, plans, bound_s, seed + number, tries, bool(missing))
        plans = [_shorter(task, stops, 0.0, seed) for stops in plans]
        best = min(best, plans, key=lambda some: _badness(task, walkers, some, len(stems)))
        if len(walkers) > 1 and not missing:
            rounds = _rounds(task, walkers, plans)
            # With no day longer than this over the mean, none can be shorter than the most they may differ by.
            slack = (_MOST_UNLIKE - 1.01) / (1 + _MOST_UNLIKE * (len(walkers) - 1))
            bound_s = sum(one.time_s for one in rounds) / len(rounds) * (1 + slack)
    shaken_plans = [_shorter(task, stops, effort, seed) for stops in best]
    return min(best, shaken_plans, key=lambda some: _badness(task, walkers, some, len(stems)))


def _rounds(task: Task, walkers: Sequence[Walker], plans: Sequence[Sequence[int]]) -> list[Round]:
    return [measure(task, w, stops) for w, stops in zip(walkers, plans, strict=True)]


def _badness(
    task: Task, walkers: Sequence[Walker], plans: Sequence[Sequence[int]], count: int
) -> tuple[float, ...]:  # fmt: skip
    """What is compared, smaller first: broken days and bottles; stems not reached; days too unlike; length."""
    rounds = _rounds(task, walkers, plans)
    broken = sum(one.time_s > w.day_s + 1e-6 for one, w in zip(rounds, walkers, strict=True))
    reached = [n - task.stations for stops in plans for n in stops if n >= task.stations]
    worth = float(len(reached) if task.value is None else task.value[reached].sum())
    too_unlike = max(1.0, unlike(rounds) / _MOST_UNLIKE) if len(reached) >= count and len(rounds) > 1 else 1.0
    return broken, -worth, too_unlike, sum(one.length_m for one in rounds)


def _shorter(task: Task, stops: Sequence[int], effort: float, seed: int) -> list[int]:
    """Each trip between two stations in a shorter order; its stems stay, so bottle and service stay as they were."""
    shorter, trip = [stops[0]], [stops[0]]
    rng = np.random.default_rng(seed)
    for n in stops[1:]:
        trip.append(n)
        if n < task.stations:
            share = min(_SHAKES * len(trip) / len(stops), _SHAKES_EACH * len(trip))
            shorter += _trip(task, trip, int(share * effort), rng)[1:]
            trip = [n]
    return shorter


def _trip(task: Task, trip: list[int], times: int, rng: np.random.Generator) -> list[int]:
    """A trip between two stations without detours: a round in which the end stands beside the start."""
    if len(trip) < 4:
        return trip
    own = task.dist_m[np.ix_(trip, trip)].copy()
    last = len(trip) - 1
    # A step from the end back to the start that is shorter than any other is never taken apart.
    own[0, last] = own[last, 0] = -4 * own.max() - 1
    order = shaken(range(len(trip)), own, times, rng)
    order = order if order[-1] == last else [order[0], *order[:0:-1]]
    return [trip[n] for n in order] if order[-1] == last else trip


def _settings() -> Any:
    """Settings of the solver: a good first plan is at hand, so it looks near by and changes little at a time."""
    import pyvrp
    from pyvrp.search import PerturbationParams

    return pyvrp.SolveParams(
        ils=pyvrp.IteratedLocalSearchParams(exhaustive_on_best=False),
        neighbourhood=pyvrp.search.NeighbourhoodParams(num_neighbours=20),
        perturbation=PerturbationParams(max_perturbations=25),
    )


def _solved(
    task: Task, walkers: Sequence[Walker], stems: list[int], plans: list[list[int]], bound_s: float,
    seed: int, iterations: int, may_leave: bool,
) -> list[list[int]]:  # fmt: skip
    """One pass of PyVRP from plans on; the plans themselves where it finds nothing that can be walked."""
    import pyvrp
    from pyvrp.exceptions import PenaltyBoundWarning

    data = _problem(task, walkers, stems, bound_s, may_leave)
    number = {stem: n for n, stem in enumerate(stems)}
    client, depot = pyvrp.ActivityType.CLIENT, pyvrp.ActivityType.DEPOT
    routes = [
        pyvrp.Route(
            data,
            [
                pyvrp.Activity(depot, n) if n < task.stations else pyvrp.Activity(client, number[n])
                for n in stops[1:-1]
            ],
            which,
        )
        for which, stops in enumerate(plans)
        if len(stops) > 2
    ]  # fmt: skip
    with warnings.catch_warnings():
        # It warns where it finds nothing that keeps a bound; then the plans it was given stand.
        warnings.simplefilter("ignore", PenaltyBoundWarning)
        result = pyvrp.solve(
            data, stop=pyvrp.stop.MaxIterations(iterations), seed=seed, display=False, collect_stats=False,
            params=_settings(), initial_solution=pyvrp.Solution(data, routes),
        )  # fmt: skip
    if not result.best.is_feasible():
        return plans
    found = [[w.start, w.end] for w in walkers]
    for route in result.best.routes():
        walker = walkers[route.vehicle_type()]
        inside = [stems[a.idx] if a.is_client() else int(a.idx) for a in list(route)[1:-1]]
        found[route.vehicle_type()] = [walker.start, *_no_empty(inside, task.stations), walker.end]
    return found


def _no_empty(inside: list[int], stations: int) -> list[int]:
    """Stops without a refill before the first stem, after the last, or straight after another."""
    kept: list[int] = []
    for n in inside:
        if n >= stations or (kept and kept[-1] >= stations):
            kept.append(n)
    while kept and kept[-1] < stations:
        kept.pop()
    return kept


def _problem(task: Task, walkers: Sequence[Walker], stems: list[int], bound_s: float, may_leave: bool) -> Any:
    """The same task in whole centimetres, tenths of a second and microlitres."""
    import pyvrp

    own = [*range(task.stations), *stems]
    dist_m = task.dist_m[np.ix_(own, own)]
    dist = np.where(np.isfinite(dist_m), np.round(dist_m * _CM), _FAR_CM).astype(np.int64)
    time = np.where(np.isfinite(dist_m), np.ceil(dist_m / task.pace_m_s * _TENTHS), _FAR_CM).astype(np.int64)
    np.fill_diagonal(time, 0)
    rows = np.array(stems) - task.stations
    value = np.ones(len(stems)) if task.value is None else task.value[rows] / float(task.value.min())
    # Reaching a stem is always worth more than the longest way there and back.
    prize = (value * 4 * int(dist[dist < _FAR_CM].max(initial=1))).astype(int) + 1
    bottles = [w.bottle_ml for w in walkers]
    bounded = any(math.isfinite(ml) for ml in bottles)
    clients = [
        pyvrp.Client(
            location=task.stations + n,
            delivery=[math.ceil(float(task.need_ml[row]) * _HUNDREDTHS)] if bounded else [],
            service_duration=math.ceil(float(task.service_s[row]) * _TENTHS),
            required=not may_leave,
            prize=int(prize[n]) if may_leave else 0,
        )
        for n, row in enumerate(rows.tolist())
    ]  # fmt: skip
    fills = int(np.any(task.need_ml > 0)) * math.ceil(task.refill_s * _TENTHS)
    vehicles = [
        pyvrp.VehicleType(
            1,
            capacity=[math.floor(min(w.bottle_ml, _NO_END_ML) * _HUNDREDTHS)] if bounded else [],
            start_depot=w.start,
            end_depot=w.end,
            shift_duration=max(0, math.floor(min(day_s, _NO_END_S) * _TENTHS)),
            reload_depots=[task.refill] if bounded else [],
        )
        for w in walkers
        for day_s in [min(w.day_s, bound_s)]
    ]
    # A walk begins with a filling, wherever it begins; what is done at its end is not counted.
    depots = [pyvrp.Depot(location=n, service_duration=fills) for n in range(task.stations)]
    places = [pyvrp.Location(0, 0) for _ in own]
    return pyvrp.ProblemData(places, clients, depots, vehicles, [dist], [time])  # type: ignore[list-item]
