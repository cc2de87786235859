"""Plants too many to map: stems and mix as ranges from plots."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checks.build import PATCH, stems_of
from plan.test_draw_up import tract_of
from stemward.handbook import load
from stemward.kinds import Tally
from stemward.plan.surveys import surveys_of

PLOT_M2 = 40.468564224  # 1/100 acre, NIST SP 811


def tract(counts, area_m2=40_468.564224, sizes=(PLOT_M2,), classes=((0.0, 2.54),)):
    """A patch of ten acres with one count a plot and class."""
    tallies = tuple(
        Tally(str(n), "slope", "Acer rubrum", *classes[n % len(classes)], count, sizes[n % len(sizes)])
        for n, count in enumerate(counts)
    )
    return replace(tract_of(stems_of(), patches=(replace(PATCH, area_m2=area_m2),)), plots=tallies)


def test_freese_counts_give_his_total():
    """20 plots of 1,000: mean 10.7, so 10,700 stems (counts from Freese 1962, AH-232)."""
    counts = [10, 9, 10, 9, 11, 16, 11, 7, 12, 12, 11, 3, 5, 11, 14, 8, 13, 12, 20, 10]
    (found,) = surveys_of(tract(counts), load())
    assert found["stems"]["mean"] == pytest.approx(10_700)
    assert found["stems"]["low"] < 10_700 < found["stems"]["high"]
    assert found["mix_ml"]["mean"] == pytest.approx(found["each_ml"] * 10_700)


def test_what_plots_cannot_say_is_said():
    """No area, one plot, plots of different sizes: no figure, and the reason."""
    assert surveys_of(tract([3, 4], area_m2=None), load())[0]["why_not"] == "no_area"
    assert surveys_of(tract([3]), load())[0]["why_not"] == "one_plot"
    assert surveys_of(tract([3, 4], sizes=(PLOT_M2, 80.0)), load())[0]["why_not"] == "plots_differ"


def test_a_class_takes_more_than_its_middle():
    """Faces grow with the square, so a class of 0 to 2 in takes more than a stem of 1 in (mean of d2, not of d)."""
    from stemward.reckon import dose

    (found,) = surveys_of(tract([5, 6], classes=((0.0, 5.08),)), load())
    book = load()
    tool = book.tools["squirt bottle"]
    middle = dose.wetted_ml(
        dose.wet_face_cm2(2.54, 7.62, 5.08), dose.face_area_cm2(2.54), tool.depth_ml_cm2.number,
        tool.waste_frac.number, 1.0, tool.smallest_ml.number,
    )  # fmt: skip
    assert found["each_ml"] > float(middle)


@given(st.lists(st.integers(0, 60), min_size=2, max_size=20))
def test_more_stems_in_a_plot_never_lower_the_estimate(counts):
    """One stem more in a plot: no smaller total."""
    before = surveys_of(tract(counts), load())[0]["stems"]["mean"]
    after = surveys_of(tract([counts[0] + 1, *counts[1:]]), load())[0]["stems"]["mean"]
    assert after > before
