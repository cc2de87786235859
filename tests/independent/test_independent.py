"""Plans hold against a checker that shares nothing with the package."""

import datetime
import json
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from checks.build import PRODUCT, stems_of
from plan.test_draw_up import tract_of
from stemward.handbook import load
from stemward.kinds import Choice, Content
from stemward.plan import as_data, draw_up, to_json

CHECKER = Path(__file__).parent / "check_plan.py"
AS_OF = datetime.date(2026, 10, 10)
ESTER = replace(PRODUCT, id="t4", formulation="ester", contents=(Content("triclopyr", "butoxyethyl ester", 479.3),))
IMAZAPYR = replace(PRODUCT, id="i2", contents=(Content("imazapyr", "isopropylamine salt", 239.7),))
STEMS = stems_of((2.0, 5.5, 9.0, 14.0, 22.0), (0.0, 4.0, 7.5, 60.0, 61.0), (0.0, 1.0, 9.0, 3.0, 4.0))
WAYS = {
    "cut stump": Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5),
    "oil on stumps": Choice("slope", "Acer rubrum", "cut stump", "t4", 0.2, "oil", "hand trigger"),
    "basal bark": Choice("slope", "Acer rubrum", "basal bark", "t4", 0.2, "oil"),
    "hack and squirt": Choice("slope", "Acer rubrum", "hack and squirt", "g4", 0.5),
    "foliar": Choice("slope", "Acer rubrum", "foliar", "g4", 0.02),
    "sprouts": Choice("slope", "Acer rubrum", "foliar", "g4", 0.02, first="cut"),
    "two products": Choice("slope", "Acer rubrum", "cut stump", "g4", 0.3, "water", partner="i2", partner_frac=0.02),
}


def checked(plan, folder):
    path = folder / "plan.json"
    path.write_text(to_json(plan), encoding="utf-8")
    return subprocess.run([sys.executable, "-I", "-S", str(CHECKER), str(path)], capture_output=True, text=True)


def plan_by(choice):
    tract = tract_of(STEMS, [choice], shelf=(PRODUCT, ESTER, IMAZAPYR))
    return as_data(draw_up(tract, load(), AS_OF, "land"))


@pytest.mark.parametrize("way", WAYS)
def test_every_method_agrees(way, tmp_path):
    """Sums, batches and code come out the same in another hand."""
    ran = checked(plan_by(WAYS[way]), tmp_path)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    assert " 0 disagree" in ran.stdout


def test_the_example_agrees(demo_tract, tmp_path):
    """The example too, with its clusters and records."""
    ran = checked(as_data(draw_up(demo_tract, load(), AS_OF, "land")), tmp_path)
    assert ran.returncode == 0, ran.stdout + ran.stderr


def test_a_changed_figure_is_noticed(tmp_path):
    """A sum, a batch or a letter changed by hand is seen."""
    for change in (
        lambda p: p["steps"][3].__setitem__("value", 1.0),
        lambda p: p["mixes"][0]["batches"][0].__setitem__("mixed_ml", 1.0),
        lambda p: p["tract"].__setitem__("name", "Elsewhere"),
    ):
        plan = json.loads(to_json(plan_by(WAYS["cut stump"])))
        change(plan)
        assert checked(plan, tmp_path).returncode == 1


def test_the_checker_shares_nothing_with_the_package():
    """It imports the standard library and nothing else."""
    lines = [line for line in CHECKER.read_text().splitlines() if line.startswith(("import ", "from "))]
    assert {line.split()[1] for line in lines} <= set(sys.stdlib_module_names)
    assert np.isfinite(STEMS.diameter_cm).all()
