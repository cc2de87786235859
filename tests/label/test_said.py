"""Sentences as labels word them, invented, and exactly what each says.

The table holds the heading a sentence stands under, its words (lines parted by //), and all facts a person reads in
it: "~" after a value where the words only advise, "?" where a condition or a second figure leaves it open, "@" before
what it is for. Shapes are those of the project's notes on labels and of common practice, no source; figures are
made up.
"""

import csv
from pathlib import Path

import pytest

from stemward.label.reader import Line, propose

MARKS = {"sure": "", "likely": " ~", "unsure": " ?"}
TEXTS = ("first aid", "container", "disposal", "environmental hazard")
with (Path(__file__).parent / "said.csv").open(newline="", encoding="utf-8") as file:
    ROWS = [tuple(row.values()) for row in csv.DictReader(file)]


def lines_under(heading, words):
    """Lines of one page, a heading above them if there is one."""
    texts = ([heading.upper(), *words.split("//")]) if heading else words.split("//")
    return [Line(1, text.strip(), (0, 20 * n, 100, 20 * n + 8), 8) for n, text in enumerate(texts)]


def shown(one):
    """A proposal as the table writes it."""
    scope = dict(one.scope)
    where = "".join(f" @{'+'.join(scope[name])}" for name in ("role", "site") if name in scope)
    return f"{one.kind} = {one.value}{MARKS[one.sure]}{where}"


@pytest.mark.parametrize(("heading", "words", "says"), ROWS, ids=[words[:60] for _, words, _ in ROWS])
def test_says_that_and_no_more(heading, words, says):
    """Every fact of the sentence, and none besides."""
    found = [
        shown(one)
        for one in propose(lines_under(heading, words))
        if one.kind not in TEXTS and not (one.kind == "method" and heading != "directions")
    ]
    assert sorted(found) == says.split("\n") if says else found == []
