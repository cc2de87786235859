"""What a figure in a rule limits: the most or the least that is allowed, whichever way round the rule is worded."""

import re
from typing import Literal

from stemward.label.reader.phrases import FORBIDS

Bound = Literal["", "most", "least"]

_BE = r"(?:be |is |are |blow |come )?"
_AT_MOST = re.compile(
    rf"\b(?:no|not|nor|never) {_BE}(?:any )?(?:more|greater|higher|over|above|warmer|hotter|faster|stronger|in excess)(?: (?:than|of))?\b|"
    r"\b(?:do|does|must|may|shall|should|can|to|never)(?: not)? (?<=not )exceed\b|\bnot to exceed\b|\bnever exceed\b|\bnor exceed\b|\bno [\w ]{0,25}exceeding\b|"
    r"\bat most\b|\b(?:maximum|greatest|highest|largest)\b|\blimit (?:is|of)\b|\bup to\b|\bno more\b",
    re.I,
)
_AT_LEAST = re.compile(
    rf"\b(?:no|not|nor|never) {_BE}(?:any )?(?:less|lower|lighter|weaker|slower|colder|cooler|under|below|fewer|chillier)(?: than)?\b|\blower (?:\w+ )?limit\b|\blow temperature\b|"
    r"\b(?:lowest|least|smallest|minimum)\b|\bat least\b",
    re.I,
)
"""Words that bound what is allowed: they have their negation in them."""
_OVER = re.compile(
    r"\babove\b|\bexceed(?:s|ed|ing)?\b|\bover\b|\bgreater\b|\bmore than\b|\bhigher\b|\bwarmer\b|\bhotter\b|\bin excess of\b|\bfaster\b|\bstronger\b|\bheavier\b|\bbeyond\b|\bpast\b|\bclimbs?\b|\btops?\b|"
    r"\b(?:warmed|risen|reach(?:ed|es)?|passes|rises to|warms to)\b|\bsurpass(?:es)?\b|\battains?\b|\brises over\b",
    re.I,
)
_UNDER = re.compile(
    r"\bbelow\b|\bfallen short of\b|\bless than\b|\bunder\b|\blower\b|\bcolder\b|\bcooler\b|\bcalmer\b|\blighter\b|\bweaker\b|\bslower\b|\bfalls? to\b|\bdrops? (?:to|below|under)\b",
    re.I,
)
_BEHIND: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "under",
        re.compile(
            r"\s*(?:\([^)]*\)\s*)?(?:or|and) (?:less|lower|below|under|colder|cooler|slower)\b(?! (?:than )?\d)", re.I
        ),
    ),
    (
        "over",
        re.compile(
            r"\s*(?:\([^)]*\)\s*)?(?:\+|(?:or|and) (?:more|greater|higher|above|over|warmer|hotter|up)\b(?! (?:than )?\d))",
            re.I,
        ),
    ),
    ("at least", re.compile(r"\s*,?\s*(?:\(?min(?:imum)?\b|and rising\b)", re.I)),
    ("at most", re.compile(r"\s*,?\s*\(?max(?:imum)?\b", re.I)),
    ("over", re.compile(r"[^.;]{0,30}\b(?:exceeded|surpassed|passed)\b", re.I)),
)
_ENDS = (
    r"\bstop(?:s|ped)?\b|\bcease\b|\bdelay\b|\bpostpone\b|\bhold off\b|\bsuspend\b|\bdiscontinued?\b|\bquit\b|\bput off\b|\brefrain\b|\bhalt(?:s|ed)?\b|\bsuspended\b|\bmust end\b|\bends? (?:the )?(?:work|spray\w*|appl\w*)\b|\bwait\b|\bbars?\b|\bstay out\b|"
    r"\bshut (?:\w+ ){0,2}down\b|\bidle\b|\brules? out\b|\bto be avoided\b|\btoo (?:windy|hot|cold|warm|calm)\b|\bwithheld\b|\bneither\b|\bnot at\b|\bno (?:applications?|treatments?|spraying)\b"
)
_FORBIDDEN = re.compile(rf"{FORBIDS}|{_ENDS}|\b(?:is|are) (?:a violation|not (?:permitted|allowed|to be))", re.I)
_TURNS = re.compile(r"\b(?:unless|until|till|only (?:when|if|while|at|in|where|below|above|between))\b", re.I)
"""After these stands what is allowed, whatever was forbidden before."""
_PARTS = re.compile(
    r";|(?<!\d)\.(?!\d)|,? \b(?:but|while|whereas|although|though)\b|,? and (?=do not|never|avoid|cease)", re.I
)
_CONDITION = re.compile(
    r"\s*(?:if|when|whenever|where|wherever|once|should|in case|in|at|above|over|under|below|with)\b", re.I
)


def side(text: str, number: re.Match[str]) -> Literal["", "over", "under", "at most", "at least"]:
    """From which side a figure is spoken of, by the words behind and before it."""
    before, after = text[max(0, number.start() - 55) : number.start()], text[number.end() : number.end() + 40]
    for name, pattern in _BEHIND:
        if pattern.match(after):
            return name  # type: ignore[return-value]
    spoken = _AT_LEAST.sub(" atleast ", _AT_MOST.sub(" atmost ", before))
    last = max(
        (
            (m.end(), name)
            for name, pattern in (("at most", "atmost"), ("at least", "atleast"), ("over", _OVER), ("under", _UNDER))
            for m in re.finditer(pattern, spoken)
        ),
        default=(0, ""),
    )
    return last[1]  # type: ignore[return-value]


def limit(text: str, number: re.Match[str]) -> Bound:
    """What a figure limits: forbidden above it or allowed below it makes a most, the other way round a least."""
    start, end = 0, len(text)
    for part in _PARTS.finditer(text):
        start = part.end() if part.end() <= number.start() else start
        end = min(end, part.start()) if part.start() >= number.end() else end
    clause = text[start:end]
    before, behind = text[start : number.start()], text[number.end() : end]
    spoken = side(text, number)
    # "Use no spray above 10 mph, do not ..." : a further rule behind a comma is not this figure's.
    if not _CONDITION.match(clause):
        behind = re.split(r", (?=(?:do not|never|avoid)\b[^,;]*(?:\d|inversion|wind|rain))", behind)[0]
    turned = _TURNS.search(before)
    plain = _AT_LEAST.sub(" ", _AT_MOST.sub(" ", f"{before} {behind}"))
    forbidden = not turned and bool(_FORBIDDEN.search(plain))
    if not spoken:
        # "Temperature limit for application: 88 F".
        if re.search(r"\b(?:limit|ceiling|max)\b[^.;]{0,40}$", before, re.I) or re.match(
            r"[^.;]{0,12}\bis the (?:upper|greatest|highest|top)?[^.;]{0,12}\blimit", behind, re.I
        ):
            return "most"
        if re.match(r"[^.;]{0,12}\bis the (?:floor|least|lowest)", behind, re.I):
            return "least"
        return "most" if forbidden and re.search(r"\b(?:at|is|shows|reads|hits)\s*$", before, re.I) else ""
    if spoken in ("at most", "at least"):
        # "Not in winds of no more than 2 mph" is rare; its figure is left to the reader.
        return "most" if spoken == "at most" else "least"
    return "most" if (spoken == "over") == forbidden else "least"
