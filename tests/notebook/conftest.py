"""A tract to change, in a database that forgets it after each test."""

import pytest

from notebook.some import NOW, asked, name, stem
from stemward.gate import demo
from stemward.gate.pieces import Parts, Piece, split
from stemward.notebook import worked
from stemward.notebook.changes import begin


@pytest.fixture(autouse=True)
def _forgetful():
    """Nothing worked out is kept from one test to the next."""
    worked.forget()
    yield
    worked.forget()


@pytest.fixture
def small(db) -> str:
    """A tract with one patch and three stems."""
    del db
    tract = name()
    pieces = (
        Piece("tract", "", {"name": "Small"}),
        Piece("patch", "fence", {"id": "fence", "name": "Fence", "places": ["woods"]}),
    )
    begin(asked(tract, "begin"), Parts(pieces, tuple(stem(f"s{n}", x_m=str(n)) for n in range(3))), NOW)
    return tract


@pytest.fixture
def hollow(db) -> str:
    """The whole example."""
    del db
    tract = name()
    begin(asked(tract, "begin"), split(demo.texts()), NOW)
    return tract
