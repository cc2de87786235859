"""Kinds of land it may be used on, and those it may not."""

import re

from stemward.label.reader.phrases import ANY_PLACE, NEGATED, PLACES, YES_NO
from stemward.label.reader.said import Hit, Hits, Said

_NOT_ON = re.compile(
    r"(?:never|must not|may not|shall not|cannot) (?:be )?(?:use|used|made|employed|put|directed|apply|applied|treat|treated|spray|sprayed)\b[^.;]{0,60}?\b(?:on|in|around|to|for|near|within)\b|"
    r"(?:do not (?:use|apply|treat)|not (?:be used|be applied|intended|labell?ed|registered|for use|recommended|permitted))\b[^.;]{0,60}?\b(?:on|in|around|to|for|near|as|within)\b|"
    r"not for (?:use|application) (?:on|in|around|to|by|near)|prohibited (?:on|in)",
    re.I,
)
_FOR_USE = re.compile(
    r"\bherbicide for\b|\bareas? to be treated (?:comprise|include|are)\b|for use (?:on|in|along|around|at|by)|permissible to (?:treat|use|apply)|is permitted (?:on|in)|may be (?:used|applied) (?:on|in|to|along|around|for)|\buse (?:this product )?(?:on|in|along|around)\b|"
    r"for (?:the )?(?:control|management|suppression|treatment)\b[^.]*\b(?:in|on|along|around)\b|controls?\b[^.]*\b(?:in|on|along|around)\b|"
    r"\bsites?\b(?: such as| including| include|:| are| listed)|(?:registered|labell?ed|approved|intended|designed|recommended) (?:for use )?(?:for|on|in)|"
    r"use sites?|including|can be (?:used|applied) (?:on|in|to|along|around|under|beside)|(?:is|are) (?:an? )?(?:approved|labell?ed|registered) (?:use )?sites?\b|may also be (?:used|applied|put) (?:on|in|to|along|around)|may be (?:used|applied) (?:where|under)|(?:apply|treat)\b[^.;\d]{0,60}\b(?:growing )?(?:in|on|along)\b",
    re.I,
)
_NO_SITE = re.compile(
    r"\bdrift|\brun-?off|\binjur|\bleach|contaminat|rotat|\bplant(?:ing|ed)\b|\bto plant\b|\bneighboring|manure|compost|mulch|sensitive|adjacent|desirable|downwind|irrigat|livestock from|move|"
    r"\bgraz|\bhay\b|broadcast rate|\bdispos",
    re.I,
)


_ON_IT_BARRED = re.compile(
    r"\b(?:use|application)s? (?:on|in|around|to) ([^.;]*?) (?:is|are) (?:prohibited|a violation|not (?:permitted|allowed|recommended))",
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
        r"\bnot (?:a product |an herbicide )?(?:labell?ed|registered|intended|meant|approved|suited|for use)? ?(?:for|on|in|around)\b|\bkeep\b[^.;]{0,30}\b(?:out of|off|away from)\b|\b(?:excluded|prohibited|forbidden) (?:areas?|sites?|uses?|places?)\b:?|\b(?:use|application|treatment)s? (?:is|are) (?:prohibited|unlawful|forbidden|not (?:allowed|permitted)) (?:on|in|around|to|within)\b|\bany (?:sites?|places?) (?:but|except|other than)\b|\bout of bounds\b:?|\bdo not let\b[^.;]*\bbe used (?:on|in)\b|\bagainst the label to use (?:this product|it) (?:on|in)\b|\bstay out of\b|\bno (?:part|portion)s? of\b|\brefrain from (?:treating|applying|using|spraying)\b|\banywhere but (?:on|in)\b|\bviolation to (?:use|apply) (?:it|this product)? ?(?:on|in)?|\bnever (?:to )?reach\b)(?P<after>[^.;]*)",
        re.I,
    ),
    # What stands before is the place.
    re.compile(
        r"(?P<after>[^.;]*?)(?:\b(?:is|are) (?:prohibited|forbidden|unlawful|excluded|not a labell?ed site|not among the sites|no sites for|not sites for|not (?:to be )?(?:allowed|permitted|treated|sprayed|covered|registered|use sites))|\b(?:may|must|shall|can) ?not be (?:treated|sprayed)|:\s*(?:do not|not)\b|\bprohibited\b|\boff limits\b|\b(?:shall|must|are to|is to) be avoided\b)",
        re.I,
    ),
)
_OTHER_OBJECT = re.compile(
    r"^\W*(?:equipment|sprayers?|containers?|manure|compost|water|hay|clippings|this water|any sprayer)\b|\b(?:once|twice|until|unless|within|while|when|if|before|after|without|during)\b|\bgraz(?:e|ed|ing)\b(?! land)|\bnear\b|\bdownwind\b|\bsale\b",
    re.I,
)


_TIMED = re.compile(
    r"\b(?:in|during) (?:early |late |mid )?(?:spring|summer|fall|autumn|winter)\b|\bfrom the (?:air|ground)\b|\bwithout\b",
    re.I,
)
"""A rule on when or how, not on where."""


def _subject(text: str) -> str:
    """What a sentence is about: "On turf, girdles ..." speaks of girdles, "Lawns ..." of lawns."""
    led = re.match(r"\W*(?:on|in|along|near|at|for|under|around)\b[^,]*,(.*)$", text, re.I | re.S)
    return led[1] if led else text


def _barred_somehow(text: str) -> str:
    """The words that name a place which a sentence keeps the product from; "" where it does not."""
    for pattern in _BARRED_PLACE:
        m = pattern.search(text)
        if m and ANY_PLACE.search(m["after"]) and not _AMOUNT.search(text) and not _TIMED.search(text):
            after = re.split(r"\bunless\b|\bexcept\b|\bother than\b|\bwhere\b", m["after"], maxsplit=1)[0]
            after = after if m.start("after") else _subject(after)
            if not _OTHER_OBJECT.search(after) and not _NO_SITE.search(re.sub(r"\bplant(?:ing|ed)s?\b", " ", after)):
                return after
    return ""


_TALKS = re.compile(
    r"^\W*(?:visit|see|ask|read|learn|consult|remember|note|walk|look|check|plan)\b|\b(?:spreads?|grows?|carr(?:y|ies)|learn|visit|burns?|seeds?|provides?|depends?|was|were|set out|refer to)\b",
    re.I,
)
"""Words of sentences under the heading of sites that only tell something."""
_LAND_WITH = re.compile(
    r"\b(?:land|areas?|sites?|ground|fields?) (?:where|on which) ((?:[\w-]+ ){1,4}?)(?:are |is )?(?:grow|grown|planted|raised|produced)\b",
    re.I,
)
"""Land where something grows is a place, and no condition."""


def places(s: Said) -> Hits:
    """Kinds of land it may be used on, and those it may not."""
    if not s.on_land or s.part in (
        "warranty",
        "letter",
        "first aid",
        "storage",
        "farm workers",
    ):
        return
    if s.part == "environment" and not re.match(r"\W*do not (?:use|apply) (?:on|to|in)\b", s.text, re.I):
        return
    if m := _ON_IT_BARRED.search(s.text):
        for name, pattern in PLACES:
            if pattern.search(m[1]):
                yield Hit("site forbidden", name)
        return
    if m := _NOT_TREATED.search(s.text):
        subject = _subject(s.text[: m.start()])
        named = [name for name, pattern in PLACES if pattern.search(subject)]
        if named and not _OTHER_OBJECT.search(s.text[m.end() :]) and not _TIMED.search(s.text):
            for name in named:
                yield Hit("site forbidden", name)
            return
    barred = _NOT_ON.search(s.text) or (":" in s.under and _NOT_ON.search(s.under))
    if barred and _AMOUNT.search(s.text[barred.start() :] if barred.string == s.text else s.text):
        return
    if barred:
        after = _LAND_WITH.sub(r"\1", s.text[barred.end() :] if _NOT_ON.search(s.text) else s.text)
        after = re.split(r"\bunless\b|\bexcept\b|\bother than\b|\bwhere\b", after, maxsplit=1)[0]
        if _NO_SITE.search(re.sub(r"\bgrazed by\b|\birrigation\b", " ", after)) and not re.search(
            r"^[^.;]*\bcrops?\b|lawns?|home", after, re.I
        ):
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
    rows = [m for m in YES_NO.finditer(s.text) if ANY_PLACE.search(m[1])]
    if rows:
        for m in rows:
            kind = "site" if m[2].lower() in ("yes", "allowed", "permitted") else "site forbidden"
            for name, pattern in PLACES:
                if pattern.search(m[1]):
                    yield Hit(kind, name, "likely")
        return
    listed = bool(s.under) and (_FOR_USE.search(s.under) or s.part == "sites")
    if listed or _FOR_USE.search(s.text) or (s.part == "sites" and not NEGATED.search(s.text)):
        if (
            _NO_SITE.search(re.sub(r"\bnon-irrigation\b", "", s.text, flags=re.I))
            and not (s.part == "sites" and not s.text.endswith(".") and not re.search(r"\d", s.text))
            and not re.search(r"for use|may (?:also )?be used|control|\bsites include", s.text, re.I)
        ):
            return
        text = re.sub(r"^with the exception of [^,]*,", "", s.text, flags=re.I)
        text = re.split(r"\b(?:except|excluding|but not|other than|not for)\b", text, maxsplit=1)[0]
        told = (s.part == "sites" or listed) and s.text.endswith(".") and not _FOR_USE.search(s.text)
        if told and _TALKS.search(s.text) and not re.search(r"\bmay (?:also )?be\b|\bput on\b", s.text, re.I):
            return
        plain = not told and (
            listed
            or s.part in ("sites", "front", "directions", "other")
            or re.search(r"for use|may be used|can be used", text, re.I)
        )
        for name, pattern in PLACES:
            if pattern.search(text):
                yield Hit("site", name, "sure" if plain else "likely")
