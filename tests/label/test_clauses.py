"""Sentences with several limits: a clause for each way, place or matter, and no clause where it cannot be parted."""

import pytest

from label.test_said import lines_under
from stemward.label.reader import propose
from stemward.label.reader.clauses import apart


@pytest.mark.parametrize(
    ("text", "clauses"),
    [
        ("Do not apply within 50 feet of streams or within 15 feet of wells.",
         ["Do not apply within 50 feet of streams", "Do not apply within within 15 feet of wells."]),
        ("Do not graze for 14 days or harvest hay for 30 days after application.",
         ["Do not graze for 14 days", "Do not harvest hay for 30 days after application."]),
        ("Use a 50% mix for stump treatment and a 4% mix for foliar spraying.",
         ["Use a 50% mix for stump treatment", "Use 4% mix for foliar spraying."]),
        # One figure for two ways, one way with two figures, and no figure at all stay one.
        ("Use 20% on stumps and on basal bark.", ["Use 20% on stumps and on basal bark."]),
        ("Use 10% or 20% on stumps.", ["Use 10% or 20% on stumps."]),
        ("Keep out of lakes and wells.", ["Keep out of lakes and wells."]),
    ],
)  # fmt: skip
def test_a_sentence_in_clauses(text, clauses):
    """Each clause has a figure and its own matter, under the words that open the sentence."""
    assert apart(text) == clauses


def scoped(heading, words):
    """What is proposed: kind, value, and for which way."""
    return {(one.kind, one.value, dict(one.scope).get("method", ())) for one in propose(lines_under(heading, words))}


def test_a_strength_is_for_its_own_way_alone():
    """Undiluted is for stumps; bark has 20 %."""
    found = scoped("directions", "For basal bark use 20% product in oil; for cut stumps use undiluted product.")
    assert ("strongest mix", "20 %", ("basal bark",)) in found
    assert ("strongest mix", "100 %", ("cut stump",)) in found
    assert not any(kind == "strongest mix" and value == "100 %" and "basal bark" in ways for kind, value, ways in found)


def test_not_less_and_not_more_are_two_bounds():
    """The lower figure is the weakest mix, the higher the strongest."""
    found = scoped("foliar", "Prepare a spray with not less than 1% and not more than 4% product.")
    assert ("weakest mix", "1 %", ("foliar",)) in found and ("strongest mix", "4 %", ("foliar",)) in found


def test_small_stems_that_may_not_be_treated_give_a_least_size():
    """Not a greatest one."""
    kinds = {
        kind
        for kind, _, _ in scoped("tree injection", "Stems under 9 inches DBH should not be treated by this method.")
    }
    assert "least stem" in kinds and "greatest stem" not in kinds


def test_water_and_wells_have_their_own_distances():
    """Each figure for what stands nearest to it."""
    found = {
        (k, v)
        for k, v, _ in scoped("restrictions", "Do not apply within 50 feet of streams or within 15 feet of wells.")
    }
    assert {("distance to water", "50 ft"), ("distance to wells", "15 ft")} <= found
    assert ("distance to wells", "50 ft") not in found
