"""From a tract to a plan: what the demo must show, and laws that hold for any tract."""

import datetime
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checks.build import OWNER, PATCH, PRODUCT, TREE, stems_of
from stemward.handbook import load
from stemward.kinds import Choice, MeasureOwned, Patch, Spared, Tract, Vessel
from stemward.kinds.land import Shape
from stemward.plan import as_data, draw_up, to_json
from stemward.plan.ways import RULE, suggest

AS_OF = datetime.date(2026, 10, 10)
CUP, SYRINGE = MeasureOwned("cup", 14_787, 236_588), MeasureOwned("syringe", 200, 5_000)


def tract_of(stems, choices=(), shelf=(PRODUCT,), spared=(TREE,), patches=(PATCH,)):
    """A small tract."""
    return Tract(
        "Slope", "invented", "WI", "UTC", "own", True, tuple(patches), stems, tuple(spared),
        tuple(p.id for p in patches), tuple(shelf), (OWNER,), (Vessel("bottle", 709_765),), (CUP, SYRINGE),
        tuple(choices), mixing_place=(90.0, 90.0),
    )  # fmt: skip


def plan_of(tract):
    return as_data(draw_up(tract, load(), AS_OF, "land"))


def weights(plan):
    """The heaviest weight of each check."""
    order = ["checked", "know", "find out", "stop"]
    heaviest = {}
    for f in plan["findings"]:
        heaviest[f["check"]] = max(heaviest.get(f["check"], 0), order.index(f["weight"]))
    return heaviest


def test_the_demo_shows_all_four_weights(demo_tract):
    """Quarry Hollow has a stop, something to find out, something to know and something checked."""
    plan = plan_of(demo_tract)
    assert {f["weight"] for f in plan["findings"]} == {"stop", "find out", "know", "checked"}
    assert {t["how"] for t in plan["treatments"]} >= {"cut stump", "hack and squirt", "basal bark"}
    assert "cut" in {t["state"] for t in plan["treatments"]}


def test_every_way_and_product_is_weighed(demo_tract):
    """Leave it, cut only and the rest, with each of the four products, for what still stands."""
    plan = plan_of(demo_tract)
    for treatment in plan["treatments"]:
        if treatment["state"] == "cut":
            assert {w["first"] for w in treatment["ways"] if w["product"]} >= {"fresh face", "", "sprouts"}
            continue
        assert {w["how"] for w in treatment["ways"]} >= {
            "leave it",
            "cut only",
            "cut stump",
            "basal bark",
            "hack and squirt",
            "foliar",
        }
        assert len({w["product"] for w in treatment["ways"] if w["product"]}) == 4


def test_the_same_tract_on_the_same_day_gives_the_same_bytes(demo_tract):
    """Nothing in a plan comes from a clock, a hash seed or chance."""
    assert to_json(plan_of(demo_tract)) == to_json(plan_of(demo_tract))


def test_another_day_is_another_plan(demo_tract):
    """The day is an input and changes the code."""
    other = as_data(draw_up(demo_tract, load(), AS_OF + datetime.timedelta(days=1), "land"))
    assert other["code"] != plan_of(demo_tract)["code"]


def test_the_rule_never_suggests_what_is_stopped(demo_tract):
    """What the printed rule suggests has no stop, or is to leave the plants."""
    for treatment in plan_of(demo_tract)["treatments"]:
        suggested = treatment["suggested"]
        assert suggested["how"] == "leave it" or suggested["stops"] == 0
        assert treatment["rule"] == list(RULE)


def test_nothing_on_the_shelf_leaves_the_plants():
    """Without a product there is nothing to suggest but to leave them; nothing is mixed."""
    plan = plan_of(tract_of(stems_of(), shelf=()))
    assert plan["treatments"][0]["how"] == "leave it"
    assert plan["mixes"] == []


def test_conifers_are_cut_only():
    """A plant that does not sprout is cut, without herbicide (Iowa State: conifers do not resprout)."""
    plan = plan_of(tract_of(stems_of(species="Juniperus virginiana")))
    assert plan["treatments"][0]["how"] == "cut only"


def test_cut_and_dead_stems_are_not_targets():
    """Stems already cut or dead are not treated standing."""
    stems = stems_of()
    stems = replace(stems, state=np.array(["cut", "standing"]))
    plan = plan_of(tract_of(stems))
    assert plan["treatments"][0]["rows"] == 1


def test_what_the_records_say_counts_toward_the_year():
    """Ingredient that lies there already this year is added to the load of every cluster in that patch."""
    from stemward.kinds import Entry

    choice = Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5)
    before = plan_of(tract_of(stems_of(), [choice]))
    body = {"patch": "slope", "ae_g": {"glyphosate": 500.0}}
    tract = replace(
        tract_of(stems_of(), [choice]), entries=(Entry("e1", "treated", "2026-05-02T10:00:00", -300, "owner", body),)
    )
    after = plan_of(tract)
    # 500 g on a tenth of an acre is 11 lb ae an acre; the label of the case allows 8.
    assert weights(before)["yearly-most"] == 0
    assert weights(after)["yearly-most"] == 3


TRACTS = st.builds(
    lambda sizes, xs, ys, at: stems_of(sizes, xs[: len(sizes)], ys[: len(sizes)], at=at),
    st.lists(st.floats(0.5, 60), min_size=1, max_size=8),
    st.lists(st.floats(0, 80).map(lambda v: round(v, 2)), min_size=8, max_size=8),
    st.lists(st.floats(0, 80).map(lambda v: round(v, 2)), min_size=8, max_size=8),
    st.sampled_from(["stump", "breast"]),
)
CHOICES = st.sampled_from(
    [
        None, ("cut stump", 0.5), ("hack and squirt", 0.4), ("cut stump", 0.2), ("basal bark", 0.2), ("foliar", 0.02),
        ("cut stump oil", 0.2), ("foliar cut", 0.02),
    ]
)  # fmt: skip


def chosen(how):
    if how is None:
        return ()
    method, _, more = how[0].removesuffix(" oil").removesuffix(" cut"), None, how[0].rpartition(" ")[2]
    carrier, first = ("oil" if more in ("oil", "bark") else ""), ("cut" if more == "cut" else "")
    tool = "backpack" if method in ("basal bark", "foliar") else ""
    return (Choice("slope", "Acer rubrum", method, "g4", how[1], carrier, tool, first=first),)


@settings(max_examples=25, deadline=None)
@given(TRACTS, CHOICES)
def test_need_assigned_and_mixed_are_kept_apart(stems, how):
    """Assigned adds up to the need; mixed is at least that; what is over is said; parts add up."""
    plan = plan_of(tract_of(stems, chosen(how)))
    for mix in plan["mixes"]:
        rows = sum(sum(plan["columns"][t]["stems"]) for t in mix["treatments"])
        assert rows > 0
        assert sum(b["assigned_ml"] for b in mix["batches"]) == pytest.approx(mix["need_ml"], abs=0.001)
        for batch in mix["batches"]:
            if "parts" in batch:
                assert batch["mixed_ml"] >= batch["assigned_ml"]
                assert batch["left_over_ml"] == pytest.approx(batch["mixed_ml"] - batch["assigned_ml"], abs=1e-6)
                assert sum(p["ml"] for p in batch["parts"]) == pytest.approx(batch["mixed_ml"], abs=1e-6)


@settings(max_examples=20, deadline=None)
@given(TRACTS, CHOICES, st.floats(-1000, 1000), st.randoms())
def test_moving_the_corner_post_and_the_order_of_rows_change_nothing(stems, how, shift, random):
    """The same stems in another order, with another corner: the same doses, findings and mixes."""
    order = list(range(len(stems)))
    random.shuffle(order)
    moved = replace(stems, x_m=stems.x_m + shift, y_m=stems.y_m - shift).where(np.array(order))
    tree = replace(TREE, shape=Shape("point", (((40.0 + shift, -shift),),)))
    one = plan_of(tract_of(stems, chosen(how)))
    other = plan_of(tract_of(moved, chosen(how), spared=(tree,)))
    assert weights(one) == weights(other)
    assert [m["need_ml"] for m in one["mixes"]] == pytest.approx([m["need_ml"] for m in other["mixes"]])
    assert [m["batches"] for m in one["mixes"]] == [m["batches"] for m in other["mixes"]]


@settings(max_examples=20, deadline=None)
@given(TRACTS, CHOICES.filter(bool), st.integers(0, 255))
def test_splitting_a_patch_changes_no_dose_and_never_lowers_a_finding(stems, how, bits):
    """A patch split in two is the same land: the same dose for every stem, and no check gets milder.

    By the same way: where nothing is chosen the rule may find another way for a part of the stems.
    """
    second = replace(PATCH, id="slope-b", name="Oak slope, far side")
    far = np.array([bool(bits >> i & 1) for i in range(len(stems))])
    split = replace(stems, patch=np.where(far, "slope-b", "slope"))
    choices = chosen(how)
    both = tuple(replace(c, patch=p) for c in choices for p in ("slope", "slope-b"))
    one = plan_of(tract_of(stems, choices))
    other = plan_of(tract_of(split, both, patches=(PATCH, second)))

    def doses(plan):
        found = {}
        for t in plan["treatments"]:
            step = next((s for s in plan["steps"] if s["id"] == f"{t['id']}.row_ml"), None)
            if step:
                found |= dict(zip(plan["columns"][t["id"]]["id"], step["value"], strict=True))
        return found

    assert doses(one) == pytest.approx(doses(other))
    for check, weight in weights(one).items():
        if check in weights(other) or weight > 0:
            assert weights(other)[check] >= weight


@settings(max_examples=20, deadline=None)
@given(TRACTS, st.floats(0.5, 60), st.floats(0, 80))
def test_a_stem_more_never_needs_less(stems, size, x):
    """One stem more never lowers the need, the acid equivalent or the number of findings' weight for roots."""
    more = stems_of([*stems.diameter_cm, size], [*stems.x_m, x], [*stems.y_m, 1.0], at=str(stems.measured_at[0]))
    how = chosen(("cut stump", 0.5))
    few, many = plan_of(tract_of(stems, how)), plan_of(tract_of(more, how))
    assert many["mixes"][0]["need_ml"] >= few["mixes"][0]["need_ml"]
    assert many["treatments"][0]["ae_g"]["glyphosate"] >= few["treatments"][0]["ae_g"]["glyphosate"]
    for check in ("soil-route", "shared-roots", "water"):
        assert weights(many).get(check, 0) >= weights(few).get(check, 0)


def test_a_patch_of_an_unknown_kind_is_to_be_found_out():
    """No kind of place, no yes."""
    plan = plan_of(
        tract_of(
            stems_of(), [Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5)], patches=(Patch("slope", "Slope", ()),)
        )
    )
    assert weights(plan)["site"] == 2


def test_a_spared_tree_of_the_same_kind_close_by_stops():
    """A kept red maple two metres from a red maple stump that is treated stops the plan."""
    maple = Spared("maple", "tree", Shape("point", (((2.0, 0.0),),)), "Acer rubrum", 30.0)
    plan = plan_of(tract_of(stems_of(), [Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5)], spared=(maple,)))
    assert weights(plan)["shared-roots"] == 3


def test_suggest_takes_the_first_difference():
    """The rule compares in its printed order."""
    tract = tract_of(stems_of())
    plan = plan_of(tract)
    ranked = sorted(
        (w for w in plan["treatments"][0]["ways"] if w["product"]), key=lambda w: (w["stops"] > 0, w["to_find_out"])
    )
    assert plan["treatments"][0]["suggested"]["to_find_out"] == ranked[0]["to_find_out"]
    assert callable(suggest)
