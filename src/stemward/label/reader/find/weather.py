"""Rain, wind, heat, air that lies still, seasons, and the time from cut to treatment."""

import re
from typing import Literal

from stemward.label.reader.phrases import FORBIDS, NUMBER, SPEED, TEMPERATURE, TIME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_RAIN = re.compile(
    r"\brain(?:s|fall|fast|ed|ing)?\b|\brain-?free\b|\bprecipitation\b|\bwash(?:ed)? off\b|\birrigation\b|\bshowers?\b",
    re.I,
)
_NO_RAIN_TIME = re.compile(r"months?|weeks?|inch|years?", re.I)


def rain(s: Said) -> Hits:
    """Hours without rain after the work; where the words only tell what rain does, never sure."""
    if not _RAIN.search(s.text) or re.search(r"\bstor|\bplant(?:ing)\b|soil residual|ground ?water", s.text, re.I):
        return
    times = [m for m in TIME.finditer(s.text) if not _NO_RAIN_TIME.match(m[2])]
    if not times or re.search(r"\bcut(?:ting)?\b|\bgraz", s.text, re.I):
        return
    ruled = re.search(FORBIDS, s.text, re.I) or re.search(r"\bmust\b|\ballow\b|\brequires?\b|\bwait\b", s.text, re.I)
    most: Sure = "unsure" if len({m[1] for m in times}) > 1 else "sure" if ruled else "likely"
    yield Hit("hours without rain", f"{times[0][1]} {times[0][2].lower()}", most)


Bound = Literal["", "over", "under"]
_OVER = r"\batleast\b|above|exceeds?|exceeding|over|greater|more than|higher|warmer|hotter|in excess of|faster|stronger|heavier|beyond|past|\bclimbs?\b|\btops?\b"
_UNDER = r"\batmost\b|below|less than|under|lower|colder|cooler|not (?:over|above|exceed|more than|greater)\w*|(?:do|does) not exceed|no (?:more|greater|higher) than|or less|at most|up to|calmer|lighter|weaker|slower|\bfalls? to\b|\bdrops? (?:to|below)\b"


_AT_LEAST = re.compile(
    r"\b(?:no|not) (?:less|lower|lighter|weaker|slower|colder|cooler|under|below)(?: than)?\b|\bat least\b|\bminimum\b|\b(?:has |have )?(?:warmed|risen|reached) (?:up )?(?:to|above)?|\b(?:reaches|rises to|warms to)\b",
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
    if re.match(r"\s*(?:\([^)]*\)\s*)?or (?:less|lower|below|under|colder|cooler)", after, re.I):
        return "under"
    if re.match(r"\s*(?:\([^)]*\)\s*)?or (?:more|greater|higher|above|over|warmer|hotter)", after, re.I):
        return "over"
    last_under, last_over = unders[-1].end() if unders else -1, overs[-1].end() if overs else -1
    if last_under == last_over == -1:
        return ""
    # "Does not exceed" holds "exceed": the longer words win where both end at one place.
    return "under" if last_under >= last_over else "over"


def _limit(text: str, number: re.Match[str]) -> Literal["", "most", "least"]:
    """What a figure limits: forbidden above it or allowed below it makes a most, the other way round a least."""
    bound = _bound(text, number)
    before = re.split(r";|(?<!\d)\.(?!\d)", text[: number.start()])[-1]
    clause = re.split(r"\bunless\b", before)[-1]
    if re.match(r"\s*(?:if|when|where|should|at)\b", before, re.I):
        # "If wind is above 15 mph, do not apply": the rule stands behind the figure.
        clause = f"{clause} {re.split(r';', text[number.end() :])[0]}"
    forbids = re.search(
        rf"{FORBIDS}|\bstop\b|\bcease\b|\bdelay\b|\bpostpone\b|\bhold off\b|\bsuspend\b|\bdiscontinue\b|\bwait\b",
        clause,
        re.I,
    )
    negated = re.search(
        r"do(?:es)? not exceed|not (?:over|above|more|greater)|no (?:more|greater|higher)|must not exceed|not exceed",
        clause,
        re.I,
    )
    if negated and bound == "under" and not re.search(r"do not (?:apply|spray|use|treat|make)", clause, re.I):
        forbids = None
    if not bound:
        return ""
    if forbids:
        return "most" if bound == "over" else "least"
    return "most" if bound == "under" else "least"


def wind(s: Said) -> Hits:
    """Strongest and weakest wind to work in."""
    if not re.search(r"\bwinds?\b|\bwind-?speeds?\b|\bgusts?\b|\bbreeze", s.text, re.I):
        return
    apart = re.search(r"droplet|nozzle|boom height|swath", s.text, re.I)
    between = re.search(rf"({NUMBER})\s*(?:mph)?\s*(?:and|to|-)\s*({NUMBER})\s*(mph|km/h)", s.text, re.I)
    speeds = list(SPEED.finditer(s.text))
    if between:
        outside = re.search(FORBIDS, s.text[: between.start()], re.I) and not re.search(
            r"\bunless\b|\boutside\b", s.text, re.I
        )
        told = re.search(r"\b(?:apply|spray|treat|use[ds]?|appl\w+|must|only)\b", s.text, re.I)
        if not outside and not (apart and not re.search(r"\bonly\b", s.text, re.I)):
            most: Sure = "unsure" if len(speeds) > 2 else "sure" if told else "likely"
            yield Hit("weakest wind", f"{between[1]} {between[3].lower()}", most)
            yield Hit("strongest wind", f"{between[2]} {between[3].lower()}", most)
        return
    for m in speeds:
        limits = _limit(s.text, m)
        ruled = re.search(
            rf"{FORBIDS}|\bmust\b|\bonly\b|\bmaximum\b|\bstop\b|\bcease\b|\blimit|exceed|\bdelay|\bpostpone|\bsuspend|\bunless\b",
            s.text,
            re.I,
        )
        if re.search(r"\bfell(?:ing)?\b|\bclimb|\bburn|\bsaw\b|\bchainsaw|\bladder", s.text, re.I) and not re.search(
            r"\bappl|\bspray", s.text, re.I
        ):
            continue
        if not ruled and not re.search(r"\bappl|\bspray|\btreat|\buse\b", s.text, re.I):
            continue
        how: Sure = "unsure" if apart or len(speeds) > 2 else "sure" if ruled else "likely"
        if limits:
            yield Hit("strongest wind" if limits == "most" else "weakest wind", f"{m[1]} {m[2].lower()}", how)


def heat(s: Said) -> Hits:
    """Warmest and coldest air to work in, and air that lies still over colder ground."""
    if re.search(r"inversions?\b", s.text, re.I) and re.search(
        rf"{FORBIDS}|\bonly when no\b|\babsence\b|\bwithout an?\b|\bwait\b", s.text, re.I
    ):
        yield Hit(
            "no inversion",
            "yes",
            "likely" if re.search(r"\bmay\b|\bpotential\b|\bhigh(?:er)? risk", s.text, re.I) else "sure",
        )
    if re.search(
        r"\bstor(?:e|age|ed|ing)\b|\bflash\b|\bboil|\bfreez(?:e|es|ing point)\b|\bwarm\b.*\bstir|shipp|wash",
        s.text,
        re.I,
    ):
        return
    found = list(TEMPERATURE.finditer(s.text))
    if m := re.search(rf"between\s*({NUMBER})\s*[FC]?\s*(?:and|to|-)\s*({NUMBER})\s*([FC])\b", s.text):
        yield Hit("least heat", f"{m[1]} {m[3]}", "likely")
        yield Hit("greatest heat", f"{m[2]} {m[3]}", "likely")
        return
    for m in found:
        limits = _limit(s.text, m)
        if limits and (
            s.has(
                r"temperature|\bair\b|\bheat\b|\bhot|\bcold|\bweather|\bdegrees|volatil|vapor|appl|treat|\bdays\b|\buse\b|\bspray"
            )
        ):
            kind = "greatest heat" if limits == "most" else "least heat"
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
_DATES = re.compile(rf"(?:(?:from|between|during|after) )?({_MONTH}) (?:to|through|and|until|-) ({_MONTH})")


def season(s: Said) -> Hits:
    """Times of the year in which it may not be used."""
    if m := _SAP.search(s.text):
        words = re.sub(r"^periods? of ", "", m[1].lower())
        yield Hit("season forbidden", words, "likely" if re.search(r"for best|should|optim", s.text, re.I) else "sure")
    elif (m := _DATES.search(s.text)) and re.search(FORBIDS, s.text, re.I):
        yield Hit("season forbidden", f"{m[1]} to {m[2]}")
    elif m := _TIME_OF_YEAR.search(s.text):
        yield Hit("season forbidden", re.sub(r"\s+", " ", m[1].lower()), "likely")
    elif re.search(FORBIDS, s.text, re.I) or re.search(r"\bexcept when\b", s.text, re.I):
        for m in _GROUND.finditer(s.text):
            yield Hit("season forbidden", re.sub(r"\s+", " ", m[0].lower()))
