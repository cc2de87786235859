"""Trials, paces, seasons, hazards, soils and state rules, against their sources."""

import pytest

from stemward.handbook import load


def test_the_dose_series_on_privet_is_there_as_published():
    """24, 48, 90 and 96 g/L of triclopyr ester in oil: 63, 76, 88, 89 % dead at 18 months (trials.md)."""
    rows = load().trials("Ligustrum sinense", "basal bark", "triclopyr", "ester")
    series = {t.low_g_l: t.low_frac for t in rows if t.low_g_l == t.high_g_l}
    assert series == {24.0: 0.63, 48.0: 0.76, 90.0: 0.88, 96.0: 0.89}


def test_outcomes_that_are_no_kill_are_not_taken_for_one():
    """Canopy reduction on tree-of-heaven is no share of stems (trials.md, metric)."""
    assert load().trials("Ailanthus altissima", "hack and squirt", "imazapyr", "salt") == ()


def test_a_plants_own_season_comes_before_the_general_one():
    """Buckthorn stumps: fall best (Minnesota advice); the sap months still hold for it."""
    seasons = load().seasons("Rhamnus cathartica", "cut stump")
    assert [(s.first, s.last) for s in seasons if s.best] == [((9, 1), (11, 30))]
    assert any(not s.best and s.holds((4, 10)) for s in seasons)


def test_seasons_wrap_over_the_year():
    """Mid-summer to mid-winter for bark (K-State Extension 2022)."""
    (best,) = [s for s in load().seasons("Acer rubrum", "basal bark") if s.best]
    assert best.holds((7, 1)) and best.holds((1, 5)) and not best.holds((5, 5))


def test_paces_are_bands_over_all_sizes():
    """Every working method has a pace for a stem of any size, the lower end first; injection 32 to 80 (MSU P3673)."""
    paces = load().paces
    for method in ("cut only", "girdle", "pull", "cut stump", "basal bark", "hack and squirt", "foliar"):
        own = [p for p in paces if p.method == method]
        for size in (0.5, 2.54, 7.62, 15.24, 60.0):
            assert sum(p.low_cm <= size < p.high_cm for p in own) == 1, (method, size)
    injection = next(p for p in paces if p.method == "hack and squirt")
    assert (injection.low_per_hour, injection.high_per_hour) == (32, 80)
    assert all(0 < p.low_per_hour <= p.high_per_hour for p in paces)


def test_what_is_not_on_record_for_a_state_is_nothing():
    """No row is no rule, never a permission."""
    assert load().state_rules("IA", "water permit") == ()
    (rule,) = load().state_rules("WI", "water permit")
    assert rule.cited.grade == "memory" and "as of" in rule.what


def test_soil_classes_are_from_memory_and_say_so():
    """Rawls et al. 1982 could not be read: memory, but for one measured profile (PMC3990416)."""
    soils = {s.texture: s for s in load().soils}
    assert soils["silt loam"].field_capacity == pytest.approx(0.33)
    assert soils["silt loam"].cited.grade == "memory"
    assert soils["silt loam (one measured profile)"].cited.grade == "published"


def test_hazards_name_their_plants():
    """Tree-of-heaven's sap, wilted maple leaves; most plants have none on record."""
    assert [h.hazard for h in load().hazards("Ailanthus altissima")] == ["irritant sap"]
    assert [h.hazard for h in load().hazards("Acer rubrum")] == ["wilted foliage"]
    assert load().hazards("Quercus alba") == ()
