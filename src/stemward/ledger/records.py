"""Application records: what the law and good practice ask to be written down, one a product, patch and day."""

import datetime
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from stemward.kinds import Entry, Product, Tract
from stemward.label import Situation, resolve
from stemward.ledger.in_force import day_of, in_force, when
from stemward.ledger.mixes import Batch, batches

HELD: Mapping[str, tuple[tuple[str, ...], ...]] = {
    "product": (("product_name",),),
    "number": (("number",),),
    "ingredients": (("ingredients",),),
    "total": (("product_ml",),),
    "mix": (("mix_ml",),),
    "strength": (("concentration_frac",),),
    "carrier": (("carrier",),),
    "rate": (("product_ml", "area_m2"), ("product_ml", "stems")),
    "date": (("date",),),
    "start": (("start",),),
    "end": (("end",),),
    "location": (("location",),),
    "land_description": (),
    "address": (),
    "area": (("area_m2",), ("stems",)),
    "acres": (("area_m2",),),
    "site": (("site",),),
    "plants": (("plants",),),
    "method": (("method",),),
    "applied": (("people",),),
    "certified": (),
    "for_whom": (),
    "wind": (("wind_m_s", "wind_from"), ("calm",)),
    "temperature": (("temp_c",),),
    "humidity": (("humidity_frac",),),
    "entry": (("entry_h",),),
    "mixing_place": (("mixing_place",),),
    "supplier": (),
    "sheet_kept": (),
    "leftover": (("leftover",),),
}
"""Every field of a record, in its order, with the values that fill it: any one of the groups, whole. A field without
a group is filled by hand. What a person fills in by hand fills any field."""


@dataclass(frozen=True, slots=True)
class Record:
    """One application record. values: metric figures and words by name, as far as known.

    filled: fields filled in by hand, by field. entries: ids that it follows from. anyway: why it was done though the
    plan stopped it. roles: people named by role only, whose full names are wanted. signed: who signed it and when.
    since: fields whose content differs from what was signed, with what was signed.
    """

    key: str
    day: datetime.date
    patch: str
    product: str
    values: Mapping[str, Any]
    filled: Mapping[str, str]
    entries: tuple[str, ...]
    anyway: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    signed: tuple[str, str] | None = None
    since: Mapping[str, str] | None = None

    def has(self, field: str) -> bool:
        """True if the field is filled."""
        if self.filled.get(field, "").strip():
            return True
        return any(all(self.values.get(name) not in (None, "", (), {}) for name in group) for group in HELD[field])


def key_of(day: datetime.date, patch: str, product: str) -> str:
    """Name of a record."""
    return f"{day.isoformat()}/{patch}/{product}"


def records(tract: Tract) -> tuple[Record, ...]:
    """All records of a tract, the oldest first, then by patch and product."""
    entries = in_force(tract.entries)
    made = batches(tract.entries)
    groups: dict[tuple[datetime.date, str, str], list[Entry]] = {}
    for entry in entries:
        if entry.kind == "treated":
            for product in _products(entry):
                groups.setdefault((day_of(entry), str(entry.body["patch"]), product), []).append(entry)
    return tuple(_record(tract, entries, made, *key, own) for key, own in sorted(groups.items()))


def _products(entry: Entry) -> tuple[str, ...]:
    named = entry.body.get("product_ml")
    return tuple(named) if named else tuple(filter(None, (str(entry.body.get("product", "")),)))


def _record(
    tract: Tract, entries: tuple[Entry, ...], made: Mapping[str, Batch], day: datetime.date, patch: str, product: str,
    own: list[Entry],
) -> Record:  # fmt: skip
    jug = next((p for p in tract.shelf if p.id == product), None)
    values = _of_entries(own, product) | _of_land(tract, patch, jug, product, own) | {"date": day.isoformat()}
    values |= _weather(entries, day, patch, values.get("start", ""))
    values |= _of_batches(own, made, entries)
    key = key_of(day, patch, product)
    filled = _filled(entries, day, patch, product)
    people = values.get("people", ())
    roles = tuple(name for name in people if name in {person.role for person in tract.people})
    if roles:
        values = {**values, "people": () if len(roles) == len(people) else people}
    record = Record(
        key, day, patch, product, values, filled, tuple(e.id for e in own),
        tuple(str(e.body["anyway"]) for e in own if e.body.get("anyway")), roles,
    )  # fmt: skip
    return _with_signature(record, entries)


def _of_entries(own: list[Entry], product: str) -> dict[str, Any]:
    bodies = [entry.body for entry in own]
    timed = [entry.at[11:16] for entry in own if "T" in entry.at]
    found: dict[str, Any] = {
        "start": min(timed, default=""),
        "end": max((str(b["until"]) for b in bodies if b.get("until")), default=""),
        "method": tuple(dict.fromkeys(str(b["method"]) for b in bodies if b.get("method"))),
        "plants": tuple(dict.fromkeys(str(b["species"]) for b in bodies if b.get("species"))),
        "tool": tuple(dict.fromkeys(str(b["tool"]) for b in bodies if b.get("tool"))),
        "carrier": next((str(b["carrier"]) for b in bodies if b.get("carrier")), ""),
        "people": tuple(dict.fromkeys(name for b in bodies for name in b.get("people", ()))),
        "concentration_frac": next((b["concentration_frac"] for b in bodies if b.get("concentration_frac")), None),
        "ae_g": _added(bodies, "ae_g"),
    }
    for name in ("stems", "mix_ml", "area_m2"):
        if any(name in b for b in bodies):
            found[name] = sum(b.get(name, 0) for b in bodies)
    if all(product in b.get("product_ml", {}) for b in bodies):
        found["product_ml"] = sum(b["product_ml"][product] for b in bodies)
    return found


def _added(bodies: Iterable[Mapping[str, Any]], name: str) -> dict[str, float]:
    total: dict[str, float] = {}
    for body in bodies:
        for key, amount in body.get(name, {}).items():
            total[key] = total.get(key, 0.0) + amount
    return total


def _of_land(tract: Tract, patch_id: str, jug: Product | None, product: str, own: list[Entry]) -> dict[str, Any]:
    patch = next((p for p in tract.patches if p.id == patch_id), None)
    found: dict[str, Any] = {
        "product_name": jug.name if jug else product,
        "number": jug.number if jug else "",
        "ingredients": tuple(c.ingredient for c in jug.contents) if jug else tuple(own[0].body["ae_g"]),
        "location": f"{tract.place}: {tract.name}, {patch.name if patch else patch_id}" if tract.place else "",
        "site": patch.places if patch else (),
    }
    if jug:
        hours = entry_h(jug, tract, [str(e.body.get("method", "")) for e in own])
        if hours is not None:
            found["entry_h"] = hours
    return found


def entry_h(jug: Product, tract: Tract, methods: Iterable[str]) -> float | None:
    """The longest entry interval that was read for these methods, hours; None where none was read."""
    facts = [resolve(jug.facts, "entry interval", Situation(method=m, state=tract.state)).fact for m in methods]
    hours = [fact.value / 3600 for fact in facts if fact is not None and isinstance(fact.value, float)]
    return max(hours, default=None)


def _weather(entries: tuple[Entry, ...], day: datetime.date, patch: str, start: str) -> dict[str, Any]:
    """The weather written down for the day, that of the patch and that nearest to the beginning before others."""
    seen = [e for e in entries if e.kind == "weather" and day_of(e) == day and e.body.get("patch", "") in ("", patch)]
    if not seen:
        return {}
    begun = datetime.datetime.fromisoformat(f"{day}T{start or '00:00'}")

    def far(entry: Entry) -> tuple[bool, float, str]:
        return (
            not entry.body.get("patch"),
            abs((datetime.datetime.fromisoformat(entry.at) - begun).total_seconds()),
            entry.id,
        )

    body = min(seen, key=far).body
    names = ("wind_m_s", "wind_from", "temp_c", "humidity_frac", "sky", "source", "forecast_age_h")
    found = {name: body[name] for name in names if name in body}
    return found | ({"calm": "yes"} if body.get("wind_m_s") == 0 else {})


def _of_batches(own: list[Entry], made: Mapping[str, Batch], entries: tuple[Entry, ...]) -> dict[str, Any]:
    names = dict.fromkeys(str(e.body["batch"]) for e in own if e.body.get("batch"))
    found: dict[str, Any] = {"batches": tuple(names)}
    places = [
        str(e.body["place"])
        for e in entries
        if e.kind == "batch mixed" and e.body["batch"] in names and e.body.get("place")
    ]
    if places:
        found["mixing_place"] = places[0]
    known = [made[name] for name in names if name in made]
    if known and not any(batch.open for batch in known):
        kept = [batch.kept_in for batch in known if batch.kept_in]
        found["leftover"] = f"kept in {', '.join(dict.fromkeys(kept))}" if kept else "used up or accounted for"
    return found


def _filled(entries: tuple[Entry, ...], day: datetime.date, patch: str, product: str) -> dict[str, str]:
    """Fields filled in by hand for the day, the later over the earlier, what is for one record over what is for all."""
    found: list[tuple[int, int, dict[str, str]]] = []
    for number, entry in enumerate(entries):
        body = entry.body
        if entry.kind != "filled in" or body["day"] != day.isoformat():
            continue
        if body.get("patch", patch) == patch and body.get("product", product) == product:
            found.append(("patch" in body, number, body["values"]))
    return {field: text for _, _, values in sorted(found, key=lambda one: one[:2]) for field, text in values.items()}


def content(record: Record) -> dict[str, str]:
    """What a record says, field by field, as text that does not change with units: what a signature is for."""
    said = {}
    for field, groups in HELD.items():
        names = dict.fromkeys(name for group in groups for name in group)
        own = {name: record.values[name] for name in names if record.values.get(name) not in (None, "", (), {})}
        if own or field in record.filled:
            text = record.filled.get(field) or json.dumps(own, sort_keys=True)
            said[field] = text
    return said


def _with_signature(record: Record, entries: tuple[Entry, ...]) -> Record:
    signed = [e for e in entries if e.kind == "signed" and record.key in e.body["records"]]
    if not signed:
        return record
    last = max(signed, key=lambda e: (when(e), e.id))
    was = json.loads(last.body["records"][record.key])
    now = content(record)
    since = {field: was.get(field, "") for field in HELD if was.get(field, "") != now.get(field, "")}
    return replace(record, signed=(str(last.body["name"]), last.at), since=since)


def as_signed(found: Iterable[Record]) -> dict[str, str]:
    """What a signature's entry keeps of each record, by the record's key."""
    return {record.key: json.dumps(content(record), sort_keys=True) for record in found}
