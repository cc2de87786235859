"""How pages look and are reached: no finding of axe, no sideways scroll, colours that mean what they say."""

import re
from importlib import resources

import pytest
from axe_playwright_python.sync_playwright import Axe

from stemward.drawings import DUSK, LIGHT, SUN, contrast
from web.conftest import opened

PAGES = [
    "", "about", "patch", "patch/meadow", "patch/slope/plots", "stems", "import", "ways",
    "ways/meadow/Frangula alnus/standing", "findings", "mix", "packet", "day", "hours", "walks", "after", "shelf",
    "shelf/new", "shelf/imazapyr-2lb/label", "shelf/imazapyr-2lb/jug", "changes", "out", "piece/person/owner",
    "piece/spared/oak-1", "background", "after/write", "after/other", "after/day/2025-09-20", "after/correct/e1",
    "labels", "permits", "phone", "after/back", "after/worked", "after/others", "years", "paper/season",
    "behind/t1", "check/water", "workshop",
    "paper/share", "paper/bid",
    "ways/meadow/Frangula alnus/standing/arms", "first/3", "first/5", "first/6", "first/7",
]  # fmt: skip
WITHOUT = ["/", "/sums", "/sums/stems?how=cut+stump&sizes=2+in", "/sums/near", "/sums/today", "/sums/back?seen=stump",
           "/settings", "/copies", "/bring", "/first", "/nothing-here"]  # fmt: skip
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def addresses(served, example) -> list[str]:
    """Every page."""
    return [example + one for one in PAGES] + [served.home + one for one in WITHOUT]


def settled(page, address: str) -> None:
    """Go there and wait until what comes later has come."""
    answer = page.goto(address)
    if "/land/" not in address:
        return
    assert answer.status == 200, address
    if page.locator("[data-look-again]").count():
        page.wait_for_function("() => !document.querySelector('[data-look-again]')", timeout=60_000)
    if page.locator("#step").count():
        page.locator(".stepped").wait_for()


@pytest.mark.parametrize("width", [1440, 320])
def test_axe_finds_nothing(chromium, served, example, width):
    """No rule of WCAG 2.2 A and AA, nor of good practice, is broken on any page, wide or narrow."""
    found = []
    with opened(chromium, served) as page:
        page.set_viewport_size({"width": width, "height": 900})
        for address in addresses(served, example):
            settled(page, address)
            result = Axe().run(page, options={"runOnly": RULES})
            found += [(address, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
    assert found == []


OVERFLOW = """() => [document.documentElement.scrollWidth - document.documentElement.clientWidth,
  [...document.querySelectorAll('main *')].filter(e => e.getBoundingClientRect().right > innerWidth + 1
    && !e.closest('.scroll, .sheet-box, .quiet')).map(e => e.tagName + '.' + e.className).slice(0, 3)]"""


@pytest.mark.parametrize(
    ("width", "size"), [(320, ""), (360, ""), (720, ""), (1440, ""), (360, "largest"), (720, "largest")]
)
def test_no_page_scrolls_sideways(chromium, served, example, width, size):
    """Pages hold at every width and with the largest type."""
    wide = []
    with opened(chromium, served) as page:
        page.set_viewport_size({"width": width, "height": 800})
        if size:
            page.context.add_cookies([{"name": "stemward_size", "value": size, "url": served.home}])
        for address in addresses(served, example):
            settled(page, address)
            over, which = page.evaluate(OVERFLOW)
            if over > 0:
                wide.append((address, over, which))
    assert wide == []


def test_text_at_twice_its_size_holds(chromium, served, example):
    """Text enlarged to 200 % gives no sideways scroll either."""
    wide = []
    with opened(chromium, served) as page:
        page.set_viewport_size({"width": 640, "height": 800})
        for address in addresses(served, example):
            settled(page, address)
            page.evaluate("document.documentElement.style.fontSize = '36px'")
            over, which = page.evaluate(OVERFLOW)
            if over > 0:
                wide.append((address, over, which))
    assert wide == []


@pytest.mark.parametrize("light", ["sun", "dusk"])
def test_other_lights_hold_their_contrast(chromium, served, example, light):
    """In full sun and in the dark every page keeps the contrasts that axe computes."""
    found = []
    with opened(chromium, served) as page:
        page.context.add_cookies([{"name": "stemward_light", "value": light, "url": served.home}])
        for address in [example, example + "ways/meadow/Frangula alnus/standing", served.home + "/first"]:
            settled(page, address)
            result = Axe().run(page, options={"runOnly": ["cat.color"]})
            found += [(address, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
    assert found == []


def test_forced_colours_keep_borders_and_words(chromium, served, example):
    """In a high-contrast theme findings and buttons keep an edge."""
    with opened(chromium, served, forced_colors="active") as page:
        settled(page, example + "findings")
        edge = page.evaluate("getComputedStyle(document.querySelector('.finding')).borderLeftWidth")
        button = page.evaluate("getComputedStyle(document.querySelector('footer button')).borderTopStyle")
    assert (float(edge.removesuffix("px")) >= 4, button) == (True, "solid")


def test_targets_are_large_enough(chromium, served, example):
    """Buttons and fields are at least 44 px high on a laptop."""
    small = []
    with opened(chromium, served) as page:
        for address in (example, example + "patch/meadow", served.home + "/first"):
            settled(page, address)
            small += page.evaluate(
                """() => [...document.querySelectorAll('button, .button, input[type=text], select')]
                .filter(e => e.offsetParent && e.getBoundingClientRect().height < 44)
                .map(e => e.outerHTML.slice(0, 80))"""
            )
    assert small == []


CSS = (resources.files("stemward.web") / "static" / "web" / "site.css").read_text()
LAND_CSS = (resources.files("stemward.web") / "static" / "web" / "land.css").read_text()


def tokens(block: str) -> dict[str, str]:
    """Colours that a block of the style sheet names."""
    return {name.replace("-", "_"): value for name, value in re.findall(r"--([a-z-]+): (#[0-9A-Fa-f]{6})", block)}


@pytest.mark.parametrize(
    ("start", "palette"), [(":root {", LIGHT), (":root.sun {", {**LIGHT, **SUN}), (":root.dusk {", {**LIGHT, **DUSK})]
)
def test_the_style_sheet_has_the_palette_of_the_drawings(start, palette):
    """One palette for screens, drawings and paper."""
    found = tokens(CSS.partition(start)[2].partition("}")[0])
    found.pop("white", None)  # fields stand on raised ground in the dark
    assert found
    assert found == {name: palette[name] for name in found}


FLOORS = [("ink", "paper", 7), ("ink", "page", 7), ("ash", "paper", 7), ("ash", "page", 7), ("ink", "brick_wash", 7),
          ("bark", "paper", 4.5), ("moss", "paper", 4.5), ("dye", "paper", 4.5), ("brick", "paper", 4.5)]  # fmt: skip


@pytest.mark.parametrize("palette", [LIGHT, SUN, DUSK], ids=["light", "sun", "dusk"])
@pytest.mark.parametrize(("ink", "ground", "floor"), FLOORS)
def test_colours_keep_their_contrast(palette, ink, ground, floor):
    """Text at least 7 to 1, lines and symbols 4.5 to 1 (the look's own floors, above WCAG 2.2 AA)."""
    assert contrast(palette[ink], palette[ground]) >= floor


def test_dye_is_herbicide_and_brick_is_stop():
    """No rule uses dye or brick for anything else."""
    for sheet in (CSS, LAND_CSS):
        body = re.sub(r":root[^{]*\{[^}]*\}|/\*.*?\*/", "", sheet, flags=re.S)
        for selector, rule in re.findall(r"([^{}]+)\{([^{}]*)\}", body):
            if "--dye" in rule:
                assert re.search(r"wet|treated|herbicide", selector), selector
            if "--brick" in rule:
                assert "stop" in selector, selector
            assert not re.search(r"#[0-9A-Fa-f]{3,6}\b", rule.replace("#FBF7EE", "")), selector
