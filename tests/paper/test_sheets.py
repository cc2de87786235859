"""The sheets for bottle, woods and file hold what they are for."""

from dataclasses import replace

import pytest

from checks.build import OWNER, PRODUCT, case, fact, stems_of, with_facts
from paper.test_packet import text_of
from plan.test_draw_up import plan_of, tract_of
from stemward.kinds import Choice
from stemward.paper import day_sheets, packet, sheets
from stemward.plan.gear import gear_of, glove_materials
from stemward.say import Speaker, en

CHOICE = Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5)


@pytest.fixture(scope="module")
def plan():
    return plan_of(tract_of(stems_of(), [CHOICE]))


def test_gloves_are_what_every_label_allows():
    """Nitrile and butyl on one label, nitrile and neoprene on another: nitrile. Nothing in common is said."""
    one = with_facts(PRODUCT, fact("glove material", "nitrile rubber"), fact("glove material", "butyl rubber"))
    both = case(product=one)
    assert glove_materials(both) == (("butyl rubber", "nitrile rubber"), True)
    other = replace(
        one, id="g5", facts=(fact("glove material", "neoprene rubber"), fact("glove material", "nitrile rubber"))
    )
    two = replace(both, jobs=(*both.jobs, replace(both.jobs[0], product=other)))
    assert glove_materials(two) == (("nitrile rubber",), True)
    third = replace(one, id="g6", facts=(fact("glove material", "polyethylene"),))
    none = replace(both, jobs=(*both.jobs, replace(both.jobs[0], product=third)))
    assert glove_materials(none) == ((), True)
    assert glove_materials(case()) == ((), False)


def test_a_glove_category_stands_for_its_materials():
    """Category A, water only: every material of the table holds (EPA's table as in WAC 16-233-216)."""
    found, said = glove_materials(case(product=with_facts(PRODUCT, fact("glove category", "A"))))
    assert said
    assert {"nitrile rubber", "butyl rubber", "barrier laminate"} <= set(found)


def test_the_kit_goes_by_the_ways_and_roles():
    """A saw crew takes saw gear; a plan without herbicide takes no measures."""
    kit = gear_of(case())["kit"]
    assert {"all", "mix", "saw", "cut stump"} == {item["for"] for item in kit}
    alone = gear_of(case(people=(OWNER,)))["kit"]
    assert "saw" not in {item["for"] for item in alone}


def test_every_batch_has_a_label_with_its_strength_and_signal_word(plan):
    """Name, number, share, acid equivalent, signal word, first aid and where it is for."""
    (label,) = sheets.labels(Speaker(plan), plan)
    assert label["signal"] == "CAUTION"
    assert "QH-0001" in label["name"]
    assert plan["code"] in label["code"]
    assert "glyphosate" in label["what"] and "%" in label["what"]
    assert "Oak slope" in label["for"] and "Rinse." in label["first_aid"]
    assert label["entry"].endswith("4 hours after use.")


def test_what_nobody_has_read_is_said_on_the_label_and_hangs_no_sign():
    """No signal word, entry interval or first aid read: the label says so, and there is no sign with a made-up time."""
    bare = replace(
        PRODUCT, facts=tuple(f for f in PRODUCT.facts if f.kind not in ("signal word", "entry interval", "first aid"))
    )
    plan = plan_of(tract_of(stems_of(), [CHOICE], shelf=(bare,)))
    (label,) = sheets.labels(Speaker(plan), plan)
    assert label["no_signal"] and label["entry"] == en.sheets.LABEL["entry_unread"]
    assert label["first_aid"] == en.sheets.LABEL["aid_unread"]
    assert sheets.sign(Speaker(plan), plan) is None


def test_the_record_is_filled_with_what_is_known_and_lines_for_the_rest(plan):
    """One form a mix, every field there, those of the work day empty."""
    (form,) = sheets.record(Speaker(plan), plan)["forms"]
    filled = dict(form)
    assert set(filled) == set(en.sheets.RECORD["fields"].values())
    assert filled["Date"] == "" and filled["Signed"] == ""
    assert "QH-0001" in filled["Product and number"]


def test_looks_come_after_a_growing_season_and_later_for_suckering_plants():
    """12 months, 18 for plants that sucker from the roots (trials.md: 12, and 18 to 24)."""
    suckers = plan_of(
        tract_of(
            stems_of(species="Ailanthus altissima"),
            [Choice("slope", "Ailanthus altissima", "hack and squirt", "g4", 0.5)],
        )
    )
    looks = sheets.afterward(Speaker(suckers), suckers)["looks"]
    assert [day for day, _ in looks] == ["2027-07-01", "2028-09-15"]
    assert "18 months" in looks[1][1]


def test_the_packet_holds_every_sheet_in_its_order(plan):
    """For the table, for the bottle and woods, for the file; emergency last and on an even page."""
    pages = text_of(packet(plan))
    heads = ["Plan on a page", "What to take", "Mix sheet", "Bottle labels", "Map", "Herbicide in use",
             "Record to fill by hand", "Afterward", "All findings"]  # fmt: skip
    found = [next(n for n, text in enumerate(pages) if head in text) for head in heads]
    assert found == sorted(found)
    assert "EMERGENCY" in pages[-1]
    assert len(pages) % 2 == 0


def test_words_the_face_has_no_signs_for_leave_the_rest_on_paper():
    """A tract whose name is written in another script is printed, with question marks for what cannot be."""
    tract = replace(tract_of(stems_of(), [CHOICE]), name="\u6797\u5730 Hollow \u061d")
    text = " ".join(text_of(packet(plan_of(tract))))
    assert "Hollow" in text and "??" in text


def test_a_notice_gives_no_hours_when_one_entry_time_is_unread(plan):
    """Two products, the entry time of one unread: the notice does not let people in after the other's hours."""
    told = day_sheets.notice(Speaker(plan), plan)
    assert any("4 hours" in line for line in told["lines"])
    (product,) = plan["tract"]["products"]
    two = {**plan, "tract": {**plan["tract"], "products": [product, {**product, "id": "g9", "entry_h": None}]}}
    unread = day_sheets.notice(Speaker(two), two)["lines"]
    assert en.sheets.DAY["notice_out_unread"] in unread and not any("4 hours" in line for line in unread)
