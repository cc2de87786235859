"""The line of every key of a TOML text."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.gate.toml_lines import key_lines, line_of

TEXT = '''\
# top
name = "a # b [c]"
long = """
[not.a.table]
key = 1
"""
list = [
  "x = 1",
  [2, 3], # ]
]
inline = { a = 1, b = [ "}" ] }

[tract.soil]
"odd key" = 1
dotted.deep = 'it''s'

[[patches]]
id = "rim"
[patches.soil]
texture = "loam"
[[patches.parts]]
n = 1
[[patches.parts]]
n = 2

[[patches]]
id = "meadow"
[[patches.parts]]
n = 3
'''.replace("'it''s'", "'its'")


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("name",), 2), (("long",), 3), (("list",), 7), (("inline",), 11), (("inline", "b"), 11),
        (("tract", "soil"), 13), (("tract", "soil", "odd key"), 14),
        (("tract", "soil", "dotted", "deep"), 15), (("patches", 0), 17), (("patches", 0, "id"), 18),
        (("patches", 0, "soil", "texture"), 20), (("patches", 0, "parts", 1, "n"), 24),
        (("patches", 1, "id"), 27), (("patches", 1, "parts", 0, "n"), 29), (("patches", 1, "missing"), 26),
        (("nothing",), None),
    ],
)  # fmt: skip
def test_lines_of_a_text(path, line):
    """What looks like keys in long texts, lists and comments is none; arrays count within their table."""
    tomllib.loads(TEXT)

    assert line_of(key_lines(TEXT), path) == line


def paths(value, path=()):
    """The path of every key of a table."""
    for key, inner in value.items():
        yield (*path, key)
        if isinstance(inner, dict):
            yield from paths(inner, (*path, key))
        elif isinstance(inner, list) and inner and all(isinstance(one, dict) for one in inner):
            for number, one in enumerate(inner):
                yield from paths(one, (*path, key, number))


def test_every_key_has_a_line():
    """Each key the reader finds stands on a line that holds its name."""
    lines = key_lines(TEXT)

    for path in paths(tomllib.loads(TEXT)):
        line = line_of(lines, path)
        assert line is not None
        assert path[-1] in TEXT.split("\n")[line - 1]


@given(st.text(alphabet="[]{}.=\"'#ab\n\\ ", max_size=80))
def test_nothing_is_raised(text):
    """Whatever the text is, lines are found or not, and nothing is raised."""
    key_lines(text)
