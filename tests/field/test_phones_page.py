"""The computer's page for phones, and the addresses that phones ask: who is let in, what is answered."""

import datetime
import json

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from field.some import NOW, mark
from notebook.some import name
from stemward.field.joined import end_phone, new_phone, phone_of
from stemward.field.receive import receive
from stemward.notebook import worked
from stemward.notebook.models import Brought, Entry, Phone
from stemward.web import share


@pytest.fixture
def phone(db):
    """A phone's own client: no cookie."""
    del db
    return Client(HTTP_HOST="127.0.0.1")


def posted(phone, word, body):
    """Send rows."""
    raw = body if isinstance(body, bytes) else json.dumps(body).encode()
    return phone.post("/phone/rows", raw, content_type="application/json", HTTP_X_STEMWARD_PHONE=word)


def rows(*some):
    """A request as the phone makes it."""
    return {"form": "stemward phone rows", "device": "phone 1", "sent_at": NOW.isoformat(), "rows": list(some)}


def test_a_word_lets_one_phone_in_until_it_is_ended(small, phone):
    """The notebook keeps its hash alone; without it, with another and after the end nothing is taken."""
    word = new_phone(small, "crew 2", NOW)
    assert word not in str(Phone.objects.values_list())
    assert posted(phone, word, rows(mark("m1", "cut", s1=1))).json()["answers"][0]["state"] == "kept"
    for wrong in ("", "x", word[:-1]):
        assert posted(phone, wrong, rows(mark("m2", "cut", s1=1))).status_code == 403
    end_phone(small, phone_of(word, NOW).id, NOW)
    assert posted(phone, word, rows(mark("m3", "cut", s1=1))).status_code == 403
    assert phone.get("/phone/plan", HTTP_X_STEMWARD_PHONE=word).status_code == 403
    assert list(Entry.objects.values_list("key", flat=True)) == ["m1"]


@pytest.mark.parametrize(
    "body",
    [b"", b"[", b"[]", b"{}", b"[" * 5000, {"form": "other", "rows": []}, {**rows(), "sent_at": "soon"},
     {**rows(), "sent_at": "2026-10-10T09:00"}, {**rows(), "rows": 3}, b" " * 3_000_000],
)  # fmt: skip
def test_what_no_phone_sends_is_refused(small, phone, body):
    """With 400 and a sentence, never an error of the program."""
    answer = posted(phone, new_phone(small, "crew 2", NOW), body)
    assert answer.status_code == 400
    assert "phone" in answer.json()["why"]


def test_too_many_rows_at_once(small, phone):
    """Refused as a whole, with 409."""
    many = rows(*(mark(f"m{n}", "cut", s1=1) for n in range(201)))
    assert posted(phone, new_phone(small, "crew 2", NOW), many).status_code == 409
    assert not Entry.objects.exists()


def test_the_phones_files_are_open_and_hold_nothing_of_anyone(client, hollow, phone):
    """The page without a cookie; its worker names its files; no other file is given."""
    del client
    page = phone.get("/phone/").content.decode()
    assert "EMERGENCY" in page and "Quarry Hollow" not in page and hollow not in page
    assert phone.get("/phone/sw.js")["Content-Type"].startswith("text/javascript")
    for wrong in ("settings.py", "..%2Ffiles.py", "index.htm"):
        assert phone.get(f"/phone/{wrong}").status_code == 404
    assert phone.get("/phone/authority.crt").status_code == 404


def test_the_plan_that_a_phone_gets_is_kept_with_its_numbers(client, hollow, phone, monkeypatch):
    """As a printed one is, once; the page makes a code where phones reach it, and says how where none does."""
    page = client.get(f"/land/{hollow}/phone").content.decode()
    assert "no phone reaches it" in page and "stemward share" in page
    monkeypatch.setenv("STEMWARD_ADDRESS", "https://notebook.example")
    made = client.post(f"/land/{hollow}/phone", {"command": name(), "new": "1", "name": "crew 2"}).content.decode()
    word = made.partition("#join=")[2].partition("<")[0]
    assert "<svg" in made
    worked.plan_of(hollow, datetime.date(2026, 10, 10))
    for _ in range(2):
        plan = phone.get("/phone/plan", HTTP_X_STEMWARD_PHONE=word).json()
    assert plan["form"] == "stemward phone plan" and len(plan["sheets"]) == 8
    issued = [
        e for e in worked.known(hollow).land.entries if e.kind == "plan issued" and e.body["code"] == plan["code"]
    ]
    assert len(issued) == 1 and issued[0].body["sheets"]
    assert "crew 2" in client.get(f"/land/{hollow}/phone").content.decode()


def test_odd_and_refused_rows_stand_there_until_seen_to(client, hollow):
    """With their sentences; ticked, they are gone and still kept."""
    receive(hollow, "phone 1", [mark("p1", "cut", nowhere=1), mark("p1", "missed", b1=1)], NOW, NOW)
    page = client.get(f"/land/{hollow}/phone").content.decode()
    assert "no stem nowhere" in page and "Refused:" in page and "says something else" in page
    ids = list(Brought.objects.values_list("id", flat=True))
    client.post(f"/land/{hollow}/phone", {"command": name(), "settle": ids})
    assert "no stem nowhere" not in client.get(f"/land/{hollow}/phone").content.decode()
    assert Brought.objects.count() == 2


def test_marks_of_another_land_are_not_read_here(client, hollow):
    """A file says which land it is of."""
    raw = json.dumps({**rows(mark("m1", "cut", b1=1)), "tract": name()}).encode()
    answer = client.post(f"/land/{hollow}/phone", {"command": name(), "marks": SimpleUploadedFile("m.json", raw)})
    assert answer.status_code == 422 and "another land" in answer.content.decode()
    assert not Brought.objects.exists()


def test_nothing_is_shared_unless_it_was_asked_for():
    """The door is closed from the start."""
    assert share.now() is None
