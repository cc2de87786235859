"""Sentences of invented labels and what a careful person reads from each: the phrases, their split, the numbers.

The phrases stand in bench/shapes/*.txt, a line each:

    == group | part of the label                 heads the lines that follow
    text with {numbers} => kind: value [role=mixer, site=woods, state=ME]; kind: value
    @part text => -                              another part; "-" where nothing is stated: a decoy

A scope of two sites is written woods+pasture. "?" before a fact: a person may or may not read it there, so it counts neither way. "*" as value: the sentence itself.
"#list a // b" prints a lead and points, "#table a & b // c & d" a ruled table with a head. A fact that stands in the
part of a method is for that method. A third of the lines of each group is held back from whoever writes the reader;
so do not open that folder if you are to write it.
"""

import hashlib
import random
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from label_numbers import drawn

FOLDER = Path(__file__).parent / "shapes"
SEED = "stemward labels"
METHOD_PARTS = ("cut stump", "basal bark", "hack and squirt", "foliar")
FOR_ALL = ("method", "method forbidden", "only listed methods", "plant", "site", "site forbidden")
"""Kinds that are for the whole label wherever they stand."""

Scope = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Fact:
    """What a sentence states. counts: False where it may be read or not."""

    kind: str
    value: str
    scope: Scope = ()
    counts: bool = True


@dataclass(frozen=True, slots=True)
class Shape:
    """A sentence with places for numbers, where it stands, and what it says. decoy: it says nothing that is asked."""

    group: str
    part: str
    text: str
    says: tuple[Fact, ...]
    held_back: bool = False

    @property
    def decoy(self) -> bool:
        """True if nothing is to be read from it."""
        return not any(fact.counts for fact in self.says)


@dataclass(frozen=True, slots=True)
class Printed:
    """A shape with its numbers filled in."""

    shape: Shape
    text: str
    says: tuple[Fact, ...]

    @property
    def plain(self) -> str:
        """The words alone, as they stand on the page."""
        return re.sub(r"\s+", " ", re.sub(r"^#(list|table) ", "", self.text).replace(" // ", " ").replace(" & ", " "))

    @property
    def pieces(self) -> tuple[str, ...]:
        """What a reader may take for a sentence of it: the whole, each row, point and sentence of two words or more."""
        rows = re.split(r" // |(?<=[a-z)]\.) ", re.sub(r"^#(list|table) ", "", self.text).replace(" & ", " "))
        return (self.plain, *(row for row in rows if len(row.split()) > 1))


def _fact(text: str, part: str) -> Fact:
    found = re.fullmatch(r"(\??)([a-z ]+): (.+?)(?: \[([^\]]*)\])?", text.strip())
    if found is None:
        raise ValueError(f"not a fact: {text}")
    scope = dict(one.strip().split("=") for one in found[4].split(",")) if found[4] else {}
    if part in METHOD_PARTS and found[2] not in FOR_ALL:
        scope.setdefault("method", part)
    return Fact(found[2], found[3], tuple(sorted(scope.items())), not found[1])


def _line(line: str, group: str, part: str) -> Shape:
    text, facts = line.rsplit(" => ", 1)
    if text.startswith("@"):
        part = next(p for p in PARTS if text[1:].startswith(p + " "))
        text = text[len(part) + 2 :]
    says = () if facts.strip() == "-" else tuple(_fact(one, part) for one in re.split(r"; (?=\??[a-z ]+: )", facts))
    return Shape(group, part, text, says)


PARTS = (
    "front", "aid", "equipment", "environment", "farm", "others", "storage", "restrictions", "sites", "directions",
    "mixing", "weather", "grazing", "species", *METHOD_PARTS,
)  # fmt: skip


def _rank(shape: Shape) -> str:
    return hashlib.sha256(f"{SEED} {shape.text}".encode()).hexdigest()


def split(shapes: list[Shape]) -> list[Shape]:
    """A group's shapes, a third of those that state something and a third of the decoys held back."""
    done = []
    for decoy in (False, True):
        some = sorted((s for s in shapes if s.decoy is decoy), key=_rank)
        least = round(len(some) / 3)
        done += [Shape(s.group, s.part, s.text, s.says, n < least) for n, s in enumerate(some)]
    return done


@cache
def all_shapes() -> tuple[Shape, ...]:
    """Every shape of every group, split."""
    groups: dict[str, list[Shape]] = {}
    for path in sorted(FOLDER.glob("*.txt")):
        group = part = ""
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.startswith("== "):
                group, part = (word.strip() for word in line[3:].split("|"))
                groups[group] = []
            elif line:
                groups[group].append(_line(line, group, part))
    return tuple(shape for some in groups.values() for shape in split(some))


def groups() -> tuple[str, ...]:
    """The names of all groups, in the order of the files."""
    return tuple(dict.fromkeys(shape.group for shape in all_shapes()))


def printed(shape: Shape, rng: random.Random) -> Printed:
    """The shape with numbers drawn at random; equal names stand for equal numbers in text and facts."""
    numbers = drawn(rng)

    def filled(text: str) -> str:
        return re.sub(r"\{(\w+)\}", lambda m: str(numbers[m[1]]), text)

    text = filled(shape.text)
    says = tuple(
        Fact(f.kind, text if f.value == "*" else filled(f.value), tuple((k, filled(v)) for k, v in f.scope), f.counts)
        for f in shape.says
    )
    return Printed(shape, text, says)
