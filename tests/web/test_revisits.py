"""Going back on the page: due looks, quick entry, what is refused, the sheet."""

import datetime
import re

import pytest

from notebook.some import name
from stemward.handbook import load
from stemward.ledger.revisits import works
from stemward.notebook import worked
from stemward.notebook.changes import Asked, change
from stemward.notebook.entries import entry_row
from web.conftest import NOW

DAY = "2027-06-10"
KEY = "2025-09-20/rim/Ailanthus altissima/hack and squirt/imazapyr-2lb"


@pytest.fixture(autouse=True)
def _today(monkeypatch):
    """A day on which tree-of-heaven is due."""
    monkeypatch.setenv("STEMWARD_TODAY", DAY)


def words(response):
    """A page as one line of words."""
    text = response.content.decode()
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text[text.index("<main") :]))


def send(client, tract, key=KEY, **typed):
    """Write down a look."""
    body = {"command": name(), "day": DAY, **typed}
    return client.post(f"/land/{tract}/after/back?of={key}", body)


def looks(tract):
    """Looks that were written down here."""
    return [e for e in worked.known(tract).land.entries if e.kind == "seen again" and len(e.id) > 8]


def test_the_list_shows_what_is_due_and_what_was_early(client, hollow):
    """A look at 12 months is no verdict for a plant that suckers; its verdict is due."""
    said = words(client.get(f"/land/{hollow}/after/back"))
    assert "22 tree-of-heaven" in said and "due since 2027-06-01" in said
    assert "19 dead, 3 resprouting of 22 seen (early: 12 months after, no verdict before 18)" in said
    assert "45 dead, 11 resprouting of 56 seen; 3 not found; 6 missed and never treated (12 months after)" in said


def test_a_look_becomes_an_entry_and_undoes_nothing(client, hollow):
    """Counts and the tallest sprout in feet; the entry names what it looked at."""
    answer = send(client, hollow, dead="18", resprouting="3", not_found="1", sprouts="2", tallest="3 ft", seedlings="4")
    assert answer.status_code == 302
    (entry,) = looks(hollow)
    assert entry.body["of"] == ["e1"]
    assert (entry.body["dead"], entry.body["not_found"], entry.body["tallest_m"]) == (18, 1, pytest.approx(0.9144))
    assert "18 dead, 3 resprouting of 21 seen; 1 not found (21 months after)" in words(
        client.get(f"/land/{hollow}/after/back")
    )
    assert client.get(f"/land/{hollow}/after/correct/{entry.id}").status_code == 200


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({}, "How many are dead"),
        ({"dead": "many"}, "Dead: not understood"),
        ({"dead": "20", "resprouting": "9"}, "That is 29 plants, and 22 were treated"),
        ({"dead": "1", "day": "2025-01-01"}, "lies before the treatment"),
        ({"dead": "1", "day": "2028-01-01"}, "still to come"),
        ({"dead": "1", "tallest": "tall"}, "Tallest sprout"),
    ],
)
def test_what_cannot_be_is_refused_and_what_was_typed_stays(client, hollow, typed, said):
    """A sentence, nothing changed, the form as it was."""
    answer = send(client, hollow, note="by the gate", **typed)
    assert answer.status_code == 422
    assert said in words(answer) and "Nothing was changed" in words(answer)
    assert "by the gate" in answer.content.decode()
    assert not looks(hollow)


def test_more_than_were_treated_can_be_so(client, hollow):
    """The count is asked about and not refused for good."""
    assert send(client, hollow, dead="29", more="yes").status_code == 302


def test_sheet_and_calendar(client, hollow):
    """The sheet is a PDF; every look still to come stands in the calendar."""
    assert client.get(f"/land/{hollow}/after/back.pdf").content.startswith(b"%PDF")
    text = client.get(f"/land/{hollow}/out/ics").content.decode().replace("\r\n ", "")
    assert "e1-verdict@stemward" in text and "DTSTART;VALUE=DATE:20270601" in text
    assert "e2-verdict@stemward" not in text


def test_why_it_came_back_stands_on_the_page(client, hollow):
    """The example's work of last year had plants that came back: reasons by what the record says, with sources."""
    page = client.get(f"/land/{hollow}/after/worked").content.decode()
    assert "Why did it come back?" in page
    assert "The record shows" in page or "The record speaks against" in page
    assert "Find out" in page and "came back." in page


def test_kill_rates_are_taken_out_and_name_nobody(client, hollow):
    """The example's looks that count: 45 of 56 and 42 of 47 dead. Place, people and names stay at home."""
    page = client.get(f"/land/{hollow}/after/worked").content.decode()
    assert "after/kill-rates.csv" in page
    answer = client.get(f"/land/{hollow}/after/kill-rates.csv")
    assert answer["Content-Type"].startswith("text/csv") and "kill-rates.csv" in answer["Content-Disposition"]
    text = answer.content.decode()
    assert ",2,87,103,12" in text and "Quarry" not in text and "owner," not in text and "crew 2" not in text


def test_works_of_another_season_are_held_apart(client, hollow):
    """A second work in spring with its own look: the page tells autumn from spring, and what else it may be."""
    land = worked.known(hollow).land
    look = next(e for e in land.entries if e.body.get("dead") == 45)
    first = next(e for e in land.entries if e.id in look.body["of"])
    rows = [
        entry_row(name(), "treated", datetime.datetime(2025, 4, 2, 15, tzinfo=datetime.UTC), "owner",
                  {**first.body, "people": ["someone else"], "rows": {}, "batch": "b-spring"}),
    ]  # fmt: skip
    change(Asked(name(), hollow, "owner", "write down", entries=rows), NOW)
    spring = next(w for w in works(worked.known(hollow).land, load()) if w.day == datetime.date(2025, 4, 2))
    send(client, hollow, spring.key, dead="10", resprouting="46")
    page = words(client.get(f"/land/{hollow}/after/worked"))
    assert "By season" in page and "March to May: 10 of 56 dead" in page
    assert "Different people did them" in page
