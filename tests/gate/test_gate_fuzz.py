"""Whatever happens to the bytes of a good folder, it is read or refused, and nothing else is raised."""

import json

from hypothesis import given, settings
from hypothesis import strategies as st

NAMES = st.sampled_from(
    ["tract.toml", "stems.csv", "patches.geojson", "spared.geojson", "shelf/glyphosate.toml", "choices.toml",
     "records.jsonl"]
)  # fmt: skip
TOKENS = [
    *(bytes([code]) for code in b"\0\xff\n\r,;\"'[{}=#-.\xc3\t 0"),
    b"]]", b"1e999", b"nan", b"9" * 400, b"\xef\xbb\xbf", b"\xe2\x80\xae", b"\\ud800", b"null", b"true",
    b"[]", b"{}", b'""', b"\x1b[0m", b"-1", b"1/0", b"1'",
]  # fmt: skip
SLOW = settings(max_examples=100, deadline=None)


@SLOW
@given(NAMES, st.data())
def test_bytes_changed(outcome, good, name, data):
    """Up to four pieces of one file cut out, doubled or put in the place of others."""
    raw = good[name]
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(raw)))
        end = data.draw(st.integers(at, min(len(raw), at + 12)))
        piece = data.draw(st.sampled_from([b"", raw[at:end] * 2, *TOKENS]))
        raw = raw[:at] + piece + raw[end:]

    assert outcome({**good, name: raw})[0] in ("read", "refused")


@SLOW
@given(NAMES, st.binary(max_size=60))
def test_bytes_of_any_kind(outcome, good, name, raw):
    """A file of any bytes at all."""
    assert outcome({**good, name: raw})[0] in ("read", "refused")


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=4),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=6,
)


def places(value, path=()):
    """The path of every value within a value, itself first."""
    yield path
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in steps:
        yield from places(inner, (*path, key))


def put(value, path, new):
    """A copy of a value with another one at a path."""
    if not path:
        return new
    copy = dict(value) if isinstance(value, dict) else list(value)
    copy[path[0]] = put(copy[path[0]], path[1:], new)
    return copy


@SLOW
@given(st.sampled_from(["patches.geojson", "spared.geojson", "records.jsonl"]), JSON, st.data())
def test_json_of_any_kind(outcome, good, name, new, data):
    """Any value in the place of any other of a JSON file."""
    value = json.loads(good[name])
    path = data.draw(st.sampled_from(list(places(value))))

    assert outcome({**good, name: json.dumps(put(value, path, new)).encode()})[0] in ("read", "refused")


TOML = [
    "1",
    "-1.5",
    "nan",
    "true",
    "2025-09-30",
    "09:30:00",
    "[]",
    "[[]]",
    "{}",
    "[{}]",
    '"x"',
    '["x"]',
    '""',
]


@SLOW
@given(st.sampled_from(["tract.toml", "shelf/glyphosate.toml", "choices.toml"]), st.data())
def test_toml_of_any_kind(outcome, good, name, data):
    """A value of any type in the place of any other of a TOML file."""
    lines = good[name].decode().split("\n")
    at = data.draw(st.sampled_from([n for n, line in enumerate(lines) if " = " in line]))
    lines[at] = lines[at].partition(" = ")[0] + " = " + data.draw(st.sampled_from(TOML))

    assert outcome({**good, name: "\n".join(lines).encode()})[0] in ("read", "refused")


@SLOW
@given(st.data())
def test_cell_of_any_kind(outcome, good, data):
    """Any text in the place of any cell, also a quote or delimiter too many."""
    lines = good["stems.csv"].decode().split("\n")
    at = data.draw(st.integers(0, 3))
    cells = lines[at].split(",")
    cells[data.draw(st.integers(0, len(cells) - 1))] = data.draw(st.text(max_size=12))
    lines[at] = ",".join(cells)
    raw = "\n".join(lines).encode("utf-8", "surrogatepass")

    assert outcome({**good, "stems.csv": raw})[0] in ("read", "refused")
