"""Figures of the handbook against what their sources say, with the source beside each."""

import math

import pytest

from stemward.handbook import load

FIGURES = [
    # default, value, source
    ("ring_cm", 2 * 2.54, "Kochenderfer et al. 2006, North. J. Appl. For. 23(3): outer 2 in of stumps"),
    ("whole_up_to_cm", 3 * 2.54, "common practice, no source: whole face up to 3 in"),
    ("ml_per_cut", 1.0, "Pacific Northwest handbook 2022: 1 mL a cut"),
    ("least_cuts", 2.0, "Penn State Extension, hack and squirt: two cuts at least"),
    ("lower_tolerance_frac", 0.05, "common practice, no source"),
    ("spread_factor", 1.6, "engineering guess, no source"),
    ("link_m", 10.0, "engineering guess, no source"),
    ("cluster_buffer_m", 5.0, "engineering guess, no source"),
    ("least_area_m2", 4046.8564224 / 10, "a tenth of an acre; 1 acre = 4046.8564224 m2 exactly"),
    ("protection_multiple", 12.0, "Vancouver (Washington) code 20.170.100: 1 ft per inch"),
    ("advice_multiple", 18.0, "Edina (Minnesota): 10 in trunk, 15 ft"),
    ("likely_multiple", 30.0, "NC State Extension figure 3: 12 in trunk, ideally 30 ft"),
    ("crown_multiple", 3.0, "UF/IFAS Charlotte County 2015: about 3 times the branch spread"),
    ("graft_same_m", 3 * 5.0, "engineering guess: three times the 5 m of DiTomaso & Kyser 2007"),
    ("graft_oak_m", 100 * 0.3048, "Tree Care Industry Association: as much as 100 ft"),
    ("mix_from_well_m", 100 * 0.3048, "California 3 CCR 6609: 100 ft"),
    ("cut_to_treat_min", 5.0, "common practice, no source"),
    ("rain_free_h", 6.0, "US Bureau of Land Management, Oregon, 2008: 6 h"),
    ("dye_low_frac", 0.0025, "Texas A&M AgriLife: 0.25 %"),
    ("dye_high_frac", 0.005, "Texas A&M AgriLife: 0.5 %"),
    ("glyphosate_stump_low_frac", 0.5, "common practice, no source: 50 to 100 %"),
    ("glyphosate_stump_high_frac", 1.0, "common practice, no source: 50 to 100 %"),
    ("stand_after_injection_days", 30.0, "Rutgers: wait 30 days before felling"),
]


@pytest.mark.parametrize(("name", "value", "source"), FIGURES, ids=[row[0] for row in FIGURES])
def test_a_default_is_the_figure_of_its_source(name: str, value: float, source: str) -> None:
    """Each default, in metric, is what its source says."""
    assert math.isclose(load().defaults[name].number, value, rel_tol=1e-9), source


def test_defaults_name_their_unit() -> None:
    """A default whose name ends in a unit carries that unit, so that inches cannot pass for centimetres."""
    units = ("cm", "ml", "frac", "m", "m2", "min", "h")
    for name, cited in load().defaults.items():
        ending = name.rsplit("_", 1)[-1]
        if ending in units:
            assert name.endswith(f"_{cited.unit}"), name
    assert load().defaults["stand_after_injection_days"].unit == "d"


def test_common_practice_and_guesses_are_said_to_be_so() -> None:
    """Figures without a source are graded practice or guess and say that they have none."""
    book = load()
    assert book.defaults["lower_tolerance_frac"].grade == "practice"
    assert book.defaults["cluster_buffer_m"].grade == "guess"
    for cited in book.defaults.values():
        if cited.source.endswith("no source"):
            assert cited.grade in ("practice", "guess"), cited.id


@pytest.mark.parametrize(
    ("ingredient", "strength_lb_gal", "share", "rule", "spacing_in", "least"),
    [
        # Pacific Northwest handbook 2022 and Univ. of Georgia 2003: one per 3 in at 50 and 20 % of 4 lb
        ("imazapyr", 4.0, 0.5, "per diameter", 3.0, 1),
        ("imazapyr", 4.0, 0.2, "per diameter", 3.0, 1),
        # Penn State Extension: one per inch, two at least, where nothing narrower is on record
        ("imazapyr", 4.0, 0.19, "per diameter", 1.0, 2),
        ("imazapyr", 2.0, 0.5, "per diameter", 1.0, 2),
        ("imazapyr", 2.0, 1.0, "per diameter", 1.0, 2),
        ("picloram", 2.0, 1.0, "per diameter", 1.0, 2),
        # Pacific Northwest handbook 2022: one per inch
        ("glyphosate", 4.0, 0.5, "per diameter", 1.0, 2),
        # Pacific Northwest handbook, older table: 3 to 4 in between centres at 50 to 100 %
        ("triclopyr", 3.0, 0.5, "per centres", 3.0, 1),
        ("triclopyr", 3.0, 1.0, "per centres", 3.0, 1),
        ("triclopyr", 3.0, 0.3, "per diameter", 1.0, 2),
    ],
)
def test_cut_rules_go_by_ingredient_strength_and_mix(
    ingredient: str, strength_lb_gal: float, share: float, rule: str, spacing_in: float, least: int
) -> None:
    """Wide spacing is for concentrated imazapyr alone, and the kind of rule is kept as published."""
    found = load().cut_rule(ingredient, strength_lb_gal * 119.826427, share)
    assert (found.rule, found.least, found.ml_per_cut) == (rule, least, 1.0)
    assert math.isclose(found.spacing_cm, spacing_in * 2.54, rel_tol=1e-9)


@pytest.mark.parametrize(
    ("ingredient", "form", "method", "lb_gal", "usual", "source"),
    [
        ("glyphosate", "isopropylamine salt", "cut stump", 4.0, 0.5, "Pacific Northwest handbook 2022"),
        ("triclopyr", "triethylamine salt", "cut stump", 3.0, 0.5, "Enloe et al. 2023: 180 g ae/L"),
        ("triclopyr", "triethylamine salt", "hack and squirt", 3.0, 0.5, "Pacific Northwest, older table"),
        ("imazapyr", "isopropylamine salt", "hack and squirt", 4.0, 0.2, "Univ. of Georgia 2003"),
        ("imazapyr", "isopropylamine salt", "cut stump", 2.0, 0.1, "Fick & Geyer 2010"),
    ],
)
def test_usual_strengths(ingredient: str, form: str, method: str, lb_gal: float, usual: float, source: str) -> None:
    """The usual share of product is the published one, within its own range."""
    found = load().strength(ingredient, form, method, lb_gal * 119.826427)
    assert found is not None, source
    assert found.usual_frac == usual
    assert found.low_frac <= usual <= found.high_frac


def test_no_strength_where_none_is_on_record() -> None:
    """Weak garden products and other ingredients have no usual strength here."""
    book = load()
    assert book.strength("glyphosate", "isopropylamine salt", "cut stump", 150.0) is None
    assert book.strength("2,4-D", "dimethylamine salt", "cut stump", 455.0) is None


def test_oil_mixes_have_their_strength() -> None:
    """20 % of a 4 lb ester in oil on stumps and bark: Rathfon & Ruble 2007, USFS e-GTR SRS-101:187-197."""
    for method in ("cut stump", "basal bark"):
        found = load().strength("triclopyr", "butoxyethyl ester", method, 479.3)
        assert found is not None
        assert (found.usual_frac, found.carrier) == (0.2, "oil")


def test_a_mixture_knows_both_its_products() -> None:
    """Glyphosate with imazapyr in water on stumps: Ballard & Nowak 2006, Arboric. & Urban For. 32(3):118-124."""
    mixture = next(m for m in load().mixtures if m.method == "cut stump")
    assert mixture.fits("glyphosate", "isopropylamine salt", "imazapyr", "isopropylamine salt")
    assert not mixture.fits("imazapyr", "isopropylamine salt", "glyphosate", "isopropylamine salt")
    # 40 % of 3 lb ae/gal (359.5 g/L) and 2 % of 2 lb ae/gal (239.7 g/L).
    assert (mixture.ae_g_l, mixture.partner_ae_g_l) == (143.8, 4.8)


def test_tools_wet_as_reckoned() -> None:
    """Depths on a cut face are 0.05 and 0.015 mL per cm2, drips 5 to 20 and 1 to 5 %: all guesses."""
    squirt, dauber = (load().tools[name] for name in ("squirt bottle", "dauber"))
    assert (squirt.depth_ml_cm2.value, dauber.depth_ml_cm2.value) == (0.05, 0.015)
    assert (squirt.drip_low_frac.value, squirt.drip_high_frac.value) == (0.05, 0.20)
    assert (dauber.drip_low_frac.value, dauber.drip_high_frac.value) == (0.01, 0.05)
    assert {squirt.depth_ml_cm2.grade, dauber.drip_low_frac.grade} == {"guess"}
    backpack = load().tools["backpack"]
    assert (backpack.depths["smooth bark"].value, backpack.depths["rough bark"].value) == (0.03, 0.05)


def test_every_tool_is_complete_and_in_order() -> None:
    """Every tool has what the dose needs, and no low end lies above its high end."""
    for tool in load().tools.values():
        assert tool.depth_ml_cm2.number > 0
        assert 0 <= tool.waste_frac.number <= 0.5
        assert 0 < tool.drip_low_frac.number <= tool.drip_high_frac.number <= 1
        assert tool.smallest_ml.number > 0


def test_soil_behaviour_of_the_usual_three() -> None:
    """Glyphosate hardly moves, imazapyr does and roots give it off, triclopyr a little.

    UConn herbicide pages (glyphosate); Douglass et al. 2016, Rangeland Ecol. Manage. 69:199-205.
    """
    book = load()
    glyphosate = book.ingredient("glyphosate", "isopropylamine salt")
    imazapyr = book.ingredient("imazapyr", "isopropylamine salt")
    triclopyr = book.ingredient("triclopyr", "triethylamine salt")
    assert glyphosate and imazapyr and triclopyr
    assert (glyphosate.soil_active, triclopyr.soil_active, imazapyr.soil_active) == ("no", "weak", "yes")
    assert (glyphosate.exuded, triclopyr.exuded, imazapyr.exuded) == (False, False, True)


def test_ingredients_that_roots_give_off() -> None:
    """The seven that roots exude or soil keeps active, as listed by practitioners; no source."""
    given_off = {row.name for row in load().ingredients.values() if row.exuded}
    assert given_off == {
        "imazapyr",
        "picloram",
        "aminopyralid",
        "aminocyclopyrachlor",
        "clopyralid",
        "dicamba",
        "hexazinone",
    }


def test_every_form_of_triclopyr_moves_as_the_acid() -> None:
    """Half-life and Koc of salt, ester and choline are the acid's: 5, 30 and 100 days (three sources)."""
    forms = [row for row in load().ingredients.values() if row.name == "triclopyr"]
    assert {row.form for row in forms} == {"acid", "amine", "ester", "choline"}
    for row in forms:
        assert row.dt50_low_d and row.dt50_typical_d and row.dt50_high_d
        days = (row.dt50_low_d.value, row.dt50_typical_d.value, row.dt50_high_d.value)
        assert days == (5.0, 30.0, 100.0)
        assert row.dt50_low_d.id == "ingredient.triclopyr.acid.dt50_low"


def test_a_no_from_memory_is_not_relied_on() -> None:
    """An ingredient whose inactivity in soil is only remembered counts as weakly active."""
    for row in load().ingredients.values():
        assert not (row.soil_active == "no" and row.soil_cited.grade == "memory"), row.name


@pytest.mark.parametrize(
    ("name", "form_text", "form"),
    [
        ("triclopyr", "triethylamine salt", "amine"),
        ("Triclopyr", "choline salt", "choline"),
        ("triclopyr", "butoxyethyl ester", "ester"),
        ("triclopyr", "acid", "acid"),
        ("glyphosate", "potassium salt", "salt"),
        ("2,4-D", "dimethylamine salt", "salt"),
        ("2,4-d", "2-ethylhexyl ester", "ester"),
        ("metsulfuron methyl", "60 % dry flowable", "dry"),
        ("hexazinone", "", "any"),
    ],
)
def test_the_form_is_found_from_its_description(name: str, form_text: str, form: str) -> None:
    """Descriptions as they stand on jugs lead to the right row."""
    found = load().ingredient(name, form_text)
    assert found is not None
    assert found.form == form


def test_an_ingredient_not_on_record_is_none() -> None:
    """Nothing stands in for an unknown ingredient."""
    assert load().ingredient("no such thing", "salt") is None


def test_oak_wilt_months() -> None:
    """April through July in Wisconsin, mid-April to mid-July in Michigan (both states); Texas doubtful."""
    wilt = load().wilt
    assert wilt["WI"][:2] == ((4, 1), (7, 31))
    assert wilt["MN"][:2] == ((4, 1), (7, 31))
    assert wilt["MI"][:2] == ((4, 15), (7, 15))
    assert wilt["TX"].cited.grade == "memory"
    assert "IA" not in wilt


def test_states_and_the_strict_one() -> None:
    """Fifty states and the District of Columbia; New York asks more (its letter of 17 May 1988)."""
    book = load()
    assert len(book.states) == 51
    assert (book.states["WI"], book.states["DC"]) == ("Wisconsin", "District of Columbia")
    assert set(book.strict_states) == {"NY"}
    assert book.strict_states["NY"].id.endswith("1988-05-17")
    assert set(book.wilt) | set(book.strict_states) <= set(book.states)


@pytest.mark.parametrize(
    ("category", "material", "holds"),
    [
        # Washington WAC 16-233-216, repeating the federal table
        ("A", "natural rubber", "high"),
        ("B", "nitrile rubber", "slight"),
        ("C", "polyethylene", "moderate"),
        ("D", "polyvinyl chloride", "none"),
        ("E", "butyl rubber", "slight"),
        ("E", "nitrile rubber", "high"),
        ("F", "neoprene rubber", "moderate"),
        ("G", "fluoroelastomer", "high"),
        ("H", "barrier laminate", "high"),
    ],
)
def test_glove_table(category: str, material: str, holds: str) -> None:
    """How long a material holds is what the table says."""
    assert load().gloves[(category, material)].value == holds


def test_glove_table_is_whole_and_laminate_always_holds() -> None:
    """Eight categories by eight materials, in the words label facts use; laminate is high in every row."""
    from stemward.label import facts

    gloves = load().gloves
    assert set(gloves) == {(c, m) for c in facts.GLOVE_CATEGORIES for m in facts.GLOVE_MATERIALS}
    assert {gloves[(c, "barrier laminate")].value for c in facts.GLOVE_CATEGORIES} == {"high"}


def test_gear_covers_every_item_a_label_can_ask_for() -> None:
    """Whatever can be entered from a label is in the list, and what serves for something is too."""
    from stemward.label import facts

    gear = load().gear
    assert set(facts.EQUIPMENT) <= set(gear)
    assert {other for item in gear.values() for other in item.serves_for} <= set(gear)


def test_what_serves_for_what() -> None:
    """Resistant gloves are waterproof, goggles are eyewear, boots are shoes; never the reverse, nor mesh."""
    book = load()
    assert book.serves_for("chemical-resistant gloves") == ("waterproof gloves",)
    assert book.serves_for("goggles") == ("protective eyewear",)
    assert book.serves_for("boots") == ("shoes and socks",)
    for weaker in ("waterproof gloves", "protective eyewear", "shoes and socks", "mesh visor", "saw gloves"):
        assert book.serves_for(weaker) == ()
    assert book.serves_for("a hat of leaves") == ()


def test_usual_least_for_a_strong_mix() -> None:
    """Long sleeves, long trousers, boots with socks, waterproof gloves, eye protection: common practice."""
    assert set(load().usual_gear) == {
        "long-sleeved shirt",
        "long pants",
        "boots",
        "waterproof gloves",
        "protective eyewear",
    }
    assert "socks" in load().gear["boots"].meaning


def test_measures_are_whole_marks() -> None:
    """A syringe by 0.2 mL, a cup by half ounces, a quart by ounces (1 fl oz = 29.5735 mL)."""
    marks = {m.id: (m.mark_ul, m.capacity_ul) for m in load().measures}
    assert marks["5 mL syringe"] == (200, 5000)
    assert marks["measuring cup"] == (round(29573.5295625 / 2), round(8 * 29573.5295625))
    assert marks["quart measure"] == (round(29573.5295625), round(32 * 29573.5295625))


def test_every_stage_has_cautions() -> None:
    """No stage of the work is without its cautions, and no caution stands twice."""
    cautions = load().cautions
    assert {c.stage for c in cautions} == {"before", "cut", "mix", "apply", "after", "emergency"}
    assert len({c.id for c in cautions}) == len(cautions)
