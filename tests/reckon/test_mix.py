"""What goes into the vessel."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.reckon import mix
from stemward.reckon.mix import Batch, Measure, Refusal

SYRINGE = Measure("syringe", 200, 5_000)
CUP = Measure("cup", 14_787, 236_588)
JUG = Measure("jug", 29_574, 946_353)
OVER = 0.25
DYE = (mix.Extra("dye", 0.0025, 0.005),)
PARTNER = mix.Extra("partner", 0.019, 0.02, needed=True)


def test_both_readings_of_a_ratio():
    """1:3 is a quarter or a third; 32 oz per gallon is 25 % or 20 %."""
    assert mix.ratio_readings(1, 3) == pytest.approx((0.25, 1 / 3))
    assert mix.ounces_per_gallon_readings(32) == pytest.approx((0.25, 0.2))


def test_exactly_half_by_syringe_and_cup_has_no_solution():
    """Half and half to the microlitre cannot be poured with a 0.2 mL syringe and an ounce cup; one measure can."""
    refused = mix.round_batch(400_000, 0.5, 0.5, [SYRINGE], [CUP], 709_765, OVER)
    assert isinstance(refused, Refusal)
    assert refused.reason == "no_marks"
    assert refused.would_do == SYRINGE


def test_half_and_half_with_one_cup():
    """With one cup for both it is one fill of each and a little over."""
    done = mix.round_batch(400_000, 0.475, 0.5, [SYRINGE, CUP], [SYRINGE, CUP], 709_765, OVER)
    assert isinstance(done, Batch)
    assert [(p.name, p.fills) for p in done.parts] == [("product", 1), ("carrier", 1)]
    assert done.mixed_ul == 414_036


def test_undiluted_takes_no_carrier_and_no_dye():
    """An undiluted product stays undiluted."""
    done = mix.round_batch(100_000, 1.0, 1.0, [CUP], [CUP], 709_765, OVER, DYE)
    assert isinstance(done, Batch)
    assert done.concentration_frac == 1.0
    assert [p.amount_ul for p in done.parts if p.amount_ul] == [done.mixed_ul]


def test_a_vessel_that_is_too_small_is_said():
    """What does not fit is refused, not cut down."""
    assert mix.round_batch(800_000, 0.4, 0.5, [CUP], [CUP], 700_000, OVER) == Refusal("vessel_too_small", None)
    assert mix.round_batch(800_000, 0.4, 0.5, [], [CUP], 900_000, OVER) == Refusal("no_measures", None)


@given(st.integers(0, 20_000_000), st.integers(50_000, 2_000_000))
def test_what_is_assigned_adds_up_to_the_need(need_ul, capacity_ul):
    """Bottles add up to the need to the microlitre, all full but the last."""
    parts = mix.split_assigned(need_ul, capacity_ul)
    assert sum(parts) == need_ul
    assert all(p == capacity_ul for p in parts[:-1])
    assert all(0 < p <= capacity_ul for p in parts)


@given(
    st.integers(5_000, 700_000),
    st.sampled_from([0.02, 0.2, 0.25, 0.5, 0.656]),
    st.sampled_from([0.0, 0.05, 0.2]),
    st.sampled_from([(SYRINGE,), (CUP,), (SYRINGE, CUP), (SYRINGE, CUP, JUG)]),
    st.booleans(),
)
def test_a_batch_keeps_to_marks_range_and_vessel(assigned_ul, high, slack, measures, dye):
    """Assigned <= mixed <= a quarter over and what the vessel holds; parts add up; marks and range are kept."""
    low = high * (1 - slack)
    done = mix.round_batch(assigned_ul, low, high, measures, measures, 709_765, OVER, DYE if dye else ())
    if isinstance(done, Refusal):
        return
    assert assigned_ul <= done.mixed_ul <= min(assigned_ul * 1.25 + 1, 709_765)
    assert sum(p.amount_ul for p in done.parts) == done.mixed_ul
    assert all(p.amount_ul % p.measure.mark_ul == 0 for p in done.parts if p.measure)
    assert low * (1 - 1e-9) <= done.concentration_frac <= high * (1 + 1e-9)


@given(st.integers(20_000, 700_000), st.sampled_from([0.2, 0.4]), st.booleans())
def test_a_second_product_is_never_left_out(assigned_ul, high, dye):
    """What is needed stays in its range or the batch is refused; carrier makes room for it."""
    extras = (PARTNER, *DYE) if dye else (PARTNER,)
    done = mix.round_batch(assigned_ul, high * 0.95, high, (SYRINGE, CUP), (SYRINGE, CUP), 709_765, OVER, extras)
    if isinstance(done, Refusal):
        return
    share = next(p.amount_ul for p in done.parts if p.name == "partner") / done.mixed_ul
    assert PARTNER.low_frac * (1 - 1e-9) <= share <= PARTNER.high_frac * (1 + 1e-9)
    assert sum(p.amount_ul for p in done.parts) == done.mixed_ul
    assert high * 0.95 * (1 - 1e-9) <= done.concentration_frac <= high * (1 + 1e-9)


def brute(assigned_ul, low, high, measures, capacity_ul):
    """The best pour by trying every pair of marks."""
    most = min(int(assigned_ul * 1.25), capacity_ul)
    best = None
    for product, carrier in itertools.product(measures, measures):
        for a in range(product.mark_ul, most + 1, product.mark_ul):
            for b in range(0, most - a + 1, carrier.mark_ul):
                if a + b >= assigned_ul and low * (a + b) <= a + 1e-9 and a <= high * (a + b) + 1e-9:
                    fills = -(-a // product.capacity_ul) + -(-b // carrier.capacity_ul)
                    if best is None or (fills, a + b) < best:
                        best = (fills, a + b)
    return best


@given(st.integers(20, 400), st.sampled_from([0.2, 0.25, 0.5]), st.sampled_from([0.0, 0.1]))
def test_no_pour_with_fewer_fills_or_less_is_missed(assigned, high, slack):
    """The search finds what trying everything finds."""
    measures = (Measure("small", 7, 50), Measure("large", 20, 160))
    done = mix.round_batch(assigned, high * (1 - slack), high, measures, measures, 450, OVER)
    expected = brute(assigned, high * (1 - slack), high, measures, 450)
    if expected is None:
        assert isinstance(done, Refusal)
    else:
        assert isinstance(done, Batch)
        assert (sum(p.fills for p in done.parts), done.mixed_ul) == expected
