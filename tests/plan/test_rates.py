"""Kill rates to hand on: added up by hand, nothing in them that tells who, where or when."""

import csv
import io

from ledger.some import hollow
from ledger.test_revisits import seen, treated
from stemward.gate.out.rates import rates_csv
from stemward.handbook import load
from stemward.plan.rates import rates_of

HALF = {"product": "glyphosate-4lb-wet", "concentration_frac": 0.5, "people": ["owner"]}
LAND = hollow(
    entries=(
        treated("t1", **HALF), treated("t2", at="2025-09-22T10:00", **HALF),
        treated("t3", at="2025-06-02T10:00", **HALF), treated("t4", at="2025-09-25T10:00", **HALF),
        seen("s1", "2026-09-25", ["t1"], 18, 2), seen("s2", "2026-10-01", ["t2"], 15, 4, gone=1),
        seen("s3", "2026-07-01", ["t3"], 9, 11), seen("s4", "2026-03-01", ["t4"], 20, 0),
    )
)  # fmt: skip


def test_added_up_by_hand_without_early_looks():
    """June: 9 of 20. September: 18 of 20 and 15 of 19 (one was gone), so 33 of 39; the fourth was seen too early."""
    june, autumn = rates_of(LAND, load())
    assert (june.season, june.works, june.dead, june.seen) == (2, 1, 9, 20)
    assert (autumn.season, autumn.works, autumn.dead, autumn.seen) == (3, 2, 33, 39)
    assert autumn.percent == 50.0 and autumn.months >= 12 and autumn.ingredients[0].startswith("glyphosate ")
    assert autumn.ingredients[0].endswith("479 g ae/L")


def test_nothing_tells_who_where_or_when():
    text = rates_csv(rates_of(LAND, load()), load()).decode()
    notes = [line for line in text.splitlines() if line.startswith("#")]
    assert any("no proof" in note for note in notes) and any("12 months" in note for note in notes)
    rows = list(csv.DictReader(io.StringIO("\n".join(line for line in text.splitlines() if line[0] != "#"))))
    assert [(row["dead"], row["seen"], row["season"]) for row in rows] == [
        ("9", "20", "June to August"), ("33", "39", "September to November"),
    ]  # fmt: skip
    for word in ("owner", "meadow", "2025", "2026", "hollow", "wet", "t1"):
        assert word not in text.lower().partition("species,")[2]


def test_nothing_seen_nothing_shared():
    assert rates_of(hollow(entries=(treated("t1", **HALF),)), load()) == ()
