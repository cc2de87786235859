"""Stems it is for, by their diameter."""

import re

from stemward.label.reader.find.mixes import figure
from stemward.label.reader.phrases import FORBIDS, LENGTH, NUMBER
from stemward.label.reader.said import Hit, Hits, Said, Sure

_UNDER = r"(?:less than|under|up to|smaller than|(?:no|not) (?:more|greater|larger|thicker|wider|bigger) than|not (?:exceeding|over)|at most|below|maximum of|thinner than)"
_OVER = r"(?<!not )(?<!no )(?:at least|greater than|over|more than|larger than|bigger than|wider than|thicker than|above|exceeding|minimum of|from|(?:no|not) (?:smaller|thinner|less|under) than)"
_ACROSS = r"[^.;,]{0,40}?(?:diameter|ground line|\btrunks?\b|\bdbh\b|d\.b\.h|caliper|\bbasal\b|at breast|across|through\b|thick)"
_SMALL = (
    re.compile(rf"\b(?:trunks?|stems?|stumps?) (?:should|must|may|shall) not exceed\s*{LENGTH}", re.I),
    re.compile(rf"(?:treatment|control) of stems {_UNDER}\s*{LENGTH}", re.I),
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
    rf"({NUMBER})(?:\s*(?:inch(?:es)?|in\.))?\s*(?:to|-|and|through)\s*({NUMBER})[\s-]*(inch(?:es)?|in\.?|cm)\b(?=\.?[^.;]{{0,30}}(?:diameter|\bdbh\b|thick|across|caliper))|"
    rf"(?:diameters?|\bdbh\b|caliper)[^.;\d]{{0,25}}({NUMBER})\s*(?:to|-|and)\s*({NUMBER})[\s-]*(inch(?:es)?|in\.?|cm)\b",
    re.I,
)
_NAMED_SIZE = re.compile(
    rf"\b(?:(?P<most>maximum|largest|greatest|biggest)|(?P<least>minimum|smallest|least)) (?:\w+ ){{0,2}}(?:diameter|dbh|size|caliper)[^.;\d]{{0,25}}{LENGTH}",
    re.I,
)
_LARGE = (
    re.compile(rf"(?:diameters?|\bdbh\b|caliper)(?: of| is| are|:)?[^.;,\d]{{0,30}}{_OVER}\s*{LENGTH}", re.I),
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
    r"\b(?:height|high|tall|deep|depth|above (?:the )?(?:ground|soil)|from the ground|lower|length|long|pieces?|cut into|haul\w*|pile\w*|chip\w*|lean\w*|fall\w*|limbs?|apart|spac\w+|between|every|rain\w*|band|wide|growth)\b",
    re.I,
)
"""Inches that are no diameter."""
_LIMITS = re.compile(
    rf"{FORBIDS}|\b(?:use|used|for|treat(?:ed|ment)?|appl\w+|only|limit\w*|suit\w*|not|must|recommended|effective|method|inject|maximum|minimum)\b|:|\|",
    re.I,
)
"""Words of a sentence that limits what the work is for."""
_GAP = re.compile(r"\bapart\b|\bbetween\b|\bspac", re.I)
_DOSE_BY_SIZE = re.compile(rf"\b(?:per|for each|for every|each|every)\s+(?:{NUMBER}\s*(?:to|-)\s*)?{LENGTH}", re.I)
"""A dose for so many inches of stem: no limit of size."""


def _a_range(large: re.Match[str], small: re.Match[str]) -> bool:
    """True where the least is below the greatest: "at least 1 inch and at most 12"."""
    low, high = (figure(next(group for group in m.groups() if group)) for m in (large, small))
    return low < high


def size(s: Said) -> Hits:
    """Stems it is for, by their diameter: a limit only where no rate goes by size."""
    if not s.methods and not re.search(r"\bstems?\b|\btrees?\b|\bbrush\b|\bplants\b|\bstumps?\b", s.text, re.I):
        return
    if _DOSE_BY_SIZE.search(s.text) or re.search(
        r"\bhoses?\b|\binside diameter|\breach(?:es)? a diameter|\bnot excluded\b|\bmay (?:need|require|take)\b|\bmore (?:time|mix|spray)\b",
        s.text,
        re.I,
    ):
        return
    if (m := _BETWEEN_SIZES.search(s.text)) and not re.search(
        r"\brates?\b|%|\bapart\b|\bcuts? (?:per|every|each|for)\b", s.text, re.I
    ):
        low, high, unit = (m[1], m[2], m[3]) if m[1] else (m[4], m[5], m[6])
        yield Hit("least stem", f"{low} {'cm' if unit.lower() == 'cm' else 'in'}")
        yield Hit("greatest stem", f"{high} {'cm' if unit.lower() == 'cm' else 'in'}")
        return
    if m := _NAMED_SIZE.search(s.text):
        yield Hit("greatest stem" if m["most"] else "least stem", f"{m[3]} {'cm' if m[4].lower() == 'cm' else 'in'}")
        return
    small = next((m for pattern in _SMALL if (m := pattern.search(s.text)) and not _GAP.search(m[0])), None)
    large = next((m for pattern in _LARGE if (m := pattern.search(s.text))), None)
    by_size = (
        bool(small and large and not _a_range(large, small))
        or re.match(
            r"for (?:stumps|stems|trees|plants|brush|cuts)\b[^.;]*?\b(?:wet|make|cuts?)\b|(?:on|for) (?:stumps|stems|trees)[^.;]*\bonly the\b",
            s.text,
            re.I,
        )
        or re.search(
            r"\b(?:respond|die)\b|\bwhereas\b|\bthose (?:of|over|under|above|below)\b|\brates?\b|\bconcentration|\bcuts? (?:per|for)|\bone cut\b|\b1 cut\b|\bhigher\b|\blower\b",
            s.text,
            re.I,
        )
    )
    if by_size:
        # A rate or a way of working that goes by size is no limit of size.
        return
    loose = not small and not large and (_LIMITS.search(s.text) or bool(s.named)) and not _OTHER_LENGTH.search(s.text)
    if loose:
        small, large = _SMALL_STEMS.search(s.text), _LARGE_STEMS.search(s.text)
    # "Not effective on stems over 6 inches" is a greatest size, as "on stems up to 6 inches" is.
    first = min((m.start() for m in (small, large) if m), default=0)
    clause = re.split(r",(?: and)? (?:is|are|but)\b", s.text[:first])[-1] + s.text[first:]
    turned = re.search(rf"\bnot (?:effective|recommended|for|intended)\b|{FORBIDS}", clause, re.I)
    kinds = ("least stem", "greatest stem") if turned else ("greatest stem", "least stem")
    for kind, m in zip(kinds, (small, large), strict=True):
        if m:
            number, unit = [group for group in m.groups() if group][:2]
            how: Sure = "likely" if loose else "sure"
            yield Hit(kind, f"{number} {'cm' if unit.lower() == 'cm' else 'in'}", how)
