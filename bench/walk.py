"""Walks through `stemward.reckon.walk` itself, beside published optima, the nearest stem next, and a large day.

    python bench/walk.py

Best known lengths: TSPLIB (Reinelt 1991) and Christofides and Eilon 1969, as in bench/instances.json. Seconds are those
of this machine, one process. Exit status 1 where a walk breaks a bottle, a day or a wall, or misses an aim.
"""

import sys
import time
from pathlib import Path

import numpy as np
import shapely

sys.path.insert(0, str(Path(__file__).parents[1] / "tests" / "independent"))

from check_walk import troubles_of
from instances import distances, instances

from stemward.reckon.walk import Round, Task, Walker, measure, unlike, walks
from stemward.reckon.walk.around import ground
from stemward.reckon.walk.pieces import with_refills

AIM_OVER, AIM_S, AIM_UNLIKE, AIM_LARGE_S = 0.025, 10.0, 1.15, 20.0


def main() -> int:
    """Print a line a measure; 0 where all aims are met."""
    missed = 0
    print("published instances, one person")
    for name, one in instances().items():
        dist = distances(one)
        need = np.array(one.get("demand", [0] * len(dist))[1:], float)
        task = Task(dist, np.zeros(len(need)), need)
        walker = Walker(bottle_ml=one["capacity"] or np.inf)
        start = time.perf_counter()
        found = walks(task, [walker])
        seconds = time.perf_counter() - start
        near = nearest_next(task, walker)
        over, long = found.rounds[0].length_m / one["best"] - 1, found.rounds[0].length_m
        missed += over > AIM_OVER or seconds > AIM_S or bool(found.left)
        print(
            f"  {name:9} {long:8.0f}, best known {one['best']:6}: {100 * over:4.2f} % over, {seconds:4.1f} s; nearest"
            f" next {near.length_m:8.0f}, gain {100 * (1 - long / near.length_m):4.1f} %"
        )
    print("invented stands, refills of 5 minutes, checked by another hand")
    for count, people, bottle_ml, walls in (
        (200, 4, 100.0, []),
        (200, 4, 100.0, [[(200.0, -10.0), (200.0, 300.0)]]),
        (300, 10, 200.0, []),
        (2000, 4, 700.0, []),
        (2000, 4, 700.0, [[(200.0, -10.0), (200.0, 300.0)]]),
    ):
        missed += stand(count, people, bottle_ml, walls)
    return 1 if missed else 0


def stand(count: int, people: int, bottle_ml: float, walls: list[list[tuple[float, float]]]) -> bool:
    """One invented stand: prints what came of it; True where an aim is missed."""
    rng = np.random.default_rng(count)
    places = np.vstack([[(0.0, 0.0)], rng.uniform(0, 400, (count, 2))])
    start = time.perf_counter()
    here = ground(places, [shapely.LineString(wall) for wall in walls])
    task = Task(here.dist_m, np.full(count, 40.0), rng.gamma(2, 0.5, count), 0, 300.0, 0.7)
    walkers = [Walker(bottle_ml=bottle_ml)] * people
    found = walks(task, walkers)
    seconds = time.perf_counter() - start
    again = walks(task, walkers) == found if count <= 200 else True
    wrong = troubles_of(here, task, walkers, found, walls)
    alike = unlike(found.rounds)
    long, near = sum(one.length_m for one in found.rounds), nearest_next(task, walkers[0]).length_m
    print(
        f"  {count} stems, {people} people, {len(walls)} fences: longest over shortest day {alike:4.2f},"
        f" {long:6.0f} m in all,"
        f" one person by the nearest next {near:6.0f} m, {seconds:4.1f} s, wrong: {len(wrong)}, the same again: {again}"
    )
    return bool(wrong) or not again or alike > AIM_UNLIKE or seconds > AIM_LARGE_S or bool(found.left)


def nearest_next(task: Task, walker: Walker) -> Round:
    """Always to the nearest stem that is left, back for a refill when the bottle does not hold it."""
    left, here, order = set(range(task.stations, len(task.dist_m))), walker.start, []
    while left:
        here = min(left, key=lambda n: (task.dist_m[here, n], n))
        left.discard(here)
        order.append(here)
    return measure(task, walker, with_refills(task, walker, order))


if __name__ == "__main__":
    sys.exit(main())
