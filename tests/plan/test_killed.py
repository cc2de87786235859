"""Kill rates from looks back: only verdicts count, the books count as stems, ways use both."""

import datetime
from dataclasses import replace

import pytest

from ledger.some import hollow
from ledger.test_revisits import seen, treated
from stemward.handbook import load
from stemward.plan import as_data, draw_up
from stemward.plan.killed import comparisons, killed, others
from stemward.reckon.outcome import wilson
from stemward.say.worked import held_words, killed_words, other_words

BOOK = load()
GLYPHOSATE = {"product": "glyphosate-4lb-wet", "concentration_frac": 0.5}


def land(*entries):
    """The example with these entries alone."""
    return hollow(entries=entries)


def test_early_looks_do_not_count():
    """A look at nine months moves nothing; the same at a year does."""
    work = treated(**GLYPHOSATE)
    (early,) = killed(land(work, seen("s", "2026-06-20", ["t1"], 2, 18)), BOOK)
    (late,) = killed(land(work, seen("s", "2026-09-25", ["t1"], 2, 18)), BOOK)
    assert (early.seen, early.early) == ((), 1) and (late.dead, late.seen) == ((2,), (20,))
    assert late.belief.mean < early.belief.mean
    assert late.wilson == wilson(2, 20)


def test_own_stems_soon_outweigh_the_books():
    """Ten days of 20 stems with 4 dead each: what is believed lies near a fifth whatever the books say."""
    entries = []
    for n in range(10):
        entries += [
            treated(f"t{n}", at=f"2025-09-{n + 10}T10:00", **GLYPHOSATE),
            seen(f"s{n}", "2026-10-01", [f"t{n}"], 4, 16),
        ]
    (one,) = killed(land(*entries), BOOK)
    assert one.belief.mean == pytest.approx(0.2, abs=0.06)
    assert one.ends[0] < 0.2 < one.ends[1]


def test_ways_use_what_was_learned():
    """The way on the plan has the same tenths as the page of what worked, and both rows."""
    tract = land(treated(**GLYPHOSATE), seen("s", "2026-09-25", ["t1"], 3, 17))
    (one,) = killed(tract, BOOK)
    plan = as_data(draw_up(tract, BOOK, datetime.date(2026, 10, 3), "x"))
    item = next(t for t in plan["treatments"] if t["species"] == "Frangula alnus")
    way = next(w for w in item["ways"] if w["how"] == "cut stump" and w["product"] == "glyphosate-4lb-wet")
    assert (way["own_dead"], way["own_seen"]) == (3, 20)
    assert (way["low"], way["high"]) == one.ten
    assert (way["books_low"], way["books_high"]) == (one.books_low, one.books_high)
    other = next(w for w in item["ways"] if w["product"] == "triclopyr-amine-3lb" or w["how"] == "foliar")
    assert other["own_seen"] == 0


def test_two_ways_are_held_against_each_other_with_what_else_it_may_be():
    """Autumn against June by another person: the sentence says who, the season and the hand."""
    june = treated("t2", at="2025-06-10T09:00", product="triclopyr-amine-3lb", people=["other"])
    tract = land(
        treated(**GLYPHOSATE), june, seen("s1", "2026-09-25", ["t1"], 19, 1), seen("s2", "2026-09-25", ["t2"], 6, 14)
    )
    found = killed(tract, BOOK)
    (held,) = comparisons(found, tract)
    assert held.other == ("season", "person")
    said = held_words(held, {}, BOOK)
    assert "glossy buckthorn" in said[0] and "6 of 20" in said[0] and "19 of 20" in said[0]
    assert any("season" in line for line in said) and any("hand" in line for line in said)
    assert killed_words(found[0], {}, BOOK)["lines"]


def test_what_else_is_learned_says_how_many_stand_behind_it():
    """20 treated, 5 missed: 80 of 100 found; 4 that came back with 3 sprouts; 10 seedlings for 20 plants."""
    tract = land(treated(**GLYPHOSATE), seen("s", "2026-09-25", ["t1"], 16, 4, untreated=5, sprouts=3, seedlings=10))
    found = others(tract, BOOK)
    assert found.found == (0.8, 25) and found.sprouts == (3.0, 4) and found.seedlings == (0.5, 20)
    assert len(other_words(found)) == 3
    assert other_words(others(replace(tract, entries=()), BOOK)) == []
