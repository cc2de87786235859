"""After: a day written down, its records, what is missing, signed, corrected, taken out; jugs and bottles."""

import csv
import io
import json
import re

import pypdfium2
import pytest

from notebook.some import name
from stemward.ledger import batches, jugs
from stemward.notebook import worked
from stemward.web import clock

DAY = "2026-10-10"
RIM = {
    "plan": "now", "day": DAY, "begun": "9:40", "ended": "12:15", "person_h": "5", "people": "Ann Example, Ben Example",
    "ticks-t2": "1-30 treated\n31-33 missed", "mixed-m2": "5 fl oz", "left-m2": "1 fl oz",
    "fate-m2": "kept in a labelled bottle", "bottle-m2": "pint", "wind": "3 mph", "wind_from": "west",
    "temperature": "62", "humidity": "55", "source": "measured", "place": "lane gate",
}  # fmt: skip


@pytest.fixture(autouse=True)
def _today(monkeypatch):
    """The example's day."""
    monkeypatch.setenv("STEMWARD_TODAY", DAY)


def write(client, tract, **changes):
    """Send the evening entry."""
    body = {"command": name(), **RIM, **changes}
    return client.post(f"/land/{tract}/after/write", {k: v for k, v in body.items() if v is not None})


def words(response):
    """A page as one line of words."""
    text = response.content.decode()
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text[text.index("<main") :]))


def step(client, tract):
    """The next step, once the plan is worked out."""
    land = worked.known(tract).land
    worked.plan_of(tract, clock.today(land))
    return client.get(f"/land/{tract}/step").content.decode()


def entries(tract):
    """Entries of the tract that were not there at first."""
    return [e for e in worked.known(tract).land.entries if e.at.startswith("2026") and len(e.id) > 8]


def test_a_day_becomes_a_record(client, hollow):
    """Ticks, mix and weather come to entries; the record holds what follows from them."""
    answer = write(client, hollow)
    assert answer.status_code == 302
    assert [e.kind for e in entries(hollow)] == ["batch mixed", "marked", "treated", "mix left", "weather", "work"]
    page = words(client.get(answer["Location"]))
    for said in ("Nothing is missing", "30 stems", "Ann Example, Ben Example", "3 mph from west, measured", "62 °F",
                 "09:40", "12:15", "kept in pint", "QH-0003", "12 hours after the end", "lane gate"):  # fmt: skip
        assert said in page


def test_stems_treated_leave_the_plan_and_the_jug_is_lighter(client, hollow):
    """What was done changes what is planned next and what is on the shelf."""
    write(client, hollow)
    land = worked.known(hollow).land
    # 5 fl oz of mix at 50 % is 2.5 fl oz of product, of 3 fl oz that were left: 0.5 fl oz = 14.787 mL.
    assert jugs(land.entries, land.shelf)[0][("imazapyr-2lb", "jug 1")].left_ul == pytest.approx(14_787, abs=2)
    plan = worked.plan_of(hollow, clock.today(land))
    (item,) = [t for t in plan["treatments"] if t["species"] == "Ailanthus altissima"]
    assert item["stems"] == 4
    assert sum(b.left_ul for b in batches(land.entries).values() if b.day == DAY) == pytest.approx(29_574, abs=2)


def test_the_same_day_sent_twice_is_written_once(client, hollow):
    """A second click under one command writes nothing more."""
    body = {"command": name(), **RIM}
    client.post(f"/land/{hollow}/after/write", body)
    before = len(entries(hollow))
    client.post(f"/land/{hollow}/after/write", body)
    assert len(entries(hollow)) == before


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"day": "2026-10-11"}, "still to come"),
        ({"day": "soon"}, "Day: not understood: soon"),
        ({"begun": "25:00"}, "Begun: not understood"),
        ({"begun": "13:00"}, "before it began"),
        ({"ticks-t2": "1-99 treated"}, "is not on this sheet, which has 1 to 34"),
        ({"ticks-t2": "most of them"}, "Line 1: Not understood: most of them"),
        ({"ticks-t2": ""}, "Nothing is ticked"),
        ({"mixed-m2": ""}, "How much was mixed with Example imazapyr 2 lb?"),
        ({"mixed-m2": "a bottle"}, "Mixed with Example imazapyr 2 lb: Not understood: a bottle"),
        ({"left-m2": "9 fl oz"}, "More is left of the mix"),
        ({"wind": "breezy"}, "Wind: Not understood: breezy"),
    ],
)
def test_what_is_odd_is_told_and_what_was_typed_stays(client, hollow, change, said):
    """A sentence, nothing written, and the form as it was."""
    answer = write(client, hollow, **change)
    page = words(answer)
    assert answer.status_code == 422
    assert said in page
    assert "Nothing was changed" in page
    assert entries(hollow) == []
    assert 'value="Ann Example, Ben Example"' in answer.content.decode()


def test_more_than_the_jug_held_is_asked_first(client, hollow):
    """3 fl oz were left; a mix that takes 4 is asked about, and written down once agreed to."""
    answer = write(client, hollow, **{"mixed-m2": "8 fl oz"})
    assert answer.status_code == 422
    assert "4 fl oz were drawn, and 3 fl oz were there" in words(answer)
    assert entries(hollow) == []
    agreed = write(client, hollow, **{"mixed-m2": "8 fl oz", "agree-draw imazapyr-2lb jug 1": "yes"})
    assert agreed.status_code == 302
    assert "1 fl oz more was drawn than was known to be there" in words(client.get(f"/land/{hollow}/shelf"))


def test_done_anyway(client, hollow):
    """The meadow's way is stopped by the plan; it can be written down, with the reason."""
    sheet = {"ticks-t2": "", "mixed-m2": "", "left-m2": "", "fate-m2": "", "ticks-t1": "1-10 t", "mixed-m1": "1 fl oz",
             "fate-m1": "all of it was used", "anyway-t1": "the only jug at hand"}  # fmt: skip
    answer = write(client, hollow, **sheet)
    assert answer.status_code == 302
    assert "Done anyway: the only jug at hand." in words(client.get(answer["Location"]))


def test_filled_in_signed_and_corrected(client, hollow):
    """What is missing is filled in; signed; corrected, and the correction stands beside it; nothing is lost."""
    day = write(client, hollow, people="owner")["Location"]
    assert "Who applied it, full names" in words(client.get(day))
    assert "1 to fill in" in words(client.get(day))
    client.post(day, {"command": name(), "value-applied": "Ann Example"})
    assert "Nothing is missing" in words(client.get(day))
    assert client.post(day, {"command": name(), "sign": "1", "name": " "}).status_code == 422
    client.post(day, {"command": name(), "sign": "1", "name": "Ann Example"})
    assert "Signed by Ann Example." in words(client.get(day))
    (treated,) = [e for e in entries(hollow) if e.kind == "treated"]
    wrong = client.get(f"/land/{hollow}/after/correct/{treated.id}")
    assert wrong.status_code == 200
    rows = ", ".join(list(treated.body["rows"])[:28])
    body = {"command": name(), "why": "counted again", "say-rows": rows, "at-time": "09:40"}
    assert client.post(f"/land/{hollow}/after/correct/{treated.id}", {**body, "why": ""}).status_code == 422
    client.post(f"/land/{hollow}/after/correct/{treated.id}", body)
    page = words(client.get(day))
    assert "corrected since" in page
    assert "28 stems" in page
    assert "(otherwise when it was signed)" in page
    assert "counted again" in page
    assert sum(e.kind == "treated" for e in entries(hollow)) == 2
    assert client.get(f"/land/{hollow}/after/correct/{treated.id}").status_code == 404


def corrected(client, tract, kind, **said):
    """Send a correction of the day's only line of a kind; the answer and what stands there now."""
    (was,) = [e for e in entries(tract) if e.kind == kind]
    body = {"command": name(), "why": "looked again", **said}
    answer = client.post(f"/land/{tract}/after/correct/{was.id}", body)
    return answer, [e for e in entries(tract) if e.kind == kind][-1]


def test_a_corrected_amount_takes_product_and_acid_with_it(client, hollow):
    """4 fl oz of mix at 50 %, 240 g acid equivalent to the litre; corrected to 2 fl oz, the rest follows."""
    write(client, hollow)
    (was,) = [e for e in entries(hollow) if e.kind == "treated"]
    answer, now = corrected(client, hollow, "treated", **{"say-mix_ml": "2 fl oz", "at-time": "09:40"})
    assert answer.status_code == 302
    # 1 US fluid ounce is 29.5735 mL (NIST Special Publication 811, 2008).
    assert now.body["mix_ml"] == pytest.approx(2 * 29.5735, abs=0.01)
    assert now.body["product_ml"]["imazapyr-2lb"] == pytest.approx(29.5735, abs=0.01)
    assert now.body["ae_g"]["imazapyr"] == pytest.approx(was.body["ae_g"]["imazapyr"] / 2, rel=1e-4)
    assert now.body["rows"] == was.body["rows"]


def test_a_correction_as_it_stands_there_changes_no_figure(client, hollow):
    """The form sent as it was shown, but for the time, keeps every figure to the last digit."""
    write(client, hollow)
    (was,) = [e for e in entries(hollow) if e.kind == "treated"]
    page = client.get(f"/land/{hollow}/after/correct/{was.id}").content.decode()
    shown = {f: re.search(f'name="say-{f}" value="([^"]*)"', page)[1] for f in ("mix_ml", "concentration_frac")}
    assert shown == {"mix_ml": "4 fl oz", "concentration_frac": "50 %"}
    same = {f"say-{f}": text for f, text in shown.items()}
    assert corrected(client, hollow, "treated", **same, **{"at-time": "09:40"})[0].status_code == 422
    _, now = corrected(client, hollow, "treated", **same, **{"at-time": "09:50"})
    assert now.at == f"{DAY}T09:50"
    assert {k: v for k, v in now.body.items() if k != "why"} == was.body


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"say-rows": "a1, nosuch"}, "Stems: nosuch is no stem here"),
        ({"say-rows": ""}, "something has to stand there"),
        ({"say-mix_ml": "a bottle"}, "Mix used: Not understood: a bottle"),
        ({"at-time": "25:00"}, "Time: not understood"),
    ],
)
def test_a_correction_that_is_not_understood_is_told(client, hollow, said, told):
    """A sentence, and nothing written."""
    write(client, hollow)
    answer, _ = corrected(client, hollow, "treated", **said)
    assert answer.status_code == 422
    assert told in words(answer)
    assert sum(e.kind == "treated" for e in entries(hollow)) == 1


def test_sheets_numbered_anew_meanwhile_are_told(client, hollow):
    """Numbers typed against one list are not taken for another; looked over and sent again, they are."""
    page = client.get(f"/land/{hollow}/after/write").content.decode()
    if 'name="sheets"' not in page:
        worked.plan_of(hollow, clock.today(worked.known(hollow).land))
        page = client.get(f"/land/{hollow}/after/write").content.decode()
    numbers = re.search('name="sheets" value="([^"]+)"', page)[1]
    write(client, hollow, day="2026-10-09", **{"ticks-t2": "1-4 treated", "sheets": numbers})
    again = write(client, hollow, sheets=numbers)
    assert again.status_code == 422
    assert "numbered anew" in words(again)
    assert {e.at[:10] for e in entries(hollow)} == {"2026-10-09"}
    now = re.search('name="sheets" value="([^"]+)"', again.content.decode())[1]
    assert now != numbers
    agreed = {"ticks-t2": "1-30 treated", "agree-draw imazapyr-2lb jug 1": "yes"}
    assert write(client, hollow, sheets=now, **agreed).status_code == 302


def test_taken_back(client, hollow):
    """What did not happen is taken back with a reason, and what it drew is in the jug again."""
    write(client, hollow)
    (mixed,) = [e for e in entries(hollow) if e.kind == "batch mixed"]
    client.post(f"/land/{hollow}/after/correct/{mixed.id}", {"command": name(), "why": "typed twice", "take-back": "1"})
    land = worked.known(hollow).land
    assert jugs(land.entries, land.shelf)[0][("imazapyr-2lb", "jug 1")].left_ul == pytest.approx(88_721, abs=2)


def test_records_are_taken_out(client, hollow):
    """As a table, as data, and on paper; the same records in each."""
    write(client, hollow)
    base = f"/land/{hollow}/after/records."
    rows = list(csv.DictReader(io.StringIO(client.get(base + "csv").content.decode())))
    data = json.loads(client.get(base + "json").content)["records"]
    pdf = pypdfium2.PdfDocument(client.get(base + "pdf").content)
    text = "".join(page.get_textpage().get_text_range() for page in pdf)
    assert len(rows) == len(data) == len(pdf) == 4
    assert rows[-1]["Product"] == data[-1]["values"]["product_name"] == "Example imazapyr 2 lb"
    assert rows[-1]["Area or plants treated"] == "30 stems"
    assert "Example imazapyr 2 lb, Quarry rim, 2026-10-10" in text.replace("\r\n", " ")
    one = json.loads(client.get(f"{base}json?day={DAY}").content)["records"]
    assert [r["key"] for r in one] == [f"{DAY}/rim/imazapyr-2lb"]
    assert client.get(base + "xml").status_code == 404


def test_a_cell_is_no_formula(client, hollow):
    """What a person typed is no formula in a spreadsheet."""
    write(client, hollow, people="=HYPERLINK(1)")
    rows = list(csv.DictReader(io.StringIO(client.get(f"/land/{hollow}/after/records.csv").content.decode())))
    assert rows[-1]["Who applied it, full names"] == "'=HYPERLINK(1)"


def test_the_rest_of_a_mix_is_followed(client, hollow):
    """Not known yet: the next step asks for it the day after; accounted for, it is quiet."""
    write(client, hollow, day="2026-10-08", **{"fate-m2": "not known yet", "left-m2": "1 fl oz"})
    assert "Account for 1 fl oz of mix made 2026-10-08" in step(client, hollow)
    page = words(client.get(f"/land/{hollow}/after"))
    assert "1 fl oz of the mix of 2026-10-08 is not accounted for." in page
    (batch,) = [b for b in batches(worked.known(hollow).land.entries) if b.startswith("2026-10-08")]
    refused = client.post(f"/land/{hollow}/after/rest", {"command": name(), "batch": batch, "what": "drunk"})
    assert refused.status_code == 409
    client.post(f"/land/{hollow}/after/rest", {"command": name(), "batch": batch, "what": "discarded"})
    assert "not accounted for" not in words(client.get(f"/land/{hollow}/after"))
    assert "Account for" not in step(client, hollow)


def test_an_incomplete_record_is_the_next_step(client, hollow):
    """For hire in this state the record is due the same day."""
    client.post(f"/land/{hollow}/about", {"command": name(), "who": "hire"})
    write(client, hollow, people="owner")
    said = step(client, hollow)
    assert "Finish the record of 2026-10-10 today" in said


def test_cut_and_not_treated_comes_first(client, hollow):
    """Stumps that nobody treated are asked about before anything else, and become stumps in the plan."""
    write(client, hollow, **{"ticks-t2": "", "mixed-m2": "", "left-m2": "", "fate-m2": "", "ticks-t3": "1-4 cut"})
    assert "Say what became of 4 stems cut on Quarry rim" in step(client, hollow)


def test_sheets_of_a_printed_plan_keep_their_numbers(client, hollow):
    """After a day's work the next plan numbers anew; the printed sheets do not."""
    client.post(f"/land/{hollow}/packet.pdf", {"command": name(), "paper": "letter"})
    code = worked.known(hollow).land.entries[-1].body["code"]
    write(client, hollow, plan=code)
    answer = client.post(
        f"/land/{hollow}/after/write?plan={code}",
        {
            "command": name(),
            **RIM,
            "plan": code,
            "ticks-t2": "34 treated",
            "mixed-m2": "",
            "left-m2": "",
            "before-m2": f"{DAY} m2",
        },
    )
    assert answer.status_code == 302
    done = {stem for e in entries(hollow) if e.kind == "treated" for stem in e.body["rows"]}
    assert len(done) == 31
    assert "a34" in done


def test_ticks_are_counted_while_they_are_typed(client, hollow):
    """Counts, or what is not understood."""
    said = client.post(f"/land/{hollow}/after/ticks/t2", {"plan": "now", "ticks-t2": "1-5 t; 6 m"}).content.decode()
    assert "5 treated" in said
    assert "1 missed" in said
    said = client.post(f"/land/{hollow}/after/ticks/t2", {"plan": "now", "ticks-t2": "99 t"}).content.decode()
    assert "not on this sheet" in said


def test_jugs_are_opened_spilled_and_looked_at(client, hollow):
    """Each is written down; a spill beyond what was there is asked about; a rinse is given its water."""
    jug = f"/land/{hollow}/shelf/imazapyr-2lb/jug"

    def did(**body):
        return client.post(jug, {"command": name(), "jug": "jug 1", **body})

    assert did(event="spilled", amount="1 fl oz").status_code == 302
    assert "2 fl oz" in words(client.get(jug))
    assert did(event="spilled", amount="1 gal").status_code == 422
    assert did(event="spilled", amount="").status_code == 422
    assert did(event="looked at", amount="1.5 fl oz").status_code == 302
    assert "14.8 mL less was found than was reckoned" in words(client.get(jug))
    assert did(event="opened", amount="", jug="jug 2").status_code == 302
    # Three rinses of a quarter of 1 qt: 24 fl oz.
    assert "jug 1 takes 24 fl oz in all" in words(client.get(jug))


def test_bottle_labels_of_the_plan_and_of_a_batch(client, hollow):
    """Printed in a size that can be read; a size that cannot is refused with those that can."""
    write(client, hollow)
    (batch,) = [b for b in batches(worked.known(hollow).land.entries) if b.startswith(DAY)]
    assert "CAUTION" in words(client.get(f"/land/{hollow}/labels?batch={batch}"))
    good = client.get(f"/land/{hollow}/labels.pdf", {"size": "4 by 5 in", "batch": batch})
    assert good.content.startswith(b"%PDF")
    small = client.get(f"/land/{hollow}/labels.pdf", {"size": "2 5/8 by 1 in", "batch": batch})
    assert small.status_code == 422
    assert "Sizes that do: 5 by 7 in" in words(small)
    assert client.get(f"/land/{hollow}/labels.pdf", {"size": "4 by 5 in", "batch": "none"}).status_code == 404


def test_permits_and_work_begun_before_they_were_granted(client, hollow):
    """Asked for, granted; work between the two is said; a step without a name is refused."""
    page = f"/land/{hollow}/permits"
    step = {"what": "cost share", "name": "brush grant", "patch": "rim"}
    assert (
        client.post(page, {"command": name(), **step, "name": "", "step": "asked for", "day": DAY}).status_code == 422
    )
    client.post(page, {"command": name(), **step, "step": "asked for", "day": "2026-09-01"})
    write(client, hollow, day="2026-09-05")
    said = "brush grant: work on Quarry rim began on 2026-09-05, before it was granted"
    assert said in words(client.get(page))
    worked.plan_of(hollow, clock.today(worked.known(hollow).land))
    assert said in words(client.get(f"/land/{hollow}/day"))
    client.post(page, {"command": name(), **step, "step": "granted", "day": "2026-09-10", "until": "2027-06-30"})
    shown = words(client.get(page))
    assert "holds today" in shown
    assert said in shown


def test_a_permit_that_is_written_down_is_no_open_question(client, hollow):
    """The meadow's water permit is asked about until it is granted."""
    page = f"/land/{hollow}/permits"
    land = worked.known(hollow).land

    def said():
        plan = worked.plan_of(hollow, clock.today(land))
        return [
            f["message"] for f in plan["findings"] if f["check"] == "water-permit" and f["where"]["patch"] == "meadow"
        ]

    assert said() == ["water-permit.rule"]
    client.post(page, {"command": name(), "what": "permit for work at water", "name": "shore permit", "patch": "meadow",
                       "step": "granted", "day": "2026-09-10"})  # fmt: skip
    land = worked.known(hollow).land
    assert said() == ["water-permit.granted"]


def test_sheets_of_the_day(client, hollow):
    """Emergency, sign, notice, cards; every page has its words."""
    pdf = pypdfium2.PdfDocument(client.get(f"/land/{hollow}/day.pdf").content)
    text = [page.get_textpage().get_text_range() for page in pdf]
    assert "1-800-222-1222" in text[0]
    assert any("Herbicide in use" in t for t in text)
    assert any("Notice: herbicide will be used near you" in t for t in text)
    # 18 mL in 20 squirts is 0.9 mL.
    assert any("18 mL" in t and "0.9 mL" in t and "What 20 stems take" in t for t in text)


def test_what_was_in_no_plan_is_written_down_too(client, hollow):
    """Another plant, way and strength than any plan holds: the record says so, and the year's limit counts it."""
    page = f"/land/{hollow}/after/other"
    body = {
        "day": DAY, "begun": "9", "ended": "10", "people": "Ann Example", "patch": "yard", "plants": "black locust",
        "stems": "12", "how": "hack and squirt", "tool": "squirt bottle", "jug": "glyphosate-4lb-wet|jug 1",
        "strength": "100 %", "carrier": "undiluted", "mixed": "2 fl oz", "fate": "all of it was used",
        "area": "0.1 acre", "why": "they stood in the fence",
    }  # fmt: skip
    for wrong in ({"plants": "blue tree"}, {"stems": "some"}, {"patch": ""}, {"strength": ""}, {"mixed": ""}):
        assert client.post(page, {"command": name(), **body, **wrong}).status_code == 422
    assert entries(hollow) == []
    answer = client.post(page, {"command": name(), **body})
    assert answer.status_code == 302
    said = words(client.get(answer["Location"]))
    for part in ("Done anyway: it was in no plan; they stood in the fence", "12 stems", "0.1 acres", "black locust"):
        assert part in said
    (treated,) = [e for e in entries(hollow) if e.kind == "treated"]
    # 2 fl oz of 4 lb ae/gal undiluted: 59.147 mL x 479.306 g/L.
    assert treated.body["ae_g"]["glyphosate"] == pytest.approx(28.35, abs=0.01)
    assert "rows" not in treated.body


def test_the_area_treated_stands_in_the_record(client, hollow):
    """Written where the record asks for it."""
    day = write(client, hollow, **{"area-t2": "0.25 acre"})["Location"]
    assert "0.25 acres; 30 stems" in words(client.get(day))
