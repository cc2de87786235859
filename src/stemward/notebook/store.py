"""Rows of a tract in and out of the database: pieces, stems by the hundred thousand, entries."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from django.db import connection
from django.db.models import F

from stemward.gate.pieces import Parts
from stemward.gate.pieces import Piece as Part
from stemward.notebook.models import CELLS, Entry, Piece, Stem

Cells = Sequence[str]
LOT = 10_000
"""Stems written at once, a fraction of a second's work: engineering guess."""
STEM_FIELDS = ("tract_id", "place", "made_by", "taken_in", "edits", "gone_by", *CELLS)
_PLACES = ", ".join(["%s"] * len(STEM_FIELDS))
INSERT_STEM = f"INSERT INTO notebook_stem ({', '.join(STEM_FIELDS)}) VALUES ({_PLACES})"
READ_STEMS = f"SELECT {', '.join(CELLS)} FROM notebook_stem WHERE tract_id = %s AND gone_by = '' ORDER BY place"


def parts_of(tract_id: str, stems: Sequence[Cells] | None = None) -> Parts:
    """Everything of a tract, in order; with `stems` where those that stand there are known already."""
    pieces = Piece.objects.filter(tract_id=tract_id).values_list("kind", "key", "body")
    if stems is None:
        with connection.cursor() as cursor:
            cursor.execute(READ_STEMS, [tract_id])
            stems = cursor.fetchall()
    entries = Entry.objects.filter(tract_id=tract_id).values_list("row", flat=True)
    return Parts(tuple(Part(*row) for row in pieces), stems, tuple(entries))


def piece_of(tract_id: str, kind: str, key: str) -> dict[str, Any] | None:
    """What a piece holds; None if there is no such piece."""
    return Piece.objects.filter(tract_id=tract_id, kind=kind, key=key).values_list("body", flat=True).first()


def put_piece(tract_id: str, kind: str, key: str, body: dict[str, Any] | None) -> None:
    """Write a piece, new ones last; None takes it away."""
    own = Piece.objects.filter(tract_id=tract_id, kind=kind, key=key)
    if body is None:
        own.delete()
    elif not own.update(body=body):
        Piece.objects.create(tract_id=tract_id, kind=kind, key=key, body=body, place=_next(Piece, tract_id))


def put_pieces(tract_id: str, parts: Iterable[Part]) -> None:
    """Write many new pieces in their order."""
    place = _next(Piece, tract_id)
    Piece.objects.bulk_create(
        [Piece(tract_id=tract_id, kind=p.kind, key=p.key, body=p.body, place=place + n) for n, p in enumerate(parts)],
        batch_size=500,
    )


def stem_of(tract_id: str, key: str) -> tuple[str, ...] | None:
    """The cells of a stem that is there; None if there is none."""
    return Stem.objects.filter(tract_id=tract_id, key=key, gone_by="").values_list(*CELLS).first()


def put_stem(tract_id: str, key: str, cells: Cells, edits: int) -> None:
    """Write the cells of a stem that is there. edits: 1 for a change or its redoing, -1 for its undoing."""
    fields: dict[str, Any] = dict(zip(CELLS, cells, strict=True))
    Stem.objects.filter(tract_id=tract_id, key=key, gone_by="").update(edits=F("edits") + edits, **fields)


def add_stems(
    tract_id: str, rows: Sequence[Cells], change_id: str, tell: Callable[[int, int], None] | None = None
) -> None:
    """Write new stems, without a model each. tell: is told after each lot how many of how many are written."""
    first = _next(Stem, tract_id)
    with connection.cursor() as cursor:
        for start in range(0, len(rows), LOT):
            lot = rows[start : start + LOT]
            cursor.executemany(
                INSERT_STEM,
                [(tract_id, first + n, change_id, "", 0, "", *row) for n, row in enumerate(lot, start)],
            )
            if tell:
                tell(start + len(lot), len(rows))


def add_entries(tract_id: str, rows: Sequence[dict[str, Any]]) -> None:
    """Write what happened, in order."""
    Entry.objects.bulk_create([Entry(tract_id=tract_id, key=row["id"], row=row) for row in rows], batch_size=500)


def _next(model: type[Piece | Stem], tract_id: str) -> int:
    last = model.objects.filter(tract_id=tract_id).order_by("-place").values_list("place", flat=True).first()
    return 0 if last is None else last + 1
