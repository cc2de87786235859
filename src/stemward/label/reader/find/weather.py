"""Rain, wind, heat, air that lies still, seasons, and the time from cut to treatment."""

import re

from stemward.label.reader.find.bounds import limit
from stemward.label.reader.phrases import FORBIDS, NUMBER, SPEED, TEMPERATURE, TIME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_RAIN = re.compile(
    r"\bdry weather\b|\bdry hours\b|\bdry for\b|\brain(?:s|fall|fast\w*|ed|ing)?\b|\bkeep\b[^.;]{0,40}\bdry\b|\brain-?free\b|\bprecipitation\b|\bwash(?:ed)? off\b|\birrigation\b|\bshowers?\b",
    re.I,
)
_NO_RAIN_TIME = re.compile(r"months?|weeks?|inch|years?", re.I)


_HOURS = rf"{NUMBER}[\s-]*(?:to [\d./]+ )?(?:hours?|hrs?|h|minutes?|days?)\b"
_RAINS = r"(?:rain\w*|showers?|precipitation|wash(?:ed|es)? off|irrigation|dry\b)"
_OF_RAIN = re.compile(
    rf"\b{_RAINS}[^.;\d]{{0,60}}?\b(?:within|in|for|before|until|period|time|after|least|interval|:|\|)?[^.;\d]{{0,25}}{_HOURS}(?! (?:before|ago|earlier)\b)|"
    rf"{_HOURS}(?! (?:before|ago|earlier)\b)[^.;]{{0,60}}\b(?:without|free of|before|no|until|ahead of|of|dry|for|to|if|rain\w*)\b[^.;]{{0,25}}{_RAINS}|{_HOURS}[^.;]{{0,30}}\b(?:dry|rain-?\w*)\b",
    re.I,
)
"""A time that is told of rain or of staying dry, and not of what went before."""


def rain(s: Said) -> Hits:
    """Hours without rain after the work; where the words only tell what rain does, never sure."""
    if not _RAIN.search(s.text) or re.search(
        r"\bstor|\bplant(?:ing)\b|soil residual|ground ?water|\brecord\b|\bearlier\b|\bfell\b|\bhours past\b|\bindoors\b|\bpassing front|\bclothing\b|\bavoiding applications\b|\bvegetative strip|\bdew\b|\binch(?:es)? of rain",
        s.text,
        re.I,
    ):
        return
    # "Allow 4 rain-free hours."
    text = re.sub(r"(\d)[ -](?:rain-?free|dry)[ -](?=hours?|hrs?|minutes?)", r"\1 ", s.text, flags=re.I)
    times = [m for m in TIME.finditer(text) if not _NO_RAIN_TIME.match(m[2])]
    if not times or re.search(r"\bcut(?:ting)?\b|\bgraz", s.text, re.I):
        return
    if not (_OF_RAIN.search(text) or text != s.text):
        return
    ruled = re.search(FORBIDS, s.text, re.I) or re.search(r"\bmust\b|\ballow\b|\brequires?\b|\bwait\b", s.text, re.I)
    most: Sure = "unsure" if len({m[1] for m in times}) > 1 else "sure" if ruled else "likely"
    yield Hit("hours without rain", f"{times[0][1]} {times[0][2].lower()}", most)


_WORK = re.compile(r"\bappl|\bspray|\btreat|\bus(?:e|ed|ing)\b|\bherbicide|\bproduct\b|\bdroplet|\bdrift|\bmist", re.I)
MOST_HEADED = 45
"""A longer line on wind that does not speak of the work is on something else: engineering guess."""


_OF_WIND = re.compile(
    r"^\W*(?:the )?(?:sustained |steady )?(?:winds?|gusts?|breezes?)\b|\bwinds?(?: ?-?speeds?)? (?:must|shall|may|of|limit)",
    re.I,
)
"""A sentence whose subject is the wind."""


def _ruled(s: Said) -> str:
    """A sentence led by the prohibition that opened its list, if one did."""
    # "Wind limits do not hold for work by hand" opens no list.
    opened = re.search(rf"(?:{FORBIDS})(?! (?:hold|apply to|concern|bind|limit|cover))[^.;]*:?$", s.under, re.I)
    return f"Do not work {s.text}" if opened else s.text


def wind(s: Said) -> Hits:
    """Strongest and weakest wind to work in."""
    text = _ruled(s)
    if not re.search(
        r"\bwinds?\b|\bwindy\b|\bwind-?speeds?\b|\bgusts?\b|\bbreeze|\bcalm\b|\banemometer\b|\bair movement\b|\bair (?:moves|is moving)",
        text,
        re.I,
    ):
        return
    apart = re.search(r"droplet|nozzle|boom height|swath", text, re.I)
    between = re.search(rf"({NUMBER})\s*(?:mph)?\s*(?:and|to|-)\s*({NUMBER})\s*(mph|km/h)", text, re.I)
    speeds = list(SPEED.finditer(text))
    # Of the same speed in two units the one in miles is kept.
    speeds = [m for m in speeds if m[2].lower() == "mph"] or speeds
    if between:
        outside = re.search(FORBIDS, text[: between.start()], re.I) and not re.search(
            r"\bunless\b|\boutside\b", text, re.I
        )
        told = re.search(r"\b(?:apply|spray|treat|use[ds]?|appl\w+|must|only)\b", text, re.I)
        if re.search(r"\bpotential\b|\blowest\b", text, re.I):
            return
        if not outside and not (apart and not re.search(r"\bonly\b", text, re.I)):
            most: Sure = "unsure" if len(speeds) > 2 else "sure" if told else "likely"
            yield Hit("weakest wind", f"{between[1]} {between[3].lower()}", most)
            yield Hit("strongest wind", f"{between[2]} {between[3].lower()}", most)
        if not apart:
            return
        # "For winds of 10 to 15 mph use larger droplets; in no event apply above 15 mph".
        speeds = [m for m in speeds if m.start() >= between.end()]
    for m in speeds:
        limits = limit(text, m)
        ruled = re.search(
            rf"{FORBIDS}|\bmust\b|\bonly\b|\bmaximum\b|\bminimum\b|\bneed(?:s|ed)\b|\brequired?s?\b|\bat least\b|\bstop\b|\bcease\b|\blimit|exceed|\bdelay|\bpostpone|\bsuspend|\bunless\b",
            text,
            re.I,
        )
        if re.search(r"\bfell(?:ing)?\b|\bclimb|\bburn|\bsaw\b|\bchainsaw|\bladder", text, re.I) and not re.search(
            r"\bappl|\bspray", text, re.I
        ):
            continue
        if apart and not re.search(FORBIDS, text, re.I):
            continue
        how: Sure = "unsure" if apart or len(speeds) > 2 else "sure" if ruled else "likely"
        if limits and not re.search(r"\blikelihood\b|\bpotential\b|\bgreatest when\b", text, re.I):
            yield Hit("strongest wind" if limits == "most" else "weakest wind", f"{m[1]} {m[2].lower()}", how)


def heat(s: Said) -> Hits:
    """Warmest and coldest air to work in, and air that lies still over colder ground."""
    text = _ruled(s)
    if re.search(r"inversions?\b|\binverted air|\bcooler than the air above", s.text, re.I) and re.search(
        rf"{FORBIDS}|\bonly when no\b|\bno inversions?\b|\babsence\b|\bwithout an?\b|\bwait\b|\bstop\b|\bfree of\b|\bkeep off\b|\bhold off\b|\bbars?\b|\bdelay\b|\bpostpone\b",
        s.whole,
        re.I,
    ):
        yield Hit(
            "no inversion",
            "yes",
            "likely" if re.search(r"\bmay\b|\bpotential\b|\bhigh(?:er)? risk", s.text, re.I) else "sure",
        )
    if s.part == "storage" or re.search(
        r"\btake rest\b|\bheat stress|\bonset\b|\btank\b|\bwater (?:in|temperature|colder|cooler|warmer)|\bstor(?:e|age|ed|ing)\b|\bflash\b|\bboil|\bfreez(?:e|es|ing point)\b|\bwarm\b.*\bstir|shipp|wash",
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
        limits = limit(text, m)
        if limits and (
            s.has(
                r"temperature|thermometer|\bambient\b|\bair\b|\bheat\b|\bhot|\bcold|\bweather|\bdegrees|volatil|vapor|appl|treat|\bdays?\b|cooler|warmer|\buse\b|\bspray"
            )
            or s.part == "drift"
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
    if not re.search(r"\bof (?:cutting|felling)\b", s.text, re.I) and re.search(
        r"\bnot necessary\b|\bneed not\b|\bburn|\bhay\b|\bmow|\bgraz|\bdry\b|\bdried\b|re-?ent|\bstor|\bmix|\brinse|\beyes?\b|\bskin\b|\binterval\b|\bentry\b|\bagitat|\bshake|\brecut|\brepeat|\breappl|\bbottle|\bstrength is lost|\bsprayer",
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
    r"(?:do not|never|must not|may not|should not|shall not|not (?:be )?(?:applied|used|made|recommended|allowed|permitted)|except|avoid|other than)[^.;]*?((?:(?:periods? of )?(?:heavy|strong|active|spring|peak|maximum|vigorous|early) )*(?:spring )?sap[- ]?(?:flow|rise|run)|sap (?:is )?(?:strongly |actively |heavily )?(?:flowing|rising|running|moving|up))",
    re.I,
)
_MONTH_NAME = r"(?:Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sept?(?:ember)?|Oct(?:ober)?|Nov(?:ember)?|Dec(?:ember)?)\.?"
_MONTH = rf"(?:(?:early |late |mid-?)?{_MONTH_NAME}(?: \d{{1,2}}(?!\d))?|\d{{1,2}} {_MONTH_NAME})"
_MONTHS = rf"{_MONTH_NAME}(?:, {_MONTH_NAME})*,? (?:and|or) {_MONTH_NAME}"
_BARRED = rf"(?:{FORBIDS}|\bnot (?:effective|recommended|satisfactory)\b|\bexcept\b|\bpoor (?:control|results)\b|\bineffective\b)"
_TIME_OF_YEAR = re.compile(
    rf"{_BARRED}[^.;:]*?\b(?:during|in|when|while|within|through(?:out)?)\s+(?:the )?(?:(?:plants?|trees?|brush|stems?|they|leaves) (?:is|are) )?("
    r"(?:(?:heavy|strong|active|early|late|mid|full) )*(?:dormant season|dormancy|dormant|spring|summer|autumn|winter|fall(?! off)|growing season|"
    r"bud ?-?(?:break|swell)|leaf[- ]?(?:out|drop|fall|expansion)|fall colou?r|full leaf|leafing out|flowering|fruiting))",
    re.I,
)
_GROUND = re.compile(
    r"snow or water (?:keeps?|stops?)[^.;,]*?(?:ground(?: line)?|line)|(?:snow|ice|(?:standing )?water)(?: or (?:snow|ice|water))? (?:prevents?|stops?|keeps?)[^.;,]*?(?:ground(?: line)?|line|collar|base)|snow (?:or water )?covers?[^.;,]*",
    re.I,
)
_STATES_OF_SOIL = re.compile(r"\b(?:frozen|snow-?covered|covered (?:by|with) snow|saturated|water-?logged)\b", re.I)
_SOIL = re.compile(r"\b(soils?|ground)\b", re.I)
_DATES = re.compile(rf"(?:(?:from|between|during|after) )?({_MONTH})\s*(?:to|through|and|until|-)\s*({_MONTH})")


_PHRASE = re.compile(
    rf"\b(?:the )?(?:first|end|middle|month) of (?i:{_MONTH_NAME})(?: (?:to|until|through) the (?:first|end|middle) of (?i:{_MONTH_NAME}))?|\b(?:from|after|before) {_MONTH}(?: on)?\b|(?<=month but ){_MONTH}|\b(?:in|full) bloom\b|\bsnow or water stands?[^.;,]*|"
    r"(?:(?:heavy|strong|active|vigorous|peak|early|late|spring) )*sap[- ]?(?:flow|rise|run)|\bsap (?:is |begins |starts )?(?:strongly |actively |heavily |to )?(?:flow\w*|ris\w*|run\w*|mov\w*|up)|"
    r"(?:(?:before|after|until|once|during|past) (?:the )?)?(?:full |first )?(?:leaf[- ]?(?:out|drop|fall|expansion)|bud ?-?(?:break|swell)|full leaf|leafing out|flowering|fruiting)|"
    r"\bnot actively growing\b|\bwilted(?: from [\w ]+)?|\bground thaws\b|\binches of snow\b|\brunning sap\b|\b(?:soil|ground) is (?:dry|cracked)[\w ]{0,15}|\bbefore (?:the )?(?:new )?leaves (?:have |are )?(?:fully )?(?:expanded|out|open)\b|"
    r"\b(?:bird )?(?:nesting|breeding) period\b|\bdrought(?: stress)?\b|\b(?:rainy|wet|dry|nesting|hunting|fire|breeding) season\b|\b(?:winter|summer|spring|cold|hot(?:test)?) months\b|\b(?:leaves|foliage) (?:have |has |are |is |begun (?:to )?|begins? (?:to )?|starts? (?:to )?)+(?:colou?r\b|dropp?\w*|fall\w*|turn\w*|chang\w*)(?: colou?r)?(?: in the fall)?|\bsnow (?:is )?on the ground\b|\b(?:on|in) snow(?: or standing water)?\b|\bleafless\b|\bsenescen\w+|\bbuds? (?:are |is |begin to |have )?(?:swell|open|break|swollen)\w*|"
    r"\b(?:hard|first|killing) frost\b|\bfall colou?r\b|\bdorman(?:t season|cy|t)\b|\bgrowing season\b|(?:early|late|mid)?[- ]?\b(?:spring|summer|autumn|winter)\b|"
    r"\b(?:in|during|this|late|early|the) fall\b(?! of)|\b(?:frozen|snow-?covered|covered (?:by|with) snow|under snow)\b",
    re.I,
)
_CLOSED_TIME = re.compile(
    rf"{_BARRED}|: closed\b|\bwait until\b[^.;]*\b(?:over|ended|passed|past)\b|(?:^\W*|\|\s*|[,:;]\s*(?:but )?)not (?:during|in|while|when|from|between|after|before)\b|\bclosed to\b|\bin which not to\b|\bexception of\b|\bsave (?:those|that|in|during|for)\b|\bother than\b|\b(?:any|every|all)\b[^.;]*\bbut\b|\bdelay\b|\bcease\b|\brefrain\b|\bwithheld\b|\bto be avoided\b|\berratic\b|\bstop\b|\bclosed season\b|\bnot to be\b|\bnot for (?:use|application)\b|\bdo not\b",
    re.I,
)
_NO_SEASON = re.compile(
    r"\btemperatures?\b|\bfelled\b|\bconcerned\b|\bexpect\b|\bmay leaf\b|\bgraz|\bhay\b|\brotat|\bharvest|\bseed|\bper (?:growing )?season|\b(?:one|a|each|any) (?:growing )?season\b|\bacre|\bstor(?:e|age)|\b(?:next|following) (?:spring|season|growing)|\bresults? of\b|\b(?:more|less) than\b|\bspring(?:s)? (?:water|or well)|\bwells?\b|\bany season\b|"
    r"\bat any time\b(?![^.;]*\bexcept\b)",
    re.I,
)


_ALL_YEAR = re.compile(r"\bJan(?:uary|\.)? 1\b[^.;]{0,25}\bDec(?:ember|\.)? 31\b", re.I)


_MONTHS_BARRED = re.compile(
    rf"(?:(?i:{_BARRED}|\bexception of\b|\bnot for use\b))[^.;]{{0,40}}?(?:(?<=[ ,])|\b(?i:in|during|of) )({_MONTHS})"
)
_ALLOWED_BEFORE = re.compile(
    r"^[^.;]*\b(?:any|every|all|whenever)\b[^.;]*?(?:,|\b(?:times?|seasons?|months?|year)\b)[^.;]*?\b(?:except(?:ing)?|but|save|other than|exception of)\b",
    re.I,
)


def season(s: Said) -> Hits:
    """Times of the year in which it may not be used, as their words stand there."""
    best = re.search(r"for best|should|optim", s.text, re.I)
    if (m := _MONTHS_BARRED.search(s.text.title() if s.text.isupper() else s.text)) and not _NO_SEASON.search(s.text):
        yield Hit("season forbidden", m[1], "likely")
        return
    if m := _SAP.search(s.text):
        words = re.sub(r"^periods? of ", "", m[1].lower())
        yield Hit("season forbidden", words, "likely" if best else "sure")
        return
    if (m := _DATES.search(s.text)) and not _ALL_YEAR.search(s.text) and _CLOSED_TIME.search(s.text):
        yield Hit(
            "season forbidden",
            f"{m[1].rstrip('.')} to {m[2].rstrip('.')}",
            "sure" if re.search(FORBIDS, s.text, re.I) else "likely",
        )
        return
    ground = list(_GROUND.finditer(s.text)) if re.search(rf"{FORBIDS}|\bexcept when\b|\bunless\b", s.text, re.I) else []
    for m in ground:
        yield Hit("season forbidden", re.sub(r"\s+", " ", m[0].lower()))
    soil = _SOIL.search(s.text)
    if not ground and soil and re.search(FORBIDS, s.whole, re.I):
        ground = list(_STATES_OF_SOIL.finditer(s.text))
        for m in ground:
            yield Hit("season forbidden", f"{m[0].lower()} {soil[0].lower()}")
    # "At any time, winter too, except when sap rises": what stands before the exception is allowed.
    opened = f"{s.under} " if re.search(rf"(?:{FORBIDS})[^.;]*:?$", s.under, re.I) else ""
    closed = opened + _ALLOWED_BEFORE.sub("except", s.text)
    if ground or not _CLOSED_TIME.search(closed) or _NO_SEASON.search(closed):
        return
    found = [*_PHRASE.finditer(closed), *_TIME_OF_YEAR.finditer(closed)]
    if words := max((m[1] if m.re is _TIME_OF_YEAR else _with_its_end(m) for m in found), key=len, default=""):
        yield Hit("season forbidden", re.sub(r"\s+", " ", words.lower().strip(" -.")), "likely")


def _with_its_end(m: re.Match[str]) -> str:
    """The words for a time, with those for its end: "bud swell until full leaf"."""
    end = re.match(r"\s+(?:until|till|to|through)\s+(?:the )?", m.string[m.end() :])
    other = _PHRASE.match(m.string, m.end() + end.end()) if end else None
    return m.string[m.start() : other.end()] if other else m[0]
