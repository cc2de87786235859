"""Every problem and question of the gate has words that take exactly its values."""

from dataclasses import dataclass, field

import pytest

from stemward.gate.problems import MESSAGES
from stemward.say.problems import PROBLEMS, QUESTIONS, problem_line, question_line


@dataclass
class Noted:
    """A problem as the gate notes it."""

    message: str
    values: dict = field(default_factory=dict)
    file: str = "stems.csv"
    line: int | None = 3
    column: str = "x_m"
    expected: str = "12.5"


NUMBERS = (
    "_m",
    "_mb",
    "_cm",
    "_m2",
    "_g_l",
    "low",
    "high",
    "count",
    "rows",
    "most",
    "span_x",
    "span_y",
    "median",
    "odd_above",
)


def values_of(message):
    """Values of the kind that each name holds."""
    return {name: 3.0 if name.endswith(NUMBERS) else "word" for name in MESSAGES[message]}


def test_words_for_all_and_for_no_others():
    """The gate's messages and the words for them are the same list."""
    assert set(PROBLEMS) | set(QUESTIONS) == set(MESSAGES)


@pytest.mark.parametrize("message", sorted(MESSAGES))
def test_each_makes_a_sentence_with_its_place(message):
    """A line names file, line and column, and leaves no gap."""
    values = values_of(message)
    if message in PROBLEMS:
        line = problem_line(Noted(message, values))
        assert line.startswith("stems.csv, line 3, x_m: ")
        assert "Expected for example: 12.5." in line
    else:
        line = question_line({"message": message, "values": values, "file": "stems.csv", "line": 3, "column": ""})
        assert line.startswith("stems.csv, line 3: ")
    assert "{" not in line and "  " not in line
