"""Folders and files that are not what they should be."""

import os
import shutil
from pathlib import Path

import pytest

from stemward.gate import files, folder

REQUIRED = {"tract.toml", "stems.csv"}


def refuse(monkeypatch, name, error):
    """Make opening a file of that name fail: root, as which tests may run, is never refused by the system."""
    opened = Path.open

    def open_or_fail(self, *args, **kwargs):
        if self.name == name:
            raise error
        return opened(self, *args, **kwargs)

    monkeypatch.setattr(Path, "open", open_or_fail)


def test_missing_folder(tract):
    """A folder that is not there is called missing."""
    shutil.rmtree(tract.path)

    assert tract.problem().message == "folder.missing"


def test_folder_that_is_a_file(tract):
    """A file in the place of the folder is called no folder."""
    shutil.rmtree(tract.path)
    tract.path.write_text("not a folder")

    assert tract.problem().message == "folder.not_a_folder"


def test_empty_folder(tract):
    """An empty folder is called empty, and the files it should hold are named."""
    shutil.rmtree(tract.path)
    tract.path.mkdir()

    problem = tract.problem()
    assert problem.message == "folder.empty"
    assert problem.expected == "tract.toml, stems.csv"


def test_folder_without_permission(tract, monkeypatch):
    """A folder that may not be listed is said to lack permission."""

    def refused(path):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "scandir", refused)

    assert tract.problem().message == "folder.no_permission"


@pytest.mark.parametrize("name", ["tract.toml", "stems.csv", "patches.geojson", "glyphosate.toml"])
def test_file_without_permission(tract, monkeypatch, name):
    """A file that may not be opened is named, and the rest is still looked at."""
    refuse(monkeypatch, name, PermissionError(13, "Permission denied"))
    tract.write("records.jsonl", "[]")

    problems = {p.message: p.file for p in tract.problems()}
    assert problems["file.no_permission"].endswith(name)
    assert problems["record.not_an_object"] == "records.jsonl"


def test_file_that_cannot_be_read(tract, monkeypatch):
    """A failing disk is told with what the system says."""
    refuse(monkeypatch, "stems.csv", OSError(5, "Input/output error"))

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.cannot_read", "stems.csv")
    assert problem.values == {"why": "Input/output error"}


@pytest.mark.parametrize("name", sorted(REQUIRED))
def test_missing_file(tract, name):
    """A required file that is missing is named."""
    (tract.path / name).unlink()

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.missing", name)


def test_missing_file_with_another_near(tract):
    """If a file of nearly that name is there, it is named too."""
    (tract.path / "stems.csv").rename(tract.path / "stem.csv")

    problem = tract.problem()
    assert (problem.message, problem.values) == ("file.missing", {"near": "stem.csv"})


@pytest.mark.parametrize("other", ["Spared.geojson", "spared.geojson.txt", "spared.json", "SPARED.GEOJSON"])
def test_optional_file_under_another_name(tract, other):
    """A file that would silently go unread, with plants to be kept from harm in it, is refused."""
    (tract.path / "spared.geojson").rename(tract.path / other)

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.other_name", other)
    assert problem.values == {"meant": "spared.geojson"}


@pytest.mark.parametrize("other", ["shelf/more.TOML", "shelf/more.toml.txt"])
def test_product_under_another_name(tract, other):
    """A product file with a wrong ending is refused."""
    tract.write(other, 'id = "x"')

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.other_name", other)


def test_shelf_that_is_a_file(tract):
    """A file named shelf is called no folder."""
    shutil.rmtree(tract.path / "shelf")
    tract.write("shelf", "x")
    (tract.path / "choices.toml").unlink()

    problem = tract.problem()
    assert (problem.message, problem.file) == ("folder.not_a_folder", "shelf")


def test_folder_in_the_place_of_a_file(tract):
    """A folder named stems.csv is called no file."""
    (tract.path / "stems.csv").unlink()
    (tract.path / "stems.csv").mkdir()

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.not_a_file", "stems.csv")


def test_pipe_in_the_place_of_a_file(tract):
    """A pipe is refused before it can keep the reader waiting."""
    (tract.path / "stems.csv").unlink()
    os.mkfifo(tract.path / "stems.csv")

    assert tract.problem().message == "file.not_a_file"


@pytest.mark.parametrize("name", ["shelf/stray.toml", "spared.geojson"])
def test_link_out_of_the_folder(tract, tmp_path, name):
    """A link to a file outside the folder is not followed."""
    outside = tmp_path / "outside"
    outside.write_text("password = 'secret'")
    (tract.path / name).unlink(missing_ok=True)
    (tract.path / name).symlink_to(outside)

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.outside", name)
    assert "secret" not in str(problem)


def test_shelf_that_links_out_of_the_folder(tract, tmp_path):
    """A whole folder linked in from outside is not followed either."""
    (tract.path / "shelf").rename(tmp_path / "elsewhere")
    (tract.path / "shelf").symlink_to(tmp_path / "elsewhere")

    assert ("file.outside", "shelf/glyphosate.toml") in {(p.message, p.file) for p in tract.problems()}


def test_link_in_a_circle(tract):
    """A link to itself is told, not followed for ever."""
    (tract.path / "spared.geojson").unlink()
    (tract.path / "spared.geojson").symlink_to("spared.geojson")

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.cannot_read", "spared.geojson")


def test_link_within_the_folder(tract):
    """A link to a file of the same folder is read."""
    (tract.path / "spared.geojson").rename(tract.path / "kept.data")
    (tract.path / "spared.geojson").symlink_to("kept.data")

    assert len(tract.read().tract.spared) == 2


@pytest.mark.parametrize("name", ["stems.csv", "tract.toml", "shelf/glyphosate.toml", "records.jsonl"])
def test_file_that_is_too_big(tract, monkeypatch, name):
    """A file beyond the limit is refused with the limit."""
    monkeypatch.setattr(files, "MOST_BYTES", dict.fromkeys(files.MOST_BYTES, 50))

    problems = {(p.message, p.file, p.values.get("most_mb")) for p in tract.problems()}
    assert ("file.too_big", name, 50 / 1e6) in problems


@pytest.mark.parametrize(
    "name", ["tract.toml", "stems.csv", "patches.geojson", "spared.geojson", "shelf/glyphosate.toml"]
)
@pytest.mark.parametrize("content", [b"", b"\n \n", b"\xef\xbb\xbf", b"\xff\xfe"])
def test_empty_file(tract, name, content):
    """A file with nothing in it, as after a failed copy, is called empty."""
    tract.write(name, content)

    assert ("file.empty", name, None) in {(p.message, p.file, p.line) for p in tract.problems()}


@pytest.mark.parametrize(
    "name", ["tract.toml", "stems.csv", "spared.geojson", "shelf/glyphosate.toml", "records.jsonl"]
)
def test_nul_byte(tract, name):
    """A NUL byte is told with its line."""
    lines = (tract.path / name).read_bytes().split(b"\n")
    lines[1 if len(lines) > 2 else 0] += b"\0"
    tract.write(name, b"\n".join(lines))

    problem = next(p for p in tract.problems() if p.file == name)
    assert (problem.message, problem.line) == ("file.nul", 2 if len(lines) > 2 else 1)


@pytest.mark.parametrize(
    "name", ["tract.toml", "stems.csv", "patches.geojson", "spared.geojson", "shelf/glyphosate.toml",
             "choices.toml", "records.jsonl"],
)  # fmt: skip
@pytest.mark.parametrize("how", ["mark", "crlf", "cr", "utf-16", "utf-16-be"])
def test_marks_line_ends_and_utf_16_change_nothing(tract, name, how):
    """A byte-order mark, line ends of Windows or old Macs, or UTF-16 with a mark give the same tract."""
    plain = tract.read().tract
    raw = (tract.path / name).read_bytes()
    tract.write(
        name,
        {
            "mark": b"\xef\xbb\xbf" + raw,
            "crlf": raw.replace(b"\n", b"\r\n"),
            "cr": raw.replace(b"\n", b"\r"),
            "utf-16": raw.decode().encode("utf-16"),
            "utf-16-be": b"\xfe\xff" + raw.decode().encode("utf-16-be"),
        }[how],
    )

    read = tract.read().tract

    same = ("name", "patches", "spared", "shelf", "choices", "entries", "people", "questions")
    assert all(getattr(read, field) == getattr(plain, field) for field in same)
    assert all((getattr(read.stems, f) == getattr(plain.stems, f)).all() for f in ("id", "diameter_cm", "note"))


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be", "utf-32-le"])
def test_utf_16_without_a_mark(tract, encoding):
    """UTF-16 without its mark is not guessed; what it looks like is said."""
    tract.write("stems.csv", (tract.path / "stems.csv").read_text().encode(encoding))

    problem = tract.problem()
    assert (problem.message, problem.file) == ("file.looks_utf16", "stems.csv")


def test_utf_16_cut_off(tract):
    """UTF-16 with half a sign at its end is called broken."""
    tract.write("stems.csv", (tract.path / "stems.csv").read_text().encode("utf-16")[:-1])

    assert tract.problem().message == "file.broken_utf16"


def test_latin_1_bytes(tract):
    """A byte that is no UTF-8 is told with line, place, its value and what it may have been."""
    text = (tract.path / "stems.csv").read_text().replace("leans over the lane", "près de l'allée")
    tract.write("stems.csv", text.encode("latin-1"))

    problem = tract.problem()
    assert (problem.message, problem.file, problem.line) == ("file.not_utf8", "stems.csv", 3)
    row = text.split("\n")[2]
    assert problem.values == {"byte": "0xE8", "perhaps": "è", "at": row.index("è") + 1}


@pytest.mark.parametrize(
    ("first", "what"), [(b"PK\x03\x04", "spreadsheet or zip"), (b"%PDF-1.7", "PDF"), (b"<html>", "web page")]
)
def test_file_of_another_kind(tract, first, what):
    """A spreadsheet, PDF or web page under a wrong name is called that."""
    tract.write("stems.csv", first + b"\x00\x01rest")

    problem = tract.problem()
    assert (problem.message, problem.values) == ("file.looks_like", {"what": what})


def test_file_name_with_odd_signs(tract):
    """A file name that could upset a terminal is shown without its odd signs."""
    tract.write("shelf/\x1b[31mred.toml", "id = ")

    problem = tract.problem()
    assert problem.file == "shelf/?[31mred.toml"


def test_everything_wrong_is_told_at_once(tract):
    """Problems of all files come together, in order of file and line."""
    tract.change("tract.toml", 'state = "WI"', 'state = "XX"')
    tract.change("stems.csv", "9.5", "wide")
    tract.change("choices.toml", 'how = "cut stump"', 'how = "burn"')

    assert [(p.file, p.line) for p in tract.problems()] == [
        ("choices.toml", 4),
        ("stems.csv", 2),
        ("tract.toml", 3),
    ]


def test_many_problems_are_capped_with_their_number(tract):
    """Of thousands of problems fifty are told, some of each sort, and then how many more there are."""
    rows = [f"t{n},rim,oak?,{n % 90},5,wide,,,,,,," for n in range(3000)]
    tract.write("stems.csv", "\n".join([tract_heading(tract), *rows]))
    tract.change("tract.toml", 'state = "WI"', 'state = "XX"')

    with pytest.raises(folder.Unreadable) as caught:
        tract.read()

    problems = caught.value.problems
    assert len(problems) == 51
    assert caught.value.count == 3000 + 1 + 1
    assert (problems[-1].message, problems[-1].values) == ("folder.more", {"count": 3002 - 50})
    assert {"tract.state", "stems.unknown_species", "cell.not_a_number"} < {p.message for p in problems}


def tract_heading(tract):
    """The heading line of stems.csv."""
    return (tract.path / "stems.csv").read_text().split("\n")[0]
