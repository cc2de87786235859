"""The standard parts of a label, by the headings that 40 CFR 156 and EPA's Label Review Manual prescribe."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from stemward.label.reader.phrases import PLANT_NOUNS
from stemward.label.reader.text import Box, Line

HEADINGS: tuple[tuple[str, str], ...] = (
    ("first aid", r"first aid|statement of practical treatment|primeros auxilios"),
    ("hazards to people", r"precautionary statements?|(precautionary statements?:? )?hazards? to humans( (and|&) domestic animals)?|declaraciones de precauci.n"),
    ("equipment", r"personal protective equipment( \(ppe\))?|ppe|protective equipment|user safety requirements?|engineering controls?( statements?| requirements?)?"),
    ("advice to users", r"user safety recommendations?"),
    ("environment", r"environmental hazards?( statements?)?"),
    ("physical", r"physical (or|and) chemical hazards?|physical hazards?|physical/chemical hazards?"),
    ("farm workers", r"agricultural use requirements?"),
    ("others", r"non-?\s?agricultural use( requirements?)?"),
    ("storage", r"(pesticide )?storage( (and|&) disposal)?|pesticide (storage|disposal)|container (handling|disposal|storage)( (and|&) disposal)?|disposal"),
    ("restrictions", r"(general |use |product |general use |site )*(restrictions|precautions|limitations)(,? (and|or) (restrictions|precautions|limitations))*|maximum (use |application )?rates?"),
    ("drift", r"(mandatory )?spray drift( management| advisories| restrictions| precautions| reduction.*)?|drift|off-target movement|weather|wind|temperature inversions?"),
    ("mixing", r"mixing( and (loading|application))?( equipment)?( instructions| directions| procedures)?|tank[- ]?mix(es|tures?|ing)?( instructions| directions)?|spray additives|adjuvants?|surfactants?|additives"),
    ("plants", r"((woody )?(plants?|species|brush|weeds|trees)( and \w+)?( species)?) (controlled|suppressed|treated)( or (controlled|suppressed|partially controlled))?|(target|susceptible|woody) (plants|species|plant species)|woody brush and trees"),
    ("grazing", r"grazing( and haying| (and|or) hay(ing)?( harvest)?)?( restrictions| precautions)?|haying( restrictions)?|livestock|(grazing|haying)( and| or|/)+\s?(grazing|haying|slaughter)?( restrictions)?"),
    ("warranty", r"(limitation of |limited )?warranty( disclaimer)?( and (limitation of liability|disclaimer))?|limitation of (remedies|liability)|conditions of sale( and .*)?|inherent risks of use|terms and conditions of (use|sale)"),
    ("sites", r"(approved |labell?ed |registered )?(use )?sites( of use)?|where to use( this product)?|areas of use|application sites|use areas|places? of use"),
    ("directions", r"directions( for use)?|instrucciones de uso|(general|product|use) information|(general )?use directions|general instructions"),
)  # fmt: skip
"""Parts with the headings under which they stand, as label.md lists their variants."""
WAYS: tuple[tuple[str, str], ...] = (
    ("cut stump", r"cut[- ]?stumps?|cut[- ]?surfaces?|stumps?"),
    ("basal bark", r"basal([- ]bark)?|thin[- ]?line|streamline"),
    ("hack and squirt", r"injections?|hack[- ]?(?:and|&|n)[- ]?squirt|frills?|frilling|girdle"),
    ("foliar", r"foliar|foliage|leaf sprays?"),
)  # fmt: skip
"""Words of which a heading on one way holds one."""
_LEAD = r"(?:for )?(?:(?!(?:do|not|never|avoid|for|see|apply|use|if|when)\b)[\w/&-]+,? ){0,4}"
_TAIL = r"(?: (?!(?:is|are|must|should|may|within|do)\b)[\w()/&,-]+){0,5}"
_BEFORE, _AFTER = r"(?:(?:[\d.]+|[A-Z][.)]|[IVX]+\.)\s+)?", r"(?:\s*\(cont(?:inued|[’']?d\.?|\.)\))?\s*:?"
_PATTERNS = tuple((name, re.compile(rf"{_BEFORE}(?:{pattern}){_AFTER}", re.I)) for name, pattern in HEADINGS)
_WAYS = tuple(
    (
        name,
        re.compile(rf"{_BEFORE}{_LEAD}(?:{pattern})\b{_TAIL}{_AFTER}", re.I),
        re.compile(rf"\b(?:{pattern})\b", re.I),
    )
    for name, pattern in WAYS
)
FRONT, LETTER, OTHER = "front", "letter", "other"
"""What stands before the first heading; a letter of acceptance; what stands under a heading of no standard part."""
MOST_NAME = 34
"""A shorter line under the plants' heading is one plant's name: engineering guess."""
MOST_SIGNS = 70
"""A longer line is no heading: engineering guess."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence with the part it stands in, its page, and the lines' places it goes over.

    under: for a line of a list, the words that opened the list; else "". heading: the words printed over its part, with
    their page and places.
    opens: True if it begins a paragraph. picture: True where words were made out in a picture. cell: True for a
    table's cell with its heads.
    """

    text: str
    part: str
    page: int
    boxes: tuple[Box, ...]
    under: str = ""
    heading: str = ""
    opens: bool = True
    picture: bool = False
    cell: bool = False
    heading_page: int = 0
    heading_boxes: tuple[Box, ...] = ()


IMPORTANT = re.compile(r"(?:IMPORTANT|ATTENTION|PRECAUTIONS?)(?: NOTES?| INFORMATION)?\s*[:!]?|Important\s*[:!]?")
"""A heading of what holds for all uses."""
ENDED_BY_NOTE = ("storage", "first aid", "environment", "physical", "equipment", "warranty")
"""Parts with which such a heading has nothing to do."""


def part_of(line: Line, usual: float) -> str:
    """The part that a heading opens; "" for a line that is no heading."""
    text = line.text.strip()
    if line.cell or len(text) > MOST_SIGNS or not _prominent(text, line.size, usual):
        return ""
    return _named(text) or (OTHER if _foreign(text, line.size, usual) else "")


def _prominent(text: str, size: float, usual: float) -> bool:
    words = [word for word in re.findall(r"[A-Za-z][\w'-]*", text) if word.lower() not in _SMALL]
    titled = bool(words) and all(word[0].isupper() for word in words)
    return text.isupper() or text.endswith(":") or size > 1.15 * usual or titled


_SMALL = frozenset("a an and as at by for from in of on or the to with".split())


def _named(text: str) -> str:
    """The standard part, or the one way, that the words of a heading name."""
    standard = next((name for name, pattern in _PATTERNS if pattern.fullmatch(text)), "")
    if standard:
        return standard
    ways = [name for name, _, word in _WAYS if word.search(text)]
    if len(ways) == 1 and next(pattern for name, pattern, _ in _WAYS if name == ways[0]).fullmatch(text):
        return ways[0]
    return OTHER if len(ways) > 1 and text.isupper() else ""


def _foreign(text: str, size: float, usual: float) -> bool:
    """True for a heading of none of these parts: what follows no longer belongs to the part before."""
    letters = sum(c.isalpha() for c in text)
    plain = not re.search(r"[.;,%]|\d", text) and not _EMPHASIS.match(text) and not SIGNAL.fullmatch(text)
    return plain and letters >= 6 and (text.isupper() or size > 1.15 * usual)


_EMPHASIS = re.compile(
    r"(?:do not|not |never|avoid|note|important|attention|keep|danger|warning|caution|poison|or\b|and\b|stop|read|total|(?:active|other|inert) ingr)",
    re.I,
)
_END = re.compile(r"(?<=[^.\s][.!?])\s+(?=[A-Z0-9•\-–(])|(?<=[a-z)][.!?]\d)\s+(?=[A-Z])")
_SHORT = re.compile(
    r"\b(?:a\.e|a\.i|Reg|Est|No|Nos|U\.S|fl|oz|gal|lbs?|pt|qt|approx|max|min|vs|e\.g|i\.e|in|ft|Inc|Co|Fig|Sec|St)\.$|\bBulletins Live!$",
    re.I,
)
BULLET = re.compile(r"^(?:[•▪■●◦·▶►✓√]\s*|[*\-–—]\s+|(?:\(\d{1,2}\)|\d{1,2}\)|[a-z]\))\s+|o\s(?=[A-Z]))")


RUN_IN = re.compile(r"(?P<head>[A-Z][^:.]{2,60}?)(?::|\.|\s[-–—])\s+(?=[A-Z(\d])")
"""A heading that stands at the beginning of the paragraph it opens."""
LETTER_WORDS = re.compile(r"^(?:Dear\b|Sincerely\b|Yours truly)", re.M)


def sentences_of(lines: Sequence[Line]) -> list[Sentence]:
    """All sentences in order, each in its part. Lines are joined over hyphens, columns and pages."""
    sizes = sorted(line.size for line in lines)
    usual = sizes[len(sizes) // 2] if sizes else 10.0
    pitch = _pitch(lines, usual)
    ends = _ends(lines)
    letters = {line.page for line in lines if LETTER_WORDS.match(line.text)}
    found: list[Sentence] = []
    part, held, over = FRONT, _Held(), 0

    def shut() -> str:
        """Take in what is held; the part it ended in."""
        rows = held.close(part)
        found.extend(rows)
        return rows[-1].part if rows else part

    for number, line in enumerate(lines):
        if over:
            over -= 1
            continue
        if line.page in letters:
            if held.last is not None and held.last.page != line.page:
                found += held.close(part)
            held.add(line)
            if number + 1 == len(lines) or lines[number + 1].page != line.page:
                found += held.close(LETTER)
            continue
        opened, over = _opened(lines, number, usual)
        if not opened and part in ENDED_BY_NOTE and IMPORTANT.fullmatch(line.text.strip()):
            opened, over = OTHER, 0
        if opened == OTHER and part == "plants" and PLANT_NOUNS.search(line.text.strip()):
            # A plant's name in capitals is a line of the list.
            opened = ""
        if opened in ("", OTHER) and part != FRONT and _heads_rows(lines, number):
            # The heads of a table without rules: what its rows are read under.
            part = shut()
            held.add(line)
            found += held.close(part)
            held.under, over = line.text, 0
            continue
        if opened and not (opened == OTHER and part == FRONT):
            shut()
            part, held.under = opened, ""
            held.headed(lines[number : number + over + 1])
            continue
        over = 0
        alone = SIGNAL.fullmatch(line.text.strip()) or (held.last and SIGNAL.fullmatch(held.text.strip()))
        item = (
            part == "plants"
            and len(line.text) < MOST_NAME
            and line.text[0].isalpha()
            and not held.text.rstrip().endswith((",", "and", "or", "-"))
            and not (line.text[0].islower() and len(held.text) >= MOST_NAME)
        )
        if (
            alone
            or item
            or line.cell
            or (held.last and held.last.cell)
            or BULLET.match(line.text)
            or ((head := RUN_IN.match(line.text)) and head["head"].isupper() and _run_in(head["head"]))
            or _apart(line, held, usual, pitch)
            or _ended(line, held, ends)
            or (held.last is not None and ROW_END.search(held.last.text) and line.text[:1].isupper())
        ):
            part = shut()
        if not held.text and (run_in := RUN_IN.match(line.text)) and (named := _run_in(run_in["head"])):
            part, held.under = named, ""
            held.headed([replace(line, text=run_in["head"])])
        held.add(line)
    return [*found, *held.close(part)]


MOST_HEADS = 48
"""A longer line is no row of heads: engineering guess."""


def _heads_rows(lines: Sequence[Line], number: int) -> bool:
    """True for a short line without figures above two rows that each begin with a capital and end with a figure."""
    text, rows = lines[number].text.strip(), lines[number + 1 : number + 3]
    return (
        1 < len(text.split()) < 8
        and len(text) < MOST_HEADS
        and text[:1].isupper()
        and not re.search(r"\d|[.,:;-]$", text)
        and not BULLET.match(text)
        and len(rows) == 2
        and all(
            row.page == lines[number].page
            and not row.cell
            and row.text[:1].isupper()
            and len(row.text) < MOST_SIGNS
            and ROW_END.search(row.text)
            for row in rows
        )
    )


def _run_in(head: str) -> str:
    """The part that a heading opens which stands in the first line of its own paragraph."""
    named = _named(head.strip()) if _prominent(head.strip(), 0.0, 1.0) else ""
    return named if named != OTHER else ""


def _opened(lines: Sequence[Line], number: int, usual: float) -> tuple[str, int]:
    """The part that a heading opens, which may go over up to three lines, and how many more lines it takes."""
    line = lines[number]
    text = line.text
    best = (part_of(line, usual), 0)
    texts = [text]
    for more in (1, 2):
        if number + more >= len(lines):
            break
        after = lines[number + more]
        divided = texts[0].endswith("-")
        if (after.page != line.page and not divided) or (text.isupper() != after.text.isupper()):
            break
        # A hyphen at the end may part the word or belong to it: both are tried.
        texts = [
            joined
            for one in texts
            for joined in ((one[:-1] + after.text, one + after.text) if one.endswith("-") else (f"{one} {after.text}",))
        ]
        named = (part_of(Line(line.page, one, line.box, line.size), usual) for one in texts)
        together = next((part for part in named if part and part != OTHER), "")
        if together:
            best = (together, more)
        elif divided and best[0] in ("", OTHER):
            best = (part_of(Line(line.page, texts[0], line.box, line.size), usual), more)
    return best


def _pitch(lines: Sequence[Line], usual: float) -> float:
    """The usual distance of one line to the next, from middle to middle."""
    steps = sorted(
        step
        for one, other in pairwise(lines)
        if one.page == other.page and 0 < (step := _middle(other) - _middle(one)) < 3 * usual
    )
    # Where paragraphs are short the gaps between them are as many as those between lines: the low ones are the lines'.
    return steps[len(steps) // 4] if steps else 1.4 * usual


def _middle(line: Line) -> float:
    return (line.box[1] + line.box[3]) / 2


def _apart(line: Line, held: "_Held", usual: float, pitch: float) -> bool:
    """True if a line begins something new: letters of another size, or a wider gap than between lines."""
    last = held.last
    if last is None or last.page != line.page:
        return False
    return abs(line.size - last.size) > 0.6 * usual or _middle(line) - _middle(last) > 1.35 * pitch


SHORT, FEW = 0.7, 4
"""A line that ends before this share of its column's width ends its paragraph, if at least so many lines tell how wide
the column is: engineering guess."""
_GOES_ON = re.compile(
    r"(?:[,/(–—-]|\b(?:and|or|the|an?|of|for|to|in|on|by|with|from|at|per|as|than|this|product|[A-Z][\w.]*))$"
)
"""After these a sentence goes on, whatever begins the next line."""


def _ends(lines: Sequence[Line]) -> dict[tuple[int, int], tuple[float, int]]:
    """How far lines reach that begin at one place of a page, and how many they are."""
    found: dict[tuple[int, int], tuple[float, int]] = {}
    for line in lines:
        at = (line.page, round(line.box[0] / 3))
        reach, count = found.get(at, (0.0, 0))
        found[at] = (max(reach, line.box[2]), count + 1)
    return found


def _ended(line: Line, held: "_Held", ends: dict[tuple[int, int], tuple[float, int]]) -> bool:
    """True if the line before ended its paragraph without a stop: it is short, and this one begins with a capital."""
    last = held.last
    if last is None or last.page != line.page or not line.text[:1].isupper() or _GOES_ON.search(last.text):
        return False
    reach, count = ends[(last.page, round(last.box[0] / 3))]
    return count >= FEW and last.box[2] - last.box[0] < SHORT * (reach - last.box[0])


SIGNAL = re.compile(
    r"(?:Signal word:?\s*)?(?:DANGER|WARNING|CAUTION)(?:\s*[/–-]?\s*(?:PELIGRO|AVISO|PRECAUCI.N))?\s*[.:!]?"
)
ROW_END = re.compile(
    r"\b\d[\d.,/]*\s*(?:%|°\s?[FC]|(?:lbs?|pounds?|kg|qts?|quarts?|gals?|gallons?|fl\.? ?oz|hours?|days?|minutes?|feet|ft|"
    r"inches|in|mph)\b\.?(?:\s*(?:a\.?e\.?|a\.?i\.?))?(?:\s*(?:/|per)\s*\w+)?)$",
    re.I,
)
"""The end of a row of a table without rules: a figure with its unit and no full stop."""
COMPOUND = re.compile(
    r"(?:\d|\b(?:restricted|early|chemical|long|non|re|rights|of|cut|low|high|post|pre|hack|and|oil|water|medium|one|two))-$",
    re.I,
)
"""Before a hyphen at a line's end that belongs to the word; after any other word it only parts the word."""


_WAY_NAMES = frozenset(name for name, _ in WAYS)


class _Held:
    """Lines of a paragraph while they are gathered. under: what opened the list that is being read."""

    def __init__(self) -> None:
        self.text = ""
        self.spans: list[tuple[int, int, Line]] = []
        self.last: Line | None = None
        self.under = self.heading = ""
        self.heading_page = 0
        self.heading_boxes: tuple[Box, ...] = ()
        self.bullet = False

    def headed(self, lines: Sequence[Line]) -> None:
        """Take the words over a part, with the places of those on the first one's page."""
        self.heading = " ".join(line.text for line in lines)
        self.heading_page = lines[0].page
        self.heading_boxes = tuple(line.box for line in lines if line.page == lines[0].page)

    def add(self, line: Line) -> None:
        if not self.text:
            self.bullet = bool(BULLET.match(line.text))
        text = BULLET.sub("", line.text)
        if (self.text.endswith("-") and text[:1].islower() and not COMPOUND.search(self.text)) or (
            self.text.lower().endswith("hack-") and text.startswith("berr")
        ):
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
        found: list[Sentence] = []
        start = 0
        listed = self.bullet or (len(self.text) < MOST_SIGNS and not self.text.rstrip().endswith((".", ":")))
        under = self.under if listed else ""
        for end in [*(m.end() for m in _END.finditer(self.text)), len(self.text)]:
            text = self.text[start:end].strip()
            if _SHORT.search(text) and end < len(self.text):
                continue
            over = [line for a, b, line in self.spans if a < end and b > start]
            if found and (head := RUN_IN.match(text)) and head["head"].isupper():
                # A heading in capitals that the page set behind another part's words.
                named = _run_in(head["head"])
                if named and named not in _WAY_NAMES:
                    part, under = named, ""
                    self.headed([replace(over[0], text=head["head"])])
            if text and over:
                boxes = tuple(line.box for line in over if line.page == over[0].page)
                made_out = any(line.picture for line in over)
                found.append(
                    Sentence(
                        text=text,
                        part=part,
                        page=over[0].page,
                        boxes=boxes,
                        under=under,
                        heading=self.heading,
                        opens=not found,
                        picture=made_out,
                        cell=over[0].cell,
                        heading_page=self.heading_page,
                        heading_boxes=self.heading_boxes,
                    )
                )
            start = end
        if self.text.rstrip().endswith(":") and found:
            self.under = found[-1].text
        elif self.text and not listed:
            self.under = ""
        self.text, self.spans, self.last, self.bullet = "", [], None, False
        return found
