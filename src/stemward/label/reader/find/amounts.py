"""How much and how often: most per stem, per application and per year, how many times, how far apart."""

import re

from stemward.label.reader.phrases import FORBIDS, LENGTH, NUMBER, RATE, VOLUME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_A_STEM = r"(?:\b(?:per|to an?|for an?|for each|on each|on any one|on an?|on any|in each|to each|to any|for one|for any one|each|a|any|one|every|the|this|to 1|single|no)\s+(?:individual |single |standing |plant |treated |cut |one )*(?:stems?|trees?|stumps?|trunks?|plants?|clumps?|bole)\b)"
_MOST_CUE = r"(?:exceed\w*|\bwithin\b|no more than|not more than|more than|maxim\w*|\bmax\b|limit\w*|at most|up to|not above|above|\bover\b|no greater|greater (?:volume )?than|a total of|as much as|at the most|or less)"
_PER_STEM = re.compile(
    rf"{_MOST_CUE}[^.;]{{0,40}}?{VOLUME}[^.;]{{0,50}}?{_A_STEM}|{_A_STEM}[^.;\d]{{0,45}}?{_MOST_CUE}[^.;\d]{{0,45}}?{VOLUME}|{VOLUME}[^.;\d]{{0,15}}{_MOST_CUE}[^.;\d]{{0,20}}{_A_STEM}|{_MOST_CUE}[^.;\d]{{0,15}}?{_A_STEM}[^.;\d]{{0,10}}{VOLUME}|"
    rf"{VOLUME}[^.;\d]{{0,15}}{_A_STEM}[^.;\d]{{0,10}}{_MOST_CUE}",
    re.I,
)
_APART = re.compile(
    rf"(?:spaced?|space|make|placed?|cuts?|injections?|hacks?|frills?|apart|intervals?)[^.;]{{0,60}}?\b({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?[\s-]*(inch(?:es)?|in\.?|cm)\b"
    r"[^.;]{0,30}?(?:\bapart\b|\bbetween\b|\bintervals?\b|from edge|edge to edge|on center|spacing)|"
    rf"\b({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?[\s-]*(inch(?:es)?|in\.?|cm)\b\s*(?:apart|between (?:the )?(?:cuts?|edges|injections?|hacks?)|intervals?)",
    re.I,
)


_SPACED = re.compile(
    rf"\b(?:between|apart|separating|gap|spac\w+|every|each|edge to edge|interval)\b[^.;\d]{{0,40}}?{LENGTH}(?![^.;]{{0,12}}\b(?:deep|wide|long|diameter|dbh|high))|"
    rf"{LENGTH}[^.;\d]{{0,20}}(?:\bapart\b|\bbetween\b|edge to edge|on cent(?:er|re)|\bspacing\b|from (?:cut|edge|one)|of (?:\w+ )?(?:bark|circumference))",
    re.I,
)


def per_stem(s: Said) -> Hits:
    """Most of a mix for one stem, and how far cuts may be apart."""
    if m := _PER_STEM.search(s.text):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit(
            "most per stem", f"{number} {unit}", "sure" if re.search(r"exceed|more than", m[0], re.I) else "likely"
        )
    if "hack and squirt" in s.methods or re.search(
        r"\bcuts\b|\bhacks?\b|\binject|\bpuncture|\bincisions?\b", s.text, re.I
    ):
        if re.search(r"\brows?\b|seedling|nozzle", s.text, re.I):
            return
        if m := _APART.search(s.text):
            high = m[2] or m[1] or m[5] or m[4]
            unit = m[3] or m[6]
            yield Hit("cut widths apart", f"{high} {'cm' if unit.lower() == 'cm' else 'in'}")
        elif m := _SPACED.search(s.text):
            number, unit = [group for group in m.groups() if group][:2]
            yield Hit("cut widths apart", f"{number} {'cm' if unit.lower() == 'cm' else 'in'}", "likely")


YEARLY = re.compile(
    r"(?:per|each|every|in any|in a|within a|in one|in 1|any|over a|in any 1|any 1|during a|one|a|this) (?:single )?(?:calendar |given |one )?year\b|per annum|\bannual|"
    r"\b(?:12|twelve)[- ](?:consecutive |successive )?months?\b|\b365[- ]days?\b|\brolling\b|(?:per|each|in a|in any|in the course of a|a|during a|one) (?:\w+ )?season|\byearly\b|\bJan(?:uary)? 1\b[^.;]{0,20}\bDec(?:ember)? 31\b|"
    r"calendar year|\bseasonal",
    re.I,
)
SINGLE = re.compile(
    r"\bat a time\b|\bsingle-(?:treatment|application)\b|\bone-time (?:dose|rate)|\bfor (?:1|one) pass\b|\bon any occasion\b|\bin (?:the )?one operation\b|\bsingle (?:use )?rates?\b|(?:any|each|1) (?:\w+ )?broadcast\b|per (?:single |individual |broadcast )?(?:application|treatment)|for any one application|per use\b|each time|at any time|any (?:one|single|individual|1) (?:application|treatment|spraying)|"
    r"\beach\W*$|(?:single|individual|one[- ]time|any one|each|1) (?:broadcast )?(?:application|treatment)|/\s*application|(?<!number of )\bapplications? (?:maximum|limit|rate)|\bin (?:1|one|a single|any one) (?:pass|go)\b|"
    r"in (?:a single|any one|any 1|one|1) (?:application|treatment)|at (?:one|any one|a single) time|\bmay be applied at once\b",
    re.I,
)
_LIMIT = re.compile(
    r"not (?:to )?exceed|\bgreater than\b|\bin no case\b|\bor less\b|\bin excess of\b|\bnot be over\b|\bno (?:1|one|single)\b[^.;]*\bexceed|\bviolation to\b|\bnot over\b|\bno over\b|no more than|not more than|\bat most\b|\bup to\b|\bmost per\b|\b(?:greatest|largest|highest) (?:\w+ )?(?:rate|amount|dose)|not (?:apply|use|go) (?:more than|above|over|greater)|do not (?:apply|use|go|make)[^.;]{0,40}?(?:more than|above|over|greater than|in excess of)|"
    r"\bmaximum\b|\bmax\.?(?=\W)|\b(?:stay|remain|keep|be|kept|held) (?:at or )?(?:below|under|within)\b|\bceiling\b|\bcap(?:ped)?\b|\b(?:largest|greatest|highest|most)\b|\bin total\b|at or below|\blimit|not be (?:greater|more) than|\bcannot exceed|must not exceed|may not exceed|up to a total|exceeding|\btotal of all\b|\brestricted to\b|\bdeliver (?:over|more)|\bmore than\b|\bmay receive\b|\bno single\b|\bat or under\b|\bunder\b|\babove\b|\btotals?\b",
    re.I,
)
_AREA = re.compile(r"\bacres?\b|\bper A\b|\bkg/ha\b|\bhectare", re.I)


def _which(text: str) -> str:
    """Which maximum a text speaks of; "" where of neither or of both."""
    single, yearly = SINGLE.search(text), YEARLY.search(text)
    return "" if bool(single) == bool(yearly) else "most per application" if single else "most per year"


_PER_ACRE_YEAR = re.compile(r"\bper acre per (?:year|application|treatment)\b", re.I)


def maxima(s: Said) -> Hits:
    """Most on an acre, in one application and in a year: weights of the acid; of other weights never sure."""
    text = s.text
    if not _AREA.search(text) or re.search(r"do not use less|at least|no less than|minimum (?:use )?rate", text, re.I):
        return
    if not (_LIMIT.search(s.whole) or _PER_ACRE_YEAR.search(text)) or s.part in ("warranty", "first aid", "letter"):
        return
    rates = [m for m in RATE.finditer(text) if m["unit"].lower() in ("lb", "kg", "g")]
    named = _which(text) or _which(s.whole)
    for n, m in enumerate(rates):
        tail = text[m.end() : rates[n + 1].start() if n + 1 < len(rates) else len(text)]
        own = _which(tail) or named
        if not own:
            continue
        near = f"{text[max(0, m.start() - 30) : m.start()]} {tail[:70]}"
        acid, salt = re.search(r"\bae\b|\bacid\b", near, re.I), re.search(r"\bai\b", near, re.I)
        most: Sure = "sure" if acid and not salt else "unsure"
        if len({r["n"] for r in rates}) > 1 and not (_which(tail) and len(rates) == 2):
            most = "unsure"
        yield Hit(own, f"{m['n']} {m['unit'].lower()}/{'acre' if m['unit'].lower() == 'lb' else 'ha'}", most)
    volumes = [] if rates else list(RATE.finditer(text))
    for n, m in enumerate(volumes):
        # A volume of product: what of it is acid, the strength on the front tells.
        own = _which(text[m.end() : volumes[n + 1].start() if n + 1 < len(volumes) else len(text)]) or named
        if own and (n == 0 or len(volumes) == 2):
            yield Hit(own, f"{m['n']} {m['unit'].lower()}/acre", "unsure")
    yield from _year_means(text)


def _year_means(text: str) -> Hits:
    """What a label counts as a year, where it says so beside a limit."""
    if re.search(r"\bpartner|\bits own label", text, re.I):
        return
    if _TWELVE.search(text) or re.search(r"\b12[- ]months?\b", text, re.I):
        yield Hit("year means", "12 months")
    elif _CALENDAR.search(text):
        yield Hit("year means", "calendar year")
    elif (YEARLY.search(text) or re.search(r"\byears?\b", text, re.I)) and re.search(r"season", text, re.I):
        yield Hit("year means", "season")


_TWELVE = re.compile(
    r"\b(?:12|twelve)[- ](?:consecutive |successive |straight )?months?\b|\b(?:per|in|within|any|over|each|a) 365[- ](?:consecutive )?days?\b|\b52 weeks\b|"
    r"\byear\b[^.;]{0,40}\b(?:from|after|following|since|with) (?:the )?(?:date of )?(?:the )?(?:first|last|previous|earliest) (?:application|treatment)|"
    r"\brolling year\b|\bany (?:period of )?one year\b|\bone full year\b",
    re.I,
)
_CALENDAR = re.compile(
    r"\bcalendar[- ]years?\b|\bover on Jan(?:uary)? 1\b|\bJan(?:uary|\.)? 1\b[^.;]{0,30}\bDec(?:ember|\.)? 31\b|\byear\b[^.;]{0,40}\bJan(?:uary|\.)?(?: 1)?\b",
    re.I,
)


_TIMES = {
    "once": "1",
    "twice": "2",
    "three times": "3",
    "one": "1",
    "two": "2",
    "three": "3",
    "four": "4",
    "five": "5",
    "single": "1",
}
_COUNT = re.compile(
    r"(?:no more than|not more than|more than|not exceed|not to exceed|maximum of|limit\w*(?: \w+){0,4} to|limit is|at most|total of|most is|(?:make|apply|use)[^.;]{0,30}? more than|up to|only)\s+"
    r"(?:a total of )?(\d+|one|two|single)\s+(?:\w+\s+){0,2}?(?:applications?|treatments?)\b",
    re.I,
)
_SO_MANY_A_YEAR = re.compile(
    r"\b(\d+|one|two|three|four|single)\s+(?:\w+ ){0,2}?(?:applications?|treatments?|sprays?|sprayings|broadcasts?|times?)\b[^.;\d]{0,30}\b(?:per|a|each|in any|in a|in one|every|during|within|any)\b[^.;\d]{0,15}(?:year|season|\b12\b)|"
    r"\b(?:applications?|treatments?)\b[^.;\d]{0,30}\b(?:capped|limited|held|restricted) (?:at|to)\s+(\d+)|\bmore than (\d+) (?:in|per|each|during) (?:a|any|one|the)? ?(?:\w+ )?(?:year|season)|"
    r"\b(?:applications?|treatments?|sprays?)\b[^.;\d]{0,12}(?:per|a|each) (?:year|season)\W{1,3}(\d+)\b(?! (?:lb|days?|qt|gal|pt|fl))|\b(single) yearly (?:application|treatment)",
    re.I,
)
_ONCE = re.compile(
    r"(?:no more than|not more than|more than|often than|frequently than|only|exceed|at most|limit\w* to)\s+(once|twice|three times|1 time|2 times)\b",
    re.I,
)
_NUMBER_OF = re.compile(
    r"(?:(?:maximum|max\.?|greatest) )?(?:number|no\.?) of (?:\w+ )?(?:applications?|treatments?)(?:,? (?:per|in any|in) (?:12|365)[- ](?:months?|days?))?[^.\d;]{0,40}(\d+)(?!\d|\.\d|[- ](?-i:months?|days?|weeks?|lb|qt|gal|pt))|"
    r"(?:applications?|treatments?) (?:per|a|each) (?:year|season)[^.\d;]{0,20}?(\d+)\s*$|"
    r"\blimit (?:the )?(?:applications?|treatments?) to (\d+)\b|\b(?:often|frequently) than (\d+|two|three|four|five) times?\b|"
    r"\bmore than (\d+) times?\b|\b(\d+) (?:applications?|treatments?) (?:a|per|each|in any) (?:calendar )?(?:year|season)\b",
    re.I,
)
_BETWEEN_THEM = re.compile(
    r"between (?:\w+ ){0,2}(?:applications?|treatments?)|intervals? of|\bdays between\b|\bre-?\s?treat|\bre-?\s?appl|retreatment interval|\bRTI\b|application interval|\bapart\b|"
    r"sequential applications?|\btreat(?:ing|ed)? again\b|\bappl(?:y|ied|ying) again\b|another (?:application|treatment)|next (?:application|treatment)|more (?:often|frequently) than|\bsecond time\b|repeat (?:applications?|treatments?)|second application|second treatment|successive|follow-?up|\brepeat(?:ed|ing)?\b|\banew\b|apply again|treat (?:again|the same)|following (?:the )?(?:first|initial|previous) (?:application|treatment)",
    re.I,
)
_WAIT = re.compile(
    rf"(?:at least|minimum(?: of| interval of)?|shorter than|parted by|(?:no|not) (?:fewer|less) than|no sooner than|not sooner than|no earlier than|not before|every|intervals? (?:is|of)|between applications?,?(?: minimum)?\W{{0,3}}|\bwait\b|\ballow\b|interval[^.\d;]{{0,50}}?|within|less than|sooner than|until|\bmust be|separated by|for|after)\s*"
    rf"(?:of |is |: ?|a |an |at least )*({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?[\s-]*(days?|weeks?|months?)",
    re.I,
)


_DAY_INTERVAL = re.compile(
    rf"\b({NUMBER})[\s-]+(day|week|month)s?[\s-]+(?:re-?treatment |re-?application |application |minimum )?interval|\b(?:RTI|interval)\b(?: between treatments| between applications)?(?: \(days\))?[^.;\d]{{0,25}}({NUMBER})(?: (days?|weeks?|months?))?$",
    re.I,
)


_DAYS_APART = re.compile(
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?) (?:or (?:more|longer) )?apart\b|"
    rf"\b(?:over|again|anew|re-?\w+)\b[^.;\d]*({NUMBER})[\s-]+(days?|weeks?|months?) have (?:gone by|passed|elapsed)|"
    rf"\b(?:another|second|repeat|next) (?:application|treatment)\b[^.;\d]*\b(?:until|till)\b[^.;\d]*({NUMBER})[\s-]+(days?|weeks?|months?) have (?:gone by|passed|elapsed)|"
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?)[^.;]{{0,20}}\b(?:must|shall|have to|need to|should) (?:(?:pass|elapse|go by|lie|separate|have passed)[^.;]*(?:appl|treat|again)|(?:lie|pass|elapse|come|be) between)|"
    rf"\b(?:often|frequently) than (?:once )?(?:every|each|in|per) ({NUMBER})[\s-]+(days?|weeks?|months?)",
    re.I,
)
_DAYS_SOMEHOW = re.compile(
    rf"\bcloser (?:together )?than ({NUMBER})[\s-]+(days?|weeks?|months?)|\b(?:earlier|sooner) than ({NUMBER})[\s-]+(days?|weeks?|months?) (?:from|after|following) (?:the )?(?:first|initial|previous|last)|"
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?|years?) (?:or more |or later )?after (?:the )?(?:initial|first|previous|last)\b(?: (?:treatment|application))?|"
    rf"\b(?:allow|leav(?:e|ing)|let|wait(?:ing)?)\b[^.;\d]{{0,30}}?({NUMBER})[\s-]+(?:full )?(?:or more )?(days?|weeks?|months?|years?)\b[^.;]{{0,40}}\b(?:between|re-?appl|re-?treat|again|second time|respray)",
    re.I,
)


_ONE_MORE = re.compile(
    r"\b(?:an?|no|any|the) (?<!after the )(second|third|fourth) (?:treatment|application)\b[^.;]*\b(?:same|any|one|1) (?:calendar )?(?:year|season)\b",
    re.I,
)


def repeats(s: Said) -> Hits:
    """How often, and how long between two applications."""
    if s.part in ("warranty", "first aid", "storage", "letter"):
        return
    if not re.search(r"\d|\b(?:years?|annual|yearly|seasons?|once|twice|single|second|third|months?)\b", s.text, re.I):
        return
    told = re.search(
        r"\b(?:years?|annual\w*|yearly)\b[^.;]{0,40}\b(?:is|are|means?|meant|begins?|starts?|runs?|refers?|stands?|count\w*|hold|read)\b|^\W*(?:per )?year\b[^.;]{0,12}[:-]|\bby year\b",
        s.text,
        re.I,
    )
    limited = _LIMIT.search(s.text) or re.search(r"\bsum\b|\btotals?\b|\bbelow\b|\bcounted\b", s.text, re.I)
    limited = limited and (RATE.search(s.text) or re.search(r"\bsum\b|\btotals?\b|\bcounted\b", s.text, re.I))
    counts = (
        _COUNT.search(s.text) or _NUMBER_OF.search(s.text) or _ONCE.search(s.text) or _SO_MANY_A_YEAR.search(s.text)
    )
    if (
        told
        or counts
        or re.search(r"\blimits?\b[^.;]*\b(?:appl(?:y|ies)|refer) to a\b", s.text, re.I)
        or (limited and not re.search(r"\bplant(?:ed|ing)?\b|rotat|\bgraz|\bharvest|\bstor", s.text, re.I))
    ):
        yield from _year_means(s.text)
    counted = _COUNT.search(s.text) or _NUMBER_OF.search(s.text)
    if counted:
        number = next(group for group in counted.groups() if group)
        yield Hit("most applications", _TIMES.get(number.lower(), number))
    elif (m := _ONCE.search(s.text)) and re.search(r"appl|treat|year|season", s.text, re.I):
        yield Hit(
            "most applications",
            {"once": "1", "twice": "2", "three times": "3", "1 time": "1", "2 times": "2"}[m[1].lower()],
        )
    elif (m := _SO_MANY_A_YEAR.search(s.text)) and not re.search(
        r"\bat least\b|\bminimum of\b|\bmay be (?:needed|required)", s.text, re.I
    ):
        number = next(group for group in m.groups() if group)
        yield Hit("most applications", _TIMES.get(number.lower(), number), "likely")
    if (m := _ONE_MORE.search(s.text)) and re.search(FORBIDS, s.text, re.I):
        yield Hit("most applications", {"second": "1", "third": "2", "fourth": "3"}[m[1].lower()], "likely")
    if re.search(
        r"\bhoses?\b|\binspect|\bcalibrat|\bnozzles?\b|\bhay\b|\bgraz|\bforage\b|\bharvest|\bslaughter|\bplanting\b",
        s.text,
        re.I,
    ):
        return
    if m := _DAYS_APART.search(s.text):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit("shortest interval", f"{number} {unit}")
    elif _BETWEEN_THEM.search(s.text) and not re.search(r"\bcuts?\b|\binches\b|\bgraz|\bhay\b", s.text, re.I):
        wait, named = _WAIT.search(s.text), _DAY_INTERVAL.search(s.text)
        if wait:
            yield Hit("shortest interval", f"{wait[1]} {wait[3]}", "unsure" if wait[2] else "sure")
        elif named:
            yield Hit("shortest interval", f"{named[1] or named[3]} {named[2] or (named[4] or 'days').rstrip('s')}s")
        else:
            yield from _interval_somehow(s.text)
    else:
        yield from _interval_somehow(s.text)


def _interval_somehow(text: str) -> Hits:
    """An interval in words that speak of waiting and of doing it again, in whatever order."""
    if (m := _DAYS_SOMEHOW.search(text)) and not re.search(r"\bcuts?\b|\bgraz|\bhay\b|\brain|\bmow", text, re.I):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit("shortest interval", f"{number} {unit}", "likely")
