"""The page of the years ahead and that of what worked."""

import re

import pytest

from stemward.notebook import worked
from stemward.web import clock


@pytest.fixture(autouse=True)
def _today(monkeypatch):
    """The example's day."""
    monkeypatch.setenv("STEMWARD_TODAY", "2026-10-10")


def words(response):
    """A page as one line of words."""
    text = response.content.decode()
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text[text.index("<main") :]))


def test_strategies_stand_side_by_side(client, hollow):
    """Six strategies, sliders with what stands behind them, a budget when hours are given, odd input as usual."""
    worked.plan_of(hollow, clock.today(worked.known(hollow).land))
    said = words(client.get(f"/land/{hollow}/years?years=5&hours=3&sprouts=nan&find_frac=60"))
    for strategy in ("Leave it", "Cut every year", "Treat once", "go back every year"):
        assert strategy in said
    assert "60 of 100" in said and "set by hand" in said
    assert "With 3 hours a year" in said
    assert client.get(f"/land/{hollow}/years?years=x&hours=-4").status_code == 200


def test_what_worked_shows_books_and_own(client, hollow):
    """Both rows of ten for buckthorn; tree-of-heaven was looked at too early."""
    answer = client.get(f"/land/{hollow}/after/worked")
    said = words(answer)
    assert "87 of 103 dead" in said
    assert "None of it was looked at late enough" in said
    assert "Books" in said or "only your own stems speak" in said
    assert "<svg" in answer.content.decode()
