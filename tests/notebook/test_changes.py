"""Changes: all or nothing, once for each name, with a trace, taken back and made again."""

import pytest
from django.db import IntegrityError, connection, transaction
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from notebook.some import NOW, asked, name, stem
from stemward.gate import demo
from stemward.gate.pieces import join, split
from stemward.notebook import store, worked
from stemward.notebook.changes import DEEP, Asked, Edit, Refused, change, redo, stacks, undo
from stemward.notebook.guards import APPEND_ONLY
from stemward.notebook.models import Change, Entry, Tract

PATCH = {"id": "fence", "name": "Fence", "places": ["woods"]}


def texts_of(tract: str) -> dict[str, str]:
    """The folder of a tract as the database has it now."""
    return join(store.parts_of(tract))


def test_the_example_comes_out_as_it_went_in(hollow):
    """Folder, database, folder gives the same bytes as a folder that the program wrote."""
    assert texts_of(hollow) == join(split(demo.texts()))


def test_a_change_is_written_with_who_and_what(small):
    """A change leaves the new piece and one line of the trace."""
    done = change(asked(small, words={"what": "Fence"}, edits=[Edit("patch", "fence", {**PATCH, "area": "1 ac"})]), NOW)

    row = Change.objects.get(id=done.id)
    assert (row.who, row.verb, row.number) == ("owner", "put", 2)
    assert store.piece_of(small, "patch", "fence")["area"] == "1 ac"
    assert row.before["pieces"][0][2] == PATCH


def test_asking_twice_changes_once(small):
    """The same name with the same content is answered again and changes nothing more."""
    once = asked(small, added=[stem("n1")])

    first, again = change(once, NOW), change(once, NOW)

    assert (first.repeated, again.repeated) == (False, True)
    assert first.number == again.number
    assert len(store.parts_of(small).stems) == 4


def test_one_name_is_not_used_for_two_things(small):
    """The same name with other content is refused."""
    once = asked(small, added=[stem("n1")])
    change(once, NOW)

    with pytest.raises(Refused, match="sent before with other content"):
        change(Asked(once.id, small, "owner", "put", added=[stem("n2")]), NOW)


@pytest.mark.parametrize(
    ("what", "sentence"),
    [
        ({"edits": [Edit("patch", "fence", {**PATCH, "area": "lots"})]}, "Not understood: lots"),
        ({"edits": [Edit("patch", "fence", {**PATCH, "places": ["moon"]})]}, "Not understood: moon"),
        ({"added": [stem("n1", species="buckthorm")]}, "No plant of the name buckthorm"),
        ({"added": [stem("n1", diameter_in="0")]}, "cannot be"),
        ({"added": [stem("s1")]}, "an id that is used already"),
        ({"stems": [("nobody", stem("nobody"))]}, "no stem nobody"),
        ({"taken": ["nobody"]}, "not there any more"),
        ({"edits": [Edit("patch", "fence", None)]}, "no patch"),
    ],
)
def test_what_cannot_be_read_is_refused_and_nothing_changes(small, what, sentence):
    """A refused change leaves the tract, its version and the trace as they were."""
    before, version = texts_of(small), Tract.objects.get(id=small).version

    with pytest.raises(Refused, match=sentence):
        change(asked(small, **what), NOW)

    assert texts_of(small) == before
    assert Tract.objects.get(id=small).version == version
    assert Change.objects.filter(tract_id=small).count() == 1


def test_pieces_are_taken_back_and_made_again(small):
    """Undo gives the former piece, redo the later one, also after a restart."""
    before = texts_of(small)
    change(asked(small, edits=[Edit("patch", "fence", {**PATCH, "name": "Hedge"})]), NOW)
    after = texts_of(small)

    worked.forget()
    undo(name(), small, "owner", NOW)
    assert texts_of(small) == before

    worked.forget()
    redo(name(), small, "owner", NOW)
    assert texts_of(small) == after


def test_an_import_is_taken_back_as_one(small):
    """A thousand stems are one change row, and undo and redo move all of them."""
    before = texts_of(small)
    change(asked(small, "import", added=[stem(f"n{n}", x_m=str(n + 10)) for n in range(1000)]), NOW)
    after = texts_of(small)
    assert Change.objects.filter(tract_id=small).count() == 2

    for _ in range(2):
        undo(name(), small, "owner", NOW)
        assert texts_of(small) == before
        redo(name(), small, "owner", NOW)
        assert texts_of(small) == after


def test_stems_taken_away_come_back(small):
    """Undo of taking away brings the stems back as they were, redo takes them again."""
    before = texts_of(small)
    change(asked(small, "take stems", taken=["s0", "s2"]), NOW)
    assert [row[0] for row in store.parts_of(small).stems] == ["s1"]

    for _ in range(2):
        undo(name(), small, "owner", NOW)
        assert texts_of(small) == before
        redo(name(), small, "owner", NOW)
        assert [row[0] for row in store.parts_of(small).stems] == ["s1"]


def test_an_id_that_was_taken_away_can_be_used_again(small):
    """A stem taken away does not keep its id from a new one; bringing it back is then refused."""
    change(asked(small, "take stems", taken=["s0"]), NOW)
    change(asked(small, added=[stem("s0", x_m="9")], who="helper"), NOW)

    with pytest.raises(Refused, match="another stem uses now"):
        undo(name(), small, "owner", NOW)
    assert len(store.parts_of(small).stems) == 3


def test_undo_is_refused_when_someone_else_built_on_it(small):
    """What another person changed since is not overwritten; the sentence names them."""
    change(asked(small, edits=[Edit("patch", "fence", {**PATCH, "name": "Hedge"})]), NOW)
    change(asked(small, who="helper", edits=[Edit("patch", "fence", {**PATCH, "name": "Wall"})]), NOW)

    with pytest.raises(Refused, match="changed again since, by helper"):
        undo(name(), small, "owner", NOW)
    assert store.piece_of(small, "patch", "fence")["name"] == "Wall"


def test_undo_of_an_import_is_refused_when_one_of_its_stems_was_changed(small):
    """An import with a stem that someone measured again since stays."""
    change(asked(small, "import", added=[stem("n1", x_m="20"), stem("n2", x_m="30")]), NOW)
    change(asked(small, who="helper", stems=[("n1", stem("n1", diameter_in="7"))]), NOW)

    with pytest.raises(Refused, match="changed again since"):
        undo(name(), small, "owner", NOW)


def test_each_person_takes_back_their_own(small):
    """Another person's change is not on the stack."""
    change(asked(small, who="helper", edits=[Edit("patch", "fence", {**PATCH, "name": "Wall"})]), NOW)

    with pytest.raises(Refused, match="nothing of yours"):
        undo(name(), small, "owner", NOW)
    undo(name(), small, "helper", NOW)
    assert store.piece_of(small, "patch", "fence") == PATCH


def test_the_stack_is_fifty_deep(small):
    """Fifty changes can be taken back and no more."""
    for n in range(DEEP + 5):
        change(asked(small, edits=[Edit("patch", "fence", {**PATCH, "name": f"Fence {n}"})]), NOW)

    for _ in range(DEEP):
        undo(name(), small, "owner", NOW)
    with pytest.raises(Refused, match="nothing of yours"):
        undo(name(), small, "owner", NOW)
    assert store.piece_of(small, "patch", "fence")["name"] == "Fence 4"


def test_a_new_change_clears_what_could_be_made_again(small):
    """After an undo and another change there is nothing to redo."""
    change(asked(small, edits=[Edit("patch", "fence", {**PATCH, "name": "Hedge"})]), NOW)
    undo(name(), small, "owner", NOW)
    change(asked(small, edits=[Edit("patch", "fence", {**PATCH, "name": "Wall"})]), NOW)

    assert stacks(small, "owner")[1] == []


def test_entries_are_not_taken_back(small):
    """What happened is corrected, never undone."""
    row = {"id": "e1", "kind": "plan issued", "at": "2026-10-10T09:00:00", "offset": -300, "by": "owner", "body": {}}
    change(asked(small, "write down", entries=[row]), NOW)

    with pytest.raises(Refused, match="nothing of yours"):
        undo(name(), small, "owner", NOW)
    assert Entry.objects.filter(tract_id=small).count() == 1


@pytest.mark.parametrize("model", [Entry, Change])
@pytest.mark.parametrize("verb", ["update", "delete"])
def test_what_happened_cannot_be_changed_in_the_database_either(hollow, model, verb):
    """The database refuses to change or delete entries and the trace."""
    rows = model.objects.filter(tract_id=hollow)
    assert rows.exists()

    with pytest.raises(IntegrityError, match="append-only"), transaction.atomic():
        rows.update(tract_id=hollow) if verb == "update" else rows._raw_delete(rows.db)
    assert rows.exists()


@pytest.mark.django_db
def test_the_guards_stand_after_the_newest_migration():
    """Every append-only table has its triggers in a database that all migrations made."""
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute("SELECT tgrelid::regclass::text FROM pg_trigger WHERE NOT tgisinternal")
        else:
            cursor.execute("SELECT tbl_name FROM sqlite_master WHERE type = 'trigger'")
        guarded = [row[0] for row in cursor.fetchall()]
    assert {*APPEND_ONLY} <= {*guarded}


@pytest.mark.django_db
def test_the_database_writes_to_the_disk_before_it_answers():
    """SQLite in the notebook's folder waits for the disk, keeps a log ahead, and holds foreign keys."""
    if connection.vendor != "sqlite":
        return  # PostgreSQL has settings of its own
    with connection.cursor() as cursor:
        found = {}
        for pragma in ("synchronous", "foreign_keys", "busy_timeout"):
            cursor.execute(f"PRAGMA {pragma}")
            found[pragma] = cursor.fetchone()[0]
    assert found == {"synchronous": 2, "foreign_keys": 1, "busy_timeout": 20000}


WISH = st.one_of(
    st.tuples(st.just("name"), st.sampled_from(["Hedge", "Wall", "Ditch", "Ö rim"])),
    st.tuples(st.just("add"), st.integers(1, 3)),
    st.tuples(st.just("take"), st.integers(0, 5)),
    st.tuples(st.just("size"), st.sampled_from(["1", "3 1/4", "12"])),
    st.tuples(st.just("undo"), st.just(0)),
    st.tuples(st.just("redo"), st.just(0)),
)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(wishes=st.lists(WISH, max_size=12))
def test_taking_back_everything_gives_what_was(small, wishes):
    """Whatever was done and undone: undoing to the bottom gives the beginning, redoing to the top the end."""
    with transaction.atomic():
        start = texts_of(small)
        for verb, value in wishes:
            do(small, verb, value)
        depth = len(stacks(small, "owner")[0])
        end = texts_of(small)
        for _ in range(depth):
            undo(name(), small, "owner", NOW)
        assert texts_of(small) == start
        for _ in range(depth):
            redo(name(), small, "owner", NOW)
        assert texts_of(small) == end
        transaction.set_rollback(True)


def do(tract: str, verb: str, value) -> None:
    """One wish of the law above, where it can be granted."""
    stems = store.parts_of(tract).stems
    if verb == "name":
        change(asked(tract, edits=[Edit("patch", "fence", {**PATCH, "name": value})]), NOW)
    elif verb == "add":
        change(asked(tract, added=[stem(f"{name()}", x_m="5") for _ in range(value)]), NOW)
    elif verb == "take" and value < len(stems):
        change(asked(tract, taken=[stems[value][0]]), NOW)
    elif verb == "size" and stems:
        row = list(stems[0])
        row[6] = value
        change(asked(tract, stems=[(row[0], tuple(row))]), NOW)
    elif verb == "undo" and stacks(tract, "owner")[0]:
        undo(name(), tract, "owner", NOW)
    elif verb == "redo" and stacks(tract, "owner")[1]:
        redo(name(), tract, "owner", NOW)
