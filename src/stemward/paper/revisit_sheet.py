"""The sheet to take along when going back: what was treated where, and boxes to fill."""

import datetime
from collections.abc import Sequence

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.revisits import Work, works
from stemward.paper.pages import pages_pdf
from stemward.say.en import revisits as words
from stemward.say.numbers import System
from stemward.say.parts import Part
from stemward.say.revisits import work_words

ROOM = ("", "", "", "", "", "")


def revisit_sheet(tract: Tract, book: Book, as_of: datetime.date, units: System = "us", paper: str = "letter") -> bytes:
    """All that was treated and is not done with, the overdue first, with room to write. PDF/UA-1."""
    del units
    names = {p.id: p.name for p in tract.patches} | {p.id: p.name for p in tract.shelf}
    open_ = [work_words(w, names, as_of, book) for w in works(tract, book) if w.due]
    rows = tuple(
        (f"{one['what']}, {one['patch']}; {one['how']}, {one['day']}. {one['due'][0]['look']}: {one['due'][0]['on']}",
         *ROOM)
        for one in sorted(open_, key=lambda w: (not w["late"], w["due"][0]["on"]))
    )  # fmt: skip
    table = Part(head_row=words.SHEET_HEAD, rows=rows, widths=(3.2, 1, 1, 1, 1, 1, 1), to_fill=True)
    parts = [Part(lines=words.SHEET_HOW), table if rows else Part(lines=(words.NONE,))]
    footer = words.SHEET_FOOTER.format(tract=tract.name, day=as_of)
    return pages_pdf(words.SHEET_TITLE.format(tract=tract.name), parts, footer, as_of, paper)


def stem_sheet(
    tract: Tract, book: Book, as_of: datetime.date, work: Work, stems: Sequence[tuple[str, str]], paper: str = "letter"
) -> bytes:
    """One work stem by stem: name and size of each, with room to write. PDF/UA-1."""
    names = {p.id: p.name for p in tract.patches} | {p.id: p.name for p in tract.shelf}
    one = work_words(work, names, as_of, book)
    head = f"{one['what']}, {one['patch']}; {one['how']}, {one['day']}"
    rows = tuple((stem, size, *ROOM[:5]) for stem, size in stems)
    table = Part(head=head, head_row=words.STEM_HEAD, rows=rows, widths=(1.2, 1.2, 1, 1, 1.6, 1, 1), to_fill=True)
    footer = words.SHEET_FOOTER.format(tract=tract.name, day=as_of)
    return pages_pdf(
        words.SHEET_TITLE.format(tract=tract.name), [Part(lines=words.SHEET_HOW), table], footer, as_of, paper
    )
