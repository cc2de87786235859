"""Application records, and for each rule set one that is complete and one that lacks each field in turn.

The fields each rule set asks for stand here a second time, written from the restated table of rules, so that a slip
in the packaged table is seen. Sources: those of the rows; the numbers in brackets are sections.
"""

import datetime
from dataclasses import replace

import pytest

from ledger.some import entry, hollow
from stemward.handbook import load
from stemward.kinds import LabelFact
from stemward.ledger.duties import due_of, duties_of, keep_until_of, lacking, missing_of, years_on
from stemward.ledger.records import HELD, as_signed, records

DAY = "2026-09-12"
MORNING = f"{DAY}T09:40"

FULL = {
    "patch": "rim", "ae_g": {"imazapyr": 11.4}, "product_ml": {"imazapyr-2lb": 48.0}, "mix_ml": 96.0, "stems": 22,
    "method": "hack and squirt", "species": "Ailanthus altissima", "concentration_frac": 0.5, "carrier": "water",
    "tool": "squirt bottle", "batch": "b1", "until": "11:30", "people": ["Ann Example"], "area_m2": 800.0,
}  # fmt: skip
BY_HAND = {
    "for_whom": "B. Example, 1 Lane Road", "certified": "Ann Example, number X-1", "address": "1 Lane Road, 00000",
    "land_description": "section 1", "supplier": "the farm store", "sheet_kept": "in the shed",
}  # fmt: skip


def full(who="hire", state="WI", restricted="yes", **changes):
    """A tract with one whole day in its records."""
    drawn = [{"product": "imazapyr-2lb", "jug": "jug 1", "ml": 48}]
    rows = (
        entry("e1", "batch mixed", f"{DAY}T09:20", batch="b1", mixed_ml=96, drawn=drawn, place="the lane"),
        entry("e2", "treated", MORNING, **(FULL | changes)),
        entry("e3", "weather", MORNING, wind_m_s=2.0, wind_from="W", temp_c=18.0, humidity_frac=0.6, source="measured"),
        entry("e4", "filled in", f"{DAY}T20:00", day=DAY, values=BY_HAND),
    )
    tract = hollow(entries=rows, who=who, state=state)
    fact = LabelFact("restricted use", "says", restricted, "read", page="1", read_by="owner")
    shelf = tuple(
        replace(p, facts=(*(f for f in p.facts if f.kind != "restricted use"), *((fact,) if restricted else ())))
        for p in tract.shelf
    )
    patches = tuple(
        replace(p, places=("woods",), answers=(*((k, v) for k, v in p.answers if k != "for_sale"), ("for_sale", "yes")))
        for p in tract.patches
    )
    return replace(tract, shelf=shelf, patches=patches)


def only(tract):
    """The one record."""
    (record,) = records(tract)
    return record


ASKED = {
    "former-federal": "product number total location area site date certified",  # 7 CFR 110.3(a)
    "minimum": "product number total location area site date applied",  # the same list, as a habit
    "federal-commercial": "product number total location area site date start certified applied for_whom",  # 171.303
    "worker-protection": "product number ingredients location site date start end entry sheet_kept",  # 170.311(b)
    "WI": "product number location site date start end applied for_whom mixing_place",  # ATCP 29.21
    "WA": "product number total rate strength location area site date start end wind temperature method certified "
    "applied for_whom",  # RCW 17.21.100
    "OR": "product number total location area site date supplier strength method applied start",  # ORS 634.146
    "OR-forest": "rate carrier land_description acres date start applied",  # OAR 629-620-0600, by hand
    "MN": "product number rate location area date end wind temperature certified applied for_whom",  # 18B.37
    "TX": "product number rate mix location area site plants date start wind temperature method certified applied "
    "for_whom",  # 4 TAC 7.33
    "CA": "product number total location area site date start end method applied for_whom",  # 3 CCR 6624, for sale
    "NY": "product number total rate address plants method date",  # ECL 33-1205
    "FL": "product number total location area site date start end method certified applied",  # 5E-9.032
    "NC": "product number rate location area site date end certified applied for_whom",  # 09L .1402
    "MI": "product number rate strength mix location area plants date method",  # R 285.636.15
    "MD": "product number total location area site date address rate",  # COMAR 15.05.01.07
}  # fmt: skip
STATE = {"OR-forest": "OR"}
WHO = {"former-federal": "own", "MD": "own"}


def situation(rule, **changes):
    """The whole record where that rule set holds."""
    state = STATE.get(rule, rule if len(rule) == 2 else "WI")
    return full(WHO.get(rule, "hire"), state, **changes)


def duty(tract, rule):
    """That rule set's duty on the one record."""
    record = only(tract)
    if rule == "former-federal":
        record = replace(record, day=datetime.date(2025, 7, 10))
    return next(d for d in duties_of(record, tract, load()) if d.rule.id == rule)


def test_every_rule_set_is_tried():
    """The table here and the packaged one name the same rule sets; ten states and more."""
    assert set(ASKED) == {rule.id for rule in load().record_rules}
    assert len({rule.state for rule in load().record_rules if rule.state}) >= 10


@pytest.mark.parametrize("rule", ASKED)
def test_a_whole_record_lacks_nothing(rule):
    """For each rule set."""
    found = duty(situation(rule), rule)
    assert (found.missing, found.certain) == ((), True)


@pytest.mark.parametrize(("rule", "field"), [(r, f) for r, fields in ASKED.items() for f in fields.split()])
def test_a_record_that_lacks_one_field(rule, field):
    """Exactly that field is named as missing, and it is named again as one of those that this rule set asks for."""
    tract = situation(rule)
    record = only(tract)
    emptied = {name: None for group in HELD[field] for name in group}
    if field == "area":
        emptied |= {"area_m2": None, "stems": None}
    lacks = replace(
        record, values={**record.values, **emptied}, filled={k: v for k, v in record.filled.items() if k != field}
    )
    wanted = next(r for r in load().record_rules if r.id == rule).wanted
    missing, _ = lacking(wanted, lacks, tract)
    assert field in missing
    shared = {f for f in HELD if any(set(group) & set(emptied) for group in HELD[f])}
    assert set(missing) <= shared | {field}


@pytest.mark.parametrize("rule", ASKED)
def test_no_more_is_asked_than_the_rule_asks(rule):
    """A record with nothing in it lacks what the rule asks for, and no more; alternatives count as one."""
    tract = situation(rule)
    empty = replace(only(tract), values={}, filled={})
    wanted = next(r for r in load().record_rules if r.id == rule).wanted
    missing, _ = lacking(wanted, empty, tract)
    either = {one.field for one in wanted if one.either}
    assert set(missing) - either == set(ASKED[rule].split()) - either
    assert bool(either & set(missing)) == bool(either)


def test_alternatives_of_wisconsin():
    """Concentration and total, or amount per area and area: one whole pair is enough (ATCP 29.21)."""
    whole = situation("WI")
    assert duty(whole, "WI").missing == ()
    without = situation("WI", area_m2=0, stems=0)
    record = only(without)
    bare = replace(record, values={**record.values, "area_m2": None, "stems": None})
    wi = next(r for r in load().record_rules if r.id == "WI").wanted
    assert lacking(wi, bare, without)[0] == ()
    bare = replace(bare, values={**bare.values, "concentration_frac": None})
    assert lacking(wi, bare, without)[0] == ("strength",)


def test_the_federal_list_ended():
    """It bound private applicators of restricted-use products up to July 10, 2025 (FR Doc. 2025-08220)."""
    tract = full("own")
    for day, there in ((datetime.date(2025, 7, 10), True), (datetime.date(2025, 7, 11), False)):
        asked = {d.rule.id for d in duties_of(replace(only(tract), day=day), tract, load())}
        assert ("former-federal" in asked) == there
        assert "minimum" in asked


def test_broadcast_alone_asks_for_the_air_on_oregon_forestland():
    """Temperature, humidity and wind are asked for where it is sprayed over leaves (OAR 629-620-0600)."""
    for method, fields in (("foliar", {"wind", "temperature", "humidity"}), ("hack and squirt", set())):
        tract = situation("OR-forest", method=method)
        record = only(tract)
        bare = replace(record, values={**record.values, "wind_m_s": None, "temp_c": None, "humidity_frac": None})
        wanted = next(r for r in load().record_rules if r.id == "OR-forest").wanted
        assert set(lacking(wanted, bare, tract)[0]) == fields


def test_what_is_not_known_is_not_left_out():
    """Nobody has read whether the product is for restricted use: the rules for such are asked as uncertain."""
    found = {
        d.rule.id: d.certain for d in duties_of(only(full("own", restricted="")), full("own", restricted=""), load())
    }
    assert found["WI"] is False
    assert found["minimum"] is True
    none = {d.rule.id for d in duties_of(only(full("own", restricted="no")), full("own", restricted="no"), load())}
    assert "WI" not in none
    unknown = {d.rule.id: d.certain for d in duties_of(only(full("unknown")), full("unknown"), load())}
    assert unknown["federal-commercial"] is False


def test_the_strictest_day_and_the_longest_keeping():
    """Wisconsin: the day itself, three years; Washington keeps for seven (RCW 17.21, from memory)."""
    for state, keep in (("WI", 2029), ("WA", 2033)):
        tract = full("hire", state)
        found = duties_of(only(tract), tract, load())
        assert due_of(found) == datetime.date(2026, 9, 12)
        assert keep_until_of(found) == datetime.date(keep, 9, 12)
    assert years_on(datetime.date(2028, 2, 29), 3) == datetime.date(2031, 3, 1)


def test_one_record_a_product_patch_and_day():
    """Two products in one mix are two records; two patches are two; the same again on one day is one."""
    two = entry("e1", "treated", MORNING, **(FULL | {"product_ml": {"imazapyr-2lb": 10.0, "glyphosate-4lb-wet": 20.0}}))
    again = entry("e2", "treated", f"{DAY}T13:00", **(FULL | {"until": "14:00"}))
    meadow = entry("e3", "treated", MORNING, **(FULL | {"patch": "meadow"}))
    found = records(hollow(entries=(two, again, meadow)))
    assert [r.key for r in found] == [
        "2026-09-12/meadow/imazapyr-2lb", "2026-09-12/rim/glyphosate-4lb-wet", "2026-09-12/rim/imazapyr-2lb",
    ]  # fmt: skip
    last = found[-1]
    assert (last.values["product_ml"], last.values["stems"], last.values["start"], last.values["end"]) == (
        58.0,
        44,
        "09:40",
        "14:00",
    )


def test_a_role_is_no_name():
    """People called by role only leave the field open, and it is known who."""
    tract = full(people=["owner", "crew 1"])
    record = only(tract)
    assert record.roles == ("owner", "crew 1")
    assert "applied" in missing_of(duties_of(record, tract, load()))


def test_calm_needs_no_direction():
    """No wind comes from nowhere."""
    calm = entry("w", "weather", MORNING, wind_m_s=0.0, source="measured")
    assert only(hollow(entries=(entry("e", "treated", MORNING, **FULL), calm))).has("wind")
    some = entry("w", "weather", MORNING, wind_m_s=2.0, source="measured")
    assert not only(hollow(entries=(entry("e", "treated", MORNING, **FULL), some))).has("wind")


def test_done_anyway_is_written_down():
    """A stopped treatment that was done has its record, with the reason."""
    record = only(full(anyway="the jug at hand"))
    assert record.anyway == ("the jug at hand",)


def test_signed_then_corrected():
    """Until it is signed it is mended; afterwards what differs from what was signed is shown beside it."""
    tract = full()
    assert only(tract).signed is None
    signed = entry("s", "signed", f"{DAY}T21:00", day=DAY, name="Ann Example", records=as_signed(records(tract)))
    after = replace(tract, entries=(*tract.entries, signed))
    assert only(after).signed == ("Ann Example", f"{DAY}T21:00")
    assert only(after).since == {}
    fixed = entry("e5", "treated", MORNING, "e2", **(FULL | {"stems": 23}))
    corrected = only(replace(after, entries=(*after.entries, fixed)))
    assert corrected.values["stems"] == 23
    assert set(corrected.since) == {"area", "rate"}
    assert '"stems": 22' in corrected.since["area"]


def test_a_spot_left_open():
    """What became of the rest is known once the batch is accounted for."""
    drawn = [{"product": "imazapyr-2lb", "jug": "jug 1", "ml": 60}]
    mixed = entry("m", "batch mixed", MORNING, batch="b1", mixed_ml=120, drawn=drawn)
    did = entry("e", "treated", MORNING, **FULL)
    assert "leftover" not in only(hollow(entries=(mixed, did))).values
    kept = entry("k", "mix left", f"{DAY}T18:00", what="kept in a labelled bottle", batch="b1", bottle="pint bottle")
    assert only(hollow(entries=(mixed, did, kept))).values["leftover"] == "kept in pint bottle"
