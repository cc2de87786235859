"""What is ticked on a sheet and typed in the evening, as entries."""

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.some import entry, hollow
from stemward.ledger import batches
from stemward.ledger.evening import NO_REASON, DayTyped, written
from stemward.ledger.poured import MixTyped
from stemward.ledger.said import clock, read_ticks

DAY = datetime.date(2026, 10, 10)


@pytest.mark.parametrize(
    ("typed", "what", "rows"),
    [
        ("14-16 treated", "treated", [14, 15, 16]),
        ("14 – 16 t", "treated", [14, 15, 16]),
        ("1,3, 5 missed", "missed", [1, 3, 5]),
        ("1 3 5 m", "missed", [1, 3, 5]),
        ("all treated", "treated", list(range(1, 21))),
        ("all but 2-19 treated", "treated", [1, 20]),
        ("4 not found", "not found", [4]),
        ("4 Gone.", "not found", [4]),
        ("7 cut 9:40", "cut", [7]),
        ("1 treated; 2 treated\n3 treated", "treated", [1, 2, 3]),
    ],
)
def test_what_people_write(typed, what, rows):
    """Ranges, lists, all, all but, short words, several lines."""
    found = read_ticks(typed, [1] * 20)
    assert (found.wrong, list(found.rows[what])) == ((), rows)


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("14-32", "not_understood"), ("treated", "not_understood"), ("21 treated", "not_on_sheet"),
        ("0 treated", "not_on_sheet"), ("5-3 treated", "not_on_sheet"), ("1 trated", "not_understood"),
        ("1 treated; 1 treated", "twice"), ("3: 20 treated", "too_many"), ("1-2: 1 treated", "count_of_one"),
        ("1 treated 25:00", "not_understood"), ("x" * 5000, "too_long"), ("1-2-3 treated", "not_understood"),
    ],
)  # fmt: skip
def test_what_is_not_understood_is_told_and_counts_nothing(typed, message):
    """One mistake and the sheet counts nothing, so that nothing is written by halves."""
    found = read_ticks(typed, [1] * 20)
    assert [one.message for one in found.wrong] == [message]
    assert not any(found.rows.values())


def test_counted_plants_in_parts():
    """Of a row of 42 plants, 20 now and 22 later; the rest in one word; no more than there are."""
    assert read_ticks("1: 20 treated; 1: 22 treated", [42]).rows["treated"] == {1: 42}
    assert read_ticks("1 treated", [42]).rows["treated"] == {1: 42}
    assert read_ticks("1: 43 treated", [42]).wrong[0].message == "too_many"
    assert read_ticks("1: 40 treated; 1: 3 treated", [42]).wrong[0].message == "twice"


@pytest.mark.parametrize(
    ("typed", "read"),
    [("9:40", "09:40"), ("940", "09:40"), ("9.40", "09:40"), ("2 pm", "14:00"), ("2:15pm", "14:15"), ("12 am", "00:00"),
     ("12:30 pm", "12:30"), ("24:00", None), ("9:60", None), ("13 pm", None), ("soon", None), ("", None)],
)  # fmt: skip
def test_clocks(typed, read):
    """Times as people write them."""
    assert clock(typed) == read


def sheet(key="t1", mix="m1", n=10, **more):
    """A sheet of n stems that take 2 mL each."""
    return {
        "id": key, "patch": "rim", "patch_name": "Rim", "species": "Ailanthus altissima", "common": "tree-of-heaven",
        "state": "standing", "how": "hack and squirt", "product": "imazapyr-2lb", "product_name": "Imazapyr",
        "partner": "", "concentration_frac": 0.5, "partner_frac": None, "carrier": "water", "tool": "squirt bottle",
        "mix": mix, "stopped": [], "ids": [f"{key}-{i}" for i in range(n)], "counts": [1] * n, "sizes_cm": [5.0] * n,
        "row_ml": [2.0] * n,
    } | more  # fmt: skip


def day(ticks, mixes=(), **more):
    """A day as typed."""
    usual = {"day": DAY, "begun": "09:40", "ended": "12:00", "people": ("Ann Example",)}
    return DayTyped(**(usual | {"ticks": ticks, "mixes": mixes} | more))


def bodies(found, kind):
    """Bodies of one kind of entry."""
    return [body for k, _, body in found.rows if k == kind]


def test_a_plain_day():
    """100 mL mixed of equal parts, 20 left and kept: 80 mL on ten stems, 40 mL of product, 9.6 g of acid (2 lb/gal)."""
    mix = MixTyped("m1", mixed_ml=100, left_ml=20, fate="kept in a labelled bottle", bottle="pint")
    found = written(day({"t1": "all treated"}, (mix,)), [sheet()], hollow())
    (treated,), (batch,), (rest,) = bodies(found, "treated"), bodies(found, "batch mixed"), bodies(found, "mix left")
    assert batch["drawn"] == [{"product": "imazapyr-2lb", "jug": "jug 1", "ml": 50.0}]
    assert (treated["mix_ml"], treated["product_ml"], treated["reckoned_ml"]) == (80.0, {"imazapyr-2lb": 40.0}, 20.0)
    # 40 mL x 239.65 g ae/L (2 lb/gal = 2 x 453.592 g / 3.78541 L)
    assert treated["ae_g"]["imazapyr"] == pytest.approx(0.040 * 2 * 453.59237 / 3.785411784, rel=1e-6)
    assert treated["rows"] == {f"t1-{i}": 1 for i in range(10)}
    assert (rest["ml"], rest["bottle"]) == (20, "pint")
    assert [kind for kind, _, _ in found.rows] == ["batch mixed", "treated", "mix left"]


def test_two_sheets_share_a_mix_by_what_was_reckoned():
    """Ten stems of 2 mL and five of 8 mL: a third and two thirds."""
    sheets = [sheet(), sheet("t2", n=5, row_ml=[8.0] * 5)]
    mix = MixTyped("m1", mixed_ml=60, fate="all of it was used")
    found = written(day({"t1": "all t", "t2": "all t"}, (mix,)), sheets, hollow())
    assert [b["mix_ml"] for b in bodies(found, "treated")] == [20.0, 40.0]


def test_strength_is_what_was_really_drawn():
    """40 mL of product in 100 mL is 40 %, whatever the plan said."""
    mix = MixTyped("m1", mixed_ml=100, left_ml=0, drawn_ml={"imazapyr-2lb": 40})
    found = written(day({"t1": "all t"}, (mix,)), [sheet()], hollow())
    assert bodies(found, "treated")[0]["concentration_frac"] == 0.4
    assert bodies(found, "treated")[0]["product_ml"] == {"imazapyr-2lb": 40.0}


def test_what_became_of_the_rest_is_not_known_yet():
    """The record stays open, and the year's limit counts all there was."""
    mix = MixTyped("m1", mixed_ml=100, fate="not known yet")
    (treated,) = bodies(written(day({"t1": "all t"}, (mix,)), [sheet()], hollow()), "treated")
    assert "mix_ml" not in treated
    assert treated["ae_g"]["imazapyr"] == pytest.approx(0.050 * 239.652855, rel=1e-6)


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        (day({}), "nothing_ticked"),
        (day({"t1": "all t"}, (MixTyped("m1"),)), "how_much_mixed"),
        (day({"t1": "all t"}, (MixTyped("m1", mixed_ml=10, left_ml=11),)), "more_left"),
        (day({"t1": "all t"}, (MixTyped("m1", mixed_ml=10),), begun="12:00", ended="09:00"), "ended_before"),
        (day({"t1": "99 t"}, (MixTyped("m1", mixed_ml=10),)), "not_on_sheet"),
    ],
)
def test_what_cannot_be(typed, message):
    """Told, and nothing is written."""
    found = written(typed, [sheet()], hollow())
    assert ([one.message for one in found.wrong], found.rows) == ([message], ())


def test_more_than_the_jug_holds_is_asked():
    """The entries are made and a question stands beside them."""
    mix = MixTyped("m1", mixed_ml=100_000, left_ml=0)
    found = written(day({"t1": "all t"}, (mix,)), [sheet()], hollow())
    assert [one.message for one in found.asked] == ["overdrawn"]
    assert found.rows


def test_a_stopped_treatment_is_written_down_all_the_same():
    """With the reason, or with the words that none was given."""
    mix = MixTyped("m1", mixed_ml=10, left_ml=0)
    stopped = [sheet(stopped=["site"])]
    found = written(day({"t1": "all t"}, (mix,), anyway={"t1": "the only jug"}), stopped, hollow())
    assert bodies(found, "treated")[0]["anyway"] == "the only jug"
    assert bodies(written(day({"t1": "all t"}, (mix,)), stopped, hollow()), "treated")[0]["anyway"] == NO_REASON


def test_without_herbicide():
    """Girdled or pulled stems are done, and no record follows."""
    found = written(day({"t1": "1-3 t; 4 cut"}), [sheet(mix="", product="", how="girdle")], hollow())
    assert bodies(found, "treated")[0]["ae_g"] == {}
    assert bodies(found, "marked")[0]["rows"] == {"t1-3": 1}


def test_an_older_batch_used_on_and_poured_into_a_new_one():
    """Used on: no new batch. Poured in: the new batch holds both, and nothing vanishes."""
    drawn = [{"product": "imazapyr-2lb", "jug": "jug 1", "ml": 20}]
    old = entry("o", "batch mixed", "2026-10-01T09:00", batch="old", mixed_ml=40, drawn=drawn, concentration_frac=0.5)
    tract = hollow(entries=(old,))
    on = written(day({"t1": "all t"}, (MixTyped("m1", left_ml=10, before="old"),)), [sheet()], tract)
    assert (bodies(on, "treated")[0]["batch"], bodies(on, "treated")[0]["mix_ml"]) == ("old", 30.0)
    into = written(day({"t1": "all t"}, (MixTyped("m1", mixed_ml=60, left_ml=10, before="old"),)), [sheet()], tract)
    made = [entry(f"n{n}", kind, at, **body) for n, (kind, at, body) in enumerate(into.rows)]
    found = batches(replace(tract, entries=(old, *made)).entries)
    assert (found["old"].left_ul, found["2026-10-10 m1"].mixed_ul, found["2026-10-10 m1"].left_ul) == (
        0,
        100_000,
        10_000,
    )


@settings(deadline=None)
@given(st.lists(st.integers(1, 30), max_size=60))
def test_ranges_say_the_same_as_single_numbers(numbers):
    """Any set of rows, written singly, gives just these rows."""
    rows = sorted(set(numbers))
    text = ", ".join(map(str, rows))
    assert list(read_ticks(f"{text} treated" if rows else "", [1] * 30).rows["treated"]) == rows
    if rows:
        rest = [n for n in range(1, 31) if n not in rows]
        assert list(read_ticks(f"all but {text} treated", [1] * 30).rows["treated"]) == rest


@settings(deadline=None)
@given(st.text(max_size=80))
def test_anything_typed_is_read_or_told(text):
    """Never an exception; what is told counts nothing."""
    found = read_ticks(text, [1, 5, 1])
    assert not (found.wrong and any(found.rows.values()))


@settings(deadline=None)
@given(st.floats(1, 5000), st.floats(0, 1), st.integers(1, 10), st.integers(1, 10))
def test_mix_is_conserved_over_sheets(mixed, left_share, first, second):
    """What was put on of each sheet, and what is left, is what was mixed."""
    mix = MixTyped("m1", mixed_ml=mixed, left_ml=mixed * left_share, fate="discarded")
    sheets = [sheet(), sheet("t2", row_ml=[7.0] * 10)]
    found = written(day({"t1": f"1-{first} t", "t2": f"1-{second} t"}, (mix,)), sheets, hollow())
    put = sum(b["mix_ml"] for b in bodies(found, "treated"))
    assert put + mixed * left_share == pytest.approx(mixed, abs=0.01)
