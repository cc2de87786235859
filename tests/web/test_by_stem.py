"""A look back stem by stem: one letter each, by keys alone; a photo; the sheet to take along."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.core.files.uploadedfile import SimpleUploadedFile

from gate.foreign.test_picture import photo
from ledger.some import hollow as tract_with
from ledger.test_revisits import treated
from notebook.some import name
from paper.test_packet import text_of
from stemward.handbook import load
from stemward.ledger.revisits import works
from stemward.notebook import worked
from stemward.notebook.changes import Asked, Refused, change
from stemward.notebook.entries import entry_row
from stemward.web import clock
from stemward.web.by_stem import natural, seen_by_stem

ROWS = {"b2": 1, "b10": 1, "b3": 1, "b4": 3}
TRACT = tract_with(entries=(treated("t1", rows=ROWS, stems=6),))
(WORK,) = works(TRACT, load())


def asked(**letters):
    return seen_by_stem(WORK, TRACT, {f"stem-{stem}": text for stem, text in letters.items()})


def test_letters_become_counts_and_rows():
    body = asked(b2="d", b3="b 5 2 ft", b4="B", b10="n")
    assert (body["dead"], body["resprouting"], body["not_found"]) == (1, 4, 1)
    assert body["dead_rows"] == {"b2": 1} and body["alive_rows"] == {"b3": 1, "b4": 3}
    assert body["sprouts"] == 5 and body["tallest_m"] == pytest.approx(0.6096)


@pytest.mark.parametrize(
    ("text", "sprouts", "tallest_m"),
    [
        ("b", None, None),
        ("b 7", 7, None),
        ("b 3 ft", None, 0.9144),
        ("back 2 18 in", 2, 0.4572),
        ("b 40 cm", None, 0.4),
    ],
)
def test_what_may_stand_behind_back(text, sprouts, tallest_m):
    body = asked(b2=text)
    assert body.get("sprouts") == sprouts
    assert body.get("tallest_m") == (pytest.approx(tallest_m) if tallest_m else None)


@pytest.mark.parametrize("text", ["x", "d 5", "b five", "dead dead", "b 5 2 gallons"])
def test_what_is_not_understood_names_the_stem(text):
    with pytest.raises(Refused) as refused:
        asked(b2=text, b3="?")
    assert len(refused.value.lines) == 2 and refused.value.lines[0].startswith("b2: ")


def test_not_looked_at_is_no_look():
    assert asked(b2="not found", b3="m")["untreated"] == 1
    with pytest.raises(Refused, match="No stem has a letter"):
        asked()
    assert sorted(ROWS, key=natural) == ["b2", "b3", "b4", "b10"]


def work_with_stems(tract):
    """A work of last year with stems, written down in the notebook; its key."""
    from stemward.web.frame import land_of

    land = land_of(tract)
    at = clock.there(land).replace(year=clock.today(land).year - 1)
    row = entry_row(name(), "treated", at, "owner", treated("t1", rows=ROWS, stems=6).body)
    change(Asked(name(), tract, "owner", "write down", entries=[row]), clock.now())
    work = next(w for w in works(worked.known(tract).land, load()) if w.rows and "b10" in w.rows)
    return work.key


def test_written_down_with_a_photo_and_printed(client, hollow):
    key = work_with_stems(hollow)
    page = client.get(f"/land/{hollow}/after/back?of={key}").content.decode()
    assert "Stem by stem instead" in page
    page = client.get(f"/land/{hollow}/after/back?of={key}&stems=1").content.decode()
    assert page.index('name="stem-b2"') < page.index('name="stem-b10"')
    typed = {
        "command": name(),
        "day": clock.today(worked.known(hollow).land).isoformat(),
        "by-stem": "yes",
        "stem-b2": "d",
    }
    wrong = client.post(f"/land/{hollow}/after/back?of={key}&stems=1", typed | {"stem-b3": "y"})
    assert (
        wrong.status_code == 422
        and 'value="d"' in wrong.content.decode()
        and "b3: not understood" in wrong.content.decode()
    )
    upload = SimpleUploadedFile("stump.png", photo(600, 400, "PNG"), "image/png")
    sent = client.post(
        f"/land/{hollow}/after/back?of={key}&stems=1", typed | {"command": name(), "stem-b3": "b 4", "picture": upload}
    )
    assert sent.status_code == 302
    entry = next(e for e in reversed(worked.known(hollow).land.entries) if e.kind == "seen again")
    assert (
        entry.body["dead_rows"] == {"b2": 1}
        and entry.body["alive_rows"] == {"b3": 1}
        and len(entry.body["photo"]) == 64
    )
    page = client.get(f"/land/{hollow}/after/back?of={key}").content.decode()
    shown = f"/land/{hollow}/phone/photo/{entry.body['photo']}.jpg"
    assert shown in page and client.get(shown)["Content-Type"] == "image/jpeg"
    text = " ".join(text_of(client.get(f"/land/{hollow}/after/back.pdf?of={key}").content))
    assert "b10" in text and "Sprouts; tallest" in text
    assert client.get(f"/land/{hollow}/after/back.pdf?of=none").status_code == 404


def test_axe_finds_nothing_on_a_look_by_counts(chromium, served, example):
    from web.conftest import opened
    from web.test_looks import OVERFLOW, RULES

    found = []
    with opened(chromium, served) as page:
        for width in (320, 1440):
            page.set_viewport_size({"width": width, "height": 900})
            page.goto(f"{example}after/back")
            # A page that gives way to the next has no size for a moment.
            with page.expect_navigation():
                page.get_by_role("link", name="Write down a look").first.click()
            over, which = page.evaluate(OVERFLOW)
            assert over <= 0, (width, which)
            result = Axe().run(page, options={"runOnly": {"type": "tag", "values": RULES}})
            found += [(width, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
    assert found == []
