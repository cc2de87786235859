"""What past work teaches: how much is put on and how long it takes, and that plans use it and say so."""

import datetime
import math
from dataclasses import replace

import pytest

from ledger.some import entry, hollow
from stemward.handbook import load
from stemward.plan import as_data, draw_up, verify
from stemward.plan.field_sheets import field_sheets
from stemward.plan.learned import hour_ratios, learned, of_person, use_of, use_ratios
from stemward.reckon.use_rate import need_quantile_ml
from stemward.say import Speaker

AS_OF = datetime.date(2026, 10, 10)


def did(key, mix_ml, reckoned_ml, person="Ann", batch="", method="hack and squirt", corrects=""):
    """One treatment that used so much where so much was reckoned."""
    return entry(key, "treated", "2026-09-12T09:00", corrects, patch="slope", method=method, mix_ml=mix_ml,
                 reckoned_ml=reckoned_ml, people=[person], batch=batch or key, ae_g={})  # fmt: skip


def plan(*entries):
    """The example's plan with these entries."""
    return as_data(draw_up(hollow(entries=entries), load(), AS_OF))


def item(data, how="hack and squirt"):
    """Its treatment of red maple."""
    return next(t for t in data["treatments"] if t["species"] == "Acer rubrum" and t["how"] == how)


def test_a_batch_is_what_it_used_against_what_was_reckoned():
    """Two sheets of one batch are one; corrected ones do not count; each person's apart."""
    rows = [did("a", 30, 10, batch="x"), did("b", 10, 30, batch="x"), did("c", 20, 10), did("d", 5, 10, "Ben"),
            did("e", 99, 10), did("f", 10, 10, corrects="e")]  # fmt: skip
    assert use_ratios(rows, "hack and squirt") == {
        "Ann": (0.0, pytest.approx(math.log(2)), 0.0),
        "Ben": (pytest.approx(math.log(0.5)),),
    }
    assert use_ratios(rows, "foliar") == {}


def test_hours_are_learned_alike():
    """Twice as long as reckoned."""
    rows = [entry("h", "work", patch="rim", method="girdle", stems=5, person_h=4, reckoned_h=2, people=["Ann"])]
    assert hour_ratios(rows, "girdle") == {"Ann": (pytest.approx(math.log(2)),)}


def test_nothing_is_learned_from_nothing():
    """No batch: no factor, and the plan is as without."""
    assert use_of(hollow(), "cut stump") is None
    assert all(mix["learned"] is None for mix in plan()["mixes"])


def test_many_batches_of_one_person_are_believed():
    """Thirty batches at one and a half times leave little doubt; one batch leaves much."""
    many = learned({"Ann": (math.log(1.5),) * 30})
    assert many.factor(0.5) == pytest.approx(1.5, rel=0.01)
    assert many.factor(0.84) / many.factor(0.5) < 1.2
    one = learned({"Ann": (math.log(1.5),)})
    assert 1 < one.factor(0.5) < 1.5
    assert one.factor(0.84) / one.factor(0.5) > 1.3


def test_a_new_person_is_between_the_others_and_the_book():
    """Someone without batches starts nearer to the others than to 1, one with own batches nearer to these."""
    ratios = {"Ann": (math.log(2),) * 20, "Ben": (0.0,) * 20}
    assert 1 < need_quantile_ml(of_person({"Ann": ratios["Ann"]}, "Cy"), 1.0, 0.5) < 2
    assert learned(ratios).each == (("Ann", pytest.approx(2, rel=0.03)), ("Ben", pytest.approx(1, rel=0.03)))


def test_of_several_people_each_is_told_apart():
    """The plan takes what any of them may need, and says what each was found to need."""
    rows = [did(f"a{n}", 20, 10, batch=f"a{n}") for n in range(6)]
    ben = [did(f"b{n}", 10, 10, batch=f"b{n}") for n in range(6)]
    rows += [replace(one, body=one.body | {"people": ["Ben"]}) for one in ben]
    (mix,) = [m for m in plan(*rows)["mixes"] if m["product"] == "imazapyr-2lb"]
    assert [one["person"] for one in mix["learned"]["each"]] == ["Ann", "Ben"]
    ann, ben_factor = (one["factor"] for one in mix["learned"]["each"])
    assert ann > mix["learned"]["factor"] > ben_factor
    said = Speaker(plan(*rows)).learned(mix)
    assert "from 12 batches of 2 people" in said
    assert f"Ann alone: {ann:.2g} times; Ben alone: {ben_factor:.2g} times." in said


def test_the_plan_takes_what_was_learned_and_says_from_how_many():
    """Need, load and mix grow by the factor; each stem's dose does not; the sums can be worked again."""
    rows = [did(f"b{n}", 15, 10, batch=f"b{n}") for n in range(6)]
    before, after = plan(), plan(*rows)
    factor = use_of(hollow(entries=tuple(rows)), "hack and squirt").factor(0.5)
    assert factor > 1.3
    assert item(after)["need_ml"] == pytest.approx(item(before)["need_ml"] * factor, rel=1e-6)
    assert item(after)["ae_g"]["glyphosate"] == pytest.approx(item(before)["ae_g"]["glyphosate"] * factor, rel=1e-6)
    assert item(after)["most_ml"] == item(before)["most_ml"]
    assert verify(after).problems == ()
    (mix,) = [m for m in after["mixes"] if m["product"] == "imazapyr-2lb"]
    assert mix["learned"] == {"factor": pytest.approx(factor, rel=1e-6), "batches": 6, "people": 1, "person": "Ann",
                              "each": []}  # fmt: skip
    assert "from 6 batches of Ann" in Speaker(after).learned(mix)


def test_what_was_learned_is_not_learned_again():
    """The sheets hold what was reckoned without it, so that the next batch is held against the same measure."""
    rows = [did(f"b{n}", 15, 10, batch=f"b{n}") for n in range(6)]
    one, other = (next(s for s in field_sheets(p) if s["species"] == "Acer rubrum") for p in (plan(), plan(*rows)))
    assert one["row_ml"] == pytest.approx(other["row_ml"])


def test_hours_of_a_way_follow_days_that_were_worked():
    """Days that took four times as long put the band about four times as far; it is shown in half and whole hours."""
    body = {
        "patch": "slope",
        "method": "hack and squirt",
        "stems": 5,
        "person_h": 16,
        "reckoned_h": 4,
        "people": ["Ann"],
    }
    rows = [entry(f"h{n}", "work", **body) for n in range(20)]
    before, after = (next(w for w in item(p)["ways"] if w["how"] == "hack and squirt") for p in (plan(), plan(*rows)))
    middle = math.sqrt(after["hours_low"] * after["hours_high"]) / math.sqrt(before["hours_low"] * before["hours_high"])
    assert 2.5 < middle < 5.5
    assert (before["hours_days"], after["hours_days"]) == (0, 20)
    assert Speaker(plan(*rows)).work(after).startswith("5 to 9 h (by 20 days of yours)")


def test_stems_treated_and_jugs_drawn_change_the_plan():
    """What was treated is not planned again, and stock is what is left."""
    ids = dict.fromkeys(hollow().stems.id[hollow().stems.species == "Acer rubrum"][:90].tolist(), 1)
    drawn = [{"product": "glyphosate-4lb-wet", "jug": "jug 1", "ml": 2200}]
    rows = (replace(did("a", 10, 10), body=did("a", 10, 10).body | {"rows": ids}),
            entry("m", "batch mixed", batch="m", mixed_ml=4400, drawn=drawn))  # fmt: skip
    data = plan(*rows)
    assert item(data)["stems"] == 2
    short = [f for f in data["findings"] if f["check"] == "stock" and f["where"]["product"] == "glyphosate-4lb-wet"]
    assert short[0]["values"]["left_ml"] < 70
