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


def test_a_band_of_bark_all_round():
    """3 in through and 15 in high is 141.4 sq in: arithmetic, band from the PNW Weed Management Handbook, 2022."""
    assert float(dose.bark_cm2(3 * 2.54, 15 * 2.54)) / 2.54**2 == pytest.approx(141.4, abs=0.1)


def test_oil_on_a_stump_wets_the_side_as_well():
    """The face as with water, and the side down to the ground."""
    face, side = dose.wet_face_cm2(10.0, 7.62, 5.08), dose.bark_cm2(10.0, 5.08)
    assert float(dose.oil_stump_cm2(10.0, 7.62, 5.08, 5.08)) == pytest.approx(float(face + side))


def test_spray_on_an_acre_of_crown_is_what_the_table_says():
    """75 gal/acre over one acre of crown is 75 gallons: arithmetic on the PNW handbook's 50 to 100 gal/acre."""
    volume_ml_m2 = 75 * 3785.411784 / 4046.8564224
    assert float(dose.sprays_ml(4046.8564224, volume_ml_m2, 1.0)) / 3785.411784 == pytest.approx(75)


def test_own_figures_by_height():
    """A plant takes the amount of the first class it fits; the tallest class goes on upward."""
    assert dose.by_height_ml([0.4, 1.0, 1.1, 9.0], [1.0, 2.0], [20.0, 50.0]).tolist() == [20.0, 20.0, 50.0, 50.0]
    with pytest.raises(ValueError, match="rising order"):
        dose.by_height_ml([1.0], [2.0, 1.0], [1.0, 2.0])


def test_dry_products_by_weight():
    """10 g of a 60 % product in a litre hold 6 g; half a litre takes 5 g (NZ wilding conifer summary, 2010: 10 g/L)."""
    assert dose.dry_product_g(500, 10) == 5
    assert dose.dry_ai_g_l(10, 0.6) == 6


@given(st.lists(st.floats(0.1, 100), min_size=2, max_size=6), st.floats(0.001, 0.2), st.floats(1, 3), st.floats(1, 60))
def test_more_bark_or_crown_never_takes_less(sizes, smooth, rougher, height_cm):
    """Basal bark, oil on stumps and foliar: the dose never falls as the plant grows."""
    grown = np.sort(sizes)
    depth = dose.bark_depth_ml_cm2(grown, smooth, smooth * rougher, 10.16)
    basal = dose.wetted_ml(dose.bark_cm2(grown, height_cm), dose.bark_cm2(2.54, height_cm), depth, 0.25)
    spray = dose.sprays_ml(dose.crown_m2(grown, 0.6), 70.0, 1.0)
    assert np.all(np.diff(basal) >= -1e-9)
    assert np.all(np.diff(spray) >= 0)
    assert np.all(np.diff(dose.oil_stump_cm2(grown, 7.62, 5.08, height_cm)) >= -1e-9)


@given(st.floats(0.01, 5000), st.floats(0.1, 5))
def test_strokes_give_at_least_what_is_needed(ml, each):
    """Whole strokes, at least the amount and under one stroke over."""
    count = int(dose.strokes(ml, each))
    assert ml - 1e-6 <= count * each < ml + each + 1e-6
