"""Reading a label in a real browser: by keys alone, at every width, nothing for axe, the place on the screen."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from web.conftest import Served, opened
from web.test_label_read import NUMBER, pdf
from web.test_looks import OVERFLOW, RULES

PRODUCT = "triclopyr-ester-4lb"
VISIBLE = """() => { const m = document.querySelector('rect.mark').getBoundingClientRect(),
  p = document.querySelector('.paper').getBoundingClientRect();
  return m.top >= p.top && m.bottom <= p.bottom && m.left >= p.left; }"""


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    """A server of its own: a new example takes the place of the old, which other tests look at."""
    server = Served(tmp_path_factory.mktemp("labels"))
    yield server
    server.end()


def began(page, tmp_path):
    """An example of its own with a label sent and said to be the jug's; its address."""
    page.get_by_role("button", name="Look round an example").click()
    page.wait_for_url("**/land/*/")
    lead = f"{page.url}shelf/{PRODUCT}/label"
    (tmp_path / "label.pdf").write_bytes(pdf())
    page.goto(lead)
    page.get_by_text("I have the label as a PDF").click()
    page.set_input_files("#label-file", str(tmp_path / "label.pdf"))
    page.get_by_role("button", name="Look for the places").click()
    page.fill("#number", NUMBER)
    page.get_by_role("button", name="It is the label of my jug").click()
    page.locator("#fact").wait_for()
    return lead


def test_a_label_is_read_by_keys_alone(page, tmp_path):
    """Typed, nodded at, undone: focus goes to the next question, its place stands on the screen."""
    lead = began(page, tmp_path)
    page.goto(f"{lead}/read?kind=most per year#fact")
    assert page.evaluate(VISIBLE)
    assert page.evaluate("document.activeElement.id") == "fact"
    assert "7 lb" not in page.locator("main").inner_text()
    pressed = 0
    while page.evaluate("document.activeElement.id") != "says":
        page.keyboard.press("Tab")
        pressed += 1
        assert pressed < 8
    page.keyboard.type("7 lb/acre")
    page.keyboard.press("Enter")
    page.wait_for_url("**/read?fact=*")
    page.locator("#fact:focus").wait_for()
    page.goto(f"{lead}/read?kind=equipment#fact")
    nod = page.get_by_role("button", name="The label says this")
    page.locator("button[data-seen]:enabled").first.wait_for()
    before = page.locator("#fact").get_attribute("data-fact")
    nod.focus()
    page.keyboard.press("Enter")
    # A locator waits while one page gives way to the next; a function in the page meets a page without the fact.
    page.locator(f"#fact:not([data-fact='{before}'])").wait_for()
    assert page.get_by_role("button", name="Undo: read protective equipment").count()
    page.goto(f"{lead}/read?kind=equipment#fact")
    assert "goggles" in page.locator(".one").inner_text()


def test_a_press_on_the_page_makes_a_fact_of_its_words(page, tmp_path):
    """The sentence under the pointer is taken, with what it is about to be chosen."""
    lead = began(page, tmp_path)
    page.goto(f"{lead}/read?page=2")
    # A link in a drawing is pressed where its words stand.
    spot = page.locator("rect.spot", has=page.locator("xpath=.")).nth(1)
    spot.scroll_into_view_if_needed()
    spot.click(force=True)
    page.wait_for_url("**/read?fact=s*")
    assert page.locator("figcaption").inner_text().startswith("The label’s words, page 2")


def test_it_holds_at_every_width_and_breaks_no_rule(chromium, served, tmp_path):
    """The page, its parts, the print, the question before and the differences, wide and narrow."""
    found = []
    with opened(chromium, served) as page:
        lead = began(page, tmp_path)
        (tmp_path / "label.pdf").write_bytes(pdf(most="3"))
        page.goto(lead)
        page.get_by_text("I have the label as a PDF").click()
        page.set_input_files("#label-file", str(tmp_path / "label.pdf"))
        page.get_by_role("button", name="Look for the places").click()
        page.wait_for_url("**/label/differs")
        for width in (1440, 320):
            page.set_viewport_size({"width": width, "height": 900})
            for one in ("differs", "read", "part/0", "facts"):
                page.goto(f"{lead}/{one}")
                result = Axe().run(page, options={"runOnly": RULES})
                found += [(one, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
                over, _ = page.evaluate(OVERFLOW)
                found += [(one, width, over)] if over else []
        page.goto(f"{lead}/read")
        page.fill("#number", NUMBER)
        page.get_by_role("button", name="It is the label of my jug").click()
        for width in (1440, 900, 320):
            page.set_viewport_size({"width": width, "height": 900})
            page.goto(f"{lead}/read?kind=most per year#fact")
            result = Axe().run(page, options={"runOnly": RULES})
            found += [("read", v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
            over, _ = page.evaluate(OVERFLOW)
            found += [("read", width, over)] if over else []
    assert found == []
