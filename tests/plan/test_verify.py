"""A plan is worked again from its own file, and whatever was changed in it is noticed."""

import copy
import datetime
import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.handbook import load
from stemward.plan import as_data, draw_up, to_json, verify
from stemward.plan.write import code_of

AS_OF = datetime.date(2026, 10, 10)


@pytest.fixture(scope="module")
def plan(demo_tract):
    """The demo's plan as read back from its JSON."""
    return json.loads(to_json(as_data(draw_up(demo_tract, load(), AS_OF, "land"))))


def test_the_demo_plan_works_out_again(plan):
    """Every sum agrees, and so does the code."""
    result = verify(plan)
    assert result.problems == ()
    assert result.steps > 30


def changes(plan):
    """Numbers in the plan that someone might change, as paths."""
    for i, step in enumerate(plan["steps"]):
        if isinstance(step["value"], float | int):
            yield ("steps", i, "value")
    for i, cited in enumerate(plan["cited"]):
        if isinstance(cited["value"], float | int):
            yield ("cited", i, "value")
    for i in range(len(plan["mixes"])):
        yield ("mixes", i, "need_ml")
    for job in plan["numbers"]:
        for name in plan["numbers"][job]:
            yield ("numbers", job, name)


def test_any_number_changed_by_a_hundredth_is_noticed(plan):
    """Even with the code made to fit, a changed number no longer agrees with the rest."""
    unseen = []
    for path in changes(plan):
        changed = copy.deepcopy(plan)
        place = changed
        for key in path[:-1]:
            place = place[key]
        if not place[path[-1]]:
            continue
        place[path[-1]] *= 1.01
        assert any(m == "code_differs" for m, _ in verify(changed).problems)
        changed["code"] = code_of(changed)
        if not verify(changed).problems:
            unseen.append(path)
    # Thresholds may move a little without moving a sum: a whole face up to 3 in is so up to 3.03 in too.
    assert [p for p in unseen if p[0] in ("steps", "mixes", "numbers")] == []
    assert len(unseen) < len(plan["cited"]) / 2


@pytest.mark.parametrize("nothing", [None, [], 3, "plan", {}, {"code": "x"}])
def test_what_is_no_plan_is_said(nothing):
    """Anything else is no plan, and that is said instead of a crash."""
    assert verify(nothing).problems[0][0] == "not_a_plan"


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_a_damaged_plan_never_crashes(plan, data):
    """Whatever is torn out of a plan, the answer is a list of what is wrong."""
    broken = copy.deepcopy(plan)
    place = broken
    for _ in range(data.draw(st.integers(1, 4))):
        if isinstance(place, dict) and place:
            key = data.draw(st.sampled_from(sorted(place)))
        elif isinstance(place, list) and place:
            key = data.draw(st.integers(0, len(place) - 1))
        else:
            break
        if isinstance(place[key], dict | list) and data.draw(st.booleans()):
            place = place[key]
            continue
        place[key] = json.loads(data.draw(st.sampled_from(["null", '"x"', "[]", "{}", "-1", "1e300"])))
        break
    assert verify(broken).problems or broken == plan
