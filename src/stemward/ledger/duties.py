"""Which rule sets ask for a record, what it lacks for each, by when, and how long it is kept."""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from stemward.handbook import Book
from stemward.handbook.record_rules import RecordRule, Wanted
from stemward.kinds import Product, Tract
from stemward.label import Situation, resolve
from stemward.ledger.records import Record

Answer = Literal["yes", "no", "unknown"]


@dataclass(frozen=True, slots=True)
class Duty:
    """One rule set that asks for a record. certain: False where it is not known whether it does.

    missing: fields it asks for that are empty. in_part: empty fields it asks for in some cases. due: the last day for
    writing it, None where not known. keep_until: the first day on which it need not be kept, None where not known.
    """

    rule: RecordRule
    certain: bool
    missing: tuple[str, ...]
    in_part: tuple[str, ...]
    due: datetime.date | None
    keep_until: datetime.date | None


def duties_of(record: Record, tract: Tract, book: Book) -> tuple[Duty, ...]:
    """Every rule set that asks, or may ask, for this record, in the handbook's order."""
    restricted = restricted_use(next((p for p in tract.shelf if p.id == record.product), None), tract.state)
    found = []
    for rule in book.record_rules:
        asks = _asks(rule, record, tract, restricted)
        if asks != "no":
            missing, in_part = lacking(rule.wanted, record, tract)
            due = None if rule.within_d is None else record.day + datetime.timedelta(days=rule.within_d)
            keep = None if rule.keep_y is None else years_on(record.day, rule.keep_y)
            found.append(Duty(rule, asks == "yes", missing, in_part, due, keep))
    return tuple(found)


def restricted_use(product: Product | None, state: str) -> Answer:
    """Whether the label, as read, says that the product is for restricted use."""
    fact = resolve(product.facts, "restricted use", Situation(state=state)).fact if product else None
    return "unknown" if fact is None else "yes" if fact.value == "yes" else "no"


def _asks(rule: RecordRule, record: Record, tract: Tract, restricted: Answer) -> Answer:
    answers = [_who(rule, tract.who, restricted), _where(rule, record, tract)]
    if rule.state and tract.state and rule.state != tract.state:
        return "no"
    if rule.state and not tract.state:
        return "no"
    if not rule.in_force(record.day):
        return "no"
    if rule.restricted_only:
        answers.append(restricted)
    return "no" if "no" in answers else "unknown" if "unknown" in answers else "yes"


def _who(rule: RecordRule, who: str, restricted: Answer) -> Answer:
    if who in rule.who:
        return "yes"
    if f"{who}-restricted" in rule.who:
        return restricted
    return "unknown" if who in ("unknown", "adviser") else "no"


def _where(rule: RecordRule, record: Record, tract: Tract) -> Answer:
    patch = next((p for p in tract.patches if p.id == record.patch), None)
    if rule.when == "woods":
        return "yes" if patch is None or "woods" in patch.places else "no"
    if rule.when == "for sale":
        return "unknown" if patch is None else patch.answer("for_sale")
    return "yes"


def lacking(wanted: Iterable[Wanted], record: Record, tract: Tract) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Fields that a rule asks for and that are empty: those always asked for, and those asked for in some cases.

    Of alternatives one that is whole is enough; else the one that lacks least is named.
    """
    missing: list[str] = []
    in_part: list[str] = []
    choices: dict[str, dict[str, list[str]]] = {}
    for one in wanted:
        if one.either:
            group, number = one.either.split(":")
            lacks = choices.setdefault(group, {}).setdefault(number, [])
            if not record.has(one.field):
                lacks.append(one.field)
        elif not record.has(one.field):
            needed = _needed(one, record, tract)
            if needed != "no":
                (missing if one.always and needed == "yes" else in_part).append(one.field)
    for numbers in choices.values():
        least = min(len(lacks) for lacks in numbers.values())
        missing += next(lacks for lacks in numbers.values() if len(lacks) == least)
    return tuple(dict.fromkeys(missing)), tuple(dict.fromkeys(in_part))


def _needed(one: Wanted, record: Record, tract: Tract) -> Answer:
    if one.when == "broadcast":
        methods = record.values.get("method") or ()
        return "yes" if "foliar" in methods else "unknown" if not methods else "no"
    if one.when == "for sale":
        patch = next((p for p in tract.patches if p.id == record.patch), None)
        return "unknown" if patch is None else patch.answer("for_sale")
    return "yes"


def years_on(day: datetime.date, years: int) -> datetime.date:
    """The same day so many years later; March 1 for February 29."""
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return datetime.date(day.year + years, 3, 1)


def missing_of(duties: Iterable[Duty]) -> dict[str, tuple[str, ...]]:
    """Every field that is missing, with the ids of the rules that ask for it."""
    found: dict[str, list[str]] = {}
    for duty in duties:
        for field in duty.missing:
            found.setdefault(field, []).append(duty.rule.id)
    return {field: tuple(ids) for field, ids in found.items()}


def due_of(duties: Iterable[Duty]) -> datetime.date | None:
    """The strictest day for writing it."""
    return min((d.due for d in duties if d.due), default=None)


def keep_until_of(duties: Iterable[Duty]) -> datetime.date | None:
    """The longest time for keeping it."""
    return max((d.keep_until for d in duties if d.keep_until), default=None)
