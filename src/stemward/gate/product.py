"""shelf/*.toml: what is in a jug and what its label was read to say."""

import difflib
import re
from collections.abc import Mapping
from typing import Any

from stemward.gate.problems import Problems
from stemward.gate.toml import Node, parse
from stemward.kinds import (
    FORMULATIONS,
    STANDINGS,
    Container,
    Content,
    LabelFact,
    Product,
    Registration,
    Scope,
)
from stemward.label import FactKind
from stemward.units import UnitError, read

SCOPE_KEYS = ("method", "carrier", "site", "state", "part", "plants", "role", "stem", "dates")
FORCES = ("must", "should", "avoid")
_DAY = re.compile(r"(\d\d)-(\d\d)")


def read_product(text: str, file: str, kinds: Mapping[str, FactKind], problems: Problems) -> Product | None:
    """One product, or None with the problems noted."""
    before = len(problems)
    root = parse(text, file, problems)
    if root is None:
        return None
    root.known(
        "id", "name", "invented", "number", "formulation", "edition_label", "edition_jug",
        "ingredients", "containers", "registered", "facts",
    )  # fmt: skip
    contents = tuple(_content(node) for node in root.tables("ingredients"))
    if not contents:
        root.complain("key.missing", "ingredients", "[[ingredients]]")
    made = Product(
        root.word("id", required=True),
        root.word("name", required=True),
        root.truth("invented"),
        root.word("number"),
        root.word("formulation", required=True, choices=FORMULATIONS),  # type: ignore[arg-type]
        contents,
        tuple(fact for node in root.tables("facts") if (fact := _fact(node, kinds)) is not None),
        tuple(r for node in root.tables("registered") if (r := _registration(node)) is not None),
        tuple(_container(node) for node in root.tables("containers")),
        root.word("edition_label"),
        root.word("edition_jug"),
    )
    return made if len(problems) == before else None


def _content(node: Node) -> Content:
    node.known("ingredient", "form", "strength")
    strength = node.measure("strength", "strength", "g_l", required=True)
    if strength is not None and not 0 < strength <= 1500:
        node.complain("key.out_of_range", "strength", "4 lb ae/gal", typed=str(node.data["strength"])[:40])
    return Content(
        node.word("ingredient", required=True).lower(),
        node.word("form", required=True).lower(),
        strength or 0.0,
        str(node.data.get("strength", "")),
    )


def _container(node: Node) -> Container:
    node.known("id", "holds", "left")
    holds, left = node.microlitres("holds", required=True), node.microlitres("left")
    if holds is not None and left is not None and left > holds:
        node.complain("container.overfull", "left", str(node.data["holds"]), typed=str(node.data["left"])[:40])
    return Container(node.word("id", required=True), holds or 0, left)


def _registration(node: Node) -> Registration | None:
    node.known("state", "registered", "looked_by", "looked_on")
    day = node.day("looked_on")
    if day is None:
        node.complain("key.missing", "looked_on", "2026-10-03")
        return None
    return Registration(
        node.word("state", required=True),
        node.truth("registered"),
        node.word("looked_by", required=True),
        day,
    )


def _fact(node: Node, kinds: Mapping[str, FactKind]) -> LabelFact | None:
    node.known(
        "kind", "says", "standing", "of", "page", "words", "force", "scope",
        "read_by", "read_on", "proposed", "not_what_it_says",
    )  # fmt: skip
    kind = kinds.get(str(node.data.get("kind", "")))
    if kind is None:
        near = difflib.get_close_matches(str(node.data.get("kind", "")), kinds, n=1, cutoff=0.5)
        node.complain("fact.unknown_kind", "kind", near[0] if near else "", typed=str(node.data.get("kind"))[:40])
        return None
    standing = node.word("standing", choices=STANDINGS) or "says"
    says = node.data.get("says")
    if standing == "says" and says is None:
        node.complain("fact.says_nothing", "says", 'standing = "not found"', kind=kind.name)
        return None
    if standing != "says" and says is not None:
        node.complain("fact.says_both", "says", kind=kind.name)
        return None
    value = _value(node, kind, "says" if standing == "says" else "of")
    day, by = node.day("read_on"), node.word("read_by")
    reading = "not what it says" if node.truth("not_what_it_says") else "read" if by and day else "proposed"
    if reading == "proposed" and not node.truth("proposed"):
        node.complain("fact.who_read", "read_by", 'read_by = "owner" and read_on = 2026-10-03')
    return LabelFact(
        kind.name,
        standing,  # type: ignore[arg-type]
        value,
        reading,  # type: ignore[arg-type]
        _scope(node.table("scope")),
        node.word("force", choices=FORCES) or "must",  # type: ignore[arg-type]
        "" if says is None else str(says),
        str(node.data.get("page", "")),
        node.word("words"),
        by,
        day,
    )


def _value(node: Node, kind: FactKind, key: str) -> float | str | None:
    typed = node.data.get(key)
    if typed is None:
        return None
    if not isinstance(typed, str):
        node.complain("key.not_text", key, '"50 %"' if kind.value == "number" else "")
        return None
    if kind.value == "number":
        return node.measure(key, kind.dimension, kind.unit)
    if kind.value == "yes-no":
        return node.word(key, choices=("yes", "no")) or None
    if kind.choices:
        return node.word(key, choices=kind.choices) or None
    return typed.strip() or None


def _scope(node: Node) -> Scope:
    node.known(*SCOPE_KEYS)
    lists: dict[str, Any] = {key: node.words(key) for key in SCOPE_KEYS[:7]}
    return Scope(**lists, stem_cm=_stem(node), dates=_dates(node))


def _stem(node: Node) -> tuple[float, float] | None:
    pair = node.words("stem")
    if not pair:
        return None
    try:
        low, high = (read(text, "length").to("cm") for text in pair)
    except (UnitError, ValueError):
        node.complain("scope.stem", "stem", '["0 in", "3 in"]')
        return None
    return (low, high) if low <= high else (high, low)


def _dates(node: Node) -> tuple[tuple[int, int], tuple[int, int]] | None:
    pair = node.words("dates")
    if not pair:
        return None
    found = [_DAY.fullmatch(text) for text in pair]
    days = [(int(m[1]), int(m[2])) for m in found if m]
    if len(days) != 2 or not all(1 <= month <= 12 and 1 <= day <= 31 for month, day in days):
        node.complain("scope.dates", "dates", '["04-01", "07-31"]')
        return None
    return days[0], days[1]
