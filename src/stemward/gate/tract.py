"""tract.toml, choices.toml and records.jsonl: the land's names and answers, what was chosen, what happened."""

import datetime
import json
from collections.abc import Callable, Collection
from dataclasses import dataclass
from typing import Any

from stemward.gate.problems import Problems
from stemward.gate.toml import Node, parse
from stemward.kinds import (
    CARRIERS,
    METHODS,
    PLACES,
    SITE_QUESTIONS,
    Choice,
    Entry,
    MeasureOwned,
    Patch,
    Person,
    Soil,
    Vessel,
)
from stemward.label.facts import EQUIPMENT, VESSELS

TRACT, CHOICES, RECORDS = "tract.toml", "choices.toml", "records.jsonl"
WHO = ("own", "hire", "public", "adviser", "unknown")
ANSWERS = ("yes", "no", "unknown")
DOES = ("mix", "apply", "saw")
MORE_GEAR = ("hard hat", "ear protection", "chaps", "mesh visor", "saw gloves")


@dataclass(frozen=True)
class TractFile:
    """What tract.toml holds, before outlines and stems are joined to it."""

    name: str
    place: str
    state: str
    time_zone: str
    who: str
    invented: bool
    kept_asked: tuple[str, ...]
    patches: tuple[Patch, ...]
    people: tuple[Person, ...]
    vessels: tuple[Vessel, ...]
    measures: tuple[MeasureOwned, ...]
    emergency: tuple[tuple[str, str], ...]


def read_tract(text: str, states: Collection[str], problems: Problems) -> TractFile | None:
    """The tract's own file, or None where it is not TOML; other problems are noted and reading goes on."""
    root = parse(text, TRACT, problems)
    if root is None:
        return None
    root.known(
        "name", "place", "state", "time_zone", "who", "invented", "kept_asked", "emergency",
        "patches", "people", "vessels", "measures",
    )  # fmt: skip
    state = root.word("state").upper()
    if state and state not in states:
        root.complain("state.unknown", "state", "WI", typed=state[:20])
    patches = tuple(_patch(node) for node in root.tables("patches"))
    if not patches:
        root.complain("key.missing", "patches", "[[patches]]")
    _once(root, "patches", [p.id for p in patches])
    asked = root.words("kept_asked")
    for patch in set(asked) - {p.id for p in patches}:
        root.complain("patch.unknown", "kept_asked", ", ".join(p.id for p in patches), typed=patch[:40])
    aid = root.table("emergency")
    return TractFile(
        root.word("name", required=True),
        root.word("place"),
        state,
        root.word("time_zone") or "UTC",
        root.word("who", choices=WHO) or "unknown",
        root.truth("invented"),
        asked,
        patches,
        tuple(_person(node) for node in root.tables("people")),
        tuple(_vessel(node) for node in root.tables("vessels")),
        tuple(_measure(node) for node in root.tables("measures")),
        tuple((key, aid.word(key)) for key in aid.data),
    )


def _once(root: Node, key: str, ids: list[str]) -> None:
    for place, name in enumerate(ids):
        if name and name in ids[:place]:
            node = list(root.tables(key))[place]
            node.complain("id.twice", "id", typed=name, earlier=list(root.tables(key))[ids.index(name)].line("id"))


def _patch(node: Node) -> Patch:
    node.known("id", "name", "places", "area", "answers", "soil")
    answers = node.table("answers")
    answers.known(*SITE_QUESTIONS)
    soil = node.table("soil")
    soil.known("texture", "organic_matter", "over")
    name = node.word("id", required=True)
    return Patch(
        name,
        node.word("name") or name,
        node.words("places", PLACES),
        tuple((key, answers.word(key, choices=ANSWERS) or "unknown") for key in answers.data),  # type: ignore[misc]
        Soil(soil.word("texture"), soil.measure("organic_matter", "fraction", "frac"), soil.word("over")),
        None,
        node.measure("area", "area", "m2"),
    )


def _person(node: Node) -> Person:
    node.known("role", "does", "gear", "certified")
    return Person(
        node.word("role", required=True),
        node.words("does", DOES),
        node.words("gear", (*EQUIPMENT, *MORE_GEAR)),
        node.word("certified", choices=ANSWERS) or "unknown",  # type: ignore[arg-type]
    )


def _vessel(node: Node) -> Vessel:
    node.known("id", "capacity", "lining")
    capacity = _filled(node, "capacity")
    return Vessel(node.word("id", required=True), capacity, node.word("lining", choices=VESSELS) or "plastic")


def _filled(node: Node, key: str) -> int:
    amount = node.microlitres(key, required=True)
    if amount is not None and amount <= 0:
        node.complain("key.out_of_range", key, "24 fl oz", typed=str(node.data[key])[:40])
    return max(amount or 1, 1)


def _measure(node: Node) -> MeasureOwned:
    node.known("id", "mark", "capacity")
    mark, capacity = _filled(node, "mark"), _filled(node, "capacity")
    if mark > capacity:
        node.complain("key.out_of_range", "mark", "1/2 fl oz", typed=str(node.data.get("mark"))[:40])
    return MeasureOwned(node.word("id", required=True), mark, capacity, str(node.data.get("mark", "")))


def read_choices(
    text: str,
    patches: Collection[str],
    products: Collection[str],
    tools: Collection[str],
    find_species: Callable[[str], Any],
    problems: Problems,
) -> tuple[Choice, ...]:
    """What a person chose, with Latin names."""
    root = parse(text, CHOICES, problems)
    if root is None:
        return ()
    root.known("treat")
    made: dict[tuple[str, str], Choice] = {}
    for node in root.tables("treat"):
        node.known("patch", "species", "how", "product", "concentration", "carrier", "tool", "ring")
        found = find_species(node.word("species", required=True))
        if not hasattr(found, "latin"):
            near = ", ".join(common for common, _ in getattr(found, "candidates", ()))
            node.complain("species.unknown", "species", typed=str(node.data.get("species"))[:60], near=near)
            continue
        share = node.measure("concentration", "fraction", "frac")
        if share is not None and not 0 < share <= 1:
            node.complain("key.out_of_range", "concentration", "50 %", typed=str(node.data["concentration"])[:40])
        ring = node.measure("ring", "length", "cm")
        if ring is not None and ring <= 0:
            node.complain("key.out_of_range", "ring", "2 in", typed=str(node.data["ring"])[:40])
        choice = Choice(
            node.word("patch", required=True, choices=tuple(patches)),
            found.latin,
            node.word("how", required=True, choices=METHODS),
            node.word("product", choices=tuple(products)),
            share,
            node.word("carrier", choices=CARRIERS),
            node.word("tool", choices=tuple(tools)),
            ring,
        )
        if choice.how in METHODS[2:] and not node.data.get("product"):
            node.complain("key.missing", "product", ", ".join(products))
        if choice.how in METHODS[:2] and choice.product:
            node.complain("choice.no_product", "product")
        if (choice.patch, choice.species) in made:
            node.complain("choice.twice", "species", patch=choice.patch)
        made[(choice.patch, choice.species)] = choice
    return tuple(made.values())


def read_records(text: str, problems: Problems) -> tuple[Entry, ...]:
    """What happened, one JSON object a line."""
    made: dict[str, Entry] = {}
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        try:
            row = json.loads(line)
            entry = Entry(**row)
            datetime.datetime.fromisoformat(entry.at)
            if not isinstance(entry.body, dict) or not entry.id:
                raise ValueError("body")
            if entry.kind == "treated":
                {name: float(g) for name, g in entry.body["ae_g"].items()}
        except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
            problems.add("record.broken", RECORDS, number)
            continue
        if entry.id in made and made[entry.id] != entry:
            problems.add("id.twice", RECORDS, number, "id", typed=entry.id[:40], earlier=0)
        made[entry.id] = entry
    return tuple(made.values())
