"""records.jsonl: what was done counts towards a year's limit, so a slip must not make it vanish."""

import json

import pytest

BODY = {"patch": "rim", "product": "glyphosate-4lb", "ae_g": {"glyphosate": 120}}
GOOD = {"id": "e1", "kind": "treated", "at": "2025-09-30T09:30", "offset": -300, "by": "owner", "body": BODY}


def write(tract, *entries):
    """Write records.jsonl."""
    tract.write("records.jsonl", "".join(json.dumps(entry) + "\n" for entry in entries))


def without(key):
    """The good entry without one key."""
    return {k: v for k, v in GOOD.items() if k != key}


def test_lines_are_told(tract):
    """Blank lines are no entries, but they are lines."""
    tract.write("records.jsonl", "\n" + json.dumps(GOOD) + "\n\n{broken\n")

    problem = tract.problem()
    assert (problem.message, problem.file, problem.line) == ("json.syntax", "records.jsonl", 4)


@pytest.mark.parametrize("line", ["[]", "3", '"x"'])
def test_line_that_is_no_object(tract, line):
    """Each line is one object."""
    tract.write("records.jsonl", line)

    assert (tract.problem().message, tract.problem().line) == ("record.not_an_object", 1)


@pytest.mark.parametrize("key", ["id", "kind", "at", "offset", "by", "body"])
def test_missing_key(tract, key):
    """A key that must be there and is not is named."""
    write(tract, without(key))

    problem = tract.problem()
    assert (problem.message, problem.line, problem.column) == ("record.missing_key", 1, key)


@pytest.mark.parametrize(
    ("change", "message", "column"),
    [
        ({"by": 3}, "record.wrong_type", "by"),
        ({"by": "x" * 201}, "cell.too_long", "by"),
        ({"by": "\x1b[31m"}, "cell.odd_sign", "by"),
        ({"bye": "x"}, "record.unknown_key", "bye"),
        ({"offset": "-300"}, "record.wrong_type", "offset"),
        ({"offset": 6000}, "record.wrong_type", "offset"),
        ({"body": []}, "record.wrong_type", "body"),
        ({"body": {**BODY, "note": "\ud800"}}, "cell.odd_sign", "body"),
        ({"schema": 2}, "record.later_version", "schema"),
        ({"at": "yesterday"}, "record.at", "at"),
        ({"at": "2025-13-01"}, "record.at", "at"),
        ({"at": "20250930"}, "record.at", "at"),
        ({"at": "2025-09-30T09:30Z"}, "record.at", "at"),
        ({"kind": "treted"}, "record.kind_near", "kind"),
        ({"corrects": "e0"}, "record.corrects_nothing", "corrects"),
        ({"corrects": "e1"}, "record.corrects_itself", "corrects"),
        ({"body": {**BODY, "patch": "rimm"}}, "record.unknown_patch", "body.patch"),
        ({"body": {**BODY, "patch": 3}}, "record.unknown_patch", "body.patch"),
        ({"body": {"patch": "rim"}}, "record.wrong_type", "body.ae_g"),
        ({"body": {**BODY, "ae_g": {"glyphosate": "120"}}}, "record.amount", "body.ae_g"),
        ({"body": {**BODY, "ae_g": {"glyphosate": -1}}}, "record.amount", "body.ae_g"),
        ({"body": {**BODY, "ae_g": {"Glyphosate": 120}}}, "record.ingredient_spelled", "body.ae_g"),
    ],
)
def test_wrong_values(tract, change, message, column):
    """A value that would be misread or not counted is told with its line."""
    write(tract, {**GOOD, "id": "e0"} if "corrects" not in change else {**GOOD, "id": "z"}, {**GOOD, **change})

    problem = tract.problem()
    assert (problem.message, problem.line, problem.column) == (message, 2, column)


def test_id_twice(tract):
    """An entry that stands twice would count twice."""
    write(tract, GOOD, {**GOOD, "id": "e2"}, GOOD)

    problem = tract.problem()
    assert (problem.message, problem.line, problem.values) == (
        "record.id_twice", 3, {"id": "e1", "first_line": 1},
    )  # fmt: skip


def test_key_twice(tract):
    """A line in which a key stands twice is refused."""
    tract.write("records.jsonl", json.dumps(GOOD)[:-1] + ', "id": "e2"}')

    assert tract.problem().message == "json.key_twice"


def test_kind_that_is_not_counted(tract):
    """An entry of a kind this version does not count is kept, and asked about."""
    write(tract, GOOD, {**GOOD, "id": "e2", "kind": "weather seen"})

    question = tract.question()
    assert (question.message, question.line) == ("ask.kind_not_counted", 2)
    assert len(tract.read().tract.entries) == 2


def test_ingredient_that_is_only_like_one(tract):
    """Two ingredients may have names that are alike, so a likeness is only asked about."""
    write(tract, {**GOOD, "body": {**BODY, "ae_g": {"glyphosinate": 5}}})

    question = tract.question()
    assert (question.message, dict(question.values)["near"]) == ("ask.ingredient_near", "glyphosate")


def test_correction(tract):
    """An entry may correct one before or after it."""
    write(tract, {**GOOD, "corrects": "e2"}, {**GOOD, "id": "e2"})

    assert tract.read().tract.entries[0].corrects == "e2"


GOOD_BODIES = {
    "batch mixed": {"batch": "b", "mixed_ml": 10, "drawn": [{"product": "g", "jug": "jug 1", "ml": 5}]},
    "mix left": {"what": "discarded", "batch": "b", "ml": 1},
    "jug": {"what": "opened", "product": "g", "jug": "jug 1"},
    "marked": {"what": "cut", "rows": {"s1": 1}},
    "weather": {"wind_m_s": 1.5, "temp_c": -4, "source": "measured"},
    "work": {"patch": "rim", "method": "girdle", "stems": 3, "person_h": 1.5},
    "filled in": {"day": "2026-09-12", "values": {"for_whom": "x"}},
    "signed": {"day": "2026-09-12", "name": "x", "records": {"k": "{}"}},
    "permission": {"what": "cost share", "step": "granted", "name": "x"},
    "taken back": {"why": "x"},
}


@pytest.mark.parametrize("kind", GOOD_BODIES)
def test_each_kind_with_a_whole_body(tract, kind):
    """It is read, and nothing is asked about it."""
    write(tract, {**GOOD, "id": "e2", "kind": kind, "body": GOOD_BODIES[kind]})
    assert tract.read().tract.entries[0].kind == kind


@pytest.mark.parametrize(
    ("kind", "change", "message", "column"),
    [
        *((kind, {name: None}, "record.missing_key", f"body.{name}") for kind, name in (
            ("batch mixed", "batch"), ("batch mixed", "mixed_ml"), ("batch mixed", "drawn"), ("mix left", "what"),
            ("jug", "jug"), ("marked", "rows"), ("work", "person_h"), ("filled in", "values"), ("signed", "name"),
            ("permission", "step"), ("taken back", "why"),
        )),
        ("batch mixed", {"mixed_ml": -1}, "record.wrong_type", "body.mixed_ml"),
        ("batch mixed", {"mixed_ml": "10 mL"}, "record.wrong_type", "body.mixed_ml"),
        ("batch mixed", {"drawn": [{"product": "g", "jug": "jug 1"}]}, "record.wrong_type", "body.drawn"),
        ("jug", {"what": "drunk"}, "record.wrong_type", "body.what"),
        ("jug", {"ml": True}, "record.wrong_type", "body.ml"),
        ("marked", {"rows": {"s1": 1.5}}, "record.wrong_type", "body.rows"),
        ("marked", {"rows": ["s1"]}, "record.wrong_type", "body.rows"),
        ("weather", {"temp_c": "cold"}, "record.wrong_type", "body.temp_c"),
        ("weather", {"source": "heard"}, "record.wrong_type", "body.source"),
        ("work", {"people": "Ann"}, "record.wrong_type", "body.people"),
        ("filled in", {"values": {"for_whom": 3}}, "record.wrong_type", "body.values"),
        ("filled in", {"day": "x" * 201}, "record.wrong_type", "body.day"),
    ],
)  # fmt: skip
def test_a_body_that_would_be_misread(tract, kind, change, message, column):
    """What is missing in a body and what is of another sort is told with its line."""
    body = {k: v for k, v in {**GOOD_BODIES[kind], **change}.items() if v is not None}
    write(tract, GOOD, {**GOOD, "id": "e2", "kind": kind, "body": body})

    problem = tract.problem()
    assert (problem.message, problem.line, problem.column) == (message, 2, column)


@pytest.mark.parametrize("until", ["25:00", "9:40", "09:60", "noon"])
def test_a_time_within_a_day(tract, until):
    """Hours and minutes, two digits each."""
    write(tract, {**GOOD, "body": {**BODY, "until": until}})
    assert tract.problem().column == "body.until"
