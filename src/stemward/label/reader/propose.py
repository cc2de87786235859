"""Facts proposed from a label's sentences: each with its words, page and place, and how sure the reader is."""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemward.kinds.product import Force
from stemward.label.facts import KINDS
from stemward.label.reader.find import amounts, around, identity, people, ways, weather
from stemward.label.reader.parts import Sentence, sentences_of
from stemward.label.reader.phrases import ADVICE, ANY_STATE, ELSEWHERE, HARD, PLACES, SOFT, STATES
from stemward.label.reader.said import RANK, Hits, Said, Sure
from stemward.label.reader.text import Box, Line


@dataclass(frozen=True, slots=True)
class Proposed:
    """One fact the reader believes to have found. Nobody has read it yet.

    value: as a person would type it. scope: by kind of scope. boxes: places on the page, in points from its upper
    left corner. words: the sentence. sure: "unsure" where the sentence has a condition, points elsewhere, or holds
    more figures than one; "likely" where it only advises.
    """

    kind: str
    value: str
    page: int
    boxes: tuple[Box, ...]
    words: str
    sure: Sure = "sure"
    force: Force = "must"
    scope: tuple[tuple[str, tuple[str, ...]], ...] = ()


LIMIT_IS_CONDITION = True
FINDERS: tuple[tuple[Callable[[Said], Hits], bool, str], ...] = (
    (identity.numbers, False, "epa|e.p.a|revis|rev.|label|accepted|edition|date"),
    (identity.signal, False, "danger|warning|caution"),
    (identity.restricted, False, "restricted"),
    (identity.ingredients, False, "%"),
    (identity.strength, False, "gal"),
    (people.equipment, False, "wear|glove|shirt|pants|shoes|apron|goggles|shield|respirator|coverall|footwear|headgear|boots|socks"),
    (people.gloves, False, "categor|glove|resistant"),
    (people.entry, False, "entry|rei|dry|dried"),
    (people.aid, LIMIT_IS_CONDITION, ""),
    (amounts.mix, False, "%|undiluted|strength|part|gal|:|neat"),
    (amounts.carrier, False, "water|oil|diesel|kerosene"),
    (amounts.per_stem, False, "per |apart|between|interval|spac"),
    (amounts.maxima, False, "acre|/a|per a|/ha"),
    (amounts.repeats, False, "appl|treat|interval|apart"),
    (weather.rain, LIMIT_IS_CONDITION, "rain|shower|precipitation|wash|irrigation"),
    (weather.wind, LIMIT_IS_CONDITION, "wind|gust|breez"),
    (weather.heat, LIMIT_IS_CONDITION, "inversion| f| c|°"),
    (weather.cut_to_treat, LIMIT_IS_CONDITION, "cut|fell|stump"),
    (weather.season, LIMIT_IS_CONDITION, "sap|from|between|during|after"),
    (around.water, False, "feet|foot|ft|yard|meter|mile| m"),
    (around.animals, False, "hay|graz|livestock|animal|cattle|forage|feed|harvest"),
    (around.mixing, False, "surfactant|adjuvant|steel|galvani|mix|within|oil|spray|solution"),
    (around.keeping, LIMIT_IS_CONDITION, ""),
    (ways.places, False, ""),
    (ways.states, False, ""),
    (ways.ways, False, ""),
    (ways.size, False, "inch|in.|cm| in "),
    (ways.plants, False, ""),
    (ways.roots, False, "root|bulletin|trunk|drip"),
)  # fmt: skip
"""What looks for facts, in the order of the closed list; whether "if" and "when" are how such a limit is worded; words
of which one must stand in a sentence before it is worth looking."""
_FINDERS = tuple((finder, worded, tuple(filter(None, words.split("|")))) for finder, worded, words in FINDERS)
TEXTS = frozenset(name for name, kind in KINDS.items() if kind.value == "text" and kind.sense == "text") | {"plant"}
"""Kinds whose value is words of the label: a condition in them is part of what is proposed."""
ANYWHERE = ("registration number", "establishment number", "label edition", "restricted use", "signal word")
"""The only kinds that a letter of acceptance can hold: the rest of it speaks to the maker."""


def propose(lines: Sequence[Line]) -> list[Proposed]:
    """All facts proposed from a label's lines, in the label's order, each value of a kind and scope once."""
    return proposed_of(sentences_of(lines))


def proposed_of(sentences: Sequence[Sentence]) -> list[Proposed]:
    """The same from its sentences."""
    found: dict[tuple[str, str, object], Proposed] = {}
    for sentence in sentences:
        for one in _of_sentence(sentence):
            key = (one.kind, one.value.lower(), one.scope)
            have = found.get(key)
            if have is None or RANK[one.sure] > RANK[have.sure]:
                found[key] = one
    return _without_doubles(found.values())


ONCE = ("registration number", "signal word", "entry interval", "label edition", "restricted use")


def _without_doubles(found: Iterable[Proposed]) -> list[Proposed]:
    """Where kinds that a label says once have several values, none is sure; so with a limit of one scope."""
    rows = sorted(found, key=lambda one: (one.page, one.boxes[0][1] if one.boxes else 0.0))
    values: dict[object, set[str]] = {}
    for one in rows:
        values.setdefault(_once(one), set()).add(one.value.lower())
    return [replace(one, sure="unsure") if _once(one) and len(values[_once(one)]) > 1 else one for one in rows]


def _once(one: Proposed) -> object:
    """What there is one value of: the kind, or for limits the kind with its scope; None where there may be many."""
    if one.kind in ONCE:
        return one.kind
    return (one.kind, one.scope) if KINDS[one.kind].typed and not KINDS[one.kind].many else None


def _of_sentence(sentence: Sentence) -> Iterator[Proposed]:
    said = Said(sentence)
    text, low = said.text, said.whole.lower()
    force: Force = "avoid" if re.search(r"\bavoid\b", text, re.I) else "should" if ADVICE.search(text) else "must"
    plain: Sure = "sure" if force == "must" else "likely"
    hard = HARD.search(text) or _optional(sentence.text) or ELSEWHERE.search(text)
    soft = SOFT.search(text)
    for finder, worded, words in _FINDERS:
        if words and not any(word in low for word in words):
            continue
        for kind, value, most in finder(said):
            if said.part == "letter" and kind not in ANYWHERE:
                continue
            doubt = sentence.picture or (kind not in TEXTS and (hard or (soft and not worded)))
            sure: Sure = "unsure" if doubt else min(plain, most, key=RANK.__getitem__)
            yield Proposed(kind, value, sentence.page, sentence.boxes, sentence.text, sure, force, _scope(said, kind))


def _optional(text: str) -> bool:
    """True for words in brackets, which a master label holds for the maker to leave out."""
    return text.startswith(("[", "{")) or text.rstrip(".").endswith(("]", "}"))


SCOPED = ("strongest mix", "weakest mix", "greatest stem", "least stem", "hours without rain", "strongest wind",
          "weakest wind", "most per year", "most per application", "longest from cut to treatment", "carrier",
          "most applications", "shortest interval", "season forbidden", "adjuvant required", "cut widths apart",
          "most per stem")  # fmt: skip


def _scope(said: Said, kind: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """For which ways, places, states or people a fact is, by the sentence's own words, else by the part it stands in."""
    if kind == "equipment":
        return _role(said)
    if kind not in SCOPED:
        return ()
    text = said.text
    sites = [name for name, pattern in PLACES if re.search(rf"\b(?:on|in|for|to)\b[^.;]*{pattern.pattern}", text, re.I)]
    original = said.sentence.text
    states = (
        []
        if not ANY_STATE.search(original)
        else [code for code, pattern in STATES if re.search(rf"\b[Ii]n (?:the state of )?{pattern}\b", original)]
    )
    found = (("method", said.methods), ("site", tuple(sites)), ("state", tuple(states)))
    return tuple((name, values) for name, values in found if values)


def _role(said: Said) -> tuple[tuple[str, tuple[str, ...]], ...]:
    if said.part == "farm workers" or said.has(r"early[- ]entry"):
        return (("role", ("early entry",)),)
    text = said.text if re.search(r"\bmix|\bload|\bappl|\bhandler", said.text, re.I) else said.whole
    mixes = re.search(
        r"\bmix(?:ing|ers?)\b|\bload(?:ing|ers?)\b|\bcleaning equipment\b|handling the concentrate", text, re.I
    )
    if mixes and not re.search(r"\bapplicators?\b|\bapplying\b|all handlers|other handlers", text, re.I):
        return (("role", ("mixer",)),)
    return ()
