"""Published instances of the traveling salesman and of vehicles with a capacity, with the best known lengths."""

import json
import math
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

FILE = Path(__file__).parent / "instances.json"


def instances() -> dict[str, dict[str, Any]]:
    """By name: source, metric, places, best (length of the best known round), capacity, demand."""
    return json.loads(FILE.read_text())


def distances(one: dict[str, Any]) -> NDArray[np.float64]:
    """(n, n) whole distances by the rules of TSPLIB (Reinelt 1991, ORSA J. Computing 3(4):376-384)."""
    places = one["places"]
    count = len(places)
    rule = RULES[one["metric"]]
    table = np.zeros((count, count))
    for a in range(count):
        for b in range(a):
            table[a, b] = table[b, a] = rule(places, a, b)
    return table


def _matrix(rows: list[list[float]], a: int, b: int) -> float:
    return rows[a][b]


def _plane(places: list[list[float]], a: int, b: int) -> float:
    return math.floor(math.dist(places[a], places[b]) + 0.5)


def _att(places: list[list[float]], a: int, b: int) -> float:
    real = math.dist(places[a], places[b]) / math.sqrt(10)
    whole = math.floor(real + 0.5)
    return whole + 1 if whole < real else whole


def _geo(places: list[list[float]], a: int, b: int) -> float:
    """On the globe, degrees and minutes, with the pi and the radius of the collection."""
    pi, radius_km = 3.141592, 6378.388

    def radians(value: float) -> float:
        degrees = int(value)
        return pi * (degrees + 5.0 * (value - degrees) / 3.0) / 180.0

    (lat_a, lon_a), (lat_b, lon_b) = ([radians(v) for v in places[n]] for n in (a, b))
    one, two, three = math.cos(lon_a - lon_b), math.cos(lat_a - lat_b), math.cos(lat_a + lat_b)
    return int(radius_km * math.acos(0.5 * ((1.0 + one) * two - (1.0 - one) * three)) + 1.0)


RULES = {"matrix": _matrix, "EUC_2D": _plane, "ATT": _att, "GEO": _geo}
