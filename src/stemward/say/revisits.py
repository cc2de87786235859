"""Looks back in words: what is due, what was seen."""

import datetime
from collections.abc import Mapping
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.revisits import Seen, Work, verdict_months, works
from stemward.say.en import revisits as words
from stemward.say.en.stages import HOW


def work_words(work: Work, names: Mapping[str, str], today: datetime.date, book: Book) -> dict[str, Any]:
    """One treated work: what it was, what is due, what was seen. names: patches and products by id."""
    plant = book.species[work.species].common if work.species in book.species else work.species
    product = names.get(work.product, work.product)
    least = verdict_months(work.suckers, book)
    overdue = [(look, on) for look, on in work.due if on <= today]
    # Of several looks that are due one visit serves for all: the last.
    open_ = [*overdue[-1:], *((look, on) for look, on in work.due if on > today)]
    return {
        "key": work.key,
        "day": work.day.isoformat(),
        "what": f"{work.stems} {plant}",
        "plant": plant,
        "patch": names.get(work.patch, work.patch),
        "how": HOW.get(work.method, work.method).lower() + (f", {product}" if product else ""),
        "due": [
            {"look": words.LOOK_NAMES[look], "why": words.LOOKS[look], "late": on <= today,
             "on": (words.OVERDUE if on <= today else words.TO_COME).format(on=on)}
            for look, on in open_
        ],
        "late": bool(overdue),
        "seen": [seen_words(one, least) for one in work.seen],
    }  # fmt: skip


def seen_words(seen: Seen, least: float) -> str:
    """One look in a line."""
    counts = words.COUNTS.format(dead=seen.dead, resprouting=seen.resprouting, judged=seen.judged)
    rest = ((words.GONE, seen.gone), (words.NOT_FOUND, seen.not_found), (words.UNTREATED, seen.untreated))
    more = [text.format(n) for text, n in rest if n]
    when = (words.EARLY if seen.early else words.LATE).format(months=seen.months, least=least)
    return f"{seen.day}: {'; '.join([counts, *more])} ({when})"


def revisit_lines(tract: Tract, today: datetime.date, book: Book) -> list[str]:
    """All works and their looks as lines for a terminal or a sheet, those that are due first."""
    names = {p.id: p.name for p in tract.patches} | {p.id: p.name for p in tract.shelf}
    said = [work_words(w, names, today, book) for w in works(tract, book)]
    if not said:
        return [words.NONE]
    lines = []
    for one in sorted(said, key=lambda w: not w["late"]):
        lines.append(f"{one['what']} on {one['patch']}, {one['how']}, {one['day']}")
        lines += [f"    seen {line}" for line in one["seen"]]
        lines += [f"    {due['look']}: {due['on']}" for due in one["due"]] or [f"    {words.DONE}"]
    return lines
