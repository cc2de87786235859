"""records.jsonl: what was done, one entry a line."""

import datetime
import json
import math
import re
from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from stemward.gate.geojson import parse_json
from stemward.gate.problems import Problems
from stemward.gate.text import ODD_SIGNS, clean, near
from stemward.kinds import ENTRY_KINDS, Entry, Said

FILE = "records.jsonl"
COUNTED = ("treated",)
"""Kinds whose misspelling would make what was used vanish from a year's limit, so that it is refused."""
NOTED = ("plan issued", "set aside", "signed", "filled in", "weather", "noted")
"""Kinds that no plan reads."""

SCHEMA = 1
KEYS = ("id", "kind", "at", "offset", "by", "body", "received", "device", "corrects", "schema")
REQUIRED = ("id", "kind", "at", "offset", "by", "body")
TEXTS = ("id", "kind", "at", "by", "received", "device", "corrects")
MOST_SIGNS = 200
MOST_OFFSET_MIN = 14 * 60
EXAMPLE = '{"id": "e1", "kind": "treated", "at": "2026-10-03T09:30", "offset": -300, "by": "owner", "body": {}}'
_AT = re.compile(r"\d{4}-\d\d-\d\d(?:T\d\d:\d\d(?::\d\d(?:\.\d{1,6})?)?)?")


@dataclass
class _Row:
    """One line of the file while it is read."""

    data: dict[str, Any]
    line: int
    problems: Problems

    def add(self, message: str, key: str = "", expected: str = "", **values: str | float) -> None:
        self.problems.add(message, FILE, self.line, key, expected, **values)


def read_records(
    text: str, patches: Collection[str] | None, ingredients: Collection[str], problems: Problems
) -> tuple[Entry, ...]:
    """Read the entries. patches, ingredients: those of the tract and the shelf, to catch misspelled ones."""
    entries: list[Entry] = []
    seen: dict[str, int] = {}
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        if problems.enough:
            break
        data = parse_json(line, FILE, problems, number)
        if data is None:
            continue
        if not isinstance(data, dict):
            problems.add("record.not_an_object", FILE, number, expected=EXAMPLE)
            continue
        row = _Row(data, number, problems)
        entry = _entry(row)
        if entry is None:
            continue
        if entry.id in seen:
            row.add("record.id_twice", "id", id=entry.id, first_line=seen[entry.id])
        seen.setdefault(entry.id, number)
        _kind(row, entry, patches, ingredients)
        entries.append(entry)
    _corrections(entries, seen, problems)
    return tuple(entries)


def _entry(row: _Row) -> Entry | None:
    """The entry of a line; None if anything is missing or of the wrong type."""
    before = row.problems.count
    for key in row.data:
        if key not in KEYS and not row.problems.enough:
            row.add("record.unknown_key", clean(key), ", ".join(KEYS), name=clean(key), near=near(key, KEYS))
    for key in REQUIRED:
        if row.data.get(key) in (None, ""):
            row.add("record.missing_key", key, EXAMPLE)
    for key in TEXTS:
        _text_fits(row, key)
    _offset_fits(row)
    if not isinstance(row.data.get("body", {}), dict):
        row.add("record.wrong_type", "body", EXAMPLE, wanted="an object")
    schema = row.data.get("schema", SCHEMA)
    if schema != SCHEMA or isinstance(schema, bool):
        row.add("record.later_version", "schema", str(SCHEMA), schema=clean(str(schema)))
    if row.problems.count == before:
        _at_fits(row)
        _body_fits(row)
    return None if row.problems.count > before else Entry(**row.data)


def _text_fits(row: _Row, key: str) -> None:
    value = row.data.get(key, "")
    if not isinstance(value, str):
        row.add("record.wrong_type", key, EXAMPLE, wanted="text")
    elif len(value) > MOST_SIGNS:
        row.add("cell.too_long", key, length=len(value), most=MOST_SIGNS)
    elif ODD_SIGNS.search(value):
        row.add("cell.odd_sign", key)


def _offset_fits(row: _Row) -> None:
    offset = row.data.get("offset", 0)
    if not isinstance(offset, int) or isinstance(offset, bool) or abs(offset) > MOST_OFFSET_MIN:
        row.add("record.wrong_type", "offset", '"offset": -300', wanted="minutes from UTC")


def _at_fits(row: _Row) -> None:
    at = row.data["at"]
    try:
        if not _AT.fullmatch(at):
            raise ValueError
        datetime.datetime.fromisoformat(at)
    except ValueError:
        row.add("record.at", "at", '"at": "2026-10-03T09:30"', typed=clean(at))


def _body_fits(row: _Row) -> None:
    """Notes half characters anywhere in the body, with which it could not be written again."""
    try:
        json.dumps(row.data["body"], ensure_ascii=False).encode()
    except (UnicodeEncodeError, RecursionError):
        row.add("cell.odd_sign", "body")


def _kind(row: _Row, entry: Entry, patches: Collection[str] | None, ingredients: Collection[str]) -> None:
    """What was used counts towards the year's limit, so a misspelling must not make it vanish."""
    if entry.kind in ENTRY_KINDS:
        _said(row, entry)
    if entry.kind in COUNTED:
        _treated(row, entry, patches, ingredients)
    elif entry.kind in ENTRY_KINDS:
        return
    elif meant := near(entry.kind, COUNTED):
        row.add("record.kind_near", "kind", ", ".join(COUNTED), kind=clean(entry.kind), near=meant)
    else:
        row.problems.ask("ask.kind_not_counted", FILE, row.line, "kind", kind=clean(entry.kind))


def _said(row: _Row, entry: Entry) -> None:
    """Notes what is missing in the body and what is of another sort than its kind's table says."""
    for said in ENTRY_KINDS[entry.kind]:
        value = entry.body.get(said.name)
        if entry.kind in COUNTED and said.name in TOLD:
            continue
        if value is None:
            if said.needed:
                row.add("record.missing_key", f"body.{said.name}", said.sort)
        elif not _fits(said, value):
            row.add("record.wrong_type", f"body.{said.name}", WANTED[said.sort], wanted=_wanted(said))


TOLD = ("patch", "ae_g")
"""Parts that have checks of their own in what was treated."""
WANTED = {
    "text": '"note": "text"', "number": '"ml": 120', "figure": '"temp_c": -2',
    "texts": '["owner", "crew 1"]', "amounts": '{"glyphosate": 120}',
    "counts": '{"b7": 1}', "clock": '"09:40"', "choice": "", "words": '{"site": "woods"}',
    "draws": '[{"product": "jug-name", "jug": "jug 1", "ml": 120}]',
}  # fmt: skip
_CLOCK = re.compile(r"([01]\d|2[0-3]):[0-5]\d")


def _wanted(said: Said) -> str:
    return f"one of {', '.join(said.options)}" if said.options else f"as in {WANTED[said.sort]}"


def _fits(said: Said, value: Any) -> bool:
    """True if a value is of the sort that the table says."""
    if said.sort == "number":
        return _amount(value)
    if said.sort == "figure":
        return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
    if said.sort in ("text", "clock", "choice"):
        good = isinstance(value, str) and len(value) <= MOST_SIGNS and not ODD_SIGNS.search(value)
        return (
            good
            and (said.sort != "clock" or bool(_CLOCK.fullmatch(value)))
            and (said.sort != "choice" or value in said.options)
        )
    if said.sort == "texts":
        return isinstance(value, list) and all(isinstance(one, str) for one in value)
    if said.sort == "draws":
        return isinstance(value, list) and all(_draw(one) for one in value)
    if not isinstance(value, dict):
        return False
    if said.sort == "words":
        return all(isinstance(one, str) for one in value.values())
    whole = said.sort == "counts"
    return all(_amount(one) and (not whole or isinstance(one, int)) for one in value.values())


def _amount(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value < math.inf


def _draw(one: Any) -> bool:
    return (
        isinstance(one, dict)
        and isinstance(one.get("product"), str)
        and isinstance(one.get("jug"), str)
        and _amount(one.get("ml"))
    )


def _treated(row: _Row, entry: Entry, patches: Collection[str] | None, ingredients: Collection[str]) -> None:
    body = entry.body
    patch, used = body.get("patch"), body.get("ae_g")
    if not isinstance(patch, str) or (patches is not None and patch not in patches):
        shown, ids = clean(str(patch)), patches or ()
        row.add("record.unknown_patch", "body.patch", ", ".join(ids), patch=shown, near=near(shown, ids))
    if not isinstance(used, dict):
        row.add("record.wrong_type", "body.ae_g", '"ae_g": {"glyphosate": 120}', wanted="grams by ingredient")
        return
    for name, grams in used.items():
        if not isinstance(grams, int | float) or isinstance(grams, bool) or not 0 <= grams < math.inf:
            row.add("record.amount", "body.ae_g", '"ae_g": {"glyphosate": 120}', typed=clean(str(grams)))
        _ingredient_fits(row, name, ingredients)


def _ingredient_fits(row: _Row, name: str, ingredients: Collection[str]) -> None:
    """Notes an ingredient of the shelf in another spelling; asks about one that is only like it."""
    same = next((known for known in ingredients if _bare(known) == _bare(name)), "")
    if name in ingredients:
        return
    shown = clean(name)
    if same:
        row.add("record.ingredient_spelled", "body.ae_g", ", ".join(ingredients), ingredient=shown, near=same)
    elif meant := near(name, ingredients):
        problems = row.problems
        problems.ask("ask.ingredient_near", FILE, row.line, "body.ae_g", ingredient=shown, near=meant)


def _bare(name: str) -> str:
    return re.sub(r"[\W_]+", "", name.casefold())


def _corrections(entries: list[Entry], seen: dict[str, int], problems: Problems) -> None:
    for entry in entries:
        if entry.corrects == entry.id:
            problems.add("record.corrects_itself", FILE, seen[entry.id], "corrects")
        elif entry.corrects and entry.corrects not in seen:
            line = seen[entry.id]
            problems.add("record.corrects_nothing", FILE, line, "corrects", corrects=clean(entry.corrects))
