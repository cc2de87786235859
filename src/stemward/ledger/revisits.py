"""Going back: what was treated on one day alike, when to look at it again, what was seen; folds over entries."""

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from stemward.handbook import Book
from stemward.kinds import Entry, Tract
from stemward.ledger.in_force import day_of, in_force

Look = Literal["first", "verdict", "second year"]
LOOKS: tuple[Look, ...] = ("first", "verdict", "second year")
MONTH_D = 30.4375
EARLY_D = 30
"""A look so many days before it is due still serves: engineering guess."""
LEAVES_END_DAY = 15


@dataclass(frozen=True, slots=True)
class Seen:
    """What one look back found, in plants. months: since the treatment. early: too soon for a verdict."""

    entry: str
    day: datetime.date
    months: float
    early: bool
    dead: int
    resprouting: int
    gone: int = 0
    not_found: int = 0
    untreated: int = 0
    sprouts: float | None = None
    tallest_m: float | None = None
    seedlings: int | None = None
    new_stems: int = 0

    @property
    def judged(self) -> int:
        """Treated plants of which it was seen whether they live."""
        return self.dead + self.resprouting


@dataclass(frozen=True, slots=True)
class Work:
    """What was treated on one day alike: one plant on one patch with one method and product.

    entries: ids of what was written down. batches: of which mixes. due: looks still to come or overdue, by name.
    seen: looks that were made, in order of time.
    """

    key: str
    day: datetime.date
    patch: str
    species: str
    method: str
    product: str
    ingredients: tuple[str, ...]
    concentration_frac: float
    people: tuple[str, ...]
    batches: tuple[str, ...]
    entries: tuple[str, ...]
    stems: int
    rows: tuple[str, ...]
    suckers: bool
    seen: tuple[Seen, ...]
    due: tuple[tuple[Look, datetime.date], ...]

    @property
    def verdict(self) -> Seen | None:
        """The last look that was not early; None where there was none."""
        return next((s for s in reversed(self.seen) if not s.early and s.judged), None)


def works(tract: Tract, book: Book) -> tuple[Work, ...]:
    """Everything that was treated, in order of time, with its looks; what names no plant or method is left out."""
    groups: dict[tuple[str, ...], list[Entry]] = {}
    held = in_force(tract.entries)
    for entry in held:
        body = entry.body
        if entry.kind == "treated" and body.get("species") and body.get("method"):
            key = (entry.at[:10], body["patch"], body["species"], body["method"], str(body.get("product", "")))
            groups.setdefault(key, []).append(entry)
    looks = [e for e in held if e.kind == "seen again"]
    return tuple(_work(key, entries, looks, book) for key, entries in groups.items())


def _work(key: tuple[str, ...], entries: Sequence[Entry], looks: Iterable[Entry], book: Book) -> Work:
    day = datetime.date.fromisoformat(key[0])
    _, patch, species, method, product = key
    bodies = [e.body for e in entries]
    ids = tuple(e.id for e in entries)
    ingredients = tuple(dict.fromkeys(name for b in bodies for name in b.get("ae_g", {})))
    plant = book.species.get(species)
    suckers = plant is not None and (plant.root_suckers == "yes" or plant.clone)
    months = verdict_months(suckers, book)
    seen = tuple(_seen(e, day, months) for e in looks if {*e.body["of"]} & {*ids})
    return Work(
        "/".join(key), day, patch, species, method, product, ingredients,
        float(bodies[0].get("concentration_frac") or 0.0),
        tuple(dict.fromkeys(p for e in entries for p in (e.body.get("people") or [e.by]))),
        tuple(dict.fromkeys(str(b.get("batch") or i) for b, i in zip(bodies, ids, strict=True))), ids,
        round(sum(float(b.get("stems", 0)) for b in bodies)),
        tuple(dict.fromkeys(row for b in bodies for row in b.get("rows", {}))), suckers, seen,
        _still_due(due_dates(day, method, ingredients, suckers, book), seen),
    )  # fmt: skip


def verdict_months(suckers: bool, book: Book) -> float:
    """Months before which no plant is called dead."""
    return book.defaults["verdict_suckers_months" if suckers else "verdict_months"].number


def due_dates(
    day: datetime.date, method: str, ingredients: tuple[str, ...], suckers: bool, book: Book
) -> dict[Look, datetime.date]:
    """When to look: the first day in leaf after the months that each look needs."""
    first = book.first_look(method, ingredients)
    least = verdict_months(suckers, book)
    months = {
        "first": min(float(first.months), least) if first else least,
        "verdict": least,
        "second year": max(book.defaults["second_year_months"].number, least + 6),
    }
    found: dict[Look, datetime.date] = {}
    for look in LOOKS:
        on = in_leaf(day + datetime.timedelta(days=round(months[look] * MONTH_D)), book)
        if on not in found.values():
            found[look] = on
    # Where the first look falls together with the verdict, it is the verdict.
    if found.get("first") is not None and "verdict" not in found:
        found = {"verdict": found["first"], **{k: v for k, v in found.items() if k != "first"}}
    return found


def in_leaf(day: datetime.date, book: Book) -> datetime.date:
    """The day, or the first one after it on which leaves show what lives."""
    first, last = (int(book.defaults[k].number) for k in ("leaf_first_month", "leaf_last_month"))
    if (day.month, day.day) < (first, 1):
        return datetime.date(day.year, first, 1)
    if (day.month, day.day) > (last, LEAVES_END_DAY):
        return datetime.date(day.year + 1, first, 1)
    return day


def _still_due(due: dict[Look, datetime.date], seen: Sequence[Seen]) -> tuple[tuple[Look, datetime.date], ...]:
    """Looks for which nobody has gone; a verdict is not given by a look that was too early for it."""
    early = datetime.timedelta(days=EARLY_D)
    return tuple(
        (look, on)
        for look, on in due.items()
        if not any(s.day >= on - early and (look == "first" or not s.early) for s in seen)
    )


def _seen(entry: Entry, treated: datetime.date, verdict: float) -> Seen:
    body, day = entry.body, day_of(entry)
    months = (day - treated).days / MONTH_D

    def count(name: str) -> int:
        return round(float(body.get(name, 0)))

    return Seen(
        entry.id, day, months, (day - treated).days < round(verdict * MONTH_D), count("dead"), count("resprouting"),
        count("gone"), count("not_found"), count("untreated"), body.get("sprouts"), body.get("tallest_m"),
        None if "seedlings" not in body else count("seedlings"), count("new_stems"),
    )  # fmt: skip
