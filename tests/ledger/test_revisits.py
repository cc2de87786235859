"""Going back: due dates, early looks, verdicts; folds do not depend on order."""

import datetime
import random

import pytest

from ledger.some import hollow
from stemward.handbook import load
from stemward.kinds import Entry
from stemward.ledger.revisits import due_dates, in_leaf, works

BOOK = load()
BUCKTHORN, HEAVEN = "Frangula alnus", "Ailanthus altissima"


def fold(*entries):
    """The example with these entries alone."""
    return works(hollow(entries=entries), BOOK)


def treated(id_="t1", at="2025-09-20T10:00", species=BUCKTHORN, **body):
    """Twenty stumps treated in September."""
    held = {"patch": "meadow", "ae_g": {"glyphosate": 12.0}, "method": "cut stump", "species": species, "stems": 20,
            "batch": f"b-{id_}"} | body  # fmt: skip
    return Entry(id_, "treated", at, -300, "owner", held)


def seen(id_, at, of, dead, resprouting, **body):
    """A look back."""
    return Entry(id_, "seen again", at, -300, "owner",
                 {"of": of, "patch": "meadow", "dead": dead, "resprouting": resprouting} | body)  # fmt: skip


def test_due_dates_of_a_stump_in_autumn():
    """Two months after 20 September leaves are gone: first look 1 June; verdict a year after; then a second year."""
    due = due_dates(datetime.date(2025, 9, 20), "cut stump", ("glyphosate",), False, BOOK)
    assert due == {
        "first": datetime.date(2026, 6, 1), "verdict": datetime.date(2026, 9, 20),
        "second year": datetime.date(2027, 9, 20),
    }  # fmt: skip


def test_plants_that_sucker_wait_for_eighteen_months():
    """Tree-of-heaven: no verdict before 18 months; March has no leaves, so June."""
    due = due_dates(datetime.date(2025, 9, 20), "hack and squirt", ("imazapyr",), True, BOOK)
    assert due["verdict"] == datetime.date(2027, 6, 1)
    assert due["second year"] == datetime.date(2027, 9, 20)
    assert due["first"] < due["verdict"]


@pytest.mark.parametrize(
    ("day", "leaf"),
    [("2026-01-05", "2026-06-01"), ("2026-07-04", "2026-07-04"), ("2026-10-16", "2027-06-01")],
)
def test_looks_are_in_leaf(day, leaf):
    """A day without leaves moves to the next June."""
    assert in_leaf(datetime.date.fromisoformat(day), BOOK).isoformat() == leaf


def test_an_early_look_is_no_verdict():
    """Nine months: shown as early, the verdict stays due; a year: the verdict, and only the second year stays."""
    early = fold(treated(), seen("s1", "2026-06-20", ["t1"], 18, 2))[0]
    assert early.seen[0].early and early.verdict is None
    assert [look for look, _ in early.due] == ["verdict", "second year"]
    looks = seen("s1", "2026-06-20", ["t1"], 18, 2), seen("s2", "2026-09-25", ["t1"], 14, 5)
    later = fold(treated(), *looks)[0]
    assert later.verdict is not None and (later.verdict.dead, later.verdict.judged) == (14, 19)
    assert [look for look, _ in later.due] == ["second year"]


def test_a_year_is_early_for_what_suckers():
    """Twelve months after, tree-of-heaven is not called dead."""
    work = fold(treated(species=HEAVEN), seen("s1", "2026-09-28", ["t1"], 20, 0))[0]
    assert work.suckers and work.seen[0].early and work.verdict is None


def test_alike_work_of_a_day_is_one_and_a_correction_holds():
    """Two entries of one day are looked at together; a corrected look replaces the first."""
    first = seen("s1", "2026-09-25", ["t1", "t2"], 30, 10)
    right = Entry("s2", "seen again", "2026-09-25", -300, "owner", first.body | {"dead": 36, "resprouting": 4},
                  received="2026-09-26", corrects="s1")  # fmt: skip
    entries = [treated("t1"), treated("t2", at="2025-09-20T14:00"), first, right]
    random.Random(1).shuffle(entries)
    found = fold(*entries)
    assert len(found) == 1
    assert (found[0].stems, found[0].batches) == (40, ("b-t1", "b-t2"))
    assert [(s.dead, s.resprouting) for s in found[0].seen] == [(36, 4)]
