"""How much a stem takes: what the trade says, and laws."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon import dose

IN = 2.54
DIAMETERS = st.lists(st.floats(0.1, 150), min_size=2, max_size=30).map(sorted)


def test_ring_and_whole_face_are_the_same_on_a_stump_of_an_inch():
    """On stumps of an inch or so the whole face costs nothing more than the ring. Common practice, no source."""
    assert dose.wet_face_cm2(IN, 3 * IN, 2 * IN) == pytest.approx(dose.ring_area_cm2(IN, 2 * IN))


def test_most_of_a_six_inch_stump_is_wet_all_the_same():
    """With a 2 in ring a 6 in stump is 89 % wet, a 12 in stump 56 %. Arithmetic: 1 - ((d - 4) / d)^2."""
    share = dose.wet_share_frac(np.array([6.0, 12.0]) * IN, 3 * IN, 2 * IN)
    assert share == pytest.approx([0.8889, 0.5556], abs=1e-4)


def test_four_inch_stump_takes_about_a_millilitre_an_inch():
    """Whole face, squirt bottle at 0.05 mL/cm2: 4.1 mL. Engineering guess, no source."""
    assert dose.wetted_ml(dose.face_area_cm2(4 * IN), 0.0, 0.05, 0.0) == pytest.approx(4.05, abs=0.05)


def test_the_heart_stays_dry_only_on_large_stumps():
    """Small stumps are wetted whole, large ones in the outer ring only. Common practice, no source."""
    assert dose.wet_share_frac(2 * IN, 3 * IN, 2 * IN) == pytest.approx(1.0)
    assert dose.wet_share_frac(10 * IN, 3 * IN, 2 * IN) < 0.65


@given(DIAMETERS, st.floats(1, 8), st.floats(0.001, 0.1), st.floats(0, 1))
def test_dose_never_falls_as_stumps_grow(diameters, ring_cm, depth, waste):
    """A larger stump never takes less, waste at the edge included."""
    area = dose.wet_face_cm2(diameters, min(3 * IN, 2 * ring_cm), ring_cm)
    ml = dose.wetted_ml(area, dose.face_area_cm2(IN), depth, waste, 1.0, 0.3)
    assert (np.diff(ml) >= -1e-9).all()


def test_a_label_of_its_own_can_make_the_dose_fall_and_that_is_known():
    """Only where the whole face is wetted up to more than twice the ring can a larger stump take less."""
    assert dose.dose_can_fall(15.0, 2.0)
    assert dose.wet_face_cm2(15.1, 15.0, 2.0) < dose.wet_face_cm2(15.0, 15.0, 2.0)
    assert not dose.dose_can_fall(3 * IN, 2 * IN)


@given(DIAMETERS, st.sampled_from([1.0, 2.0, 3.0]), st.integers(1, 4))
def test_cuts_never_fall_as_stems_grow(diameters, per_cut, least):
    """A thicker stem never gets fewer cuts."""
    for counts in (
        dose.cuts_by_diameter(diameters, per_cut, least),
        dose.cuts_by_centres(diameters, per_cut),
        dose.cuts_by_gap(diameters, 2.0, per_cut),
    ):
        assert (np.diff(counts) >= 0).all()


@pytest.mark.parametrize("inches", range(1, 61))
def test_whole_inches_gain_no_cut_however_they_were_written(inches):
    """n inches get n cuts, typed as inches or as centimetres to one decimal."""
    assert dose.cuts_by_diameter(float(inches), 1.0, 1) == inches
    as_cm = round(inches * IN, 1)
    assert dose.cuts_by_diameter(as_cm / IN, 1.0, 1, 0.05 / IN) == inches


def test_kinds_of_spacing_are_kept_apart():
    """One cut per inch of diameter is not one cut per inch of bark. Arithmetic: pi."""
    assert dose.cuts_by_diameter(10.0, 1.0, 1) == 10
    assert dose.cuts_by_centres(10.0, 1.0) == 32


@given(st.floats(0, 1e5), st.floats(0, 600))
def test_acid_equivalent_scales_with_both(mix_ml, ae_g_l):
    """Twice the mix or twice the strength is twice the acid equivalent."""
    once = dose.ae_g(mix_ml, ae_g_l)
    assert dose.ae_g(2 * mix_ml, ae_g_l) == pytest.approx(2 * once)
    assert dose.ae_g(mix_ml, 2 * ae_g_l) == pytest.approx(2 * once)
