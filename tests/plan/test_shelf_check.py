"""What is noticed of a jug: each notice comes, and goes."""

from dataclasses import replace

import pytest

from stemward.handbook import load
from stemward.kinds import Container, Content, Product
from stemward.plan.shelf_check import shelf_check
from stemward.say.en.shelf import NOTED

GOOD = Product(
    "g", "Example", True, "1234-56", "salt in water", (Content("glyphosate", "isopropylamine salt", 480.0),),
    containers=(Container("jug 1", 1_000_000, 500_000),),
)  # fmt: skip


def seen(product: Product) -> set[str]:
    """Message ids of what is noticed."""
    return {one.message for one in shelf_check(product, load())}


def test_a_usual_jug_has_nothing_to_note():
    """A numbered jug of usual strength with an amount left is not remarked on."""
    assert seen(GOOD) == set()


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        ({"number": ""}, "number_missing"),
        ({"number": "about 3"}, "number_odd"),
        ({"edition_label": "A", "edition_jug": "B"}, "edition"),
        ({"contents": (*GOOD.contents, Content("imazapyr", "salt", 240.0))}, "two_ingredients"),
        ({"contents": (Content("moonwort", "salt", 240.0),)}, "unknown"),
        ({"contents": (Content("glyphosate", "isopropylamine salt", 6.0),)}, "weak"),
        ({"contents": (Content("imazapyr", "isopropylamine salt", 240.0),)}, "lasts"),
        ({"containers": ()}, "no_jug"),
        ({"containers": (Container("jug 1", 1_000_000, None),)}, "left_unknown"),
    ],
)
def test_each_notice_comes(changed, message):
    """What is changed is noticed, and has words."""
    assert message in seen(replace(GOOD, **changed))
    assert NOTED[message]
