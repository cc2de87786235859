"""Tables with rules between their cells: each cell as a sentence that holds the heads of its row and column."""

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from stemward.label.reader.phrases import PLANT_NOUNS
from stemward.label.reader.text import Box, Line

THIN_PT = 2.5
"""A drawn shape narrower than this is a rule: engineering guess."""
LONG_PT = 12.0
"""A shorter rule parts no cells: engineering guess."""
NEAR_PT = 3.0
"""Rules so near to one another are one: engineering guess."""
MOST_RULES = 4000
MOST_SIDES = 60
"""More rules on a page, or rows or columns in a table, are a drawing and no table: engineering guess."""


def with_tables(page: Any, pieces: Sequence[Line]) -> list[Line]:
    """A page's pieces, those within a ruled table replaced by sentences made of its cells, at the place of their row."""
    found = list(pieces)
    for across, down in _grids(_rules(page)):
        inside = [one for one in found if _within(one.box, (across[0], down[0], across[-1], down[-1]))]
        rows = _rows(inside, across, down)
        if rows:
            taken = {id(one) for one in inside}
            found = [one for one in found if id(one) not in taken] + rows
    return found


def _rules(page: Any) -> list[Box]:
    """Places of all thin drawn shapes, and the sides of drawn boxes."""
    import pypdfium2.raw as pdfium

    height = page.get_height()
    found: list[Box] = []
    for shape in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH], max_depth=4):
        left, bottom, right, top = shape.get_bounds() if hasattr(shape, "get_bounds") else shape.get_pos()
        box = (left, height - top, right, height - bottom)
        wide, tall = right - left, top - bottom
        if min(wide, tall) <= THIN_PT:
            if max(wide, tall) >= LONG_PT:
                found.append(box)
        elif wide >= LONG_PT and tall >= 6:
            low, high = box[3], box[1]
            found += [
                (left, high, right, high),
                (left, low, right, low),
                (left, high, left, low),
                (right, high, right, low),
            ]
        if len(found) > MOST_RULES:
            return []
    return found


def _grids(rules: Sequence[Box]) -> list[tuple[list[float], list[float]]]:
    """Where rules that touch one another form cells: the places of the sides across and down."""
    groups: list[list[Box]] = []
    for rule in rules:
        touching = [group for group in groups if any(_touch(rule, other) for other in group)]
        groups = [group for group in groups if group not in touching]
        groups.append([rule, *(one for group in touching for one in group)])
    grids: list[tuple[list[float], list[float]]] = []
    for group in groups:
        across = _places([(box[0] + box[2]) / 2 for box in group if box[3] - box[1] > box[2] - box[0]])
        down = _places([(box[1] + box[3]) / 2 for box in group if box[2] - box[0] >= box[3] - box[1]])
        sides = [box for box in group if box[2] - box[0] >= box[3] - box[1]]
        if sides and across:
            # The outer sides are often left out: the rules across tell how wide the table is.
            across = _places([*across, min(b[0] for b in sides), max(b[2] for b in sides)])
        # A single row of cells may be one of names.
        rows = 2 if len(across) > 3 else 3
        if 3 <= len(across) <= MOST_SIDES and rows <= len(down) <= MOST_SIDES:
            grids.append((across, down))
    return grids


def _touch(one: Box, other: Box) -> bool:
    return (
        one[0] - NEAR_PT <= other[2]
        and other[0] - NEAR_PT <= one[2]
        and one[1] - NEAR_PT <= other[3]
        and other[1] - NEAR_PT <= one[3]
    )


def _places(values: Sequence[float]) -> list[float]:
    found: list[float] = []
    for value in sorted(values):
        if not found or value - found[-1] > NEAR_PT:
            found.append(value)
    return found


def _within(box: Box, outer: Box) -> bool:
    across, down = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    return outer[0] - NEAR_PT < across < outer[2] + NEAR_PT and outer[1] < down < outer[3]


def _rows(inside: Sequence[Line], across: Sequence[float], down: Sequence[float]) -> list[Line]:
    """The cells of a table as sentences; none where it holds fewer than two rows and columns with words."""
    table: list[list[list[Line]]] = [[[] for _ in across[1:]] for _ in down[1:]]
    for one in sorted(inside, key=lambda one: (round(one.box[1]), one.box[0])):
        middle, left = (one.box[1] + one.box[3]) / 2, one.box[0] + 1
        at_row = next((n for n, (a, b) in enumerate(pairwise(down)) if a <= middle < b), None)
        at_column = next((n for n, (a, b) in enumerate(pairwise(across)) if a - NEAR_PT <= left < b - NEAR_PT), None)
        if at_row is not None and at_column is not None:
            table[at_row][at_column].append(one)
    filled = [row for row in table if any(row)]
    if _of_names(filled):
        return [_alone(cell) for row in filled for cell in row if cell]
    if len(filled) < 2 or sum(any(row[n] for row in filled) for n in range(len(across) - 1)) < 2:
        return []
    heads = [_words(cell) for cell in filled[0]]
    found: list[Line] = []
    label = ""
    for row in filled[1:]:
        # A cell that stands for several rows is filled in the first of them.
        label = _words(row[0]) or label
        for head, cell in zip(heads[1:], row[1:], strict=True):
            if cell:
                found.append(_sentence(label, heads[0], head, cell, row[0]))
    return found


def _of_names(filled: Sequence[Sequence[Sequence[Line]]]) -> bool:
    """True for a table without heads: its first row holds names of plants as the others do."""
    first = [_words(cell) for cell in filled[0] if cell] if filled else []
    named = sum(bool(PLANT_NOUNS.search(re.sub(r"\s*\([^)]*\)|[\d*†‡]+$", "", words))) for words in first)
    return len(first) > 1 and named > len(first) / 2


def _alone(cell: Sequence[Line]) -> Line:
    """A cell as a line of its own."""
    boxes = [one.box for one in cell]
    place = (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))
    return Line(cell[0].page, _words(cell), place, cell[0].size, any(one.picture for one in cell), cell=True)


def _words(cell: Sequence[Line]) -> str:
    return re.sub(r"(?<=\w)- (?=[a-z])", "", " ".join(one.text for one in cell))


_UNIT = re.compile(
    r"\(?\b(?P<unit>(?:lb|pounds?|kg|qt|quarts?|pt|pints?|gal|gallons?|fl\.? ?oz|oz|mL|inches|in\.|feet|ft|hours?|days?|minutes?|mph)"
    r"(?:[ .]*(?:a\.?e\.?|a\.?i\.?))?(?:\s*(?:/|per)\s*(?:A\b|acre|gal\w*|year|ha))?)\)?\s*$|(?P<share>%(?: ?\(?v/v\)?)?|percent)\)?",
    re.I,
)
_FIGURES = re.compile(r"[\d\s./,½¼¾–-]+(?:to\s[\d\s./½¼¾]+)?")


def _sentence(label: str, first: str, head: str, cell: Sequence[Line], row: Sequence[Line]) -> Line:
    """One cell with the heads of its row and column. A unit that only the head names is set behind the figure."""
    text, boxes = _words(cell), [one.box for one in [*row, *cell]]
    unit = _UNIT.search(head)
    if unit and _FIGURES.fullmatch(text.strip()):
        text = f"{text.strip()} {(unit['unit'] or unit['share']).strip('() ')}"
        head = f"{head[: unit.start()]}{head[unit.end() :]}".strip(" ()")
    words = "; ".join(
        part
        for part in (f"{first}: {label}" if first and label else label, f"{head}: {text}" if head else text)
        if part
    )
    place = (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))
    return Line(cell[0].page, words, place, cell[0].size, any(one.picture for one in cell), cell=True)
