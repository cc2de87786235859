"""Where words go on a plan: beside what they name, off the stems and off each other."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from stemward.drawings.svg import Box, line, num, text

LETTER_FRAC = 0.56
"""Width of a letter as a share of its size, about what figures and small letters of the face take."""
FAR_MM = 8.0
MOST_CORNERS = 40


@dataclass(slots=True)
class Sheet:
    """What is on a plan already, in mm: the page, places of stems and lines as n x 2, and boxes that are taken."""

    page: Box
    busy: NDArray[np.float64]
    taken: list[Box] = field(default_factory=list)

    def cost(self, box: Box) -> float:
        """How much a box hides: what is off the page counts most, then words and signs, then stems and lines."""
        left, top, right, bottom = box
        off = max(self.page[0] - left, self.page[1] - top, right - self.page[2], bottom - self.page[3], 0.0)
        x, y = self.busy[:, 0], self.busy[:, 1]
        hidden = np.count_nonzero((x > left) & (x < right) & (y > top) & (y < bottom))
        return 20 * off + sum(30 * _overlap(box, other) for other in self.taken) + 1.5 * float(hidden)


def _overlap(one: Box, other: Box) -> float:
    """Area of the overlap as a share of the smaller of two boxes."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    if wide <= 0 or high <= 0:
        return 0.0
    smaller = min((b[2] - b[0]) * (b[3] - b[1]) for b in (one, other))
    return wide * high / smaller if smaller > 0 else 0.0


def label(sheet: Sheet, words: str, x: float, y: float, size: float, clear: float) -> str:
    """Words beside a place, `clear` off its middle, where they hide least; a thin line leads to words farther off.

    The place they take is added to the sheet. No words take none.
    """
    if not words:
        return ""
    spots = list(_spots(x, y, _size(words, size), clear))
    box, _, far = min(spots, key=lambda spot: _cost(sheet, spot[0]) + spot[1])
    return (_leader(box, x, y, clear) if far else "") + _write(sheet, words, box, size)


def heading(sheet: Sheet, words: str, corners: Sequence[tuple[float, float]], size: float, clear: float) -> str:
    """Bold words at the corner of an outline where they hide least, the upper corners first, without a line."""
    spots = []
    for n, (x, y) in enumerate(sorted(corners, key=lambda corner: corner[1])[:MOST_CORNERS]):
        spots += [(box, dislike + 0.5 * n) for box, dislike, far in _spots(x, y, _size(words, size), clear) if not far]
    box, _ = min(spots, key=lambda spot: _cost(sheet, spot[0]) + spot[1])
    return _write(sheet, words, box, size, bold=True)


def _size(words: str, size: float) -> tuple[float, float]:
    return len(words) * size * LETTER_FRAC, size


def _cost(sheet: Sheet, box: Box) -> float:
    """What a box would hide; stems reach beyond their middles by about a millimetre."""
    return sheet.cost((box[0] - 1, box[1] - 1, box[2] + 1, box[3] + 1))


def _write(sheet: Sheet, words: str, box: Box, size: float, bold: bool = False) -> str:
    sheet.taken.append(box)
    return text(box[0], box[3] - 0.22 * size, words, size, bold=bold, halo=0.9)


def _spots(x: float, y: float, extent: tuple[float, float], clear: float) -> Iterator[tuple[Box, float, bool]]:
    """Boxes round a place, near and then far, with how little each is liked and whether it needs a leader."""
    wide, high = extent
    for off, dislike in ((clear, 0.0), (clear + FAR_MM, 2.5), (clear + 2 * FAR_MM, 4.5)):
        slant = off * 0.75
        corners = (
            (x + off, y - high / 2),
            (x - off - wide, y - high / 2),
            (x - wide / 2, y - off - high),
            (x - wide / 2, y + off),
            (x + slant, y - slant - high),
            (x + slant, y + slant),
            (x - slant - wide, y - slant - high),
            (x - slant - wide, y + slant),
        )
        for n, (left, top) in enumerate(corners):
            yield (left, top, left + wide, top + high), dislike + 0.1 * n, off > clear


def _leader(box: Box, x: float, y: float, clear: float) -> str:
    """A thin line from the edge of a sign to the nearest point of its words."""
    to_x, to_y = min(max(x, box[0] - 0.6), box[2] + 0.6), min(max(y, box[1]), box[3])
    long = float(np.hypot(to_x - x, to_y - y))
    if long <= clear:
        return ""
    from_x, from_y = x + (to_x - x) * clear / long, y + (to_y - y) * clear / long
    return line(f"M{num(from_x)} {num(from_y)}L{num(to_x)} {num(to_y)}", 0.3)
