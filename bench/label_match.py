"""Whether a proposed fact is the one that was printed: values as quantities, scope in full, and the right sentence."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Protocol

from label_shapes import Fact, Printed

SCOPES = ("method", "site", "state", "role")
"""What a fact is for is compared on these; a further narrowing (carrier, dates) is not held against the reader."""
SENTENCES = ("container", "disposal", "first aid", "environmental hazard")
PHRASES = ("season forbidden", "mix partner forbidden", "adjuvant required", "adjuvant forbidden", "mix partner")
ANY = "any"
"""Stands for whatever value is read."""
NEAR = 0.6
"""Share of the words of the shorter text in the other from which on a proposal points at a sentence."""
SAME = 0.005
TWIN = 0.06
"""Relative difference up to which two figures are the same, and are one figure in two units: labels round."""
_UNITS = {
    "%": ("fraction", 0.01), "minute": ("time", 60), "min": ("time", 60), "hour": ("time", 3600), "hr": ("time", 3600),
    "hrs": ("time", 3600), "h": ("time", 3600), "day": ("time", 86400),
    "week": ("time", 604800), "month": ("months", 1), "year": ("months", 12), "in": ("length", 2.54),
    "ft": ("length", 30.48), "yd": ("length", 91.44), "mi": ("length", 160934.4), "cm": ("length", 1),
    "m": ("length", 100), "mph": ("speed", 0.44704), "km/h": ("speed", 1 / 3.6), "lb/acre": ("rate", 0.112085),
    "kg/ha": ("rate", 0.1), "gal/acre": ("volume rate", 128), "qt/acre": ("volume rate", 32),
    "pt/acre": ("volume rate", 16), "fl oz/acre": ("volume rate", 1), "lb/gal": ("strength", 119.826),
    "g/l": ("strength", 1), "": ("count", 1),
}  # fmt: skip


class Proposal(Protocol):
    """What the reader gives: see stemward.gate.label_pdf.read_label."""

    kind: str
    value: str
    words: str
    sure: str
    scope: tuple[tuple[str, tuple[str, ...]], ...]


def _measure(text: str) -> tuple[str, float, str] | None:
    found = re.fullmatch(r"(-?[\d.,]+)\s*(.*)", text.strip())
    if found is None or not re.fullmatch(r"-?[\d,]*\.?\d+", found[1]):
        return None
    number, unit = float(found[1].replace(",", "")), re.sub(r"\b(ae|ai)\b|°", "", found[2].lower()).strip()
    if unit in ("f", "c"):
        return "heat", (number - 32) / 1.8 if unit == "f" else number, unit
    unit = re.sub(r"\s*/\s*", "/", re.sub(r"(?<=\w\w\w)s$", "", unit)).strip()
    dimension, factor = _UNITS.get(unit, (unit, 1))
    return dimension, number * factor, unit


def same_value(kind: str, printed: str, read: str) -> bool:
    """True if two values of a kind mean the same."""
    if printed == ANY:
        return True
    if kind in SENTENCES:
        return _shared(printed, read) >= 0.8 * min(len(_words(printed)), len(_words(read))) and len(_words(read)) > 1
    if kind in PHRASES:
        return bool(_words(read)) and (_words(printed) <= _words(read) or _words(read) <= _words(printed))
    one, other = _measure(printed), _measure(read)
    if one and other:
        return one[0] == other[0] and abs(one[1] - other[1]) <= SAME * max(abs(one[1]), abs(other[1]), 1e-9)
    return " ".join(printed.casefold().split()) == " ".join(read.casefold().split())


def twin(printed: str, read: str) -> bool:
    """True if the value read is the printed one in its other unit, as labels give in brackets."""
    one, other = _measure(printed), _measure(read)
    if not one or not other or one[0] != other[0] or one[2] == other[2]:
        return False
    return abs(one[1] - other[1]) <= (1.0 if one[0] == "heat" else TWIN * abs(one[1]))


def scope_of(one: Fact | Proposal) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What a fact is for, on the scopes that are compared."""
    rows = ((name, tuple(sorted(v.split("+") if isinstance(v, str) else v))) for name, v in one.scope)
    return tuple(sorted((name, values) for name, values in rows if name in SCOPES and values))


def same(fact: Fact, read: Proposal) -> bool:
    """True if kind, value and scope agree."""
    return fact.kind == read.kind and scope_of(fact) == scope_of(read) and same_value(fact.kind, fact.value, read.value)


@lru_cache(maxsize=20_000)
def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"[a-z0-9áéíóúñ]+(?:[.][0-9]+)?", text.casefold()))


def _shared(one: str, other: str) -> int:
    return len(_words(one) & _words(other))


def overlap(printed: str, read: str) -> float:
    """Share of the words of the shorter text that the other has too."""
    least = min(len(_words(printed)), len(_words(read)))
    return _shared(printed, read) / least if least else 0.0


@dataclass(slots=True)
class Score:
    """What became of one label's facts. missed: with all that was proposed of that kind from that sentence."""

    right: list[tuple[Printed, Fact, Proposal]] = field(default_factory=list)
    missed: list[tuple[Printed, Fact, list[Proposal]]] = field(default_factory=list)
    wrong: list[tuple[Printed | None, Proposal]] = field(default_factory=list)


def score(lines: Sequence[Printed], proposed: Iterable[Proposal], furniture: Sequence[str] = ()) -> Score:
    """Hold what was proposed against what was printed.

    A printed fact is found if a proposal with its kind, value and scope points at its sentence. A proposal is wrong if
    it is none of what its sentence states or may be read to state. furniture: further text on the label; that its
    headings name ways of treatment is true and counts neither way.
    """
    done = Score()
    where: dict[int, list[Proposal]] = {n: [] for n in range(len(lines))}
    for read in {(p.kind, p.value, p.scope, p.words): p for p in proposed}.values():
        ranks = [(overlap(line.plain, read.words), _shared(line.plain, read.words), n) for n, line in enumerate(lines)]
        near = [n for share, _, n in ranks if share >= NEAR]
        facts = [
            n for n, line in enumerate(lines)
            if any(same(f, read) for f in line.says) and any(overlap(p, read.words) >= NEAR for p in line.pieces)
        ]  # fmt: skip
        for n in facts:
            where[n].append(read)
        if facts:
            continue
        best = max(ranks, default=(0.0, 0, -1))
        if any(_named(lines[n], read) for n in near):
            continue
        if any(twin(f.value, read.value) for n in near for f in lines[n].says if f.kind == read.kind):
            continue
        other = max((overlap(text, read.words) for text in furniture), default=0.0)
        if best[0] >= NEAR and best[0] >= other:
            where[best[2]].append(read)
            if not (read.kind in SENTENCES and _stands_there(lines[best[2]], read)):
                done.wrong.append((lines[best[2]], read))
        elif not (read.kind == "method" and other >= NEAR):
            done.wrong.append((None, read))
    for n, line in enumerate(lines):
        for fact in line.says:
            if not fact.counts:
                continue
            found = next((read for read in where[n] if same(fact, read)), None)
            if found:
                done.right.append((line, fact, found))
            else:
                done.missed.append((line, fact, [read for read in where[n] if read.kind == fact.kind]))
    return done


_TEXT_PARTS = {
    "container": "storage", "disposal": "storage", "first aid": "aid", "environmental hazard": "environment",
}  # fmt: skip


def _stands_there(line: Printed, read: Proposal) -> bool:
    """A sentence of another kind that stands in a part that is read sentence by sentence: not held against anyone."""
    return line.shape.part == _TEXT_PARTS[read.kind]


def _named(line: Printed, read: Proposal) -> bool:
    """A sentence with a limit for a site or a method does name that site or method."""
    return read.kind in ("site", "method") and any((read.kind, (read.value,)) in _parts_of(fact) for fact in line.says)


def _parts_of(fact: Fact) -> list[tuple[str, tuple[str, ...]]]:
    return [(name, (value,)) for name, values in scope_of(fact) for value in values]
