"""What was begun and is not finished: cut and not treated, mix not accounted for, records that lack something, what
was treated and not looked at again."""

import datetime
from collections.abc import Iterable

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger import batches, marks
from stemward.ledger.duties import due_of, duties_of, missing_of
from stemward.ledger.records import records
from stemward.ledger.revisits import works
from stemward.ledger.stems import cut_untreated, marked_only, unlike
from stemward.plan.next_step import Matter

SOON_D = 3
"""A record is spoken of when so many days are left: engineering guess."""
DAY = datetime.timedelta(days=1)


def open_work(tract: Tract, book: Book, today: datetime.date) -> list[Matter]:
    """Rows 1 to 4 and 6 of the table of what comes next, and the looks back that are due."""
    return [
        *_cut(tract),
        *_mix(tract, today),
        *_records(tract, book, today),
        *_phones(tract),
        *_looks(tract, book, today),
    ]


def _cut(tract: Tract) -> Iterable[Matter]:
    known = marks(tract.entries)
    open_ = cut_untreated(known)
    if not open_:
        return
    by: dict[tuple[str, str], int] = {}
    patch_of = dict(zip(tract.stems.id.tolist(), tract.stems.patch.tolist(), strict=True))
    for stem in open_:
        key = (patch_of.get(stem, ""), known[stem].at[:10])
        by[key] = by.get(key, 0) + known[stem].cut - known[stem].treated
    names = {p.id: p.name for p in tract.patches}
    for (patch, day), count in by.items():
        said = (("count", count), ("patch", names.get(patch, patch)), ("day", day))
        yield Matter("cut_untreated", said, (("day", day),), datetime.date.fromisoformat(day), name=patch)


def _phones(tract: Tract) -> Iterable[Matter]:
    """What phones marked and nobody wrote down, and where two of them differ."""
    for one in marked_only(tract.entries):
        said = (("day", one.day), ("count", sum(one.rows["treated"].values())))
        yield Matter("marked_only", said, (("day", one.day),), datetime.date.fromisoformat(one.day), name=one.day)
    counts = dict(zip(tract.stems.id.tolist(), tract.stems.stems.tolist(), strict=True))
    if differ := unlike(tract.entries, counts):
        yield Matter("marks_differ", (("count", len(differ)),))


def _mix(tract: Tract, today: datetime.date) -> Iterable[Matter]:
    for batch in batches(tract.entries).values():
        made = datetime.date.fromisoformat(batch.day)
        if (batch.open and today > made) or batch.overused:
            said = (("amount_ml", round(abs(batch.left_ul) / 1000)), ("day", batch.day))
            yield Matter("mix_left", said, (("batch", batch.batch),), made + DAY, name=batch.batch)


def _records(tract: Tract, book: Book, today: datetime.date) -> Iterable[Matter]:
    for record in records(tract):
        if record.signed:
            continue
        duties = duties_of(record, tract, book)
        missing, due = list(missing_of(duties)), due_of(duties)
        if missing and due is not None and (due - today).days <= SOON_D:
            said = (("day", record.day.isoformat()), ("field", missing[0]), ("left_d", (due - today).days))
            yield Matter("record_open", said, (("day", record.day.isoformat()),), due, name=record.key)


def _looks(tract: Tract, book: Book, today: datetime.date) -> Iterable[Matter]:
    names = {p.id: p.name for p in tract.patches}
    for work in works(tract, book):
        due = [on for _, on in work.due if on <= today]
        if due and work.patch in names:
            plant = book.species[work.species].common if work.species in book.species else work.species
            said = (("patch", names[work.patch]), ("count", work.stems), ("plants", plant),
                    ("day", work.day.isoformat()))  # fmt: skip
            yield Matter("revisit_due", said, (("patch", work.patch), ("work", work.key)), max(due), name=work.key)
