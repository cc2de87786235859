"""The sums behind a plan, what a check asks, and the workshop, as pages."""

import re

import pytest

from stemward.checks import ALL
from stemward.notebook import worked
from stemward.web import clock


@pytest.fixture(autouse=True)
def _planned(hollow):
    worked.plan_of(hollow, clock.today(worked.known(hollow).land), 60)


def words(response):
    text = response.content.decode()
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text[text.index("<main") :]))


def test_the_sums_of_a_stem_and_of_another(client, hollow):
    first = words(client.get(f"/land/{hollow}/behind/t1"))
    assert "The wood that is wetted" in first and "Kochenderfer" in first and "guess, no source" in first
    other = words(client.get(f"/land/{hollow}/behind/t1?stem=b1"))
    assert other != first and "Comes out" in other
    assert words(client.get(f"/land/{hollow}/behind/t1?stem=none-such")) == first
    assert client.get(f"/land/{hollow}/behind/t99").status_code == 404


def test_the_ways_lead_to_their_sums(client, hollow):
    page = client.get(f"/land/{hollow}/ways/meadow/Frangula alnus/standing").content.decode()
    assert f'href="/land/{hollow}/behind/t1"' in page


@pytest.mark.parametrize("check", [one.id for one in ALL])
def test_every_check_says_what_it_asks_and_who_says_so(client, hollow, check):
    said = words(client.get(f"/land/{hollow}/check/{check}"))
    assert "It protects" in said and "Who says so" in said and "?" in said.split("It protects")[0]
    assert "{" not in said


def test_findings_lead_to_their_check(client, hollow):
    page = client.get(f"/land/{hollow}/findings").content.decode()
    assert f'href="/land/{hollow}/check/water"' in page
    assert "the label asks for 50 ft" in words(client.get(f"/land/{hollow}/check/water"))
    assert client.get(f"/land/{hollow}/check/none-such").status_code == 404


def test_a_workshop_has_every_step_with_the_lands_own_figures(client, hollow):
    said = words(client.get(f"/land/{hollow}/workshop"))
    for title in ("Look at what stands there", "Find out what is not known", "Choose a way", "Work out one stem",
                  "Mix no more", "Do the work in its order", "Go back and count"):  # fmt: skip
        assert title in said
    assert "76 glossy buckthorn, Spring meadow" in said and "DO NOT MIX FROM THIS PAGE" in said
    assert "Poison Help" in said and "You saw 87 of 103 dead" in said
    assert said.count("To talk about") == 7
