"""Every message a check can give has words, and the words keep to the voice."""

import ast
import re
from pathlib import Path

import pytest

from checks.build import findings
from checks.test_each_check import CASES
from stemward.checks import ALL
from stemward.gate.demo import texts
from stemward.plan.write import plain
from stemward.say import Speaker, en
from stemward.say.problems import PROBLEMS, QUESTIONS, VERIFIED

CHECKS = Path(__file__).parents[2] / "src/stemward/checks"
FORBIDDEN = re.compile(r"\b(safe|safely|legal|approved|compliant|violation|OK|fine)\b", re.I)


def emitted():
    """Message ids that checks give, from their source: the third argument of `finding`, and tables of messages."""
    found = set()
    for path in CHECKS.glob("*.py"):
        text = path.read_text()
        id_ = re.search(r'^ID = "([a-z-]+)"', text, re.M)
        if not id_:
            continue
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "finding":
                for constant in ast.walk(node.args[2]):
                    if isinstance(constant, ast.Constant) and re.fullmatch(r"[a-z][a-z_ ]*", str(constant.value)):
                        found.add(f"{id_[1]}.{constant.value}")
            if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "message":
                for constant in ast.walk(node.value):
                    if isinstance(constant, ast.Constant) and re.fullmatch(r"[a-z_]+", str(constant.value)):
                        found.add(f"{id_[1]}.{constant.value}")
    return found


@pytest.mark.parametrize("message", sorted(emitted()))
def test_every_message_has_words(message):
    """A check says nothing for which there are no words."""
    shared = message.partition(".")[2] in en.findings.OPEN
    # Words between quotes in a call may be values of a comparison, not messages.
    assert shared or message in en.findings.MESSAGES or message.partition(".")[2] in ("not found", "stump", "decided")


@pytest.mark.parametrize("row", CASES, ids=[f"{c[0]}: {c[3]}" for c in CASES])
def test_whatever_a_check_says_can_be_said(row):
    """Every finding of every case comes out as a sentence with no placeholder left."""
    plan = {
        "treatments": [],
        "tract": {"patches": [], "products": [], "spared": [], "asked": [{"message": "ask.odd_size", "values": {
            "count": 1, "id": "s1", "typed": "175", "odd_above": 150, "unit": "cm"}, "file": "stems.csv", "line": 3,
            "column": "diameter_cm"}]},
    }  # fmt: skip
    for found in findings(row[0], **row[1]):
        said = Speaker(plan).finding(plain(found))
        assert said.text and "{" not in said.text + said.do


def test_no_words_without_a_check():
    """There are no words for checks that do not exist."""
    assert {m.partition(".")[0] for m in en.findings.MESSAGES} == {c.id for c in ALL}


ALL_WORDS = [
    *(t for pair in en.findings.MESSAGES.values() for t in pair),
    *(t for pair in en.findings.OPEN.values() for t in pair),
    *en.stages.STAGES.values(),
    *(c for group in en.cautions.CAUTIONS.values() for c in group),
    *en.cautions.EMERGENCY,
    *en.paper.WORDS.values(),
    *PROBLEMS.values(),
    *QUESTIONS.values(),
    *VERIFIED.values(),
]


@pytest.mark.parametrize("words", sorted(set(ALL_WORDS)))
def test_words_promise_nothing_and_shout_at_nobody(words):
    """Nothing is called safe or legal, nobody is shouted at, placeholders are named."""
    assert not FORBIDDEN.search(words)
    assert "!" not in words
    assert "{}" not in words and "{0}" not in words


@pytest.mark.parametrize("text", [t for t, _ in en.findings.MESSAGES.values()])
def test_sentences_are_short(text):
    """At most three sentences and a half of about 22 words, 30 at the most."""
    sentences = [s for s in re.split(r"(?<=[.?]) ", text) if s]
    assert len(sentences) <= 4
    assert max(len(s.split()) for s in sentences) <= 30


SOMETHING_TO_DO = ("label-at-hand.none", "stock.none", "mix-partner.not_forbidden")
"""Messages that share their last word with one that was only looked at."""


def test_weights_that_stop_or_ask_say_what_to_do():
    """Every message that can stop or ask has something to do; what was checked has not."""
    for message, (_, do) in en.findings.MESSAGES.items():
        looked_at = message.partition(".")[2] in {
            "named", "registered", "within", "no_limit", "no_route_known", "nothing_near", "no_kin", "goes", "complete",
            "not_restricted", "far_enough", "answered", "asked", "same", "read", "fits", "known", "enough", "as_meant",
            "grows", "added", "none_asked", "lot", "not_shut", "none", "animals_no_limit", "hay_no_limit",
            "not_forbidden", "dry", "fades", "concentrate", "outside", "clear", "small", "not_alone", "several",
            "inside", "not_sprayed", "far", "no_short_way", "held_fast", "own_land", "measured", "good",
            "sprouts_by_then", "nothing_on_record", "granted", "cost_share_granted",
        }  # fmt: skip
        assert bool(do) != (looked_at and message not in SOMETHING_TO_DO), message


def test_the_example_is_marked_invented_in_every_file():
    """Every product and the tract of the example say that they are invented."""
    for name, text in texts().items():
        if name.endswith(".toml") and name != "choices.toml":
            assert "invented = true" in text
