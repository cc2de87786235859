"""Words and figures as labels write them: numbers, units, ways, places, equipment, states."""

import re

NUMBER = r"(?:\d+[\s-]+\d+/\d+|\d+/\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d*\.?\d+)"
TIME = re.compile(rf"({NUMBER})\s*[- ]?(hours?|hrs?|days?|weeks?|months?|minutes?)\b", re.I)
SPEED = re.compile(rf"({NUMBER})\s*(mph|miles per hour|km/h)", re.I)
TEMPERATURE = re.compile(rf"(-?{NUMBER})\s*(?:°|degrees?)?\s*([FC])(?:ahrenheit|elsius)?\b")
DISTANCE = re.compile(rf"({NUMBER})[\s-]*(feet|foot|ft\.?|'|yards?|meters?|m)(?=\W|$)", re.I)
SHARE = rf"{NUMBER}(?:\s*(?:to|-|–)\s*{NUMBER})?\s*%(?:\s*v/v)?"
RATE = re.compile(
    rf"(?P<n>{NUMBER})\s*(?P<unit>pounds?|lbs?\.?|kg|g|ounces?|fl\.? ?oz|oz|pints?|pts?|quarts?|qts?|gallons?|gals?)"
    r"\s*(?:of\s*)?(?P<of>a\.?e\.?|a\.?i\.?|acid equivalent|active ingredient)?",
    re.I,
)
NEGATED = re.compile(r"\b(?:do not|don't|not|never|avoid|except)\b", re.I)
ADVICE = re.compile(r"\b(?:should|may|recommend(?:ed|s)?|for best results|can)\b", re.I)
CONDITION = re.compile(r"\b(?:unless|except|if|when(?!\s+(?:rain|wind))|provided|otherwise)\b", re.I)

METHODS = (
    ("cut stump", re.compile(r"cut[- ]?stump|cut[- ]?surface|\bstumps?\b|cut surfaces?", re.I)),
    ("basal bark", re.compile(r"\bbasal\b(?! (?:diameter|area))|\bbasal bark\b", re.I)),
    ("hack and squirt", re.compile(r"hack[- ]?(?:and|&|n)[- ]?squirt|\bfrills?\b|tree injection|\binject(?:ion|ions|ed)?\b", re.I)),
    ("foliar", re.compile(r"\bfoliar\b|\bfoliage\b|leaf spray|\bto leaves\b", re.I)),
    ("girdle", re.compile(r"\bgirdl(?:e|ing)\b", re.I)),
)  # fmt: skip
PLACES = (
    ("woods", re.compile(r"\bforests?\b|\bforestry\b|\bwoodlands?\b|\bwoods\b|\btimber\b|wildlife (?:openings|habitat)", re.I)),
    ("non-crop", re.compile(r"non-?crop(?:land)?s?|non-?agricultural|natural areas?|industrial|fence ?rows?", re.I)),
    ("right-of-way", re.compile(r"rights?-? ?of-? ?ways?|roadsides?|utility|railroads?", re.I)),
    ("pasture", re.compile(r"\bpastures?\b|\brangelands?\b|\brange\b|grazed", re.I)),
    ("crop", re.compile(r"(?<!non-)(?<!non)\bcrops?\b(?!land)|\borchards?\b|\bvineyards?\b|\bgardens?\b", re.I)),
    ("yard", re.compile(r"\blawns?\b|\byards?\b|\bhomes?\b|residential|landscapes?|\bornamentals?\b|\bturf\b", re.I)),
    ("wet", re.compile(r"\bwetlands?\b|\baquatic\b|\bshores?\b|\bmarsh(?:es)?\b|\bswamps?\b|riparian|water'?s edge|ditch ?banks?", re.I)),
)  # fmt: skip
ANY_PLACE = re.compile("|".join(pattern.pattern for _, pattern in PLACES), re.I)
"""A quick look whether any is named at all."""
EQUIPMENT = (
    ("long-sleeved shirt", re.compile(r"long[- ]sleeved? shirt", re.I)),
    ("long pants", re.compile(r"long pants|long-legged", re.I)),
    ("shoes and socks", re.compile(r"shoes? (?:plus|and|&) socks|socks (?:plus|and) shoes", re.I)),
    ("coveralls", re.compile(r"coveralls?", re.I)),
    ("waterproof gloves", re.compile(r"waterproof gloves?", re.I)),
    ("chemical-resistant gloves", re.compile(r"chemical[- ]resistant gloves?", re.I)),
    ("protective eyewear", re.compile(r"protective eye ?wear|safety glasses|eye protection", re.I)),
    ("goggles", re.compile(r"goggles", re.I)),
    ("face shield", re.compile(r"face ?shield", re.I)),
    ("chemical-resistant apron", re.compile(r"(?:chemical[- ]resistant )?apron", re.I)),
    ("chemical-resistant headgear", re.compile(r"(?:chemical[- ]resistant )?headgear", re.I)),
    ("chemical-resistant footwear", re.compile(r"chemical[- ]resistant (?:footwear|boots)", re.I)),
    ("respirator", re.compile(r"respirator", re.I)),
)  # fmt: skip
MATERIALS = (
    ("barrier laminate", re.compile(r"barrier laminate", re.I)),
    ("butyl rubber", re.compile(r"butyl", re.I)),
    ("nitrile rubber", re.compile(r"nitrile", re.I)),
    ("neoprene rubber", re.compile(r"neoprene", re.I)),
    ("natural rubber", re.compile(r"natural rubber", re.I)),
    ("polyethylene", re.compile(r"polyethylene", re.I)),
    ("polyvinyl chloride", re.compile(r"polyvinyl chloride|\bpvc\b", re.I)),
    ("fluoroelastomer", re.compile(r"fluoroelastomer", re.I)),
)  # fmt: skip
_NAMES = {
    "AL": "Alabama", "AK": "Alaska", "AZ": "Arizona", "AR": "Arkansas", "CA": "California", "CO": "Colorado",
    "CT": "Connecticut", "DE": "Delaware", "FL": "Florida", "GA": "Georgia", "HI": "Hawaii", "ID": "Idaho",
    "IL": "Illinois", "IN": "Indiana", "IA": "Iowa", "KS": "Kansas", "KY": "Kentucky", "LA": "Louisiana", "ME": "Maine",
    "MD": "Maryland", "MA": "Massachusetts", "MI": "Michigan", "MN": "Minnesota", "MS": "Mississippi",
    "MO": "Missouri", "MT": "Montana", "NE": "Nebraska", "NV": "Nevada", "NH": "New Hampshire", "NJ": "New Jersey",
    "NM": "New Mexico", "NY": "New York", "NC": "North Carolina", "ND": "North Dakota", "OH": "Ohio", "OK": "Oklahoma",
    "OR": "Oregon", "PA": "Pennsylvania", "RI": "Rhode Island", "SC": "South Carolina", "SD": "South Dakota",
    "TN": "Tennessee", "TX": "Texas", "UT": "Utah", "VT": "Vermont", "VA": "(?<!West )Virginia", "WA": "Washington",
    "WV": "West Virginia", "WI": "Wisconsin", "WY": "Wyoming",
}  # fmt: skip
STATES = tuple(_NAMES.items())
ANY_STATE = re.compile(rf"\b(?:{'|'.join(_NAMES.values())})\b")
"""A quick look whether any is named at all."""
