"""Fifty phones at once, the server killed: nothing acknowledged is lost, nothing doubled, no lock in the log."""

import os

from field.crowd import crowd


def test_fifty_phones_while_the_server_is_killed(tmp_path):
    """On SQLite, and on the PostgreSQL that DATABASE_URL names, where one is named."""
    found = crowd(tmp_path / "notebook", 50, 200, 25, 5, 3, os.environ.get("DATABASE_URL", ""))
    assert found.kills >= 2
    assert found.acknowledged == found.wanted
    assert len(found.wanted) == 10_000
    assert len(found.kept) == len(set(found.kept))
    assert set(found.kept) == found.wanted
    assert "locked" not in found.log and "Traceback" not in found.log, found.log[-2000:]
