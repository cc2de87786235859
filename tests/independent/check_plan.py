"""Work a plan's file again without the package: standard library only, formulae written anew from the design.

    python tests/independent/check_plan.py PLAN.json

Prints what disagrees and ends with status 1, or says how many sums agree. Meant as a second pair of eyes: nothing
here is shared with the code it checks.
"""

import hashlib
import json
import math
import sys
from pathlib import Path

CLOSE = 1e-6


def cross(f, *columns):
    """f over numbers or lists of numbers."""
    size = max((len(c) for c in columns if isinstance(c, list)), default=None)
    if size is None:
        return f(*columns)
    full = [c if isinstance(c, list) else [c] * size for c in columns]
    return [f(*row) for row in zip(*full, strict=True)]


def face(d):
    return math.pi * d * d / 4


def wet_face(d, whole, ring):
    return face(d) if d <= whole + 1e-9 or d <= 2 * ring else face(d) - face(d - 2 * ring)


def whole_up(x):
    return math.ceil(x - 1e-9)


def clusters(xs, ys, link):
    """Group numbers by walking from stem to stem, in order of the first of each."""
    cells = {}
    for n, (x, y) in enumerate(zip(xs, ys, strict=True)):
        cells.setdefault((math.floor(x / link), math.floor(y / link)), []).append(n)
    group, found = [-1] * len(xs), 0
    for start in range(len(xs)):
        if group[start] >= 0:
            continue
        group[start], todo = found, [start]
        while todo:
            n = todo.pop()
            cx, cy = math.floor(xs[n] / link), math.floor(ys[n] / link)
            for i in (cx - 1, cx, cx + 1):
                for j in (cy - 1, cy, cy + 1):
                    for m in cells.get((i, j), ()):
                        if group[m] < 0 and math.hypot(xs[n] - xs[m], ys[n] - ys[m]) <= link:
                            group[m] = found
                            todo.append(m)
        found += 1
    return group


def hull(points):
    """Corners of the convex hull, in order."""
    points = sorted(set(points))
    if len(points) < 3:
        return points

    def half(some):
        out = []
        for p in some:
            while len(out) > 1 and turn(out[-2], out[-1], p) <= 0:
                out.pop()
            out.append(p)
        return out[:-1]

    return half(points) + half(points[::-1])


def turn(a, b, c):
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def ground(xs, ys, labels, buffer, least):
    """Hull widened by a buffer: area + perimeter x buffer + a circle, a line walked there and back."""
    areas = []
    for label in range(max(labels) + 1):
        corners = hull([(x, y) for x, y, g in zip(xs, ys, labels, strict=True) if g == label])
        pairs = list(zip(corners, corners[1:] + corners[:1], strict=True))
        area = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2
        around = sum(math.dist(a, b) for a, b in pairs)
        areas.append(max(area + around * buffer + math.pi * buffer**2, least))
    return areas


def rate(grams, labels, areas):
    load = [0.0] * len(areas)
    for g, label in zip(grams, labels, strict=True):
        load[int(label)] += g
    return [g / a for g, a in zip(load, areas, strict=True)]


def wetted(area, small, depth, waste, use, least):
    return max(depth * (area + waste * min(area, small)) * use, least)


FORMULAE = {
    "face_area_cm2": lambda i: cross(face, i["diameter_cm"]),
    "wet_face_cm2": lambda i: cross(wet_face, i["diameter_cm"], i["whole_up_to_cm"], i["ring_cm"]),
    "wetted_ml": lambda i: cross(
        wetted, i["area_cm2"], i["small_area_cm2"], i["depth_ml_cm2"], i["waste_frac"], i["use_rate"], i["smallest_ml"]
    ),
    "cuts_by_diameter": lambda i: cross(
        lambda d, half, per, least: max(whole_up(max(d - half, 0) / per), int(least)),
        i["diameter"], i["half_digit"], i["per_cut"], i["least"],
    ),
    "cuts_by_centres": lambda i: cross(lambda d, s: max(whole_up(math.pi * d / s), 1), i["diameter"], i["centres"]),
    "cut_dose_ml": lambda i: cross(lambda n, ml: n * ml, i["cuts"], i["ml_per_cut"]),
    "bark_cm2": lambda i: cross(lambda d, h: math.pi * d * h, i["diameter_cm"], i["height_cm"]),
    "bark_depth_ml_cm2": lambda i: cross(
        lambda d, smooth, rough, size: smooth if d < size else rough,
        i["diameter_cm"], i["smooth_ml_cm2"], i["rough_ml_cm2"], i["rough_from_cm"],
    ),
    "crown_m2": lambda i: cross(lambda h, s: math.pi / 4 * (h * s) ** 2, i["height_m"], i["width_share"]),
    "sprays_ml": lambda i: cross(
        lambda m2, v, c, u: m2 * v * c * u, i["crown_m2"], i["volume_ml_m2"], i["coverage_frac"], i["use_rate"]
    ),
    "plus": lambda i: cross(lambda a, b: a + b, i["one"], i["other"]),
    "times": lambda i: cross(lambda a, b: a * b, i["each"], i["count"]),
    "total": lambda i: math.fsum(i["each"]) if isinstance(i["each"], list) else i["each"],
    "greatest": lambda i: max([0.0, *i["each"]]),
    "spread_low": lambda i: i["middle"] / i["factor"],
    "spread_high": lambda i: i["middle"] * i["factor"],
    "mix_ae_g_l": lambda i: i["concentration_frac"] * i["strength_ae_g_l"],
    "product_ml": lambda i: i["mix_ml"] * i["concentration_frac"],
    "ae_g": lambda i: cross(lambda ml, g_l: ml * g_l / 1000, i["mix_ml"], i["ae_g_l"]),
    "clusters": lambda i: clusters(i["x_m"], i["y_m"], i["link_m"]),
    "cluster_area_m2": lambda i: ground(
        i["x_m"], i["y_m"], [int(n) for n in i["labels"]], i["buffer_m"], i["least_m2"]
    ),
    "rate_g_m2": lambda i: rate(i["ae_g"], i["labels"], i["area_m2"]),
    "with_recorded_g_m2": lambda i: cross(lambda r, g, a: r + g / a, i["rate_g_m2"], i["recorded_g"], i["area_m2"]),
}  # fmt: skip


def looked_up(plan, values, reference):
    parts = []
    for one in reference.split("+"):
        where, _, name = one.partition(":")
        if where == "step":
            parts.append(values[name])
        elif where == "cited":
            parts.append(next(c["value"] for c in plan["cited"] if c["id"] == name))
        else:
            job, _, column = name.partition("/")
            parts.append(plan["columns" if where == "column" else "numbers"][job][column])
    if len(parts) == 1:
        return parts[0]
    return [v for part in parts for v in (part if isinstance(part, list) else [part])]


def same(a, b):
    if isinstance(a, list) != isinstance(b, list):
        return False
    if isinstance(a, list):
        return len(a) == len(b) and all(same(x, y) for x, y in zip(a, b, strict=True))
    return math.isclose(a, b, rel_tol=CLOSE, abs_tol=1e-9)


def code_of(plan):
    body = {k: v for k, v in plan.items() if k != "code"}
    text = json.dumps(body, sort_keys=True, ensure_ascii=False, allow_nan=False) + "\n"
    number = int.from_bytes(hashlib.sha256(text.encode()).digest()[:4], "big") >> 12
    signs = ["0123456789ABCDEFGHJKMNPQRSTVWXYZ"[(number >> shift) & 31] for shift in (15, 10, 5, 0)]
    return f"{signs[0]}{signs[1]}-{signs[2]}{signs[3]}"


def check(plan):
    """What disagrees, as lines."""
    wrong, values = [], {}
    for step in plan["steps"]:
        inputs = {name: looked_up(plan, values, ref) for name, ref in step["inputs"].items()}
        values[step["id"]] = FORMULAE[step["formula"]](inputs)
        if not same(values[step["id"]], step["value"]):
            wrong.append(f"{step['id']}: {step['formula']} gives something else")
    for mix in plan["mixes"]:
        if not same(sum(b["assigned_ml"] for b in mix["batches"]), round(mix["need_ml"], 3)):
            wrong.append(f"{mix['id']}: what is assigned is not the need")
        for batch in mix["batches"]:
            poured = sum(p["ml"] for p in batch.get("parts", ()))
            if "parts" in batch and not same(poured, batch["mixed_ml"]):
                wrong.append(f"{mix['id']} batch {batch['number']}: parts do not add up")
            share = sum(p["ml"] for p in batch.get("parts", ()) if p["what"] == "product")
            if "parts" in batch and share > mix["highest_frac"] * batch["mixed_ml"] * (1 + CLOSE):
                wrong.append(f"{mix['id']} batch {batch['number']}: stronger than the mix may be")
    for treatment in plan["treatments"]:
        rows = plan["columns"][treatment["id"]]["stems"]
        if sum(rows) != treatment["stems"] or len(rows) != treatment["rows"]:
            wrong.append(f"{treatment['id']}: the number of stems is another")
    if code_of(plan) != plan["code"]:
        wrong.append("the code is another")
    return wrong


if __name__ == "__main__":
    plan_ = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    found = check(plan_)
    for line in found:
        print(line)
    print(f"{len(plan_['steps'])} sums worked, {len(found)} disagree")
    sys.exit(1 if found else 0)
