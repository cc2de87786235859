"""Rows that phones bring: taken once, answered each, nothing lost; what is odd is kept beside them."""

import datetime
import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from field.some import NOW, mark, note
from notebook.some import name, stem
from stemward.field.receive import MOST_ROWS, put_photo, receive
from stemward.gate.pieces import Parts, Piece
from stemward.notebook import worked
from stemward.notebook.changes import Asked, Refused, begin
from stemward.notebook.models import Brought, Change, Entry, Photo, Tract


def brought(tract, *rows, device="phone 1", sent_at=NOW, now=NOW, plan=""):
    """States of the answers."""
    return [one.state for one in receive(tract, device, rows, sent_at, now, plan)]


def keys(tract):
    """Ids of the entries, in the order in which they were written."""
    return list(Entry.objects.filter(tract_id=tract).values_list("key", flat=True))


def why(tract):
    """What is odd, of the row brought last."""
    return " ".join(Brought.objects.filter(tract_id=tract).last().why)


def test_a_row_becomes_an_entry_with_the_time_it_came(small):
    """As it was sent, and the notebook can still be read; the trace says so."""
    row = mark("m1", "treated", s1=1)
    assert brought(small, row) == ["kept"]
    (entry,) = worked.known(small).land.entries
    assert (entry.kind, entry.body["rows"], entry.device) == ("marked", {"s1": 1}, "phone 1")
    assert entry.received.startswith("2026-10-10T09:14")
    assert Change.objects.filter(tract_id=small).last().verb == "write down"


def test_the_same_row_twice_is_one(small):
    """In one request, in two, and after others."""
    row = mark("m1", "treated", s1=1)
    assert brought(small, row, row) == ["kept", "again"]
    assert brought(small, mark("m2", "cut", s2=1), row) == ["kept", "again"]
    assert keys(small) == ["m1", "m2"]


def test_the_same_id_with_another_body_is_refused_and_kept(small):
    """Both can be read by a person; asked again, it is answered again and kept once."""
    brought(small, mark("m1", "treated", s1=1))
    other = mark("m1", "missed", s1=1)
    for _ in range(2):
        (answer,) = receive(small, "phone 2", [other], NOW, NOW)
        assert answer.state == "refused" and "says something else" in answer.why
    kept = Brought.objects.filter(tract_id=small, state="refused")
    assert [one.row["body"]["what"] for one in kept] == ["missed"]
    assert keys(small) == ["m1"]


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (mark("m", "felled", s1=1), "One of cut, treated"),
        (mark("m", "cut", s1=1) | {"at": "soon"}, "2026-10-03T09:30"),
        (mark("m", "cut", s1=1) | {"kind": "treated"}, "cannot write"),
        (mark("m", "cut", s1=1) | {"extra": 1}, "extra"),
        (note("m", text="a" * 300), "text"), (note("m", text="a" * 5000), "too long"),
        (mark("m", "cut", s1=1) | {"received": "2026-10-10T09:00"}, "no row"), (mark("m", "cut", s1=-1), "b7"),
        (mark("m", "cut", s1=1) | {"corrects": "m"}, "no row"),
    ],
)  # fmt: skip
def test_what_the_gate_refuses_is_kept_for_a_person(small, row, said):
    """With a sentence; the others of the request are taken, and the notebook can be read."""
    answers = receive(small, "phone 1", [row, mark("ok", "cut", s2=1)], NOW, NOW)
    assert [one.state for one in answers] == ["refused", "kept"]
    assert said in answers[0].why
    assert Brought.objects.get(tract_id=small, state="refused").row == row
    assert [entry.id for entry in worked.known(small).land.entries] == ["ok"]


@pytest.mark.parametrize("row", [None, 3, [], {}, {"id": ""}, {"id": 4}, {"id": "x"}])
def test_what_is_no_row_is_refused(small, row):
    """Whatever it is, the answer is a word and not an error."""
    assert brought(small, row) == ["refused"]


def test_a_correction_before_what_it_corrects_waits(small):
    """It is taken when that has come."""
    back = {"id": "x", "kind": "taken back", "at": "2026-10-10T04:20:00", "offset": -300, "by": "owner",
            "device": "phone 1", "corrects": "m1", "body": {"why": "wrong stem"}}  # fmt: skip
    assert brought(small, back) == ["wait"]
    assert not Brought.objects.filter(tract_id=small).exists()
    assert brought(small, mark("m1", "cut", s1=1), back) == ["kept", "kept"]
    worked.known(small)


def test_a_wrong_clock_is_noticed_and_the_row_is_kept(small):
    """By how much and which way; within two minutes nothing is said."""
    hour = datetime.timedelta(hours=1)
    assert brought(small, mark("m1", "cut", s1=1), sent_at=NOW + hour) == ["kept"]
    assert "60 min ahead of" in why(small)
    assert brought(small, mark("m2", "cut", s1=1), sent_at=NOW - hour) == ["kept"]
    assert "60 min behind" in why(small)
    assert brought(small, mark("m3", "cut", s1=1), sent_at=NOW + hour / 60) == ["kept"]
    assert why(small) == ""
    assert brought(small, mark("m4", "cut", at="2026-10-11T04:14:00", s1=1)) == ["kept"]
    assert "had not come" in why(small)


def test_a_stem_that_is_gone_an_older_plan_and_what_was_stopped_are_kept(small):
    """What was done is done; what is odd stands beside it."""
    assert brought(small, mark("m1", "treated", gone=1)) == ["kept"]
    assert "no stem gone" in why(small)
    row = mark("m2", "treated", s1=1)
    row["body"] |= {"plan": "AAAA-1", "anyway": "the ranger asked"}
    assert brought(small, row, plan="BBBB-2") == ["kept"]
    assert "older plan (AAAA-1)" in why(small) and "the ranger asked" in why(small)
    late = mark("m3", "treated", s1=1)
    late["body"] |= {"waited_s": 420, "limit_s": 300}
    assert brought(small, late) == ["kept"]
    assert "2.0 min over" in why(small)


def test_a_land_that_is_gone_takes_nothing(small):
    """Said so; a request with too many rows as well."""
    with pytest.raises(Refused, match="At most"):
        brought(small, *[mark(f"m{n}", "cut", s1=1) for n in range(MOST_ROWS + 1)])
    Tract.objects.filter(id=small).update(removed_at=NOW)
    with pytest.raises(Refused, match="not there"):
        brought(small, mark("m1", "cut", s1=1))


def test_photos_are_small_pictures(small):
    """The same one twice is one; what is none is refused."""
    jpeg = b"\xff\xd8\xff\xe0" + b"x" * 50
    assert put_photo(small, jpeg, NOW) == put_photo(small, jpeg, NOW)
    assert Photo.objects.count() == 1
    for wrong in (b"GIF89a", jpeg + b"x" * 400_000):
        with pytest.raises(Refused):
            put_photo(small, wrong, NOW)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.integers(0, 10**6), st.integers(1, 25))
def test_however_requests_are_lost_doubled_and_mixed_up(db, seed, count):
    """A phone that sends again what was not answered ends with each row once in the notebook, whatever the order in
    which requests arrive and whichever answers are lost."""
    del db
    dice = random.Random(seed)
    tract = name()
    pieces = (
        Piece("tract", "", {"name": "Small"}),
        Piece("patch", "fence", {"id": "fence", "name": "Fence", "places": ["woods"]}),
    )
    begin(Asked(name(), tract, "owner", "begin"), Parts(pieces, (stem("s0"),)), NOW)
    outbox = [mark(f"m{n}", dice.choice(["cut", "treated", "missed"]), s0=1) for n in range(count)]
    back = [{"id": f"x{n}", "kind": "taken back", "at": "2026-10-10T04:20:00", "offset": -300, "by": "owner",
             "device": "phone 1", "corrects": f"m{n}", "body": {"why": "wrong stem"}}
            for n in range(0, count, 4)]  # fmt: skip
    wanted = {row["id"] for row in outbox + back}
    outbox += back
    dice.shuffle(outbox)
    late, seen = [], []
    for _ in range(400):
        if not outbox:
            break
        some = outbox[: dice.randint(1, 5)]
        seen += [receive(tract, "phone 1", some, NOW, NOW)]
        if dice.random() < 0.3:
            late.append(some)
        if late and dice.random() < 0.3:
            receive(tract, "phone 1", late.pop(dice.randrange(len(late))), NOW, NOW)
        if dice.random() < 0.6:  # else the answer is lost
            done = {one.id for one in seen[-1] if one.state in ("kept", "again")}
            outbox = [row for row in outbox if row["id"] not in done]
        dice.shuffle(outbox)
    assert not outbox
    assert sorted(keys(tract)) == sorted(wanted)
    worked.known(tract)
