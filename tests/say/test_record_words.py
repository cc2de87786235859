"""Every message, field, event and step of the records has words."""

import re
from pathlib import Path

import pytest

import stemward.ledger
from stemward.kinds import ENTRY_KINDS
from stemward.ledger.odd import Odd, odd
from stemward.ledger.poured import FATES
from stemward.ledger.records import HELD
from stemward.say.en import records as words
from stemward.say.records import entry_words, odd_words

SOURCES = sorted(Path(stemward.ledger.__file__).parent.glob("*.py"))
SAID = sorted({name for path in SOURCES for name in re.findall(r'\bodd\(\s*"(\w+)"', path.read_text())})


def test_every_oddity_has_words_and_every_word_is_said():
    """Nothing is told without a sentence, and no sentence is left over."""
    assert set(words.ODD) == set(SAID)


@pytest.mark.parametrize("message", SAID)
def test_an_oddity_names_its_sheet_and_line(message):
    """The sheet and the line stand before the sentence where they are known."""
    values = dict.fromkeys(re.findall(r"{(\w+)}", words.ODD[message]), "x")
    one = odd(message, sheet="red maple, Slope", line=3, **values)
    assert odd_words(one, "us").startswith("red maple, Slope. Line 3: ")
    assert "{" not in odd_words(one, "us")


def test_amounts_are_said_in_the_readers_units():
    """29.57 mL is an ounce."""
    one = Odd("more_left", (("mix", "the mix"), ("left_ml", 29.5735), ("there_ml", 59.147)))
    assert odd_words(one, "us").endswith("1 fl oz of 2 fl oz.")
    assert odd_words(one, "metric").endswith("29.6 mL of 59.1 mL.")


def test_every_field_and_kind_has_a_name():
    """Fields of a record, kinds of entries, what becomes of a rest."""
    assert set(words.FIELDS) == set(HELD)
    assert set(words.HINTS) <= set(HELD)
    assert set(words.KINDS) == set(ENTRY_KINDS)
    assert set(words.FATES) == set(FATES)


def test_every_part_of_an_entry_has_a_name():
    """Nothing stands on the page under the name it has in the file; no name is left over but that of the reason."""
    parts = {said.name for kind in ENTRY_KINDS.values() for said in kind}
    assert set(words.SAID) - {"why"} == parts - {"why"}


@pytest.mark.parametrize(("units", "mix", "acid"), [("us", "4 fl oz", "0.5 oz"), ("metric", "118 mL", "14 g")])
def test_an_entry_is_said_in_the_readers_units_and_names(units, mix, acid):
    """118.294 mL is 4 fl oz and 14.2 g half an ounce (NIST Special Publication 811, 2008); few stems stand by their
    ids, many by their number."""
    body = {"patch": "rim", "mix_ml": 118.294, "ae_g": {"imazapyr": 14.2}, "method": "cut stump",
            "rows": {"a1": 1, "m3": 20}, "plan": "QH-0003"}  # fmt: skip
    said = entry_words(body, units, {"rim": "Quarry rim"})
    assert said.startswith("patch: Quarry rim; ")
    assert f"mix used: {mix}" in said
    assert acid in said
    assert "stems: a1, m3: 20" in said
    assert "QH-0003" not in said
    many = entry_words({"rows": {f"a{n}": 1 for n in range(30)}}, units, {})
    assert many == "stems: 30 of them"
