"""Walks on paper: a sheet for each person, every stop in order, the same bytes for the same walk."""

import io

import pikepdf
import pytest

from paper.test_packet import text_of
from plan.test_walks import BOOK, QUICK, counted, drawn
from stemward.paper.walk_sheets import MOST_MARKS, Sheets, lane_routes, walks_data, walks_pdf
from stemward.plan.walk_works import Ask, works_of
from stemward.plan.walks import walk_work
from stemward.say import Speaker
from stemward.say import walks as say
from stemward.say.en import walks as words

NAMES = ["owner", "crew 2"]


def made(change=None, units="us", **more):
    tract, plan = drawn(change)
    ask = Ask(people=2, effort=QUICK.effort, **more)
    found = [(w, walk_work(w, plan, tract, BOOK, ask)) for w in works_of(plan, tract, BOOK, ask)[:2]]
    told = [say.open_lines(work, walk, None, ask.barriers) for work, walk in found]
    return Sheets(plan, found, told, NAMES, ask), Speaker(plan, units)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_stop_in_order_with_its_lot_and_the_way_on(units):
    sheets, speaker = made(units=units)
    data = walks_data(sheets, speaker, "letter")
    assert [sheet["person"] for sheet in data["walks"]] == ["owner", "crew 2"] * 2
    for (_, walk), own in zip(sheets.found, (data["walks"][:2], data["walks"][2:]), strict=True):
        for one, sheet in zip(walk["people"], own, strict=True):
            stems = [stop[2] for stop in one["stops"] if stop != "refill"]
            assert [row["stem"] for row in sheet["rows"] if not row["refill"]] == stems
            assert sum(bool(row["lot"]) for row in sheet["rows"]) == len(one["lots"])
            assert sheet["rows"][-1]["to_next"].startswith("back: ")
    pdf = walks_pdf(sheets, speaker)
    text = " ".join(text_of(pdf))
    assert "check stops this work" in text or "checks stop this work" in text
    assert all(f"b{n}" in text for n in range(1, 77))
    assert pdf == walks_pdf(sheets, speaker)


def test_the_pdf_can_be_read_out():
    pdf = pikepdf.open(io.BytesIO(walks_pdf(*made())))
    assert str(pdf.Root.Lang) == "en" and "/StructTreeRoot" in pdf.Root


def test_counted_plants_have_lanes_on_their_sheets():
    sheets, speaker = made(counted)
    data = walks_data(sheets, speaker, "a4")
    assert all(sheet["lanes"] for sheet in data["walks"][:2])
    assert "Lane 1" in " ".join(text_of(walks_pdf(sheets, speaker)))


@pytest.mark.parametrize(("uphill_deg", "order"), [(None, words.LANES_NEARER), (90.0, words.LANES_UPHILL)])
def test_lanes_tell_which_way_they_go_on(uphill_deg, order):
    sheets, speaker = made(counted, uphill_deg=uphill_deg)
    told = [part["words"] for sheet in walks_data(sheets, speaker, "a4")["walks"] for part in sheet["lanes"]]
    assert told and all(line.endswith(order) for line in told)


def test_of_many_lanes_some_numbers_are_shown():
    """Every lane is drawn; so many numbers as can be read, the first among them."""
    lanes = [{"number": n, "start": [n, 0.0], "end": [n, 50.0]} for n in range(1, 5 * MOST_MARKS)]
    routes = lane_routes(lanes)
    assert [path for path, _ in routes] == [[lane["start"], lane["end"]] for lane in lanes]
    numbers = [marks[0][0] for _, marks in routes if marks]
    assert numbers[0] == "1" and MOST_MARKS / 2 < len(numbers) <= MOST_MARKS + 1
