"""A sentence that sets several limits, each for its own way, place or matter, as one clause for each."""

import re
from collections.abc import Sequence
from functools import lru_cache

from stemward.label.reader.phrases import METHODS, NUMBER, PLACES, STATES

_JOINT = re.compile(r",?\s+(?:and|or(?! (?:more|less|longer|fewer|greater|over|under)\b)|but)\s+(?:a |an )?|,\s+")
_FIGURE = re.compile(
    rf"{NUMBER}\s*(?:%|(?:lbs?|pounds?|feet|foot|ft|days?|weeks?|months?|hours?|minutes?|gallons?|quarts?|times|inch(?:es)?|applications?|treatments?)\b)|"
    r"\b(?:un|do not )dilut\w*",
    re.I,
)
_MATTERS: tuple[tuple[str, re.Pattern[str]], ...] = (
    *((name, pattern) for name, pattern in METHODS),
    *((name, pattern) for name, pattern in PLACES if name not in ("wet", "crop")),
    ("wells", re.compile(r"\bwell(?:s|heads?)?\b(?! as\b)", re.I)),
    ("water", re.compile(r"\b(?:surface |open )?waters?\b|\bstreams?\b|\blakes?\b|\bponds?\b|\brivers?\b", re.I)),
    ("roots", re.compile(r"\broots?\b", re.I)),
    ("hay", re.compile(r"\bhay", re.I)),
    ("graz", re.compile(r"\bgraz", re.I)),
    ("single", re.compile(r"\b(?:per|each|any (?:one|single)|single) (?:application|treatment)\b", re.I)),
    ("yearly", re.compile(r"\b(?:per|a|each|any) (?:calendar |growing )?(?:year|season)\b", re.I)),
    ("count", re.compile(r"\b\d+ (?:applications?|treatments?|times)\b", re.I)),
    ("interval", re.compile(r"\bapart\b|\bintervals?\b|\bbetween\b", re.I)),
)
"""What one clause of several is about; a clause of another matter is a clause of its own."""
_STATE = re.compile(rf"\((?:in (?P<in>{'|'.join(name for _, name in STATES)})): ?(?P<limit>[^()]*)\)", re.I)


MOST_SIGNS = 1000
"""A longer run of words is no sentence, and parting it takes long: engineering guess."""


_EXCEPTED = re.compile(
    r"^(?:except|save) (?P<on>(?:on|in|for) [^,;]{3,40}), where (?P<its>[^,;]*\d[^,;]*), (?P<rule>[^;]*\d[^;]*)$|"
    r"^(?P<first>[^;]*\d[^;]*?),? except (?P<at>(?:on|in|for) [^,;]{3,40}),? where (?P<own>[^;]*\d[^;]*)$",
    re.I,
)
"""A rule with another figure for one place: "Except on pastures, where the limit is 1 lb, do not apply more than 3 lb"."""


def apart(text: str) -> list[str]:
    """The clauses, each with the words that open the sentence; the sentence itself where it cannot be parted so that
    every clause has a figure and its own matter."""
    if found := _STATE.search(text):
        rest = f"{text[: found.start()].rstrip()}{text[found.end() :]}"
        return [rest, f"{_lead(text)} {found['limit']} in {found['in']}".strip()]
    if len(text) < MOST_SIGNS and (m := _EXCEPTED.search(text.rstrip("."))):
        place, own, rest = (m["on"], m["its"], m["rule"]) if m["on"] else (m["at"], m["own"], m["first"])
        return [rest, f"{place[:1].upper()}{place[1:]}, {own}"]
    pieces = _pieces(text) if len(text) < MOST_SIGNS and len(_FIGURE.findall(text)) > 1 else [text]
    if len(pieces) < 2:
        return [text]
    lead = _lead(pieces[0])
    return [pieces[0], *(piece if _opens(piece) else f"{lead} {piece}".strip() for piece in pieces[1:])]


def _pieces(text: str) -> list[str]:
    """Parted at every joint where both sides have a figure and differ in what they are about."""
    pieces, start = [], 0
    for joint in _JOINT.finditer(text):
        before, after = text[start : joint.start()], text[joint.end() :]
        following = _JOINT.split(after)[0] if _JOINT.search(after) else after
        if _FIGURE.search(before) and _matters(before) and _FIGURE.search(after) and _own(before, following, after):
            pieces.append(before)
            start = joint.end()
    pieces.append(text[start:])
    matters = [_matters(piece) for piece in pieces]
    apart_all = all(one and not one & other for n, one in enumerate(matters) for other in matters[:n]) and all(matters)
    return pieces if apart_all else [text]


def _own(before: str, following: str, after: str) -> bool:
    """True if what follows has a figure of its own and is about something else."""
    if not _FIGURE.search(following):
        # The matter may stand before its figure: "for cut stumps use 50 %".
        following = " ".join(re.split(_JOINT, after)[:2])
    return bool(_FIGURE.search(following)) and bool(_matters(following)) and not _matters(before) & _matters(following)


@lru_cache(maxsize=256)
def _matters(text: str) -> frozenset[str]:
    named = frozenset(name for name, pattern in _MATTERS if pattern.search(text))
    # "8 lb a year in forests and 2 lb a year on pasture": of two limits of one sort the places tell them apart.
    return named - {"single", "yearly"} or named


def _lead(text: str) -> str:
    """The words that open a sentence, up to its first figure or matter: "Do not apply within"."""
    places: Sequence[int] = [
        m.start() for pattern in (_FIGURE, *(p for _, p in _MATTERS)) if (m := pattern.search(text))
    ]
    words = re.sub(r"\b(?:for|on|in|a|an|the)\s*$", "", text[: min(places, default=0)].rstrip(), flags=re.I)
    return words.strip()


def _opens(piece: str) -> bool:
    """True for a clause that has a verb of its own."""
    return bool(
        re.match(r"(?:for [^,]{3,40}?,? )?(?:do not|use|apply|dilute|mix|not (?:more|to)|keep|wait)\b", piece, re.I)
    )
