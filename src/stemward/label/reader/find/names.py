"""Common names of woody plants in running text, in lists, and in rows of tables, however they are turned."""

import re
from collections.abc import Iterator

from stemward.label.reader.phrases import PLANT_NOUNS

_KIND_OF = frozenset(
    "red white black sugar silver common glossy poison sweet green box autumn russian norway striped bigtooth tree multiflora quaking princess japanese chinese european mockernut shagbark pignut "
    "bitternut laurel smooth staghorn brazilian loblolly longleaf shortleaf slash eastern southern winged slippery rock sweetbay chestnut willow sitka honey western american english wild mountain "
    "water pin scarlet post live yellow paper river gray grey flowering velvet blue amur tatarian morrow callery himalayan scotch french douglas golden oregon bitter bigleaf vine blackjack cherokee "
    "macartney virginia pitch choke fire cherry wax camphor java lead strawberry australian oriental burning one-seed red-osier".split()
)
_KIND = "|".join(sorted(_KIND_OF, key=len, reverse=True))
_NOUN = PLANT_NOUNS.pattern.removesuffix("$")
_NAME = re.compile(r"[A-Za-z][A-Za-z'’-]+(?: [A-Za-z][A-Za-z'’-]+){0,3}")
_KNOWN = re.compile(rf"(?<![-\w])(?:(?:(?i:{_KIND})[ -])*|(?<=[a-z,] )[A-Z][a-z]+ )(?i:{_NOUN})(?![-\w])")
"""A known name with the words for its kind before it."""
_ONLY_KINDS = "|".join(
    kind for kind in sorted(_KIND_OF, key=len, reverse=True) if kind != "tree" and not PLANT_NOUNS.search(kind)
)
_KINDS_THEN = re.compile(rf"\b((?:(?:{_ONLY_KINDS})(?:, and |, or |, | and | or | & ))+)({_KIND}) ({_NOUN})", re.I)
"""Several kinds before one name: "red, white and black oaks"."""
_WORD = r"(?:[A-Za-z]+(?:-[A-Za-z]+)*)"
_KINDS_BEHIND = re.compile(
    rf"\b(?P<noun>{_WORD}(?: tree)?)\s?(?:\(|:\s|\s-\s|-(?=(?:{_KIND}), ))(?P<kinds>(?:(?:{_KIND}|{_WORD})(?:, and |, or |, | and | or | & )?)+?)(?:\)|(?=\s*(?:[|;.]|$)))",
    re.I,
)
"""Kinds behind a name: "Maples (red, sugar)", "Elm - American, slippery"."""
_COMMA_KINDS = re.compile(rf"^({_WORD}), ((?:{_WORD}(?:, and |, or |, | and | or | & )?)+)$")
"""A name turned round: "Maple, red", "Honeysuckle, Amur, Morrow and Tatarian"."""
_LATIN = re.compile(r"^[A-Z][a-z]+ (?:[a-z]{3,}(?:a|us|um|is|ii|ens|ans|oides|iae)|spp?\.?|x [a-z]+)$")
_MARKS = re.compile(r"(?<=[a-z])[\d¹²³†‡§*]+(?:,[\d¹²³]+)*|[†‡§*¹²³]")
_SHORT_BRACKET = re.compile(r"\s*\([^)]*\)")
_NO_NAME = re.compile(
    r"\b(?:label|product|gal|equivalent|rates?|year|others?|pages?|invented|tests?|only|control(?:led|s)?|species|listed|following|treat\w*|suppress\w*|"
    r"application|apply|use|need|hard|plants?|brush|weeds?|trees controlled|well|figure|table|see|continued|acid|acre|not|is|are|by|in|along|on|to|from|with|except\w*|basal|bark|stump|foliar|(?<!-)of(?!-))\b",
    re.I,
)
_GENERIC = re.compile(
    r"\s+(?:seedlings?|saplings?|sprouts?|resprouts?|trees?|bushes|shrubs?|vines?|species|spp\.?|stems?|brush|plants?|clumps?|thickets?|hybrids?)$",
    re.I,
)


def _bare(name: str) -> str:
    """A plant's name without the word for its form: "kudzu vines" is kudzu, "princess tree" stays."""
    while (shorter := _GENERIC.sub("", name)) != name and (PLANT_NOUNS.search(shorter) or not PLANT_NOUNS.search(name)):
        name = shorter
    return name


def _one(noun: str) -> str:
    """One of them: "hickories" is hickory, "maples" maple."""
    return re.sub(r"(?<=[^aeiou])ies$", "y", noun) if noun.endswith("ies") else re.sub(r"(?<=[^su])s$", "", noun)


def _kinds(words: str) -> list[str]:
    return [kind for kind in re.split(r"\s*(?:,|&|\band\b|\bor\b)\s*", words) if kind]


def _with_kinds(m: re.Match[str]) -> str:
    """Each kind before the name, where what stands before is a plant and what stands behind are words for kinds."""
    noun, kinds = m["noun"].lower(), _kinds(m["kinds"])
    if not PLANT_NOUNS.search(noun) or any(PLANT_NOUNS.search(kind) and kind.lower() not in _KIND_OF for kind in kinds):
        return m[0]
    return ", ".join(f"{kind.lower()} {_one(noun)}" for kind in kinds)


def _plain(text: str) -> str:
    """A list with marks, Latin names and brackets gone, and kinds set before their names."""
    text = _MARKS.sub("", text)
    # "Ailanthus altissima (tree-of-heaven)": where the Latin name stands first, the name is in the brackets.
    text = re.sub(
        r"\b([A-Z][a-z]+(?: (?:[a-z]{4,}|spp?\.))?) \(([^)]*)\)",
        lambda m: (
            f", {m[2]}, "
            if PLANT_NOUNS.search(m[2]) and not PLANT_NOUNS.search(m[1]) and not _kinds_only(m[2])
            else m[0]
        ),
        text,
    )
    text = _KINDS_BEHIND.sub(_with_kinds, text)
    text = _SHORT_BRACKET.sub("", text)
    return _KINDS_THEN.sub(lambda m: ", ".join(f"{kind} {_one(m[3].lower())}" for kind in (*_kinds(m[1]), m[2])), text)


def _kinds_only(words: str) -> bool:
    return all(kind.lower() in _KIND_OF for kind in _kinds(words))


def known_names(text: str) -> list[str]:
    """All names known for those of woody plants in a text, in order, each once."""
    found = (m[0].strip().lower() for m in _KNOWN.finditer(_plain(text)))
    return list(dict.fromkeys(_bare(name) for name in found))


def _piece(piece: str) -> list[str]:
    """The names of one piece of a list: turned round where the kind stands behind."""
    if (m := _COMMA_KINDS.match(piece)) and PLANT_NOUNS.search(m[1]):
        kinds = _kinds(m[2])
        if all(kind.lower() in _KIND_OF or (kind[0].isupper() and not PLANT_NOUNS.search(kind)) for kind in kinds):
            return [f"{kind} {_one(m[1].lower())}" for kind in kinds]
    return [
        p.strip(" .")
        for p in re.split(r",|/|\s+as well as\s+|\s+and\s+|\s+or\s+|\s+&\s+", piece, flags=re.I)
        if p.strip(" .")
    ]


def _side_by_side(piece: str) -> list[str]:
    """Names that stand side by side in columns, or one before other words of its row, as the known ones among them."""
    if "," in piece or len(piece.split()) > MOST_WORDS or PLANT_NOUNS.fullmatch(piece):
        return [piece]
    found = list(_KNOWN.finditer(piece))
    covered = sum(len(m[0].split()) for m in found)
    if len(found) > 1 and covered == len(piece.split()):
        return [m[0] for m in found]
    if found and found[0].start() == 0 and not _VERBS.search(piece) and not PLANT_NOUNS.search(_bare(piece)):
        return [found[0][0]]
    return [piece]


MOST_WORDS = 7
"""A longer piece is no row of a list: engineering guess."""
_VERBS = re.compile(r"\b(?:and|or|may|is|are|will|can|should|must|was|in|of|with)\b", re.I)


def names_in_list(text: str, under_heading: bool) -> Iterator[tuple[str, bool]]:
    """The names of a list, and whether each is a known one. under_heading: whether unknown names are taken too."""
    text = re.sub(r"\s*\([^)]*\d[^)]*\)", "", text)
    text = re.sub(r"\s*(?:\.{2,}|\s-\s)\s*[^;•]*\d.*$", "", text).rstrip(".:")
    text = re.sub(
        r"(?<=[a-z])\s+\d(?=,|\s*$)|\s+\d[\d./ to-]*(?:%|fl oz|oz|qt|pt|gal|lb)(?: .*)?$|\s+-\s+[A-Z][a-z]+ [a-z]+$",
        "",
        text,
    )
    text = re.sub(r"\s+-\s+(?:suppress\w*|control\w*|top-?kill\w*)(?: only)?", "", text, flags=re.I)
    if re.search(r"\d|%", _MARKS.sub("", text)):
        return
    latin = re.search(r"\s+([A-Z][a-z]+ (?:spp?\.?|[a-z]{4,}))$", text)
    text = _plain(text[: latin.start()] if latin and not PLANT_NOUNS.search(latin[1]) else text)
    # "Species: ...", "For ...": what opens a list, and what closes it.
    opener = re.match(r"(?:for |[A-Za-z ]{3,30}: )", text, re.I)
    text = text[opener.end() :] if opener and not PLANT_NOUNS.search(opener[0].strip(": ")) else text
    text = re.sub(r"\s+only$|,? and (?:related|other) \w+$", "", text)
    pieces = [p.strip(" .") for p in re.split(r"[;•]|\s-\s|\s\d{1,2}\.\s", text) if p.strip(" .")]
    if len(pieces) == 1 and "," not in text and len(text.split()) > 4 and under_heading:
        # Names set one after another, each with a capital.
        pieces = re.split(r"(?<=[a-z]) (?=[A-Z][a-z])", text)
    pieces = [part for piece in pieces for part in _side_by_side(piece)]
    names = [
        name
        for piece in pieces
        for name in _piece(re.sub(r"^(?:the )?following(?: \w+){0,2}:\s*", "", piece, flags=re.I))
    ]
    sentence = len(names) == 1 and len(names[0].split()) > 4
    for name in names:
        bare = _bare(
            re.sub(r"^(?:most |some |many |all |both |young |unwanted |undesirable |and |or )+", "", name, flags=re.I)
        )
        if (
            sentence
            or not _NAME.fullmatch(bare)
            or _NO_NAME.search(bare)
            or (bare.lower() in _KIND_OF and not PLANT_NOUNS.search(bare))
            or _LATIN.match(bare)
        ):
            continue
        if PLANT_NOUNS.search(bare) or (under_heading and len(names) > 1):
            yield bare.lower(), True
        elif under_heading and text[:1].isupper() and len(bare.split()) <= 3:
            yield bare.lower(), False


def names_of_row(text: str) -> list[str]:
    """The names in a row's cells: the cells that hold known names, or the first one."""
    found: list[str] = []
    for n, cell in enumerate(text.split("|")):
        cell = cell.strip()
        if _LATIN.match(_MARKS.sub("", cell)) or re.search(r"\d\s*%", cell):
            continue
        pairs = list(names_in_list(cell, under_heading=False))
        if (
            pairs
            and all(known for _, known in pairs)
            and (n == 0 or not re.search(r"\b(?:suppress|control|dose|repeat|use|apply)\w*\b", cell, re.I))
        ):
            found += [name for name, _ in pairs]
    return list(dict.fromkeys(found))
