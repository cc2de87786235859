"""States it may not be used in, or in which alone: by what a sentence does to them, whatever its words."""

import re

from stemward.label.reader.phrases import ANY_STATE, FORBIDS, STATES
from stemward.label.reader.said import Hit, Hits, Said, Sure

_RULES = re.compile(
    r"\b(?:us(?:es?|ed|ers?|ing)|appl(?:y|ied|ications?|icators?)|sale|sold|sell|distribut\w+|ship\w*|regist\w+|approv\w+|permi\w+|allow\w*|authori[sz]\w+|legal|lawful|unlawful|illegal|valid|labell?\w*|"
    r"available|banned|closed|exclu\w*|excepted|void|against the law|cancell?ed|prohibit\w*|excluded|residents|treat\w*)\b",
    re.I,
)
_ELSE = re.compile(
    r"\b(?:-gal(?:lon)? (?:drums?|jugs?|containers?)|package sizes?|not held to|exempt|need not|trials?|tests?|studies|call|phone|extension|university|office|manufactured|made (?:in|by)|formulated|headquarters|incorporated|information|weather|native|grows?|found in)\b",
    re.I,
)
"""Words of sentences in which a state is only a place."""
_ALL_BUT = re.compile(
    r"^\W*except(?:ing)?\b|\b(?:all|every|any|each|anywhere|nationwide|throughout)\b[^.;]*\b(?:except(?:ing)?|but|other than|excluding|save|exception)\b|\bexcept(?:ing)?\b[^.;]*\b(?:all|every|any|other) (?:other )?(?:\w+ )?states?\b",
    re.I,
)
_NONE_BUT = re.compile(
    r"\b(?:other states|elsewhere)\b[^.;]*\b(?:prohibited|unlawful|not)\b|\bany state (?:other than|but|except)\b|\bagainst the law\b[^.;]*\banywhere but\b|\b(?:beyond|outside) the borders of\b|\bexception of[^.;]*,[^.;]*\b(?:not|no)\b|^\W*unless[^,]*\b(?:in|within)\b[^,]*(?:,[^,]*){0,4}, ?(?:do not|no|never)\b|\b(?:not|no|never|none|nowhere|cannot|prohibited|unlawful|illegal|forbidden|against the law)\b[^.;]*\b(?:other than|except(?:ing)?|but|outside(?: of)?|save)\b|\boutside (?:of )?(?:the )?[^.;]*(?:\bnot?\b|prohibited|unlawful|forbidden|illegal)|"
    r"\bnot (?:located |living )?in\b[^.;]*\b(?:may not|must not|do not|cannot)\b|\b(?:prohibited|unlawful|illegal|forbidden|not (?:allowed|permitted|registered|valid))\b[^.;]*\b(?:outside|elsewhere)\b",
    re.I,
)
_BARRED = re.compile(
    rf"{FORBIDS}|\b(?:not|no|never|cannot|excluded|exclusions?|excepted|closed|violation|cancell?ed|illegal|banned|neither|void|withdrawn|suspended|excluding|against the law)\b",
    re.I,
)
_ALONE = re.compile(
    r"\b(?:only(?! (?:when|if|on|with|at|as|after|under|from|until)\b| (?:by|to|for use by) (?:a )?(?:certified|licensed|trained|commercial|private|professional)| (?:\w+ )?(?:holders?|certified|licensed))|solely|sole|alone|exclusively|nowhere else|no others?|nothing else|no other states?|and no other|(?:limited|restricted|confined) to)\b",
    re.I,
)
_NAMED = re.compile(
    r"\b(?:approved|permitted|registered) states?\b|\bstates? of use\b|\b(?:following|these) states?\b|\bstates? (?:in which|where)\b|\bvalid (?:for use )?(?:in|within)\b|\b(?:approved|registered|registration|labell?ed|legal|permitted|authori[sz]ed)\b[^.;]*\b(?:in|within|for|covers)\b|"
    r"^for (?:sale|use|distribution)(?:[ ,/]+(?:and|or)?[ ,/]*(?:sale|use|distribution))* (?:in|within)\b",
    re.I,
)
_CONDITION = re.compile(
    r"\b(?:from|between|during|when|if|unless|until|before|after)\b[^.]*\b(?:feet|acre|January|February|March|April|May|June|July|August|September|October|November|December|permit|written|year)\b|\d\s*(?:lb|qt|gal|%|feet|ft|days|hours)",
)
"""Where a rule for a state has a condition or a figure: it is no rule on whether it may be used there."""


MOST_BARE = 60
"""A short line that names states and shuts or excepts them needs no word of use: engineering guess."""


def states(s: Said) -> Hits:
    """States excluded, or those in which alone it may be used. Of what part of a state is spoken, nothing is sure."""
    text = (s.sentence.text.title() if s.sentence.text.isupper() else s.sentence.text).replace("U.S.", "US")
    whole = f"{s.sentence.under} {text}"
    named = [code for code, pattern in _STATES if pattern.search(text)] if ANY_STATE.search(text) else []
    named += [code for code in _codes(s.sentence.text) if code not in named]
    if not named or s.part in ("warranty", "letter"):
        return
    bare = len(text) < MOST_BARE and (_ALONE.search(text) or _ALL_BUT.search(text))
    if (
        not (bare or _RULES.search(whole))
        or _CONDITION.search(text)
        or (_ELSE.search(text) and not _ALONE.search(text))
    ):
        return
    kind, most = _ruling(whole)
    # A rule for one way or one kind of land is no rule for the product.
    some = (
        s.named
        or s.on_land
        or re.search(
            r"\bby air(?:craft)?\b|\baerial|\bhelicopter|\bfor use on\b|\bvalley\b|\bbasin\b|\bwatershed|\bcount(?:y|ies)\b|\bparts? of\b|\bportions? of\b|\bislands?\b",
            text,
            re.I,
        )
    )
    if kind:
        for code in named:
            yield Hit(kind, code, "unsure" if some else most)


_STATES = tuple((code, re.compile(rf"\b(?:{pattern}|{pattern.upper()})\b(?!['’]s\b)")) for code, pattern in STATES)
_CODE = "|".join(code for code, _ in STATES)
_CODES = re.compile(rf"\b(?:{_CODE})(?:(?:\s*(?:,|and|or|/)\s*(?:and |or )?|\s)(?:{_CODE})\b)+")
_CODE_IN = re.compile(rf"\b(?:in|of|within|for|outside) ({_CODE})\b")
_AMBIGUOUS = frozenset(("IN", "OR", "ME", "OK", "HI", "OH", "PA", "MA", "LA", "ID", "CO", "DE", "AL"))
"""Codes that are words or other signs too: taken only beside another code."""


def _codes(text: str) -> list[str]:
    """States named by their postal codes; none in words that are all capitals."""
    if text.isupper():
        return []
    listed = {code for m in _CODES.finditer(text) for code in re.findall(r"\b[A-Z]{2}\b", m[0])}
    alone = set(_CODE_IN.findall(text)) - _AMBIGUOUS
    return sorted((listed | alone) & {code for code, _ in STATES})


def _ruling(text: str) -> tuple[str, Sure]:
    """What a sentence does to the states it names, and how sure that is."""
    if _ALL_BUT.search(text) and not re.search(
        r"\b(?:not|no|never|unlawful|prohibited|illegal|against the law)\b[^.;]*\b(?:any|all|every|anywhere)\b|\bany state\b[^.;]*\b(?:unlawful|prohibited|illegal|forbidden|may not|must not)\b",
        text,
        re.I,
    ):
        return "state excluded", "sure"
    if _NONE_BUT.search(text):
        return "state only", "sure"
    if _ALONE.search(text):
        # "Not only in Ohio" and the like say nothing of it.
        return ("", "unsure") if re.search(r"\bnot only\b", text, re.I) else ("state only", "sure")
    if _BARRED.search(text):
        return "state excluded", "sure" if re.search(
            r"\b(?:us(?:e|ed|ers?)|regist\w+|sale|sold|appl\w+|distribut\w+|labell?ed|permitted|allowed)\b", text, re.I
        ) else "likely"
    return ("state only", "likely") if _NAMED.search(text) else ("", "unsure")
