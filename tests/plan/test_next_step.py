"""The next step: one matter out of all that is open, by one table."""

import datetime
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.gate import folder
from stemward.gate.pieces import Parts, Piece, join
from stemward.handbook import load
from stemward.label import KINDS
from stemward.plan import as_data, draw_up
from stemward.plan.next_step import ROWS, STEP_OF, STEPS, Matter, in_order, matters_of, step_states
from stemward.say.en import steps as words


@pytest.mark.parametrize("row", ROWS)
def test_each_row_has_its_words_and_step(row):
    """Each row of the table says a sentence, a button and why, and belongs to a step."""
    key = "nothing" if row == "nothing" else row
    sentence, button, why = words.ROWS[key]
    assert sentence and button and why
    assert STEP_OF[row] in STEPS


@pytest.mark.parametrize(("earlier", "later"), list(pairwise(ROWS)))
def test_an_earlier_row_goes_first(earlier, later):
    """Of two matters the one of the earlier row is the next step."""
    assert in_order([Matter(later), Matter(earlier)])[0].row == earlier


def test_ties_go_by_due_date_then_weight_then_name():
    """Within a row: the earlier day, then what weighs more, then the name."""
    soon, late = datetime.date(2026, 10, 11), datetime.date(2026, 10, 20)
    matters = [
        Matter("find_out", due=late, name="a"),
        Matter("find_out", due=soon, weight="know", name="b"),
        Matter("find_out", due=soon, weight="stop", name="z"),
        Matter("find_out", due=soon, weight="stop", name="c"),
    ]
    assert [one.name for one in in_order(matters)] == ["c", "z", "b", "a"]


MATTERS = st.builds(
    Matter,
    row=st.sampled_from(ROWS[:-1]),
    due=st.dates(),
    weight=st.sampled_from(["stop", "find out", "know"]),
    name=st.text(max_size=3),
)


@given(st.lists(MATTERS), st.randoms())
def test_exactly_one_row_wins(matters, rng):
    """Whatever is open and in whatever order, there is one next step and it is the same."""
    shuffled = list(matters)
    rng.shuffle(shuffled)
    first = in_order(matters)
    assert first == in_order(shuffled)
    assert first[0].row == min((m.row for m in matters), key=ROWS.index, default="nothing")


def land(*pieces: Piece, stems=()):
    """A tract of these pieces."""
    texts = join(Parts((Piece("tract", "", {"name": "X"}), *pieces), stems))
    return folder.read_texts(texts, load().find_species, KINDS).tract


PATCH = Piece("patch", "fence", {"id": "fence", "name": "Fence", "places": ["woods"]})


def test_a_new_tract_begins_with_a_patch_then_plants_then_what_is_kept():
    """Without a patch one is asked for; then its plants; then what must not be harmed."""
    from notebook.some import stem

    assert matters_of(land(), None, "", {})[0].values == (("patch", ""),)
    assert [m.row for m in matters_of(land(PATCH), None, "", {})] == ["count"]
    assert [m.row for m in matters_of(land(PATCH, stems=(stem("s1"),)), None, "", {})] == ["kept"]


def test_a_patch_set_aside_asks_for_nothing():
    """An optional patch does not block the rest."""
    assert matters_of(land(PATCH), None, "", {"fence": "2027-01-01"}) == []


@pytest.fixture(scope="module")
def hollow():
    """The example with its plan."""
    from stemward.gate import demo

    tract = folder.read_texts(demo.texts(), load().find_species, KINDS).tract
    return tract, as_data(draw_up(tract, load(), datetime.date(2026, 10, 10)))


def test_the_example_has_a_stop_first(hollow):
    """A chosen way that is stopped comes before what is to be read, and that before what is to be chosen."""
    rows = [m.row for m in in_order(matters_of(*hollow, "", {}))]
    assert rows[0] == "stopped"
    assert {"find_out", "choose"} <= {*rows}


def test_a_printed_plan_that_changed_is_looked_at_again(hollow):
    """A packet with another code than the plan has now is out of date; one with its code is not."""
    tract, plan = hollow
    assert any(m.row == "changed" for m in matters_of(tract, plan, "AA-AA", {}))
    assert not any(m.row == "changed" for m in matters_of(tract, plan, plan["code"], {}))


def test_a_step_is_done_by_facts(hollow):
    """Steps follow from what is there, not from a tick."""
    states = step_states(*hollow, "")
    assert states["look"] == "done"
    assert states["choose"] == "needs you"
    assert step_states(land(), None, "") == dict.fromkeys(STEPS, "not begun")
