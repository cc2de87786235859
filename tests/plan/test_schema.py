"""The published shape of a plan's file is the shape that plans have."""

import copy
import datetime

import jsonschema
import pytest

from stemward.handbook import load
from stemward.plan import as_data, draw_up
from stemward.plan.schema import plan_schema

AS_OF = datetime.date(2026, 10, 10)


@pytest.fixture(scope="module")
def plan(demo_tract):
    return as_data(draw_up(demo_tract, load(), AS_OF, "land"))


def test_the_example_has_the_published_shape(plan):
    """Every part of the example's plan is described, and nothing in it is not."""
    jsonschema.validate(plan, plan_schema())


@pytest.mark.parametrize("part", ["treatments", "mixes", "findings", "steps", "cited"])
def test_a_part_too_few_or_too_many_is_noticed(plan, part):
    """Whatever a described part loses or gains, the schema says so."""
    lost, gained = copy.deepcopy(plan), copy.deepcopy(plan)
    lost[part][0].pop("id", None) or lost[part][0].pop("check", None)
    gained[part][0]["odd"] = 1
    for broken in (lost, gained):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(broken, plan_schema())
