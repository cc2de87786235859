"""What a figure limits does not hang on which way round its rule is worded."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.label.reader.find.bounds import limit
from stemward.label.reader.phrases import SPEED

FIGURES = st.integers(1, 40)
OVER = ("above", "over", "greater than", "more than", "stronger than", "in excess of")
UNDER = ("below", "under", "less than", "lower than", "weaker than")
FORBIDS = (
    "Do not spray when the wind is {side} {figure} mph.",
    "When the wind is {side} {figure} mph, do not spray.",
    "Stop spraying if wind is {side} {figure} mph.",
    "Spraying in winds {side} {figure} mph is prohibited.",
)
ALLOWS = (
    "Spray only when the wind is {side} {figure} mph.",
    "Do not spray unless the wind is {side} {figure} mph.",
    "Wait until the wind is {side} {figure} mph.",
    "Winds {side} {figure} mph are acceptable.",
)


def what(text):
    """What the one speed of a sentence limits."""
    return limit(text, SPEED.search(text))


@given(FIGURES, st.sampled_from(OVER), st.sampled_from(FORBIDS))
def test_what_is_forbidden_above_is_a_most(figure, side, rule):
    """Whatever the words and wherever the rule stands."""
    assert what(rule.format(side=side, figure=figure)) == "most"


@given(FIGURES, st.sampled_from(UNDER), st.sampled_from(FORBIDS))
def test_what_is_forbidden_below_is_a_least(figure, side, rule):
    """The same the other way round."""
    assert what(rule.format(side=side, figure=figure)) == "least"


@given(FIGURES, st.sampled_from(OVER), st.sampled_from(UNDER), st.sampled_from(ALLOWS))
def test_what_is_allowed_turns_it_round(figure, over, under, rule):
    """Allowed below is a most, allowed above a least."""
    assert what(rule.format(side=under, figure=figure)) == "most"
    assert what(rule.format(side=over, figure=figure)) == "least"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Wind must not be greater than 10 mph.", "most"),
        ("Wind must not be less than 3 mph.", "least"),
        ("Do not exceed a wind of 10 mph.", "most"),
        ("Maximum wind: 10 mph", "most"),
        ("Minimum wind: 3 mph", "least"),
        ("10 mph or less", "most"),
        ("3 mph or more", "least"),
        ("10 mph max.", "most"),
        ("3 mph min.", "least"),
        ("Do not spray at 12 mph or higher.", "most"),
        ("The limit is a wind of 10 mph.", "most"),
        ("Too windy to spray: over 9 mph", "most"),
        ("A nozzle for 5 mph", ""),
    ],
)
def test_words_that_hold_their_own_negation(text, says):
    """Plain wordings of rules; common practice, no source."""
    assert what(text) == says


def test_two_figures_of_one_sentence_each_have_their_own_side():
    """Between two winds: the lower is the least, the higher the most."""
    text = "When the wind drops under 3 mph or rises over 12 mph, shut the sprayer down."
    assert [limit(text, m) for m in SPEED.finditer(text)] == ["least", "most"]
