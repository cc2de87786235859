"""What must be bought: what mixes take against what jugs hold."""

import datetime
from dataclasses import replace

from ledger.some import entry, hollow
from stemward.handbook import load
from stemward.plan import as_data, draw_up
from stemward.plan.to_buy import to_buy

PLAN = as_data(draw_up(hollow(), load(), datetime.date(2026, 10, 10)))


def bought(tract):
    """Needed, left and short by what."""
    return {one.what: one for one in to_buy(PLAN, tract)}


def test_products_first_then_what_no_shelf_follows():
    """Water is not bought; oil and dye are looked for."""
    names = list(bought(hollow()))
    assert names[-2:] == ["dye", "oil"]
    assert "water" not in names
    assert bought(hollow())["oil"].left_ml is None
    assert all(one.short_ml == 0 for one in bought(hollow()).values())


def test_what_was_drawn_is_short():
    """The ester's jug held a gallon; with all but 100 mL drawn, what the mix takes beyond that is short."""
    drawn = [{"product": "triclopyr-ester-4lb", "jug": "jug 1", "ml": 3785.412 - 100}]
    tract = hollow(entries=(entry("m", "batch mixed", batch="m", mixed_ml=9000, drawn=drawn),))
    one = bought(tract)["Example triclopyr ester 4 lb"]
    assert round(one.left_ml) == 100
    assert one.short_ml == one.need_ml - one.left_ml > 0


def test_no_jug_and_no_look():
    """Without a jug all of it is to be bought; where nobody looked it is not known."""
    shelf = hollow().shelf
    none = hollow(shelf=tuple(replace(p, containers=()) for p in shelf))
    unseen = hollow(
        shelf=tuple(replace(p, containers=tuple(replace(c, left_ul=None) for c in p.containers)) for p in shelf)
    )
    name = "Example imazapyr 2 lb"
    assert bought(none)[name].short_ml == bought(none)[name].need_ml
    assert (bought(unseen)[name].left_ml, bought(unseen)[name].short_ml) == (None, 0.0)
