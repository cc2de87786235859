"""Breaks one check on purpose when STEMWARD_BROKEN says so, for tools/mutate_checks.py."""

import os
from dataclasses import replace

from hypothesis import settings

import stemward.checks as room
from stemward.checks.case import finding
from stemward.kinds import Weight


def _never(case):
    return []


def _always(check):
    return lambda case: [finding(check.id, Weight.STOP, "broken", job) for job in case.jobs]


def pytest_configure(config):
    """Replace the named check before the tests are read."""
    wanted = os.environ.get("STEMWARD_BROKEN", "")
    if not wanted:
        return
    name, how = wanted.split(":")
    settings.register_profile("few", max_examples=15, deadline=None, database=None)
    settings.load_profile("few")
    room.ALL = tuple(replace(c, run=_never if how == "never" else _always(c)) if c.id == name else c for c in room.ALL)
