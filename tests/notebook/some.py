"""What tests of the notebook share: a day, names for changes, a row of stems.csv."""

import datetime
import uuid

from stemward.notebook.changes import Asked
from stemward.notebook.edits import stem_row

NOW = datetime.datetime(2026, 10, 10, 9, 14, tzinfo=datetime.UTC)


def name() -> str:
    """A name for a change or tract that no other has."""
    return str(uuid.uuid4())


def asked(tract: str, verb: str = "put", who: str = "owner", **what) -> Asked:
    """A change of a tract under a fresh name."""
    return Asked(name(), tract, who, verb, **what)


def stem(key: str, **cells: str) -> tuple[str, ...]:
    """A row of stems.csv."""
    usual = {"patch": "fence", "species": "glossy buckthorn", "x_m": "1", "y_m": "2", "diameter_in": "2 1/2",
             "stems": "1", "state": "standing"}  # fmt: skip
    return stem_row(**{"id": key, **usual, **cells})
