"""Numbers and units as labels spell them, made alike before anything is looked for. The words shown stay as printed."""

import re
from functools import lru_cache

_UNITS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_TEENS = ("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_BELOW_HUNDRED = {
    **{word: n for n, word in enumerate((*_UNITS, *_TEENS), 1)},
    **{word: 10 * n for n, word in enumerate(_TENS, 2)},
    **{f"{ten}-{unit}": 10 * n + k for n, ten in enumerate(_TENS, 2) for k, unit in enumerate(_UNITS, 1)},
}
WORDS = {
    **{word: str(n) for word, n in _BELOW_HUNDRED.items()},
    **{f"{unit} hundred": str(100 * n) for n, unit in enumerate(_UNITS, 1)},
    **{f"{unit} hundred{joint}{ten}": str(100 * n + 10 * k) for n, unit in enumerate(_UNITS, 1) for joint in (" ", " and ") for k, ten in enumerate(_TENS, 2)},
}  # fmt: skip
_COUNTED = (
    r"mph|miles per hour|degrees?|minutes?|hours?|days?|weeks?|months?|years?|seconds?|feet|foot|yards?|inch(?:es)?|miles?|parts?|percent|pounds?|"
    r"pints?|quarts?|gallons?|ounces?|milliliters?|volumes?|times|sprays?|broadcasts?|(?:\w+ )?(?:applications?|treatments?)|cuts?|injections?|"
    r"(?:a|per|each|in a|in any) (?:\w+ )?(?:year|season)"
)
_FRACTIONS = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
}
_SPELLED = "|".join((*_UNITS, "ten", "eleven", "twelve", "teen", *_TENS))
_NUMBER = rf"(?:{'|'.join(_UNITS)}) hundred(?:(?: and)? (?:{'|'.join(_TENS)}))?|(?:{'|'.join(_TENS)})(?:-(?:{'|'.join(_UNITS)}))?|{'|'.join(_TEENS)}|{'|'.join(_UNITS)}"
_RULES = tuple(
    (tuple(filter(None, letters.split("|"))), re.compile(pattern, re.I), new)
    for letters, pattern, new in (
        ("½|¼|¾|⅓|⅔|⅛|⅜|⅝|⅞", r"(\d)\s*([½¼¾⅓⅔⅛⅜⅝⅞])", r"\1 \2"),
        ("", r"[–—‑‒−]", "-"),
        # Blanks that a page's setting, or a reader of pictures, put before a stop.
        (" .", r"(?<=\d) \.(?=\d)", "."),
        (" .", r"\b(Reg|Est|Nos?) \.", r"\1."),
        ("no.", r"\bNo\. ?(?=\d (?:fuel|diesel|or|and))", "number "),
        ("\"|”|″", r"(?<=\d)\s?[\"”″](?=[\s).,;:-]|$)", " inch"),
        ("d a n|w a r|c a u", r"\b(D A N G E R|W A R N I N G|C A U T I O N)\b", lambda m: m[1].replace(" ", "")),
        ("(", r"\b(?:[a-z]+)(?: and [a-z]+)?-(?:half|quarters?|thirds?|fourths?)\s*\((\d[\d./]*)\)", r"\1"),
        ("half", r"\b(one|two|three|four|five|six) and (?:one|a)[- ]half\b", lambda m: f"{WORDS[m[1].lower()]} 1/2"),
        ("", r"(?<=\d) ?d\b(?!\.)", " days"),
        ("app", r"/apps?\b|\bper app\b", " per application"),
        ("apps", r"\bapps\b", "applications"),
        ("/", r"/\s*appl(?:ications?|\.)?(?=\W|$)", " per application"),
        ("appl.", r"\bappl\.", "applications"),
        ("-|–|—", r"(?<=\d)-(?= to \d)|(?<=\d)-(?=percent\b)", " "),
        ("≤", r"≤", "at most "),
        (">", r">\s?(?=\d)", "greater than "),
        ("<", r"<\s?(?=\d)", "less than "),
        ("≥", r"≥", "at least "),
        # A metric twin in brackets says nothing new.
        (
            "(", r"\(\s*(?:about |approximately |~)?-?[\d.,/ -]*\d\s*"
            r"(?:kg|g|L|mL|cm|mm|m|km|°?\s?C|degrees? C\w*|liters?|litres?|met(?:er|re)s?|g(?:rams?)?\s?(?:/|per) ?(?:L|lit(?:er|re))|km/h|kph|hectares?|ha)\b[^()%]{0,18}\)",
            "",
        ),
        (_SPELLED, rf"\b({_NUMBER})\b(?=[\s-]+(?:\(\d+\)[\s-]*)?(?:to[\s-]+[\w-]+[\s-]+)?(?:{_COUNTED})\b)", lambda m: WORDS[m[1].lower()]),
        (_SPELLED, rf"\b({_NUMBER})\b(?=[\s-]+\(\d+\))", lambda m: WORDS[m[1].lower()]),
        ("(", r"\b(\d+)\s*\(\1\)", r"\1"),
        ("miles|mph|m.p.h|mp", r"miles (?:per|an) hour|\bm\.?p\.?h\b\.?", "mph"),
        ("half an", r"\bhalf an hour\b", "30 minutes"),
        ("half", r"\b(?:one[- ]half|half an?) (inch|mile|pint|quart|gallon)", r"1/2 \1"),
        ("quarter", r"\b(?:a|one)[- ]quarter(?: of an?)? (hour|inch|mile|pint|gallon)|\ba quarter (hour)", lambda m: "15 minutes" if (m[1] or m[2]).lower() == "hour" else f"1/4 {m[1]}"),
        ("a |an ", r"\ban? (hour|minute|day|week|month)\b(?! or more)", r"1 \1"),
        ("milli|cc", r"\b(?:milliliters?|millilitres?|cc)\b", "mL"),
        (", ", r"(?<=\d,) (?=\d{3}\b)", ""),
        ("cent|pct", r"\s*\bper ?cent\b(?!age)|\s*\bpct\b\.?", " %"),
        ("h2o", r"\bH2O\b", "water"),
        ("or more", r"(?<=\d) or more (?=(?:days|weeks|months)\b)", " "),
        ("max.", r"\bmax\.(?=\s)", "maximum"),
        ("temp", r"\btemp\.?(?=\W)", "temperature"),
        ("min.", r"\bmin\.(?=\s+(?:wind|temp|air|speed))", "minimum"),
        ("°|º|degree", r"(?:°|º|\bdegrees?)\s*(F|C)(?:ahrenheit|elsius)?\b", r" \1"),
        ("acid e|a.e|ae", r"\b(?:acid equivalents?|a\.e\.?|ae)(?=\W|$)(?:\s*\((?:a\.?e\.?)\))?", "ae"),
        ("active i|a.i|ai", r"\b(?:active ingredients?|a\.i\.?)(?=\W|$)(?:\s*\((?:a\.?i\.?)\))?", "ai"),
        ("fl", r"\b(?:fluid ounces?|fl\.? ?ozs?\.?|fl\.? ounces?)(?=\W|$)", "fl oz"),
        ("ounce", r"\bounces?\b", "oz"),
        ("pound|lb", r"\b(?:pounds?|lbs?\.?)(?=\W|$)", "lb"),
        ("gal", r"\b(?:gallons?|gals?\.?)(?=\W|$)", "gal"),
        ("quart|qt", r"\b(?:quarts?|qts?\.?)(?=\W|$)", "qt"),
        ("pint|pt", r"\b(?:pints?|pts?\.?)(?=\W|$)", "pt"),
        ("/|treated acre", r"/\s*A\b|/\s*acre\b|\bper treated acre\b", " per acre"),
        ("/", r"/\s*calendar (?=year)", " per calendar "),
        ("/", r"/\s*(?=(?:growing )?season)", " per "),
        ("/", r"/\s*y(?:ea)?r\b", " per year"),
        ("", r"\s+", " "),
    )
)  # fmt: skip
"""Letters of which some must stand in a text before a rule is worth trying, what it looks for, what it makes of it."""


@lru_cache(maxsize=1024)
def alike(text: str) -> str:
    """A sentence with numbers as digits and units under one name each: "five (5) minutes" is "5 minutes"."""
    for sign, spelled in _FRACTIONS.items():
        if sign in text:
            text = re.sub(rf"(\d)\s*{sign}", rf"\1 {spelled}", text).replace(sign, spelled)
    low = text.lower()
    for letters, pattern, new in _RULES:
        if not letters or any(some in low for some in letters):
            text = pattern.sub(new, text)
    return text.strip()
