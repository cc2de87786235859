"""Application records on paper, one a page."""

import datetime
from collections.abc import Sequence
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.duties import Duty, keep_until_of
from stemward.ledger.records import Record
from stemward.paper.compile import to_pdf
from stemward.say.en import records as words
from stemward.say.numbers import System
from stemward.say.records import record_rows, state_words

Judged = Sequence[tuple[Record, Sequence[Duty]]]


def record_pdf(
    tract: Tract, found: Judged, book: Book, units: System, today: datetime.date, paper: str = "us-letter"
) -> bytes:
    """The records as PDF/UA, in the order given; empty fields are lines to fill by hand."""
    return to_pdf("record.typ", record_data(tract, found, book, units, today, paper), today)


def record_data(
    tract: Tract, found: Judged, book: Book, units: System, today: datetime.date, paper: str
) -> dict[str, Any]:
    """All that stands on the pages."""
    own = words.PAPER
    return {
        "title": own["title"].format(tract=tract.name),
        "paper": paper,
        "footer": own["footer"].format(tract=tract.name, today=today)
        + (f" · {own['invented']}" if tract.invented else ""),
        "head": [own["field"], own["content"]],
        "star": own["star"],
        "asked": own["asked"],
        "signed": own["signed"],
        "none": own["none"],
        "records": [_one(tract, record, duties, book, units, today) for record, duties in found],
    }


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _one(
    tract: Tract, record: Record, duties: Sequence[Duty], book: Book, units: System, today: datetime.date
) -> dict[str, Any]:
    own = words.PAPER
    patch = next((p.name for p in tract.patches if p.id == record.patch), record.patch)
    rows = record_rows(record, duties, tract, book, units)
    keep = keep_until_of(duties)
    return {
        "heading": own["heading"].format(day=record.day, product=record.values["product_name"], patch=patch),
        "state": f"{_capital(state_words(record, duties, today))}.",
        "anyway": [words.ANYWAY.format(why=why) for why in record.anyway],
        "rows": [[row["name"], row["text"], "*" if row["asked"] else ""] for row in rows],
        "rules": [
            (words.ASKS if d.certain else words.MAY_ASK).format(rule=d.rule.name) + f" {d.rule.cited.source}."
            for d in duties
        ],
        "keep": own["keep"].format(until=keep) if keep else "",
        "signed": own["by"].format(name=record.signed[0], at=record.signed[1].replace("T", " "))
        if record.signed
        else own["line"],
    }
