"""Rain, wind, heat, air that lies still, seasons, and the time from cut to treatment."""

import re
from typing import Literal

from stemward.label.reader.phrases import FORBIDS, NUMBER, SPEED, TEMPERATURE, TIME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_RAIN = re.compile(
    r"\brain(?:s|fall|fast\w*|ed|ing)?\b|\bkeep\b[^.;]{0,40}\bdry\b|\brain-?free\b|\bprecipitation\b|\bwash(?:ed)? off\b|\birrigation\b|\bshowers?\b",
    re.I,
)
_NO_RAIN_TIME = re.compile(r"months?|weeks?|inch|years?", re.I)


def rain(s: Said) -> Hits:
    """Hours without rain after the work; where the words only tell what rain does, never sure."""
    if not _RAIN.search(s.text) or re.search(r"\bstor|\bplant(?:ing)\b|soil residual|ground ?water", s.text, re.I):
        return
    # "Allow 4 rain-free hours."
    text = re.sub(r"(\d)[ -]rain-?free[ -](?=hours?|hrs?|minutes?)", r"\1 ", s.text, flags=re.I)
    times = [m for m in TIME.finditer(text) if not _NO_RAIN_TIME.match(m[2])]
    if not times or re.search(r"\bcut(?:ting)?\b|\bgraz", s.text, re.I):
        return
    ruled = re.search(FORBIDS, s.text, re.I) or re.search(r"\bmust\b|\ballow\b|\brequires?\b|\bwait\b", s.text, re.I)
    most: Sure = "unsure" if len({m[1] for m in times}) > 1 else "sure" if ruled else "likely"
    yield Hit("hours without rain", f"{times[0][1]} {times[0][2].lower()}", most)


Bound = Literal["", "over", "under"]
_OVER = r"\batleast\b|above|exceeds?|exceeding|over|greater|more than|higher|warmer|hotter|in excess of|faster|stronger|heavier|beyond|past|\bclimbs?\b|\btops?\b"
_UNDER = r"\batmost\b|below|less than|under|lower|colder|cooler|not (?:over|above|exceed|more than|greater)\w*|(?:do|does) not exceed|no (?:more|greater|higher) than|or less|at most|up to|calmer|lighter|weaker|slower|\bfalls? to\b|\bdrops? (?:to|below)\b"


_AT_LEAST = re.compile(
    r"\b(?:lowest|least|smallest)\b|\b(?:no|not) (?:less|lower|lighter|weaker|slower|colder|cooler|under|below)(?: than)?\b|\bat least\b|\bminimum\b|\b(?:has |have )?(?:warmed|risen|reached) (?:up )?(?:to|above)?|\b(?:reaches|rises to|warms to)\b",
    re.I,
)
_AT_MOST = re.compile(
    r"\b(?:no|not) (?:more|greater|higher|over|above|warmer|hotter)(?: than)?\b|\bat most\b|\b(?:maximum|greatest|highest|largest)\b|"
    r"\blimit is\b|\b(?:do|does|must|may) not exceed\b",
    re.I,
)


def _bound(text: str, number: re.Match[str]) -> Bound:
    """Whether a figure is spoken of from above or from below, by the words beside it."""
    before, after = text[max(0, number.start() - 55) : number.start()], text[number.end() : number.end() + 22]
    before = _AT_LEAST.sub(" atleast ", _AT_MOST.sub(" atmost ", before))
    unders, overs = list(re.finditer(_UNDER, before, re.I)), list(re.finditer(_OVER, before, re.I))
    if re.match(r"\s*(?:\([^)]*\)\s*)?(?:or|and) (?:less|lower|below|under|colder|cooler|slower)", after, re.I):
        return "under"
    if re.match(r"\s*(?:\([^)]*\)\s*)?(?:or|and) (?:more|greater|higher|above|over|warmer|hotter|up)", after, re.I):
        return "over"
    if re.search(r"\bexceeded\b|\bsurpassed\b|\bpassed\b", text[number.end() : number.end() + 40], re.I):
        return "over"
    last_under, last_over = unders[-1].end() if unders else -1, overs[-1].end() if overs else -1
    if last_under == last_over == -1:
        return ""
    # "Does not exceed" holds "exceed": the longer words win where both end at one place.
    return "under" if last_under >= last_over else "over"


_RULED_BEHIND = re.compile(
    r"[^.;]{0,40}?\b(?:is|are) (?:a violation|not (?:permitted|allowed|to be)|prohibited|forbidden|unlawful)|[^.;]{0,15}?\b(?:stops?|bars?|ends?|halts?)\b[^.;]{0,20}\b(?:work|appl|spray|treat|any|all)|[^.;]{0,30}\b(?:must|to) (?:wait|stop)\b|[^.;]{0,30}\bstay out\b",
    re.I,
)


def _limit(text: str, number: re.Match[str]) -> Literal["", "most", "least"]:
    """What a figure limits: forbidden above it or allowed below it makes a most, the other way round a least."""
    bound = _bound(text, number)
    before = re.split(r";|(?<!\d)\.(?!\d)", text[: number.start()])[-1]
    clause = re.split(r"\bunless\b", before)[-1]
    behind = text[number.end() :]
    if re.match(r"\s*(?:if|when|where|should|at|above|over|under|below|heat|winds?)\b", before, re.I) or re.match(
        r"\s*(?:\([^)]*\))?\s*[,:]?\s*(?:no\b|do not\b|never\b|stop\b|wait\b)", behind, re.I
    ):
        # "If wind is above 15 mph, do not apply": the rule stands behind the figure.
        clause = f"{clause} {re.split(r';', behind)[0]}"
    if _RULED_BEHIND.match(behind):
        clause = f"{clause} do not"
    ends = r"\bstop\b|\bcease\b|\bdelay\b|\bpostpone\b|\bhold off\b|\bsuspend\b|\bdiscontinue\b|\bquit\b|\bput off\b|\brefrain\b|\bhalt\b|\bmust end\b"
    forbids = re.search(
        rf"{FORBIDS}|{ends}|\bwait\b|\bnot at\b|\bno (?:applications?|treatments?|spraying)\b", clause, re.I
    )
    negated = re.search(
        r"do(?:es)? not exceed|not (?:over|above|more|greater)|no (?:more|greater|higher)|must not exceed|not exceed",
        clause,
        re.I,
    )
    if re.search(r"\buntil\b[^.;]*$", before, re.I):
        # "Wait until it is at least 60 F": the figure is where the rule ends.
        forbids = None
    if negated and bound == "under" and not re.search(r"do not (?:apply|spray|use|treat|make)", clause, re.I):
        forbids = None
    if not bound:
        # "Temperature limit for application: 88 F".
        limited = re.search(r"\b(?:limit|ceiling)\b[^.;]{0,40}$", before, re.I) or re.match(
            r"[^.;]{0,12}\bis the (?:upper|greatest|highest|top)?[^.;]{0,12}\blimit", behind, re.I
        )
        if re.match(r"[^.;]{0,12}\bis the (?:floor|least|lowest)", behind, re.I):
            return "least"
        return "most" if limited or (re.search(ends, clause, re.I) and re.search(r"\bat\s*$", before, re.I)) else ""
    if forbids:
        return "most" if bound == "over" else "least"
    return "most" if bound == "under" else "least"


_WORK = re.compile(r"\bappl|\bspray|\btreat|\bus(?:e|ed|ing)\b|\bherbicide|\bproduct\b|\bdroplet|\bdrift|\bmist", re.I)
MOST_HEADED = 45
"""A longer line on wind that does not speak of the work is on something else: engineering guess."""


def _ruled(s: Said) -> str:
    """A sentence led by the prohibition that opened its list, if one did."""
    return f"Do not work {s.text}" if re.search(rf"(?:{FORBIDS})[^.;]*:?$", s.under, re.I) else s.text


def wind(s: Said) -> Hits:
    """Strongest and weakest wind to work in."""
    text = _ruled(s)
    if not re.search(
        r"\bwinds?\b|\bwind-?speeds?\b|\bgusts?\b|\bbreeze|\bcalm\b|\bair (?:moves|is moving)", text, re.I
    ):
        return
    apart = re.search(r"droplet|nozzle|boom height|swath", text, re.I)
    between = re.search(rf"({NUMBER})\s*(?:mph)?\s*(?:and|to|-)\s*({NUMBER})\s*(mph|km/h)", text, re.I)
    speeds = list(SPEED.finditer(text))
    if between:
        outside = re.search(FORBIDS, text[: between.start()], re.I) and not re.search(
            r"\bunless\b|\boutside\b", text, re.I
        )
        told = re.search(r"\b(?:apply|spray|treat|use[ds]?|appl\w+|must|only)\b", text, re.I)
        if not outside and not (apart and not re.search(r"\bonly\b", text, re.I)):
            most: Sure = "unsure" if len(speeds) > 2 else "sure" if told else "likely"
            yield Hit("weakest wind", f"{between[1]} {between[3].lower()}", most)
            yield Hit("strongest wind", f"{between[2]} {between[3].lower()}", most)
        return
    for m in speeds:
        limits = _limit(text, m)
        ruled = re.search(
            rf"{FORBIDS}|\bmust\b|\bonly\b|\bmaximum\b|\bstop\b|\bcease\b|\blimit|exceed|\bdelay|\bpostpone|\bsuspend|\bunless\b",
            text,
            re.I,
        )
        if re.search(r"\bfell(?:ing)?\b|\bclimb|\bburn|\bsaw\b|\bchainsaw|\bladder", text, re.I) and not re.search(
            r"\bappl|\bspray", text, re.I
        ):
            continue
        if len(text) > MOST_HEADED and not _WORK.search(text):
            continue
        if not ruled and not re.search(r"\bappl|\bspray|\btreat|\buse\b", text, re.I):
            continue
        how: Sure = "unsure" if apart or len(speeds) > 2 else "sure" if ruled else "likely"
        if limits:
            yield Hit("strongest wind" if limits == "most" else "weakest wind", f"{m[1]} {m[2].lower()}", how)


def heat(s: Said) -> Hits:
    """Warmest and coldest air to work in, and air that lies still over colder ground."""
    text = _ruled(s)
    if re.search(r"inversions?\b", s.text, re.I) and re.search(
        rf"{FORBIDS}|\bonly when no\b|\bno inversions?\b|\babsence\b|\bwithout an?\b|\bwait\b|\bstop\b|\bfree of\b|\bkeep off\b|\bbars?\b|\bdelay\b|\bpostpone\b",
        s.whole,
        re.I,
    ):
        yield Hit(
            "no inversion",
            "yes",
            "likely" if re.search(r"\bmay\b|\bpotential\b|\bhigh(?:er)? risk", s.text, re.I) else "sure",
        )
    if re.search(
        r"\btank\b|\bwater (?:in|temperature)|\bstor(?:e|age|ed|ing)\b|\bflash\b|\bboil|\bfreez(?:e|es|ing point)\b|\bwarm\b.*\bstir|shipp|wash",
        s.text,
        re.I,
    ):
        return
    found = list(TEMPERATURE.finditer(text))
    if m := re.search(
        rf"(?:between|range|window|temperatures?|air|from)\b[^.;\d]{{0,25}}({NUMBER})\s*[FC]?\s*(?:and|to|-)\s*({NUMBER})\s*([FC])\b",
        s.text,
        re.I,
    ):
        yield Hit("least heat", f"{m[1]} {m[3]}", "likely")
        yield Hit("greatest heat", f"{m[2]} {m[3]}", "likely")
        return
    for m in found:
        limits = _limit(text, m)
        if limits and (
            s.has(
                r"temperature|\bair\b|\bheat\b|\bhot|\bcold|\bweather|\bdegrees|volatil|vapor|appl|treat|\bdays\b|\buse\b|\bspray"
            )
        ):
            kind = "greatest heat" if limits == "most" else "least heat"
            if kind == "least heat" and re.search(r"volatil|vapor|injur|damag|likely|more active", s.text, re.I):
                continue
            yield Hit(
                kind,
                f"{m[1]} {m[2].upper()}",
                "unsure" if len({x[2] for x in found}) == 1 and len(found) > 1 else "sure",
            )


_WITHIN = re.compile(
    rf"(?:within|beyond|later than|\\blag\\b[^.;\\d]{{0,25}}|no later than|not later than|no (?:more|longer) than|not more than|not longer than|longer than|more than|in less than|less than|before|under|over|exceed(?:s|ing)?|delay of|\bin|at most|maximum(?: of)?|limit(?: is| of)?|up to)\s*(?:about |approximately |the first )?"
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?[\s-]*(minutes?|mins?|hours?|hrs?|h|seconds?)",
    re.I,
)
_AFTER = re.compile(
    rf"({NUMBER})[\s-]*(minutes?|mins?|hours?|h)\s*(?:or less )?(?:of|after|following) (?:the )?(?:cut|fell)", re.I
)


_TIME = rf"({NUMBER})[\s-]*(minutes?|mins?|hours?|hrs?|seconds?)\b"
_WAITED = re.compile(
    rf"\b(?:older than|inside|by no more than|delay|wait(?:s|ed)?|time from (?:the )?cut(?:ting)? to (?:the )?treat\w*|from cut to (?:treatment|spray|herbicide)|after|lag)\b[^.;\d]{{0,30}}?{_TIME}|"
    rf"{_TIME}[^.;]{{0,25}}\b(?:after (?:the )?(?:cut|felling|cutting)|between cut|or less)",
    re.I,
)


def cut_to_treat(s: Said) -> Hits:
    """Longest time from the cut to the herbicide."""
    near = re.search(
        r"\bcut(?:ting|s)?\b|\bfell(?:ing|ed)\b|\bstumps?\b|\bfresh\b|\bwounds?\b|\bfrills?\b", s.text, re.I
    )
    if not (near or s.part in ("cut stump", "hack and squirt")) or _RAIN.search(s.text):
        return
    if re.search(
        r"\bnot necessary\b|\bneed not\b|\bburn|\bhay\b|\bmow|\bgraz|\bdry\b|\bdried\b|re-?ent|\bstor|\bmix|\brinse|\beyes?\b|\bskin\b|\binterval\b|\bentry\b|\bagitat|\bshake|\brepeat|\breappl",
        s.text,
        re.I,
    ):
        return
    m = _WITHIN.search(s.text)
    if not m and s.part in ("cut stump", "hack and squirt"):
        loose = _WAITED.search(s.text)
        if loose and not re.search(r"\bagain\b|\bsecond\b|\btwice\b", s.text[: loose.start()], re.I):
            number, unit = [group for group in loose.groups() if group][:2]
            yield Hit("longest from cut to treatment", f"{number} {unit.lower()}", "likely")
            return
    if m:
        yield Hit("longest from cut to treatment", f"{m[1]} {m[3].lower()}", "unsure" if m[2] else "sure")
    elif m := _AFTER.search(s.text):
        yield Hit("longest from cut to treatment", f"{m[1]} {m[2].lower()}", "likely")


_SAP = re.compile(
    r"(?:do not|never|must not|may not|not (?:be )?(?:applied|used|made|recommended|allowed|permitted)|except|avoid|other than)[^.;]*?((?:(?:periods? of )?(?:heavy|strong|active|spring|peak|maximum|vigorous|early) )*(?:spring )?sap[- ]?(?:flow|rise|run)|sap (?:is )?(?:strongly |actively |heavily )?(?:flowing|rising|running|moving|up))",
    re.I,
)
_MONTH = r"(?:Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sept?(?:ember)?|Oct(?:ober)?|Nov(?:ember)?|Dec(?:ember)?)\.?(?: \d{1,2})?"
_BARRED = rf"(?:{FORBIDS}|\bnot (?:effective|recommended|satisfactory)\b|\bexcept\b|\bpoor (?:control|results)\b|\bineffective\b)"
_TIME_OF_YEAR = re.compile(
    rf"{_BARRED}[^.;:]*?\b(?:during|in|when|while|within|through(?:out)?)\s+(?:the )?(?:(?:plants?|trees?|brush|stems?|they|leaves) (?:is|are) )?("
    r"(?:(?:heavy|strong|active|early|late|mid|full) )*(?:dormant season|dormancy|dormant|spring|summer|autumn|winter|fall(?! off)|growing season|"
    r"bud ?-?(?:break|swell)|leaf[- ]?(?:out|drop|fall|expansion)|fall colou?r|full leaf|leafing out|flowering|fruiting))",
    re.I,
)
_GROUND = re.compile(
    r"snow (?:or water )?(?:covers?|prevents?)[^.;,]*?(?:ground(?: line)?|line)|\b(?:frozen|snow-?covered)(?: or (?:frozen|snow-?covered))? (?:ground|soil)|"
    r"\b(?:ground|soil) is (?:frozen|snow-?covered|covered with snow)",
    re.I,
)
_DATES = re.compile(rf"(?:(?:from|between|during|after) )?({_MONTH})\s*(?:to|through|and|until|-)\s*({_MONTH})")


_PHRASE = re.compile(
    rf"\b(?:from|after|before) {_MONTH}(?: on)?\b|(?<=month but ){_MONTH}|\b(?:in|full) bloom\b|\bsnow or water stands?[^.;,]*|"
    r"(?:(?:heavy|strong|active|vigorous|peak|early|late|spring) )*sap[- ]?(?:flow|rise|run)|\bsap (?:is |begins |starts )?(?:strongly |actively |heavily |to )?(?:flow\w*|ris\w*|run\w*|mov\w*|up)|"
    r"(?:(?:before|after|until|once|during|past) (?:the )?)?(?:full |first )?(?:leaf[- ]?(?:out|drop|fall|expansion)|bud ?-?(?:break|swell)|full leaf|leafing out|flowering|fruiting)|"
    r"\bdrought(?: stress)?\b|\b(?:rainy|wet|dry|nesting|hunting|fire|breeding) season\b|\b(?:winter|summer|spring|cold|hot(?:test)?) months\b|\b(?:leaves|foliage) (?:have|has) (?:dropped|fallen|turned)\b|\bleafless\b|\bsenescen\w+|\bbuds? (?:swell|open|break)\w*|"
    r"\b(?:hard|first|killing) frost\b|\bfall colou?r\b|\bdorman(?:t season|cy|t)\b|\bgrowing season\b|(?:early|late|mid)?[- ]?\b(?:spring|summer|autumn|winter)\b|"
    r"\b(?:in|during|this|late|early|the) fall\b(?! of)|\b(?:frozen|snow-?covered|covered (?:by|with) snow|under snow)\b",
    re.I,
)
_CLOSED_TIME = re.compile(
    rf"{_BARRED}|\bstop\b|\bclosed season\b|\bnot to be\b|\bnot for (?:use|application)\b|\bdo not\b", re.I
)
_NO_SEASON = re.compile(
    r"\bconcerned\b|\bexpect\b|\bmay leaf\b|\bgraz|\bhay\b|\brotat|\bharvest|\bseed|\bper (?:growing )?season|\b(?:one|a|each|any) (?:growing )?season\b|\bacre|\bstor(?:e|age)|\bnext (?:spring|season|growing)|\b(?:more|less) than\b|\bspring(?:s)? (?:water|or well)|\bwells?\b|\bany season\b|"
    r"\bat any time\b(?![^.;]*\bexcept\b)",
    re.I,
)


def season(s: Said) -> Hits:
    """Times of the year in which it may not be used, as their words stand there."""
    best = re.search(r"for best|should|optim", s.text, re.I)
    if m := _SAP.search(s.text):
        words = re.sub(r"^periods? of ", "", m[1].lower())
        yield Hit("season forbidden", words, "likely" if best else "sure")
        return
    if (m := _DATES.search(s.text)) and _CLOSED_TIME.search(s.text):
        yield Hit("season forbidden", f"{m[1]} to {m[2]}", "sure" if re.search(FORBIDS, s.text, re.I) else "likely")
        return
    if m := _TIME_OF_YEAR.search(s.text):
        yield Hit("season forbidden", re.sub(r"\s+", " ", m[1].lower()), "likely")
        return
    ground = list(_GROUND.finditer(s.text)) if re.search(rf"{FORBIDS}|\bexcept when\b", s.text, re.I) else []
    for m in ground:
        yield Hit("season forbidden", re.sub(r"\s+", " ", m[0].lower()))
    # "At any time, winter too, except when sap rises": what stands before the exception is allowed.
    opened = f"{s.under} " if re.search(rf"(?:{FORBIDS})[^.;]*:?$", s.under, re.I) else ""
    closed = opened + re.sub(r"^[^.;]*\bany (?:time|season)\b[^.;]*\bexcept\b", "except", s.text, flags=re.I)
    if not ground and _CLOSED_TIME.search(closed) and not _NO_SEASON.search(closed) and (m := _PHRASE.search(closed)):
        yield Hit("season forbidden", re.sub(r"\s+", " ", m[0].lower().strip(" -")), "likely")
