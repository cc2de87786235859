"""Numbers and units as labels spell them, made alike before anything is looked for. The words shown stay as printed."""

import re
from functools import lru_cache

WORDS = {
    "one hundred fifty": "150", "one hundred and fifty": "150", "one hundred": "100", "two hundred": "200",
    "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9",
    "ten": "10", "eleven": "11", "eighteen": "18", "twenty-five": "25", "forty": "40", "fifty": "50", "seventy": "70", "seventy-five": "75", "eighty": "80", "eighty-five": "85", "ninety-five": "95", "twelve": "12", "fifteen": "15", "twenty": "20", "twenty-four": "24", "thirty": "30",
    "forty-eight": "48", "sixty": "60", "ninety": "90",
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
_RULES = tuple(
    (re.compile(pattern, re.I), new)
    for pattern, new in (
        (r"(\d)\s*([½¼¾⅓⅔⅛⅜⅝⅞])", r"\1 \2"),
        (r"[–—‑‒−]", "-"),
        (r"\bNo\. ?(?=\d (?:fuel|diesel))", "number "),
        (r"(?<=\d)\s?[\"”″](?=[\s).,;:-]|$)", " inch"),
        (r"/\s*appl(?:ications?|\.)?(?=\W|$)", " per application"),
        (r"\bappl\.", "applications"),
        (r"(?<=\d)-(?= to \d)|(?<=\d)-(?=percent\b)", " "),
        (r"≤", "at most "),
        (r">\s?(?=\d)", "greater than "),
        (r"<\s?(?=\d)", "less than "),
        (r"≥", "at least "),
        # A metric twin in brackets says nothing new.
        (
            r"\(\s*(?:about |approximately |~)?-?[\d.,/ -]*\d\s*"
            r"(?:kg|g|L|mL|cm|mm|m|km|°?\s?C|degrees? C\w*|liters?|litres?|met(?:er|re)s?|km/h|kph|hectares?|ha)\b[^()%]{0,18}\)",
            "",
        ),
        (rf"\b({'|'.join(sorted(WORDS, key=len, reverse=True))})\b(?=[\s-]+(?:\(\d+\)[\s-]*)?(?:to[\s-]+[\w-]+[\s-]+)?(?:{_COUNTED})\b)", lambda m: WORDS[m[1].lower()]),
        (rf"\b({'|'.join(WORDS)})\b(?=[\s-]+\(\d+\))", lambda m: WORDS[m[1].lower()]),
        (r"\b(\d+)\s*\(\1\)", r"\1"),
        (r"\ban? (hour|minute|day|week|month)\b(?! or more)", r"1 \1"),
        (r"\b(?:one[- ]half|half an?) (inch|mile|pint|quart|gallon)", r"1/2 \1"),
        (r"\b(?:a|one)[- ]quarter(?: of an?)? (hour|inch|mile|pint|gallon)|\ba quarter (hour)", lambda m: "15 minutes" if (m[1] or m[2]).lower() == "hour" else f"1/4 {m[1]}"),
        (r"\bhalf an hour\b", "30 minutes"),
        (r"\b(?:milliliters?|millilitres?|cc)\b", "mL"),
        (r"(?<=\d,) (?=\d{3}\b)", ""),
        (r"\s*\bper ?cent\b(?!age)", " %"),
        (r"miles (?:per|an) hour|\bm\.?p\.?h\b\.?", "mph"),
        (r"(?:°|º|\bdegrees?)\s*(F|C)(?:ahrenheit|elsius)?\b", r" \1"),
        (r"\b(?:acid equivalents?|a\.e\.?|ae)(?=\W|$)(?:\s*\((?:a\.?e\.?)\))?", "ae"),
        (r"\b(?:active ingredients?|a\.i\.?)(?=\W|$)(?:\s*\((?:a\.?i\.?)\))?", "ai"),
        (r"\b(?:fluid ounces?|fl\.? ?ozs?\.?|fl\.? ounces?)(?=\W|$)", "fl oz"),
        (r"\b(?:pounds?|lbs?\.?)(?=\W|$)", "lb"),
        (r"\b(?:gallons?|gals?\.?)(?=\W|$)", "gal"),
        (r"\b(?:quarts?|qts?\.?)(?=\W|$)", "qt"),
        (r"\b(?:pints?|pts?\.?)(?=\W|$)", "pt"),
        (r"/\s*A\b|/\s*acre\b|\bper treated acre\b", " per acre"),
        (r"/\s*(?:calendar )?y(?:ea)?r\b", " per year"),
        (r"\s+", " "),
    )
)  # fmt: skip


@lru_cache(maxsize=1024)
def alike(text: str) -> str:
    """A sentence with numbers as digits and units under one name each: "five (5) minutes" is "5 minutes"."""
    for sign, spelled in _FRACTIONS.items():
        if sign in text:
            text = re.sub(rf"(\d)\s*{sign}", rf"\1 {spelled}", text).replace(sign, spelled)
    for pattern, new in _RULES:
        text = pattern.sub(new, text)
    return text.strip()
