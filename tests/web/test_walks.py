"""Who walks where on its page: asked, refused, printed, taken onto phones; in a browser at every width."""

import datetime
import time

from axe_playwright_python.sync_playwright import Axe

from notebook.some import name
from paper.test_packet import text_of
from stemward.notebook.models import Kept
from web.conftest import opened
from web.test_looks import OVERFLOW, RULES

ASKED = "asked=1&people=2&hours=1&rain=4&not=water&worth=1&work=m3"


def got(client, address):
    """The page once it is worked out."""
    for _ in range(300):
        answer = client.get(address)
        if "data-look-again" not in answer.content.decode():
            return answer
        time.sleep(0.1)
    raise AssertionError("not worked out within half a minute")


def test_the_walks_of_the_example(client, hollow):
    page = got(client, f"/land/{hollow}/walks").content.decode()
    assert "owner" in page and "crew 2" in page
    assert "Cut in lots" in page and "saw off" in page
    assert "Show the walks" in client.get(f"/land/{hollow}/day").content.decode()


def test_hours_rain_and_worth(client, hollow):
    page = got(client, f"/land/{hollow}/walks?{ASKED}").content.decode()
    assert "Not reached in 1 hour" in page
    assert "If rain comes in 4 hours" in page and "Do not begin" in page
    assert "What is worth doing in 1 hour with 2 people" in page and "expected dead" in page


def test_what_is_not_understood_is_said_and_the_usual_stands(client, hollow):
    answer = got(client, f"/land/{hollow}/walks?asked=1&people=eleven&hours=99&rain=soon")
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "1 to 10" in page and "up to 14" in page and "In how many hours does rain come" in page


def test_printed_as_shown(client, hollow):
    pdf = client.get(f"/land/{hollow}/walks.pdf?asked=1&people=1&work=m2&not=water")
    text = " ".join(text_of(pdf.content))
    assert pdf["Content-Type"] == "application/pdf" and "owner" in text and "crew 2" not in text
    assert client.get(f"/land/{hollow}/walks.pdf?work=m77").status_code == 404


def test_taken_and_old_after_the_plan_changes(client, hollow):
    got(client, f"/land/{hollow}/walks")
    sent = client.post(f"/land/{hollow}/walks", {"command": name(), "asked": "1", "people": "2", "not": "water"})
    assert sent.status_code == 302
    kept = Kept.objects.get(name=f"walks {hollow}").body
    assert {row["person"] for row in kept["walks"]} == {"owner", "crew 2"}
    assert "onto phones" in got(client, sent["Location"]).content.decode()
    Kept.objects.filter(name=f"walks {hollow}").update(body=kept | {"code": "another"})
    assert "Take them again" in got(client, sent["Location"]).content.decode()


def test_going_on_where_people_marked_their_last_stem(client, hollow, monkeypatch):
    from stemward.notebook.changes import Asked, change
    from stemward.notebook.entries import entry_row
    from stemward.web import clock

    at = datetime.datetime(2026, 10, 10, 10, 0, tzinfo=datetime.UTC)
    monkeypatch.setattr(clock, "now", lambda: at)
    assert "Go on from where" not in got(client, f"/land/{hollow}/walks").content.decode()
    row = entry_row(name(), "marked", at, "crew 2", {"what": "treated", "rows": {"b1": 1}, "patch": "meadow"})
    change(Asked(name(), hollow, "crew 2", "write down", entries=[row]), at)
    row = entry_row(name(), "marked", at, "crew 2", {"what": "not found", "rows": {"b2": 1}, "patch": "meadow"})
    change(Asked(name(), hollow, "crew 2", "write down", entries=[row]), at)
    page = got(client, f"/land/{hollow}/walks?asked=1&people=1&on=1&not=water").content.decode()
    assert "Go on from where" in page and "74 plants" in page
    # Begun anew, the one that was not found is looked for again.
    assert "75 plants" in got(client, f"/land/{hollow}/walks?asked=1&people=1&not=water").content.decode()


def test_uphill_is_asked_and_kept(client, hollow):
    page = got(client, f"/land/{hollow}/walks?asked=1&uphill=NE&people=1").content.decode()
    assert '<option value="NE" selected>north-east' in page and "uphill=NE" in page
    assert 'value="" selected' not in got(client, f"/land/{hollow}/walks?asked=1&uphill=up&people=1").content.decode()


def test_in_a_browser_at_every_width(chromium, served, example):
    found = []
    with opened(chromium, served) as page:
        for width in (320, 900, 1440):
            page.set_viewport_size({"width": width, "height": 900})
            page.goto(f"{example}walks?{ASKED}")
            page.get_by_role("button", name="Show the walks").wait_for(timeout=60_000)
            for summary in page.locator("details > summary").all():
                summary.click()
            over, which = page.evaluate(OVERFLOW)
            assert over <= 0, (width, which)
            result = Axe().run(page, options={"runOnly": {"type": "tag", "values": RULES}})
            found += [(width, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
    assert found == []


def test_asked_and_taken_by_keys_alone(chromium, served, example):
    with opened(chromium, served) as page:
        page.goto(f"{example}walks")
        page.get_by_role("button", name="Show the walks").wait_for(timeout=60_000)
        page.get_by_label("How many people").focus()
        page.keyboard.press("Control+A")
        page.keyboard.type("1")
        page.keyboard.press("Enter")
        page.wait_for_url("**people=1**")
        page.get_by_role("button", name="Take all walks onto phones").wait_for(timeout=60_000)
        page.get_by_role("button", name="Take all walks onto phones").focus()
        page.keyboard.press("Enter")
        page.get_by_text("These walks are on the printed sheets").wait_for(timeout=60_000)
