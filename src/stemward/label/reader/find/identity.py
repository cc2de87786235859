"""What the product is: numbers, edition, signal word, class, ingredients."""

import re

from stemward.label.reader.phrases import ANY_STATE, NUMBER
from stemward.label.reader.said import Hit, Hits, Said

_REGISTERED = re.compile(
    r"E\.?P\.?A\.?\s*Reg(?:istration|\.)?\s*(?:Numbers?|Nos?\.?|#)?\s*[:.]?\s*(\d{1,6}\s?-\s?\d{1,5}(?:\s?-\s?\d{1,6})?)(?!\d|-\d|/)",
    re.I,
)
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
    if m := _REGISTERED.search(s.text):
        yield Hit("registration number", re.sub(r"\s", "", m[1]))
    if m := _MADE_AT.search(s.text):
        for plant in _PLANT.findall(s.text[m.end() :]):
            yield Hit("establishment number", re.sub(r"\s", "", plant))
    if len(s.text) < MOST_EDITION and (m := _EDITION.search(s.sentence.text)):
        yield Hit("label edition", m[1].strip("., "), "likely")


_SIGNAL = re.compile(
    r"^(?:KEEP OUT OF (?:THE )?REACH OF CHILDREN\W*)?(?:[Ss]ignal [Ww]ord:?\s*)?(DANGER|WARNING|CAUTION)\b"
    r"(?:\s*[/-]?\s*(?:PELIGRO|AVISO|PRECAUCI.N|POISON|VENENO))*\s*(?P<rest>.*)$"
)


def signal(s: Said) -> Hits:
    """The signal word, alone on its line or first in the statements of hazard."""
    m = _SIGNAL.match(s.text)
    if not m:
        return
    alone = not re.search(r"\w", m["rest"])
    if alone or (s.part in ("front", "hazards to people") and not m["rest"].startswith(("S ", "ARY"))):
        yield Hit("signal word", m[1].lower(), "sure" if alone else "likely")


_BUYERS = r"(?:certified|licensed) (?:pesticide |commercial |private )?applicators?"
_RESTRICTED = re.compile(
    r"\brestricted[- ]use (?:pesticide|herbicide|product|classification)\b|\b(?:for|as|is|a) restricted[- ]use\b|"
    rf"\b(?:sale|sold|bought|purchased?|applied|used?|use|handled) (?:\w+,? ){{0,6}}?(?:only )?(?:to|by) {_BUYERS}|"
    rf"\bonly (?:\w+ ){{0,4}}?{_BUYERS}[^.;]{{0,80}}\b(?:buy|bought|purchase|use|apply|handle)|"
    rf"\b(?:no one|nobody|none) (?:\w+ ){{0,3}}?(?:but|except|other than) {_BUYERS}",
    re.I,
)
_UNRESTRICTED = re.compile(
    r"\bnon-?restricted|\bunrestricted|\bnot (?:\w+ ){0,3}?restricted|\bgeneral[- ]use\b|\bno restricted|\bif\b|\bunless\b",
    re.I,
)


def restricted(s: Said) -> Hits:
    """Restricted use, as the words stand in their box."""
    # What one state alone restricts is no classification of the product.
    if _RESTRICTED.search(s.text) and not _UNRESTRICTED.search(s.text) and not ANY_STATE.search(s.sentence.text):
        yield Hit("restricted use", "yes", "sure" if s.part in ("front", "letter") else "likely")


_OTHERS = re.compile(r"\b(?:other|inert|total)\b|ingredients?\W*$", re.I)
_NO_INGREDIENT = re.compile(r"\bae\b|equivalent|surfactant|adjuvant|solution|v/v|contains petroleum", re.I)


def ingredients(s: Said) -> Hits:
    """Percent by weight of each ingredient, from the statement on the front; not of others, not of the acid."""
    if s.part != "front" or _NO_INGREDIENT.search(s.text):
        return
    for m in re.finditer(rf"([A-Za-z][^%*\n]*?)[\s.*†‡§:_]*(?<![\d.-])({NUMBER})\s*%", s.text):
        if not _OTHERS.search(m[1]) and not m[2].startswith("100"):
            yield Hit("ingredient percent", f"{m[2]} %")


_IN_A_GALLON = re.compile(
    rf"\b(?:1|one|each|a) gal (?:of this product )?(?:contains|holds|has) ({NUMBER}) lb(?P<ofb>[^.;\d]{{0,80}})".replace(
        f"({NUMBER})", f"(?P<b>{NUMBER})"
    )
    + rf"|(?P<a>{NUMBER}) lb (?P<ofa>[^.;\d]{{0,60}}?)\bin (?:1|one|each|a) (?:U\.?S\.? )?gal\b",
    re.I,
)
_PER_GALLON = re.compile(
    rf"({NUMBER})\s*lb(?P<of>[^.;\d]{{0,80}}?)(?:per (?:U\.?S\.? )?gal\b|/\s*(?:U\.?S\.? )?gal\b)(?P<after>[^.;,\d]{{0,60}})",
    re.I,
)


def strength(s: Said) -> Hits:
    """Pounds a gallon: of the acid, or of the salt or ester."""
    if s.part in ("warranty", "first aid", "storage", "plants") or re.search(r"weigh(?!t)|density", s.text, re.I):
        return
    if re.search(r"\bacre\b|\bper A\b", s.text, re.I):
        return
    for m in _IN_A_GALLON.finditer(s.text):
        number, of = m["a"] or m["b"], (m["ofa"] or m["ofb"] or "")
        if re.search(r"\bae\b|\bacid\b", of, re.I):
            yield Hit("acid per volume", f"{number} lb ae/gal", "likely")
        elif re.search(r"\bai\b|\bactive\b|\bsalt\b|\bester\b", of, re.I):
            yield Hit("active per volume", f"{number} lb ai/gal", "likely")
    for m in _PER_GALLON.finditer(s.text):
        # What stands in brackets behind a figure belongs to the next one.
        near = f"{m['of']} {m['after'].partition('(')[0]}"
        before = s.text[max(0, m.start() - 80) : m.start()]
        salt = re.search(r"\bai\b|\bsalt\b|\bester\b|\bactive\b", near, re.I)
        acid = re.search(r"\bae\b|\bacid\b", near, re.I) or (not salt and re.search(r"\bae\b|\bacid\b", before, re.I))
        if acid and not re.search(r"\bai\b|\bactive\b", near, re.I):
            yield Hit("acid per volume", f"{m[1]} lb ae/gal", "likely")
        elif salt:
            yield Hit("active per volume", f"{m[1]} lb ai/gal", "likely")
