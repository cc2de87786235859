"""Cases that the phone's rules are held against, worked out by the core. Written to a file by tools/make_vectors.py."""

import random
from typing import Any

from stemward.kinds import MARKS, Entry
from stemward.ledger import marks
from stemward.ledger.stems import cut_untreated
from stemward.reckon.bearing import direction, distance_m, offset_m
from stemward.reckon.cut_clock import clock_left_s, clock_part, minutes_shown
from stemward.reckon.lots import lot_size, wait_s
from stemward.reckon.walk.onward import onward

SEED = 7
CASES = 60


def vectors() -> dict[str, Any]:
    """Cases by rule: what goes in and what comes out."""
    dice = random.Random(SEED)
    return {
        "clock": [_clock(dice, n) for n in range(CASES)],
        "lots": [_lot(dice) for _ in range(CASES)],
        "places": [_place(dice, n) for n in range(CASES)],
        "onward": [_onward(dice) for _ in range(CASES // 3)],
        "offsets": [_offset(dice) for _ in range(CASES // 3)],
        "marks": [_marks(dice, n) for n in range(CASES)],
    }


def _clock(dice: random.Random, n: int) -> dict[str, Any]:
    limit_s = dice.choice([300.0, 600.0, 900.0, 3600.0])
    edges = (-5.0, 0.0, limit_s / 2, limit_s, limit_s + 0.5)
    waited_s = edges[n % 5] if n < 20 else round(dice.uniform(0, 1.5 * limit_s), 1)
    left_s = clock_left_s(limit_s, waited_s)
    return {"limit_s": limit_s, "waited_s": waited_s, "left_s": left_s, "part": clock_part(limit_s, waited_s),
            "minutes": minutes_shown(left_s)}  # fmt: skip


def _lot(dice: random.Random) -> dict[str, Any]:
    given = {"walk_s": dice.randint(0, 120), "clear_s": dice.randint(0, 60), "cut_s": dice.randint(0, 90),
             "treat_s": dice.randint(1, 60)}  # fmt: skip
    limit_s = dice.choice([60, 300, 600, 1800])
    size = lot_size(limit_s, **given)
    return {"limit_s": limit_s, **given, "size": size, "wait_s": wait_s(size, **given) if size else None}


def _place(dice: random.Random, n: int) -> dict[str, Any]:
    x_m, y_m = (
        (dice.choice([-9.0, 0.0, 0.5, 9.0]), dice.choice([-9.0, 0.0, 0.5, 9.0]))
        if n < 20
        else (round(dice.uniform(-200, 200), 2), round(dice.uniform(-200, 200), 2))
    )
    return {"x_m": x_m, "y_m": y_m, "distance_m": distance_m(x_m, y_m), "direction": direction(x_m, y_m)}


def _onward(dice: random.Random) -> dict[str, Any]:
    places = [[round(dice.uniform(0, 200), 1), round(dice.uniform(0, 200), 1)] for _ in range(dice.randint(0, 25))]
    here = [round(dice.uniform(0, 200), 1), round(dice.uniform(0, 200), 1)]
    return {"places": places, "here": here, "order": onward(places, here)}


def _offset(dice: random.Random) -> dict[str, Any]:
    origin = (round(dice.uniform(25, 60), 5), round(dice.uniform(-150, -60), 5))
    at = (round(origin[0] + dice.uniform(-0.01, 0.01), 6), round(origin[1] + dice.uniform(-0.01, 0.01), 6))
    x_m, y_m = offset_m(*at, origin)
    return {"origin": list(origin), "at": list(at), "x_m": x_m, "y_m": y_m}


def _marks(dice: random.Random, n: int) -> dict[str, Any]:
    """Some rows in the order in which they were made, a part of them corrected, and what holds of each stem."""
    rows: list[dict[str, Any]] = []
    for number in range(dice.randint(0, 3 + n // 6)):
        at = f"2026-10-{1 + number // 8:02d}T{8 + number % 8:02d}:{dice.randint(0, 59):02d}:00"
        key = f"r{number:02d}"
        made = [row["id"] for row in rows if row["kind"] == "marked"]
        if made and dice.random() < 0.25:
            row = {"kind": "taken back", "corrects": dice.choice(made), "body": {"why": "wrong stem"}}
        else:
            body = {"what": dice.choice(MARKS), "rows": {f"s{dice.randint(1, 4)}": dice.randint(1, 3)}}
            corrects = dice.choice(made) if made and dice.random() < 0.1 else ""
            row = {"kind": "marked", "corrects": corrects, "body": body}
        rows.append({"id": key, "at": at, "offset": -300, "by": "owner", **row})
    found = marks([Entry(**row) for row in rows])
    stems = {stem: {"what": m.what, "cut": m.cut, "treated": m.treated} for stem, m in sorted(found.items())}
    return {"rows": rows, "stems": stems, "waiting": sorted(cut_untreated(found))}
