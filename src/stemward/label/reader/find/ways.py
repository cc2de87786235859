"""Where, on what and how it may be used: states, places, ways, plants, size of stems."""

import re

from stemward.label.reader.phrases import (
    ANY_PLACE,
    ANY_STATE,
    FORBIDS,
    LENGTH,
    METHODS,
    NEGATED,
    PLACES,
    STATES,
)
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said

_NOT_ON = re.compile(
    r"(?:do not (?:use|apply|treat)|not (?:be used|be applied|intended|labell?ed|registered|for use|recommended|permitted))\b[^.;]{0,60}?\b(?:on|in|around|to|for|near|as|within)\b|"
    r"not for (?:use|application) (?:on|in|around|to|by|near)|prohibited (?:on|in)",
    re.I,
)
_FOR_USE = re.compile(
    r"for use (?:on|in|along|around|at|by)|permissible to (?:treat|use|apply)|is permitted (?:on|in)|may be (?:used|applied) (?:on|in|to|along|around|for)|\buse (?:this product )?(?:on|in|along|around)\b|"
    r"for (?:the )?(?:control|management|suppression|treatment)\b[^.]*\b(?:in|on|along|around)\b|controls?\b[^.]*\b(?:in|on|along|around)\b|"
    r"\bsites?\b(?: such as| including|:| are| listed)|(?:registered|labell?ed|approved|intended|designed|recommended) (?:for use )?(?:for|on|in)|"
    r"use sites?|including|can be used (?:on|in|to|along|around)",
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
    barred = _NOT_ON.search(s.text) or (s.under and _NOT_ON.search(s.under))
    if barred:
        after = s.text[barred.end() :] if _NOT_ON.search(s.text) else s.text
        after = re.split(r"\bunless\b|\bexcept\b|\bother than\b|\bwhere\b", after, maxsplit=1)[0]
        if _NO_SITE.search(after) and not re.search(r"^[^.;]*\bcrops?\b|lawns?|home", after, re.I):
            return
        for name, pattern in PLACES:
            if pattern.search(after):
                yield Hit("site forbidden", name)
        return
    listed = bool(s.under) and (_FOR_USE.search(s.under) or s.part == "sites")
    if listed or _FOR_USE.search(s.text) or (s.part == "sites" and not NEGATED.search(s.text)):
        if _NO_SITE.search(s.text) and not re.search(r"for use|may be used|control", s.text, re.I):
            return
        text = re.split(r"\b(?:except|excluding|but not|other than|not for)\b", s.text, maxsplit=1)[0]
        plain = (
            listed
            or s.part in ("sites", "front", "directions", "other")
            or re.search(r"for use|may be used|can be used", text, re.I)
        )
        for name, pattern in PLACES:
            if pattern.search(text):
                yield Hit("site", name, "sure" if plain else "likely")


_NO_USE = (
    r"(?i:not (?:be )?(?:registered|permitted|allowed|approved|for|used|sold|intended|labell?ed)[^.]{0,60}?\b(?:in|into|within)\b|do not (?:use|sell|apply|distribute)[^.;]{0,40}? in\b|"
    r"prohibited in|unlawful in|not (?:for )?(?:sale|use|distribution)[^.]{0,60}? (?:in|into)\b)"
)
_ONLY = r"(?i:\bonly (?:in|within|for (?:use )?in)\b|\bfor (?:use|sale|distribution)(?:[ ,/]+(?:and|or)?[ ,/]*(?:use|sale|distribution))* only in\b|limited to (?:the state of )?|restricted to use in)"


def states(s: Said) -> Hits:
    """States it may not be used in, or in which alone."""
    if not ANY_STATE.search(s.sentence.text) or s.part in ("warranty", "letter"):
        return
    text = s.sentence.text
    some = re.search(r"\bcount(?:y|ies)\b|\bparts? of\b|\bislands?\b", text, re.I)
    barred, only = re.search(_NO_USE, text), re.search(_ONLY, text)
    for code, pattern in STATES:
        m = re.search(rf"\b{pattern}\b", text)
        if not m:
            continue
        dated = re.search(
            r"\b(?:from|between|during|within|when|if)\b[^.]*\b(?:feet|January|February|March|April|May|June|July|August|September|October|November|December)\b",
            text,
        )
        if barred and barred.end() <= m.start() + 1:
            excepted = re.search(r"\bexcept\b|\bother than\b", text[barred.end() : m.start()])
            if not excepted and not dated:
                yield Hit("state excluded", code, "unsure" if some else "sure")
        elif (only and only.end() <= m.start() + 1) or re.search(rf"\b{pattern} only\b", text):
            yield Hit("state only", code, "unsure" if some else "sure")
        elif re.search(
            rf"\b{pattern}\b[^.;]{{0,30}}\b(?:is|are) (?:prohibited|not (?:permitted|allowed|registered))", text
        ):
            yield Hit("state excluded", code, "unsure" if some else "sure")


_DONE = re.compile(
    r"\b(?:treat(?:ment|ments|ed)?|appl(?:y|ied|ication|ications)|may be used|for use|spray(?:ed)?|can be used|use as)\b",
    re.I,
)


def ways(s: Said) -> Hits:
    """Ways it may be used, ways it may not, and whether the label keeps to those it names."""
    if s.part in ("warranty", "letter", "first aid", "storage", "equipment", "farm workers", "hazards to people"):
        return
    named = [name for name, pattern in METHODS if pattern.search(s.text)]
    if re.search(
        r"do not (?:apply|use|treat|make)[^.;]*\b(?:by|as|for|with|to|using)\b|not (?:be used|be applied|for use|intended|recommended)[^.;]*\b(?:by|as|for|in)\b",
        s.text,
        re.I,
    ):
        if not re.search(
            r"\b(?:when|if|during|within|more than|until|unless|exceed|wet|frozen|runoff)\b", s.text, re.I
        ):
            for name in named:
                yield Hit("method forbidden", name)
    elif s.part in METHOD_PARTS:
        yield Hit("method", s.part)
    elif _DONE.search(s.text) and not NEGATED.search(s.text):
        for name in named:
            yield Hit(
                "method",
                name,
                "sure" if s.part in ("sites", "directions", "front", "other", "restrictions") else "likely",
            )
    if re.search(
        r"\bonly (?:by |with |using )?(?:the |those )?(?:application )?methods\b|methods? (?:of application )?(?:described|specified|listed|given)[^.]*\bonly\b|"
        r"only[^.]*methods? (?:of application )?(?:described|specified|listed|given)|do not (?:use|apply)[^.]*(?:any |other )(?:other )?(?:application )?(?:methods?|manner)[^.]*(?:than|not)",
        s.text,
        re.I,
    ):
        yield Hit("only listed methods", "yes")
    if re.search(
        r"only (?:for|on|against|to control)[^.;]{0,40}(?:plants|species|weeds|pests)[^.;]{0,20}(?:named|listed|specified|shown)|"
        r"do not (?:use|apply)[^.;]*(?:plants|species|weeds|pests)[^.;]*not (?:named|listed|specified|shown)",
        s.text,
        re.I,
    ):
        yield Hit("only listed plants", "yes")
    if re.search(
        r"do not (?:use|apply) (?:at )?(?:less than|lower|below|reduced)|rates? (?:below|lower than|less than)[^.]*not (?:permitted|allowed)|do not (?:reduce|apply (?:at )?rates? (?:below|lower))|"
        r"(?:lower|reduced) rates? (?:are|is) (?:not (?:permitted|allowed)|prohibited)",
        s.text,
        re.I,
    ):
        yield Hit("less is forbidden", "yes")


_UNDER = r"(?:less than|under|up to|smaller than|no (?:more|greater|larger) than|not (?:exceeding|more than|over)|at most|below|maximum of)"
_OVER = r"(?:at least|greater than|over|more than|larger than|above|exceeding|minimum of)"
_ACROSS = r"[^.;,]{0,40}?(?:diameter|\bdbh\b|d\.b\.h|caliper|\bbasal\b|at breast|across|through\b|thick)"
_SMALL = (
    re.compile(rf"{_UNDER}\s*{LENGTH}{_ACROSS}", re.I),
    re.compile(
        rf"(?:diameters?|\bdbh\b|d\.b\.h\.?|caliper)(?: of| is| are|:)?[^.;,\d]{{0,20}}{_UNDER}\s*{LENGTH}", re.I
    ),
    re.compile(rf"{LENGTH}\s*(?:or (?:less|smaller|under)|and (?:under|smaller))\b{_ACROSS}", re.I),
    re.compile(rf"{LENGTH}\s*(?:in )?(?:basal )?(?:diameter|dbh)[^.;,]{{0,12}}\bor (?:less|smaller|under)\b", re.I),
    re.compile(rf"(?:diameters?|\bdbh\b|caliper) (?:of |is |are )?{LENGTH}\s*or (?:less|smaller|under)\b", re.I),
)
_LARGE = (
    re.compile(rf"{_OVER}\s*{LENGTH}{_ACROSS}", re.I),
    re.compile(rf"{LENGTH}\s*(?:or (?:more|larger|greater|over)|and (?:over|larger|up))\b{_ACROSS}", re.I),
)


def size(s: Said) -> Hits:
    """Stems it is for, by their diameter: a limit only where no rate goes by size."""
    if not s.methods and not re.search(r"\bstems?\b|\btrees?\b|\bbrush\b|\bplants\b|\bstumps?\b", s.text, re.I):
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
    # "Not effective on stems over 6 inches" is a greatest size, as "on stems up to 6 inches" is.
    turned = re.search(
        r"\bnot (?:effective|recommended|for|intended|be used)\b|\bdo not (?:use|treat|apply)\b", s.text, re.I
    )
    kinds = ("least stem", "greatest stem") if turned else ("greatest stem", "least stem")
    for kind, m in zip(kinds, (small, large), strict=True):
        if m:
            yield Hit(kind, f"{m[1]} {'cm' if m[2].lower() == 'cm' else 'in'}", "unsure" if by_size else "sure")


_KIND_OF = frozenset(
    "red white black sugar silver common glossy poison sweet green box autumn russian norway striped bigtooth tree multiflora "
    "japanese honey eastern western american english wild mountain water pin scarlet post live yellow paper river gray grey".split()
)
_NAME = re.compile(r"[A-Za-z][A-Za-z'’-]+(?: [A-Za-z][A-Za-z'’-]+){0,3}")


def plants(s: Said) -> Hits:
    """Plants by name, from the lists under their heading."""
    if s.part != "plants" or re.search(r"\d|%", s.text):
        return
    text = re.sub(r"\([^)]*\)", "", s.text).rstrip(".:")
    if m := re.search(r"\b(?:such as|including|controls?|include)\b:?\s*", text, re.I):
        text = text[m.end() :]
    pieces = [p.strip() for p in re.split(r"[,;•]|\s+\band\b\s+|\s+\bor\b\s+", text) if p.strip()]
    if len(pieces) == 2 and "," in text and pieces[1].lower() in _KIND_OF:
        pieces = [f"{pieces[1]} {pieces[0]}"]
    sentence = len(pieces) == 1 and len(pieces[0].split()) > 4
    for piece in pieces:
        if (
            not sentence
            and _NAME.fullmatch(piece)
            and not re.match(r"(?:and|or|the|other|many|see|plants?|species)\b", piece, re.I)
        ):
            yield Hit("plant", piece.lower(), "likely")


def roots(s: Said) -> Hits:
    """What it asks about plants beside those that are treated, and about rare ones."""
    shared = r"root grafts?|root[- ]graft|roots? (?:systems? )?(?:may|might|can|could)? ?(?:be|have been|have)? ?grafted|(?:shar(?:e|ing|ed)|common|connected|interconnected) (?:a )?(?:common )?root|share (?:a )?root|roots? (?:systems? )?(?:are|is) (?:shared|connected|grafted)"
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
