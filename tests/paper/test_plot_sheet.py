"""The sheet to carry to sample plots."""

import datetime
import io

import pikepdf
import pypdfium2
import pytest

from stemward.paper.plot_sheet import PlotSheet, plot_sheet

SHEET = PlotSheet(
    "Quarry Hollow", "Oak slope", (((0, 0), (200, 0), (200, 150), (0, 0)),), [("1", 50.0, 20.0), ("2", 150.0, 60.0)],
    3.589, "bush honeysuckle", ["under 1 in", "1 to 3 in"],
)  # fmt: skip
DAY = datetime.date(2026, 10, 10)


def words(pdf: bytes) -> str:
    """All words of a PDF."""
    pages = pypdfium2.PdfDocument(pdf)
    return " ".join(" ".join(page.get_textpage().get_text_bounded().split()) for page in pages)


@pytest.mark.parametrize(("units", "radius"), [("us", "11.8 ft"), ("metric", "3.59 m")])
def test_the_sheet_says_how_to_lay_a_plot(units, radius):
    """Radius of the cord, the rule for stems on the edge, and the way from plot to plot."""
    said = words(plot_sheet(SHEET, DAY, units))
    assert radius in said
    assert "Every second one on the very edge counts" in said
    assert "68°" in said  # from (50, 20) to (150, 60): atan2(100, 40)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_the_sheet_is_tagged_and_the_same_twice(paper):
    """Language, table heads and a described map; the same plots give the same bytes."""
    pdf = plot_sheet(SHEET, DAY, "us", paper)
    assert pdf == plot_sheet(SHEET, DAY, "us", paper)
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        assert str(opened.Root.Lang) == "en"
        raw = str([obj for obj in opened.objects if isinstance(obj, pikepdf.Dictionary)])
    assert "/TH" in raw
    assert "Plan of Oak slope with the middles of 2 sample plots" in raw
