"""On what and how it may be used: places, ways, plants, size of stems."""

import re

from stemward.label.reader.phrases import (
    ANY_PLACE,
    DONE,
    FORBIDS,
    LENGTH,
    METHODS,
    NEGATED,
    NUMBER,
    PLACES,
)
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said, Sure

_NOT_ON = re.compile(
    r"(?:never|must not|may not|shall not|cannot) (?:be )?(?:use|used|apply|applied|treat|treated|spray|sprayed)\b[^.;]{0,60}?\b(?:on|in|around|to|for|near|within)\b|"
    r"(?:do not (?:use|apply|treat)|not (?:be used|be applied|intended|labell?ed|registered|for use|recommended|permitted))\b[^.;]{0,60}?\b(?:on|in|around|to|for|near|as|within)\b|"
    r"not for (?:use|application) (?:on|in|around|to|by|near)|prohibited (?:on|in)",
    re.I,
)
_FOR_USE = re.compile(
    r"for use (?:on|in|along|around|at|by)|permissible to (?:treat|use|apply)|is permitted (?:on|in)|may be (?:used|applied) (?:on|in|to|along|around|for)|\buse (?:this product )?(?:on|in|along|around)\b|"
    r"for (?:the )?(?:control|management|suppression|treatment)\b[^.]*\b(?:in|on|along|around)\b|controls?\b[^.]*\b(?:in|on|along|around)\b|"
    r"\bsites?\b(?: such as| including|:| are| listed)|(?:registered|labell?ed|approved|intended|designed|recommended) (?:for use )?(?:for|on|in)|"
    r"use sites?|including|can be used (?:on|in|to|along|around)|may be (?:used|applied) (?:where|under)|(?:apply|treat)\b[^.;\d]{0,60}\b(?:growing )?(?:in|on|along)\b",
    re.I,
)
_NO_SITE = re.compile(
    r"\bdrift|\brun-?off|\binjur|\bleach|contaminat|rotat|\bplant(?:ing|ed)?\b|manure|compost|mulch|sensitive|adjacent|desirable|downwind|irrigat|livestock from|move|"
    r"\bgraz|\bhay\b|broadcast rate|\bdispos",
    re.I,
)


_ON_IT_BARRED = re.compile(
    r"\b(?:use|application)s? (?:on|in|around|to) ([^.;]*?) (?:is|are) (?:prohibited|not (?:permitted|allowed|recommended))",
    re.I,
)


_NOT_TREATED = re.compile(
    r"\b(?:(?:must|may|shall) not|are not to|is not to|never to) be (?:treated|sprayed)\b|\b(?:are|is) (?:excluded|no (?:use )?sites?|not (?:use |labell?ed |registered )+sites?|not (?:labell?ed|registered)(?: uses?)?)\b",
    re.I,
)


_AMOUNT = re.compile(
    r"\b(?:more|less|greater|higher|lower|longer|sooner) than\b|\bexceed|\bin excess\b|\d\s*(?:lb|qt|pt|gal|fl oz|%)",
    re.I,
)
"""In a rule against more than so much: no ban of the place."""


_BARRED_PLACE = (
    # What stands behind is the place: a rule against using, treating, spraying it, or a list of what is not allowed.
    re.compile(
        r"(?:\b(?:do not|don't|never|must not|may not|shall not|cannot|avoid|not to be|under no circumstances(?: is it to be)?|in no case) (?:be )?(?:us(?:e|ed|ing)|appl(?:y|ied|ying|ication)|treat(?:ed|ing)?|spray(?:ed|ing)?)\b|"
        r"\b(?:sites?|places?|uses?|areas?)[^.;:]{0,20}\bnot (?:allowed|permitted|registered|covered)\b:?|\bno (?:registered |labell?ed |approved )?(?:us(?:e|es)|applications?|treatments?) (?:is |are )?(?:in|on|around|to|for)\b|"
        r"\bnot (?:a product |an herbicide )?(?:labell?ed|registered|intended|meant|approved|suited|for use)? ?(?:for|on|in|around)\b|\bkeep\b[^.;]{0,30}\b(?:out of|off|away from)\b|\bno part of\b|\banywhere but (?:on|in)\b|\bviolation to (?:use|apply) (?:it|this product)? ?(?:on|in)?|\bnever (?:to )?reach\b)(?P<after>[^.;]*)",
        re.I,
    ),
    # What stands before is the place.
    re.compile(
        r"(?P<after>[^.;]*?)(?:\b(?:is|are) (?:prohibited|forbidden|unlawful|excluded|not (?:to be )?(?:allowed|permitted|treated|sprayed|covered|registered|use sites))|\b(?:may|must|shall|can) ?not be (?:treated|sprayed)|:\s*(?:do not|not)\b|\bprohibited\b|\boff limits\b)",
        re.I,
    ),
)
_OTHER_OBJECT = re.compile(
    r"^\W*(?:equipment|sprayers?|containers?|manure|compost|water|hay|clippings|this water|any sprayer)\b|\b(?:once|twice|until|unless|within|while|when|if|before|after|without|during)\b|\bgraz(?:e|ed|ing)\b(?! land)|\bnear\b|\bdownwind\b",
    re.I,
)


def _barred_somehow(text: str) -> str:
    """The words that name a place which a sentence keeps the product from; "" where it does not."""
    for pattern in _BARRED_PLACE:
        m = pattern.search(text)
        if m and ANY_PLACE.search(m["after"]) and not _AMOUNT.search(text):
            after = re.split(r"\bunless\b|\bexcept\b|\bother than\b|\bwhere\b", m["after"], maxsplit=1)[0]
            if not _OTHER_OBJECT.search(after) and not _NO_SITE.search(re.sub(r"\bplant(?:ing|ed)s?\b", " ", after)):
                return after
    return ""


def places(s: Said) -> Hits:
    """Kinds of land it may be used on, and those it may not."""
    if not ANY_PLACE.search(s.text) or s.part in (
        "warranty",
        "letter",
        "first aid",
        "storage",
        "environment",
        "farm workers",
    ):
        return
    if m := _ON_IT_BARRED.search(s.text):
        for name, pattern in PLACES:
            if pattern.search(m[1]):
                yield Hit("site forbidden", name)
        return
    if m := _NOT_TREATED.search(s.text):
        for name, pattern in PLACES:
            if pattern.search(s.text[: m.start()]):
                yield Hit("site forbidden", name)
        return
    barred = _NOT_ON.search(s.text) or (s.under and _NOT_ON.search(s.under))
    if barred and _AMOUNT.search(s.text[barred.start() :] if barred.string == s.text else s.text):
        return
    if barred:
        after = s.text[barred.end() :] if _NOT_ON.search(s.text) else s.text
        after = re.split(r"\bunless\b|\bexcept\b|\bother than\b|\bwhere\b", after, maxsplit=1)[0]
        if _NO_SITE.search(after) and not re.search(r"^[^.;]*\bcrops?\b|lawns?|home", after, re.I):
            return
        for name, pattern in PLACES:
            if pattern.search(after):
                yield Hit("site forbidden", name)
        return
    if loose := _barred_somehow(s.text):
        for name, pattern in PLACES:
            if pattern.search(loose):
                yield Hit("site forbidden", name, "likely")
        return
    listed = bool(s.under) and (_FOR_USE.search(s.under) or s.part == "sites")
    if listed or _FOR_USE.search(s.text) or (s.part == "sites" and not NEGATED.search(s.text)):
        if _NO_SITE.search(s.text) and not re.search(r"for use|may be used|control", s.text, re.I):
            return
        text = re.split(r"\b(?:except|excluding|but not|other than|not for)\b", s.text, maxsplit=1)[0]
        told = (s.part == "sites" or listed) and s.text.endswith(".") and not _FOR_USE.search(s.text)
        plain = not told and (
            listed
            or s.part in ("sites", "front", "directions", "other")
            or re.search(r"for use|may be used|can be used", text, re.I)
        )
        for name, pattern in PLACES:
            if pattern.search(text):
                yield Hit("site", name, "sure" if plain else "likely")


def ways(s: Said) -> Hits:
    """Ways it may be used, ways it may not, and whether the label keeps to those it names."""
    if s.part in ("warranty", "letter", "first aid", "storage", "equipment", "farm workers", "hazards to people"):
        return
    named = [name for name, pattern in METHODS if pattern.search(s.text)]
    forbidden = re.search(FORBIDS, s.text, re.I) or (s.under and re.search(rf"(?:{FORBIDS})[^.;]*:?$", s.under, re.I))
    if named and forbidden:
        if not _CONDITION.search(s.text) and _WAY_BARRED.search(s.text):
            for name in named:
                yield Hit("method forbidden", name)
    elif s.part in METHOD_PARTS:
        yield Hit("method", s.part)
    elif (DONE.search(s.text) or re.search(r"\bmethods?\b", s.under, re.I)) and not NEGATED.search(s.text):
        for name in named:
            yield Hit(
                "method",
                name,
                "sure"
                if s.part in ("sites", "directions", "front", "other", "restrictions")
                and _WAY.search(s.text)
                and _ALLOWS.search(s.text)
                else "likely",
            )
    for kind, patterns in _CLOSED:
        if any(pattern.search(s.text) for pattern in patterns):
            yield Hit(kind, "yes")
        elif kind == "only listed plants" and _closed_somehow(s.text):
            yield Hit(kind, "yes", "likely")


_ALLOWS = re.compile(
    r"\b(?:may|can|must|is to|are to) be\b|\bfor (?:use|treat|appl|foliar|basal|cut|stump)|\b(?:use|apply|treat|spray|inject|paint|wet)\b(?! of)|\b(?:labell?ed|approved|registered|suited|suitable|works|effective)\b|\bmethods?\b",
    re.I,
)
"""Words that allow or order."""
_WAY = re.compile(
    r"cut[- ](?:stump|surface)|stump (?:treat|appl|spray)|basal[- ](?:bark|spray|treat|appl)|hack[- ]?(?:and|&|n)[- ]?squirt|\bfrill|\binject|\bfoliar\b|foliage spray|leaf spray|girdl|thin ?-?line|streamline|"
    r"(?:treat|appl|spray)\w*[^.;]{0,40}\bstumps?\b|stumps?\b[^.;]{0,20}\b(?:treated|sprayed|painted)",
    re.I,
)
"""Words that name a way and not only a part of a plant."""
_CONDITION = re.compile(
    r"\d|\b(?:when|if|during|within|until|unless|exceed|wet|frozen|run-?off|after|before|inversions?|winds?|rain|enter|entry|drip|"
    r"near|roots?|graft\w*|dilut\w*|mix|mixed|rates?|stronger|weaker|graz\w*|contact|desirable|carrier|water|surfactant|other methods?|listed|below|that)\b",
    re.I,
)
_WAY_BARRED = re.compile(
    r"\b(?:appl(?:y|ied|ications?)|treat(?:ments?|ed)?|us(?:e|ed)|spray(?:ed|ing)?|inject(?:ed|ion|ions)?|method)\b",
    re.I,
)
_TIGHT = r"\b(?:only|solely|exclusively|(?:is|are) (?:limited|restricted|confined) to|limited to|restricted to)\b"
_NAMED = r"\b(?:named|listed|specified|shown|stated|described|given|appear(?:s|ing)?|here|below|above|on (?:this|the) label|in (?:this|the) (?:label(?:ing)?|table|list))\b"
_UNNAMED = rf"(?:\b(?:not|does not|do not|is not|are not|other than|except)\b[^.;]{{0,30}}?{_NAMED}|\bother than (?:those|the ones)\b|\b(?:label|table|list) does not (?:name|list|show|describe)\b|\bunlisted\b)"
_KINDS_OF_PLANT = r"\b(?:species|plants?|weeds?|brush|trees?|targets?)\b"
_RATE = r"\b(?:rates?|dosages?|doses?|amounts?)\b"


def _closed(what: str) -> tuple[re.Pattern[str], ...]:
    """How a label says that it keeps to what it names."""
    return tuple(
        re.compile(pattern, re.I)
        for pattern in (
            rf"{_TIGHT}[^.;]*{what}[^.;]*{_NAMED}",
            rf"{_TIGHT}[^.;]*(?:listed|named|specified|described)\s+(?:\w+ )?{what}",
            rf"{what}[^.;]*{_TIGHT}[^.;]*{_NAMED}",
            rf"{what}[^.;]*{_UNNAMED}[^.;]*(?:{FORBIDS})",
            rf"(?:{FORBIDS})[^.;]*{what}[^.;]*{_UNNAMED}",
            rf"\bno (?:other )?(?:application )?{what}[^.;]*(?:{_UNNAMED}|may be used)",
            rf"\bany {what}[^.;]*{_UNNAMED}[^.;]*(?:{FORBIDS})",
            rf"\b(?:listed|following|named|labell?ed) (?:\w+ )?{what} only\b|\bonly (?:the )?(?:listed|following|named|labell?ed) (?:\w+ )?{what}",
            rf"\b(?:unlisted|unnamed) {what}[^.;]*(?:{FORBIDS})|(?:{FORBIDS})[^.;]*\b(?:unlisted|unnamed) {what}",
        )
    )


def _closed_somehow(text: str) -> bool:
    """True for a sentence that speaks of plants, of a list of them, and shuts it."""
    return bool(
        re.search(_KINDS_OF_PLANT, text, re.I)
        and re.search(r"\b(?:lists?|listed|tables?|named|below|label|here)\b", text, re.I)
        and re.search(
            rf"\b(?:only|sole|solely|exclusively|nothing else|no others?|no (?:plants?|species|brush)|confined|restricted|leaves out|(?:limited) to)\b|{FORBIDS}",
            text,
            re.I,
        )
        and not re.search(
            r"\balso\b|\btoo\b|\b(?:desirable|kept|wanted)\b|\bonly (?:partially|suppress|at|with|when|if)\b|\d\s*(?:%|lb|qt|gal|feet|ft|in\b)",
            text,
            re.I,
        )
    )


_CLOSED = (
    ("only listed methods", _closed(r"\b(?:methods?|manners?|ways?)\b")),
    ("only listed plants", _closed(_KINDS_OF_PLANT)),
    (
        "less is forbidden",
        tuple(
            re.compile(pattern, re.I)
            for pattern in (
                rf"(?:{FORBIDS})[^.;]*\b(?:less than|lower|lesser|reduced|below|under|reduce|smaller)\b[^.;]*{_RATE}",
                rf"(?:{FORBIDS})[^.;]*{_RATE}[^.;]*\b(?:less|lower|below|under)\b",
                rf"\b(?:lower|reduced|smaller|less)\b[^.;]*{_RATE}[^.;]*(?:{FORBIDS})",
                rf"{_RATE}[^.;]*\b(?:lower|less|below|under)\b[^.;]*(?:{FORBIDS})",
                r"\bfull (?:label(?:l?ed)? )?rates? only\b|\bonly (?:at|use) the full\b",
                rf"{_RATE}[^.;]*\bleast (?:that|which) (?:may|can) be (?:applied|used)|\bdo not go (?:under|below) (?:it|the label)",
                r"not (?:allowed|permitted|lawful) to (?:apply|use) (?:less|lower)",
                rf"\bsub-?label rates?[^.;]*(?:{FORBIDS})|\bunder-?dos(?:e|ing)\b[^.;]*(?:{FORBIDS})|(?:{FORBIDS})[^.;]*\bunder-?dos",
                rf"(?:{FORBIDS})[^.;]*\b(?:cut|shave|skimp)\b[^.;]*{_RATE}|\bonly at the {_RATE}[^.;]*\b(?:given|listed|stated|shown)\b|{_RATE}[^.;]*\bboth (?:the )?(?:minimum|least) and\b",
                rf"(?:{FORBIDS})[^.;]*\b(?:less than|under|below) [\d./]+ (?:qt|pt|gal|fl oz|oz|lb)\b[^.;]*\bacre",
            )
        ),
    ),
)


_UNDER = r"(?:less than|under|up to|smaller than|(?:no|not) (?:more|greater|larger|thicker|wider|bigger) than|not (?:exceeding|over)|at most|below|maximum of|thinner than)"
_OVER = r"(?<!not )(?<!no )(?:at least|greater than|over|more than|larger than|bigger than|wider than|thicker than|above|exceeding|minimum of|from|(?:no|not) (?:smaller|thinner|less|under) than)"
_ACROSS = r"[^.;,]{0,40}?(?:diameter|ground line|\btrunks?\b|\bdbh\b|d\.b\.h|caliper|\bbasal\b|at breast|across|through\b|thick)"
_SMALL = (
    re.compile(rf"{_UNDER}\s*{LENGTH}{_ACROSS}", re.I),
    re.compile(
        rf"(?:diameters?|\bdbh\b|d\.b\.h\.?|caliper)(?: of| is| are|:)?[^.;,\d]{{0,20}}{_UNDER}\s*{LENGTH}", re.I
    ),
    re.compile(rf"{LENGTH}\s*(?:or (?:less|smaller|under)|and (?:under|smaller))\b{_ACROSS}", re.I),
    re.compile(rf"\bnot (?:thicker|wider|bigger) than {LENGTH}", re.I),
    re.compile(rf"{LENGTH}\s*(?:in )?(?:basal )?(?:diameter|dbh)[^.;,]{{0,12}}\bor (?:less|smaller|under)\b", re.I),
    re.compile(rf"(?:diameters?|\bdbh\b|caliper) (?:of |is |are )?{LENGTH}\s*or (?:less|smaller|under)\b", re.I),
)
_BETWEEN_SIZES = re.compile(
    rf"({NUMBER})(?:\s*(?:inch(?:es)?|in\.))?\s*(?:to|-|and|through)\s*({NUMBER})[\s-]*(inch(?:es)?|in\.?|cm)\b(?=[^.;]{{0,30}}(?:diameter|\bdbh\b|thick|across|caliper))|"
    rf"(?:diameters?|\bdbh\b|caliper)[^.;\d]{{0,25}}({NUMBER})\s*(?:to|-|and)\s*({NUMBER})[\s-]*(inch(?:es)?|in\.?|cm)\b",
    re.I,
)
_NAMED_SIZE = re.compile(
    rf"\b(?:(?P<most>maximum|largest|greatest|biggest)|(?P<least>minimum|smallest|least)) (?:\w+ ){{0,2}}(?:diameter|dbh|size|caliper)[^.;\d]{{0,25}}{LENGTH}",
    re.I,
)
_LARGE = (
    re.compile(rf"(?:diameters?|\bdbh\b|caliper)(?: of| is| are|:)?[^.;,\d]{{0,20}}{_OVER}\s*{LENGTH}", re.I),
    re.compile(rf"{_OVER}\s*{LENGTH}{_ACROSS}", re.I),
    re.compile(
        rf"{LENGTH}\s*(?:or (?:more|larger|greater|over|thicker|bigger)|and (?:over|larger|up|more|thicker|bigger)|minimum)\b{_ACROSS}",
        re.I,
    ),
    re.compile(
        rf"{LENGTH}\s*(?:in )?(?:basal )?(?:diameter|dbh|across|through|thick|caliper)[^.;,]{{0,16}}\b(?:(?:or|and) (?:more|larger|greater|over|thicker|bigger|up)|minimum|at least)\b",
        re.I,
    ),
    re.compile(
        rf"(?:diameters?|\bdbh\b|caliper) (?:of |is |are )?{LENGTH}\s*(?:or|and) (?:more|larger|greater|over|thicker|up)\b",
        re.I,
    ),
)


_STEMS = r"\b(?:stems?|trunks?|stumps?|trees?|saplings?|boles?|brush|plants)\b"
_SMALL_STEMS = re.compile(
    rf"{_STEMS}[^.;\d]{{0,40}}?(?:{_UNDER}|slimmer than)\s*{LENGTH}|{_STEMS}[^.;\d]{{0,30}}?{LENGTH} (?:or|and) (?:less|smaller|under|below|down)\b",
    re.I,
)
_LARGE_STEMS = re.compile(
    rf"{_STEMS}[^.;\d]{{0,40}}?{_OVER}\s*{LENGTH}|{_STEMS}[^.;\d]{{0,30}}?{LENGTH} (?:or|and) (?:more|larger|over|above|up)\b",
    re.I,
)
_OTHER_LENGTH = re.compile(
    r"\b(?:height|high|tall|deep|depth|above (?:the )?(?:ground|soil)|from the ground|lower|length|long|pieces?|cut into|haul\w*|pile\w*|chip\w*|lean\w*|fall\w*|limbs?|apart|spac\w+|between|every|rain\w*|band|wide)\b",
    re.I,
)
"""Inches that are no diameter."""
_DOSE_BY_SIZE = re.compile(rf"\b(?:per|for each|for every|each|every)\s+(?:{NUMBER}\s*(?:to|-)\s*)?{LENGTH}", re.I)
"""A dose for so many inches of stem: no limit of size."""


def size(s: Said) -> Hits:
    """Stems it is for, by their diameter: a limit only where no rate goes by size."""
    if not s.methods and not re.search(r"\bstems?\b|\btrees?\b|\bbrush\b|\bplants\b|\bstumps?\b", s.text, re.I):
        return
    if _DOSE_BY_SIZE.search(s.text) or re.search(
        r"\bnot excluded\b|\bmay (?:need|require|take)\b|\bmore (?:time|mix|spray)\b", s.text, re.I
    ):
        return
    if (m := _BETWEEN_SIZES.search(s.text)) and not re.search(r"\brates?\b|%|\bapart\b|\bcuts?\b", s.text, re.I):
        low, high, unit = (m[1], m[2], m[3]) if m[1] else (m[4], m[5], m[6])
        yield Hit("least stem", f"{low} {'cm' if unit.lower() == 'cm' else 'in'}")
        yield Hit("greatest stem", f"{high} {'cm' if unit.lower() == 'cm' else 'in'}")
        return
    if m := _NAMED_SIZE.search(s.text):
        yield Hit("greatest stem" if m["most"] else "least stem", f"{m[3]} {'cm' if m[4].lower() == 'cm' else 'in'}")
        return
    small = next((m for pattern in _SMALL if (m := pattern.search(s.text))), None)
    large = next((m for pattern in _LARGE if (m := pattern.search(s.text))), None)
    by_size = (
        bool(small and large)
        or re.match(r"for [^,.;]*(?:,|\b(?:wet|apply|treat|use|make|spray)\b)", s.text, re.I)
        or re.search(
            r"\brates?\b|\bconcentration|\bcuts? (?:per|for)|\bone cut\b|\b1 cut\b|\bhigher\b|\blower\b", s.text, re.I
        )
    )
    loose = not small and not large and not by_size and not _OTHER_LENGTH.search(s.text)
    if loose:
        small, large = _SMALL_STEMS.search(s.text), _LARGE_STEMS.search(s.text)
    # "Not effective on stems over 6 inches" is a greatest size, as "on stems up to 6 inches" is.
    turned = re.search(rf"\bnot (?:effective|recommended|for|intended)\b|{FORBIDS}", s.text, re.I)
    kinds = ("least stem", "greatest stem") if turned else ("greatest stem", "least stem")
    for kind, m in zip(kinds, (small, large), strict=True):
        if m:
            number, unit = [group for group in m.groups() if group][:2]
            how: Sure = "unsure" if by_size else "likely" if loose else "sure"
            yield Hit(kind, f"{number} {'cm' if unit.lower() == 'cm' else 'in'}", how)


_KIND_OF = frozenset(
    "red white black sugar silver common glossy poison sweet green box autumn russian norway striped bigtooth tree multiflora "
    "quaking princess japanese chinese european mockernut shagbark pignut bitternut laurel winged slippery rock black sweetbay chestnut willow silver sitka honey eastern western american english wild mountain water pin scarlet post live yellow paper river gray grey".split()
)
_NOUNS = re.compile(
    r"\b(?:alders?|arrowwood|ash(?:es)?|aspens?|autumn[- ]olives?|bald ?cypress|bamboos?|barberr(?:y|ies)|basswoods?|beech(?:es)?|birch(?:es)?|bittersweet|blackberr(?:y|ies)|blackgum|black gum|box ?-?elders?|"
    r"brambles?|brooms?|buckthorns?|buttonbush|camphor ?trees?|catalpas?|ceanothus|cedars?|cherr(?:y|ies)|chestnuts?|chinaberr(?:y|ies)|chokecherr(?:y|ies)|corktrees?|cottonwoods?|creepers?|cypress|"
    r"deerbrush|dewberr(?:y|ies)|dogwoods?|elaeagnus|elderberr(?:y|ies)|elders?|elms?|eucalyptus|firs?|gorse|grapes?|grapevines?|greenbriers?|guavas?|gums?|hackberr(?:y|ies)|hawthorns?|hazels?|hemlocks?|hickor(?:y|ies)|"
    r"holl(?:y|ies)|honey ?locusts?|honeysuckles?|hophornbeams?|hornbeams?|huckleberr(?:y|ies)|huisache|iv(?:y|ies)|ironwoods?|juniper|junipers|kudzu|laurels?|lilacs?|locusts?|madrones?|magnolias?|manzanitas?|maples?|"
    r"melaleuca|mesquites?|mimosas?|mulberr(?:y|ies)|multiflora rose|myrtles?|oaks?|olives?|osage[- ]orange|palmettos?|paulownia|pawpaws?|pears?|pecans?|pepper ?trees?|persimmons?|pines?|plums?|poison[- ](?:ivy|oak|sumac)|"
    r"poplars?|princess ?trees?|privets?|raspberr(?:y|ies)|redbuds?|red ?cedars?|rhododendrons?|roses?|russian[- ]olives?|sage ?brush|salmonberr(?:y|ies)|salt ?-?cedars?|sassafras|serviceberr(?:y|ies)|silktrees?|sourwoods?|"
    r"spicebush|spruces?|sugarberr(?:y|ies)|sumacs?|sweet ?gums?|sycamores?|tallow ?-?trees?|tamarisks?|tanoaks?|thimbleberr(?:y|ies)|trees? ?-?of ?-?heaven|trumpet ?-?creepers?|tulip ?trees?|tupelos?|viburnums?|vines?|virginia[- ]creeper|"
    r"walnuts?|wax ?myrtles?|willows?|wintercreepers?|wisterias?|witch ?-?hazels?|yaupon|yellow-?poplars?|ailanthus|hack-berr(?:y|ies))$",
    re.I,
)
"""The last word of common names of woody plants: those of the handbook's list, and others from memory."""
_NAME = re.compile(r"[A-Za-z][A-Za-z'’-]+(?: [A-Za-z][A-Za-z'’-]+){0,3}")


_NO_NAME = re.compile(
    r"\b(?:label|product|gal|equivalent|rates?|year|others?|pages?|invented|tests?|only|control(?:led|s)?|species|listed|following|treat\w*|"
    r"application|apply|use|need|hard|plants?|brush|weeds?|trees controlled|well|figure|table|see|continued|acid|acre|not|is|are|by|in|along|on|to|from|with|(?<!-)of(?!-))\b",
    re.I,
)
_KINDS_BEHIND = re.compile(
    rf"([A-Za-z-]+)(?: \(|: )((?:(?:{'|'.join(sorted(_KIND_OF))})(?:, | and |, and | or )?)+)\)?", re.I
)


def _each_kind(m: re.Match[str]) -> str:
    """ "Maples (red, sugar)" as "red maple, sugar maple"."""
    noun = re.sub(r"(?<=[^s])ies$", "y", m[1], flags=re.I)
    noun = re.sub(r"(?<=[a-z][^su])s$", "", noun)
    return ", ".join(f"{kind.strip()} {noun}" for kind in re.split(r",(?: and)?| and | or ", m[2]) if kind.strip())


_TURNED = re.compile(r"^([A-Za-z'’-]+), ([A-Za-z'’-]+(?: [A-Za-z'’-]+)?)$")
_CONTROLS = re.compile(
    r"\b(?:controls?|kills?|suppress(?:es)?|(?:works|effective|active|used|labell?ed) (?:on|against)|(?:susceptible|target) (?:species|plants|brush)(?: include| are)?:?|susceptible:|(?:plants|species|brush|trees) (?:killed|controlled)[^.:]{0,20}?(?:include|are|:)|for (?:the )?(?:control|management|suppression) of|species controlled:?|controlled (?:species )?(?:include|are):?)\s+"
    r"(?:unwanted |undesirable |woody |plants |species |brush |such as |including |include )*",
    re.I,
)
_HARD_TO = re.compile(r"^(.{3,80}?) (?:is|are) (?:hard|difficult|easy|easier|harder) to (?:control|kill)", re.I)


def plants(s: Said) -> Hits:
    """Plants by name: lists under their heading, and sentences that say what is killed; not what is spared."""
    # "Maples (red, sugar)" names two plants; in other brackets stands the Latin name.
    text = _KINDS_BEHIND.sub(
        lambda m: ", ".join(f"{kind.strip()} {m[1]}" for kind in re.split(r",| and ", m[2])), s.text
    )
    text = re.sub(r"\([^)]*\)", "", text).rstrip(".:")
    if re.search(r"\bnot (?:control|kill|effective|suppress)|\bdoes not\b|\bdo not\b", text, re.I):
        return
    told = _CONTROLS.search(text)
    hard = _HARD_TO.search(text)
    listed = s.part == "plants" or bool(_PLANTS_FOLLOW.search(s.under))
    if not listed and not (told and s.part in ("directions", "other", "front", "restrictions", *METHOD_PARTS)):
        return
    if re.search(r"\d|%|\bmethods?\b", text) or _SPARED.search(text):
        return
    if hard:
        text = hard[1]
    elif told:
        text = text[told.end() :]
    elif m := re.search(r"\b(?:such as|including|include)\b:?\s*", text, re.I):
        text = text[m.end() :]
    elif re.search(r"\bcontrol\w*|\bspecies\b", text, re.I):
        return
    text = re.sub(r"\s+[A-Z][a-z]+ (?:spp?\.?|[a-z]{4,})$", "", text) if listed else text
    parts = [p.strip() for p in re.split(r"[;•|]", text) if p.strip()]
    pairs = [m for piece in parts if (m := _TURNED.match(piece)) and m[2].lower().split()[0] in _KIND_OF]
    if pairs and len(pairs) == len(parts):
        for m in pairs:
            yield Hit("plant", f"{m[2]} {m[1]}".lower(), "likely")
        return
    pieces = [p.strip(" .") for p in re.split(r"[,;•|]|\s+as well as\s+|\s+and\s+|\s+or\s+", text) if p.strip(" .")]
    sentence = len(pieces) == 1 and len(pieces[0].split()) > 4
    for n, piece in enumerate(pieces):
        if piece.lower() in _KIND_OF and n + 1 < len(pieces):
            # "Red and sugar maple".
            following = next((p for p in pieces[n + 1 :] if p.lower() not in _KIND_OF), "").split()
            piece = f"{piece} {following[-1]}" if len(following) > 1 else piece
        name = re.sub(r"^(?:most |some |many |all |both |young |unwanted |undesirable )+", "", piece, flags=re.I)
        if sentence or not _NAME.fullmatch(name) or _NO_NAME.search(name) or name.lower() in _KIND_OF:
            continue
        # Outside of a list only what is known for a plant's name is one.
        if _NOUNS.search(name) or (s.part == "plants" and len(pieces) > 1):
            yield Hit("plant", name.lower(), "likely")
        elif s.part == "plants" and s.text[:1].isupper() and len(name.split()) <= 3:
            yield Hit("plant", name.lower(), "unsure")


_PLANTS_FOLLOW = re.compile(
    r"\b(?:species|plants|brush|trees|weeds)\b[^.]*(?:listed|below|following|include|controlled|:)", re.I
)
_SPARED = re.compile(
    r"\b(?:toleran\w+|injur\w+|damag\w+|desirable|spared?|planted|crop trees?|releas\w+|not (?:be )?(?:treated|harmed)|resistant|escape|may survive|nurser\w+|seedlings)\b",
    re.I,
)
"""Words of sentences in which plants are named that are not the ones to be killed."""


def roots(s: Said) -> Hits:
    """What it asks about plants beside those that are treated, and about rare ones."""
    shared = r"roots?\b[^.;]{0,70}\bgrafted\b|grafted\b[^.;]{0,30}\broots?|root grafts?|root[- ]graft|roots? (?:systems? )?(?:may|might|can|could)? ?(?:be|have been|have)? ?grafted|(?:shar(?:e|ing|ed)|common|connected|interconnected) (?:a )?(?:common )?root|share (?:a )?root|roots? (?:systems? )?(?:are|is) (?:shared|connected|grafted)"
    if re.search(shared, s.text, re.I) and re.search(FORBIDS, s.text, re.I):
        yield Hit("no shared roots", "yes")
    if re.search(r"\bbulletins?\b", s.text, re.I) and re.search(r"endangered|obtain|follow|species", s.text, re.I):
        yield Hit("endangered species bulletin", "yes")
    m = re.search(
        r"within\s*([\d./]+)[\s-]*(feet|foot|ft|yards?|m)\b[^.;]{0,40}\b(?:roots?|root zone|trunks?|drip ?line|desirable|wanted|valued|ornamental)\b[^.;]{0,30}(?:trees?|plants?|shrubs?|vegetation)?",
        s.text,
        re.I,
    )
    if m and re.search(FORBIDS, s.text, re.I) and re.search(r"tree|plant|shrub|vegetation|root", m[0], re.I):
        yield Hit(
            "distance to wanted roots",
            f"{m[1]} {'m' if m[2].lower() == 'm' else 'yd' if m[2].lower().startswith('y') else 'ft'}",
        )
