"""The sums behind a plan for one stem: each is what the plan holds, and works out from what is shown."""

import datetime
import re

import numpy as np
import pytest

from ledger.some import hollow
from stemward.handbook import load
from stemward.plan import as_data, draw_up
from stemward.plan.formulae import FORMULAE
from stemward.plan.traced import rows_of, traced
from stemward.say import Speaker
from stemward.say.en import traced as words
from stemward.say.traced import kill_lines, pace_lines, stem_names, sum_words

PLAN = as_data(draw_up(hollow(), load(), datetime.date(2026, 10, 3), "x"))
TREATED = [one["id"] for one in PLAN["treatments"] if one["product"]]


@pytest.mark.parametrize("treatment", TREATED)
@pytest.mark.parametrize("row", [0, -1])
def test_every_sum_comes_out_again_of_what_is_shown(treatment, row):
    """Where all that goes in is shown, the formula gives what is shown to come out."""
    row = row % len(rows_of(PLAN, treatment))
    worked = 0
    for one in traced(PLAN, treatment, row):
        if all(given.value is not None for given in one.given):
            value = FORMULAE[one.formula](**{given.name: given.value for given in one.given})
            assert float(np.asarray(value).reshape(-1)[0]) == pytest.approx(one.value, rel=1e-6), one.id
            worked += 1
    assert worked >= 5


def test_a_stem_has_its_own_figures_and_all_of_them_one_sum():
    low, high = (traced(PLAN, "t1", row) for row in (6, 3))
    of = [{one.id: one for one in sums} for sums in (low, high)]
    need = of[0]["t1.need_ml"]
    assert need.value == of[1]["t1.need_ml"].value == PLAN["treatments"][0]["need_ml"]
    assert of[0]["t1.each_ml"].value != of[1]["t1.each_ml"].value
    assert not need.each and need.given[0].value is None


def test_each_number_of_a_sum_says_where_it_is_from():
    for treatment in TREATED:
        for one in sum_words(PLAN, treatment, 0, "us"):
            assert one["title"] and one["what"] and one["value"]
            assert all(given["from"] and given["value"] and given["name"] for given in one["given"])


def test_every_formula_of_stems_has_words():
    """What is shown only for all stems of a load together needs none."""
    of_loads = {"clusters", "cluster_area_m2", "rate_g_m2", "with_recorded_g_m2"}
    assert set(FORMULAE) - of_loads <= set(words.FORMULAE)


def test_stems_are_listed_with_their_size():
    assert stem_names(PLAN, "t1", "us")[2] == ("b3", "b3: 1.25 in across")
    assert stem_names(PLAN, "t1", "metric")[2][1].endswith("cm across")


def test_what_is_expected_and_how_long_it_takes_say_what_stands_behind_them():
    speaker = Speaker(PLAN, "us")
    lines = kill_lines(speaker, "t2")
    assert "counts for 20 stems" in lines[0]
    assert any("DiTomaso" in line for line in lines)
    unknown = {**PLAN["treatments"][1]["behind"], "worth": 0.0, "own_seen": 12, "own_dead": 9, "rows": []}
    alone = [{**one, "behind": unknown} if one["id"] == "t2" else one for one in PLAN["treatments"]]
    lines = kill_lines(Speaker({**PLAN, "treatments": alone}, "us"), "t2")
    assert lines[0].startswith("Nothing is known elsewhere") and "9 of 12" in lines[1]
    rose = next(one["id"] for one in PLAN["treatments"] if one["species"] == "Rosa multiflora")
    thorny, plain = (pace_lines(speaker, one, 0, load()) for one in (rose, "t1"))
    assert thorny[-1].startswith("It has thorns") and not any("thorns" in line for line in plain)
    assert re.match(r"At the usual paces \d+ to \d+ stems", plain[0]) and len(plain) >= 2
