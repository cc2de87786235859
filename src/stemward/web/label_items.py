"""What is asked of a label, one fact at a time: which, in what order, what is read already."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from stemward.gate.label_pdf import proposed_from
from stemward.gate.proposed import usable
from stemward.label import KINDS
from stemward.label.facts import FactKind
from stemward.label.reader import Proposed
from stemward.say.en import shelf as words
from stemward.units import UnitError, read

COVER = "▒▒"
Fact = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Item:
    """One question about a label: a kind of fact, and where the reader found it, if it did.

    key: "p" and the place in the reading for what was found, "k-" and the kind for what was not, "s" and the number of
    a sentence for what a person makes a fact. values: as a person would type them. deciding: this plan leans on it.
    also: other pages on which the label says the same.
    """

    key: str
    kind: str
    values: tuple[str, ...] = ()
    page: int = 0
    boxes: tuple[tuple[float, ...], ...] = ()
    said: str = ""
    sure: str = ""
    force: str = "must"
    scope: tuple[tuple[str, tuple[str, ...]], ...] = ()
    deciding: bool = False
    also: tuple[int, ...] = ()

    @property
    def typed(self) -> bool:
        """True for figures that can hurt: they are typed before the reader's own are shown."""
        return KINDS[self.kind].typed

    @property
    def covered(self) -> str:
        """The label's words, with the figures covered where they have to be typed."""
        return re.sub(r"\d[\d.,/]*", COVER, self.said) if self.typed else self.said


def proposals(reading: Mapping[str, Any]) -> list[Proposed]:
    """The proposed facts of a kept reading."""
    return [proposed_from(row) for row in reading["proposed"]]


def items_of(reading: Mapping[str, Any], order: Sequence[str], deciding: Iterable[str]) -> list[Item]:
    """All questions about a label: kinds in the order given, of each what was found, else the kind alone.

    Facts of one kind out of one sentence are one question, since they are read at one place.
    """
    lead = set(deciding)
    found: dict[str, dict[object, Item]] = {}
    for number, one in enumerate(proposals(reading)):
        own = found.setdefault(one.kind, {})
        place = (one.page, one.words, one.scope) if KINDS[one.kind].many else number
        have = own.get(place)
        fits = usable([one])
        values = (one.value,) if fits else ()
        if have is None:
            own[place] = Item(
                f"p{number}", one.kind, values, one.page, one.boxes, one.words, one.sure, one.force, one.scope,
                one.kind in lead, _others(one),
            )  # fmt: skip
        else:
            own[place] = Item(
                have.key, have.kind, have.values + values, have.page, have.boxes, have.said,
                have.sure if have.sure == one.sure else "unsure", have.force, have.scope, have.deciding,
                tuple(sorted({*have.also, *_others(one)})),
            )  # fmt: skip
    rows: list[Item] = []
    for kind in order:
        own_items = list(found.get(kind, {}).values())
        rows += own_items or [Item(f"k-{kind.replace(' ', '-')}", kind, deciding=kind in lead)]
    return sorted(rows, key=lambda item: not item.deciding)


def _others(one: Proposed) -> tuple[int, ...]:
    return tuple(sorted({place.page for place in one.also} - {one.page}))


def sentence_item(reading: Mapping[str, Any], number: int, kind: str) -> Item | None:
    """A sentence that a person makes a fact of; None if there is none of that number."""
    sentences = reading["sentences"]
    if not 0 <= number < len(sentences) or kind not in KINDS:
        return None
    one = sentences[number]
    boxes = tuple(tuple(box) for box in one["boxes"])
    return Item(f"s{number}", kind, (), one["page"], boxes, one["text"])


def of_item(fact: Fact, item: Item) -> bool:
    """True if a fact of the shelf came from a question: the same words of the label, or its kind where it has none."""
    if fact["kind"] != item.kind:
        return False
    if fact.get("standing", "says") != "says" or not item.said or not fact.get("words"):
        return not item.said or _scope(fact) == dict(item.scope)
    return bool(str(fact["words"]) == item.said[:500])


def _scope(fact: Fact) -> dict[str, tuple[str, ...]]:
    return {name: tuple(values) for name, values in fact.get("scope", {}).items() if isinstance(values, list | tuple)}


def alike(kind: FactKind, one: str, other: str) -> bool:
    """True if two values as typed come to the same: "24 h" and "1 day", "Yes" and "yes"."""
    if kind.value != "number":
        return one.strip().lower() == other.strip().lower()
    bare = "" if kind.dimension == "count" else None
    try:
        return read(one, kind.dimension, bare).metric == read(other, kind.dimension, bare).metric
    except UnitError:
        return False


def answered(item: Item, facts: Iterable[Fact]) -> bool:
    """True if a person has read what a question asks: at this place, or elsewhere with the same outcome."""
    own = [fact for fact in facts if "read_by" in fact and of_item(fact, item)]
    if not item.said or any(fact.get("words") == item.said[:500] or "standing" in fact for fact in own):
        return bool(own)
    kind, says = KINDS[item.kind], [str(fact.get("says", "")) for fact in own]
    return bool(item.values) and all(any(alike(kind, value, said) for said in says) for value in item.values)


def next_open(items: Sequence[Item], item: Item, facts: Sequence[Mapping[str, Any]]) -> Item | None:
    """The next question that is open after this one, going round to the beginning."""
    at = next((n for n, one in enumerate(items) if one.key == item.key), 0)
    round_about = [*items[at + 1 :], *items[: at + 1]]
    return next((one for one in round_about if one.key != item.key and not answered(one, facts)), None)


def ask_words(kind: str) -> str:
    """How a kind of fact is asked for."""
    return words.ASK.get(kind, kind[:1].upper() + kind[1:])


def differences(before: Mapping[str, Any], after: Mapping[str, Any]) -> list[dict[str, Any]]:
    """What two readings of a label hold otherwise: kind, scope, values and pages then and now."""
    was, now = _by_place(before), _by_place(after)
    rows = []
    for key in [*was, *(key for key in now if key not in was)]:
        old, new = was.get(key, []), now.get(key, [])
        if {one.value.lower() for one in old} != {one.value.lower() for one in new}:
            rows.append({"kind": key[0], "scope": dict(key[1]), "was": old, "now": new})
    return rows


NOT_COMPARED = ("label edition", "establishment number")


def _by_place(reading: Mapping[str, Any]) -> dict[tuple[str, tuple[tuple[str, tuple[str, ...]], ...]], list[Proposed]]:
    found: dict[tuple[str, tuple[tuple[str, tuple[str, ...]], ...]], list[Proposed]] = {}
    for one in proposals(reading):
        if one.kind not in NOT_COMPARED:
            found.setdefault((one.kind, one.scope), []).append(one)
    return found
