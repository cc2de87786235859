"""Ways it may be used, and whether the label keeps to the ways, plants and rates that it names."""

import re

from stemward.label.reader.find.names import known_names
from stemward.label.reader.phrases import ANY_STATE, DONE, FORBIDS, NEGATED, YES_NO
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said, ways_in


def ways(s: Said) -> Hits:
    """Ways it may be used, ways it may not, and whether the label keeps to those it names."""
    if s.part in (
        "warranty",
        "letter",
        "first aid",
        "storage",
        "equipment",
        "farm workers",
        "others",
        "hazards to people",
    ):
        return
    # "..., which works through the foliage alone" tells of no way of its own.
    named = ways_in(re.split(r",? (?:which|because|since)\b", s.text)[0]) if s.named else ()
    forbidden = re.search(FORBIDS, s.text, re.I) or (s.under and re.search(rf"(?:{FORBIDS})[^.;]*:", s.under, re.I))
    alone = re.search(
        r"\bonly\b|\blimited to\b(?! (?:stumps|stems|trees|plants))|\bsole\b|\bno others?\b|\bnothing else\b|\bexclusively\b",
        s.text,
        re.I,
    )
    rows = [m for m in YES_NO.finditer(s.text) if ways_in(m[1])]
    if rows:
        for m in rows:
            for name in ways_in(m[1]):
                yield Hit(
                    "method" if m[2].lower() in ("yes", "allowed", "permitted") else "method forbidden", name, "likely"
                )
    elif (
        named
        and not forbidden
        and (only := _ONLY_SO.search(s.text))
        and ways_in(s.text[only.start() :])
        and (DONE.search(s.text) or s.text.isupper())
    ):
        yield Hit("only listed methods", "yes", "likely")
        for name in named:
            yield Hit("method", name, "likely")
    elif named and alone and forbidden:
        yield Hit("only listed methods", "yes", "likely")
    elif named and forbidden:
        if (
            not ANY_STATE.search(s.sentence.text)
            and not s.on_land
            and not _CONDITION.search(_ruling(s.text))
            and _WAY_BARRED.search(s.text)
        ):
            for name in named:
                yield Hit("method forbidden", name)
    elif _IN_PASSING.search(s.text) and s.part not in METHOD_PARTS:
        pass
    elif s.part in METHOD_PARTS:
        yield Hit("method", s.part)
        if s.part != "girdle" and re.match(
            r"[\w ,-]{0,30}\bgirdl(?:e|ing) (?:treatments?|methods?|applications?)\b|girdles? (?:or|and) frills?|frills? (?:or|and) girdles?",
            s.text,
            re.I,
        ):
            yield Hit("method", "girdle", "likely")
    elif named and _MIX_ROW.match(s.text):
        for name in ways_in(_MIX_ROW.match(s.text)[0]):  # type: ignore[index]
            yield Hit("method", name, "likely")
    elif (
        DONE.search(s.text) or re.search(r"\b(?:methods?|ways?|techniques?)\b", s.whole, re.I)
    ) and not NEGATED.search(s.text):
        claimed = _CLAIMED.search(s.whole) and (_WAY.search(s.text) or len(s.text) < MOST_PLAIN)
        for name in named if claimed else ():
            yield Hit(
                "method",
                name,
                "sure"
                if s.part in ("sites", "directions", "front", "other", "restrictions")
                and _WAY.search(s.text)
                and _ALLOWS.search(s.text)
                else "likely",
            )
    low = s.text.lower()
    if re.search(r"\bcalibrat", low):
        return
    for kind, words, patterns in _CLOSED:
        if not any(word in low for word in words):
            continue
        if any(pattern.search(s.text) for pattern in patterns):
            yield Hit(kind, "yes")
        elif (kind == "only listed plants" and _these_alone(s.text)) or (
            kind in _LISTED and _closed_somehow(s.text, _LISTED[kind])
        ):
            yield Hit(kind, "yes", "likely")


_ONLY_SO = re.compile(
    r"\bonly as (?:an? )?(?=cut|basal|stump|foliar|frill|tree inj|girdl)|\bfor (?:[\w-]+ ){1,3}only\W*$|\b(?:applied|used?|application|treatments?)\b[^.;]{0,20}\bonly (?:by|in)\b(?! (?:certified|licensed|trained|persons))|\bfor (?:[\w-]+ ){1,3}(?:application|treatment|use)s? only\W*$",
    re.I,
)
_IN_PASSING = re.compile(
    r"\b(?:was|were|had|been|(?:described|discussed|explained|covered)(?= (?:elsewhere|in (?:a|another|the) (?:separate|bulletin|booklet)))|taught|learn\w*|training|course|video|bulletin|brochure|see|refer|ask|consult|other (?:products|labels|herbicides)|costs?|slower|faster|takes?|years ago|compared?|unlike|history)\b",
    re.I,
)
"""Words of a sentence that names a way in passing."""


def _ruling(text: str) -> str:
    """The piece of a sentence that forbids a way, without the reason before it and the rule behind it."""
    if re.match(r"\W*(?:when|while|if|during|where|until)\b", text, re.I):
        return text
    pieces = re.split(r",\s+(?!or\b|and\b)|\band (?=(?:shall|must|may|do|should) not)", text)
    return next((piece for piece in pieces if ways_in(piece) and re.search(FORBIDS, piece, re.I)), text)


_MIX_ROW = re.compile(r"[\w ,()/-]{3,40}?(?::|\|)(?=.*(?:%|\bundiluted\b|\b(?:fl oz|oz|pt|qt|gal)\b|\bparts?\b))", re.I)
"""A row that gives a mix for the way it opens with."""
_CLAIMED = re.compile(
    r"\b(?:may|can|must|should|is to|are to|has to) (?:also |still )?be (?:used|applied|treated|sprayed|injected|made|painted|put|done|employed)\b|(?:^|, |: )\W*(?:use|apply|choose|treat|spray|inject|paint)\b|"
    r"\b(?:use|apply|treat|spray|inject|paint)(?: \w+){0,4} (?:as|by|with|in|to|into|onto|for|on)\b|\bfor (?:use|basal|foliar|cut|stump|tree|hack|frill|control|inject|leaf|spray|the control)|\b(?:labell?ed|approved|registered|suited|suitable|intended|effective|works? as|permitted|allowed|recommended)\b|"
    r"\bmethods?\b|\bways?\b|\btechniques?\b|\bapplied\b|\bdescribed (?:further|below|here)|\bdirections (?:are|for)\b|\buses?:|\bcontrols?\b[^.;]*\b(?:by|as|when)\b",
    re.I,
)
"""Words of a sentence that says that a way may be used."""
_ALLOWS = re.compile(
    r"\b(?:may|can|must|is to|are to) be\b|\bfor (?:use|treat|appl|foliar|basal|cut|stump)|\b(?:use|apply|treat|spray|inject|paint|wet)\b(?! of)|\b(?:labell?ed|approved|registered|suited|suitable|works|effective)\b|\bmethods?\b",
    re.I,
)
"""Words that allow or order."""


def names_a_way(text: str) -> bool:
    """True for words that name a way of treating, and not only a part of a plant."""
    return bool(_WAY.search(text))


MOST_PLAIN = 45
"""A longer sentence that names only the part of a plant tells of no way: engineering guess."""
_WAY = re.compile(
    r"cut[- ](?:stump|surface)|stump (?:treat|appl|spray)|basal[- ](?:bark|spray|treat|appl)|hack[- ]?(?:and|&|n)[- ]?squirt|\bfrill|\binject|\bfoliar\b|foliage spray|leaf spray|girdl|thin ?-?line|streamline|"
    r"(?:treat|appl|spray)\w*[^.;]{0,40}\bstumps?\b|stumps?\b[^.;]{0,20}\b(?:treated|sprayed|painted)",
    re.I,
)
"""Words that name a way and not only a part of a plant."""
_CONDITION = re.compile(
    r"\d|\b(?:January|February|March|April|June|July|August|September|October|November|December)\b|\b(?:others?|confined|ground|spring|summer|fall|autumn|winter|season|then|when|while|whenever|once|sap|if|during|within|until|unless|exceed|wet|frozen|run-?off|after|before|inversions?|winds?|rain|enter|entry|drip|"
    r"near|roots?|graft\w*|dilut\w*|mix|mixed|rates?|stronger|weaker|graz\w*|contact|desirable|carriers?|oils?|water|surfactant|other methods?|listed|below|that)\b",
    re.I,
)
_WAY_BARRED = re.compile(
    r"\b(?:appl(?:y|ied|ications?)|treat(?:ments?|ed)?|us(?:e|ed)|spray(?:s|ed|ing)?|inject(?:ed|ion|ions)?|methods?|put|paint(?:ed)?|squirt|frill(?:s|ing)?|girdl\w+)\b",
    re.I,
)
_TIGHT = r"\b(?:only|solely|exclusively|(?:is|are) (?:limited|restricted|confined) to|limited to|restricted to)\b"
_NAMED = r"\b(?:named|listed|specified|shown|stated|described|given|appear(?:s|ing)?|set forth|hereinafter|here|below|above|on (?:this|the) label|in (?:this|the) (?:label(?:ing)?|table|list))\b"
_UNNAMED = rf"(?:\b(?:not|does not|do not|is not|are not|other than|except)\b[^.;]{{0,30}}?{_NAMED}|\b(?:fails? to name|does not identify|do not (?:expressly )?authori[sz]e)\b|\bother than (?:those|the ones)\b|\b(?:label|table|list) does not (?:name|list|show|describe)\b|\bunlisted\b)"
_KINDS_OF_PLANT = r"\b(?:species|plants?|weeds?|brush|trees?|targets?|hardwoods?|vegetation)\b"
_RATE = r"\b(?:rates?|dosages?|doses?|amounts?)\b"


_NOT_DONE = rf"{FORBIDS}|\bnot permitted\b|\bmisuse\b|\bviolation\b|\boff[- ]label\b|\bdoes not allow\b"


def _closed(what: str) -> tuple[re.Pattern[str], ...]:
    """How a label says that it keeps to what it names."""
    return tuple(
        re.compile(pattern, re.I)
        for pattern in (
            rf"(?:{_TIGHT}|\b(?:limit|confine|restrict) (?:\w+ ){{1,3}}to\b)[^.;]*{what}[^.;]*{_NAMED}",
            rf"\b(?:limit|confine|restrict) (?:\w+ ){{1,3}}to (?:the )?(?:listed|named) {what}",
            rf"{_TIGHT}[^.;]*(?:listed|named|specified|described)\s+(?:\w+ )?{what}",
            rf"{what}[^.;]*{_TIGHT}[^.;]*{_NAMED}",
            rf"{what}[^.;]*{_UNNAMED}[^.;]*(?:{_NOT_DONE})",
            rf"(?:{_NOT_DONE})[^.;]*{what}[^.;]*{_UNNAMED}",
            rf"\bno (?:other )?(?:application )?{what}[^.;]*{_UNNAMED}|\bno other (?:application )?{what}\b[^.;]*\bmay be (?:used|treated|employed)",
            rf"\bany {what}[^.;]*{_UNNAMED}[^.;]*(?:{_NOT_DONE})",
            rf"\b(?:listed|following|named|labell?ed) (?:\w+ )?{what} only\b|\bonly (?:the )?(?:listed|following|named|labell?ed) (?:\w+ )?{what}",
            rf"\bnot for {what}[^.;]*{_UNNAMED}|\b(?:listed|following|named) (?:\w+ )?{what} alone\b|\b(?:use|apply|by|in) no other {what}|\bcontrol of any other {what}|\bno (?:\w+ ){{0,3}}{what} (?:but|other than|except|save)\b|{what}[^.;]*\bmust be (?:on|named|listed|identified)\b|^\W*other {what}\b[^.;]*(?:{_NOT_DONE})|{what}[^.;]*\ball others (?:are )?prohibited|\bpermitted {what}[^.;]*\bno others\b|"
            rf"\blist of {what} is (?:exclusive|complete|closed)|\bkeep to the (?:listed|named) {what}|\bno(?:ne| others?) (?:besides|else)?,? may\b",
            rf"\b(?:treat(?:ment|ing)(?: of)?|use (?:on|against|of)|control of|any|no|all) (?:any )?other {what}\b[^.;]*(?:{_NOT_DONE}|\bleft untreated|\bleft alone)",
            rf"(?:do not|never) (?:treat|use (?:it |this product )?(?:on|against)|control|apply (?:it |this product )?(?:to|by)) (?:any )?other {what}|\bfor no other {what}",
            rf"\b(?:unlisted|unnamed) (?:application )?{what}[^.;]*(?:{_NOT_DONE})|(?:{_NOT_DONE})[^.;]*\b(?:unlisted|unnamed) {what}",
        )
    )


_LISTED = {
    "only listed plants": r"\b(?:species|plants?|weeds?|brush|trees?|targets?|pests?|vines?)\b",
    "only listed methods": r"\b(?:methods?|techniques?|means|manners?|ways)\b",
}
_A_LIST = r"\b(?:lists?|listed|tables?|named?|below|label\w*|here|sections?|appears?|enumerated|specified|set out|found in|following|given|explained|described|booklet|pamphlet|directions)\b"
_SHUT = rf"\b(?:only|sole|solely|exclusively|nothing else|no others?|no (?:other )?(?:plants?|species|brush|methods?)|confined|restrict(?:ed)?|leaves out|limited|absent|beyond|outside|unless|save|other than|lawful targets?|violates)\b|{FORBIDS}"
_NOT_SHUT = r"\balso\b|\btoo\b|\b(?:desirable|kept|wanted)\b|\bonly (?:partially|suppress|at|with|when|if)\b|\d\s*(?:%|lb|qt|gal|feet|ft|in\b)|\bmay (?:also|be treated too)\b|\b(?:state|county|permit|wind|rain|label rates?|calibration|cleaning|disposal|nozzles)\b"


_ONLY_THESE = re.compile(
    r"\b(?:exclusively|solely|only) (?:to control|for (?:the )?control of|on|against|for) ([^.;]{3,60})|\b(?:confined|restricted) to ([^.;]{3,80})",
    re.I,
)
"""Plants to which the use is kept by their names."""


def _these_alone(text: str) -> bool:
    """True for a sentence that keeps the use to plants by their names."""
    m = _ONLY_THESE.search(text)
    return bool(m and known_names(" ".join(filter(None, m.groups()))))


def _closed_somehow(text: str, what: str) -> bool:
    """True for a sentence that speaks of plants or of ways, of a list of them, and shuts it."""
    found = [re.search(pattern, text, re.I) for pattern in (what, _A_LIST, _SHUT)]
    if re.search(r"\bonly [A-Z]{4,}", text) and not text.isupper():
        # A running head that was set into the sentence.
        return False
    shut = re.search(
        rf"{what}[^.;]*\b(?:absent|beyond|outside|not (?:named|listed|specified|found|shown|on|in)|other than)\b|\b(?:only|solely|exclusively|sole|confined|limited|restrict(?:ed)?|no others?|nothing else|save|unless|leaves out|leave out)\b[^.;]*|"
        rf"\b(?:other than|beyond|outside|absent)\b[^.;]*",
        text,
        re.I,
    )
    return all(found) and bool(shut) and not re.search(_NOT_SHUT, text, re.I)


_CLOSED = (
    (
        "only listed methods",
        ("method", "manner", "way", "techni", "means", "procedure"),
        _closed(r"\b(?:methods?|manners?|ways?|procedures?|techniques?)\b"),
    ),
    (
        "only listed plants",
        ("species", "plant", "weed", "brush", "tree", "target", "pest", "vine", "hardwood", "vegetation"),
        _closed(_KINDS_OF_PLANT),
    ),
    (
        "less is forbidden",
        ("rate", "dos", "amount", "less ", "under", "below"),
        tuple(
            re.compile(pattern, re.I)
            for pattern in (
                rf"(?:{FORBIDS})[^.;]*\b(?:less than|lower|lesser|reduced|below|under|reduce|smaller)\b[^.;]*{_RATE}",
                rf"(?:{FORBIDS})[^.;]*{_RATE}[^.;]*\b(?:less|lower|below|under)\b",
                rf"\b(?:lower|reduced|smaller|less)\b[^.;]*{_RATE}[^.;]*(?:{FORBIDS})",
                rf"{_RATE}[^.;,]*\b(?:lower|less|below|under)\b[^.;,]*(?:{FORBIDS})",
                r"\bfull (?:label(?:l?ed)? )?rates? only\b|\bonly (?:at|use) the full\b",
                rf"{_RATE}[^.;]*\bleast (?:that|which) (?:may|can) be (?:applied|used)|\bdo not go (?:under|below) (?:it|the label)",
                r"not (?:allowed|permitted|lawful) to (?:apply|use) (?:less|lower)",
                rf"\bno (?:reduced|lower) {_RATE}|{_RATE}[^.;]*\bnor\b[^.;]*\b(?:cut|lowered|reduced|below)\b|\bneither raise nor lower\b[^.;]*{_RATE}|(?:{FORBIDS})[^.;]*{_RATE}[^.;]*\bbeneath\b|(?:{FORBIDS}|\bunlawful\b)[^.;]*\bless (?:product|herbicide)\b",
                rf"\bsub-?label rates?[^.;]*(?:{FORBIDS})|\bunder-?dos(?:e|ing)\b[^.;]*(?:{FORBIDS})|(?:{FORBIDS})[^.;]*\bunder-?dos",
                rf"(?:{FORBIDS})[^.;]*\b(?:cut|shave|skimp)\b[^.;]*{_RATE}|\bonly at the {_RATE}[^.;]*\b(?:given|listed|stated|shown)\b|{_RATE}[^.;]*\bboth (?:the )?(?:minimum|least) and\b",
                rf"(?:{FORBIDS})[^.;]*\b(?:less than|under|below) [\d./]+ (?:qt|pt|gal|fl oz|oz|lb)\b[^.;]*\bacre",
            )
        ),
    ),
)
