"""What others have published comes out of our own functions within what they print."""

import pytest

from published.values import disagreement, rows

ROWS = rows()


@pytest.mark.parametrize("row", ROWS, ids=[r["id"] for r in ROWS])
def test_agrees_with_its_source(row):
    """The value agrees within its tolerance."""
    assert disagreement(row) == ""


def test_there_are_enough_and_none_from_memory():
    """At least 120 published values from at least 30 pairs of function and source, none of them from memory."""
    published = [r for r in ROWS if r["kind"] == "published"]
    assert len(published) >= 120
    assert len({(r["function"], r["source"]) for r in published}) >= 30
    assert not any("memory" in (r["source"] + r["page"]).lower() for r in ROWS)
    assert all(r["source"] for r in ROWS)
