"""Laws that hold for every check, whatever the label says. Each row is named by the check it tests."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checks.build import (
    FULL_LABEL,
    LB_ACRE,
    PATCH,
    PRODUCT,
    TREE,
    WAY,
    case,
    changed,
    fact,
    stems_of,
    with_facts,
    worst,
)
from stemward.checks import ALL
from stemward.kinds import Scope, Shape, Spared, Weight

IDS = [c.id for c in ALL]
LABEL_CHECKS = [c for c in ALL if "label facts" in c.needs]
WATER = Spared("spring", "water", Shape("point", (((30.0, 0.0),),)))
WELL = Spared("well", "well", Shape("point", (((60.0, 0.0),),)))

SCOPES = st.sampled_from([Scope(), Scope(method=("cut stump",)), Scope(site=("woods",)), Scope(carrier=("water",))])

RESTRICTIONS = [
    fact("state excluded", "WI"),
    fact("state only", "MN"),
    fact("site forbidden", "woods"),
    fact("method forbidden", "cut stump"),
    fact("only listed methods", "yes"),
    fact("only listed plants", "yes"),
    fact("less is forbidden", "yes"),
    fact("strongest mix", 0.3),
    fact("most per year", 0.5 * LB_ACRE),
    fact("restricted use", "yes"),
    fact("distance to water", 4000.0),
    fact("distance to wells", 9000.0),
    fact("equipment", "respirator"),
    fact("most per application", 0.5 * LB_ACRE),
    fact("most per stem", 0.2),
    fact("carrier forbidden", "water"),
    fact("mix partner forbidden", "any"),
    fact("least stem", 6.0),
    fact("greatest stem", 7.0),
    fact("season forbidden", "all year"),
    fact("longest from cut to treatment", 60.0),
    fact("vessel forbidden", "plastic"),
    fact("mixing distance to wells", 9000.0),
    fact("endangered species bulletin", "yes"),
    fact("grazing wait", 86400.0),
    fact("entry interval", 86400.0),
]
"""Each is stricter than the same matter in the full label."""


PARTNER = replace(PRODUCT, id="g5", contents=(replace(PRODUCT.contents[0], ingredient="imazapyr"),))
PASTURE = replace(PATCH, answers=(*((q, a) for q, a in PATCH.answers if q != "grazed"), ("grazed", "yes")))


def busy(product, partner):
    """Situations in which every check that leans on the label has something to look at."""
    leaves = replace(WAY, how="foliar", tool="backpack")
    ways = [WAY, leaves, replace(WAY, how="hack and squirt"), replace(WAY, partner="g5", partner_frac=0.02)]
    for way in ways:
        yield {
            "product": product, "way": way, "patch": PASTURE, "spared": (TREE, WATER, WELL),
            "partner": partner if way.partner else None,
        }  # fmt: skip


def level(check, **given_):
    """The heaviest weight of one check in a case with water and a well near."""
    given_.setdefault("spared", (TREE, WATER, WELL))
    return worst(check.run(case(**given_)))


@pytest.mark.parametrize("check", LABEL_CHECKS, ids=[c.id for c in LABEL_CHECKS])
def test_without_facts_no_label_check_says_checked(check):
    """With no label facts at all nothing that leans on the label has been looked at."""
    found = [
        f for given in busy(replace(PRODUCT, facts=()), replace(PARTNER, facts=())) for f in check.run(case(**given))
    ]
    assert found
    assert all(f.weight != Weight.CHECKED for f in found)


@pytest.mark.parametrize("check", LABEL_CHECKS, ids=[c.id for c in LABEL_CHECKS])
def test_proposed_facts_count_no_more_than_none(check):
    """Facts that a program proposes and nobody has read are no facts."""
    facts = tuple(replace(f, reading="proposed") for f in FULL_LABEL)
    cases = busy(replace(PRODUCT, facts=facts), replace(PARTNER, facts=facts))
    found = [f for given in cases for f in check.run(case(**given))]
    assert all(f.weight != Weight.CHECKED for f in found)


@pytest.mark.parametrize("check", ALL, ids=IDS)
@given(restriction=st.sampled_from(RESTRICTIONS), scope=SCOPES, share=st.sampled_from([0.2, 0.4, 0.5, 0.7]))
def test_a_restriction_more_never_makes_a_finding_milder(check, restriction, scope, share):
    """Adding a rule to a label that has been read in full never lowers what any check says."""
    way = replace(WAY, concentration_frac=share)
    before = level(check, way=way)
    after = level(check, way=way, product=with_facts(PRODUCT, replace(restriction, scope=scope)))
    assert after >= before


ONLY_WHERE_READ = {"most-per-stem": ("most per stem",), "stem-size": ("least stem", "greatest stem")}
"""Checks that ask about a kind of fact for some ways only (a dose a stem is given by labels for injection), and say
nothing for others unless the label was read to have one: saying nothing is not saying that it was looked at."""


@pytest.mark.parametrize("check", ALL, ids=IDS)
@given(
    restriction=st.sampled_from([None, *RESTRICTIONS]), gone=st.integers(0, 60), share=st.sampled_from([0.2, 0.5, 0.7])
)
def test_a_fact_less_never_turns_a_stop_or_question_into_checked(check, restriction, gone, share):
    """Forgetting one fact of a label never makes an objection disappear."""
    product = PRODUCT
    if restriction is not None:
        if restriction.kind == "equipment":
            # A label that lists one piece more also counts one more.
            product = changed(with_facts(product, restriction), fact("pieces of equipment", 3.0))
        else:
            product = changed(product, restriction)
    facts = product.facts
    way = replace(WAY, concentration_frac=share)
    before = level(check, way=way, product=product)
    left = replace(product, facts=tuple(f for i, f in enumerate(facts) if i != gone % len(facts)))
    if ({f.kind for f in facts} - {f.kind for f in left.facts}) & {*ONLY_WHERE_READ.get(check.id, ())}:
        return
    after = level(check, way=way, product=left)
    if before >= Weight.FIND_OUT:
        assert after > Weight.CHECKED


@pytest.mark.parametrize("check", ALL, ids=IDS)
@given(
    sizes=st.lists(st.floats(1, 40), min_size=1, max_size=6),
    far=st.floats(0, 60),
    ingredient=st.sampled_from(["glyphosate", "imazapyr", "triclopyr"]),
)
def test_a_stem_more_never_makes_a_finding_milder(check, sizes, far, ingredient):
    """One more stem to treat never lowers what a check says about the same label and load."""
    contents = (replace(PRODUCT.contents[0], ingredient=ingredient),)
    product = replace(PRODUCT, contents=contents)
    places = [float(i) for i in range(len(sizes))]
    few = stems_of(sizes, places, [0.0] * len(sizes))
    more = stems_of([*sizes, 3.0], [*places, far], [0.0] * (len(sizes) + 1))
    assert level(check, product=product, stems=more) >= level(check, product=product, stems=few)


@pytest.mark.parametrize("check", ALL, ids=IDS)
@given(order=st.permutations(list(range(len(FULL_LABEL)))))
def test_the_order_of_facts_changes_nothing(check, order):
    """A label entered in another order is the same label."""
    mixed = replace(PRODUCT, facts=tuple(FULL_LABEL[i] for i in order))
    assert level(check, product=mixed) == level(check)
