"""A tract as pieces: folder to pieces to folder, values for any folder, bytes for those the program wrote."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemward.gate import demo, folder
from stemward.gate.folder import Unreadable
from stemward.gate.pieces import STEM_COLUMNS, Parts, Piece, join, land_hash, split
from stemward.handbook import load
from stemward.label import KINDS


def read(texts):
    """The tract of these texts."""
    return folder.read_texts(texts, load().find_species, KINDS).tract


def same(one, other) -> bool:
    """True if two tracts hold the same values."""
    for field in dataclasses.fields(one):
        a, b = getattr(one, field.name), getattr(other, field.name)
        if field.name == "questions":
            continue  # they name lines, which move
        if field.name == "stems":
            if not all(
                np.array_equal(getattr(a, n), getattr(b, n), equal_nan=getattr(a, n).dtype.kind == "f")
                for n in a.__slots__
            ):
                return False
        elif a != b:
            return False
    return True


def test_the_example_goes_through_with_all_its_values():
    """Pieces of the example make a folder of the same values, and that folder the same bytes again."""
    texts = demo.texts()
    written = join(split(texts))
    assert same(read(texts), read(written))
    assert join(split(written)) == written


def test_the_base_is_no_part_of_the_land():
    """What the land was when it was given out is written down and changes nothing else."""
    parts = split(demo.texts())
    plain, based = join(parts), join(parts, with_base=True)
    assert f'base = "{land_hash(plain)}"' in based["tract.toml"]
    assert same(read(plain), read(based))
    assert join(split(based)) == plain


def test_entries_are_no_part_of_the_land():
    """The hash of the land stays when something more happened."""
    parts = split(demo.texts())
    more = dataclasses.replace(parts, entries=(*parts.entries, {"id": "e9", "kind": "x"}))
    assert land_hash(join(more)) == land_hash(join(parts))


def test_a_tract_may_have_no_stems_yet():
    """A new tract is a name alone."""
    land = read(join(Parts((Piece("tract", "", {"name": "New"}),))))
    assert (land.name, len(land.stems), land.patches) == ("New", 0, ())


def test_stems_of_a_patch_that_is_gone_are_not_read():
    """Where all patches are gone their stems cannot stay."""
    parts = split(demo.texts())
    without = dataclasses.replace(parts, pieces=tuple(p for p in parts.pieces if p.kind in ("tract", "product")))
    with pytest.raises(Unreadable):
        read(join(without))


CELL = st.text(st.characters(whitelist_categories=("L", "Nd", "P", "Zs"), max_codepoint=0x2FF), max_size=20).map(
    str.strip
)
INCHES = st.sampled_from(["1", "2 1/2", "3/4", "7.25", "12"])


@settings(max_examples=60, deadline=None)
@given(
    names=st.lists(CELL.filter(bool), min_size=1, max_size=3),
    stems=st.lists(st.tuples(INCHES, CELL, st.integers(1, 9)), max_size=6),
)
def test_any_words_come_back(names, stems):
    """Names of patches and notes of stems in any letters survive the way through files."""
    patches = [Piece("patch", f"p{n}", {"id": f"p{n}", "name": name}) for n, name in enumerate(names)]
    rows = []
    for n, (size, note, count) in enumerate(stems):
        cells = {"id": f"s{n}", "patch": "p0", "species": "red maple", "x_m": "1", "y_m": "2", "diameter_in": size,
                 "stems": str(count), "note": note}  # fmt: skip
        rows.append(tuple(cells.get(c, "") for c in STEM_COLUMNS))
    parts = Parts((Piece("tract", "", {"name": "X"}), *patches), tuple(rows))
    texts = join(parts)
    back = split(texts)
    assert [p.body for p in back.pieces] == [p.body for p in parts.pieces]
    assert [tuple(r) for r in back.stems] == rows
    assert join(back) == texts
