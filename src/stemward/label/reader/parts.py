"""The standard parts of a label, by the headings that 40 CFR 156 and EPA's Label Review Manual prescribe."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemward.label.reader.text import Box, Line

HEADINGS: tuple[tuple[str, str], ...] = (
    ("first aid", r"first aid|statement of practical treatment|primeros auxilios"),
    ("hazards to people", r"precautionary statements?|(precautionary statements?:? )?hazards? to humans( (and|&) domestic animals)?|declaraciones de precauci.n"),
    ("equipment", r"personal protective equipment( \(ppe\))?|ppe|user safety requirements?|engineering controls?( statement| requirements?)?"),
    ("advice to users", r"user safety recommendations?"),
    ("environment", r"environmental hazards?"),
    ("physical", r"physical (or|and) chemical hazards?|physical hazards?"),
    ("farm workers", r"agricultural use requirements?"),
    ("others", r"non-?agricultural use requirements?"),
    ("storage", r"storage (and|&) disposal|pesticide storage|pesticide disposal|container (handling|disposal)"),
    ("restrictions", r"(general |use |product |general use )?(restrictions|precautions|limitations)( and limitations)?|restrictions"),
    ("drift", r"spray drift( management| advisories)?|drift"),
    ("mixing", r"mixing( instructions| directions)?|tank ?mix(es|tures|ing)?|spray additives|adjuvants|surfactants"),
    ("cut stump", r"(cut[- ]?stump|cut[- ]?surface|stump)( treatments?| applications?| method)?"),
    ("basal bark", r"(low[- ]volume |streamline |conventional )?basal( bark)?( treatments?| applications?)?"),
    ("hack and squirt", r"(tree )?injection( treatments?| applications?)?|hack[- ]?(and|&|n)[- ]?squirt|frill( or girdle)?( treatments?)?"),
    ("foliar", r"(high[- ]volume |low[- ]volume |broadcast )?foliar( treatments?| applications?| sprays?)?|leaf sprays?"),
    ("plants", r"(woody )?(plants|species|brush|weeds)( species)? (controlled|suppressed)|target plants"),
    ("sites", r"(use )?sites|where to use|areas of use|application sites"),
    ("grazing", r"grazing( and haying)?( restrictions)?|haying|livestock"),
    ("warranty", r"(limitation of )?warranty( disclaimer)?( and limitation of liability)?|limitation of (remedies|liability)|conditions of sale"),
    ("directions", r"directions for use|instrucciones de uso|general information|product information"),
)  # fmt: skip
"""Parts with the headings under which they stand, as label.md lists their variants."""
_PATTERNS = tuple(
    (name, re.compile(rf"(?:[\d.]+\s+)?(?:{pattern})(?:\s*\(cont(?:inued|\.)\))?\s*:?", re.I))
    for name, pattern in HEADINGS
)
FRONT = "front"
MOST_SIGNS = 70
"""A longer line is no heading: engineering guess."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence with the part it stands in, its page, and the lines' places it goes over."""

    text: str
    part: str
    page: int
    boxes: tuple[Box, ...]


def part_of(line: Line, usual: float) -> str:
    """The part that a heading opens; "" for a line that is no heading."""
    text = line.text.strip()
    if len(text) > MOST_SIGNS:
        return ""
    prominent = text.isupper() or text.endswith(":") or line.size > 1.15 * usual or text.istitle()
    if not prominent:
        return ""
    return next((name for name, pattern in _PATTERNS if pattern.fullmatch(text)), "")


_END = re.compile(r"(?<=[^.\s][.!?])\s+(?=[A-Z0-9•\-–(])")
_SHORT = re.compile(
    r"\b(?:Reg|Est|No|Nos|U\.S|fl|oz|gal|lbs?|pt|qt|approx|max|min|vs|e\.g|i\.e|in|ft|Inc|Co|Fig|Sec|St)\.$", re.I
)
BULLET = re.compile(r"^[•▪■●◦*·\-–—]\s*")


def sentences_of(lines: Sequence[Line]) -> list[Sentence]:
    """All sentences in order, each in its part. Lines are joined over hyphens, columns and pages."""
    sizes = sorted(line.size for line in lines)
    usual = sizes[len(sizes) // 2] if sizes else 10.0
    pitch = _pitch(lines, usual)
    found: list[Sentence] = []
    part, held, over = FRONT, _Held(), 0
    for number, line in enumerate(lines):
        if over:
            over -= 1
            continue
        opened, over = _opened(lines, number, usual)
        if opened:
            found += held.close(part)
            part = opened
            continue
        over = 0
        alone = SIGNAL.fullmatch(line.text.strip()) or (held.last and SIGNAL.fullmatch(held.text.strip()))
        if alone or BULLET.match(line.text) or _apart(line, held, usual, pitch):
            found += held.close(part)
        held.add(line)
    return [*found, *held.close(part)]


def _opened(lines: Sequence[Line], number: int, usual: float) -> tuple[str, int]:
    """The part that a heading opens, which may go over up to three lines, and how many more lines it takes."""
    line = lines[number]
    text = line.text
    best = (part_of(line, usual), 0)
    for more in (1, 2):
        if number + more >= len(lines):
            break
        after = lines[number + more]
        if after.page != line.page or (text.isupper() != after.text.isupper()):
            break
        text = text[:-1] + after.text if text.endswith("-") and not COMPOUND.search(text) else f"{text} {after.text}"
        together = part_of(Line(line.page, text, line.box, line.size), usual)
        if together:
            best = (together, more)
    return best


def _pitch(lines: Sequence[Line], usual: float) -> float:
    """The usual distance of one line to the next, from middle to middle."""
    steps = sorted(
        step
        for one, other in pairwise(lines)
        if one.page == other.page and 0 < (step := _middle(other) - _middle(one)) < 3 * usual
    )
    return steps[len(steps) // 2] if steps else 1.4 * usual


def _middle(line: Line) -> float:
    return (line.box[1] + line.box[3]) / 2


def _apart(line: Line, held: "_Held", usual: float, pitch: float) -> bool:
    """True if a line begins something new: letters of another size, or a wider gap than between lines."""
    last = held.last
    if last is None or last.page != line.page:
        return False
    return abs(line.size - last.size) > 0.6 * usual or _middle(line) - _middle(last) > 1.35 * pitch


SIGNAL = re.compile(
    r"(?:Signal word:?\s*)?(?:DANGER|WARNING|CAUTION)(?:\s*[/–-]?\s*(?:PELIGRO|AVISO|PRECAUCI.N))?\s*[.:!]?"
)
COMPOUND = re.compile(
    r"(?:\d|\b(?:restricted|early|chemical|long|non|re|rights|of|cut|low|high|post|pre|hack|and|oil|water|medium|one|two))-$",
    re.I,
)
"""Before a hyphen at a line's end that belongs to the word; after any other word it only parts the word."""


class _Held:
    """Lines of a paragraph while they are gathered."""

    def __init__(self) -> None:
        self.text = ""
        self.spans: list[tuple[int, int, Line]] = []
        self.last: Line | None = None

    def add(self, line: Line) -> None:
        text = BULLET.sub("", line.text)
        if self.text.endswith("-") and text[:1].islower() and not COMPOUND.search(self.text):
            self.text = self.text[:-1]
        elif self.text.endswith("-") and COMPOUND.search(self.text):
            pass
        elif self.text:
            self.text += " "
        start = len(self.text)
        self.text += text
        self.spans.append((start, len(self.text), line))
        self.last = line

    def close(self, part: str) -> list[Sentence]:
        """The paragraph's sentences, and an empty paragraph to go on with."""
        found, start = [], 0
        for end in [*(m.end() for m in _END.finditer(self.text)), len(self.text)]:
            text = self.text[start:end].strip()
            if _SHORT.search(text) and end < len(self.text):
                continue
            over = [line for a, b, line in self.spans if a < end and b > start]
            if text and over:
                found.append(
                    Sentence(text, part, over[0].page, tuple(line.box for line in over if line.page == over[0].page))
                )
            start = end
        self.text, self.spans, self.last = "", [], None
        return found
