"""stems.csv as people have it: wrong headings, units, decimals, names and places."""

import numpy as np
import pytest

HEAD = "id,patch,species,x_m,y_m,diameter_cm"
S1 = "s1,rim,tree-of-heaven,12.5,48,9.5"
S2 = "s2,rim,tree-of-heaven,14,50,4"


def write(tract, *lines):
    """Write stems.csv, and drop the choice so that it does not ask about stems that are gone."""
    (tract.path / "choices.toml").unlink(missing_ok=True)
    tract.write("stems.csv", "\n".join(lines) + "\n")


def place(problem):
    """Where a problem is."""
    return problem.file, problem.line, problem.column


# headings


def test_misspelled_heading(tract):
    """A column that is not known is named, with what may be meant; what is then missing is named too."""
    write(tract, HEAD.replace("species", "speceis"), S1)

    unknown, missing = tract.problems()
    assert (unknown.message, place(unknown)) == ("csv.unknown_column", ("stems.csv", 1, "speceis"))
    assert unknown.values["near"].startswith("species")
    assert (missing.message, place(missing)) == ("csv.missing_column", ("stems.csv", 1, "species"))
    assert missing.values == {"near": "speceis"}


def test_missing_headings(tract):
    """Each required column that is missing is named with an example."""
    write(tract, "id,patch,species,diameter_cm", "s1,rim,tree-of-heaven,9.5")

    problems = tract.problems()
    assert [(p.message, p.line, p.column, p.expected) for p in problems] == [
        ("csv.missing_column", 1, "x_m", "12.5"),
        ("csv.missing_column", 1, "y_m", "48"),
    ]


def test_no_diameter_column(tract):
    """Of two columns for the diameter one is needed."""
    write(tract, "id,patch,species,x_m,y_m", "s1,rim,tree-of-heaven,12.5,48")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("csv.missing_one_of", ("stems.csv", 1, "diameter_cm"))
    assert problem.values == {"columns": "diameter_cm, diameter_in"}


def test_heading_twice(tract):
    """A column that stands twice, under the same or another heading, is named with the first."""
    write(tract, HEAD + ",x", S1 + ",3")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("csv.column_twice", ("stems.csv", 1, "x"))
    assert problem.values == {"first": "x_m"}


def test_column_without_heading(tract):
    """A column without heading counts if something stands in it; a spreadsheet's empty ones do not."""
    write(tract, HEAD + ",,", S1 + ",,", S2 + ",,remark")
    problem = tract.problem()
    assert (problem.message, problem.values) == ("csv.no_heading", {"at": 8})

    write(tract, HEAD + ",,", S1 + ",,", S2 + ",,")
    assert len(tract.read().tract.stems) == 2


def test_no_headings_at_all(tract):
    """A table that begins with its first row is told what heading line is wanted."""
    write(tract, S1, S2)

    problem = tract.problem()
    assert (problem.message, problem.line) == ("csv.no_headings", 1)
    assert problem.expected == "id,patch,species,x_m,y_m"


def test_headings_only(tract):
    """A table without rows is told so."""
    write(tract, HEAD)

    assert tract.problem().message == "csv.no_rows"


def test_headings_in_other_case_and_words(tract):
    """Headings are understood in any letter case and under their other words."""
    write(tract, "Tag,PATCH,Plant,East_m,y,Diameter CM", S1)

    assert tract.read().tract.stems.diameter_cm.tolist() == [9.5]


def test_too_many_columns(tract):
    """A heading line of thousands of columns is refused before anything is made of it."""
    write(tract, HEAD + "," * 5000, S1 + "," * 5000)

    assert tract.problem().message == "csv.too_wide"


# delimiters, quotes, rows


@pytest.mark.parametrize("delimiter", [";", "\t", "|"])
def test_other_delimiters(tract, delimiter):
    """Semicolons, tabs and bars are accepted."""
    write(tract, *(line.replace(",", delimiter) for line in (HEAD, S1, S2)))

    assert tract.read().tract.stems.id.tolist() == ["s1", "s2"]


@pytest.mark.parametrize(("extra", "cells"), [(",9", 7), ("", 5)])
def test_ragged_rows(tract, extra, cells):
    """A row that is longer or shorter than the headings is named by its line."""
    ragged = S2 + extra if extra else S2.rpartition(",")[0]
    write(tract, HEAD, S1, ragged)

    problem = tract.problems()[0]
    assert (problem.message, problem.line) == ("csv.ragged", 3)
    assert problem.values == {"cells": cells, "columns": 6}


def test_long_and_short_row_together(tract):
    """A long row does not make up for a short one."""
    write(tract, HEAD, S1 + ",9", S2.rpartition(",")[0])

    ragged = [p.line for p in tract.problems() if p.message == "csv.ragged"]
    assert ragged == [2, 3]


def test_lines_after_a_quoted_line_break(tract):
    """Line numbers stay right after a cell that holds line breaks."""
    write(tract, HEAD + ",note", S1 + ',"leans\nover\nthe lane"', S2.replace("14", "far") + ",")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("cell.not_a_number", ("stems.csv", 5, "x_m"))


def test_quoted_cells_are_read(tract):
    """Quoted delimiters, doubled quotes and line breaks are part of the cell."""
    write(tract, HEAD + ",note", S1 + ',"by the ""old"" gate,\nleft"', S2 + ",")

    assert tract.read().tract.stems.note.tolist() == ['by the "old" gate,\nleft', ""]


def test_quote_that_is_never_closed(tract):
    """A quote without its second is told with the line it opens on."""
    write(tract, HEAD + ",note", S1 + ",", S2 + ',"leans', "s3,rim,tree-of-heaven,1,1,4,")

    problem = tract.problem()
    assert (problem.message, problem.line) == ("csv.quotes", 3)


def test_inch_marks_are_no_quotes(tract):
    """A figure with an inch mark is a figure, not the start of a quoted cell."""
    write(tract, HEAD.replace("_cm", "_in"), S1.replace("9.5", '3 3/4"'), S2.replace(",4", ',4"'))

    assert tract.read().tract.stems.diameter_in.tolist() == [3.75, 4.0]


def test_blank_rows_are_left_out_and_counted(tract):
    """Blank lines and a spreadsheet's rows of delimiters are no stems, but they are lines."""
    write(tract, HEAD, "", S1, ",,,,,", "  ", S2.replace(",4", ",x"), "", "")

    problem = tract.problem()
    assert (problem.message, problem.line) == ("cell.not_a_number", 6)


# cells


def test_empty_cells(tract):
    """Each required cell that is empty is named by line and column."""
    write(tract, HEAD, S1.replace("s1", " "), S2.replace("14", ""))

    assert [(p.message, p.line, p.column) for p in tract.problems()] == [
        ("cell.empty", 2, "id"),
        ("cell.empty", 3, "x_m"),
    ]


def test_decimal_comma(tract):
    """A decimal comma is not guessed: 1,234 could be thousands."""
    write(tract, *(line.replace(",", ";") for line in (HEAD, S1)), "s2;rim;tree-of-heaven;12,5;48;1,234")

    diameter, x = sorted(tract.problems(), key=lambda p: p.column)
    assert {diameter.message, x.message} == {"cell.decimal_comma"}
    assert (x.line, x.column, x.values, x.expected) == (3, "x_m", {"typed": "12,5"}, "12.5")
    assert diameter.values == {"typed": "1,234"}


@pytest.mark.parametrize("typed", ["wide", "9..5", "1e3", "nan", "inf", "9 5", "²"])
def test_not_a_number(tract, typed):
    """A cell that is no figure is shown with an example."""
    write(tract, HEAD, S1.replace("9.5", typed))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("cell.not_a_number", ("stems.csv", 2, "diameter_cm"))
    assert (problem.values, problem.expected) == ({"typed": typed}, "9.5")


def test_unit_that_is_not_the_columns(tract):
    """A cell that names another unit than its heading is refused: one of the two is wrong."""
    write(tract, HEAD, S1.replace("9.5", "3 in"))

    problem = tract.problem()
    assert (problem.message, problem.line) == ("cell.other_unit", 2)
    assert problem.values == {"typed": "3 in", "unit": "cm"}


def test_unit_that_is_the_columns(tract):
    """A cell may repeat the unit of its heading, and fractions are figures."""
    write(tract, HEAD, S1.replace("9.5", "9.5 cm"), S2.replace(",4", ",4 1/2"))

    stems = tract.read().tract.stems
    assert stems.diameter_cm.tolist() == [9.5, 4.5]
    assert stems.half_digit_cm.tolist() == [0.05, 0.25]


@pytest.mark.parametrize("typed", ["0", "-3", "1200.1"])
def test_out_of_range(tract, typed):
    """A diameter that cannot be is refused with its limits."""
    write(tract, HEAD, S1.replace("9.5", typed))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("cell.out_of_range", ("stems.csv", 2, "diameter_cm"))
    assert problem.values == {"typed": typed, "low": 0.1, "high": 1200.0, "unit": "cm"}


def test_coordinates_may_be_negative(tract):
    """West and south of the corner are places too."""
    (tract.path / "patches.geojson").unlink()
    write(tract, HEAD, S1.replace("12.5", "-12.5"))

    assert tract.read().tract.stems.x_m.tolist() == [-12.5]


def test_both_diameters(tract):
    """A row with both diameters is named, whatever they are."""
    write(tract, HEAD + ",diameter_in", S1 + ",3 3/4", S2 + ",")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.two_diameters", ("stems.csv", 2, "diameter_in"))
    assert problem.values == {"id": "s1"}


def test_no_diameter(tract):
    """A row without any diameter is named."""
    write(tract, HEAD + ",diameter_in", S1 + ",", S2.rpartition(",")[0] + ",,")

    problem = tract.problem()
    assert (problem.message, problem.line, problem.values) == ("stems.no_diameter", 3, {"id": "s2"})


@pytest.mark.parametrize(("typed", "message"), [("1.5", "cell.not_whole"), ("0", "cell.out_of_range")])
def test_count_of_stems(tract, typed, message):
    """A clump has one stem or more, and no half ones."""
    write(tract, HEAD + ",stems", S1 + f",{typed}")

    problem = tract.problem()
    assert (problem.message, place(problem)) == (message, ("stems.csv", 2, "stems"))


def test_word_that_is_no_choice(tract):
    """A word that is none of the column's is named with the near one."""
    write(tract, HEAD + ",measured_at", S1 + ",brest", S2 + ",STUMP")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("cell.not_a_choice", ("stems.csv", 2, "measured_at"))
    assert problem.values == {"typed": "brest", "near": "breast"}


def test_name_that_is_too_long(tract):
    """A name of hundreds of signs is refused, because every row would take its room."""
    write(tract, HEAD, S1.replace("s1", "s" * 41))

    problem = tract.problem()
    assert (problem.message, problem.values) == ("cell.too_long", {"length": 41, "most": 40})


@pytest.mark.parametrize("sign", ["\x1b[31m", "\x07", "\u202e"])
def test_odd_signs(tract, sign):
    """Signs that upset a terminal or turn text around are refused."""
    write(tract, HEAD + ",note", S1 + f",left{sign}")

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("cell.odd_sign", ("stems.csv", 2, "note"))


# names


def test_id_twice(tract):
    """An id that stands twice is named with both lines."""
    write(tract, HEAD, S1, S2, S1.replace("12.5", "13"))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.id_twice", ("stems.csv", 4, "id"))
    assert problem.values == {"id": "s1", "first_line": 2}


def test_unknown_species(tract):
    """A species nobody knows is named once, with its first line, how often it stands, and near names."""
    write(tract, HEAD, S1, *(f"t{n},rim,Tree of Haven,{n},9,3" for n in range(3)))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.unknown_species", ("stems.csv", 3, "species"))
    assert problem.values == {
        "species": "Tree of Haven",
        "near": "tree-of-heaven (Ailanthus altissima)",
        "count": 3,
    }


def test_unknown_patch(tract):
    """A patch that tract.toml does not know is named with near ones."""
    write(tract, HEAD, S1, S2.replace("rim", "rimm"))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.unknown_patch", ("stems.csv", 3, "patch"))
    assert problem.values == {"patch": "rimm", "near": "rim", "count": 1}


def test_patches_are_not_judged_by_a_broken_tract(tract):
    """If tract.toml cannot be read, stems are not told that their patch is unknown."""
    tract.write("tract.toml", "name = ")

    assert {p.file for p in tract.problems()} == {"tract.toml"}


# places


def test_stem_in_another_patch(tract):
    """A stem that stands in another patch's outline is named with that patch and the distance to its own."""
    write(tract, HEAD, S1, S2.replace("14", "120"))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.outside_patch", ("stems.csv", 3, "patch"))
    assert problem.values == {"id": "s2", "patch": "rim", "distance_m": 30.0, "inside": "meadow"}


def test_stem_outside_every_patch(tract):
    """A stem outside every outline is named with its distance from its own."""
    write(tract, HEAD, S1, S2.replace("14,50", "-400,50"))

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.outside_all", ("stems.csv", 3, "x_m"))
    assert problem.values == {"id": "s2", "patch": "rim", "distance_m": 400.0}


def test_stem_a_little_outside(tract):
    """Within 10 m of its outline a stem is only asked about: a phone under leaves is off by that much."""
    write(tract, HEAD, S1, S2.replace("14,50", "-10,50"), S2.replace("s2", "s3").replace("14,50", "-2,50"))

    question = tract.question()
    assert (question.message, question.line) == ("ask.outside", 3)
    assert dict(question.values) == {"patch": "rim", "count": 2, "distance_m": 10.0, "id": "s2"}


def test_stem_on_the_outline_is_inside(tract):
    """A stem on the very border is inside."""
    write(tract, HEAD, S1.replace("12.5", "0"))

    assert tract.questions() == ()


# units


def test_odd_size_is_asked_about(tract):
    """A diameter of 200 cm can be, but is asked about: is it really centimetres?"""
    write(tract, HEAD, S1, S2.replace(",4", ",200"), S2.replace("s2", "s3"))

    question = tract.question()
    assert (question.message, question.line, question.column) == ("ask.odd_size", 3, "diameter_cm")
    assert dict(question.values) == {
        "count": 1, "typed": "200", "id": "s2", "odd_above": 150.0, "unit": "cm",
    }  # fmt: skip


def test_inches_that_are_centimetres(tract):
    """A whole column of inches with a middle over 60 cm is asked about: are they centimetres?"""
    write(tract, HEAD.replace("_cm", "_in"), *(f"t{n},rim,bur oak,{n},9,{n + 25}" for n in range(9)))

    question = tract.question()
    assert (question.message, question.line, question.column) == ("ask.median_large", 2, "diameter_in")
    assert dict(question.values) == {"median": 29.0, "unit": "in", "limit_cm": 60.0, "perhaps": "cm"}


def test_centimetres_that_are_millimetres(tract):
    """A whole column of centimetres with a middle over 60 cm is asked about: are they millimetres?"""
    write(tract, HEAD, *(f"t{n},rim,bur oak,{n},9,{n + 90}" for n in range(9)))

    assert dict(tract.question().values)["perhaps"] == "mm"


def test_species_that_does_not_grow_so_thick(tract):
    """A shrub whose middle stem is thicker than it grows is asked about, with its limit."""
    write(tract, HEAD, *(f"t{n},rim,glossy buckthorn,{n},9,{n + 16}" for n in range(3)), S1)

    question = tract.question()
    assert (question.message, question.line) == ("ask.species_large", 2)
    assert dict(question.values) == {
        "median": 17.0, "unit": "cm", "limit_cm": 15.0, "species": "Frangula alnus", "perhaps": "mm",
    }  # fmt: skip


def test_degrees(tract):
    """Longitude and latitude are refused: a tract a few hundred thousandths of a metre wide is none."""
    (tract.path / "patches.geojson").unlink()
    rows = [f"t{n},rim,tree-of-heaven,-90.12345{n},43.12345{n},4" for n in range(1, 4)]
    write(tract, HEAD, *rows)

    problem = tract.problem()
    assert (problem.message, place(problem)) == ("stems.degrees", ("stems.csv", 2, "x_m"))


def test_one_stem_in_what_may_be_degrees(tract):
    """A single stem with six decimals may be either, and is asked about."""
    (tract.path / "patches.geojson").unlink()
    write(tract, HEAD, "t1,rim,tree-of-heaven,-90.123456,43.123456,4")

    assert tract.question().message == "ask.degrees"


def test_metres_with_many_decimals(tract):
    """Metres far from zero may have as many decimals as a program writes."""
    (tract.path / "patches.geojson").unlink()
    rows = [f"t{n},rim,tree-of-heaven,500{n}.123456,4700{n}.123456,4" for n in range(1, 4)]
    write(tract, HEAD, *rows)

    assert tract.questions() == ()


def test_many_bad_cells_are_counted(tract):
    """A column of wrong cells costs no more than its first fifty."""
    write(tract, HEAD, *(f"t{n},rim,tree-of-heaven,{n % 90},9,x{n}" for n in range(200)))

    assert tract.problems()[-1].values == {"count": 150}


def test_plain_and_other_figures_mix(tract):
    """A column in which some cells are fractions reads each as it is."""
    typed = ["3", "3 1/4", "3.5", "1'2\"", "3 3/4 in"]
    write(tract, HEAD.replace("_cm", "_in"), *(f"t{n},rim,bur oak,{n},9,{t}" for n, t in enumerate(typed)))

    np.testing.assert_array_equal(tract.read().tract.stems.diameter_in, [3, 3.25, 3.5, 14, 3.75])
