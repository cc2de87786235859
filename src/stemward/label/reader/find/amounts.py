"""How strong, how much, how often: shares in the mix, carriers, most per stem, per application and per year."""

import re

from stemward.label.reader.phrases import FORBIDS, LENGTH, NEGATED, NUMBER, RANGE, RATE, VOLUME
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said, Sure

_ADDED = r"(?:non-?ionic |crop |methylated |seed |ammonium |drift |oil )*(?:surfactants?|adjuvants?|sulfate|dyes?|colou?rants?|concentrates?|NIS|COC|MSO|AMS|defoamers?|additives?)"
_OTHER_LIQUID = re.compile(
    r"\b(?:drift control|control agent|defoamer|dye|colorant|marker|antifoam|fertilizer)\b", re.I
)
_OF_OTHERS = re.compile(
    rf"{_ADDED}\b[^.;%]{{0,40}}?{NUMBER}\s*%?(?:{RANGE}{NUMBER})?\s*%(?:\s*v/v)?|"
    rf"{NUMBER}\s*%?(?:{RANGE}{NUMBER})?\s*%(?:\s*\(?(?:v/v|w/v|by volume)\)?)?\s*(?:of )?(?:an? )?{_ADDED}",
    re.I,
)
"""Shares of what is added to a mix, which are not those of the product."""
_NO_SHARE = (
    r"(?!\s*(?:of (?:the |an? |any |total )?(?:\w+ )?(?:foliage|crown|leaves|area|acre|surface|canopy|plants?|stems?|field|pasture|water|acreage|"
    r"site)|control|active|ae\b|ai\b|kill|slope|relative|humidity|cover|or more of the (?:leaves|area)))"
)
_A_SHARE = r"(?:v/v|diluted?|for\b|in (?:water|oil|an?\b)|emulsion|\(v/v\)|by volume|solutions?|mix(?:ture)?s?|concentrations?|sprays?|of (?:this |the )?product|product|dilutions?|strength)"
_BETWEEN = re.compile(
    rf"(?<![\d./-])({NUMBER})\s*%?\s*(?:to|-|or|through|and (?:not|no) more than|and at most|and)\s*({NUMBER})\s*%{_NO_SHARE}",
    re.I,
)
_ONE = re.compile(
    rf"(?<![\d./-])({NUMBER})\s*%\s*(?:\(?\s*{_A_SHARE})|"
    rf"(?:{_A_SHARE}|concentration|dilut\w+|rate|strength|product in mix|use|apply|prepare|mix)\s*(?:of|at|to|is|an?|contain\w*|:)?\s*(?:up to |at |no more than |not more than |at most |down to |as low as |as little as |as much as |a |an )*({NUMBER})\s*%{_NO_SHARE}",
    re.I,
)
_ROW = re.compile(
    rf"(?!.*\b(?:control|slope|cover|humidity|kill|leaves|spray volume|recycled)\b)[A-Z][^.;:%\d]{{0,24}}(?:{NUMBER} (?:feet|ft|in|inches|cm)\b[^.;:%\d]{{0,12}})?:?\s({NUMBER})\s*%",
    re.I,
)
"""A row of a table without rules in a part on one way: a few words and a share."""
_WHOLE = re.compile(
    r"\bundiluted\b|\bfull[- ]strength\b|\bneat\b|\bdo not dilute\b(?! (?:in|with|by|below|beyond|to less|more|further))|\bnot (?:to )?be diluted\b(?! (?:in|with|by|further|more|beyond|below))|\bas supplied\b|\b(?:no|without) (?:further |more )?(?:dilution|diluting)\b|\bnot diluted\b|\bundilute\b|\bwithout (?:dilution|diluting)\b|"
    r"\bready[- ]to[- ]use\b|\bconcentrate as it comes\b|\bas it comes from the\b|\bstraight from the\b",
    re.I,
)
"""Ways to say that nothing is added."""
_PARTS = re.compile(
    r"\b(\d+)\s*parts?\s*(?:of )?(?:(?:this |the )?(?:product|herbicide|concentrate)\s*)?(?:with|to|and|in|per|:)?\s*(\d+)\s*parts?",
    re.I,
)
_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}
_EACH_TO = re.compile(
    r"\b(\d+|one|two|three|four|five|ten) (?:parts?|volumes?)\b[^.;\d]{0,35}?\b(?:with|to|and|in|plus|,|into)\s*(\d+|one|two|three|four|five|six|seven|eight|nine|ten) (?:equal )?(?:parts?|volumes?)\b",
    re.I,
)
_HALF = re.compile(r"\b(?:equal (?:volumes?|parts?|amounts?|quantit\w+)|half[- ]strength|half and half|50/50)\b", re.I)
_QUARTERS = {
    "a quarter": 25,
    "one-quarter": 25,
    "one-fourth": 25,
    "one-third": 33.33,
    "a third": 33.33,
    "one-half": 50,
    "half": 50,
    "three-quarters": 75,
    "three-fourths": 75,
    "two-thirds": 66.67,
}
_BY_SHARE = re.compile(
    rf"\b(?:from )?({'|'.join(_QUARTERS)}) (?:to|and|through) ({'|'.join(_QUARTERS)})\b(?=[^.;]*\b(?:mix|strength|herbicide|product|solution|rest)\b)|\b(?:share|strength|mix|dilut\w+)\b[^.;]*\b({'|'.join(_QUARTERS)}) (?:to|and|through) ({'|'.join(_QUARTERS)})\b",
    re.I,
)
_OF_A_HUNDRED = re.compile(
    rf"\b100\s*(?:gal|-gal)\b[^.%]{{0,50}}?[:,-]?\s({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz)\b(?! of (?:water|oil|diesel))",
    re.I,
)
_RATIO = re.compile(
    r"\b(\d+)\s*:\s*(\d+)\b(?=[^.]*\b(?:water|oil|diesel|dilut|mix|solution|with|product))|\b(\d+) (?:to|in) (\d+) (?:dilution|mixture|ratio)\b",
    re.I,
)
_PER_GALLON = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(fl oz|oz|pt|qt|mL)\b[^.;%]{{0,40}}?(?:per|/|in each|into each|in|into|to|for|to make|with)\s*(?:1 |each |every |one |a |the )?gal(?:lon)?\b",
    re.I,
)
_TO_MAKE = re.compile(
    rf"({NUMBER})(?:\s*(?:gal|qt|pt)?\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz)\b[^.;%]{{0,80}}?"
    r"(?:to make|per|in each|/|in (?:enough|sufficient) [^.;]{0,40}?(?:to make|for))\s*(?:a total of )?100\s*(?:gal|-gal)",
    re.I,
)
_IN_REST = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*gal\b[^.;]{{0,40}}?\b(?:in|with|to|and|into)\s*({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*gal\b",
    re.I,
)
_WITH = re.compile(
    rf"(?<![\d./-])({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(fl oz|oz|pt|qt|gal)\b[^.;%]{{0,40}}?\b(?:with|to|into|plus|and)\s*(?:no more than |not more than |at least |each |every |an? )?"
    rf"({NUMBER})\s*(fl oz|oz|pt|qt|gal)s?\b (?:of )?(?:clean |enough )?(?:water|oil|diesel|kerosene|diluent|basal)",
    re.I,
)
_GALLONS = {"gal": 1.0, "qt": 0.25, "pt": 0.125, "fl oz": 1 / 128, "oz": 1 / 128, "ml": 1 / 3785.41}
"""US gallons in each: 231 cubic inches a gallon, 128 fluid ounces, 3,785.41 mL (NIST SP 811, 2008)."""


def figure(text: str) -> float:
    """A number as labels print it: "1 1/2", "1-1/2", "1,000", ".5"."""
    total = 0.0
    for piece in re.split(r"[\s-]+", text.replace(",", "")):
        over, _, under = piece.partition("/")
        total += float(over) / float(under or 1) if float(under or 1) else 0.0
    return total


def _percent(value: float) -> str:
    return f"{value:.4g} %"


def _pair(low: str | None, high: str, most: Sure = "sure") -> Hits:
    if low is not None and figure(low) >= figure(high):
        # The higher figure first, or a slash that the page lost: a person looks.
        most = "unsure"
    if low is not None:
        yield Hit("weakest mix", f"{low} %", most)
    yield Hit("strongest mix", f"{high} %", most)


def mix(s: Said) -> Hits:
    """Shares of product in the mix, where a way or the mixing is spoken of."""
    if not (s.methods or s.part == "mixing") or s.part in ("warranty", "storage", "first aid", "letter"):
        return
    if re.search(
        r"\bwip(?:er|ing)\b|\bwicks?\b|\broller|\bwater per acre\b|\bof water\b[^.;]{0,20}\bper acre\b", s.text, re.I
    ) or _OTHER_LIQUID.search(s.text):
        return
    text = _OF_OTHERS.sub(" ", s.text)
    least = re.search(
        r"\bat least\b|\bminimum\b|\bmin\.|no (?:less|weaker|lower) than|not (?:less|weaker|lower) than|\bweakest\b|\bdown to\b|\bfloor\b|\bleast (?:concentration|strength)\b|"
        rf"\b(?:weaker|lower|less) than\b[^.;]*(?:{FORBIDS})|(?:{FORBIDS})[^.;]*\b(?:weaker|lower|less) than\b",
        text,
        re.I,
    )
    shares = len(re.findall(r"%", text))
    # Of several ways or shares in one sentence it is not sure which share is for which.
    several = len(s.methods) > 1 or (shares == 2 and not _BETWEEN.search(text))
    many: Sure = "unsure" if shares > 2 else "likely" if several else "sure"
    if _WHOLE.search(text) and not re.search(
        rf"(?:{FORBIDS})[^.]{{0,25}}(?:undiluted|full[- ]strength|neat)", text, re.I
    ):
        yield Hit("strongest mix", "100 %", many)
    elif m := _BY_SHARE.search(text):
        low, high = (_QUARTERS[group.lower()] for group in m.groups() if group)
        yield from _pair(f"{low:g}", f"{high:g}", "likely")
    elif _HALF.search(text) and re.search(r"water|oil|diesel|dilut|mix", text, re.I):
        yield Hit("strongest mix", "50 %", "likely")
    elif (m := _EACH_TO.search(text)) and not _PARTS.search(text):
        own, others = (_COUNTS.get(group.lower(), 0) or int(group) for group in m.groups())
        yield Hit("weakest mix" if least else "strongest mix", _percent(100 * own / max(1, own + others)), "likely")
    elif m := _PARTS.search(text):
        yield Hit("strongest mix", _percent(100 * int(m[1]) / max(1, int(m[1]) + int(m[2]))))
    elif m := _RATIO.search(text):
        # One to four may be one in four or one and four.
        one, rest = int(m[1] or m[3]), int(m[2] or m[4])
        told = re.search(r"product to|product:|parts|water\b.*\bproduct|oil\b.*\bproduct", text, re.I)
        how: Sure = "likely" if one == rest or told else "unsure"
        yield Hit("weakest mix" if least else "strongest mix", _percent(100 * one / max(1, one + rest)), how)
    if m := _BETWEEN.search(text):
        yield from _pair(m[1], m[2], many)
    elif m := _ONE.search(text) or (_ROW.fullmatch(text) if s.part in METHOD_PARTS else None):
        number = next(group for group in m.groups() if group)
        if least:
            yield Hit("weakest mix", f"{number} %", many)
        else:
            yield Hit("strongest mix", f"{number} %", many)
    elif (
        (m := _OF_A_HUNDRED.search(text))
        and not _TO_MAKE.search(text)
        and not re.search(r"\bper 100\b|\bacre\b", text, re.I)
    ) or (m := _TO_MAKE.search(text)):
        yield from _volumes(m[1], m[2], m[3], 100.0)
    elif m := _IN_REST.search(text):
        if m[2] and m[4]:
            yield Hit("weakest mix", _percent(100 * figure(m[1]) / (figure(m[1]) + figure(m[3]))), "likely")
            yield Hit("strongest mix", _percent(100 * figure(m[2]) / (figure(m[2]) + figure(m[4]))), "likely")
        elif not m[2] and not m[4] and figure(m[3]) + figure(m[1]) > 0:
            yield Hit("strongest mix", _percent(100 * figure(m[1]) / (figure(m[1]) + figure(m[3]))), "likely")
    elif (m := _WITH.search(text)) and _GALLONS[m[3].lower()] and figure(m[4]):
        rest = _GALLONS[m[5].lower()] * figure(m[4])
        for kind, number in (("weakest mix", m[1] if m[2] else None), ("strongest mix", m[2] or m[1])):
            if number:
                share = _GALLONS[m[3].lower()] * figure(number)
                yield Hit(kind, _percent(100 * share / (share + rest)), "likely")
    elif (m := _PER_GALLON.search(text)) and not re.search(r"\blb\b", text, re.I):
        yield from _volumes(m[1], m[2], m[3], 1.0)


def _volumes(low: str, high: str | None, unit: str, gallons: float) -> Hits:
    share = 100 * _GALLONS[unit.lower()] / gallons
    if high is not None:
        yield Hit("weakest mix", _percent(share * figure(low)), "likely")
    top = share * figure(high if high is not None else low)
    if top <= 100:
        yield Hit("strongest mix", _percent(top), "likely")


_OIL = r"(?:(?:(?:basal|diluent|diesel|fuel|mineral|vegetable|penetrating|crop|bark|seed|paraffinic|methylated|commercially|available)[ -])*oils?\b|\bdiesel\b|\bkerosene\b)"


def _carrier_rule(words: str) -> re.Pattern[str]:
    """Sentences about the carrier itself: "oil must be used as diluent", "water is not a suitable carrier"."""
    return re.compile(
        rf"\b{words}[^.;]{{0,40}}\b(?:as (?:the |a )?(?:carrier|diluent)|(?:is|are) (?:not )?(?:the only |an? )?(?:\w+ )?(?:carriers?|diluents?))|"
        rf"\b(?:as|for) (?:the |a )?(?:carrier|diluent)[^.;]{{0,30}}\b{words}|\b(?:use|with)\b[^.;]{{0,20}}\b{words}[^.;]{{0,20}}\bas (?:the |a )?(?:carrier|diluent)|"
        rf"\b{words} carrier\b|(?:product|%|mix|concentrate)\b[^.;]{{0,12}}\bin (?:an? )?(?:\w+ )?{words}",
        re.I,
    )


_NO_CARRIER = re.compile(
    r"\brins|\bwash|\bspill|\bsurface water|\bstanding water|\bdrinking|\bhose\b|\bsoak|\brun-?off\b|\bsediment|\bfree of water|\bwater table|\b(?:near|into|over|from|to) (?:the )?water\b|"
    r"\bbod(?:y|ies) of water|\bcrop oil|\boil concentrate|\bsnow\b|\bwipe\b|\bwater body|\bwater'?s edge",
    re.I,
)
_CARRIES = re.compile(
    r"\bcarriers?\b|\bdiluents?\b|\bdilut\w*|\bmix\w*|\bsolutions?\b|\bblend|\bfinished spray\b|\bemulsif\w*|\bdispers\w*|\bsoluble\b|%|\bparts?\b|\bvolumes?\b|\bgal\b|\bbalance\b|\brest\b|"
    r"\b(?:fill|add|top off|made up|cut it|bring|brought up)\b|\d:\d",
    re.I,
)


def carrier(s: Said) -> Hits:
    """What the product is mixed with."""
    if not (s.methods or s.part in ("mixing", "front", "restrictions")) or s.part in (
        "warranty",
        "storage",
        "first aid",
        "letter",
    ):
        return
    for name, words in (("water", r"(?:water\b|\baqueous\b|\bwater-?based\b)"), ("oil", _OIL)):
        m = re.search(words, s.text, re.I)
        if m is None or not _CARRIES.search(s.text):
            continue
        ruled = _carrier_rule(words).search(s.text)
        barred = re.search(
            rf"(?:{FORBIDS}|\b(?:no|without)\b)[^.;,(]{{0,60}}{words}|{words}(?:[ -](?:carriers?|based|carried|mixtures?|mixes|dilutions?|diluents?))*[^.;,]{{0,12}}(?:\bnot (?:an? )?(?:suitable|proper)|{FORBIDS})|"
            rf"\bnot\b[^.;,]{{0,30}}\b(?:in|with)\b[^.;,]{{0,15}}{words}",
            f"{s.under} {s.text}" if re.search(FORBIDS, s.under, re.I) else s.text,
            re.I,
        )
        if barred and re.search(r"\b(?:for|of|free of) [^.;]{0,12}$|\bless than\b|\bmore than\b", barred[0], re.I):
            barred = None
        if barred and re.search(
            r"\b(?:instead of|substitut\w+ for|rather than|except|but|only|unless|unlike)\b", barred[0], re.I
        ):
            continue
        if _NO_CARRIER.search(s.text) and not ruled:
            continue
        if barred:
            yield Hit(
                "carrier forbidden", name, "sure" if ruled or re.search(r"\bdilut|\bmix", s.text, re.I) else "likely"
            )
        elif ruled or _JOINED[name].search(s.text):
            told = ruled or re.search(
                r"\bcarriers?\b|\bdiluents?\b|\bdilut|\bmix|\bsolution|\bblend|%|\bparts?\b|\bgal\b", s.text, re.I
            )
            yield Hit("carrier", name, "sure" if told else "likely")
        elif not NEGATED.search(s.text) and re.search(
            r"\b(?:carriers?|diluents?|balance|rest|remainder)\b|\d:\d|\bparts?\b|\bvolumes?\b|%", s.text, re.I
        ):
            yield Hit("carrier", name, "likely")


_JOINED = {
    name: re.compile(
        rf"(?:\b(?:in|with|and enough|parts|to|sufficient|enough|of)\s+|\b(?:carrier|diluent)s?:\s*)(?:(?:a|an|the|clean|enough|sufficient|either|commercially available|\d[\d-]*|gal|to|of|parts?)\s+){{0,4}}{words}",
        re.I,
    )
    for name, words in (("water", r"water\b"), ("oil", _OIL))
}


_A_STEM = r"(?:\b(?:per|to an?|for an?|for each|on each|on any one|on an?|on any|in each|to each|to any|for one|for any one|each|a|any|one|every|the|this|to 1|single|no)\s+(?:individual |single |standing |plant |treated |cut |one )*(?:stems?|trees?|stumps?|trunks?|plants?|clumps?|bole)\b)"
_MOST_CUE = r"(?:not (?:to )?exceed|no more than|not more than|more than|maxim\w*|\bmax\b|limit\w*|at most|up to|not above|above|\bover\b|no greater|greater (?:volume )?than|a total of|as much as|at the most|or less)"
_PER_STEM = re.compile(
    rf"{_MOST_CUE}[^.;]{{0,40}}?{VOLUME}[^.;]{{0,50}}?{_A_STEM}|{_A_STEM}[^.;\d]{{0,45}}?{_MOST_CUE}[^.;\d]{{0,25}}?{VOLUME}|{VOLUME}[^.;\d]{{0,15}}{_MOST_CUE}[^.;\d]{{0,20}}{_A_STEM}|"
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
    rf"\b(?:between|apart|gap|spac\w+|every|each|edge to edge|interval)\b[^.;\d]{{0,40}}?{LENGTH}(?![^.;]{{0,12}}\b(?:deep|wide|long|diameter|dbh|high))|"
    rf"{LENGTH}[^.;\d]{{0,20}}(?:\bapart\b|\bbetween\b|edge to edge|on cent(?:er|re)|\bspacing\b|from (?:cut|edge|one)|of (?:bark|circumference))",
    re.I,
)


def per_stem(s: Said) -> Hits:
    """Most of a mix for one stem, and how far cuts may be apart."""
    if m := _PER_STEM.search(s.text):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit(
            "most per stem", f"{number} {unit}", "sure" if re.search(r"exceed|more than", m[0], re.I) else "likely"
        )
    if "hack and squirt" in s.methods or re.search(r"\bcuts\b|\bhacks?\b|\binject|\bpuncture", s.text, re.I):
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
    r"\b(?:12|twelve)[- ](?:consecutive |successive )?months?\b|\b365[- ]days?\b|\brolling\b|(?:per|each|in a|in any|in the course of a|a|during a|one) (?:\w+ )?season|\byearly\b|"
    r"calendar year|\bseasonal",
    re.I,
)
SINGLE = re.compile(
    r"per (?:single |individual |broadcast )?(?:application|treatment)|for any one application|per use\b|each time|at any time|any (?:one|single|individual|1) (?:application|treatment|spraying)|"
    r"\beach$|(?:single|individual|one[- ]time|any one|each|1) (?:broadcast )?(?:application|treatment)|/\s*application|(?<!number of )\bapplications? (?:maximum|limit|rate)|\bin (?:1|one|a single|any one) (?:pass|go)\b|"
    r"in (?:a single|any one|any 1|one|1) (?:application|treatment)|at (?:one|any one|a single) time|\bmay be applied at once\b",
    re.I,
)
_LIMIT = re.compile(
    r"not (?:to )?exceed|no more than|not more than|\bat most\b|\bup to\b|\bmost per\b|\b(?:greatest|largest|highest) (?:\w+ )?(?:rate|amount|dose)|not (?:apply|use|go) (?:more than|above|over|greater)|do not (?:apply|use|go|make)[^.;]{0,40}?(?:more than|above|over|greater than|in excess of)|"
    r"\bmaximum\b|\bmax\.?(?=\W)|\b(?:stay|remain|keep|be|kept|held) (?:at or )?(?:below|under|within)\b|\bceiling\b|\bcap(?:ped)?\b|\b(?:largest|greatest|highest|most)\b|\bin total\b|at or below|\blimit|not be (?:greater|more) than|\bcannot exceed|must not exceed|may not exceed|up to a total|exceeding|\btotal of all\b|\brestricted to\b|\bdeliver (?:over|more)|\bmore than\b|\bmay receive\b|\bno single\b|\bat or under\b|\bunder\b|\babove\b|\btotals?\b",
    re.I,
)
_AREA = re.compile(r"\bacres?\b|\bper A\b|\bkg/ha\b|\bhectare", re.I)


def _which(text: str) -> str:
    """Which maximum a text speaks of; "" where of neither or of both."""
    single, yearly = SINGLE.search(text), YEARLY.search(text)
    return "" if bool(single) == bool(yearly) else "most per application" if single else "most per year"


_PER_ACRE_YEAR = re.compile(r"\bper acre per (?:year|application)\b", re.I)


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
    if _TWELVE.search(text) or re.search(r"\b365[- ]days?\b|\b12[- ]months?\b", text, re.I):
        yield Hit("year means", "12 months")
    elif _CALENDAR.search(text):
        yield Hit("year means", "calendar year")
    elif YEARLY.search(text) and re.search(r"season", text, re.I):
        yield Hit("year means", "season")


_TWELVE = re.compile(
    r"\b(?:12|twelve)[- ](?:consecutive |successive |straight )?months?\b|\b365[- ](?:consecutive )?days?\b|\b52 weeks\b|"
    r"\byear\b[^.;]{0,40}\b(?:from|after|following|since|with) (?:the )?(?:date of )?(?:the )?(?:first|last|previous|earliest) (?:application|treatment)|"
    r"\brolling year\b|\bany (?:period of )?one year\b|\bone full year\b",
    re.I,
)
_CALENDAR = re.compile(
    r"\bcalendar[- ]year\b|\bJan(?:uary|\.)? 1\b[^.;]{0,30}\bDec(?:ember|\.)? 31\b|\byear\b[^.;]{0,40}\bJan(?:uary|\.)?(?: 1)?\b",
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
    r"(?:(?:maximum|max\.?|greatest) )?(?:number|no\.?) of (?:\w+ )?(?:applications?|treatments?)[^.\d;]{0,40}(\d+)|"
    r"(?:applications?|treatments?) (?:per|a|each) (?:year|season)[^.\d;]{0,20}?(\d+)\s*$|"
    r"\blimit (?:the )?(?:applications?|treatments?) to (\d+)\b|\b(?:often|frequently) than (\d+|two|three|four|five) times?\b|"
    r"\bmore than (\d+) times?\b|\b(\d+) (?:applications?|treatments?) (?:a|per|each|in any) (?:calendar )?(?:year|season)\b",
    re.I,
)
_BETWEEN_THEM = re.compile(
    r"between (?:\w+ ){0,2}(?:applications?|treatments?)|intervals? of|\bdays between\b|\bre-?\s?treat|\bre-?\s?appl|retreatment interval|application interval|\bapart\b|"
    r"sequential applications?|\btreat(?:ing|ed)? again\b|\bappl(?:y|ied|ying) again\b|another (?:application|treatment)|next (?:application|treatment)|more (?:often|frequently) than|\bsecond time\b|repeat (?:applications?|treatments?)|second application|second treatment|successive|follow-?up|\brepeat(?:ed|ing)?\b|apply again|treat (?:again|the same)|following (?:the )?(?:first|initial|previous) (?:application|treatment)",
    re.I,
)
_WAIT = re.compile(
    rf"(?:at least|minimum(?: of| interval of)?|shorter than|no sooner than|not sooner than|no earlier than|not before|every|intervals? (?:is|of)|between applications?,?(?: minimum)?:?|\bwait\b|\ballow\b|interval[^.\d;]{{0,50}}?|within|less than|sooner than|until|\bmust be|separated by|for|after)\s*"
    rf"(?:of |is |: ?|a |an |at least )*({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?[\s-]*(days?|weeks?|months?)",
    re.I,
)


_DAY_INTERVAL = re.compile(
    rf"\b({NUMBER})[\s-]+(day|week|month)s?[\s-]+(?:re-?treatment |re-?application |application |minimum )?interval",
    re.I,
)


_DAYS_APART = re.compile(
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?) (?:or (?:more|longer) )?apart\b|"
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?)[^.;]{{0,20}}\b(?:must|shall|have to|need to|should) (?:pass|elapse|go by|lie|separate|have passed)[^.;]*(?:appl|treat|again)|"
    rf"\b(?:often|frequently) than (?:once )?(?:every|each|in|per) ({NUMBER})[\s-]+(days?|weeks?|months?)",
    re.I,
)
_DAYS_SOMEHOW = re.compile(
    rf"\bcloser (?:together )?than ({NUMBER})[\s-]+(days?|weeks?|months?)|\b(?:earlier|sooner) than ({NUMBER})[\s-]+(days?|weeks?|months?) (?:from|after|following) (?:the )?(?:first|initial|previous|last)|"
    rf"\b({NUMBER})[\s-]+(days?|weeks?|months?|years?) after (?:the )?(?:initial|first|previous|last) (?:treatment|application)|"
    rf"\b(?:allow|leav(?:e|ing)|let|wait(?:ing)?)\b[^.;\d]{{0,30}}?({NUMBER})[\s-]+(?:full )?(?:or more )?(days?|weeks?|months?|years?)\b[^.;]{{0,40}}\b(?:between|re-?appl|re-?treat|again|second time|respray)",
    re.I,
)


def repeats(s: Said) -> Hits:
    """How often, and how long between two applications."""
    if s.part in ("warranty", "first aid", "storage", "letter"):
        return
    told = re.search(r"\byear\b[^.;]{0,20}\b(?:is|means|begins|starts|runs|refers|stands|count)", s.text, re.I)
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
    if m := _DAYS_APART.search(s.text):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit("shortest interval", f"{number} {unit}")
    elif _BETWEEN_THEM.search(s.text) and not re.search(r"\bcuts?\b|\binches\b|\bgraz|\bhay\b", s.text, re.I):
        wait, named = _WAIT.search(s.text), _DAY_INTERVAL.search(s.text)
        if wait:
            yield Hit("shortest interval", f"{wait[1]} {wait[3]}", "unsure" if wait[2] else "sure")
        elif named:
            yield Hit("shortest interval", f"{named[1]} {named[2]}s")
        else:
            yield from _interval_somehow(s.text)
    else:
        yield from _interval_somehow(s.text)


def _interval_somehow(text: str) -> Hits:
    """An interval in words that speak of waiting and of doing it again, in whatever order."""
    if (m := _DAYS_SOMEHOW.search(text)) and not re.search(r"\bcuts?\b|\bgraz|\bhay\b|\brain|\bmow", text, re.I):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit("shortest interval", f"{number} {unit}", "likely")
