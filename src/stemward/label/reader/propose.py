"""Facts proposed from a label's sentences: each with its words, page and place, and how sure the reader is."""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from stemward.kinds.product import Force
from stemward.label.reader.parts import Sentence, sentences_of
from stemward.label.reader.phrases import (
    ADVICE,
    ANY_PLACE,
    ANY_STATE,
    CONDITION,
    DISTANCE,
    EQUIPMENT,
    MATERIALS,
    METHODS,
    NEGATED,
    NUMBER,
    PLACES,
    RATE,
    SHARE,
    SPEED,
    STATES,
    TEMPERATURE,
    TIME,
)
from stemward.label.reader.text import Box, Line

Sure = Literal["sure", "likely", "unsure"]


@dataclass(frozen=True, slots=True)
class Proposed:
    """One fact the reader believes to have found. Nobody has read it yet.

    value: as a person would type it. scope: by kind of scope. boxes: places on the page, in points from its upper
    left corner. words: the sentence. sure: "unsure" where the sentence has a condition or only advises.
    """

    kind: str
    value: str
    page: int
    boxes: tuple[Box, ...]
    words: str
    sure: Sure = "sure"
    force: Force = "must"
    scope: tuple[tuple[str, tuple[str, ...]], ...] = ()


RATES = ("most per year", "most per application")
ONLY_AI = re.compile(r"\ba\.?i\.?\b(?!.*\ba\.?e\.?\b)|active ingredient", re.I)
Found = Iterator[tuple[str, str]]
"""Kind and value; how sure and for what follow from the sentence."""


def propose(lines: Sequence[Line]) -> list[Proposed]:
    """All facts proposed from a label's lines, in the label's order, each value of a kind and scope once."""
    found: dict[tuple[str, str, object], Proposed] = {}
    for sentence in sentences_of(lines):
        for one in _of_sentence(sentence):
            key = (one.kind, one.value.lower(), one.scope)
            have = found.get(key)
            if have is None or _RANK[one.sure] > _RANK[have.sure]:
                found[key] = one
    return _without_doubles(found.values())


_RANK: dict[Sure, int] = {"unsure": 0, "likely": 1, "sure": 2}
ONCE = ("registration number", "signal word", "entry interval")


def _without_doubles(found: Iterable[Proposed]) -> list[Proposed]:
    """Where kinds that a label says once have several values, none is sure."""
    rows = list(found)
    values: dict[str, set[str]] = {}
    for one in rows:
        values.setdefault(one.kind, set()).add(one.value.lower())
    return [
        one if one.kind not in ONCE or len(values[one.kind]) == 1 else _less(one)
        for one in sorted(rows, key=lambda one: (one.page, one.boxes[0][1] if one.boxes else 0.0))
    ]


def _less(one: Proposed) -> Proposed:
    return Proposed(one.kind, one.value, one.page, one.boxes, one.words, "unsure", one.force, one.scope)


def _of_sentence(sentence: Sentence) -> Iterator[Proposed]:
    text = sentence.text
    force: Force = "avoid" if re.search(r"\bavoid\b", text, re.I) else "should" if ADVICE.search(text) else "must"
    sure: Sure = "unsure" if CONDITION.search(text) else "likely" if force != "must" else "sure"
    low = text.lower()
    for finder, words in _TRIGGERS:
        if words and not any(word in low for word in words):
            continue
        for kind, value in finder(sentence):
            # The weight of the salt or ester, where limits here are of the acid.
            how: Sure = "unsure" if kind in RATES and ONLY_AI.search(text) else sure
            scope = _scope(sentence) if kind in SCOPED else _role(sentence) if kind == "equipment" else ()
            yield Proposed(kind, value, sentence.page, sentence.boxes, text, how, force, scope)


SCOPED = ("strongest mix", "weakest mix", "greatest stem", "least stem", "hours without rain", "strongest wind",
          "weakest wind", "most per year", "most per application", "longest from cut to treatment", "carrier",
          "most applications", "shortest interval", "season forbidden", "adjuvant required")  # fmt: skip


def _scope(sentence: Sentence) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """For which ways, places and states a sentence speaks, by its own words, else by the part it stands in."""
    text = sentence.text
    methods = [name for name, pattern in METHODS if pattern.search(text)]
    if not methods and sentence.part in {name for name, _ in METHODS}:
        methods = [sentence.part]
    sites = [name for name, pattern in PLACES if re.search(rf"\b(?:on|in|for)\b[^.]*{pattern.pattern}", text, re.I)]
    states = (
        []
        if not ANY_STATE.search(text)
        else [code for code, pattern in STATES if re.search(rf"\bin (?:the state of )?{pattern}\b", text)]
    )
    found = (("method", tuple(methods)), ("site", tuple(sites)), ("state", tuple(states)))
    return tuple((name, values) for name, values in found if values)


def _role(sentence: Sentence) -> tuple[tuple[str, tuple[str, ...]], ...]:
    text = sentence.text.lower()
    if "early entry" in text or "early-entry" in text or sentence.part == "farm workers":
        return (("role", ("early entry",)),)
    if re.search(r"\bmix(?:ing|ers?)\b|\bload(?:ing|ers?)\b", text) and not re.search(r"applicators?|applying", text):
        return (("role", ("mixer",)),)
    return ()


# finders, in the order of the closed list


def _numbers(s: Sentence) -> Found:
    if m := re.search(
        r"EPA\s*Reg(?:istration|\.)?\s*(?:Numbers?|Nos?\.?|#)?\s*[:.]?\s*(\w{1,6}[-–]\d{1,5}(?:[-–]\d{1,6})?)",
        s.text,
        re.I,
    ):
        yield "registration number", m[1].replace("–", "-")
    if m := re.search(
        r"EPA\s*Est(?:ablishment|\.)?\s*(?:Numbers?|Nos?\.?)?\s*[:.]?\s*(\d{1,6}[-–][A-Z]{2,3}[-–]\d{1,3})", s.text
    ):
        yield "establishment number", m[1].replace("–", "-")


def _signal(s: Sentence) -> Found:
    if m := re.match(
        r"(?:Signal word:?\s*)?(DANGER|WARNING|CAUTION)\b(?:\s*[/–-]?\s*(?:PELIGRO|AVISO|PRECAUCI.N))?\s*[.:!]?$",
        s.text,
    ):
        yield "signal word", m[1].lower()


def _class(s: Sentence) -> Found:
    if re.search(r"\brestricted use pesticide\b", s.text, re.I) and not NEGATED.search(s.text):
        yield "restricted use", "yes"


def _ingredients(s: Sentence) -> Found:
    if s.part != "front" or re.search(r"acid equivalent|equivalent to", s.text, re.I):
        return
    for m in re.finditer(rf"([A-Za-z][^%*\n]*?)[\s.*†‡:]*({NUMBER})\s*%", s.text):
        if not re.search(r"\b(other|inert|total|ingredients?:?$)\b", m[1], re.I):
            yield "ingredient percent", f"{m[2]} %"


def _entry(s: Sentence) -> Found:
    if m := re.search(
        rf"(?:restricted[- ]entry interval(?: \(REI\))?|\bREI\b)[^.\d]*?(?:of|is|:)?\s*({NUMBER})\s*(hours?|days?)",
        s.text,
        re.I,
    ):
        yield "entry interval", f"{m[1]} {m[2]}"
    if re.search(
        r"(?:until|before) (?:the )?(?:sprays?|product|spray deposits?|treated areas?)?\s*(?:has|have|is|are)?\s*(?:dried|dry)",
        s.text,
        re.I,
    ):
        yield "keep out until dry", "yes"


def _equipment(s: Sentence) -> Found:
    if s.part not in ("equipment", "farm workers") and not re.search(r"\bwear\b", s.text, re.I):
        return
    if re.search(r"not (?:needed|required)|may omit", s.text, re.I):
        return
    for item, pattern in EQUIPMENT:
        if pattern.search(s.text):
            yield "equipment", item
    if m := re.search(r"categor(?:y|ies) ([A-H])\b", s.text):
        yield "glove category", m[1]
    if re.search(r"gloves?|resistant to this product", s.text, re.I):
        for material, pattern in MATERIALS:
            if pattern.search(s.text):
                yield "glove material", material


def _mix(s: Sentence) -> Found:
    """Shares of product in the mix, where a way or the mixing is spoken of."""
    spoken = s.part in dict(METHODS) or any(p.search(s.text) for _, p in METHODS) or s.part == "mixing"
    if not spoken or re.search(r"surfactant|adjuvant|dye|ammonium", s.text, re.I):
        return
    if re.search(r"\bundiluted\b|\bfull strength\b", s.text, re.I) and not NEGATED.search(s.text):
        yield "strongest mix", "100 %"
    if m := re.search(rf"({NUMBER})\s*(?:%\s*)?(?:to|-|–)\s*({NUMBER})\s*(?:%|percent)", s.text):
        yield "weakest mix", f"{m[1]} %"
        yield "strongest mix", f"{m[2]} %"
    elif m := re.search(
        rf"({NUMBER})\s*(?:%|percent)\s*(?:v/v|by volume|solution|mix(?:ture)?|of this product|concentration)",
        s.text,
        re.I,
    ):
        yield "strongest mix", f"{m[1]} %"
    if m := re.search(
        r"\b(\d+)\s*parts? (?:of )?(?:this )?product\s*(?:with|to|and|in)\s*(\d+)\s*parts?", s.text, re.I
    ):
        yield "strongest mix", f"{100 * int(m[1]) / (int(m[1]) + int(m[2])):.4g} %"
    for carrier in ("water", "oil"):
        if re.search(
            rf"\b(?:in|with|and enough|parts)\s+(?:\w+\s+){{0,3}}{carrier}\b", s.text, re.I
        ) and not NEGATED.search(s.text):
            yield "carrier", carrier


YEARLY = re.compile(
    r"per (?:calendar )?year|/\s*(?:calendar )?ye?a?r\b|annual|12[- ]month|per (?:growing )?season|yearly", re.I
)
SINGLE = re.compile(
    r"per (?:single )?application|single application|/\s*application|per treatment|any one (?:treatment|application)",
    re.I,
)


def _which(text: str) -> str:
    """Which maximum a text speaks of; "" where of neither. Where of both, of one application."""
    return "most per application" if SINGLE.search(text) else "most per year" if YEARLY.search(text) else ""


def _mass(unit: str) -> str:
    """The unit as a rate takes it; "" for volumes, which say nothing of the acid."""
    first = unit.lower().rstrip(".")
    return "lb" if first.startswith(("lb", "pound")) else first if first in ("kg", "g") else ""


def _maxima(s: Sentence) -> Found:
    text = s.text
    if not re.search(r"\bacre\b|/\s*A\b", text) or re.search(r"do not use less", text, re.I):
        return
    limit = re.search(
        r"not (?:to )?exceed|no more than|not more than|do not (?:apply|use|go) (?:more than|above|over)|maximum|at or below|limit",
        text,
        re.I,
    )
    if not limit:
        return
    rates = list(RATE.finditer(text))
    for n, m in enumerate(rates):
        tail = text[m.end() : rates[n + 1].start() if n + 1 < len(rates) else len(text)]
        own = _which(tail) or _which(text)
        if own and m["of"] and _mass(m["unit"]):
            yield own, f"{m['n']} {_mass(m['unit'])}/acre"
    if YEARLY.search(text):
        if re.search(r"12[- ]month", text, re.I):
            yield "year means", "12 months"
        elif re.search(r"calendar", text, re.I):
            yield "year means", "calendar year"
        elif re.search(r"season", text, re.I):
            yield "year means", "season"


COUNTS = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}


def _repeats(s: Sentence) -> Found:
    if m := re.search(
        r"(?:no more than|not exceed|maximum of|limit(?:ed)?(?: \w+){0,2} to|total of|make more than)\s+(\d+|one|two|three|four|five|six)\s+(?:\w+\s+)?applications?",
        s.text,
        re.I,
    ):
        yield "most applications", COUNTS.get(m[1].lower(), m[1])
    m = re.search(
        rf"(?:at least|minimum|wait|interval[^.\d]*?|within|less than)\s*(?:of |is |: ?)?({NUMBER})\s*[- ]?(days?|weeks?|months?)",
        s.text,
        re.I,
    )
    if m and re.search(
        r"between (?:\w+ )?(?:applications|treatments)|re-?treat|re-?appl|retreatment interval|application interval",
        s.text,
        re.I,
    ):
        yield "shortest interval", f"{m[1]} {m[2]}"


def _weather(s: Sentence) -> Found:
    text = s.text
    if re.search(r"\brain(?:fall|fast)?\b", text, re.I) and (m := TIME.search(text)):
        yield "hours without rain", f"{m[1]} {m[2]}"
    if re.search(r"\bwind", text, re.I):
        if m := re.search(
            rf"between\s*({NUMBER})\s*(?:and|to|-|–)\s*({NUMBER})\s*(mph|miles per hour|km/h)", text, re.I
        ):
            yield "weakest wind", f"{m[1]} {_unit(m[3])}"
            yield "strongest wind", f"{m[2]} {_unit(m[3])}"
        elif (m := SPEED.search(text)) and re.search(r"exceed|above|over|greater|more than|higher", text, re.I):
            yield "strongest wind", f"{m[1]} {_unit(m[2])}"
        elif (m := SPEED.search(text)) and re.search(r"below|less than|under|lower", text, re.I):
            yield "weakest wind", f"{m[1]} {_unit(m[2])}"
    if re.search(r"inversion", text, re.I) and re.search(r"do not|avoid|not be applied|not for use|never", text, re.I):
        yield "no inversion", "yes"
    if (m := TEMPERATURE.search(text)) and not re.search(r"\bstor(?:e|age|ed)\b", text, re.I):
        value = f"{m[1]} {m[2].upper()}"
        if re.search(r"above|exceed|over|greater|higher|warmer", text, re.I):
            yield "greatest heat", value
        elif re.search(r"below|under|less|colder|lower", text, re.I):
            yield "least heat", value


def _unit(words: str) -> str:
    return "mph" if words.lower().startswith(("mph", "miles")) else words


def _timing(s: Sentence) -> Found:
    m = re.search(
        rf"(?:within|no later than|not later than|no more than)\s*({NUMBER})\s*(minutes?|hours?|seconds?)", s.text, re.I
    )
    if m and re.search(r"\bcut(?:ting|s)?\b|felling|stump", s.text, re.I):
        yield "longest from cut to treatment", f"{m[1]} {m[2]}"
    if m := re.search(
        r"(?:less than|under|up to|smaller than|no more than|not exceeding)\s*"
        rf"({NUMBER})\s*(inches|inch|in\.?|cm)\b[^.]*?(?:diameter|dbh|basal)",
        s.text,
        re.I,
    ):
        yield "greatest stem", f"{m[1]} {'cm' if m[2] == 'cm' else 'in'}"
    if m := re.search(
        r"(?:at least|greater than|over|more than|larger than)\s*"
        rf"({NUMBER})\s*(inches|inch|in\.?|cm)\b[^.]*?(?:diameter|dbh|basal)",
        s.text,
        re.I,
    ):
        yield "least stem", f"{m[1]} {'cm' if m[2] == 'cm' else 'in'}"
    if m := re.search(
        r"(?:do not|not (?:be )?(?:applied|used)|except|avoid)[^.]*?(?:during )?((?:heavy |strong )?(?:spring )?sap[- ]?flow)",
        s.text,
        re.I,
    ):
        yield "season forbidden", m[1].lower()


def _water(s: Sentence) -> Found:
    m = DISTANCE.search(s.text)
    if not m or not re.search(r"within|at least|leave|keep|from|untreated|buffer|setback", s.text, re.I):
        return
    value = f"{m[1]} {_far(m[2])}"
    mixing = re.search(r"\bmix|\bload|\brins", s.text, re.I)
    if re.search(r"\bwells?\b", s.text, re.I):
        yield ("mixing distance to wells" if mixing else "distance to wells"), value
    if not mixing and re.search(r"water|stream|lake|pond|shore|wetland|river", s.text, re.I):
        yield "distance to water", value


def _far(unit: str) -> str:
    return "ft" if unit.lower().startswith(("f", "'")) else "yd" if unit.lower().startswith("y") else "m"


def _animals(s: Sentence) -> Found:
    if m := TIME.search(s.text):
        value = f"{m[1]} {m[2]}"
        if re.search(r"\bhay\b", s.text, re.I):
            yield "hay wait", value
        if re.search(r"\bgraz|\blivestock\b|\banimals?\b", s.text, re.I) and not re.search(r"\bhay\b", s.text, re.I):
            yield "grazing wait", value


def _places(s: Sentence) -> Found:
    any_place = ANY_PLACE.search(s.text)
    named = [name for name, pattern in PLACES if pattern.search(s.text)] if any_place else []
    if re.search(r"(?:do not (?:use|apply)|not for use) (?:on|in|around|to)", s.text, re.I):
        for name in named:
            yield "site forbidden", name
    elif re.search(
        r"for use (?:on|in|along)|may be used (?:on|in)|use (?:this product )?(?:on|in)|control[^.]*\b(?:in|on)\b|sites",
        s.text,
        re.I,
    ):
        for name in named:
            yield "site", name
    if ANY_STATE.search(s.text):
        yield from _states(s.text)


def _states(text: str) -> Found:
    for code, pattern in STATES:
        if re.search(rf"{NO_USE}[^.]*\b{pattern}\b", text):
            yield "state excluded", code
        elif re.search(rf"(?i:(?:for use )?only in)[^.]*\b{pattern}\b|\b{pattern} only\b", text):
            yield "state only", code


NO_USE = r"(?i:not (?:registered |permitted |allowed )?(?:for )?(?:sale or )?(?:use )?in|do not use in|not for (?:sale or )?use in)"


def _ways(s: Sentence) -> Found:
    if NEGATED.search(s.text) and re.search(r"do not (?:apply|use)[^.]*\b(?:by|as|for)\b", s.text, re.I):
        for name, pattern in METHODS:
            if pattern.search(s.text):
                yield "method forbidden", name
    elif s.part in dict(METHODS) or re.search(r"\b(?:treat|apply|may be used|for use|spray)\b", s.text, re.I):
        for name, pattern in METHODS:
            if name == s.part or pattern.search(s.text):
                yield "method", name
    if re.search(
        r"only (?:by )?the methods|methods? (?:described|specified|listed)[^.]*only|only[^.]*methods? (?:described|specified|listed)",
        s.text,
        re.I,
    ):
        yield "only listed methods", "yes"
    if re.search(
        r"only (?:for|on) (?:the )?(?:control of )?(?:the )?(?:plants|species|weeds) (?:named|listed)", s.text, re.I
    ):
        yield "only listed plants", "yes"
    if re.search(r"do not use less than|rates? (?:below|lower than)[^.]*not (?:permitted|allowed)", s.text, re.I):
        yield "less is forbidden", "yes"
    if re.search(r"root grafts?|sharing roots|shared roots", s.text, re.I) and re.search(r"do not|avoid", s.text, re.I):
        yield "no shared roots", "yes"
    if re.search(r"\bbulletins?\b", s.text, re.I) and re.search(r"endangered|obtain", s.text, re.I):
        yield "endangered species bulletin", "yes"


def _mixing(s: Sentence) -> Found:
    m = re.search(rf"(?:non-?ionic )?surfactant[^.]*?({SHARE})", s.text, re.I)
    if m and re.search(r"\b(?:include|add|use|must)\b", s.text, re.I):
        yield "adjuvant required", f"surfactant at {m[1]}"
    if re.search(
        r"(?:do not|not be) (?:mix(?:ed)?|store[d]?|use[d]?|apply|applied)[^.]*(?:unlined steel|galvani[sz]ed)",
        s.text,
        re.I,
    ):
        yield "vessel forbidden", "unlined steel"
        yield "vessel forbidden", "galvanised steel"
    if m := re.search(r"do not tank[- ]?mix with ([^.;]+)", s.text, re.I):
        yield "mix partner forbidden", m[1].strip()
    m = re.search(rf"(?:used? )?within\s*({NUMBER})\s*(hours?|days?)\b", s.text, re.I)
    kept = r"must be used|use (?:the )?(?:diluted |spray )?(?:mix|solution|spray)|diluted spray"
    if m and re.search(r"\b(?:mix(?:ture)?|spray|solution)\b", s.text, re.I) and re.search(kept, s.text, re.I):
        yield "mix keeps", f"{m[1]} {m[2]}"


def _keeping(s: Sentence) -> Found:
    if (
        (m := TEMPERATURE.search(s.text))
        and re.search(r"\bstor(?:e|age|ed)\b", s.text, re.I)
        and re.search(r"above|at least|below|freez", s.text, re.I)
    ):
        yield "least storage heat", f"{m[1]} {m[2].upper()}"
    if s.part == "storage":
        if re.search(r"container|rinse|refill", s.text, re.I):
            yield "container", s.text
        elif re.search(r"dispos|wastes?\b", s.text, re.I):
            yield "disposal", s.text
    if s.part == "first aid" and len(s.text) > 12:
        yield "first aid", s.text
    if s.part == "environment" and len(s.text) > 12:
        yield "environmental hazard", s.text


FINDERS: tuple[tuple[Callable[[Sentence], Found], str], ...] = (
    (_numbers, "epa"),
    (_signal, "danger|warning|caution"),
    (_class, "restricted"),
    (_ingredients, "%"),
    (_entry, "entry|rei|dry|dried"),
    (_equipment, "wear|glove|shirt|pants|shoes|apron|goggles|shield|respirator|coverall|resistant"),
    (_mix, "%|percent|undiluted|full strength|part|water|oil"),
    (_maxima, "acre|/a"),
    (_repeats, "application|treat|interval"),
    (_weather, "rain|wind|inversion|°|degree|temperature"),
    (_timing, "within|later|diameter|basal|dbh|sap"),
    (_water, "water|well|stream|lake|pond|shore|wetland|river"),
    (_animals, "hay|graz|livestock|animal"),
    (_places, ""),
    (_ways, ""),
    (_mixing, "surfactant|steel|galvani|mix|within"),
    (_keeping, ""),
)
"""What looks for facts, each with words of which one must stand in a sentence before it is worth looking."""
_TRIGGERS = tuple((finder, tuple(filter(None, words.split("|")))) for finder, words in FINDERS)
