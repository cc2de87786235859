"""Plants: what is known of them, and finding them by name."""

import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.handbook import Near, Species, load

KEEPERS = {
    "bur oak": "Quercus macrocarpa",
    "white oak": "Quercus alba",
    "black oak": "Quercus velutina",
    "northern red oak": "Quercus rubra",
    "red maple": "Acer rubrum",
    "sugar maple": "Acer saccharum",
    "willow": "Salix spp.",
    "black willow": "Salix nigra",
    "hickory": "Carya spp.",
    "shagbark hickory": "Carya ovata",
    "longleaf pine": "Pinus palustris",
    "glossy buckthorn": "Frangula alnus",
    "tree-of-heaven": "Ailanthus altissima",
    "autumn olive": "Elaeagnus umbellata",
    "bush honeysuckle": "Lonicera spp.",
    "bush honeysuckles": "Lonicera spp.",
    "multiflora rose": "Rosa multiflora",
    "callery pear": "Pyrus calleryana",
}


@pytest.mark.parametrize(("name", "latin"), KEEPERS.items())
def test_plants_people_name_are_there(name: str, latin: str) -> None:
    """Common plants to treat and to keep are found by their common names."""
    found = load().find_species(name)
    assert isinstance(found, Species)
    assert found.latin == latin


@pytest.mark.parametrize(
    "spelling",
    [
        "tree of heaven",
        "TREE-OF-HEAVEN",
        "treeofheaven",
        " Ailanthus Altissima ",
        "ailanthus",
        "Ailanthus glandulosa",
    ],
)
def test_case_hyphens_and_synonyms_do_not_matter(spelling: str) -> None:
    """Every way of writing one name finds the same plant."""
    found = load().find_species(spelling)
    assert isinstance(found, Species)
    assert found.latin == "Ailanthus altissima"


@pytest.mark.parametrize(
    ("name", "among"),
    [
        ("red oak", {"Quercus rubra", "Quercus falcata"}),
        ("ironwood", {"Ostrya virginiana", "Carpinus caroliniana"}),
        ("sumac", {"Rhus glabra", "Rhus typhina"}),
        ("aspen", {"Populus tremuloides", "Populus grandidentata"}),
        ("buckthorn", {"Rhamnus cathartica", "Frangula alnus"}),
        ("honeysuckle", {"Lonicera spp.", "Lonicera japonica"}),
        ("glosy buckthorn", {"Frangula alnus"}),
        ("buckthron", {"Rhamnus cathartica", "Frangula alnus"}),
        ("bur oka", {"Quercus macrocarpa"}),
    ],
)
def test_an_unclear_name_is_asked_about(name: str, among: set[str]) -> None:
    """A name shared by several plants, or misspelt, gives what may be meant and picks none."""
    found = load().find_species(name)
    assert isinstance(found, Near)
    assert found.text == name
    assert among <= {latin for _, latin in found.candidates}


def test_a_name_like_nothing_gives_no_candidates() -> None:
    """Nothing is offered where nothing is alike."""
    assert load().find_species("qqqqzzz") == Near("qqqqzzz", ())
    assert load().find_species("") == Near("", ())


@given(st.text(alphabet=string.printable, max_size=30))
@settings(max_examples=60, deadline=None)
def test_only_a_full_name_finds_a_plant(text: str) -> None:
    """Whatever is typed, a plant comes back only for one of its own names."""
    book = load()
    found = book.find_species(text)
    if isinstance(found, Species):
        plain = "".join(c for c in text.casefold() if c.isalnum())
        names = (found.common, found.latin, *found.synonyms)
        assert plain in {"".join(c for c in n.casefold() if c.isalnum()) for n in names}
    else:
        assert all(latin in book.species for _, latin in found.candidates)


def test_every_plant_is_found_by_its_latin_name() -> None:
    """A Latin name always finds its own plant."""
    book = load()
    for latin, plant in book.species.items():
        assert book.find_species(latin) is plant


@pytest.mark.parametrize(
    ("latin", "cut_first", "source"),
    [
        ("Ailanthus altissima", "worse", "DiTomaso & Kyser 2007 p. 56"),
        ("Robinia pseudoacacia", "worse", "Michigan Natural Features Inventory 2012"),
        ("Populus tremuloides", "worse", "Pleasant Valley Conservancy 2014"),
        ("Rhus typhina", "worse", "Pleasant Valley Conservancy 2012"),
        ("Sassafras albidum", "worse", "from memory"),
        ("Fagus grandifolia", "fits", "Kochenderfer et al. 2006, 2013: the exception"),
        ("Frangula alnus", "fits", "no root suckers: Michigan Natural Features Inventory 2012, Techline"),
    ],
)
def test_what_cutting_first_does(latin: str, cut_first: str, source: str) -> None:
    """Root-suckering clones come back worse when cut first; beech is the exception."""
    assert load().species[latin].cut_first == cut_first, source


def test_plants_made_worse_by_cutting_spread_as_one_plant() -> None:
    """Every plant that cutting makes worse is a clone by root suckers."""
    for plant in load().species.values():
        if plant.cut_first == "worse":
            assert plant.clone, plant.latin
            assert plant.root_suckers == "yes", plant.latin


def test_corrections_made_since_are_in() -> None:
    """Buckthorn's deep seed bank is gone, black cherry suckers weakly, bigleaf maple resists glyphosate."""
    book = load()
    assert "deep seed bank" not in book.species["Rhamnus cathartica"].note
    assert "within two years" in book.species["Rhamnus cathartica"].note
    assert book.species["Prunus serotina"].root_suckers == "weak"
    assert not book.species["Prunus serotina"].clone
    maple = book.weak("Acer macrophyllum", "foliar", "glyphosate")
    assert maple is not None
    assert "suppressed" in maple.note


def test_sizes_are_metric_with_the_figure_as_published_beside() -> None:
    """Tree-of-heaven to 6 ft (US Forest Service field guide page) is 182.88 cm, and 72 in stays readable."""
    plant = load().species["Ailanthus altissima"]
    assert plant.max_dbh_cm == pytest.approx(72 * 2.54)
    assert "72 in" in plant.cited.note


def test_grafting_kinds() -> None:
    """Oaks and elms graft (Tree Care Industry Association; Graham & Bormann 1966), roses are not said to."""
    species = load().species
    assert species["Quercus macrocarpa"].grafts
    assert species["Ulmus americana"].grafts
    assert not species["Rosa multiflora"].grafts


def test_conifers_do_not_sprout() -> None:
    """Longleaf pine (from memory) and redcedar (Kansas State eUpdate 104) do not sprout from the stump."""
    assert load().species["Pinus palustris"].stump_sprouts == "no"
    assert load().species["Juniperus virginiana"].stump_sprouts == "no"


def test_what_is_remembered_is_said_to_be() -> None:
    """A plant whose sprouting nobody read about is graded memory."""
    species = load().species
    assert species["Sassafras albidum"].cited.grade == "memory"
    assert species["Quercus macrocarpa"].cited.grade == "memory"
    assert species["Ailanthus altissima"].cited.grade == "published"


def test_words_of_plants_are_from_closed_lists() -> None:
    """Traits hold only the words that other rooms know."""
    for plant in load().species.values():
        assert plant.stump_sprouts in ("no", "weak", "moderate", "strong", "unknown"), plant.latin
        assert plant.root_suckers in ("yes", "no", "weak", "unknown"), plant.latin
        assert plant.cut_first in ("worse", "fits", "unknown"), plant.latin
        assert plant.habit in ("tree", "shrub", "vine"), plant.latin
        assert plant.evergreen in ("yes", "no", "semi"), plant.latin
        assert plant.genus == plant.latin.split()[0]
