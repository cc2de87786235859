"""What stands behind a way: strength counts, nothing is made up, and ranges are rounded outward."""

from dataclasses import replace

import pytest

from checks.build import PRODUCT, WAY, case, stems_of
from stemward.handbook import load
from stemward.kinds import Content
from stemward.plan.behind import behind

ESTER = replace(PRODUCT, formulation="ester", contents=(Content("triclopyr", "butoxyethyl ester", 479.3),))


def seen(share, species="Ligustrum sinense", product=ESTER, how="basal bark", carrier="oil"):
    way = replace(WAY, how=how, concentration_frac=share, carrier=carrier, tool="backpack")
    (job,) = case(product=product, way=way, stems=stems_of(species=species)).jobs
    return behind(job, load())


def test_a_trial_at_another_strength_does_not_count():
    """Privet, triclopyr ester in oil: at 20 % (96 g/L) 8 to 9 of 10 die, at 5 % (24 g/L) fewer (trials.md)."""
    strong, weak = seen(0.2), seen(0.05)
    assert strong.tier == weak.tier == 3
    assert strong.low > weak.low
    assert strong.low <= 8 and strong.high >= 9


def test_where_nothing_is_known_there_is_no_figure():
    """No row on willow by bark: no tier and no tenths."""
    found = seen(0.2, species="Salix nigra")
    assert (found.tier, found.low, found.high) == (0, None, None)


def test_books_never_count_for_more_than_twenty_stems():
    """However many trials there are (engineering guess): the interval stays wide enough to be moved."""
    assert seen(0.2).worth <= 20 + 1e-9
    assert seen(0.2, species="Ailanthus altissima").worth <= 20 + 1e-9


@pytest.mark.parametrize("share", [0.05, 0.1, 0.2, 0.3])
def test_ends_are_tenths_in_order(share):
    """0 to 10, the lower first."""
    found = seen(share)
    assert 0 <= found.low <= found.high <= 10
