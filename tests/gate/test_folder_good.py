"""A folder that can be read becomes the values it says."""

import datetime

import numpy as np
import pytest

from stemward.gate import demo, folder
from stemward.gate.folder_write import write_texts
from stemward.handbook import load
from stemward.kinds import LabelFact, Scope, Shape
from stemward.label import KINDS

IN_CM = 2.54  # exactly: Thompson & Taylor, NIST SP 811, 2008, Appendix B
FL_OZ_UL = 29573.52956  # 231 cubic inches / 128: the same
LB_GAL_G_L = 119.8264273  # 453.59237 g / 3.785411784 L: the same


def test_good_folder_raises_no_question(tract):
    """A folder without anything odd leaves nothing to ask."""
    assert tract.read().questions == () == tract.read().tract.questions


def test_tract_and_patches(tract):
    """tract.toml gives names, state, answers, soil and area; what is left out is unknown or empty."""
    read = tract.read().tract

    assert (read.name, read.state, read.time_zone, read.who) == (
        "Example Tract", "WI", "America/Chicago", "own",
    )  # fmt: skip
    assert read.invented and read.kept_asked == ("rim",)
    assert read.emergency == (("poison_help", "1-800-222-1222"), ("call", "911"))
    rim, meadow = read.patches
    assert (rim.name, rim.places, rim.area_m2) == ("Quarry rim", ("non-crop",), 9000.0)
    assert rim.answer("grazed") == "no" and rim.answer("hayed") == "unknown"
    assert rim.soil.organic_matter_frac == pytest.approx(0.015)
    assert (meadow.name, meadow.area_m2) == ("meadow", None)
    assert meadow.shape == Shape("polygon", (((100, 0), (200, 0), (200, 100), (100, 100), (100, 0)),))


def test_people_vessels_and_measures(tract):
    """Bottles and measures come in whole microlitres."""
    read = tract.read().tract

    (person,), (bottle,), (cup,) = read.people, read.vessels, read.measures
    assert (person.role, person.does, person.gear, person.certified) == (
        "owner", ("mix", "apply"), ("boots",), "no",
    )  # fmt: skip
    assert (bottle.capacity_ul, bottle.lining) == (round(24 * FL_OZ_UL), "plastic")
    assert (cup.mark_ul, cup.capacity_ul, cup.shown) == (
        round(FL_OZ_UL / 2),
        round(8 * FL_OZ_UL),
        "1/2 fl oz",
    )


def test_stems_keep_inches_as_typed(tract):
    """Inches stay the typed number and give the centimetres; only typed centimetres have a last digit."""
    stems = tract.read().tract.stems

    assert stems.id.tolist() == ["s1", "s2", "s3"]
    assert stems.species.tolist() == ["Ailanthus altissima", "Ailanthus altissima", "Frangula alnus"]
    np.testing.assert_allclose(stems.diameter_cm, [9.5, 3.75 * IN_CM, 4.0])
    np.testing.assert_array_equal(stems.diameter_in, [np.nan, 3.75, np.nan])
    np.testing.assert_allclose(stems.half_digit_cm, [0.05, 0.0, 0.5])
    assert stems.measured_at.tolist() == ["stump", "breast", ""]
    assert stems.stems.tolist() == [1, 2, 1]
    np.testing.assert_array_equal(stems.height_m, [6.0, np.nan, np.nan])
    assert stems.state.tolist() == ["standing"] * 3
    assert stems.note.tolist() == ["", "leans over the lane", ""]


def test_columns_have_the_kinds_of_stems(tract):
    """Words are numpy words, measures floats, counts whole numbers."""
    stems = tract.read().tract.stems

    kinds = {name: getattr(stems, name).dtype.kind for name in stems.__slots__}
    words = ("id", "patch", "species", "measured_at", "form", "state", "note")
    assert all(kinds[name] == "U" for name in words)
    assert all(kind == "f" for name, kind in kinds.items() if name not in (*words, "stems"))
    assert kinds["stems"] == "i"


def test_spared(tract):
    """What is kept from harm has its shape, its Latin name, and centimetres whatever was typed."""
    oak, creek = tract.read().tract.spared

    assert (oak.id, oak.kind, oak.species) == ("oak-1", "tree", "Quercus macrocarpa")
    assert oak.dbh_cm == pytest.approx(16.5 * IN_CM)
    assert oak.shape == Shape("point", (((80.0, 80.0),),))
    assert creek.shape == Shape("line", (((0.0, -20.0), (200.0, -25.0)),))


def test_product(tract):
    """A jug has strength in grams of acid equivalent per litre and what is left in whole microlitres."""
    (product,) = tract.read().tract.shelf

    (content,), (jug,), (registration,) = product.contents, product.containers, product.registrations
    assert (content.ingredient, content.typed) == ("glyphosate", "4 lb ae/gal")
    assert content.strength_ae_g_l == pytest.approx(4 * LB_GAL_G_L)
    assert (jug.capacity_ul, jug.left_ul) == (round(320 * FL_OZ_UL), round(38 * FL_OZ_UL))
    assert (registration.state, registration.registered) == ("WI", True)
    assert registration.looked_on == datetime.date(2025, 9, 30)


def test_label_facts(tract):
    """A fact has its metric value with what was typed, its scope, and how it came to be known."""
    read, looked = tract.read().tract.shelf[0].facts

    assert read == LabelFact(
        "strongest mix", "says", 0.5, "read",
        Scope(method=("cut stump",), stem_cm=(0.0, 3 * IN_CM), dates=((4, 1), (7, 31))),
        typed="50 %", page="12", read_by="owner", read_on=datetime.date(2025, 9, 30),
    )  # fmt: skip
    assert (looked.standing, looked.value, looked.reading) == ("not found", "wet", "proposed")


def test_choices_and_records(tract):
    """What was chosen and what was done come with it."""
    read = tract.read().tract

    (choice,), (entry,) = read.choices, read.entries
    assert (choice.patch, choice.species, choice.how) == ("rim", "Ailanthus altissima", "cut stump")
    assert (choice.concentration_frac, choice.ring_cm) == (0.5, 2 * IN_CM)
    assert (entry.id, entry.offset, entry.body["ae_g"]) == ("e1", -300, {"glyphosate": 120})


def test_only_tract_and_stems_are_required(tract):
    """Without outlines, shelf, choices and records the tract is read, and nothing is said about it."""
    for name in (
        "patches.geojson",
        "spared.geojson",
        "shelf/glyphosate.toml",
        "choices.toml",
        "records.jsonl",
    ):
        (tract.path / name).unlink()
    (tract.path / "shelf").rmdir()

    read = tract.read()

    assert read.questions == ()
    assert read.tract.patches[0].shape is None
    assert read.tract.spared == read.tract.shelf == read.tract.choices == read.tract.entries == ()


def test_hash_follows_the_bytes(tract):
    """The same files give the same hash; one more blank, or the same text under another name, another one."""
    first = tract.read().hash
    assert tract.read().hash == first
    tract.write("choices.toml", (tract.path / "choices.toml").read_text() + " ")
    other = tract.read().hash
    (tract.path / "shelf/glyphosate.toml").rename(tract.path / "shelf/renamed.toml")

    assert len({first, other, tract.read().hash}) == 3


def test_files_of_other_kinds_are_let_be(tract):
    """A photograph or a letter in the folder is nobody's business."""
    tract.write("gate.jpg", b"\xff\xd8")
    tract.write("letter.txt", "Dear neighbour")

    assert tract.questions() == ()


def test_unread_files_are_asked_about(tract):
    """A file that looks as if it counted, and does not, is asked about."""
    tract.write("shelf/notes.txt", "half full")

    assert {(q.message, q.file) for q in tract.questions()} == {("ask.not_read", "shelf/notes.txt")}


def test_the_example_reads_with_the_real_handbook(tmp_path):
    """Quarry Hollow, as the program writes it, is read without a question."""
    write_texts(demo.texts(), tmp_path / "quarry-hollow")

    read = folder.read(tmp_path / "quarry-hollow", load().find_species, KINDS)

    assert read.questions == ()
    assert len(read.tract.shelf) >= 3 and len(read.tract.stems) > 100
