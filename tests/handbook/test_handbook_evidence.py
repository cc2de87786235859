"""Evidence: what was tried or advised, what speaks for a treatment, what is known to be weak."""

import pytest

from stemward.handbook import Evidence, load


def row(raw_id: str) -> Evidence:
    """The evidence row of one raw row."""
    return next(r for r in load().evidence_rows if r.id == raw_id)


def test_a_trial_with_figures_is_read_right() -> None:
    """DiTomaso & Kyser 2007: undiluted glyphosate in standing tree-of-heaven, 82.3 then 91.7 %."""
    found = row("efficacy.csv:7")
    assert (found.plant, found.method, found.ingredients) == (
        "Ailanthus altissima",
        "hack and squirt",
        ("glyphosate",),
    )
    assert (found.rating, found.rating_high) == ("good", "excellent")
    assert (found.low_frac, found.high_frac) == (0.823, 0.917)
    assert (found.concentration_low_frac, found.concentration_high_frac) == (1.0, 1.0)
    assert found.strength_ae_g_l == pytest.approx(3 * 119.826427)
    assert found.strength_typed == "3 lb ae/gal"
    assert (found.kind, found.season) == ("trial", "late Oct")


@pytest.mark.parametrize(
    ("raw_id", "rating", "low", "high"),
    [
        ("efficacy.csv:2", "excellent", 0.9, 1.0),  # over 90 %, DiTomaso & Kyser 2007
        ("efficacy.csv:9", "poor", 0.314, 0.667),  # 66.7 falling to 31.4 %, DiTomaso & Kyser 2007
        ("efficacy.csv:45", "poor", 0.2, 0.2),  # about 20 %, Poole et al. 2025
        ("efficacy.csv:87", "fair", 0.5, 0.5),  # 50 % at 120 h, Kochenderfer et al. 2013
        ("efficacy.csv:239", "poor", 0.0, 0.37),  # at most 37 %, honey mesquite trial
        ("efficacy.csv:256", "poor", 0.45, 0.45),  # 45 % against 3 % untreated, barberry trial
        ("efficacy.csv:258", "excellent", None, None),  # cover, not stems, barberry trial
        ("efficacy.csv:516", "none-stated", None, None),  # a nursery's claim is no figure
        ("efficacy.csv:429", "none-stated", None, None),  # good top kill that came back is not good
    ],
)
def test_ratings_and_shares(raw_id: str, rating: str, low: float | None, high: float | None) -> None:
    """The lesser word of a range counts, and only shares of plants controlled become figures."""
    found = row(raw_id)
    assert (found.rating, found.low_frac, found.high_frac) == (rating, low, high)


def test_no_row_of_a_maker() -> None:
    """The five rows of makers are left out: 693 raw rows give 688."""
    rows = load().evidence_rows
    assert len(rows) == 688
    assert not any("manufacturer" in f"{r.source} {r.kind}".lower() for r in rows)
    assert {r.kind for r in rows} == {
        "trial",
        "trial cited",
        "extension",
        "handbook",
        "agency",
        "practitioner",
    }


@pytest.mark.parametrize(
    "raw_id",
    ["efficacy.csv:458", "efficacy.csv:469", "efficacy.csv:477", "efficacy.csv:586", "efficacy.csv:588"],
)
def test_unclear_rows_are_flagged_and_do_not_count(raw_id: str) -> None:
    """New Hampshire 8 %, Iowa 12.5 % and Missouri 4 to 5 %: nobody knows what the percent is of."""
    assert "unclear" in row(raw_id).flags
    assert not row(raw_id).counts


def test_shares_lie_between_nothing_and_all() -> None:
    """No concentration or share is outside 0 to 1 or the wrong way round."""
    for r in load().evidence_rows:
        for low, high in (
            (r.low_frac, r.high_frac),
            (r.concentration_low_frac, r.concentration_high_frac),
        ):
            if low is not None and high is not None:
                assert 0 <= low <= high <= 1, r.id


def test_injecting_a_stump_is_not_hack_and_squirt() -> None:
    """Injection into cut stumps, which failed, is kept apart from injection of standing stems."""
    methods = {row(f"efficacy.csv:{n}").method for n in (4, 5, 6)}
    assert methods == {"stump injection"}
    assert load().weak("Ailanthus altissima", "stump injection", "imazapyr") is not None


def test_trials_come_first() -> None:
    """Rows on a treatment are given trials first."""
    kinds = [r.kind for r in load().evidence("Rhamnus cathartica", "foliar", "glyphosate")]
    all_kinds = [r.kind for r in load().evidence_rows]
    assert all_kinds == sorted(all_kinds, key=lambda k: k != "trial")
    assert kinds == sorted(kinds, key=lambda k: k != "trial")


def test_a_mixture_is_no_evidence_for_one_of_its_parts() -> None:
    """Saltcedar stumps under glyphosate with imazapyr (Fick & Geyer 2010) say nothing of glyphosate alone."""
    ids = {r.id for r in load().evidence("Tamarix ramosissima", "cut stump", "glyphosate")}
    assert "efficacy.csv:100" not in ids
    assert "efficacy.csv:105" in ids


def test_one_or_the_other_is_evidence_for_both() -> None:
    """Advice of "glyphosate or triclopyr" on black locust stumps speaks for each."""
    for ingredient in ("glyphosate", "triclopyr"):
        ids = {r.id for r in load().evidence("Robinia pseudoacacia", "cut stump", ingredient)}
        assert "efficacy.csv:286" in ids


def test_form_narrows_where_both_name_one() -> None:
    """Ester in oil on tree-of-heaven stumps (DiTomaso & Kyser 2007) is no evidence for amine in water."""
    book = load()
    assert book.evidence_tier("Ailanthus altissima", "cut stump", "triclopyr", "ester") == 3
    assert book.evidence_tier("Ailanthus altissima", "cut stump", "triclopyr", "amine") == 0


@pytest.mark.parametrize(
    ("latin", "method", "ingredient", "tier"),
    [
        ("Ailanthus altissima", "hack and squirt", "imazapyr", 3),  # DiTomaso & Kyser 2007
        ("Ailanthus altissima", "hack and squirt", "glyphosate", 3),  # DiTomaso & Kyser 2007
        ("Lonicera maackii", "cut stump", "glyphosate", 3),  # group trial 2009, Rivera et al. 2022
        ("Frangula alnus", "cut stump", "triclopyr", 2),  # Michigan State Univ. Extension
        ("Acer rubrum", "cut stump", "glyphosate", 2),  # Univ. of Illinois Extension, maples
        ("Ailanthus altissima", "cut stump", "glyphosate", 1),  # a nursery's word
        ("Quercus alba", "hack and squirt", "triclopyr", 0),
        ("Pyrus calleryana", "hack and squirt", "imazapyr", 0),  # the only trial found it poor
        ("No such plant", "cut stump", "glyphosate", 0),
    ],
)
def test_tiers(latin: str, method: str, ingredient: str, tier: int) -> None:
    """Trials over advice over word only; what failed does not speak for a treatment."""
    assert load().evidence_tier(latin, method, ingredient) == tier


def test_glossy_buckthorn_is_not_common_buckthorn() -> None:
    """Rows on Rhamnus cathartica alone do not stand for Frangula alnus."""
    plants = {r.plant for r in load().evidence("Frangula alnus", "cut stump", "glyphosate")}
    assert plants == {"Frangula alnus"}


@pytest.mark.parametrize(
    ("latin", "method", "ingredient", "source"),
    [
        ("Ulmus americana", "foliar", "imazapyr", "NC State Extension: elms"),
        ("Robinia pseudoacacia", "cut stump", "imazapyr", "NC State Extension: woody legumes"),
        ("Pyrus calleryana", "hack and squirt", "imazapyr", "Poole et al. 2025: about 20 %"),
        ("Diospyros virginiana", "hack and squirt", "2,4-D", "Peevy 1972"),
        ("Acer rubrum", "foliar", "glyphosate", "NC State Extension"),
        ("Triadica sebifera", "cut stump", "triclopyr", "Enloe et al. 2015"),
        ("Tamarix ramosissima", "cut stump", "glyphosate", "Fick & Geyer 2010"),
        ("Frangula alnus", "cut stump", "glyphosate", "Nagel, Corace & Storer 2008, a conflict"),
    ],
)
def test_weak_pairs(latin: str, method: str, ingredient: str, source: str) -> None:
    """Pairs on record as weak are given with who says so."""
    found = load().weak(latin, method, ingredient)
    assert found is not None, source
    assert found.source


@pytest.mark.parametrize(
    ("latin", "method", "ingredient"),
    [
        ("Acer rubrum", "cut stump", "glyphosate"),  # resistant to sprays on leaves only
        ("Pyrus calleryana", "cut stump", "imazapyr"),  # 100 %, Poole et al. 2025
        ("Ailanthus altissima", "hack and squirt", "imazapyr"),
        ("Fagus grandifolia", "hack and squirt", "glyphosate"),  # side effects on other stems are no failure
        ("Quercus alba", "hack and squirt", "glyphosate"),
    ],
)
def test_nothing_is_weak_beyond_what_is_stated(latin: str, method: str, ingredient: str) -> None:
    """A pair that is weak one way is not called weak another way."""
    assert load().weak(latin, method, ingredient) is None


def test_a_weak_form_does_not_condemn_another() -> None:
    """Undiluted ester failed in tree-of-heaven (DiTomaso & Kyser 2007); amine salt was not tried there."""
    book = load()
    assert book.weak("Ailanthus altissima", "hack and squirt", "triclopyr", "ester") is not None
    assert book.weak("Ailanthus altissima", "hack and squirt", "triclopyr", "amine") is None


def test_hand_kept_tables_name_only_plants_that_exist() -> None:
    """A slip of the pen in a hand-kept list would silently lose a warning."""
    from stemward.handbook.tables import parts, read_table

    book = load()
    plants_of_rows = {r.plant for r in book.evidence_rows}
    for line in read_table(book.folder, "weak.csv"):
        assert set(parts(line["plants"])) <= set(book.species), line["id"]
    for line in read_table(book.folder, "stands_for.csv"):
        assert line["plant"] in plants_of_rows, line["plant"]
        assert set(parts(line["species"])) <= set(book.species), line["plant"]
    genera = {f"{s.genus} *" for s in book.species.values()}
    for line in read_table(book.folder, "species_traits.csv"):
        assert line["plants"] in {*book.species, *genera}, line["id"]
