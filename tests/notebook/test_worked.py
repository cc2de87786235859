"""What was worked out is kept until something that a plan reads changes."""

import datetime

from notebook.some import NOW, asked
from stemward.notebook import worked
from stemward.notebook.changes import Edit, change

DAY = datetime.date(2026, 10, 10)


def test_the_same_land_is_planned_once(hollow):
    """Printing, which is written down, leaves the plan; a change of the land makes another."""
    first = worked.plan_of(hollow, DAY)
    row = {"id": "e9", "kind": "plan issued", "at": "2026-10-10T09:00:00", "offset": 0, "by": "owner", "body": {}}
    change(asked(hollow, "write down", entries=[row]), NOW)
    assert worked.plan_of(hollow, DAY) is first

    parts = worked.known(hollow).parts
    body = next(p.body for p in parts.pieces if p.kind == "patch" and p.key == "rim")
    change(asked(hollow, edits=[Edit("patch", "rim", {**body, "name": "North rim"})]), NOW)
    assert worked.plan_of(hollow, DAY)["code"] != first["code"]


def test_a_plan_that_takes_longer_is_not_waited_for(hollow):
    """With no patience there is no plan yet, and a later call finds it."""
    assert worked.plan_of(hollow, DAY, wait_s=0) is None
    assert worked.plan_of(hollow, DAY)["treatments"]
