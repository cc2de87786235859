"""Make the packaged table of trials from the raw one, each row with the raw row's id.

    python tools/normalise_trials.py RAWDIR

Only what can be read off is kept: strengths in g/L where the raw text begins with such a figure, else the words.
"""

import csv
import re
import sys
from pathlib import Path

OUT = Path(__file__).parent.parent / "src/stemward/handbook/data/trials.csv"
METHODS = {
    "cut_stump": "cut stump", "cut_stump_delayed": "cut stump", "cut_stump_wet_blade": "cut stump",
    "basal_bark": "basal bark", "stem_injection": "hack and squirt", "stem_injection_then_fell": "hack and squirt",
    "cut_only": "cut only", "foliar": "foliar", "girdle": "girdle", "cut_then_foliar_on_regrowth": "foliar on sprouts",
}  # fmt: skip
KILL = ("mortality", "percent_control", "stems_controlled")
"""Outcomes that say how many stems died; others are not put together with them (trials.md)."""
STRENGTH = re.compile(r"([0-9]+(?:\.[0-9]+)?)(?:-([0-9]+(?:\.[0-9]+)?))? g/L")
SHARE = re.compile(r"([0-9]+(?:\.[0-9]+)?)(?:-([0-9]+(?:\.[0-9]+)?))? ?% ?v/v")
HEAD = (
    "id", "plant", "method", "ingredient", "typed", "low_g_l", "high_g_l", "low_share", "high_share", "season", "n",
    "n_basis", "metric", "kill", "low_frac", "high_frac", "months", "region", "quality", "source", "place", "grade",
    "note",
)  # fmt: skip


def main() -> int:
    """Write the table."""
    rows = []
    with (Path(sys.argv[1]) / "trials.csv").open(encoding="utf-8", newline="") as file:
        for raw in csv.DictReader(file):
            strength, share = STRENGTH.match(raw["rate"]), SHARE.search(raw["rate"])
            low = raw["pct_low"] or raw["pct"]
            high = raw["pct_high"] or raw["pct"]
            rows.append(
                {
                    "id": f"trials.csv:{raw['id']}",
                    "plant": raw["species"],
                    "method": METHODS.get(raw["method"], raw["method"].replace("_", " ")),
                    "ingredient": "" if raw["ai"] == "none" else raw["ai"],
                    "typed": raw["rate"],
                    "low_g_l": strength[1] if strength else "",
                    "high_g_l": (strength[2] or strength[1]) if strength else "",
                    "low_share": f"{float(share[1]) / 100:g}" if share else "",
                    "high_share": f"{float(share[2] or share[1]) / 100:g}" if share else "",
                    "season": raw["season"],
                    "n": raw["n"] if raw["n"].isdigit() else "",
                    "n_basis": raw["n_basis"],
                    "metric": raw["metric"].replace("_", " "),
                    "kill": "yes" if raw["metric"] in KILL else "no",
                    "low_frac": f"{float(low) / 100:g}" if low else "",
                    "high_frac": f"{float(high) / 100:g}" if high else "",
                    "months": raw["months_after"],
                    "region": raw["region"],
                    "quality": raw["quality"],
                    "source": raw["source"],
                    "place": raw["url"],
                    "grade": "published",
                    "note": raw["note"],
                }
            )
    with OUT.open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, HEAD, lineterminator="\n")
        out.writeheader()
        out.writerows(rows)
    print(f"{len(rows)} trials")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
