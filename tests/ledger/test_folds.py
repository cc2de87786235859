"""What is left in jugs and bottles, and what was done to stems: plain cases, then laws."""

import itertools
import random
from dataclasses import replace

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.some import entry, hollow
from stemward.kinds import Container, Product
from stemward.ledger import batches, in_force, jugs, marks
from stemward.ledger.balances import with_balances
from stemward.ledger.in_force import competing
from stemward.ledger.stems import cut_untreated, marked_only, to_do, unlike

JUG = ("blue", "jug 1")


def shelf(left_ul: int | None = 1_000_000) -> tuple[Product, ...]:
    """One product with one jug of a litre."""
    return (
        Product("blue", "Blue", True, "X-1", "salt in water", (), containers=(Container("jug 1", 1_000_000, left_ul),)),
    )


def drew(key: str, ml: float, at: str = "2026-09-12T09:00", corrects: str = "", batch: str = ""):
    """A batch mixed with so much of the jug."""
    drawn = [{"product": "blue", "jug": "jug 1", "ml": ml}]
    return entry(key, "batch mixed", at, corrects, batch=batch or key, mixed_ml=2 * ml, drawn=drawn)


def jug(key: str, what: str, ml: float | None = None, at: str = "2026-09-12T09:00"):
    """Something that happened to the jug."""
    return entry(key, "jug", at, what=what, product="blue", jug="jug 1", **({} if ml is None else {"ml": ml}))


def left(*entries, start: int | None = 1_000_000):
    """What is left in the jug, microlitres."""
    return jugs(entries, shelf(start))[0][JUG].left_ul


def test_a_jug_through_its_life():
    """Opened, drawn from, poured back, spilled, looked at, emptied."""
    assert left() == 1_000_000
    assert left(drew("a", 100)) == 900_000
    assert left(drew("a", 100), jug("b", "returned", 20)) == 920_000
    assert left(drew("a", 100), jug("b", "spilled", 5), jug("c", "discarded", 5)) == 890_000
    assert left(jug("a", "looked at", 500, "2026-09-13T09:00"), drew("b", 100, "2026-09-14T09:00")) == 400_000
    assert left(drew("a", 100), jug("b", "emptied and rinsed", at="2026-09-13T09:00")) == 0
    assert left(jug("a", "opened"), drew("b", 1, "2026-09-13"), start=None) == 999_000
    assert left(drew("b", 1), start=None) is None


def test_more_than_there_was_is_told():
    """A draw beyond the balance counts, leaves it below nothing, and is told with how much."""
    have, told = jugs([drew("a", 1200)], shelf())
    assert have[JUG].left_ul == -200_000
    assert [(m.what, m.ul, m.entry) for m in told] == [("overdrawn", 200_000, "a")]
    assert with_balances(shelf(), [drew("a", 1200)])[0].containers[0].left_ul == 0


def test_a_jug_that_is_not_on_the_shelf_is_told():
    """A draw from a jug nobody wrote down is kept and told; once it was opened it is one."""
    other = entry("a", "jug", what="drawn", product="blue", jug="jug 9", ml=5)
    have, told = jugs([other], shelf())
    assert have[("blue", "jug 9")].left_ul is None
    assert [m.what for m in told] == ["no such jug"]
    opened = entry("0", "jug", "2026-09-01", what="opened", product="blue", jug="jug 9", ml=50)
    have, told = jugs([other, opened], shelf())
    assert (have[("blue", "jug 9")].left_ul, told) == (45_000, ())
    assert [c.id for c in with_balances(shelf(), [opened])[0].containers] == ["jug 1", "jug 9"]


def test_less_or_more_than_reckoned_is_told():
    """A look that finds another level than was reckoned says by how much."""
    _, told = jugs([jug("a", "looked at", 900)], shelf())
    assert [(m.what, m.ul) for m in told] == [("found less", 100_000)]
    _, told = jugs([jug("a", "looked at", 1000)], shelf())
    assert told == ()


def test_a_batch_is_followed_until_it_is_gone():
    """Left over until used, kept in a labelled bottle or thrown away; more used than mixed is told."""
    mixed = drew("m", 50)
    used = entry("t", "treated", "2026-09-12T10:00", patch="rim", ae_g={}, mix_ml=80, batch="m")
    one = batches([mixed, used])["m"]
    assert (one.left_ul, one.open, one.overused) == (20_000, True, False)
    kept = entry("k", "mix left", "2026-09-12T18:00", what="kept in a labelled bottle", batch="m", bottle="pint")
    one = batches([mixed, used, kept])["m"]
    assert (one.kept_in, one.open, one.left_ul) == ("pint", False, 20_000)
    later = entry("u", "treated", "2026-09-13T10:00", patch="rim", ae_g={}, mix_ml=20, batch="m")
    assert batches([mixed, used, kept, later])["m"].left_ul == 0
    gone = entry("g", "mix left", "2026-09-12T18:00", what="discarded", batch="m")
    assert not batches([mixed, used, gone])["m"].open
    over = entry("o", "treated", "2026-09-12T10:00", patch="rim", ae_g={}, mix_ml=140, batch="m")
    assert batches([mixed, over])["m"].overused


def test_a_correction_stands_for_what_it_corrects_and_taking_back_restores():
    """The corrected draw counts, not the first; taken back, none does."""
    first = drew("a", 100)
    assert left(first, drew("b", 60, corrects="a", batch="a")) == 940_000
    assert left(first, entry("b", "taken back", corrects="a", why="typed twice")) == left()


def test_two_corrections_of_one_entry():
    """The later written holds, and both are told of."""
    rows = [drew("a", 100), drew("b", 60, corrects="a"), drew("c", 70, corrects="a")]
    assert left(*rows) == 930_000
    assert competing(rows) == (("b", "c"),)


def test_stems_treated_are_not_planned_again():
    """Treated ones go, cut ones are stumps, of counted plants the rest stays."""
    tract = hollow()
    ids = tract.stems.id[:3].tolist()
    done = entry("t", "treated", patch="meadow", ae_g={}, rows={ids[0]: 1})
    cut = entry("c", "marked", what="cut", rows={ids[1]: 1})
    after = to_do(hollow(entries=(done, cut)))
    assert ids[0] not in after.stems.id.tolist()
    assert after.stems.state[after.stems.id == ids[1]].tolist() == ["cut"]
    assert len(after.stems) == len(tract.stems) - 1
    assert cut_untreated(marks((done, cut))) == (ids[1],)
    ten = tract.stems.stems.copy()
    ten[0] = 10
    counted = replace(tract, stems=replace(tract.stems, stems=ten))
    some = entry("t", "treated", patch="meadow", ae_g={}, rows={ids[0]: 4})
    assert int(to_do(replace(counted, entries=(some,))).stems.stems[0]) == 6


def marked(name, what, at="2026-09-01T10:00", device="phone 1", **rows):
    """A mark of a phone."""
    return replace(entry(name, "marked", at, what=what, rows=rows), device=device)


def test_what_is_written_in_the_evening_is_what_was_marked_that_day():
    """Five of a row marked, six written down: six were treated, not eleven; the next day adds."""
    day = [marked("m1", "treated", s=2), marked("m2", "treated", "2026-09-01T11:00", s=3)]
    assert marks(day)["s"].treated == 5
    evening = entry("e", "treated", "2026-09-01T09:00", patch="rim", ae_g={}, rows={"s": 6})
    assert marks([*day, evening])["s"].treated == 6
    assert marks([*day, evening, marked("m3", "treated", "2026-09-02T09:00", s=1)])["s"].treated == 7


def test_two_phones_that_marked_one_stem_are_shown():
    """Treated twice, or treated by one and missed by the other; not what one phone marked, nor parts of a row."""
    twice = [marked("a", "treated", s=1), marked("b", "treated", "2026-09-01T10:05", device="phone 2", s=1)]
    (found,) = unlike(twice, {"s": 1})
    assert (found.stem, found.devices, found.entries) == ("s", ("phone 1", "phone 2"), ("a", "b"))
    assert unlike(twice, {"s": 2}) == ()
    apart = [marked("a", "treated", s=1), marked("b", "missed", device="phone 2", s=1)]
    assert unlike(apart, {})[0].said == ("treated", "missed")
    assert unlike([marked("a", "treated", s=1), marked("b", "missed", s=1)], {}) == ()
    back = entry("x", "taken back", "2026-09-01T12:00", "b", why="wrong stem")
    assert unlike([*twice, back], {"s": 1}) == ()


def test_what_is_marked_and_not_written_down():
    """By day, without what stands in a record; late ones are counted."""
    late = replace(
        marked("c", "treated", u=1), body={"what": "treated", "rows": {"u": 1}, "waited_s": 400, "limit_s": 300}
    )
    rows = [marked("a", "treated", s=1), marked("b", "cut", "2026-09-01T09:30", t=1), late]
    (day,) = marked_only(rows)
    assert (day.day, day.rows["treated"], day.rows["cut"]) == ("2026-09-01", {"s": 1, "u": 1}, {"t": 1})
    assert (day.first, day.last, day.late) == ("09:30", "10:00", 1)
    evening = entry("e", "treated", "2026-09-01T09:00", patch="rim", ae_g={}, rows={"s": 1})
    assert marked_only([*rows, evening])[0].rows["treated"] == {"u": 1}
    assert marked_only([marked("b", "cut", t=1)]) == ()


# laws

AMOUNT = st.integers(0, 400_000).map(lambda ul: ul / 1000)
DAY = st.integers(1, 28).map(lambda d: f"2026-09-{d:02d}T09:00")


@st.composite
def histories(draw):
    """Some entries about one jug and its batches, some of them corrected or taken back."""
    rows = []
    for n in range(draw(st.integers(0, 8))):
        what = draw(st.sampled_from(["batch", "returned", "spilled", "treated", "mix left"]))
        at, ml = draw(DAY), draw(AMOUNT)
        if what == "batch":
            rows.append(drew(f"e{n}", ml, at))
        elif what == "treated":
            rows.append(
                entry(f"e{n}", "treated", at, patch="rim", ae_g={}, mix_ml=ml, batch=f"e{draw(st.integers(0, 7))}")
            )
        elif what == "mix left":
            rows.append(entry(f"e{n}", "mix left", at, what="spilled", ml=ml, batch=f"e{draw(st.integers(0, 7))}"))
        else:
            rows.append(jug(f"e{n}", what, ml, at))
    for n, row in enumerate(list(rows)):
        if draw(st.integers(0, 4)) == 0:
            rows.append(entry(f"x{n}", "taken back", row.at, row.id, why="wrong"))
    return rows


def state(rows):
    """Everything the folds say."""
    return jugs(rows, shelf()), batches(rows), marks(rows), in_force(rows)


@settings(deadline=None)
@given(histories(), st.randoms(use_true_random=False))
def test_the_order_of_arrival_changes_nothing(rows, chance):
    """Any shuffle of the rows, and any row twice, gives the same state."""
    shuffled = [*rows, *rows[:2]]
    chance.shuffle(shuffled)
    assert state(shuffled) == state(rows)


@settings(deadline=None)
@given(histories())
def test_taking_everything_back_restores(rows):
    """With every row taken back the shelf is as at the beginning."""
    backs = [entry(f"back {row.id}", "taken back", row.at, row.id, why="all") for row in rows]
    assert jugs([*rows, *backs], shelf()) == jugs([], shelf())


@settings(deadline=None)
@given(histories())
def test_what_the_batches_took_is_what_the_jug_gave(rows):
    """What left the jug is what batches drew, less what came back, plus what was lost: nothing vanishes."""
    have = jugs(rows, shelf())[0][JUG]
    held = in_force(rows)
    drawn = sum(round(d["ml"] * 1000) for e in held if e.kind == "batch mixed" for d in e.body["drawn"])
    back = sum(round(e.body["ml"] * 1000) for e in held if e.kind == "jug" and e.body["what"] == "returned")
    assert have.drawn_ul == drawn - back
    assert have.left_ul == 1_000_000 - have.drawn_ul - have.lost_ul


@settings(deadline=None)
@given(histories())
def test_no_balance_is_below_nothing_unseen(rows):
    """Wherever a balance goes below nothing on the way, it is told."""
    total, below = 1_000_000, False
    for e in in_force(rows):
        if e.kind == "batch mixed":
            total -= sum(round(d["ml"] * 1000) for d in e.body["drawn"])
        elif e.kind == "jug":
            total += round(e.body["ml"] * 1000) * (1 if e.body["what"] == "returned" else -1)
        below = below or total < 0
    assert any(m.what == "overdrawn" for m in jugs(rows, shelf())[1]) == below
    for batch in batches(rows).values():
        assert batch.overused == (batch.left_ul < -5_000)


@settings(deadline=None)
@given(histories())
def test_a_mix_is_conserved(rows):
    """Mixed is used, gone or left, for every batch."""
    for batch in batches(rows).values():
        if batch.found_ul is None:
            assert batch.mixed_ul == batch.used_ul + batch.gone_ul + batch.left_ul


def test_every_order_of_five():
    """All 120 orders of five entries that lean on each other give one state."""
    rows = [
        drew("a", 100),
        drew("b", 60, corrects="a", batch="a"),
        jug("c", "returned", 5),
        entry("d", "taken back", corrects="c", why="no"),
        entry("e", "treated", patch="rim", ae_g={}, mix_ml=90, batch="a"),
    ]
    states = {repr(state(order)) for order in itertools.permutations(rows)}
    assert len(states) == 1


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_to_do_never_gains(seed):
    """However many are marked, no row has more to do than it had, and none less than nothing."""
    chance = random.Random(seed)
    tract = hollow()
    ids = chance.sample(tract.stems.id.tolist(), 40)
    rows = tuple(
        entry(f"e{n}", "treated", patch="rim", ae_g={}, rows={stem: chance.randint(0, 3)}) for n, stem in enumerate(ids)
    )
    after = to_do(hollow(entries=rows)).stems
    before = dict(zip(tract.stems.id.tolist(), tract.stems.stems.tolist(), strict=True))
    assert all(0 < n <= before[stem] for stem, n in zip(after.id.tolist(), after.stems.tolist(), strict=True))
    assert np.isin(after.id, tract.stems.id).all()
