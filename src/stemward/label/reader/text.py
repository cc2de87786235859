"""The text of a PDF as lines with their places, in the order in which a person reads columns."""

import re
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
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

    picture: True where the words were made out in a picture of the page.
    """

    page: int
    text: str
    box: Box
    size: float
    picture: bool = False


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


def lines_of(raw: bytes, read_picture: ReadPicture | None = None) -> tuple[list[Line], int]:
    """All lines in reading order, running heads left out, and the number of pages.

    read_picture: what is asked for the words of pages that hold none, if anything can be.
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
            pages.append((page.get_height(), found))
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
    """Pieces of one page as they are read: blocks from top to bottom, within them columns from left to right."""
    if len(pieces) < 2:
        return list(pieces)
    columns = _columns(pieces)
    leading = sorted(one.box[3] - one.box[1] for one in pieces)[len(pieces) // 2] * 0.6
    blocks = _split(pieces, 1, leading)
    if len(blocks) > 1:
        # A title over several columns hides their gutters: it is read first, then the rest.
        rest = [one for block in blocks[1:] for one in block]
        if len(_columns(rest)) > len(columns):
            return [*in_order(blocks[0]), *in_order(rest)]
    if len(columns) > 1:
        return [line for column in columns for line in in_order(column)]
    if len(blocks) > 1:
        # Blocks that are one column each are one after the other; only those with columns of their own are cut up.
        return [line for block in _joined(blocks) for line in in_order(block)]
    if len(_columns(pieces)) == 1 and len(_split(pieces, 1, 0.1)) > 1 and _has_columns(pieces):
        return [line for block in _joined(_split(pieces, 1, 0.1)) for line in in_order(block)]
    return _rows(pieces)


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


def _columns(pieces: Sequence[Line]) -> list[list[Line]]:
    """Pieces parted at gutters; of a block of one or two lines a wide blank is only a blank."""
    groups = _split(pieces, 0, GUTTER_PT)
    return groups if max(map(len, groups)) >= LEAST_ROWS else [list(pieces)]


def _joined(blocks: Sequence[list[Line]]) -> list[list[Line]]:
    """Neighbouring blocks put together as long as the same gutters go through them."""
    found: list[list[Line]] = []
    for block in blocks:
        if found and len(_columns([*found[-1], *block])) > 1:
            found[-1] = [*found[-1], *block]
        else:
            found.append(list(block))
    return found


def _has_columns(pieces: Sequence[Line]) -> bool:
    return any(len(_columns(block)) > 1 for block in _split(pieces, 1, 0.1))


def _split(pieces: Sequence[Line], axis: int, gap: float) -> list[list[Line]]:
    """Pieces parted where nothing stands for at least that far along an axis (0 across, 1 down)."""
    rows = sorted(pieces, key=lambda one: one.box[axis])
    groups: list[list[Line]] = []
    end = float("-inf")
    for one in rows:
        if one.box[axis] - end >= gap or not groups:
            groups.append([])
        groups[-1].append(one)
        end = max(end, one.box[axis + 2])
    return groups


def _merged(pieces: Sequence[Line]) -> list[Line]:
    """Pieces that follow one another on one line, as one line."""
    found: list[Line] = []
    for one in pieces:
        last = found[-1] if found else None
        if last and last.page == one.page and _beside(last, one):
            gap = one.box[0] - last.box[2]
            between = "" if gap < 0.15 * max(last.size, one.size) else " "
            box = (last.box[0], min(last.box[1], one.box[1]), one.box[2], max(last.box[3], one.box[3]))
            found[-1] = replace(last, text=f"{last.text}{between}{one.text}", box=box, size=max(last.size, one.size))
        else:
            found.append(one)
    return found


def _beside(last: Line, one: Line) -> bool:
    return _level(last, one) and -1.0 <= one.box[0] - last.box[2] < 3.0 * max(last.size, one.size)
