"""Permits, cost share and notices from what was written down of them."""

import datetime

from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.some import entry
from stemward.ledger.permits import begun_early, granted, permits


def step(key, what, on, name="grant", kind="cost share", **more):
    """One step of a permit."""
    return entry(key, "permission", on, what=kind, step=what, name=name, **more)


def work(key, on, patch="rim"):
    """A day's work."""
    return entry(key, "treated", on, patch=patch, ae_g={})


DAY = datetime.date(2026, 9, 20)


def test_a_permit_through_its_steps():
    """Asked for, granted until a day, ended; what was said once stays."""
    rows = [step("a", "asked for", "2026-08-01", patches=["rim"], from_whom="the office"),
            step("b", "granted", "2026-09-10", number="7", until="2026-12-31")]  # fmt: skip
    (permit,) = permits(rows).values()
    assert (permit.asked, permit.granted_on) == (datetime.date(2026, 8, 1), datetime.date(2026, 9, 10))
    assert (permit.patches, permit.from_whom, permit.number) == (("rim",), "the office", "7")
    assert permit.holds(DAY)
    assert not permit.holds(datetime.date(2026, 9, 9))
    assert not permit.holds(datetime.date(2027, 1, 1))
    assert not permits([*rows, step("c", "ended", "2026-09-15")])["grant"].holds(DAY)


def test_which_permit_counts():
    """The one that holds for the patch, else the last one asked for; none where none is for it."""
    rows = [step("a", "refused", "2026-08-01", "first"), step("b", "granted", "2026-08-02", "second", patches=["rim"])]
    assert granted(rows, "cost share", "rim", DAY).name == "second"
    assert granted(rows, "cost share", "meadow", DAY).name == "first"
    assert granted(rows, "permit for work at water", "rim", DAY) is None


def test_work_begun_before_it_was_granted():
    """Between asking and granting, on its patches; the first day of each."""
    rows = [step("a", "asked for", "2026-08-01", patches=["rim"]), work("w1", "2026-07-01"), work("w2", "2026-08-20"),
            work("w3", "2026-09-01"), work("w4", "2026-08-15", "meadow")]  # fmt: skip
    assert [(p, d.isoformat()) for _, p, d in begun_early(rows)] == [("rim", "2026-08-20")]
    rows.append(step("b", "granted", "2026-08-20"))
    assert begun_early(rows) == ()


STEPS = st.lists(
    st.tuples(st.sampled_from(["asked for", "granted", "refused", "ended"]), st.integers(1, 28), st.sampled_from("xy")),
    max_size=6,
)


@settings(deadline=None)
@given(STEPS, st.randoms(use_true_random=False))
def test_the_order_of_arrival_changes_nothing(steps, chance):
    """Any shuffle gives the same permits, and nothing holds before the day it was granted."""
    rows = [step(f"e{n}", what, f"2026-09-{day:02d}", name) for n, (what, day, name) in enumerate(steps)]
    shuffled = list(rows)
    chance.shuffle(shuffled)
    assert permits(shuffled) == permits(rows)
    for permit in permits(rows).values():
        assert not permit.holds(datetime.date(2026, 8, 31))
