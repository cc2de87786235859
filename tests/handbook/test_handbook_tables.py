"""The packaged tables themselves: sources, grades, refusals, sameness with the raw facts."""

import os
import re
import runpy
import shutil
from pathlib import Path

import pytest

from stemward.handbook import Book, HandbookError, load
from stemward.handbook.tables import GRADES, read_table

TABLES = sorted(path.name for path in load().folder.glob("*.csv"))
SCRIPT = Path(__file__).parents[2] / "tools" / "normalise_handbook.py"
MADE = ("species.csv", "evidence.csv", "ingredients.csv")


@pytest.mark.parametrize("name", TABLES)
def test_every_row_says_where_it_comes_from(name: str) -> None:
    """Every row of every table has a source and a grade from the closed list."""
    rows = read_table(load().folder, name)
    assert rows
    for row in rows:
        assert row["source"].strip()
        assert row["grade"] in GRADES


@pytest.mark.parametrize("name", TABLES)
def test_published_rows_say_who_and_remembered_ones_do_not_pretend(name: str) -> None:
    """A row graded published names more than memory; a row that says only "from memory" is graded so."""
    for row in read_table(load().folder, name):
        if row["source"].strip() == "from memory":
            assert row["grade"] == "memory", row
        if row["grade"] in ("practice", "guess"):
            assert re.search(r"no source|common practice|guess|abbreviations", row["source"]), row


@pytest.mark.parametrize("name", TABLES)
def test_no_word_that_reads_as_permission(name: str) -> None:
    """Nothing in the tables promises that a treatment may be used or does no harm."""
    words = re.compile(r"\b(safe|safer|safely|legal|legally|OK|approve[sd]?|compliant|violations?)\b")
    for row in read_table(load().folder, name):
        text = " ".join(value for column, value in row.items() if column not in ("place", "source", "code"))
        assert not words.search(text), text


def copy_of_tables(folder: Path) -> Book:
    """A book on a copy of the packaged tables."""
    shutil.copytree(load().folder, folder / "data")
    return Book(folder / "data")


def blank(path: Path, row: int, column: str) -> None:
    """Empty one cell of a table."""
    import csv

    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    rows[row - 1][column] = ""
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)


READERS = {
    "species.csv": lambda book: book.species,
    "species_more.csv": lambda book: book.species,
    "species_traits.csv": lambda book: book.species,
    "evidence.csv": lambda book: book.evidence_rows,
    "stands_for.csv": lambda book: book.evidence("Acer rubrum", "foliar", "glyphosate"),
    "weak.csv": lambda book: book.weak("Acer rubrum", "foliar", "glyphosate"),
    "ingredients.csv": lambda book: book.ingredients,
    "defaults.csv": lambda book: book.defaults,
    "cut_rules.csv": lambda book: book.cut_rules,
    "strengths.csv": lambda book: book.strength("glyphosate", "salt", "cut stump", 480.0),
    "tools.csv": lambda book: book.tools,
    "measures.csv": lambda book: book.measures,
    "trials.csv": lambda book: book.trials("Ligustrum sinense", "basal bark", "triclopyr"),
    "hours.csv": lambda book: book.paces,
    "seasons.csv": lambda book: book.seasons("Acer rubrum", "foliar"),
    "state_rules.csv": lambda book: book.state_rules("WI", "water permit"),
    "hazards.csv": lambda book: book.hazards("Acer rubrum"),
    "soils.csv": lambda book: book.soils,
    "kit.csv": lambda book: book.kit,
    "mixtures.csv": lambda book: book.mixtures,
    "cautions.csv": lambda book: book.cautions,
    "gear.csv": lambda book: book.gear,
    "gloves.csv": lambda book: book.gloves,
    "wilt.csv": lambda book: book.wilt,
    "states.csv": lambda book: book.states,
    "strict_states.csv": lambda book: book.strict_states,
    "record_rules.csv": lambda book: book.record_rules,
    "record_fields.csv": lambda book: book.record_rules,
    "weather_rules.csv": lambda book: book.weather_rules,
    "revisits.csv": lambda book: book.first_look("basal bark", "triclopyr"),
}


def test_every_table_has_a_reader() -> None:
    """No table is packaged that nothing reads."""
    assert set(READERS) == set(TABLES)


@pytest.mark.parametrize("name", TABLES)
def test_a_row_without_a_source_fails_the_load(name: str, tmp_path: Path) -> None:
    """The refusal names file and row."""
    book = copy_of_tables(tmp_path)
    blank(book.folder / name, 1, "source")
    with pytest.raises(HandbookError, match=rf"{re.escape(name)}, row 1: no source"):
        READERS[name](book)


def test_an_unknown_grade_fails_the_load(tmp_path: Path) -> None:
    """A grade that is not in the list is refused with file and row."""
    book = copy_of_tables(tmp_path)
    blank(book.folder / "defaults.csv", 3, "grade")
    with pytest.raises(HandbookError, match=r"defaults\.csv, row 3: grade ''"):
        _ = book.defaults


def test_a_row_of_the_wrong_length_fails_the_load(tmp_path: Path) -> None:
    """A row that lost or gained a cell is refused with file and row."""
    book = copy_of_tables(tmp_path)
    path = book.folder / "states.csv"
    path.write_text(path.read_text() + "XX,Nowhere\n")
    with pytest.raises(HandbookError, match=r"states\.csv, row 52: more or fewer cells"):
        _ = book.states


def test_a_plant_that_stands_twice_fails_the_load(tmp_path: Path) -> None:
    """Two rows of one Latin name are refused, so that neither is lost in silence."""
    book = copy_of_tables(tmp_path)
    path = book.folder / "species_more.csv"
    path.write_text(path.read_text() + path.read_text().splitlines()[1] + "\n")
    with pytest.raises(HandbookError, match="stands twice"):
        _ = book.species


def test_serving_for_another_item_is_not_taken_from_memory(tmp_path: Path) -> None:
    """What an item serves for counts only where someone other than memory says so."""
    book = copy_of_tables(tmp_path)
    path = book.folder / "gear.csv"
    path.write_text(path.read_text() + "shield,eyes,protective eyewear,,,a shield,from memory,,memory,\n")
    assert book.serves_for("shield") == ()


def test_the_hash_is_of_the_tables(tmp_path: Path) -> None:
    """The same tables give the same hash; one changed byte, or another name, gives another."""
    book = copy_of_tables(tmp_path)
    assert book.hash() == load().hash()
    path = book.folder / "defaults.csv"
    path.write_text(path.read_text().replace("0.05", "0.06", 1))
    assert Book(book.folder).hash() != load().hash()
    assert re.fullmatch("[0-9a-f]{64}", load().hash())


def test_the_handbook_is_read_once() -> None:
    """Loading twice gives the same book, and its tables cannot be changed."""
    assert load() is load()
    with pytest.raises(TypeError):
        load().defaults["ring_cm"] = load().defaults["link_m"]  # type: ignore[index]


def raw_folder() -> Path:
    """The folder of raw facts, or a skip where this machine has none."""
    named = os.environ.get("STEMWARD_RAW_HANDBOOK", "")
    if not named or not (Path(named) / "efficacy.csv").is_file():
        pytest.skip("raw handbook not here")
    return Path(named)


def test_the_script_gives_the_packaged_bytes(tmp_path: Path) -> None:
    """Running the script on the raw facts again gives the same three tables, byte for byte."""
    raw = raw_folder()
    runpy.run_path(str(SCRIPT))["main"](raw, tmp_path)
    for name in MADE:
        assert (tmp_path / name).read_bytes() == (load().folder / name).read_bytes(), name


def test_every_made_row_names_its_raw_row() -> None:
    """Each row the script made carries the id of the raw row it came from."""
    for name, column in zip(MADE, ("raw", "id", "raw"), strict=True):
        for row in read_table(load().folder, name):
            assert re.match(r"(species|efficacy|ai_properties)\.csv:\d+", row[column]), row
