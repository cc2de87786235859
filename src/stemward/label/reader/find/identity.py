"""What the product is: numbers, edition, signal word, class, ingredients."""

import re

from stemward.label.reader.phrases import ANY_STATE, NUMBER
from stemward.label.reader.said import Hit, Hits, Said, Sure

_REGISTERED = re.compile(
    r"E\.?P\.?A\.?\s*Reg(?:istration|\.)?\s*(?:Numbers?|Nos?\.?|#)?\s*[:.]?\s*(?:is )?(\d{1,6}\s?-\s?\d{1,5}(?:\s?-\s?\d{1,6})?)(?!\d|-\d|/)",
    re.I,
)
_REGISTERED_SOMEHOW = re.compile(
    r"\b(?:E\.?P\.?A|Environmental Protection Agency|regist\w+|Reg\.)(?=\W)[^;]{0,50}?(?<![\d-])(\d{2,6}\s?-\s?\d{1,5}(?:\s?-\s?\d{1,6})?)(?![\d-]|/|\s?-\s?[A-Z])",
    re.I,
)
_FORMER = re.compile(r"\b(?:formerly|previously|once|superseded|used to be)\b[^;]*$", re.I)
_MADE_AT = re.compile(r"E\.?P\.?A\.?\s*Est(?:ablishment|\.)?\s*(?:Numbers?|Nos?\.?|#)?\s*[:.]?\s*", re.I)
_PLANT = re.compile(r"\b(\d{1,6}\s?-\s?[A-Z]{2,3}\s?-\s?\d{1,4})\b")
_DATE = r"(?:[A-Z][a-z]{2,8}\.? \d{1,2},? \d{4}|[A-Z0-9][\w./-]*\d[\w./-]*)"
_EDITION = re.compile(
    r"\b(?:Label (?:code|version|edition|no\.?|date|issued)|Revised|Revision|Rev\.|Edition|ACCEPTED|Accepted)"
    rf"\s*(?:date|no\.?)?\s*[:.#]?\s*({_DATE})"
)
MOST_EDITION = 120
"""A longer sentence is no imprint: engineering guess."""


def numbers(s: Said) -> Hits:
    """Registration and establishment numbers, and the label's edition."""
    if re.search(r"\bcompatible\b|\bpartner\b|\bcompanion\b|\bits own label\b", s.text, re.I):
        return
    m = next((m for m in _REGISTERED.finditer(s.text) if not _FORMER.search(s.text[: m.start()][-60:])), None)
    if m:
        yield Hit("registration number", re.sub(r"\s", "", m[1]))
    elif (m := _REGISTERED_SOMEHOW.search(s.text)) and not re.search(
        r"\best|\bformerly|\bpreviously", s.text[: m.end()], re.I
    ):
        yield Hit("registration number", re.sub(r"\s", "", m[1]), "likely")
    # No other number on a label has a state in its middle.
    told = _MADE_AT.search(s.text)
    for m in () if re.search(r"\bfor example\b|\be\.g\.", s.text) else _PLANT.finditer(s.text):
        sure: Sure = "sure" if told and told.end() <= m.end() else "likely"
        yield Hit("establishment number", re.sub(r"\s", "", m[1]), sure)
    if len(s.text) < MOST_EDITION and (m := _EDITION.search(s.sentence.text)):
        yield Hit("label edition", m[1].strip("., "), "likely")


_SIGNAL = re.compile(
    r"^(?:KEEP OUT OF (?:THE )?REACH OF CHILDREN\W*)?(?:[Ss]ignal [Ww]ord:?\s*)?(DANGER|WARNING|CAUTION)\b"
    r"(?:\s*[/-]?\s*(?:PELIGRO|AVISO|PRECAUCI.N|POISON|VENENO))*\s*(?P<rest>.*)$"
)


_TOLD = re.compile(r"^\W*signal word\W+(danger|warning|caution)\b|^(danger|warning|caution)\s*[-–—:]\s", re.I)
_ALONE = re.compile(
    r"\s*(?:keep out of (?:the )?reach of children\W*)?(?:signal word\W*)?(danger|warning|caution)\W*", re.I
)
_SIGNAL_WORD = re.compile(r"\b(DANGER|WARNING|CAUTION)\b(?!S|ARY)")
MOST_SIGNAL = 90
"""A longer sentence on the front speaks of hazards, and is not the signal word's: engineering guess."""


def signal(s: Said) -> Hits:
    """The signal word, alone on its line or first in the statements of hazard."""
    m = _SIGNAL.match(s.text)
    if not m and s.part in ("front", "hazards to people") and (told := _TOLD.match(s.text)):
        yield Hit("signal word", (told[1] or told[2]).lower(), "likely")
        return
    if not m and s.part == "front" and (bare := next(filter(None, map(_ALONE.fullmatch, s.text.split("|"))), None)):
        yield Hit("signal word", bare[1].lower(), "likely")
        return
    if not m:
        if s.part in ("front", "hazards to people") and len(s.text) < MOST_SIGNAL:
            named = set(_SIGNAL_WORD.findall(s.text))
            if len(named) == 1 and not re.search(r"\bor\b|\bif\b", s.text):
                yield Hit("signal word", named.pop().lower(), "likely")
        return
    alone = not re.search(r"\w", m["rest"])
    if alone or (s.part in ("front", "hazards to people") and not m["rest"].startswith(("S ", "ARY"))):
        yield Hit("signal word", m[1].lower(), "sure" if alone else "likely")


_BUYERS = r"(?:certified|licensed) (?:pesticide |commercial |private )?applicators?"
_RESTRICTED = re.compile(
    r"^\W*restricted use\b\W*(?::|$)|\bclassification\W{1,4}restricted\b|^\W*certified applicators only\b|\bnot for sale to or use by persons who are not certified\b|\bRUP\b|\brequires? certification\b|\bfederal restricted use\b|\brestricted[- ]use (?:pesticide|herbicide|product|classification)\b|\b(?:for|as|is|a) restricted[- ]use\b|"
    rf"\b(?:sale|sold|bought|purchased?|applied|used?|use|handled) (?:\w+,? ){{0,6}}?(?:only )?(?:to|by) {_BUYERS}|"
    rf"\bonly (?:\w+ ){{0,4}}?{_BUYERS}[^.;]{{0,80}}\b(?:buy|bought|purchase|use|apply|handle)|"
    rf"\banyone (?:other than|but|except) (?:an? )?{_BUYERS}|\b(?:no one|nobody|none) (?:\w+ ){{0,3}}?(?:but|except|other than) {_BUYERS}",
    re.I,
)
_UNRESTRICTED = re.compile(
    r"\bnon-?restricted|\bunrestricted|\bnot (?:\w+ ){0,3}?restricted|\bgeneral[- ]use\b|\bno restricted|\brecords?\b|\bno\b[^.;]*\b(?:licen[sc]e|certif\w+)|\bnot (?:required|needed)\b|\bneed not\b|\bhelp\b|\bassist|\bask\b|\bconsult|\bhire\b|\bnewsletter|\bif\b|\bunless\b",
    re.I,
)


def restricted(s: Said) -> Hits:
    """Restricted use, as the words stand in their box."""
    # What one state alone restricts is no classification of the product.
    loose = (
        re.search(rf"{_BUYERS}", s.text, re.I)
        and re.search(r"\b(?:only|alone|limited|restricted|exclusively)\b", s.text, re.I)
        and re.search(r"\b(?:sale|sold|buy|bought|purchase|use|apply|handle)\b", s.text, re.I)
    )
    if (
        (_RESTRICTED.search(s.text) or loose)
        and not _UNRESTRICTED.search(s.text)
        and not ANY_STATE.search(s.sentence.text)
    ):
        yield Hit("restricted use", "yes", "sure" if s.part in ("front", "letter") else "likely")


_OTHERS = re.compile(r"\b(?:other|inerts?|total)\b|ingredients?\W*$", re.I)
_NO_INGREDIENT = re.compile(
    r"\bae\b|equivalent|^\W*equals?\b|\bof the acid\b|\bcontrol or\b|% control|\bof a gal\b|\borganic matter\b|\bsoils?\b|\brecycled\b|\blb per gal|\blb/|\bsurfactant|adjuvant|solution|v/v|contains petroleum",
    re.I,
)


def ingredients(s: Said) -> Hits:
    """Percent by weight of each ingredient, from the statement on the front; not of others, not of the acid."""
    if s.part != "front" or s.named or _NO_INGREDIENT.search(re.sub(r"\([^)]*\)", "", s.whole)):
        return
    for m in re.finditer(rf"([A-Za-z][^%*\n]*?)[\s.*†‡§:_]*(?<!\d)(?<!\d[.-])({NUMBER})\s*%", s.text):
        if not _OTHERS.search(m[1]) and not m[2].startswith("100"):
            yield Hit("ingredient percent", f"{m[2]} %")


_OF = r"(?:[^.;\d]|\d(?=[,'-])){0,80}?"
_IN_A_GALLON = re.compile(
    rf"\b(?:1|one|each|every|a|per) (?:U\.?S\.? )?gal\b(?: of (?:this |the )?(?:product|concentrate))?\W*(?:(?:there )?(?:contains|holds|has|is|are|equals|supplies|provides|carries)\b)?{_OF}(?<![\d.])(?P<b>{NUMBER}) lb(?P<ofb>{_OF}(?=$|[.;(]|\d))|"
    rf"(?P<a>{NUMBER}) lb (?P<ofa>{_OF})\bin (?:1|one|each|a|the|every) (?:U\.?S\.? )?gal\b",
    re.I,
)
_PER_GALLON = re.compile(
    rf"({NUMBER})\s*lb(?P<of>{_OF})(?:(?:per|to the) (?:U\.?S\.? )?gal\b|/\s*(?:U\.?S\.? )?gal\b)(?P<after>{_OF}(?=$|[.;(\d]))",
    re.I,
)
_HEADED = re.compile(
    rf"\blb(?P<of>[^.;\d]{{0,40}}?)(?:per|/|in (?:a|each|one|1))\s*(?:U\.?S\.? )?gal\b[^.;\d]{{0,25}}?(?<![\d.])({NUMBER})\b(?![\d.]*\s*(?:%|lb|\()|,\d-D)",
    re.I,
)
_PER_LITER = re.compile(
    rf"({NUMBER})\s*(?:g|grams?)\b(?P<of>{_OF})(?:per|/)\s*(?:L|lit(?:er|re))\b(?P<after>{_OF}(?=$|[.;(\d]))", re.I
)
_ACID, _SALT = r"\bae\b|\bacid\b(?! salt)", r"\bai\b|\bsalt\b|\bester\b|\bactive\b|\bamine\b"


def strength(s: Said) -> Hits:
    """Pounds a gallon: of the acid, or of the salt or ester."""
    if s.part in ("warranty", "first aid", "storage", "plants") or re.search(
        r"weigh(?!t)|density|colorant|\bdye\b|\bmarker\b|\bfertilizer|\bsurfactant|\bof water\b", s.text, re.I
    ):
        return
    if re.search(r"\bacre\b|\bper A\b", s.text, re.I):
        return
    found = set()
    for m in (*_PER_GALLON.finditer(s.text), *_IN_A_GALLON.finditer(s.text), *_HEADED.finditer(s.text)):
        said = m.groupdict()
        number = said.get("a") or said.get("b") or next(g for g in m.groups() if g and re.fullmatch(NUMBER, g))
        near = (said.get("of") or said.get("ofa") or said.get("ofb") or "", said.get("after") or "")
        before = f"{s.under} {s.text[: m.start()]}"[-80:]
        found.add((_of_what(*near, before), number))
    for what, number in sorted(found):
        if what:
            yield Hit(f"{what} per volume", f"{number} lb {'ae' if what == 'acid' else 'ai'}/gal", "likely")
    if not found:
        for m in _PER_LITER.finditer(s.text):
            if what := _of_what(m["of"], m["after"], s.text[max(0, m.start() - 80) : m.start()]):
                yield Hit(f"{what} per volume", f"{m[1]} g {'ae' if what == 'acid' else 'ai'}/L", "likely")


def _of_what(between: str, after: str, before: str) -> str:
    """Whether a weight is of the "acid" or of what is "active", by the nearest word that tells; "" where none does."""
    for text, last in ((between, False), (after, False), (before, True)):
        told = sorted(
            (m.start(), name)
            for name, pattern in (("acid", _ACID), ("active", _SALT))
            for m in re.finditer(pattern, text, re.I)
        )
        if (
            text is between
            and {name for _, name in told} == {"acid", "active"}
            and not re.search(r"\b(?:ai|active)\b", text, re.I)
        ):
            # "4 lb of triclopyr acid as the ester" is a weight of the acid.
            return "acid"
        if told:
            return told[-1 if last else 0][1]
    return ""
