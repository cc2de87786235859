"""The text of a PDF as lines with their places, in the order in which a person reads columns."""

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

MOST_PAGES = 400
"""A label with its booklet seldom has a hundred: engineering guess."""
GUTTER_PT = 9.0
"""White from top to bottom of a block that is taken for the space between two columns: engineering guess."""
LEAST_ROWS = 3
"""Rows that must stand on each side of such a white space: engineering guess."""
SAME_LINE = 0.5
"""Share of a letter's height by which two pieces may be shifted and still stand on one line: engineering guess."""
HEAD_SHARE = 0.08
"""Share of a page at its top and bottom where running heads and page numbers stand: engineering guess."""
HEAD_PAGES = 3
"""Pages on which the same words must stand there to be a running head: engineering guess."""
SIGNS = {
    "\ufb00": "ff", "\ufb01": "fi", "\ufb02": "fl", "\ufb03": "ffi", "\ufb04": "ffl", "\u00a0": " ", "\u2011": "-",
    "\u2010": "-", "\u00ad": "", "\ufffe": "-", "\u2028": " ", "\x02": "-",
}  # fmt: skip
"""Ligatures, blanks and hyphens as plain signs."""

Box = tuple[float, float, float, float]
"""Left, top, right, bottom in points from the page's upper left corner."""


class NotReadable(Exception):
    """A file that cannot be read as a label. message: what is wrong, for room `say`."""

    def __init__(self, message: str) -> None:
        self.message = message
        super().__init__(message)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of text with its page (from 1), its place, and the height of its letters in points.

    picture: True where the words were made out in a picture of the page. cell: True for a table's cell with its heads.
    """

    page: int
    text: str
    box: Box
    size: float
    picture: bool = False
    cell: bool = False


Tables = Callable[[Any, Sequence[Line]], list[Line]]
ReadPicture = Callable[[Any, int], list[Line]]
"""Makes out the words in the picture of a page, given the page and its number from 1."""


def opened(raw: bytes) -> Any:
    """A PDF document. Raises NotReadable: "no_pdf", "locked", "no_pages", "too_many_pages"."""
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(raw)
    except pypdfium2.PdfiumError as error:
        raise NotReadable("locked" if "password" in str(error).lower() else "no_pdf") from None
    if len(document) == 0:
        raise NotReadable("no_pages")
    if len(document) > MOST_PAGES:
        raise NotReadable("too_many_pages")
    return document


def gathered(raw: bytes, read_picture: ReadPicture | None, tables: Tables) -> tuple[list[Line], int]:
    """All lines in reading order, running heads left out, and the number of pages.

    read_picture: what is asked for the words of pages that hold none, if anything can be. tables: what makes sentences
    of a table's cells.
    Raises NotReadable: "no_pdf", "locked", "no_pages", "too_many_pages", "no_text" (pictures of pages only).
    """
    import pypdfium2

    document = opened(raw)
    count = len(document)
    pages: list[tuple[float, list[Line]]] = []
    for number in range(count):
        try:
            page = document[number]
            found = _pieces(page, number + 1)
            if not found and read_picture is not None:
                found = read_picture(page, number + 1)
            pages.append((page.get_height(), tables(page, found) if found else found))
        except pypdfium2.PdfiumError:
            pages.append((0.0, []))
    if not any(found for _, found in pages):
        raise NotReadable("no_text")
    heads = _running(pages)
    lines: list[Line] = []
    for height, found in pages:
        kept = [one for one in found if (one.page, one.box) not in heads]
        lines += _merged(in_order(kept)) if height else []
    return lines, count


def words_of(page: Any) -> list[tuple[str, Box]]:
    """The words of a page with their places, as the file holds them."""
    return [(plain(word), box) for line in _worded(page) or () for word, box in line]


def _pieces(page: Any, number: int) -> list[Line]:
    """The runs of words of a page: what the file holds as one line, parted where a gap is as wide as a gutter."""
    lines = _worded(page)
    if lines is None:
        return _by_rectangles(page.get_textpage(), page.get_height(), number)
    return [run for words in lines for run in _runs(words, number)]


def _worded(page: Any) -> list[list[tuple[str, Box]]] | None:
    """The words of each line of the file; None where letters and places cannot be counted alike."""
    import ctypes

    import pypdfium2.raw as pdfium

    textpage = page.get_textpage()
    height = page.get_height()
    count = textpage.count_chars()
    text = textpage.get_text_range(0, count)
    if len(text) != count:
        return None
    rect = pdfium.FS_RECTF()
    at = ctypes.byref(rect)

    def box(index: int) -> Box:
        pdfium.FPDFText_GetLooseCharBox(textpage.raw, index, at)
        slack = (rect.top - rect.bottom) * LOOSE
        return rect.left, height - rect.top + slack, rect.right, height - rect.bottom - slack

    found: list[list[tuple[str, Box]]] = []
    for line in _LINE.finditer(text):
        words: list[tuple[str, Box]] = []
        for word in _WORD.finditer(text, line.start(), line.end()):
            first, last = box(word.start()), box(word.end() - 1)
            words.append((word[0], (first[0], min(first[1], last[1]), last[2], max(first[3], last[3]))))
        if words and text[line.end() : line.end() + 1] in tuple(PARTED):
            words[-1] = (f"{words[-1][0]}-", words[-1][1])
        found.append(words)
    return found


PARTED = "\x02\ufffe"
"""What the library puts where a word is parted at a line's end, without a new line."""
_LINE, _WORD = re.compile(rf"[^\r\n{PARTED}]+"), re.compile(r"\S+")
LOOSE = 0.15
"""Share of a letter's full height, above and below, taken off so that lines do not touch: engineering guess."""
WIDE = 1.5
"""A gap of so many heights between words is none within a line: engineering guess."""


def _runs(words: Sequence[tuple[str, Box]], number: int) -> list[Line]:
    """Words of one line put together up to where a gap is wide."""
    runs: list[list[tuple[str, Box]]] = []
    for word in words:
        last = runs[-1][-1][1] if runs else None
        size = word[1][3] - word[1][1]
        if last is None or not -size < word[1][0] - last[2] < max(GUTTER_PT, WIDE * size) or not _same(last, word[1]):
            runs.append([])
        runs[-1].append(word)
    found = []
    for run in runs:
        boxes = [box for _, box in run]
        place = (boxes[0][0], min(b[1] for b in boxes), boxes[-1][2], max(b[3] for b in boxes))
        text = plain(" ".join(word for word, _ in run))
        if text and place[2] > place[0]:
            found.append(Line(number, text, place, boxes[0][3] - boxes[0][1]))
    return found


def _same(one: Box, other: Box) -> bool:
    overlap = min(one[3], other[3]) - max(one[1], other[1])
    return overlap > SAME_LINE * min(one[3] - one[1], other[3] - other[1])


def _by_rectangles(textpage: Any, height: float, number: int) -> list[Line]:
    """The same where letters and places cannot be counted alike: slower, run by run as the file holds them."""
    found = []
    for n in range(textpage.count_rects()):
        left, bottom, right, top = textpage.get_rect(n)
        text = plain(textpage.get_text_bounded(left, bottom, right, top))
        if text:
            found.append(Line(number, text, (left, height - top, right, height - bottom), top - bottom))
    return found


def plain(text: str) -> str:
    """Text with ligatures and odd blanks resolved, on one line."""
    for sign, spelled in SIGNS.items():
        text = text.replace(sign, spelled)
    return " ".join(text.split())


def _running(pages: Sequence[tuple[float, list[Line]]]) -> set[tuple[int, Box]]:
    """Pieces at the top or bottom edge that stand on several pages alike, but for their numbers."""
    seen: Counter[tuple[str, int]] = Counter()
    at: list[tuple[tuple[str, int], Line]] = []
    for height, found in pages:
        for one in found:
            if one.box[3] < height * HEAD_SHARE or one.box[1] > height * (1 - HEAD_SHARE):
                key = (re.sub(r"\d+", "#", one.text), round(one.box[1] / 10))
                at.append((key, one))
        seen.update({key for key, one in at if one.page == (found[0].page if found else 0)})
    return {
        (one.page, one.box)
        for key, one in at
        if seen[key] >= HEAD_PAGES or re.fullmatch(r"[#\s/.\-]*|page #.*", key[0].lower())
    }


def in_order(pieces: Sequence[Line]) -> list[Line]:
    """Pieces of one page as they are read: bands from top to bottom, within them columns from left to right.

    A band ends where words or a table go over the space between its columns.
    """
    if len(pieces) < 2:
        return list(pieces)
    gutters = _gutters(pieces)
    if not gutters:
        return _rows(pieces)
    found: list[Line] = []
    for over, band in _bands(pieces, gutters):
        if over:
            found += _rows(band)
            continue
        columns = _columned(band, gutters)
        # Within a column there may be columns again, but never at the same gutters.
        found += [line for column in columns for line in (in_order(column) if len(columns) > 1 else _rows(column))]
    return found


MOST_OVER = 0.25
"""Share of the lines' height that may go over a gutter, as titles and tables do: engineering guess."""
FEWEST_SIGNS = 9
"""A column of pieces no longer than this is the right end of its rows, as percents are: engineering guess."""


def _gutters(pieces: Sequence[Line]) -> list[float]:
    """Middles of the white spaces between columns, over which little goes and beside which several lines stand.

    How little is tried from next to nothing on: on a page of many columns one that is half empty holds no more than
    the titles of another page do. The strictest that finds any holds.
    """
    return next((found for share in OVER if (found := _white(pieces, share))), [])


OVER = (0.01, 0.03, MOST_OVER / 2)
"""Shares of the lines' height that may go over a gutter, in the order in which they are tried: engineering guesses."""


def _white(pieces: Sequence[Line], share: float) -> list[float]:
    """Gutters over which no more than a share of the lines' height goes."""
    total = sum(one.box[3] - one.box[1] for one in pieces)
    begun: defaultdict[float, float] = defaultdict(float)
    for one in pieces:
        begun[one.box[0]] += one.box[3] - one.box[1]
        begun[one.box[2]] -= one.box[3] - one.box[1]
    edges = sorted(begun)
    found: list[tuple[float, float]] = []
    over = 0.0
    for left, right in pairwise(edges):
        over += begun[left]
        if over > share * total:
            continue
        if found and found[-1][1] == left:
            found[-1] = (found[-1][0], right)
        else:
            found.append((left, right))
    middles = []
    for left, right in found:
        best = _widest(pieces, left, right)
        if best and _beside_it(pieces, best):
            middles.append(best)
    return middles


def _widest(pieces: Sequence[Line], left: float, right: float) -> float | None:
    """The middle of the white space between what ends left of it and what begins right of it; None if it is narrow."""
    apart = [one for one in pieces if not (one.box[0] < left and one.box[2] > right)]
    ends = [one.box[2] for one in apart if one.box[0] <= left and one.box[2] <= right]
    begins = [one.box[0] for one in apart if one.box[0] >= left]
    if not ends or not begins:
        return None
    end, begin = sorted(ends)[int(0.98 * (len(ends) - 1))], sorted(begins)[int(0.02 * len(begins))]
    return (end + begin) / 2 if begin - end >= GUTTER_PT else None


def _beside_it(pieces: Sequence[Line], middle: float) -> bool:
    """True if at least several lines stand on each side, and those on the right are more than the ends of rows."""
    lefts = [one for one in pieces if one.box[2] <= middle]
    rights = [one for one in pieces if one.box[0] >= middle]
    ends = sum(len(one.text) <= FEWEST_SIGNS for one in rights)
    return len(lefts) >= LEAST_ROWS and len(rights) >= LEAST_ROWS and ends < 0.8 * len(rights)


def _bands(pieces: Sequence[Line], gutters: Sequence[float]) -> list[tuple[bool, list[Line]]]:
    """Pieces from top to bottom in turns: those that go over a gutter, and those that do not."""
    over = {id(one): any(one.box[0] < at - 1 and one.box[2] > at + 1 for at in gutters) for one in pieces}
    spans = sorted((one for one in pieces if over[id(one)]), key=lambda one: (one.box[1] + one.box[3]) / 2)
    rest = sorted((one for one in pieces if not over[id(one)]), key=lambda one: (one.box[1] + one.box[3]) / 2)
    found: list[tuple[bool, list[Line]]] = []
    for span in spans:
        level = [
            one
            for one in rest
            if (one.box[1] + one.box[3]) / 2 < (span.box[1] + span.box[3]) / 2 and not _level(one, span)
        ]
        beside = [one for one in rest if _level(one, span)]
        rest = [one for one in rest if one not in level and one not in beside]
        if level:
            found.append((False, level))
        if found and found[-1][0]:
            found[-1][1].extend([span, *beside])
        else:
            found.append((True, [span, *beside]))
    return [*found, (False, rest)] if rest else found


def _columned(pieces: Sequence[Line], gutters: Sequence[float]) -> list[list[Line]]:
    """A band's pieces by column."""
    columns: list[list[Line]] = [[] for _ in range(len(gutters) + 1)]
    for one in pieces:
        middle = (one.box[0] + one.box[2]) / 2
        columns[sum(middle > at for at in gutters)].append(one)
    return [column for column in columns if column]


def _rows(pieces: Sequence[Line]) -> list[Line]:
    """Pieces of one column from top to bottom, those that stand on one line from left to right."""
    rows: list[list[Line]] = []
    for one in sorted(pieces, key=lambda one: (one.box[1] + one.box[3]) / 2):
        if rows and any(_level(other, one) for other in rows[-1]):
            rows[-1].append(one)
        else:
            rows.append([one])
    return [one for row in rows for one in sorted(row, key=lambda one: one.box[0])]


def _level(one: Line, other: Line) -> bool:
    return _same(one.box, other.box)


def _merged(pieces: Sequence[Line]) -> list[Line]:
    """Pieces that follow one another on one line, as one line."""
    found: list[Line] = []
    for one in pieces:
        last = found[-1] if found else None
        if last and last.page == one.page and not (last.cell or one.cell) and _beside(last, one):
            gap = one.box[0] - last.box[2]
            between = "" if gap < 0.15 * max(last.size, one.size) else " "
            box = (last.box[0], min(last.box[1], one.box[1]), one.box[2], max(last.box[3], one.box[3]))
            found[-1] = replace(last, text=f"{last.text}{between}{one.text}", box=box, size=max(last.size, one.size))
        else:
            found.append(one)
    return found


WORDS_APART, CELLS_APART = 3.0, 15.0
"""A gap of so many heights is none between words, and none between the cells of a row: engineering guess."""
MOST_CELL = 26
"""A longer piece is no cell of a table without rules: engineering guess."""


def _beside(last: Line, one: Line) -> bool:
    """True for pieces of one line: words near to one another, or short ones as a table without rules has them."""
    cells = len(one.text) <= MOST_CELL and len(last.text) <= 2 * MOST_CELL
    apart = (CELLS_APART if cells else WORDS_APART) * max(last.size, one.size)
    return _level(last, one) and -1.0 <= one.box[0] - last.box[2] < apart
