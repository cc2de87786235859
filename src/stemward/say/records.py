"""Application records and oddities in words."""

import datetime
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.duties import Duty, due_of, missing_of
from stemward.ledger.odd import Odd
from stemward.ledger.records import HELD, Record
from stemward.say.en import records as words
from stemward.say.en.findings import PLACES
from stemward.say.en.stages import CARRIER, HOW
from stemward.say.numbers import System, figure, figures

Shown = Callable[[Mapping[str, Any], Record, Tract, Book, System], str]


def odd_words(one: Odd, units: System, names: Mapping[str, str] | None = None) -> str:
    """An oddity as one sentence. names: products by id."""
    values = dict(one.values)
    said = figures({k: v for k, v in values.items() if k not in ("line", "row", "last", "there", "many")}, units)
    said |= {k: str(v) for k, v in values.items() if k not in said and k in ("line", "row", "last", "there", "many")}
    if names and "product" in said:
        said["product"] = names.get(said["product"], said["product"])
    text = words.ODD[one.message].format(**said)
    before = f"{said['sheet']}. " if "sheet" in said else ""
    return f"{before}Line {values['line']}: {text}" if "line" in values else before + text


def field_words(record: Record, field: str, tract: Tract, book: Book, units: System) -> str:
    """What stands in one field of a record; "" where nothing does."""
    if record.filled.get(field):
        return record.filled[field]
    values = {k: v for k, v in record.values.items() if v not in (None, "", (), {})}
    show = _SHOWN.get(field)
    if not record.has(field) and field != "applied":
        return ""
    return show(values, record, tract, book, units) if show else ""


def record_rows(
    record: Record, duties: Sequence[Duty], tract: Tract, book: Book, units: System
) -> list[dict[str, Any]]:
    """Every field that holds something or is asked for, in the record's order, with who asks."""
    missing = missing_of(duties)
    part = {field for duty in duties for field in duty.in_part} - set(missing)
    rows = []
    for field in HELD:
        text = field_words(record, field, tract, book, units)
        asked = [d for d in duties if field in {w.field for w in d.rule.wanted if w.always}]
        if not (text or asked or field in part):
            continue
        rows.append(
            {
                "field": field,
                "name": words.FIELDS[field],
                "text": text,
                "missing": field in missing,
                "in_part": field in part,
                "hint": words.HINTS.get(field, ""),
                "asked": [(words.ASKS if d.certain else words.MAY_ASK).format(rule=d.rule.name) for d in asked],
                "was": (record.since or {}).get(field),
            }
        )
    return rows


def entry_words(body: Mapping[str, Any], units: System, names: Mapping[str, str]) -> str:
    """What an entry says, in one line: figures in the reader's units, things by their names (names: by id), long
    lists by how many they hold."""
    said = [
        f"{words.SAID.get(key, key.replace('_', ' '))}: {_said(key, value, units, names)}"
        for key, value in body.items()
        if key not in HIDDEN and value not in ("", [], {})
    ]
    return "; ".join(said)


HIDDEN = ("sheets", "records", "plan", "state")
MOST_NAMED = 6
"""Stems or amounts that are named one by one; of more only their number. A line's length, no source."""


def _said(key: str, value: Any, units: System, names: Mapping[str, str]) -> str:
    if key == "rows":
        return ", ".join(rows_words(value)) if len(value) <= MOST_NAMED else f"{len(value)} of them"
    if isinstance(value, Mapping):
        return ", ".join(
            f"{words.FIELDS.get(k, names.get(k, k))} {_said(key, v, units, names)}" for k, v in value.items()
        )
    if isinstance(value, list):
        return "; ".join(
            ", ".join(_said(k, v, units, names) for k, v in one.items()) if isinstance(one, Mapping) else str(one)
            for one in value
        )
    if isinstance(value, int | float):
        return figure(f"amount_{key}", value, units)
    return words.FATES.get(value, HOW.get(value, names.get(value, str(value))))


def rows_words(rows: Mapping[str, int]) -> list[str]:
    """Stems by id; of counted plants with how many."""
    return [stem if count == 1 else f"{stem}: {count}" for stem, count in rows.items()]


def state_words(record: Record, duties: Sequence[Duty], today: datetime.date) -> str:
    """Where a record stands, in a few words."""
    missing = missing_of(duties)
    if record.signed:
        key = "signed_since" if record.since else "signed"
        return words.STATES[key].format(name=record.signed[0])
    if not missing:
        return words.STATES["whole"]
    return words.STATES["open"].format(missing=len(missing), left=left_words(due_of(duties), today))


def left_words(due: datetime.date | None, today: datetime.date) -> str:
    """How many days are left."""
    if due is None:
        return words.LEFT["none"]
    days = (due - today).days
    key = "late" if days < 0 else "today" if days == 0 else "day" if days == 1 else "days"
    return words.LEFT[key].format(days=abs(days))


def _total(values: Mapping[str, Any], units: System) -> str:
    return figure("product_ml", values["product_ml"], units) if "product_ml" in values else ""


def _rate(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, book
    product = _total(values, units)
    if "area_m2" in values:
        return words.PER_AREA.format(product=product, area=figure("area_m2", values["area_m2"], units))
    return words.PER_STEMS.format(product=product, count=f"{values['stems']:g}")


def _area(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, book
    said = [figure("area_m2", values["area_m2"], units)] if "area_m2" in values else []
    if "stems" in values:
        said.append(words.STEM if values["stems"] == 1 else words.STEMS.format(count=f"{values['stems']:g}"))
    return "; ".join(said)


def _plants(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, units
    return "; ".join(
        f"{book.species[latin].common} ({latin})" if latin in book.species else latin for latin in values["plants"]
    )


def _applied(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del tract, book, units
    said = ", ".join(values.get("people", ()))
    return said or (words.ROLES.format(roles=", ".join(record.roles)) if record.roles else "")


def _wind(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, book
    if values.get("calm"):
        wind = words.CALM
    else:
        wind = words.WIND_FROM.format(wind=figure("wind_m_s", values["wind_m_s"], units), of=values["wind_from"])
    source = values.get("source", "")
    if source == "forecast" and "forecast_age_h" in values:
        return f"{wind}, {words.FORECAST_AGE.format(age=figure('age_h', values['forecast_age_h'], units))}"
    return f"{wind}, {words.WEATHER_FROM[source]}" if source else wind


def _one(name: str) -> Shown:
    def shown(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
        del record, tract, book
        value = values[name]
        return figure(name, value, units) if isinstance(value, int | float) else str(value)

    return shown


def _many(name: str, table: Mapping[str, str]) -> Shown:
    def shown(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
        del record, tract, book, units
        return "; ".join(table.get(one, one) for one in values[name])

    return shown


def _method(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    how = _many("method", HOW)(values, record, tract, book, units)
    tools = ", ".join(values.get("tool", ()))
    return f"{how}, with {tools}" if tools else how


def _strength(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, book
    share = figure("share_frac", values["concentration_frac"], units)
    carrier = values.get("carrier", "")
    return f"{share} {CARRIER.get(carrier, carrier)}".strip()


def _entry(values: Mapping[str, Any], record: Record, tract: Tract, book: Book, units: System) -> str:
    del record, tract, book
    return words.ENTRY_AFTER.format(hours=figure("entry_h", values["entry_h"], units))


_SHOWN: dict[str, Shown] = {
    "product": _one("product_name"), "number": _one("number"), "ingredients": _many("ingredients", {}),
    "total": _one("product_ml"), "mix": _one("mix_ml"), "strength": _strength, "carrier": _one("carrier"),
    "rate": _rate, "date": _one("date"), "start": _one("start"), "end": _one("end"), "location": _one("location"),
    "area": _area, "acres": _one("area_m2"), "site": _many("site", PLACES), "plants": _plants, "method": _method,
    "applied": _applied, "wind": _wind, "temperature": _one("temp_c"), "humidity": _one("humidity_frac"),
    "entry": _entry, "mixing_place": _one("mixing_place"), "leftover": _one("leftover"),
}  # fmt: skip
