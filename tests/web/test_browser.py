"""A real browser: a first plan in few steps, by mouse and by keys; drawing, the sheet, what-if, quitting."""

import io
import sys

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import expect

from web.conftest import opened
from web.walker import Keys, Walker

MOST_STEPS = 60
STEMS = b"Tag,DBH,x,y\n" + b"".join(
    b"t%d,%d 1/4,%d,%d\n" % (n, 1 + n % 3, 400 + 10 * (n % 8), 10 * (n // 8)) for n in range(40)
)


def test_a_first_plan_from_an_empty_notebook_to_paper(page, capsys):
    """From the opening page to a printed, checked plan for 40 imported stems in 60 interactions or fewer."""
    walker = Walker(page)
    walker.click("Plan my", role="link")
    walker.type("State", "WI")
    walker.click("Next")
    walker.tick("Mine or my family's; we do it")
    walker.click("Next")
    walker.type("Name it", "Back fence")
    walker.tick("Woods")
    page.get_by_role("group", name="water").get_by_label("No", exact=True).check()
    walker.count += 1
    walker.click("Next")
    walker.type("Its name", "glossy buckthorn")
    walker.tick("Certain, I know it")
    walker.click("Next")
    walker.click("Choose a file", role="link")
    walker.file("#file", "stems.csv", STEMS)
    walker.click("See its first rows")
    walker.click("Bring them in")
    page.get_by_role("heading", name="40 brought in, 0 left out").wait_for()
    walker.click("Go on", role="link")
    walker.tick("Trees I want to keep")
    walker.type("How far: Trees I want to keep", "40 ft")
    walker.type("Which plant: Trees I want to keep", "bur oak")
    walker.click("Next")
    walker.choose("Ingredient and its form", "glyphosate|salt")
    walker.type("Pounds of acid equivalent", "4 lb ae/gal")
    walker.type("Number after EPA", "1234-56")
    walker.type("A full jug holds", "1 gal")
    walker.type("Left in it", "1/2 gal")
    walker.click("Next")
    walker.tick("a 5 mL syringe with 0.2 mL marks")
    walker.tick("an 8 fl oz cup with half-ounce marks")
    walker.click("Next")
    page.get_by_role("heading", name="Ways to treat 40 glossy buckthorn").wait_for()
    walker.click("Take this way: Cut stump, glyphosate")
    page.get_by_text("Chosen:").first.wait_for()
    page.locator(".stepped").wait_for()
    walker.click("Read them", role="link")
    page.get_by_role("heading", name="Read the label of").wait_for()
    read_label(walker)
    walker.click("Keep what I typed")
    page.goto(page.url.partition("shelf")[0] + "packet")  # by the bar: Plan, then the packet
    walker.count += 2
    page.get_by_role("button", name="Print the packet").wait_for()
    with page.expect_popup() as popup:
        walker.click("Print the packet")
    popup.value.close()
    with capsys.disabled():
        sys.stdout.write(f"\nfirst plan: {walker.count} interactions\n")
    assert walker.count <= MOST_STEPS
    page.reload()
    assert page.get_by_text("was printed, and nothing is different since").count() == 1


def read_label(walker: Walker) -> None:
    """The facts that decide a cut-stump plan, typed from an invented label."""
    page = walker.page
    walker.type("Page or pages looked at", "1-12")
    walker.tick("Yes, I looked")
    for group, choice in (
        ("Kinds of place the label names", "Woods"),
        ("Ways of treating the label names", "cut stump"),
    ):
        page.get_by_role("group", name=group, exact=True).get_by_label(choice, exact=True).check()
        walker.count += 1
    for label, words in (
        ("Number after EPA", "1234-56"),
        ("Strongest mix it allows", "100 %"),
        ("Hours without rain", "6 h"),
        ("Longest time from cut", "5 min"),
    ):
        walker.type(label, words)


@pytest.fixture
def tab(page):
    """Keys on a page."""
    return Keys(page)


def test_a_plan_with_keys_alone(page, tab):
    """The whole of a small plan, counted stems, without a mouse; the focus is always seen."""
    tab.go("Plan my")
    tab.type("State", "WI")
    tab.go("Next")
    tab.to("Mine or my")
    tab.press("Space")
    tab.go("Next")
    tab.type("Name it", "Hedge")
    tab.to("Woods")
    tab.press("Space")
    tab.go("Next")
    tab.type("Its name", "red maple")
    tab.go("Next")
    tab.type("under 1 in", "12")
    tab.type("1 to 3 in", "5")
    tab.go("Next")
    tab.to("None that I know of")
    tab.press("Space")
    tab.go("Next")
    tab.to("Ingredient and its form")
    page.keyboard.type("glyphosate, salt")
    tab.type("Pounds of acid", "4 lb ae/gal")
    tab.go("Next")
    tab.go("Next")
    page.get_by_role("heading", name="Ways to treat 17 red maple").wait_for()
    tab.go("Take this way")
    page.get_by_text("Chosen:").first.wait_for()
    tab.to("Why")
    tab.press("Enter")
    assert page.get_by_text("The rule").count() or page.get_by_text("Chosen by you").count()
    page.keyboard.press("Control+z")
    page.get_by_text("Not chosen yet").wait_for()


def test_a_patch_is_drawn_by_mouse_by_keys_and_by_paces(page, tab):
    """Three ways to the same kind of outline; a square of 40 paces has 0.23 acres and closes."""
    page.get_by_role("link", name="Plan my").click()
    page.get_by_role("button", name="Skip").click()
    page.goto(page.url.partition("first")[0])
    page.get_by_role("button", name="Draw a patch").click()
    canvas = page.locator("canvas")
    for x, y in ((100, 100), (300, 100), (300, 300), (100, 300)):
        canvas.click(position={"x": x, "y": y})
    page.get_by_role("button", name="Finish").click()
    page.get_by_text("Kept:").wait_for()

    page.get_by_role("button", name="Draw a patch").focus()
    tab.press("Enter")
    for _ in range(12):
        tab.press("Shift+ArrowRight")
    tab.press("Enter")
    for key in ("ArrowRight", "ArrowUp", "ArrowLeft"):
        for _ in range(5):
            tab.press(f"Shift+{key}")
        tab.press("Enter")
    tab.press("c")
    page.get_by_text("Kept: 0.057 acres").wait_for()  # 50 ft by 50 ft: 2500 / 43560

    page.get_by_role("button", name="Draw a patch").click()
    for bearing in ("0", "90", "180", "270"):
        page.get_by_label("Degrees from north").fill(bearing)
        page.get_by_label("Paces", exact=True).fill("40")
        page.get_by_role("button", name="Add this corner").click()
    page.get_by_text("0.23 acres; 0 ft from the first corner").wait_for()  # 100 ft by 100 ft: 10000 / 43560
    page.get_by_role("button", name="Finish").click()
    page.get_by_text("Kept: 0.23 acres").wait_for()
    page.reload()
    assert page.locator("h2 a", has_text="Patch").count() == 3


def test_a_refused_drawing_stays(page):
    """An outline that crosses itself is refused with a sentence and is still there to be mended."""
    page.get_by_role("link", name="Plan my").click()
    page.get_by_role("button", name="Skip").click()
    page.goto(page.url.partition("first")[0])
    page.get_by_role("button", name="Draw a patch").click()
    for x, y in ((100, 100), (300, 300), (300, 100), (100, 250)):
        page.locator("canvas").click(position={"x": x, "y": y})
    page.get_by_role("button", name="Finish").click()
    page.get_by_text("crosses itself").wait_for()
    assert page.evaluate("document.querySelector('.land').drawingOfLand.drawing.corners.length") == 4
    page.keyboard.press("Tab")
    page.locator("canvas").focus()
    page.keyboard.press("Backspace")
    page.get_by_role("button", name="Finish").click()
    page.get_by_text("Kept:").wait_for()


def test_stems_are_edited_as_a_sheet(page, example):
    """Typing, a pasted block that makes new rows, undo, a refused cell that keeps what was typed."""
    page.goto(example + "stems")
    page.get_by_text("336 stems.").wait_for()
    cell = page.locator('[data-row="0"][data-column="6"]')
    cell.click()
    page.keyboard.type("3 1/2")
    page.keyboard.press("Enter")
    page.get_by_text("Saved.").wait_for()
    assert cell.text_content() == "3 1/2"

    page.keyboard.press("Control+z")
    expect(cell).to_have_text("2", timeout=15_000)

    cell.click()
    page.keyboard.type("thick")
    page.keyboard.press("Enter")
    page.get_by_role("alert").filter(has_text="Not understood: thick").wait_for()
    assert cell.text_content() == "thick"

    page.locator('[data-row="1"][data-column="6"]').click()
    paste(page, "4\t\n5\t\n6\t")
    expect(page.locator('[data-row="3"][data-column="6"]')).to_have_text("6")

    page.keyboard.press("Control+End")
    page.keyboard.press("Home")
    paste(page, "\n".join(f"new{n}\tmeadow\tglossy buckthorn\t{150 + n}\t60\t\t2\tstump\t1" for n in range(4)))
    page.get_by_text("340 stems. Saved.").wait_for()
    page.keyboard.press("Control+z")
    # Undo loads the page again, so that it says how many there are and not that they were saved.
    page.get_by_text("336 stems.").wait_for()


def paste(page, text: str) -> None:
    """Paste as a spreadsheet does."""
    page.evaluate(
        """(text) => { const data = new DataTransfer(); data.setData('text/plain', text);
        const what = {clipboardData: data, bubbles: true, cancelable: true};
        document.activeElement.dispatchEvent(new ClipboardEvent('paste', what)); }""",
        text,
    )


def test_what_if_is_shown_without_leaving_the_page(page, example):
    """Another strength shows was and is in place."""
    page.goto(example + "ways/slope/Acer rubrum/standing")
    page.get_by_label("Strength").fill("25 %")
    page.get_by_label("Strength").press("Tab")
    page.locator("#tried table").wait_for()
    assert page.locator("#tried .was").count() >= 1


def test_land_of_twenty_thousand_stems_is_drawn_and_picked(page, example):
    """Twenty thousand stems come from the server's address as a stand-in, are drawn once a frame, and picked."""
    body = {
        "patches": [{"id": "a", "name": "A", "rings": [[[0, 0], [1000, 0], [1000, 1000], [0, 1000], [0, 0]]]}],
        "stems": {"id": [f"s{n}" for n in range(20000)], "x": [(n * 37) % 1000 for n in range(20000)],
                  "y": [(n * 91) % 1000 for n in range(20000)], "cm": [5.0] * 20000,
                  "species": ["red maple"] * 20000, "state": ["standing"] * 20000},
        "spared": [], "background": None,
    }  # fmt: skip
    page.route("**/plan.json", lambda route: route.fulfill(json=body))
    page.goto(example)
    page.get_by_text("20000 plants to treat").wait_for()
    page.locator("canvas").scroll_into_view_if_needed()
    before = page.evaluate("document.querySelector('.land').drawingOfLand.draws")
    box = page.locator("canvas").bounding_box()
    page.mouse.move(box["x"] + 200, box["y"] + 200)
    page.mouse.down()
    page.mouse.move(box["x"] + 260, box["y"] + 220, steps=5)
    page.mouse.up()
    page.wait_for_timeout(200)
    assert 1 <= page.evaluate("document.querySelector('.land').drawingOfLand.draws") - before <= 8
    page.locator("canvas").click(position={"x": 300, "y": 200})
    page.get_by_text("red maple, 2.0 in across").wait_for()


def test_a_stopped_server_is_noticed_by_an_open_page(chromium, tmp_path):
    """Quit says that it has stopped; another open page says so too."""
    from web.conftest import Served

    server = Served(tmp_path / "notebook")
    try:
        with opened(chromium, server) as one, opened(chromium, server) as other:
            other.goto(server.home + "/sums")
            one.get_by_role("button", name="Quit").click()
            one.get_by_role("heading", name="Stemward has stopped").wait_for()
            server.process.wait(15)
            other.get_by_role("alert").filter(has_text="does not answer").wait_for(timeout=40_000)
    finally:
        server.end()


def a_green_tile() -> bytes:
    """A tile of one colour."""
    out = io.BytesIO()
    Image.new("RGB", (256, 256), (10, 200, 30)).save(out, "PNG")
    return out.getvalue()


def greens(path) -> float:
    """Share of pixels that have the tile's colour."""
    pixels = np.asarray(Image.open(path).convert("RGB")).reshape(-1, 3).astype(int)
    return float((np.abs(pixels - (10, 200, 30)).max(axis=1) < 12).mean())


def test_map_tiles_are_laid_where_they_belong(page, example, tmp_path):
    """The tile that holds the land is asked for, and lies under it where its latitude and longitude are."""
    asked = []

    def answer(route):
        asked.append(route.request.url)
        route.fulfill(body=a_green_tile(), content_type="image/png")

    page.route("https://tiles.example/**", answer)
    page.goto(example + "background")
    page.get_by_label("Latitude and longitude of").fill("43, -90")
    page.get_by_role("button", name="Keep this").click()
    page.get_by_text("latitude 43.0, longitude -90.0").wait_for()
    page.get_by_label("Address").fill("https://tiles.example/{z}/{x}/{y}.png")
    page.get_by_role("button", name="Use these tiles").click()
    page.get_by_text("There now: https").wait_for()
    page.get_by_role("link", name="Back to the drawing").click()
    page.get_by_role("button", name="Hide what lies under").wait_for()
    page.wait_for_timeout(500)
    # Tile of 43 N 90 W at a level z by the usual formula: x = (lon + 180) / 360 * 2^z = 2^z / 4;
    # y = (1 - asinh(tan lat) / pi) / 2 * 2^z = 0.36735 * 2^z (slippy map convention).
    for url in asked:
        z, x, y = (int(part) for part in url.removesuffix(".png").split("/")[-3:])
        assert abs((x + 0.5) / 2**z - 0.25) < 3 / 2**z
        assert abs((y + 0.5) / 2**z - 0.36735) < 3 / 2**z + 1e-4
    assert asked
    page.locator("canvas").scroll_into_view_if_needed()
    page.wait_for_timeout(300)
    page.locator("canvas").screenshot(path=tmp_path / "under.png")
    page.get_by_role("button", name="Hide what lies under").click()
    page.wait_for_timeout(300)
    page.locator("canvas").screenshot(path=tmp_path / "bare.png")
    assert greens(tmp_path / "under.png") > 0.5
    assert greens(tmp_path / "bare.png") == 0
    page.get_by_role("button", name="Show what lies under").wait_for()
    page.goto(example + "background")
    page.get_by_role("button", name="Take it away").click()
    page.get_by_text("There now: nothing").wait_for()


# Keystroke-level model: a key 0.28 s (average typist who is no secretary), getting ready 1.35 s a field.
# S. K. Card, T. P. Moran, A. Newell: The keystroke-level model for user performance time with interactive systems,
# Communications of the ACM 23(7), 1980, table 1.
KEY_S, READY_S = 0.28, 1.35
MOST_S = 300


def test_a_day_of_120_stems_is_typed_in_under_five_minutes(page, example, tab, capsys):
    """From the After page to a signed record, by keyboard: every key counted, each field thought about."""
    fields = {
        "Begun": "9:40", "Ended": "15:15", "Hours of work": "9 h", "Who applied it": "Ann Example, Ben Example",
        "tree-of-heaven": "1-28 treated; 29 missed; 30-34 cut 14:50",
        "red maple": "all but 7, 19, 33 treated; 7, 33 missed; 19 not found",
        "Wind": "3 mph", "From": "west", "Air temperature": "62", "Humidity": "55", "Where it was mixed": "lane gate",
    }  # fmt: skip
    mixes = {"tree-of-heaven": ("5 fl oz", "1 fl oz", "Kept"), "red maple": ("16 fl oz", "2 fl oz", "Kept")}
    page.goto(example + "after")
    tab.go("Write down a day")
    # While the plan is worked out a page says so and loads again by itself.
    page.get_by_role("heading", name="Write down a day").wait_for()
    thought = 0
    for label, words in fields.items():
        tab.type(label, words)
        thought += 1
        for one in ("Mixed today", "Left at the end") if label in mixes else ():
            tab.type(one, mixes[label][one != "Mixed today"])
            thought += 1
        if label in mixes:
            tab.to("What became of the rest")
            page.keyboard.type(mixes[label][2])
            tab.presses += len(mixes[label][2])
            thought += 1
    tab.go("Write it down")
    page.get_by_role("heading", name="2026-10-10").wait_for()
    tab.type("Full name", "Ann Example")
    tab.go("Sign 2026-10-10")
    page.get_by_text("Signed by Ann Example.").first.wait_for()
    typed = sum(map(len, fields.values())) + sum(len(a) + len(b) for a, b, _ in mixes.values()) + len("Ann Example")
    seconds = (tab.presses + typed) * KEY_S + (thought + 3) * READY_S
    with capsys.disabled():
        sys.stdout.write(f"\na day: {tab.presses} keys to move, {typed} typed, {thought + 3} fields: {seconds:.0f} s\n")
    page.goto(example + "after")
    expect(page.get_by_text("signed by Ann Example").first).to_be_visible()
    assert seconds < MOST_S
