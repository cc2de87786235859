"""Kill rates of others as a table: what is given out comes in again, and every wrong line is told."""

import pytest

from stemward.gate.folder import read_texts
from stemward.gate.out.rates import rates_csv
from stemward.gate.problems import Unreadable
from stemward.gate.rates import read_rates
from stemward.handbook import load
from stemward.label import KINDS
from stemward.plan.rates import Rate

BOOK = load()
NAMES = {name for name, _ in BOOK.ingredients}


def test_what_one_gives_out_another_brings_in():
    given = (
        Rate("Frangula alnus", "cut stump", ("glyphosate salt 480 g ae/L",), 50.0, 2, 3, 20, 24, 13.4),
        Rate("Ailanthus altissima", "girdle", ("triclopyr ester 480 g ae/L", "imazapyr salt 240 g ae/L"),
             0.0, 0, 1, 0, 7, 18),
    )  # fmt: skip
    one, two = read_rates(rates_csv(given, BOOK).decode(), "rates.csv", BOOK.find_species, NAMES, "the crew next door")
    assert (one.species, one.method, one.ingredients) == ("Frangula alnus", "cut stump", ("glyphosate",))
    assert (one.works, one.dead, one.seen, one.percent, one.months) == (3, 20, 24, 50.0, 13.0)
    assert one.ae_g_l == 240.0 and one.share == 0 and one.whose == "the crew next door"
    assert two.ingredients == ("triclopyr", "imazapyr") and two.ae_g_l == 0
    assert [one.id, two.id] == ["r1", "r2"]


@pytest.mark.parametrize(
    ("row", "line", "message"),
    [
        ("no such plant,cut stump,glyphosate,50,summer,1,2,3,12", 3, "rates.plant"),
        ("Frangula alnus,wishing,glyphosate,50,summer,1,2,3,12", 3, "rates.method"),
        ("Frangula alnus,cut stump,salt and pepper,50,summer,1,2,3,12", 3, "rates.ingredient"),
        ("Frangula alnus,cut stump,glyphosate,50,summer,1,4,3,12", 3, "rates.more_dead"),
        ("Frangula alnus,cut stump,glyphosate,many,summer,1,2,3,12", 3, "cell.not_a_number"),
        ("Frangula alnus,cut stump,glyphosate,50,summer,1,,3,12", 3, "cell.empty"),
    ],
)
def test_a_wrong_line_is_told_and_nothing_taken(row, line, message):
    text = f"# how it was made\nspecies,method,ingredients,percent,season,works,dead,seen,months\n{row}\n"
    with pytest.raises(Unreadable) as wrong:
        read_rates(text, "rates.csv", BOOK.find_species, NAMES)
    assert (wrong.value.problems[0].message, wrong.value.problems[0].line) == (message, line)


def test_more_dead_than_seen_in_a_tract_folder_is_told(tmp_path):
    """Kill rates of others in tract.toml are looked at like those in a table."""
    text = """name = "x"
[[patches]]\nid = "rim"\n[[rates]]\nid = "r1"\nspecies = "Frangula alnus"\nmethod = "cut stump"
ingredients = ["glyphosate"]\nworks = 1\ndead = 4\nseen = 3\nshare = "25 %"\n"""
    with pytest.raises(Unreadable) as wrong:
        read_texts({"tract.toml": text}, BOOK.find_species, KINDS)
    assert [one.message for one in wrong.value.problems] == ["rates.more_dead"]
    read = read_texts({"tract.toml": text.replace("dead = 4", "dead = 2")}, BOOK.find_species, KINDS)
    (one,) = read.tract.rates
    assert (one.dead, one.seen, one.works, one.share, one.ingredients) == (2, 3, 1, 0.25, ("glyphosate",))
