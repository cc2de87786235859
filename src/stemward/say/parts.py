"""Parts of a plain page, the same for paper and screen."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a page. tens: (words, low, high, words for those who do not see it), drawn as ten
    stems of which so many die. widths: shares of the columns, all alike when empty. to_fill: rows high enough to
    write in. pictures: (digest by which a photo is kept, words under it)."""

    head: str = ""
    lines: tuple[str, ...] = ()
    points: tuple[str, ...] = ()
    tens: tuple[tuple[str, int, int, str], ...] = ()
    head_row: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    widths: tuple[float, ...] = ()
    to_fill: bool = False
    pictures: tuple[tuple[str, str], ...] = ()
