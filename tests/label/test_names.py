"""Names of plants are read from a list however it is set."""

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.label.reader.find.names import known_names, names_in_list, names_of_row
from stemward.label.reader.phrases import METHOD_WORDS, METHODS, PLACE_WORDS, PLACES

NAMES = (
    "red maple", "black locust", "kudzu", "multiflora rose", "autumn olive", "princess tree", "tree-of-heaven",
    "box elder", "poison ivy", "chinese tallow", "quaking aspen", "sweetgum", "osage orange", "green ash",
    "saltcedar", "white oak",
)  # fmt: skip
SOME = st.lists(st.sampled_from(NAMES), min_size=2, max_size=6, unique=True)


def listed(text):
    """The names of a list under the plants' heading."""
    return [name for name, _ in names_in_list(text, under_heading=True)]


@given(SOME, st.sampled_from((", ", "; ", " • ", " / ")), st.booleans())
def test_a_list_gives_its_names_in_order(names, joint, capitals):
    """Whatever parts them, with capitals or without."""
    shown = [name.capitalize() for name in names] if capitals else names
    assert listed(joint.join(shown)) == names


@given(SOME, st.sampled_from((" and ", " or ", ", and ", " as well as ")))
def test_the_last_may_be_joined_by_a_word(names, joint):
    """A list as prose has it."""
    assert listed(f"{', '.join(names[:-1])}{joint}{names[-1]}") == names


@given(SOME)
def test_a_row_gives_its_names(names):
    """Each in a cell of its own."""
    assert names_of_row(" | ".join(name.capitalize() for name in names)) == names


@given(
    SOME, st.sampled_from(("Controls {}.", "Expect good control of {} in a season.", "It works on {}, among others."))
)
def test_known_names_are_found_in_prose(names, words):
    """In a sentence with other words around them."""
    assert known_names(words.format(", ".join(names))) == names


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("Maple, red; Locust, black", ["red maple", "black locust"]),
        ("Maples (red, sugar)", ["red maple", "sugar maple"]),
        ("Elm - American, slippery, winged", ["american elm", "slippery elm", "winged elm"]),
        ("red, white and black oaks", ["red oak", "white oak", "black oak"]),
        ("Red maple (Acer rubrum), kudzu (Pueraria montana)", ["red maple", "kudzu"]),
        ("Ailanthus altissima (tree-of-heaven)", ["tree-of-heaven"]),
        ("Red maple Kudzu", ["red maple", "kudzu"]),
        ("Red maple 1.5 %", ["red maple"]),
        ("Species: red maple, kudzu", ["red maple", "kudzu"]),
    ],
)
def test_turned_and_grouped_names(text, names):
    """Names with the words for their kind before or behind; common practice, no source."""
    assert listed(text) == names


with (Path(__file__).parent / "said.csv").open(newline="", encoding="utf-8") as file:
    SENTENCES = [row["words"] for row in csv.DictReader(file)]


@pytest.mark.parametrize(("letters", "named"), [(METHOD_WORDS, METHODS), (PLACE_WORDS, PLACES)], ids=["ways", "places"])
def test_a_quick_look_misses_nothing(letters, named):
    """Where a way or a place is named, some of the letters of the quick look stand too."""
    found = [text for text in SENTENCES if any(pattern.search(text) for _, pattern in named)]
    assert len(found) > 100
    assert [text for text in found if not any(some in text.lower() for some in letters)] == []
