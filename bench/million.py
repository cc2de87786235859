"""A million stems from folder to plan, against reading the same CSV bare and one nearest-neighbour query.

    python bench/million.py [STEMS]

Prints seconds, the ratio to the bare work in the same run, and the most memory used.
"""

import datetime
import json
import resource
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
import polars as pl
from scipy.spatial import cKDTree

from stemward.gate import folder
from stemward.gate.demo import texts
from stemward.handbook import load
from stemward.label import KINDS
from stemward.plan import draw_up

AS_OF = datetime.date(2026, 10, 10)
PER_HA = 400
KEPT = 50_000


def make(path: Path, count: int) -> None:
    """A tract of one patch with that many mapped stems, 400 to the hectare, and 50,000 kept oaks."""
    rng = np.random.default_rng(1)
    side_m = float(np.sqrt(count / PER_HA * 10_000))
    (path / "shelf").mkdir(parents=True)
    for name, text in texts().items():
        if name.startswith("shelf/"):
            (path / name).write_text(text)
    (path / "tract.toml").write_text(
        'name = "Bench"\nplace = "nowhere"\nstate = "WI"\ntime_zone = "UTC"\nwho = "own"\n'
        'kept_asked = ["p"]\n'
        '[[patches]]\nid = "p"\nname = "P"\nplaces = ["non-crop"]\n'
        '[[people]]\nrole = "owner"\ndoes = ["mix", "apply"]\n'
    )
    (path / "choices.toml").write_text(
        '[[treat]]\npatch = "p"\nspecies = "red maple"\nhow = "hack and squirt"\nproduct = "glyphosate-4lb-wet"\n'
    )
    pl.DataFrame(
        {
            "id": [f"s{i}" for i in range(count)],
            "patch": ["p"] * count,
            "species": ["red maple"] * count,
            "x_m": rng.uniform(0, side_m, count).round(2),
            "y_m": rng.uniform(0, side_m, count).round(2),
            "diameter_cm": np.clip(rng.lognormal(2.2, 0.5, count), 1, 60).round(1),
            "measured_at": ["breast"] * count,
        }
    ).write_csv(path / "stems.csv")
    oaks = [
        {
            "type": "Feature",
            "properties": {"id": f"k{i}", "kind": "tree", "species": "white oak", "dbh_cm": "40"},
            "geometry": {"type": "Point", "coordinates": rng.uniform(0, side_m, 2).round(1).tolist()},
        }
        for i in range(KEPT if count >= 1_000_000 else count // 20)
    ]
    (path / "spared.geojson").write_text(json.dumps({"type": "FeatureCollection", "features": oaks}))


def main() -> None:
    """Measure and print."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    with tempfile.TemporaryDirectory() as temp:
        path = Path(temp) / "tract"
        make(path, count)
        start = time.perf_counter()
        frame = pl.read_csv(path / "stems.csv")
        xy = frame.select("x_m", "y_m").to_numpy()
        cKDTree(xy).query(xy, k=2)
        bare = time.perf_counter() - start
        del frame, xy
        start = time.perf_counter()
        tract = folder.read(path, load().find_species, KINDS).tract
        read = time.perf_counter() - start
        plan = draw_up(tract, load(), AS_OF)
        whole = time.perf_counter() - start
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6
    print(
        f"{count} stems: read {read:.1f} s, whole plan {whole:.1f} s, {len(plan.steps)} sums, {memory:.2f} GB at most"
    )
    print(f"ratio to bare read and nearest-neighbour query ({bare:.1f} s): {whole / bare:.1f}")


if __name__ == "__main__":
    main()
