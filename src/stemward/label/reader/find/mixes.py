"""Shares of product in the mix, and what it is mixed with."""

import re
from collections.abc import Callable
from typing import NamedTuple

from stemward.label.reader.phrases import FORBIDS, NEGATED, NUMBER, RANGE
from stemward.label.reader.said import Hit, Hits, Said, Sure

_ADDED = r"(?:non-?ionic |crop |methylated |seed |ammonium |drift |oil )*(?:surfactants?|adjuvants?|sulfate|dyes?|colou?rants?|concentrates?|NIS|COC|MSO|AMS|defoamers?|additives?)"
_OTHER_USE = re.compile(
    r"\b(?:drift control|control agent|defoamer|dye|colorant|marker|antifoam|fertilizer|ammonia|detergent|cleaned|cleaning)\b|\d\s*%\s*=|\bwip(?:er|ing)\b|\bwicks?\b|\broller|\bwater per acre\b|\bof water\b[^.;]{0,20}\bper acre\b",
    re.I,
)
"""What is added besides, other tools, and volumes of spray: no shares of the product."""
_LEAST = re.compile(
    r"\bat least\b|\b(?:not|no) under\b|\bthinner than\b|\bdilut\w* (?:it )?(?:no|not) (?:further|more) than\b|\bminimum\b|\bmin\.|no (?:less|weaker|lower) than|not (?:less|weaker|lower) than|\bweakest\b|\bdown to\b|\bfloor\b|\bleast (?:concentration|strength)\b|\bor (?:above|more|stronger|higher|greater)\b|\band (?:above|up)\b|"
    rf"\b(?:weaker than|lower than|less than|below)\b[^.;]*(?:{FORBIDS})|(?:{FORBIDS})[^.;]*\b(?:weaker than|lower than|less than|below)\b",
    re.I,
)
_OF_OTHERS = re.compile(
    rf"{_ADDED}\b[^.;%]{{0,70}}?{NUMBER}\s*%?(?:{RANGE}{NUMBER})?\s*%(?:\s*v/v)?|"
    rf"{NUMBER}\s*%?(?:{RANGE}{NUMBER})?\s*%(?:\s*\(?(?:v/v|w/v|by volume)\)?)?\s*(?:of )?(?:an? )?{_ADDED}",
    re.I,
)
"""Shares of what is added to a mix, which are not those of the product."""
_NO_SHARE = (
    r"(?!\s*(?:of (?:the |an? |any |total )?(?:\w+ )?(?:foliage|crown|leaves|area|acre|surface|canopy|plants?|stems?|field|pasture|water|acreage|"
    r"site)|more\b|less\b|greater\b|control|active|ae\b|ai\b|kill|slope|relative|humidity|cover|or more of the (?:leaves|area)))"
)
_A_SHARE = r"(?:v/v|diluted?|for\b|in (?:water|oil|an?\b)|emulsion|\(v/v\)|by volume|solutions?|mix(?:ture)?s?|concentrations?|sprays?|of (?:this |the )?product|of the (?:liquid|volume|total|finished)|product|dilutions?|strength|or (?:stronger|more|above))"
_BETWEEN = re.compile(
    rf"(?<![\d./-])({NUMBER})\s*%?\s*(?:\([^()%\d]*\)\s*)?(?:to|-|or|through|and (?:not|no) more than|and at most|and)\s*({NUMBER})\s*%{_NO_SHARE}",
    re.I,
)
_ONE = re.compile(
    rf"(?<![\d./-])({NUMBER})\s*%\s*(?:\(?\s*{_A_SHARE})|"
    rf"(?:{_A_SHARE}|concentration|dilut\w+|rate|strength|product in mix|use|apply|prepare|mix)\s*(?:(?:with|in) (?:water|oil) )?(?:of|at|to|is|an?|contain\w*|:)?\s*(?:up to |at |no more than |not more than |at most |down to |as low as |as little as |as much as |at least |(?:no |not )?(?:less|more|weaker|stronger|lower|higher|thinner) than |(?:no |not )under |below |above |over |(?:a )?minimum (?:of )?|kept at |a |an )*({NUMBER})\s*%{_NO_SHARE}",
    re.I,
)
_ROW = re.compile(
    rf"^(?!.*\b(?:control|slope|cover|humidity|kill|leaves|spray volume|recycled)\b)[A-Z][^.;:%\d]{{0,24}}(?:{NUMBER} (?:feet|ft|in|inches|cm)\b[^.;:%\d]{{0,12}})?:?\s(?:\|\s*)?({NUMBER})\s*%(?:$|\s*\|)",
    re.I,
)
"""A row of a table without rules in a part on one way: a few words and a share."""
_WHOLE = re.compile(
    r"\bundiluted\b|\bwithout thinning\b|\buse the concentrate (?:or|as)\b|\bfull[- ]strength\b|\bneat\b|\bdo not dilute\b(?! (?:in|with|by|below|beyond|to less|more|further))|\bnot (?:to )?be diluted\b(?! (?:in|with|by|further|more|beyond|below))|\bas supplied\b|\b(?:no|without) (?:further |more )?(?:dilution|diluting)\b|\bnot diluted\b|\bundilute\b|\bwithout (?:dilution|diluting)\b|"
    r"\bready[- ]to[- ]use\b|\bconcentrate as it comes\b|\bas it comes from the\b|\bstraight from the\b",
    re.I,
)
"""Ways to say that nothing is added."""
_PARTS = re.compile(
    r"\b(\d+)\s*parts?\s*(?:of )?(?:(?:this |the )?(?:product|herbicide|concentrate)\s*)?(?:with|to|and|in|per|:)?\s*(\d+)(?: (?:to|-) (?P<most>\d+))?\s*parts?",
    re.I,
)
_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}
_TO_EACH = re.compile(
    r"\b(\d+|one|two|three|four|five|six|seven|eight|nine|ten) parts? (?:of )?(?:water|oil|diesel|kerosene)\b[^.;\d]{0,15}\b(?:to|for) (?:each|every|1|one|a) part\b",
    re.I,
)
"""The carrier first: "three parts of water to each part of product"."""
_EACH_TO = re.compile(
    r"\b(\d+|one|two|three|four|five|ten) (?:parts?|volumes?)\b[^.;\d]{0,35}?\b(?:with|to|and|in|plus|,|into)\s*(\d+|one|two|three|four|five|six|seven|eight|nine|ten)(?: to (?P<most>\d+))? (?:(?:equal )?(?:parts?|volumes?)\b|of (?:water|oil|diesel))",
    re.I,
)
_HALF = re.compile(
    r"\b(?:equal (?:volumes?|parts?|amounts?|quantit\w+)|half[- ]strength|half (?:product|herbicide|concentrate),? (?:and )?half (?:water|oil)|\bdilut\w* (?:it )?by half\b|half and half|50/50)\b",
    re.I,
)
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
_ONE_SHARE = re.compile(
    rf"\b({'|'.join(_QUARTERS)}) (?:of )?(?:this |the )?(?:product|herbicide|concentrate)\b[^.;]*\b(?:and|with|to|in)\b[^.;]*\b(?:water|oil|diesel|kerosene)|\bmakes? up ({'|'.join(_QUARTERS)})\b|"
    rf"\b({'|'.join(_QUARTERS)}) of the (?:\w+ )?(?:liquid|mix(?:ture)?|solution|volume|spray) (?:must|may|is to|shall|should|can)? ?(?:be|is) (?:this |the )?product",
    re.I,
)
_BY_SHARE = re.compile(
    rf"\b(?:from )?({'|'.join(_QUARTERS)}) (?:to|and|through) ({'|'.join(_QUARTERS)})\b(?=[^.;]*\b(?:mix|strength|herbicide|product|solution|rest)\b)|\b(?:share|strength|mix|dilut\w+)\b[^.;]*\b({'|'.join(_QUARTERS)}) (?:to|and|through) ({'|'.join(_QUARTERS)})\b",
    re.I,
)
_OF_A_HUNDRED = re.compile(
    rf"\b100\s*(?:gal|-gal)\b[^.%]{{0,50}}?[:,-]?\s({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz)\b(?! of (?:water|oil|diesel))",
    re.I,
)
_RATIO = re.compile(
    r"\b(\d+)\s*:\s*(\d+)\b(?=[^.]*\b(?:water|oil|diesel|dilut|mix|solution|with|product))|(?<=dilution: )(\d+):(\d+)\b|(?<=ratio: )(\d+):(\d+)\b|(?:\bdilut\w+ )?\b(\d+) (?:to|in) (\d+) (?:dilution|mixture|ratio|with water|with oil)\b",
    re.I,
)
_PER_GALLON = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(fl oz|oz|pt|qt|mL)\b[^.;%]{{0,40}}?(?:per|/|in each|into each|in|into|to|for|to make|with)\s*(?:1 |each |every |one |a |the )?gal(?:lon)?\b",
    re.I,
)
_TO_MAKE = re.compile(
    rf"({NUMBER})(?:\s*(?:gal|qt|pt)?\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz)\b[^.;%]{{0,80}}?"
    r"(?:to make|per|in each|in(?= 100 gal(?! of (?:water|oil|diesel)))|/|in (?:enough|sufficient) [^.;]{0,70}?(?:to make|for))\s*(?:a total of )?100\s*(?:gal|-gal)",
    re.I,
)
_TO_MAKE_ANY = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz|oz)\b[^.;%]{{0,60}}?\b(?:to make|to bring it to|makes?)\s*(?:up )?(?:a total of )?({NUMBER})\s*gal\b",
    re.I,
)
_IN_REST = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*gal\b(?! per acre)[^.;]{{0,40}}?\b(?:in|with|to|and|into)\s*({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*gal\b",
    re.I,
)
_WITH = re.compile(
    rf"(?<![\d./-])({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(fl oz|oz|pt|qt|gal)\b[^.;%]{{0,40}}?\b(?:with|to|in|into|plus|and)\s*(?:no more than |not more than |at least |each |every |an? )?"
    rf"({NUMBER})\s*(fl oz|oz|pt|qt|gal)s?\b (?:of )?(?:(?:clean|enough|No\.?|number|\d|fuel|any|an?|approved) ){{0,3}}(?:water|oil|diesel|kerosene|diluent|basal|fuel oil)",
    re.I,
)
_TO_MARK = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(gal|qt|pt|fl oz|oz)\b[^.;%]{{0,60}}?\bto the ({NUMBER})[- ]gal mark",
    re.I,
)
_GALLON_FIRST = re.compile(
    rf"\b(?:per|in each|to each|for each|in every|for 1|1) gal\b(?: of (?:mix|spray|solution|water|oil|mixture))?[^.;\d%]{{0,15}}?({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*(fl oz|oz|pt|qt)\b(?! per)",
    re.I,
)
_PER_LITER = re.compile(
    rf"({NUMBER})(?:\s*(?:to|-)\s*({NUMBER}))?\s*mL\b[^.;%]{{0,30}}?(?:per |/ ?|in (?:each|1|a) )(?:1 )?(?:L\b|lit(?:er|re))",
    re.I,
)
_BOTH_SIDES = re.compile(
    rf"\bproduct\W{{1,3}}({NUMBER}) (gal|qt|pt|fl oz|oz)\b\W{{1,4}}(?:and )?(?:water|diesel|oil|basal oil|kerosene|diluent)\W{{1,3}}({NUMBER}) (gal|qt|pt|fl oz|oz)\b",
    re.I,
)
_MIN_MAX = re.compile(
    rf"\bmin(?:imum)?\b[^.;%\d]{{0,15}}({NUMBER})\s*%[^.;%\d]{{0,15}}\bmax(?:imum)?\b[^.;%\d]{{0,15}}({NUMBER})\s*%",
    re.I,
)
_MOST_REST = re.compile(
    r"\b(?:no|not) more than (\d+|two|three|four|five|six|seven|eight|nine|ten) (?:parts?|volumes?|times as much) (?:of )?(?:water|oil|diesel)\b",
    re.I,
)
"""The most of the carrier is the least of the product: "dilute with no more than three parts water"."""
_NEITHER = re.compile(
    rf"\b(?:below|under|less than|weaker than)\s*({NUMBER})\s*%[^.;]*\b(?:above|over|more than|stronger than)\s*({NUMBER})\s*%",
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


class Asked(NamedTuple):
    """A sentence that tells a share. m: where. least: it speaks of a least share. most: how sure of several ways or shares."""

    m: re.Match[str]
    text: str
    least: bool
    most: Sure


class Shares(NamedTuple):
    """The weakest and the strongest share as typed, "" where there is none, and how sure they are."""

    weakest: str
    strongest: str
    sure: Sure


_FROM_SHARE = re.compile(
    rf"(?<![\d./-])({NUMBER})\s*%[^.;\d]{{0,25}}\b(?:to|through|or|up to)\b[^.;\d]{{0,12}}\b(?:undiluted|full[- ]strength|neat)\b",
    re.I,
)
"""From a share to the whole: "50 % to undiluted"."""


def _one(percent: str, asked: Asked, sure: Sure) -> Shares:
    return Shares(percent, "", sure) if asked.least else Shares("", percent, sure)


def _whole(asked: Asked) -> Shares | None:
    whole = r"(?:undiluted|full[- ]strength|neat)"
    if re.search(
        rf"(?:{FORBIDS})[^.]{{0,25}}{whole}|{whole}[^.;,]{{0,30}}(?:{FORBIDS}|\bwasteful|\bnot needed|\bunnecessary)",
        asked.text,
        re.I,
    ):
        return None
    # "Undiluted, or mixed with as much water".
    other = next(
        (found for pattern, reads in ((_HALF, _half), (_PARTS, _parts), (_EACH_TO, _parts), (_RATIO, _ratio), (_FROM_SHARE, _single))
         if (m := pattern.search(asked.text)) and (found := reads(asked._replace(m=m, least=False)))),
        None,
    )  # fmt: skip
    return Shares(other.strongest if other else "", "100 %", "likely" if other else asked.most)


def _by_quarters(asked: Asked) -> Shares:
    low, high = (_QUARTERS[group.lower()] for group in asked.m.groups() if group)
    return Shares(f"{low:g} %", f"{high:g} %", "likely")


def _quarter(asked: Asked) -> Shares:
    return _one(f"{_QUARTERS[next(group for group in asked.m.groups() if group).lower()]:g} %", asked, "likely")


def _to_each(asked: Asked) -> Shares:
    rest = _COUNTS.get(asked.m[1].lower(), 0) or int(asked.m[1])
    return _one(_percent(100 / (1 + rest)), asked, "likely")


def _most_rest(asked: Asked) -> Shares:
    rest = _COUNTS.get(asked.m[1].lower(), 0) or int(asked.m[1])
    return Shares(_percent(100 / (1 + rest)), "", "likely")


def _half(asked: Asked) -> Shares | None:
    mixed = re.search(r"water|oil|diesel|dilut|mix", asked.text, re.I)
    return Shares("", "50 %", "likely") if mixed else None


_OF_THE_MIX = re.compile(
    r"\s*(?:of |in )?(?:the |a )?(?:finished |total |spray |all )*(?:mix(?:ture)?|total|solution|spray|altogether)\b",
    re.I,
)


def _parts(asked: Asked) -> Shares:
    own, rest = (_COUNTS.get(group.lower(), 0) or int(group) for group in asked.m.groups()[:2])
    if most := asked.m.groupdict().get("most"):
        return Shares(_percent(100 * own / (own + int(most))), _percent(100 * own / max(1, own + rest)), "likely")
    if _OF_THE_MIX.match(asked.text[asked.m.end() :]):
        # "Two parts in five parts of mix" is two fifths.
        return _one(_percent(100 * own / max(1, rest)), asked, "likely") if own <= rest else Shares("", "", "unsure")
    return _one(_percent(100 * own / max(1, own + rest)), asked, "sure" if _PARTS.search(asked.m[0]) else "likely")


def _ratio(asked: Asked) -> Shares:
    """One to four may be one in four or one and four."""
    own, rest = (int(group) for group in asked.m.groups() if group)
    told = re.search(r"product to|product:|parts|water\b.*\bproduct|oil\b.*\bproduct", asked.text, re.I)
    return _one(_percent(100 * own / max(1, own + rest)), asked, "likely" if own == rest or told else "unsure")


def _between(asked: Asked) -> Shares:
    # The higher figure first, or a slash that the page lost: a person looks.
    return Shares(
        f"{asked.m[1]} %", f"{asked.m[2]} %", asked.most if figure(asked.m[1]) < figure(asked.m[2]) else "unsure"
    )


def _single(asked: Asked) -> Shares:
    return _one(f"{next(group for group in asked.m.groups() if group)} %", asked, asked.most)


def _of_volume(low: str | None, high: str, unit: str, gallons: float, least: bool = False) -> Shares | None:
    """Shares of so much product in so many gallons of mix; none above the whole."""
    share = 100 * _GALLONS[unit.lower()] / gallons
    strongest = _percent(share * figure(high)) if share * figure(high) <= 100 else ""
    if least and not low:
        return Shares(strongest, "", "likely")
    return Shares(_percent(share * figure(low)) if low else "", strongest, "likely")


def _of_a_hundred(asked: Asked) -> Shares | None:
    if re.search(r"\bper 100\b|\bacre\b", asked.text, re.I):
        return None
    return _of_volume(asked.m[1] if asked.m[2] else None, asked.m[2] or asked.m[1], asked.m[3], 100.0)


def _to_make(asked: Asked) -> Shares | None:
    return _of_volume(asked.m[1] if asked.m[2] else None, asked.m[2] or asked.m[1], asked.m[3], 100.0)


def _in_rest(asked: Asked) -> Shares | None:
    """So many gallons in so many others, each a figure or each a range."""

    def share(own: str, rest: str) -> str:
        return _percent(100 * figure(own) / max(1e-9, figure(own) + figure(rest)))

    if asked.m[2] and asked.m[4] and figure(asked.m[1]) + figure(asked.m[4]) == figure(asked.m[2]) + figure(asked.m[3]):
        # "20 to 30 gallons with 70 to 80 gallons": the least product goes with the most of the rest.
        return Shares(share(asked.m[1], asked.m[4]), share(asked.m[2], asked.m[3]), "likely")

    if bool(asked.m[2]) != bool(asked.m[4]):
        return None
    return (
        Shares(share(asked.m[1], asked.m[3]), share(asked.m[2], asked.m[4]), "likely")
        if asked.m[2]
        else Shares("", share(asked.m[1], asked.m[3]), "likely")
    )


def _with(asked: Asked) -> Shares | None:
    """So much of the product with so much of a carrier, in any units."""
    rest = _GALLONS[asked.m[5].lower()] * figure(asked.m[4])
    low, high = (_GALLONS[asked.m[3].lower()] * figure(number) for number in (asked.m[1], asked.m[2] or asked.m[1]))
    if not rest:
        return None
    return Shares(
        _percent(100 * low / (low + rest)) if asked.m[2] else "", _percent(100 * high / (high + rest)), "likely"
    )


def _to_make_any(asked: Asked) -> Shares | None:
    gallons = figure(asked.m[4])
    return (
        _of_volume(asked.m[1] if asked.m[2] else None, asked.m[2] or asked.m[1], asked.m[3], gallons)
        if gallons
        else None
    )


def _neither(asked: Asked) -> Shares | None:
    """Neither below one share nor above another."""
    forbidden = re.search(FORBIDS, asked.text, re.I)
    return Shares(f"{asked.m[1]} %", f"{asked.m[2]} %", "likely") if forbidden else None


def _per_liter(asked: Asked) -> Shares | None:
    """So many milliliters in a liter of mix."""
    low, high = asked.m[1] if asked.m[2] else None, asked.m[2] or asked.m[1]
    return _of_volume(low, high, "mL", _GALLONS["ml"] * 1000, asked.least)


def _both_sides(asked: Asked) -> Shares | None:
    own, rest = (_GALLONS[asked.m[n + 1].lower()] * figure(asked.m[n]) for n in (1, 3))
    return Shares("", _percent(100 * own / (own + rest)), "likely") if own and rest else None


def _per_gallon(asked: Asked) -> Shares | None:
    if re.search(r"\blb\b", asked.text, re.I):
        return None
    return _of_volume(asked.m[1] if asked.m[2] else None, asked.m[2] or asked.m[1], asked.m[3], 1.0, asked.least)


Reads = Callable[[Asked], Shares | None]
IN_WORDS: tuple[tuple[re.Pattern[str], Reads], ...] = (
    (_WHOLE, _whole), (_BY_SHARE, _by_quarters), (_ONE_SHARE, _quarter), (_HALF, _half), (_MOST_REST, _most_rest), (_TO_EACH, _to_each), (_PARTS, _parts), (_EACH_TO, _parts), (_RATIO, _ratio),
)  # fmt: skip
IN_FIGURES: tuple[tuple[re.Pattern[str], Reads], ...] = (
    (_NEITHER, _neither), (_MIN_MAX, _between), (_BETWEEN, _between), (_ONE, _single), (_ROW, _single), (_TO_MAKE, _to_make), (_TO_MAKE_ANY, _to_make_any), (_TO_MARK, _to_make_any), (_BOTH_SIDES, _both_sides), (_PER_LITER, _per_liter), (_OF_A_HUNDRED, _of_a_hundred),
    (_IN_REST, _in_rest), (_WITH, _with), (_PER_GALLON, _per_gallon), (_GALLON_FIRST, _per_gallon),
)  # fmt: skip
"""How labels tell a share, in words and in figures, in the order in which they are tried."""


def mix(s: Said) -> Hits:
    """Shares of product in the mix, where a way or the mixing is spoken of."""
    ready = s.part == "front" and re.search(
        r"\bready[- ]to[- ]use\b.*\bdilut|\bdilut.*\bready[- ]to[- ]use\b", s.text, re.I
    )
    if not (s.methods or s.part == "mixing" or ready) or s.part in ("warranty", "storage", "first aid", "letter"):
        return
    if _OTHER_USE.search(s.text):
        return
    text = _OF_OTHERS.sub(" ", s.text)
    figures = len(re.findall(r"%", text))
    # Of several ways or shares in one sentence it is not sure which share is for which.
    several = len(s.methods) > 1 or (figures == 2 and not _BETWEEN.search(text))
    least, most = bool(_LEAST.search(text)), _MANY[figures > 2, several]
    for table in (IN_WORDS, IN_FIGURES):
        matches = ((reads, m) for pattern, reads in table if (m := pattern.search(text)) and " per acre" not in m[0])
        found = next((shares for reads, m in matches if (shares := reads(Asked(m, text, least, most)))), None)
        if found and found.weakest:
            yield Hit("weakest mix", found.weakest, found.sure)
        if found and found.strongest:
            yield Hit("strongest mix", found.strongest, found.sure)


_MANY: dict[tuple[bool, bool], Sure] = {
    (False, False): "sure", (False, True): "likely", (True, False): "unsure", (True, True): "unsure",
}  # fmt: skip
_OIL = r"(?:\bpetroleum distillates?\b|\b(?:(?:basal|diluent|diesel|fuel|mineral|vegetable|penetrating|commercial|crop|bark|seed|paraffinic|methylated|commercially|available)[ -])*oils?\b(?!-soluble)|\bdiesel\b|\bkerosene\b)"


def _carrier_rule(words: str) -> re.Pattern[str]:
    """Sentences about the carrier itself: "oil must be used as diluent", "water is not a suitable carrier"."""
    return re.compile(
        rf"\b{words}[^.;]{{0,40}}\b(?:as (?:the |a )?(?:carrier|diluent)|(?:is|are) (?:not )?(?:the only |the sole |an? )?(?:\w+ )?(?:carriers?|diluents?))|\b(?:the )?oil may be {words}|\b(?:carried|goes? out) in (?:an? )?(?:\w+ )?{words}|\bas an? {words} (?:spray|solution|mix)|\btop(?:ped)? (?:up|off) with (?:\w+ )?{words}|\|\s*(?:(?:any|approved|an?|in) )*{words}\s*(?:\||$)|"
        rf"\b(?:as|for) (?:the |a )?(?:carrier|diluent)[^.;]{{0,30}}\b{words}|\b(?:use|with)\b[^.;]{{0,20}}\b{words}[^.;]{{0,20}}\bas (?:the |a )?(?:carrier|diluent)|"
        rf"\b{words} carrier\b|(?:product|%|mix|concentrate)\b[^.;]{{0,12}}\bin (?:an? )?(?:\w+ )?{words}",
        re.I,
    )


_NOT_MIXED = re.compile(r"\b(?:dye|colorant|marker|ammonia|detergent|cleaned|cleaning)\b", re.I)
_NO_CARRIER = re.compile(
    r"\bpH\b|\bflush|\brins|\bwash|\bspill|\bsurface water|\bstanding water|\bdrinking|\bhose\b|\bsoak|\brun-?off (?:water|into|from)|\bseed oil at\b|\bsediment|\bfree of water|\bwater table|\b(?:near|into|over|from|(?<!product )to) (?:the )?water\b|"
    r"\bbod(?:y|ies) of water|\bcrop oil|\boil concentrate|\bsnow\b|\bwipe\b|\bby weight\b|\bformulants?\b|\bwater body|\bwater'?s edge",
    re.I,
)
_CARRIES = re.compile(
    r"\b(?:qt|pt|oz)\b|\bcarriers?\b|\bdiluents?\b|\bdilut\w*|\bmix\w*|\bsolutions?\b|\bblend|\bfinished spray\b|\bthin\b|\bcompatible\b|\bemulsif\w*|\bdispers\w*|\bsoluble\b|%|\bparts?\b|\bvolumes?\b|\bgal\b|\bbalance\b|\brest\b|"
    r"\b(?:fill|add|top off|made up|cut it|bring|brought up|carried|oil may be|fill)\b|\d:\d|\baqueous\b|\btreated\b[^.;]{0,20}\bin (?:an? )?oil\b",
    re.I,
)


_AQUEOUS = re.compile(r"\baqueous (?:mix|solution|spray|dilution)|\bin (?:an )?aqueous\b", re.I)


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
        bare = re.search(rf"^\W*(?:use |add )?(?:no|without) {words}\W*$|{words} must be left out", s.text, re.I)
        used = re.search(rf"^\W*use (?:(?:only|an?|plain|clean|clear) )*{words}", s.text, re.I) and re.search(
            r"\bcarrier|\bdiluent", s.under, re.I
        )
        ruled = _carrier_rule(words).search(s.text)
        if m is None or not (_CARRIES.search(s.text) or bare or used or ruled):
            continue
        barred = re.search(
            rf"(?:{FORBIDS}|\b(?:no(?! (?:more|less|further|weaker|stronger))|without)\b)[^.;,(]{{0,60}}{words}|\b(?:never|do not) (?:add|dilute with|mix with)\b[^.;(]{{0,40}}{words}|\bkeep (?:all )?{words} out\b|{words}(?:[ -](?:carriers?|based|carried|mixtures?|mixes|dilutions?|diluents?))*[^.;,]{{0,25}}(?:\bunsuitable\b|\bnot (?:an? )?(?:suitable|proper)|{FORBIDS})|"
            rf",? not (?:in |with )?(?:plain )?{words}|\bnot\b(?! (?:under|less|more|over|weaker|stronger|exceed))[^.;,]{{0,30}}\b(?:in|with)\b[^.;,]{{0,15}}{words}|\bincompatible\b[^.;]{{0,30}}{words}|"
            rf"{words}[^.;]{{0,12}}\b(?:is|are) no\b|{words}[^.;]{{0,15}}\bleft out\b",
            f"{s.under} {s.text}" if re.search(rf"(?:{FORBIDS})[^;]*:$", s.under, re.I) else s.text,
            re.I,
        )
        if barred and re.search(
            r"\bnot (?:needed|necessary)\b|\bdo not (?:allow|let)\b|\birrigation\b|\btreated (?:lake|pond) ",
            s.text,
            re.I,
        ):
            continue
        if barred and re.search(r"\b(?:for|of|free of) [^.;]{0,12}$|\bless than\b|\bmore than\b", barred[0], re.I):
            barred = None
        if barred and re.search(
            r"\b(?:instead of|substitut\w+ for|rather than|except|but|only|unless|unlike)\b", barred[0], re.I
        ):
            continue
        if (_NO_CARRIER.search(s.text) or _NOT_MIXED.search(s.text)) and not ruled:
            continue
        if barred:
            yield Hit(
                "carrier forbidden", name, "sure" if ruled or re.search(r"\bdilut|\bmix", s.text, re.I) else "likely"
            )
        elif ruled or used or _JOINED[name].search(s.text) or (name == "water" and _AQUEOUS.search(s.text)):
            mixed = r"(?:\bcarriers?\b|\bdiluents?\b|\bdilut\w*|\bmix\w*|\bsolutions?\b|\bblend|%|\bparts?\b|\bgal\b)"
            told = ruled or re.search(rf"{mixed}[^.;]{{0,40}}{words}|{words}[^.;]{{0,25}}{mixed}", s.text, re.I)
            yield Hit("carrier", name, "sure" if told else "likely")
        elif not NEGATED.search(s.text) and re.search(
            r"\b(?:carriers?|diluents?|balance|rest|remainder)\b|\d:\d|\bparts?\b|\bvolumes?\b|%", s.text, re.I
        ):
            yield Hit("carrier", name, "likely")


_JOINED = {
    name: re.compile(
        rf"\bhalf {words}|\b(?:mix|mixed|mixing|blend\w*|dilut\w*|stirr?\w*|pour\w*)\b[^.;]{{0,20}} (?:with|in|into) (?:[\w-]+ ){{0,2}}{words}|(?:water|oil),? or (?:\w+ ){{0,2}}?{words}|\bremainder (?:\w+ )?{words}|(?:\b(?:in|with|and enough|parts|to|sufficient|enough|of)\s+|\b(?:carrier|diluent)s?:\s*)(?:(?:a|an|the|clean|plain|light|commercial|approved|No\.?|number|\d|enough|sufficient|either|commercially available|\d[\d-]*|gal|to|of|parts?)\s+){{0,4}}{words}",
        re.I,
    )
    for name, words in (("water", r"water\b"), ("oil", _OIL))
}
