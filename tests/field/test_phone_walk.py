"""A walk on the phone: in the order it was taken, lots along it, into the next sheet, anew from where one stands."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from field.phones import Phone, example_with_phones, rows_of
from web.test_looks import RULES


@pytest.fixture(scope="module")
def joined(chromium, tmp_path_factory):
    """An example of its own, its walks taken for two people."""
    with example_with_phones(chromium, tmp_path_factory.mktemp("walks")) as made:
        page = made.office.new_page()
        page.goto(f"{made.land}walks?asked=1&people=2&not=water&not=fence&work=m3")
        page.get_by_role("button", name="Take all walks onto phones").wait_for(timeout=90_000)
        page.get_by_role("button", name="Take all walks onto phones").click()
        page.get_by_text("These walks are on the printed sheets").wait_for(timeout=90_000)
        page.close()
        yield made


@pytest.fixture
def phone(chromium, joined):
    """A phone that has the plan."""
    made = Phone(chromium, joined)
    yield made
    made.close()


PLAN = """async () => { const s = await import('/phone/state.js'); return s.state.plan; }"""
ORDER = """async () => { const s = await import('/phone/state.js'); return s.walked().filter(x => !x.done).map(x => [x.sheet, x.id, x.n, x.lot || 0]); }"""


def followed(phone, title):
    """Follow the walk whose title holds these words; its stops in the order of the phone."""
    phone.press("nav [data-tab=day]")
    phone.press(f'button[data-name=walk]:has-text("{title}")')
    phone.press("nav [data-tab=work]")
    return phone.page.evaluate(ORDER)


def test_it_goes_in_the_order_that_was_taken(phone, joined):
    """Owner's walk over cut stumps and hacked trees: stem by stem, from sheet to sheet."""
    stops = followed(phone, "owner: red maple")
    taken = next(w for w in phone.page.evaluate(PLAN)["walks"] if w["person"] == "owner" and "red maple" in w["title"])
    assert [[a, b] for a, b, _, _ in stops] == [s for s in taken["stops"] if s != "refill"]
    assert len({sheet for sheet, *_ in stops}) > 1
    seen = []
    for _ in range(14):
        sheet, stem, number, _ = phone.page.evaluate(ORDER)[0]
        assert phone.number() == str(number)
        if phone.page.locator("#cut").count():
            phone.press("#cut")
        phone.press("#treated")
        seen.append((sheet, stem))
    assert seen == [(a, b) for a, b, _, _ in stops[:14]]
    phone.sent()
    treated = [row["body"]["rows"] for row in rows_of(joined, phone) if row["body"]["what"] == "treated"]
    assert [next(iter(rows)) for rows in treated] == [stem for _, stem in seen]


def test_lots_of_the_walk_say_when_to_treat(phone):
    """Cut is the filled button until the whole lot is cut, then Treated."""
    lots = [lot for *_, lot in followed(phone, "owner: red maple")]
    first = next(n for n, lot in enumerate(lots) if lot > 1)
    for _ in range(first):
        if phone.page.locator("#cut").count():
            phone.press("#cut")
        phone.press("#treated")
    lot = phone.page.evaluate(ORDER)[0][3]
    assert lot > 1
    for n in range(lot):
        assert "filled" in phone.page.locator("#cut").get_attribute("class"), n
        phone.press("#cut")
    assert "filled" in phone.page.locator("#treated").get_attribute("class")


def test_ordered_anew_from_the_last_stem(phone):
    """What is left begins near the last stem that was marked; nothing is lost, and without a signal."""
    stops = followed(phone, "tree-of-heaven")
    phone.context.set_offline(True)
    far = stops[-1]
    phone.press("nav [data-tab=list]")
    phone.page.clock.fast_forward(800)
    phone.page.locator("ol.stems button.row").last.click(delay=90)
    phone.press("#treated")
    phone.press("nav [data-tab=list]")
    phone.press("#from-here")
    now = phone.page.evaluate(ORDER)
    assert sorted(now) == sorted([[*s[:3], 0] for s in stops[:-1]])
    plan = phone.page.evaluate(PLAN)
    place = {row[0]: (row[5], row[6]) for sheet in plan["sheets"] for row in sheet["rows"]}

    def far_from(stem):
        return (place[stem][0] - place[far[1]][0]) ** 2 + (place[stem][1] - place[far[1]][1]) ** 2

    # Turning pieces about may move the very nearest back a little; the first is among the near third.
    near = sorted((s[1] for s in now), key=far_from)
    assert now[0][1] in near[: len(near) // 3]


def test_a_number_stands_on_one_line(phone):
    """However long the plant's name beside it is."""
    followed(phone, "owner: red maple")
    box = phone.page.locator("#card .number").bounding_box()
    assert box["height"] < 60 and box["width"] > 30


def test_axe_finds_nothing_on_the_list_of_a_walk(phone):
    """With refills and the button for a new order."""
    followed(phone, "tree-of-heaven")
    phone.press("nav [data-tab=list]")
    result = Axe().run(phone.page, options={"runOnly": {"type": "tag", "values": RULES}})
    assert [(v["id"], v["nodes"][0]["html"][:100]) for v in result.response["violations"]] == []
