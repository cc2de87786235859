"""Which label fact decides: the ten worked examples of the page on label facts, and laws of scopes."""

import re
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conftest import read_folder
from stemward.kinds import LabelFact, Scope
from stemward.label import KINDS, Situation, covers, nests, resolve

PAGE = (Path(__file__).parents[2] / "docs/label-facts.md").read_text()
EXAMPLES = re.findall(r"### (\d+\. .*?)\n.*?```toml\n(.*?)```", PAGE, re.S)
PRODUCT = """
id = "x"
name = "Example"
invented = true
formulation = "salt in water"

[[ingredients]]
ingredient = "glyphosate"
form = "isopropylamine salt"
strength = "4 lb ae/gal"

"""


def test_there_are_ten_worked_examples():
    """The page on label facts holds ten examples."""
    assert len(EXAMPLES) == 10


@pytest.mark.parametrize(("name", "block"), EXAMPLES, ids=[name for name, _ in EXAMPLES])
def test_worked_example(name, block, demo_folder):
    """An example of the page gives the answer it promises, read through the gate as a user's file would be."""
    facts_text, _, expect_text = block.partition("[expect]")
    (demo_folder / "shelf/x.toml").write_text(PRODUCT + facts_text)
    product = read_folder(demo_folder).tract.product("x")
    expect = tomllib.loads(expect_text)
    situation = {k: tuple(v) if isinstance(v, list) else v for k, v in expect["situation"].items()}
    got = resolve(product.facts, expect["kind"], Situation(**situation), expect.get("of"))
    assert got.outcome == expect["outcome"]
    if "value" in expect:
        assert got.fact.value == pytest.approx(expect["value"])
    if "standing" in expect:
        assert got.fact.standing == expect["standing"]


WORDS = {
    "method": ["cut stump", "hack and squirt"],
    "carrier": ["water", "oil"],
    "site": ["woods", "non-crop", "wet"],
    "state": ["WI", "NY"],
}
SCOPES = st.builds(
    Scope,
    **{name: st.lists(st.sampled_from(words), max_size=2, unique=True).map(tuple) for name, words in WORDS.items()},
    stem_cm=st.none() | st.sampled_from([(0.0, 5.0), (5.0, 20.0), (0.0, 20.0)]),
)
SITUATIONS = st.builds(
    Situation,
    **{name: st.sampled_from(words) for name, words in WORDS.items()},
    stem_cm=st.sampled_from([(1.0, 2.0), (6.0, 9.0)]),
)
FIGURES = st.builds(
    lambda scope, value: LabelFact("strongest mix", "says", value, "read", scope),
    SCOPES,
    st.sampled_from([0.1, 0.25, 0.5]),
)


@given(SCOPES, SCOPES, SITUATIONS)
def test_what_a_narrower_scope_covers_the_wider_covers_too(inner, outer, situation):
    """A scope inside another covers nothing that the other does not."""
    if nests(inner, outer) and covers(inner, situation):
        assert covers(outer, situation)


@given(SCOPES, SCOPES, SCOPES)
def test_nesting_is_an_order(a, b, c):
    """Every scope nests in itself, and nesting carries on."""
    assert nests(a, a)
    if nests(a, b) and nests(b, c):
        assert nests(a, c)


@given(st.lists(FIGURES, max_size=6), SITUATIONS, st.randoms())
def test_order_of_facts_changes_nothing(facts, situation, random):
    """The same label entered in another order says the same."""
    mixed = list(facts)
    random.shuffle(mixed)
    one, other = resolve(facts, "strongest mix", situation), resolve(mixed, "strongest mix", situation)
    assert one.outcome == other.outcome
    assert {f.value for f in one.facts} == {f.value for f in other.facts}


@given(st.lists(FIGURES, max_size=6), SITUATIONS)
def test_no_deciding_fact_is_wider_than_another_that_covers(facts, situation):
    """No fact decides while a narrower one that covers the treatment says something else."""
    got = resolve(facts, "strongest mix", situation)
    if got.outcome != "decided":
        return
    covering = [f for f in facts if covers(f.scope, situation)]
    for other in covering:
        for fact in got.facts:
            if nests(other.scope, fact.scope) and not nests(fact.scope, other.scope):
                assert other.value == fact.value


@given(st.lists(FIGURES, max_size=6), SITUATIONS)
def test_unread_facts_decide_nothing(facts, situation):
    """What is only proposed leaves the matter open."""
    proposed = [replace(f, reading="proposed") for f in facts]
    assert resolve(proposed, "strongest mix", situation).outcome in ("unread", "proposed")


def test_dates_may_wrap_over_new_year():
    """A rule from November to February covers January and not June."""
    winter = Scope(dates=((11, 1), (2, 28)))
    assert covers(winter, Situation(date=(1, 15)))
    assert not covers(winter, Situation(date=(6, 15)))
    assert not covers(winter, Situation())


@pytest.mark.parametrize("kind", KINDS.values(), ids=list(KINDS))
def test_every_kind_says_what_it_holds(kind):
    """Each kind of fact has a value type, a unit where it is a number, and a meaning for not found."""
    assert kind.value in ("number", "choice", "text", "yes-no")
    assert kind.not_found
    if kind.value == "number":
        assert kind.dimension
    if kind.value == "choice":
        assert kind.choices
