"""The phone's page in a real browser: marks, clock, taking back, lots, a stop, files, looks; without a signal."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from field.phones import Phone, example_with_phones, rows_of
from web.test_looks import RULES

CUT = "autumn olive, Quarry rim: cut stump"
HACK = "tree-of-heaven"


@pytest.fixture(scope="module")
def joined(chromium, tmp_path_factory):
    """An example of its own, which phones may change."""
    with example_with_phones(chromium, tmp_path_factory.mktemp("phones")) as made:
        yield made


@pytest.fixture
def phone(chromium, joined):
    """A phone that has the plan."""
    made = Phone(chromium, joined)
    yield made
    made.close()


def test_it_opens_with_the_plan_and_without_a_signal(phone):
    """Scanned once; then it opens again with the network cut, the word gone from the address."""
    assert "#" not in phone.page.url
    phone.context.set_offline(True)
    phone.page.reload()
    phone.ready()
    phone.choose(CUT)
    assert phone.number() == "1"
    assert phone.page.get_by_role("button", name="EMERGENCY").is_visible()
    phone.press("#emergency")
    said = phone.page.inner_text("main")
    assert "1-800-222-1222" in said and "gravel lane" in said and "DANGER" in said


def test_a_stump_is_cut_and_treated(phone, joined):
    """The clock runs from the cut; Treated closes it with the seconds it waited; both reach the notebook."""
    phone.choose(CUT)
    phone.press("#cut")
    assert phone.number() == "2"
    assert "treat by" in phone.page.inner_text("#clock")
    phone.forward(60)
    phone.press("#treated")
    assert phone.page.inner_text("#clock") == ""
    phone.sent()
    cut, treated = rows_of(joined, phone)
    assert (cut["body"]["what"], treated["body"]["what"]) == ("cut", "treated")
    assert cut["body"]["rows"] == treated["body"]["rows"]
    assert 60 <= treated["body"]["waited_s"] <= 75 and treated["body"]["limit_s"] == 300
    assert treated["body"]["people"] == ["owner"]


def test_late_is_recorded_as_late(phone, joined):
    """The screen says what to do and turns black; Treated still works and is never dropped."""
    phone.choose(CUT)
    phone.press("#cut")
    phone.forward(151)
    assert "half" in phone.page.get_attribute("#card", "class")
    phone.forward(160)
    assert "Out of time: 1. Cut a fresh face, or do as the label says." in phone.page.inner_text("#clock")
    assert phone.page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(0, 0, 0)"
    phone.press("nav [data-tab=day]")
    phone.press("#to-pouch")
    assert "Out of time: 1" in phone.page.inner_text("#pouch-clock")
    phone.press("#wake-first")
    phone.press("#wake-second")
    phone.press("nav [data-tab=work]")
    phone.press("#treated")
    phone.sent()
    late = rows_of(joined, phone)[-1]
    assert late["body"]["waited_s"] > late["body"]["limit_s"]


def test_what_is_marked_can_be_taken_back_skipped_left_out_and_noted(phone, joined):
    """Each by a button; the number comes back."""
    phone.choose(HACK)
    phone.press("#treated")
    assert phone.number() == "2"
    phone.press("#back")
    assert phone.number() == "1"
    phone.press("#skip")
    assert phone.number() == "2"
    phone.press("#missed")
    phone.press("#note")
    phone.page.fill("#note-text", "wasp nest")
    phone.press("#keep-note")
    phone.press("#note")
    phone.press("text=Leave this stem out")
    assert phone.number() == "3"
    phone.sent()
    rows = rows_of(joined, phone)
    assert [row["kind"] for row in rows] == ["marked", "taken back", "noted", "noted", "marked"]
    assert rows[1]["corrects"] == rows[0]["id"]
    assert rows[3]["body"]["text"] == "wasp nest"
    assert rows[4]["body"]["what"] == "missed"


def test_lots_are_cut_and_treated_with_a_count(phone, joined):
    """Nobody taps a hundred times: a lot names its stems, and all that wait are treated with one press."""
    phone.choose(CUT)
    phone.press("nav [data-tab=day]")
    phone.press("button[data-value=lots]")
    phone.press("button[data-value=orange]")
    phone.press("text=+ more")
    phone.press("nav [data-tab=work]")
    assert phone.page.inner_text("#cut") == "LOT CUT: 5"
    phone.press("#cut")
    assert phone.page.inner_text("#treated") == "LOT TREATED: 5"
    phone.press("#treated")
    phone.sent()
    cut, treated = rows_of(joined, phone)
    assert len(cut["body"]["rows"]) == 5 and cut["body"]["flag"] == "orange"
    assert treated["body"]["rows"] == cut["body"]["rows"]


def test_a_stopped_treatment_has_no_treated_button(phone, joined):
    """The reason stands there; what was done all the same is written down with why."""
    phone.choose("glossy buckthorn")
    assert phone.page.locator("#treated").count() == 0
    assert "Stop." in phone.page.inner_text("#card")
    phone.press("#anyway")
    phone.press("#keep-anyway")
    assert phone.page.locator("#why").is_visible()
    phone.page.fill("#why", "the ranger asked for it")
    phone.press("#keep-anyway")
    phone.sent()
    assert rows_of(joined, phone)[-1]["body"]["anyway"] == "the ranger asked for it"


def test_a_clicker_presses_the_filled_button_and_gloves_are_forgiven(phone):
    """Any of its keys; a second press at once, a touch too short and a key held down do nothing."""
    phone.choose(HACK)
    phone.page.evaluate("document.activeElement.blur()")
    phone.page.keyboard.press("PageDown")
    assert phone.settles("2")
    phone.page.keyboard.press("PageDown")
    phone.page.wait_for_timeout(100)
    assert phone.number() == "2"
    phone.forward(1)
    phone.page.click("#treated", delay=10)
    phone.page.wait_for_timeout(100)
    assert phone.number() == "2"
    phone.press("#treated")
    assert phone.settles("3")


def test_a_file_is_carried_there_and_back(chromium, joined):
    """A phone that no notebook reaches: the plan opened as a file, the marks saved as one and read on the computer."""
    carried = Phone(chromium, joined, join=False)
    try:
        assert "No plan on this phone" in carried.page.inner_text("main")
        plan = joined.office.request.get(f"{joined.land}phone/plan.json").body()
        carried.press("nav [data-tab=day]")
        carried.page.set_input_files("#plan-file", {"name": "x.json", "mimeType": "application/json", "buffer": b"{}"})
        carried.page.wait_for_function(
            "() => document.getElementById('waiting')?.textContent.includes('no plan for a phone')"
        )
        carried.page.set_input_files("#plan-file", {"name": "p.json", "mimeType": "application/json", "buffer": plan})
        carried.page.wait_for_function("() => document.body?.innerText.includes('rows loaded')")
        carried.choose(HACK)
        carried.press("#treated")
        assert carried.settles("2")
        carried.press("nav [data-tab=day]")
        with carried.page.expect_download() as found:
            carried.press("#save-file")
        raw = found.value.path().read_bytes()
    finally:
        carried.close()
    page = joined.office.new_page()
    page.goto(f"{joined.land}phone")
    for said in ("1 marks are new", "1 were here already"):
        page.set_input_files("#marks", {"name": "marks.json", "mimeType": "application/json", "buffer": raw})
        page.get_by_role("button", name="Read the marks").click()
        page.get_by_text(said).wait_for()
    page.set_input_files("#marks", {"name": "marks.json", "mimeType": "application/json", "buffer": b"[]"})
    page.get_by_role("button", name="Read the marks").click()
    page.get_by_text("no file with marks").wait_for()
    page.close()


def test_a_photo_is_made_small_and_sent(phone, joined, tmp_path):
    """A large picture ends as a small JPEG that its entry names."""
    from PIL import Image

    Image.effect_noise((3000, 2000), 80).convert("RGB").save(tmp_path / "wood.png")
    phone.choose(HACK)
    phone.press("#note")
    phone.page.set_input_files("#photo", str(tmp_path / "wood.png"))
    phone.press("#keep-note")
    phone.sent(timeout=20_000)
    row = rows_of(joined, phone)[-1]
    answer = joined.office.request.get(f"{joined.land}phone/photo/{row['body']['photo']}.jpg")
    assert answer.ok and len(answer.body()) < 300_000


def test_two_phones_that_differ_are_settled_on_the_computer(chromium, joined):
    """Shown under next step and on the page; one is taken back and stays to be read."""
    pair = [Phone(chromium, joined) for _ in range(2)]
    for one in pair:
        one.choose("callery pear")
        one.press("#treated")
        one.sent()
        one.close()
    page = joined.office.new_page()
    page.goto(f"{joined.land}phone")
    shown = page.locator("#unlike ~ form fieldset:has(button[name=take-back])").count()
    assert shown >= 1  # other phones of these tests marked stems twice as well
    page.get_by_role("button", name="This one was wrong").last.click()
    page.wait_for_function(
        "(n) => document.querySelectorAll('#unlike ~ form fieldset:has(button[name=take-back])').length === n - 1",
        arg=shown,
    )
    page.close()


def test_the_day_is_written_down_from_the_marks(chromium, joined):
    """After names the day; its form stands filled with what was treated."""
    one = Phone(chromium, joined)
    one.choose("multiflora rose")
    for _ in range(3):
        one.press("#treated")
    one.sent()
    day = one.page.evaluate(
        "(() => { const d = new Date(); return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`; })()"
    )
    one.close()
    page = joined.office.new_page()
    page.goto(f"{joined.land}after")
    page.get_by_role("link", name=f"Write down {day}").click()
    page.wait_for_url("**/after/write?marked=*")
    ticked = page.evaluate("[...document.querySelectorAll('textarea, input[type=text]')].map(e => e.value)")
    assert "1-3 treated" in ticked and day in ticked
    page.close()


STATES = {
    "work": lambda p: p.choose(HACK), "clock": lambda p: (p.choose(CUT), p.press("#cut")),
    "half": lambda p: (p.choose(CUT), p.press("#cut"), p.forward(160)),
    "over": lambda p: (p.choose(CUT), p.press("#cut"), p.forward(320)),
    "stop": lambda p: p.choose("glossy"), "list": lambda p: (p.choose(HACK), p.press("nav [data-tab=list]")),
    "map": lambda p: (p.choose(HACK), p.press("nav [data-tab=map]")), "day": lambda p: p.press("nav [data-tab=day]"),
    "emergency": lambda p: p.press("#emergency"), "note": lambda p: (p.choose(HACK), p.press("#note")),
    "anyway": lambda p: (p.choose("glossy"), p.press("#anyway")),
    "waiting": lambda p: (p.choose(CUT), p.press("#cut"), p.press("#waiting-stems")),
    "pouch": lambda p: (p.press("nav [data-tab=day]"), p.press("#to-pouch")),
}  # fmt: skip
MEASURE = """() => [...document.querySelectorAll('button, a.button, label.button, textarea')].filter(e => e.offsetParent)
  .map(e => { const r = e.getBoundingClientRect(); return [e.textContent.slice(0, 30), r.width, r.height]; })
  .filter(([, w, h]) => w < 44 || h < 44)"""
SMALL = """() => [...document.querySelectorAll('body *')].filter(e => e.offsetParent && e.childNodes.length &&
  [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()) && parseFloat(getComputedStyle(e).fontSize) < 18
  && !e.closest('.quiet, svg')).map(e => e.textContent.slice(0, 40))"""


@pytest.mark.parametrize("look", ["sun", "dusk", "forced"])
def test_every_state_fits_and_can_be_read(chromium, joined, look):
    """At 320 and 360 px nothing hangs over, no target is under 44 px (the two main ones 132 high), no text under
    18 px, and axe finds nothing, contrasts of 7 : 1 among them."""
    options = {"forced_colors": "active"} if look == "forced" else {}
    one = Phone(chromium, joined, **options)
    try:
        if look == "dusk":
            one.press("nav [data-tab=day]")
            one.press("button[data-value=dusk]")
        for name, reach in STATES.items():
            reach(one)
            for width in (320, 360):
                one.page.set_viewport_size({"width": width, "height": 616})
                assert one.page.evaluate("document.documentElement.scrollWidth") <= width, name
                assert one.page.evaluate(MEASURE) == [], name
                assert one.page.evaluate(SMALL) == [], name
                for main in ("#cut", "#treated"):
                    if one.page.locator(main).count():
                        assert one.page.locator(main).bounding_box()["height"] >= 132
                        assert one.page.locator(main).bounding_box()["y"] + 132 <= 616, name
            more = {} if look == "forced" else {"rules": {"color-contrast-enhanced": {"enabled": True}}}
            wrong = Axe().run(one.page, options={"runOnly": RULES, **more})
            assert wrong.response["violations"] == [], (name, wrong.generate_report())
            if name == "pouch":
                one.press("#wake-first")
                one.press("#wake-second")
            while one.page.locator("#back:not([disabled])").count() and name in ("clock", "half", "over", "waiting"):
                one.press("#back")
            if name == "waiting":
                one.press("nav [data-tab=work]")
                one.press("#back")
    finally:
        one.close()


def test_every_act_is_reached_by_tab_in_order(phone):
    """Cut, Treated and the rest without a gesture and without a pointer; focus is to be seen."""
    phone.choose(CUT)
    phone.page.evaluate("document.activeElement.blur()")
    seen = []
    for _ in range(14):
        phone.page.keyboard.press("Tab")
        seen.append(phone.page.evaluate("document.activeElement.id || document.activeElement.dataset.tab || ''"))
    for wanted in ("waiting", "emergency", "work", "list", "map", "day", "skip", "missed", "note", "cut", "treated"):
        assert wanted in seen
    phone.page.focus("#cut")
    phone.page.keyboard.press("Enter")
    assert phone.settles("2")
