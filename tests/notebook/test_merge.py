"""A folder that two people changed: one difference at a time, nothing overwritten, no deletion without a base."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notebook.some import stem
from stemward.gate.pieces import Parts, Piece, join, land_hash, split
from stemward.notebook.merge import as_changes, base_of, differences

FENCE = {"id": "fence", "name": "Fence", "places": ["woods"]}
BASE = Parts(
    (Piece("tract", "", {"name": "Small"}), Piece("patch", "fence", FENCE)), (stem("s1"), stem("s2", x_m="3")), ()
)


def with_patch(parts: Parts, **changed) -> Parts:
    """The same with another patch."""
    pieces = tuple(replace(p, body={**p.body, **changed}) if p.kind == "patch" else p for p in parts.pieces)
    return replace(parts, pieces=pieces)


def sorts(base: Parts | None, mine: Parts, theirs: Parts) -> list[tuple[str, str]]:
    """Name and sort of each difference."""
    return [(d.key, d.sort) for d in differences(base, mine, theirs)]


@pytest.mark.parametrize(
    ("base", "mine", "theirs", "found"),
    [
        (BASE, BASE, BASE, []),
        (BASE, with_patch(BASE, name="Hedge"), BASE, []),
        (BASE, BASE, with_patch(BASE, name="Hedge"), [("fence", "changed there")]),
        (BASE, with_patch(BASE, name="Wall"), with_patch(BASE, name="Hedge"), [("fence", "changed on both sides")]),
        (BASE, with_patch(BASE, name="Hedge"), with_patch(BASE, name="Hedge"), []),
        (None, BASE, with_patch(BASE, name="Hedge"), [("fence", "differs")]),
        (BASE, BASE, replace(BASE, stems=(stem("s1"),)), [("s2", "gone there")]),
        (None, BASE, replace(BASE, stems=(stem("s1"),)), []),
        (BASE, BASE, replace(BASE, stems=(*BASE.stems, stem("s3"))), [("s3", "new there")]),
        (BASE, replace(BASE, stems=(stem("s1"),)), BASE, []),
        (
            BASE,
            replace(BASE, stems=(stem("s1"),)),
            replace(BASE, stems=(stem("s1"), stem("s2", x_m="9"))),
            [("s2", "changed on both sides")],
        ),
        (BASE, BASE, replace(BASE, entries=({"id": "e1", "kind": "treated"},)), [("e1", "happened there")]),
    ],
)
def test_each_way_of_differing(base, mine, theirs, found):
    """What was changed there, here, on both sides, gone, or not to be told."""
    assert sorts(base, mine, theirs) == found


def test_what_is_taken_over_is_what_was_there():
    """Differences come to edits of pieces, changed, added and taken stems, and entries."""
    theirs = replace(with_patch(BASE, name="Hedge"), stems=(stem("s1", x_m="7"), stem("s3")), entries=({"id": "e1"},))

    edits, stems, added, taken, entries = as_changes(differences(BASE, BASE, theirs))

    assert edits == [("patch", "fence", {**FENCE, "name": "Hedge"})]
    assert stems == [("s1", stem("s1", x_m="7"))]
    assert (added, taken, entries) == ([stem("s3")], ["s2"], [{"id": "e1"}])


def test_a_folder_says_what_its_land_was():
    """The hash in tract.toml is that of the land when it was given out."""
    texts = join(BASE, with_base=True)
    assert base_of(texts) == land_hash(join(BASE))
    assert join(split(texts)) == join(BASE)


NAMES = st.sampled_from(["Fence", "Hedge", "Wall"])
STEMS = st.lists(st.sampled_from(["s1", "s2", "s3"]), unique=True).map(lambda ids: tuple(stem(i) for i in ids))


@settings(max_examples=200, deadline=None)
@given(names=st.tuples(NAMES, NAMES, NAMES), stems=st.tuples(STEMS, STEMS, STEMS), known=st.booleans())
def test_taking_over_everything_loses_nothing_that_only_changed_here(names, stems, known):
    """Taking over all that only changed there keeps ours elsewhere; without a base nothing goes."""
    base, mine, theirs = (replace(with_patch(BASE, name=n), stems=s) for n, s in zip(names, stems, strict=True))
    found = differences(base if known else None, mine, theirs)

    for one in found:
        if not known:
            assert one.sort in ("new there", "differs", "happened there")
            assert one.theirs is not None
        if one.sort == "changed there":
            assert one.mine != one.theirs
    touched = {(d.kind, d.key) for d in found}
    if names[1] != names[0] and names[2] == names[0] and known:
        assert ("patch", "fence") not in touched
