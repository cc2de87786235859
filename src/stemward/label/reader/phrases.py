"""Words and figures as labels write them: numbers, units, ways, places, equipment, states."""

import re

NUMBER = r"(?:\d+[\s-]+\d+/\d+|\d+/\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d*\.?\d+)"
TIME = re.compile(rf"({NUMBER})\s*[- ]?(hours?|hrs?|h|days?|weeks?|months?|minutes?|mins?)\b", re.I)
SPEED = re.compile(rf"({NUMBER})[\s-]*(mph|km/h)", re.I)
TEMPERATURE = re.compile(rf"(?<![\d-])(-?{NUMBER})\s*([FC])\b")
DISTANCE = re.compile(rf"({NUMBER})[\s-]*(feet|foot|ft\.?|'|yards?|miles?|meters?|m)(?=\W|$)", re.I)
LENGTH = rf"({NUMBER})[\s-]*(inches|inch|in\.?|cm)(?=\W|$)"
VOLUME = rf"({NUMBER})\s*(fl oz|oz|pt|qt|gal|mL|liters?|L|teaspoons?)\b"
RANGE = r"\s*(?:to|-|through|and)\s*"
SHARE = rf"{NUMBER}(?:\s*%?\s*(?:to|-)\s*{NUMBER})?\s*%(?:\s*v/v)?"
RATE = re.compile(rf"(?P<n>{NUMBER})\s*(?P<unit>lb|kg|g|oz|fl oz|pt|qt|gal)\b", re.I)
NEGATED = re.compile(r"\b(?:do not|don't|not|never|avoid|except|cannot|must not)\b", re.I)
FORBIDS = (
    r"\b(?:do not|don't|must not|may not|(?:must|may|shall) never|never|no longer (?:permitted|allowed|registered)|ruled out|avoid|should not|shall not|cannot|not to be|not be (?:applied|made|used|mixed|combined|sprayed|put|attempted|painted|injected|"
    r"stored|treated|shorter|longer)|(?:is|are) (?:prohibited|forbidden|unlawful|not (?:allowed|permitted))|not (?:allowed|permitted)|(?<!not )prohibited|"
    r"(?<!not )(?<!never )forbidden|unlawful|contrary to (?:the |this )?label|violation of (?:the |this )?label|under no circumstances|in no case|not for (?:\w+ ){0,3}(?:use|application|treatment)s?\b|not authori[sz]ed|against (?:the |this )?label|no (?!more|less|fewer)(?:[\w-]+ ){0,2}(?:applications?|treatments?|sprays?|injections?)\b|no (?:applications?|treatments?|use|spraying|entry|application methods?)\b|keep [^.;]{0,30}\bout of)"
)
YES_NO = re.compile(
    r"([\w ,/-]{3,40}?)\s*(?:[:|]|;(?: ?[\w ]{2,20}:)?)\s*(?:use )?(yes|no|not permitted|not allowed|not registered|do not use|not for use|allowed|permitted|prohibited)(?=\W*(?:$|[|;.]))",
    re.I,
)
"""Rows or marks that allow or forbid one by one: "Foliar: no"."""
ADVICE = re.compile(
    r"\b(?:should|may(?! not\b| be (?:used|applied|made|treated|mixed|tank|grafted|shared|connected)| extend| share)|recommend(?:ed|s)?|for best results|best results|can(?! be (?:used|applied))|suggested|preferabl[ey]|optimum|optimal)\b",
    re.I,
)
HARD = re.compile(r"\b(?:unless|except(?! stainless)|provided (?:that)?|otherwise|only if|with the exception)\b", re.I)
SOFT = re.compile(
    r"\b(?:if|where|when (?:used|applied|mixed|treating|handling|applying|spraying|using)|for (?:overhead )?exposure|when (?:\w+ )?exposure)\b",
    re.I,
)
"""Conditions: after the first a figure is never sure, after the second only where the condition is the limit itself."""
ELSEWHERE = re.compile(
    r"\b(?:see|refer to|as (?:described|specified|given|listed) in|consult)\b[^.]{0,60}\b(?:section|table|chart|label|booklet|page|directions)\b",
    re.I,
)

OTHER_MATTER = re.compile(
    r"\b(?:burn(?:s|ing|ed)?|mow(?:s|ing|ed|n)?|fell(?:ing|ed|s)?|(?:chain ?)?saws?|chippers?|ladders?|climb\w*|drill(?:s|ed|ing)?|reseed\w*|sow(?:ing|n|s)?|seedings?|refuel\w*|two-stroke|crankcase|hydraulic|"
    r"batter(?:y|ies)|smoke|ignition|trailheads?|hunters?|tags|nails|lime|ammonia|prun(?:e|ed|ing)|plow\w*|harvest(?:er|ing) equipment|pull(?:s|ed|ing)?|loppers?|lopped|dig|dug|uproot\w*|gauge|radio)\b",
    re.I,
)
OUR_MATTER = re.compile(
    r"\b(?:products?|herbicides?|appl(?:y|ied|ying|ications?|icators?)|treat(?:s|ed|ing|ments?)?|spray(?:s|ed|ing|ers?)?|dilut\w*|inject\w*|solutions?|mixtures?|paint(?:ed|ing)?|wet(?:ted|ting)?)\b",
    re.I,
)
"""Words of other work in the woods; words of treating. A sentence with the first alone says nothing of the product."""
NOT_THIS = re.compile(
    r"\bthe (?:word|term)\b(?! on)|\bas (?:the|that) term\b|(?<!\ba )(?<!\bany )(?<!\bby )(?<!\bother )\bmeans\b(?! (?:other|of|given|listed|described|named|by|not)\b)|\b(?:is defined|are defined|defined as|stands for|is called)\b|^\W*[\"“][^\"”]{3,30}[\"”]|"
    r"\b(?:partner(?:'s)?(?: label)? (?:is|has|may|prints?|shows?|carries|limits?)|its own label|(?:labels?|directions) of other|of other makers|other labels|sold abroad|formulations sold)\b",
    re.I,
)
"""Sentences that tell what a word means, or speak of another product."""
TALK = re.compile(
    r"\b(?:trials?|plots?|stud(?:y|ies)|research|laborator(?:y|ies)|publish(?:ed|es)?|universit\w+|photograph\w*|fact sheets?|discount|rebate|bids|pallets|gauges?|strainers?|pitchers?|learn|hydrologists|for reference|is a word|"
    r"the terms|this section was|belong to one family|greenhouse|claims that)\b",
    re.I,
)
"""Sentences that tell of trials, studies, trade or words, and rule nothing."""
AERIAL = re.compile(r"^\W*(?:\w+ ){0,3}(?:aircraft|helicopters?|airplanes?|pilots?)\b", re.I)
"""Work from the air, whose limits are not those of work by hand."""

METHODS = (
    ("cut stump", re.compile(r"cut[- ]?stump|cut[- ]?surface|\bstumps?\b|cut surfaces?|fresh(?:ly)?[- ]cut", re.I)),
    ("basal bark", re.compile(r"\bbasal\b(?! (?:diameter|area|sprouts?|oil))|\bbasal bark\b|\bthin ?-?line\b|\bstreamline\b", re.I)),
    ("hack and squirt", re.compile(r"hack[- ]?(?:and|&|n)[- ]?squirt|\bfrills?\b(?!-girdl)|\bfrilling\b|tree injection|\binject(?:ion|ions|ed)?\b", re.I)),
    ("foliar", re.compile(r"\bfoliar\b|\bfoliage\b|leaf spray|\b(?:to|on) (?:the )?leaves\b|spray(?:ing|ed)? (?:the )?(?:leaves|foliage)", re.I)),
    ("girdle", re.compile(r"\b(?:frill-)?girdl(?:es?|ing)\b", re.I)),
)  # fmt: skip
METHOD_WORDS = ("stump", "cut", "basal", "line", "hack", "frill", "inject", "foli", "leaf", "leaves", "girdl")
"""Letters of which some stand in the name of any way, for a quick look."""
DONE = re.compile(
    r"\b(?:treat(?:ment|ments|ed)?|appl(?:y|ied|ication|ications)|may be used|for use|sprays?(?:ed)?|permitted|can be used|use as|suit(?:ed|able)|effective|works|labell?ed|approved)\b",
    re.I,
)
"""Words of a sentence that speaks of treating."""
PLACES = (
    ("woods", re.compile(r"\bforests?\b|\bforestry\b|\bwoodlands?\b|\bwoods\b|\btimber\b|\bwood ?lots?\b|wildlife (?:openings|habitat)|tree plantations?|conifer release|site preparation|grown for timber|tree farms?", re.I)),
    ("non-crop", re.compile(r"non-?\s?crop(?:land)?s?|non-?agricultural (?:areas?|land|sites?)|natural areas?|industrial (?:areas?|sites?)|fence ?-?rows?|vacant lots|parks\b|\bparklands?\b|open space|conservation (?:areas?|land)|storage (?:areas?|yards?)|airports?|lumber ?yards?|industrial yards?", re.I)),
    ("right-of-way", re.compile(r"rights?\s?-? ?of\s?-? ?ways?|\broadsides?\b|utility (?:lines?|corridors?)|\brailroads?\b|pipelines?|power ?-?lines?|transmission lines?", re.I)),
    ("pasture", re.compile(r"\bpastures?\b|\brange ?lands?\b|\brange\b(?! of)|graz(?:ed|ing) (?:areas?|lands?)|permanent grass|\bCRP\b", re.I)),
    ("crop", re.compile(r"(?<!non-)(?<!non)(?<!non )\bcrop ?lands?\b|(?<!non-)(?<!non)(?<!non )\bcrops?\b(?! ?land)|\borchards?\b|\bvineyards?\b|\bgardens?\b|\bvegetable (?:fields?|plots?)", re.I)),
    ("yard", re.compile(r"\blawns?\b|(?<!industrial )(?<!lumber )(?<!tank )(?<!storage )(?<!rail )\byards?\b|\bhomes?\b|\bhomeowners?\b|residential|residences?|\bornamentals?\b|\bturf\b|landscap(?:es?|ing)|\bplaygrounds?\b|\bdwellings?\b", re.I)),
    ("wet", re.compile(r"\bwet ?lands?\b|\baquatic (?:sites?|areas?)|\bshores?\b|shorelines?|\bmarsh(?:es)?\b|\bswamps?\b|\bbogs?\b|riparian|water'?s edge|(?:ditch|stream|canal) ?banks?|\bbanks?\b[^.;,]{0,25}\b(?:ditch|canal|channel)(?:es|s)?\b|banks? of (?:ponds?|streams?|lakes?|rivers?|canals?|ditches)|flood ?plains?", re.I)),
)  # fmt: skip
PLACE_WORDS = (
    "forest", "wood", "timber", "wildlife", "plantation", "conifer", "site prep", "tree farm", "crop", "agricultur", "natural area", "industrial", "fence", "vacant", "park",
    "open space", "conservation", "storage", "airport", "lumber", "way", "road", "utility", "line", "pasture", "range", "graz", "grass", "crp", "orchard", "vineyard", "garden",
    "lawn", "yard", "home", "residen", "ornamental", "turf", "landscap", "playground", "dwelling", "vegetable", "ditch", "canal", "wet", "aquatic", "shore", "marsh", "swamp", "bog", "riparian", "edge", "bank", "flood",
)  # fmt: skip
"""Letters of which some stand in the name of any of these places, for a quick look."""
ANY_PLACE = re.compile("|".join(pattern.pattern for _, pattern in PLACES), re.I)
EQUIPMENT = (
    ("long-sleeved shirt", re.compile(r"(?:long|full)[- ](?:length )?sleeved? (?:\w+ )?shirts?|shirts? (?:with|having|that has) (?:long|full|full-length) sleeves|\bL/S shirts?", re.I)),
    ("long pants", re.compile(r"(?:long|full-length|ankle-length) (?:\w+ )?(?:pants|trousers)|long-legged|(?:pants|trousers) (?:reaching|that reach|down) to the ankles?", re.I)),
    ("shoes and socks", re.compile(r"shoes?,? (?:plus|and|&|with|\+) socks|socks,? (?:plus|and|&|with) (?:closed )?shoes|\bsocks\b(?=[^.]*\bshoes\b)|\bshoes?\b(?=[^.;]{0,25}\bsocks\b)", re.I)),
    ("coveralls", re.compile(r"\bcoveralls?\b|\bcover-alls?\b", re.I)),
    ("waterproof gloves", re.compile(r"water-?\s?proof gloves?|gloves?(?:,| that are| which are| made)? (?:\w+ )?water-?proof", re.I)),
    ("chemical-resistant gloves", re.compile(r"chemical[- ]\s?resistant(?: or waterproof)? gloves?|gloves?,? (?:(?:that|which) are )?(?:chemical[- ]resistant|resistant to chemicals)|(?:rubber|nitrile|butyl|neoprene|laminate|pvc) gloves", re.I)),
    ("protective eyewear", re.compile(r"protective eye ?-?wear|safety glasses|eye protection|eye-?wear|protect (?:the |your )?eyes", re.I)),
    ("goggles", re.compile(r"\bgoggles\b", re.I)),
    ("face shield", re.compile(r"\bface ?-?shields?\b", re.I)),
    ("chemical-resistant apron", re.compile(r"\baprons?\b", re.I)),
    ("chemical-resistant headgear", re.compile(r"\bhead ?-?gear\b|chemical[- ]resistant (?:hat|hood)", re.I)),
    ("chemical-resistant footwear", re.compile(r"chemical[- ]resistant (?:footwear|boots|shoes)|\bfootwear\b|\bboots? (?:resistant to|that (?:resist|withstand)) chemicals", re.I)),
    ("respirator", re.compile(r"\brespirators?\b|\bfiltering facepiece", re.I)),
)  # fmt: skip
MATERIALS = (
    ("barrier laminate", re.compile(r"barrier laminate|\blaminate\b", re.I)),
    ("butyl rubber", re.compile(r"\bbutyl\b", re.I)),
    ("nitrile rubber", re.compile(r"\bnitrile\b", re.I)),
    ("neoprene rubber", re.compile(r"\bneoprene\b", re.I)),
    ("natural rubber", re.compile(r"natural rubber", re.I)),
    ("polyethylene", re.compile(r"polyethylene", re.I)),
    ("polyvinyl chloride", re.compile(r"poly ?vinyl ?chloride|\bpvc\b", re.I)),
    ("fluoroelastomer", re.compile(r"fluoro-?elastomer", re.I)),
)  # fmt: skip
PLANT_NOUNS = re.compile(
    r"\b(?:alders?|arrowwood|ash(?:es)?|aspens?|autumn[- ]olives?|bald ?cypress|bamboos?|barberr(?:y|ies)|basswoods?|beech(?:es)?|birch(?:es)?|bittersweet|blackberr(?:y|ies)|blackgum|black gum|box ?-?elders?|"
    r"brambles?|brooms?|buckthorns?|buttonbush|camphor ?trees?|catalpas?|ceanothus|cedars?|cherr(?:y|ies)|chestnuts?|chinaberr(?:y|ies)|chokecherr(?:y|ies)|corktrees?|cottonwoods?|creepers?|cypress|"
    r"deerbrush|dewberr(?:y|ies)|dogwoods?|elaeagnus|elderberr(?:y|ies)|elders?|elms?|eucalyptus|firs?|gorse|grapes?|grapevines?|greenbriers?|guavas?|gums?|hackberr(?:y|ies)|hawthorns?|hazels?|hemlocks?|hickor(?:y|ies)|"
    r"holl(?:y|ies)|honey ?locusts?|honeysuckles?|hophornbeams?|hornbeams?|huckleberr(?:y|ies)|huisache|iv(?:y|ies)|ironwoods?|juniper|junipers|kudzu|laurels?|lilacs?|locusts?|madrones?|magnolias?|manzanitas?|maples?|"
    r"melaleuca|mesquites?|mimosas?|mulberr(?:y|ies)|multiflora rose|myrtles?|oaks?|olives?|osage[- ]orange|palmettos?|paulownia|pawpaws?|pears?|pecans?|pepper ?trees?|persimmons?|pines?|plums?|poison[- ](?:ivy|oak|sumac)|"
    r"poplars?|princess ?trees?|privets?|raspberr(?:y|ies)|redbuds?|red ?cedars?|rhododendrons?|roses?|russian[- ]olives?|sage ?brush|salmonberr(?:y|ies)|salt ?-?cedars?|sassafras|serviceberr(?:y|ies)|silktrees?|sourwoods?|"
    r"spicebush|spruces?|sugarberr(?:y|ies)|sumacs?|sweet ?gums?|sycamores?|tallow ?-?trees?|tamarisks?|tanoaks?|thimbleberr(?:y|ies)|trees? ?-?of ?-?heaven|trumpet ?-?creepers?|tulip ?trees?|tupelos?|viburnums?|virginia[- ]creeper|"
    r"walnuts?|chinkapins?|chinquapins?|snowberr(?:y|ies)|buckbrush|chamise|coyotebrush|carrotwoods?|acacias?|schefflera|lead tree|paloverdes?|burning ?bush|trumpet ?creepers?|tallow ?trees?|brazilian peppers?|wax ?myrtles?|willows?|wintercreepers?|wisterias?|witch ?-?hazels?|yaupon|yellow-?poplars?|ailanthus|(?:chinese )?tallow)$",
    re.I,
)
"""The last word of common names of woody plants: those of the handbook's list, and others from memory."""
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
ANY_STATE = re.compile(rf"\b(?:{'|'.join((*_NAMES.values(), *(name.upper() for name in _NAMES.values())))})\b")
"""A quick look whether any is named at all."""
