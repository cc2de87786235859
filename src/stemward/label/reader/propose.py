"""Facts proposed from a label's sentences: each with its words, page and place, and how sure the reader is."""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemward.kinds.product import Force
from stemward.label.facts import KINDS
from stemward.label.reader.clauses import apart
from stemward.label.reader.find import (
    amounts,
    around,
    identity,
    mixes,
    people,
    places,
    plants,
    sizes,
    states,
    ways,
    weather,
)
from stemward.label.reader.parts import Sentence, sentences_of
from stemward.label.reader.phrases import (
    ADVICE,
    AERIAL,
    DONE,
    ELSEWHERE,
    HARD,
    NOT_THIS,
    OTHER_MATTER,
    OUR_MATTER,
    SOFT,
    TALK,
)
from stemward.label.reader.said import METHOD_PARTS, RANK, Hit, Hits, Said, Sure, holds_any
from stemward.label.reader.text import Box, Line


@dataclass(frozen=True, slots=True)
class Place:
    """Where else a label says the same: page, places on it in points, words, how sure that place alone would be."""

    page: int
    boxes: tuple[Box, ...]
    words: str
    sure: Sure = "sure"


@dataclass(frozen=True, slots=True)
class Proposed:
    """One fact the reader believes to have found. Nobody has read it yet.

    value: as a person would type it. scope: by kind of scope. boxes: places on the page, in points from its upper
    left corner. words: the sentence. sure: "unsure" where the sentence has a condition, points elsewhere, or holds
    more figures than one; "likely" where it only advises. also: where the label says it again in other words.
    """

    kind: str
    value: str
    page: int
    boxes: tuple[Box, ...]
    words: str
    sure: Sure = "sure"
    force: Force = "must"
    scope: tuple[tuple[str, tuple[str, ...]], ...] = ()
    also: tuple[Place, ...] = ()


def at_each_place(one: Proposed) -> list[Proposed]:
    """A fact once for each place at which the label says it."""
    return [
        one,
        *(
            replace(
                one,
                page=p.page,
                boxes=p.boxes,
                words=p.words,
                sure=min(one.sure, p.sure, key=RANK.__getitem__),
                also=(),
            )
            for p in one.also
        ),
    ]


ANY, ONLY_EXCEPTIONS, NONE = 2, 1, 0
"""Which conditions make a finder's facts unsure: all; "unless" and "except" only, since "if" and "when" are how its
limits are worded; none, since exceptions are how they are worded."""
FINDERS: tuple[tuple[Callable[[Said], Hits], int, str], ...] = (
    (identity.numbers, ANY, "epa|e.p.a|revis|rev.|label|accepted|edition|date|reg|est|made|produc|manufact"),
    (identity.signal, ANY, "danger|warning|caution"),
    (identity.restricted, ANY, "restricted|certified|certification|licensed|rup"),
    (identity.ingredients, ANY, "%"),
    (identity.strength, ANY, "gal|lit|/l"),
    (people.equipment, ANY, "wear|water-proof|waterproof|resist|glove|shirt|pants|shoes|apron|goggles|shield|respirator|coverall|footwear|headgear|boots|socks"),
    (people.gloves, ONLY_EXCEPTIONS, "categor|glove|resist|chart"),
    (people.entry, ANY, "ent|rei|dry|dried|dries|wet|out|hour|days|hrs"),
    (people.aid, ONLY_EXCEPTIONS, ""),
    (mixes.mix, ANY, "%|dilut|strength|part|gal|qt|pt|oz|:|third|fourth|neat|ready|concentrate|volume|equal|half|quarter|supplied"),
    (mixes.carrier, ANY, "water|aqueous|oil|diesel|kerosene"),
    (amounts.per_stem, ANY, "inch| in|cm|ml|oz|teaspoon|milliliter|cc "),
    (amounts.maxima, ANY, "acre|/a|per a|/ha"),
    (amounts.repeats, ANY, "appl|treat|interval|apart|times|often|year|months|again|season|spray"),
    (weather.rain, ONLY_EXCEPTIONS, "rain|shower|precipitation|wash|irrigation|dry"),
    (weather.wind, ONLY_EXCEPTIONS, "wind|gust|breez|calm|mph|km/h"),
    (weather.heat, ONLY_EXCEPTIONS, "invers|inverted|thermo|ambient| f| c|°|degree|temp|heat|hot|warm|cool|cold|weather"),
    (weather.cut_to_treat, ONLY_EXCEPTIONS, "min|hour|hr|sec"),
    (weather.season, NONE, "sap|from|between|during|after|through|snow|frozen|frost|water|until|winter|spring|summer|autumn|fall|season|dorman|leaf|leaves|bud|flower|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|drought|rainy|nesting|month|growing|soil|thaw|wilt"),
    (around.water, ANY, "feet|foot|ft|yard|meter|mile| m"),
    (around.animals, ANY, "hay|graz|livestock|animal|cattle|forage|feed|harvest|bale|baling|fodder|stock|turning"),
    (around.mixing, ANY, "surfactant|adjuvant|sticker|agent|penetrant|thickener|sulfate|nis|mso|silicone|steel|galvani|mix|within|oil|spray|solution|combin|tank|add|dilut|shelf|prepar|hour|days"),
    (around.keeping, ONLY_EXCEPTIONS, ""),
    (places.places, ANY, ""),
    (states.states, ANY, ""),
    (ways.ways, ANY, ""),
    (sizes.size, ANY, "inch|in.|cm| in "),
    (plants.plants, ANY, ""),
    (plants.roots, ANY, "root|bulletin|trunk|drip|graft|clon|flashback|underground|within"),
)  # fmt: skip
"""What looks for facts, in the order of the closed list; which conditions count; words of which one must stand in a
sentence before it is worth looking."""
_FINDERS = tuple((finder, counts, tuple(filter(None, words.split("|")))) for finder, counts, words in FINDERS)
TEXTS = frozenset(name for name, kind in KINDS.items() if kind.value == "text" and kind.sense == "text") - {
    "ingredient percent"
} | {"plant"}
"""Kinds whose value is words of the label: a condition in them is part of what is proposed."""
_WHOLE_TEXTS = TEXTS - {"plant"}
"""Of these the value is the sentence, whatever it advises."""
SPOKEN_OF = (
    "hay wait",
    "grazing wait",
    "method",
    "method forbidden",
    "plant",
    "site",
    "site forbidden",
    "mix partner forbidden",
    "season forbidden",
)
"""Kinds that a sentence on other work may still tell."""
BY_AIR = (
    "strongest wind",
    "weakest wind",
    "greatest heat",
    "least heat",
    "no inversion",
    "distance to water",
    "distance to wells",
)
"""Kinds of which a sentence on aircraft says nothing for work by hand."""
IN_TALK = ("first aid", "registration number", "establishment number")
"""Kinds that a sentence may tell that speaks of trials or trade."""
MEANT = (
    "year means",
    "container",
    "disposal",
    "first aid",
    "mix partner forbidden",
    "registration number",
    "method",
    "restricted use",
)
"""Kinds that a sentence may tell that says what a word means, or names another product."""
ANYWHERE = ("registration number", "establishment number", "label edition", "restricted use", "signal word")
"""The only kinds that a letter of acceptance can hold: the rest of it speaks to the maker."""


def propose(lines: Sequence[Line]) -> list[Proposed]:
    """All facts proposed from a label's lines, in the label's order, each value of a kind and scope once."""
    return proposed_of(sentences_of(lines))


def proposed_of(sentences: Sequence[Sentence]) -> list[Proposed]:
    """The same from its sentences."""
    found: dict[tuple[str, str, object], Proposed] = {}
    seen: set[tuple[object, ...]] = set()
    for sentence in sentences:
        # A booklet says the same for every use; what was read once has nothing new.
        same = (sentence.text, sentence.under, sentence.part, sentence.picture, sentence.cell)
        if same in seen:
            continue
        seen.add(same)
        for one in _of_sentence(sentence):
            key = (one.kind, one.value.lower(), one.scope)
            found[key] = _together(found[key], one) if key in found else one
    return _without_doubles(found.values())


MOST_PLACES = 20
"""More places of one fact are not kept: engineering guess."""


def _together(have: Proposed, one: Proposed) -> Proposed:
    """A fact that is said twice: the surer place leads, the other is kept beside it."""
    if one.words == have.words or any(one.words == place.words for place in have.also):
        return have
    lead, other = (one, have) if RANK[one.sure] > RANK[have.sure] else (have, one)
    places = [
        place
        for place in (*have.also, Place(other.page, other.boxes, other.words, other.sure))
        if place.words != lead.words
    ]
    return replace(lead, also=tuple(places[:MOST_PLACES]))


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
    """What a sentence says: clauses after a semicolon speak for themselves, under what the first one opened."""
    # "Vapor forms above 85 °F; do not apply then": a rule without a figure is that of the words before it.
    text = _BARE_RULE.sub(", ", sentence.text)
    pieces = [text] if sentence.cell else [p for piece in text.split("; ") for p in apart(piece)]
    first, *more = pieces
    if not more:
        joined = _of_clause(replace(sentence, text=text))
        yield from (replace(one, words=sentence.text) if one.words == text else one for one in joined)
        return
    # A sentence that opens a list of its own no longer stands under the one before it.
    under = first if ":" in first else f"{sentence.under} {first}".strip()
    for clause in [replace(sentence, text=first), *(replace(sentence, text=text, under=under) for text in more)]:
        for one in _of_clause(clause):
            if one.kind not in TEXTS:
                # What only the heading says keeps the heading's words.
                yield replace(one, words=sentence.text) if one.words == clause.text else one
    yield from (one for one in _of_clause(sentence) if one.kind in TEXTS)


_BARE_RULE = re.compile(
    r"; (?=(?:do not|never) (?:apply|spray|treat|inject|work|use (?:it|this product))(?: then| at such times| it)?\W*$|(?:stop|cease|quit)(?: work\w*| spraying| then)?\W*$|wait\W*$|(?:use )?(?:in other states|elsewhere)\b)",
    re.I,
)


def _of_clause(sentence: Sentence) -> Iterator[Proposed]:
    said = Said(sentence)
    low = said.whole.lower()
    hits = [
        (counts, hit)
        for finder, counts, words in _FINDERS
        if not words or holds_any(low, words)
        for hit in finder(said)
    ]
    # Most sentences say nothing: how surely one says it is only asked of the others.
    if hits:
        yield from _weighed(said, hits)


def _weighed(said: Said, hits: Sequence[tuple[int, Hit]]) -> Iterator[Proposed]:
    """What was found in a sentence, each with how sure it is by the sentence's own words."""
    sentence, text = said.sentence, said.text
    force: Force = "avoid" if re.search(r"\bavoid\b", text, re.I) else "should" if ADVICE.search(text) else "must"
    plain: Sure = "sure" if force == "must" else "likely"
    hard = HARD.search(text) or _optional(sentence.text) or ELSEWHERE.search(text)
    soft, seam, told = SOFT.search(text), _SEAM.search(text), _told(said)
    for counts, (kind, value, most) in hits:
        if not told(kind):
            continue
        condition = (hard and counts) or (soft and counts == ANY and not (kind == "equipment" and _TASK.search(text)))
        # That the part is there says its way, whatever the sentence does.
        by_part_alone = kind == "method" and said.part in METHOD_PARTS
        doubt = sentence.picture or (kind not in TEXTS and condition and not by_part_alone)
        own: Sure = "sure" if kind in _WHOLE_TEXTS or by_part_alone else plain
        sure: Sure = "unsure" if doubt else min(own, most, key=RANK.__getitem__)
        if seam and kind not in TEXTS:
            sure = min(sure, "likely", key=RANK.__getitem__)
        # What only its part says of a sentence stands in the heading.
        by_part = kind == "method" and value == said.part and not (ways.names_a_way(text) and DONE.search(text))
        page, boxes, printed = sentence.page, sentence.boxes, sentence.text
        if by_part and sentence.heading_boxes:
            page, boxes, printed = sentence.heading_page, sentence.heading_boxes, sentence.heading
        yield Proposed(kind, value, page, boxes, printed, sure, force, _scope(said, kind))


def _told(said: Said) -> Callable[[str], bool]:
    """Of which kinds a sentence can tell, by what it speaks of: other work, another product, aircraft, trials."""
    letter, text = said.part == "letter", said.text
    other = OTHER_MATTER.search(text) and not OUR_MATTER.search(said.whole)
    means, aerial, talk = NOT_THIS.search(text), AERIAL.search(text), TALK.search(text)
    return lambda kind: (
        not (
            (letter and kind not in ANYWHERE)
            or (other and kind not in _WHOLE_TEXTS and kind not in SPOKEN_OF)
            or (means and kind not in MEANT)
            or (aerial and kind in BY_AIR)
            or (talk and kind not in IN_TALK)
        )
    )


_TASK = re.compile(
    r"\bwhen (?:(?:applying|using|spraying)\b[^.;]{0,40}(?:hand|mix|load)|mixing|loading|cleaning|handling the concentrate)",
    re.I,
)
"""Work during which a piece is worn: what the piece is for, not a condition that may not hold."""
_SEAM = re.compile(
    r"[A-Za-z0-9%)] (?:This|These|Never|Do(?! ?not exceed\b$)|Persons?|Workers?(?! Protection)|Handlers?|Users?|People|The(?! Worker| EPA)|If|When|Apply|Use|Keep|Wear|All|Any|Not|Only|It|Always|Treat|Allow|Wait|Avoid)\b|"
    r"(?:\d|%|\b(?:acres?|years?|applications?|treatments?|days|hours|weeks|months|feet|minutes|gallons?|mph|ae|ai))\)? [A-Z][a-z]{3,}"
)
"""Where two sentences may have run into one for want of a full stop: a figure may then be for what the other speaks of,
so it is never sure."""


def _optional(text: str) -> bool:
    """True for words in brackets, which a master label holds for the maker to leave out."""
    return text.startswith(("[", "{")) or text.rstrip(".").endswith(("]", "}"))


SCOPED = ("strongest mix", "weakest mix", "greatest stem", "least stem", "hours without rain", "strongest wind",
          "weakest wind", "most per year", "most per application", "longest from cut to treatment", "carrier",
          "most applications", "shortest interval", "season forbidden", "adjuvant required", "cut widths apart",
          "most per stem", "carrier forbidden", "entry interval", "distance to water", "distance to wells",
          "mixing distance to wells")  # fmt: skip


def _lands(said: Said, kind: str) -> tuple[str, ...]:
    """The kinds of land a fact is for; the marsh from which a distance is kept is none of them."""
    return tuple(name for name in said.sites if not (kind.startswith("distance") and name == "wet"))


def _scope(said: Said, kind: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """For which ways, places, states or people a fact is, by the sentence's own words, else by the part it stands in."""
    if kind == "equipment":
        return _role(said)
    if kind not in SCOPED:
        return ()
    own = said.methods if kind not in SAID_ONLY else said.named
    found = (("method", own), ("site", _lands(said, kind)), ("state", said.states))
    return tuple((name, values) for name, values in found if values)


SAID_ONLY = ("distance to water", "distance to wells", "mixing distance to wells", "entry interval", "shortest interval",
             "most applications", "most per year", "most per application", "strongest wind", "weakest wind")  # fmt: skip
"""Kinds that hold for every way unless their own sentence names one, whatever the part they stand in."""


def _role(said: Said) -> tuple[tuple[str, tuple[str, ...]], ...]:
    if said.part == "farm workers" or said.has(
        r"early[- ]\s?(?:re-?)?entry|\b(?:go|goes|going) in early\b|\bbefore the (?:REI|restricted[- ]entry interval) ends\b|\bent(?:er|ers|ering|ry) (?:\w+ )?early\b|"
        r"\bent(?:er|ers|ering)\b[^.;]{0,30}\bbefore\b[^.;]{0,40}\b(?:interval|REI)\b"
    ):
        return (("role", ("early entry",)),)
    text = said.text if re.search(r"\bmix|\bload|\bappl|\bhandler", said.text, re.I) else said.whole
    # "When mixing wear goggles; none are called for while applying."
    text = re.sub(
        r"[;,.] *(?:no|not|none)\b[^.;]*|\b(?:listed|required|prescribed|asked) (?:for|of) applicators", " ", text
    )
    mixes = said.part == "mixing" or _MIXES.search(text)
    if mixes and not _APPLIES.search(text):
        return (("role", ("mixer",)),)
    return ()


_MIXES = re.compile(
    r"\bmix(?:ing|ers?|es)?\b|\bload(?:ing|ers?)?\b|\bclean(?:ing|ers?|s)?(?:,| (?:of )?(?:spray )?(?:equipment|gear)\b)|\bhandling the (?:concentrate|undiluted)|\bpour|\bfill\w* (?:the )?(?:spray )?tanks?|\bnurse tank|"
    r"\b(?:is|are) mixed\b|\bmops? up\b|\bdrawing off\b|\badd\b[^.;]{0,30}\btank",
    re.I,
)
_APPLIES = re.compile(
    r"\bapplicators?\b|\bapplying\b|\b(?:all|other) handlers|\ball (?:tasks|work)\b|\b(?:or|and) (?:spread|spray|apply|use)\b|\b(?:spread|spray|apply|use) or\b",
    re.I,
)
