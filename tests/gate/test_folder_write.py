"""A folder is written whole or not at all."""

import os
from pathlib import Path

import pytest

from stemward.gate.folder_write import NotWritten, write_texts

FILES = {"tract.toml": 'name = "Ö"\n', "stems.csv": "id\n1\n", "shelf/jug.toml": "x = 1\n"}


def content(folder: Path) -> dict[str, bytes]:
    """Every file in a folder."""
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


WRITTEN = {name: text.encode() for name, text in FILES.items()}


def test_into_a_new_folder(tmp_path):
    """A folder that is not there is made, with the folders above it, in UTF-8 with plain line ends."""
    write_texts(FILES, tmp_path / "a" / "b")

    assert content(tmp_path / "a") == {f"b/{name}": raw for name, raw in WRITTEN.items()}


def test_into_an_empty_folder(tmp_path):
    """An empty folder is filled, and nothing else is left in it."""
    write_texts(FILES, tmp_path)

    assert content(tmp_path) == WRITTEN
    assert {p.name for p in tmp_path.iterdir()} == {"tract.toml", "stems.csv", "shelf"}


def test_over_what_was_written_before(tmp_path):
    """A folder that holds only files of the same names is written over, even if some are gone."""
    write_texts({**FILES, "stems.csv": "old"}, tmp_path / "t")
    (tmp_path / "t" / "shelf" / "jug.toml").unlink()

    write_texts(FILES, tmp_path / "t")

    assert content(tmp_path / "t") == WRITTEN


@pytest.mark.parametrize("other", ["mine.txt", "shelf/mine.toml", "more/empty", ".hidden"])
def test_not_into_a_folder_with_anything_else(tmp_path, other):
    """A folder that holds any other file is refused by that file's name, and stays as it is."""
    write_texts({"stems.csv": "old", other: "mine"}, tmp_path / "t")
    before = content(tmp_path / "t")

    with pytest.raises(NotWritten, match=r"holds .* already"):
        write_texts(FILES, tmp_path / "t")

    assert content(tmp_path / "t") == before


def test_not_through_a_link(tmp_path):
    """A file that is a link could lead anywhere, and is refused."""
    (tmp_path / "t").mkdir()
    (tmp_path / "t" / "stems.csv").symlink_to(tmp_path / "elsewhere")

    with pytest.raises(NotWritten):
        write_texts(FILES, tmp_path / "t")

    assert not (tmp_path / "elsewhere").exists()


def test_not_over_a_file(tmp_path):
    """A file in the place of the folder is refused and stays."""
    (tmp_path / "t").write_text("mine")

    with pytest.raises(NotWritten, match="is a file"):
        write_texts(FILES, tmp_path / "t")

    assert (tmp_path / "t").read_text() == "mine"


@pytest.mark.parametrize("name", ["../out.toml", "/out.toml", "a/../../out.toml", "a\\b", ""])
def test_not_out_of_the_folder(tmp_path, name):
    """Names that lead out of the folder are refused."""
    with pytest.raises(NotWritten):
        write_texts({name: "x"}, tmp_path / "t")

    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("there", [False, True])
def test_disk_that_is_full(tmp_path, monkeypatch, there):
    """If the disk fills up on the way, nothing is left, and what was there is unharmed."""
    if there:
        write_texts({**FILES, "stems.csv": "old"}, tmp_path / "t")
    before = content(tmp_path)
    written = []

    def full(handle):
        written.append(handle)
        if len(written) == 2:
            raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)

    with pytest.raises(NotWritten, match="No space left on device"):
        write_texts(FILES, tmp_path / "t")

    assert content(tmp_path) == before
    assert {p.name for p in tmp_path.iterdir()} == ({"t"} if there else set())


def test_under_a_file(tmp_path):
    """A folder that would have to lie within a file is refused with a sentence."""
    (tmp_path / "f").write_text("mine")

    with pytest.raises(NotWritten, match="Cannot write"):
        write_texts(FILES, tmp_path / "f" / "t")
