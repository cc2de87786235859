"""Water, wells, animals; partners and vessels of a mix; storage and disposal; hazards to the surroundings."""

import re
from collections.abc import Sequence

from stemward.label.reader.phrases import DISTANCE, FORBIDS, NUMBER, SHARE, TEMPERATURE, TIME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_WATER = r"(?<!ground )(?<!ground-)\bwaters?\b(?! supply)(?! wells?)(?! ?(?:-| )?(?:soluble|based))|\bstreams?(?: ?banks?)?\b|\blakes?\b|\bponds?\b|\bshores?\b|\bwetlands?\b|\brivers?\b|\bcreeks?\b|\breservoirs?\b|\bsprings\b|\bdrainage|\bcanals?\b|\bbrooks?\b|\bestuar\w+|\bbayous?\b|\bsloughs?\b"
_KEPT = r"within|\bshort of\b|\bunder\b|\binside\b|\bcome\b|\bnear\b|\bdistance\b|\bcloser\b|\bnearer\b|prohibited|at least|\bleave\b|\bkeep\b|\bfrom\b|untreated|\bbuffers?\b|set-?backs?|\bmaintain\b|closer than|\bclosest\b|\bminimum\b|\bstay\b|\bback\b|less than|away"


_WELLS = (
    r"\bwell(?:s|heads?)\b|\bcisterns?\b|\b(?:an?|any|each|every|the|this|that|water|domestic|drinking|private|public|abandoned|cased|open|supply|near(?:est)?|from|of|to) well\b(?! as\b| beyond\b|-)|"
    r"(?<!as )\bwell\b(?= ?(?:[:|]|set-?back|head|casing))"
)
_MIXES = r"\bmix(?:ed|ing|es)?\b|\bfill(?:ed|ing)?\b|\bhandl(?:e|ed|ing)\b|\bload|\brins|\bstore[ds]?\b|\bclean|\bwash"
_APPLIES = r"\bappl(?:y|ied|ications?)\b|\btreat|\bspray(?:ing|ed)?\b|\bused?\b"
_RULED = rf"{FORBIDS}|\bmust\b|\bkeep\b|\bleave\b|\bmaintain\b|at least|\bbuffers?\b|set-?backs?|\bminimum\b|\bdistance\b|closer than|\bstay\b|untreated|\baway\b|\bor more\b|\bhave to\b|\b(?:needs?|required?|requires)\b|\bno (?:nearer|closer)\b|\bfarther\b|\boff limits\b|\bshall\b|\bclosest\b|(?:not|no) (?:less|closer|nearer) than|\bnot (?:be )?treated\b"


_INTAKE = re.compile(
    r"\bwater table\b[^.;,]{0,40}?[\d.]+ (?:feet|ft)\b(?: from the surface)?|\b(?:upstream of )?(?:an? )?(?:active )?(?:potable|drinking|public|domestic|municipal)?(?: water)?(?:[- ]supply)? ?intakes?(?: in [^,.;]*)?",
    re.I,
)
"""Where a town takes its water: a distance of its own, and none to every water."""
MOST_ROW = 60
"""A longer line under heads is no row: engineering guess."""
_NO_DISTANCE = re.compile(
    r"\b(?:does|do) not apply to\b|\bexempt\b|\bno (?:buffer|setback|distance)\b|\bnot required\b|\bbystanders?\b", re.I
)
"""Sentences that lift a rule on distances, or are on other ones."""


def water(s: Said) -> Hits:
    """Distances to water and to wells, when applying and when mixing: each figure for what stands nearest to it."""
    if s.part in ("warranty", "letter", "first aid") or not re.search(_KEPT, s.whole, re.I):
        return
    text = _INTAKE.sub("", s.text)
    found = list(DISTANCE.finditer(text))
    row = re.search(r"\b(?:from|distance|feet|buffer|set-?back|near)\b", s.under, re.I) and len(text) < MOST_ROW
    if not found or not (s.has(_RULED) or s.sentence.cell or row) or _NO_DISTANCE.search(s.text):
        return
    odd = re.search(r"upstream|droplet|height|tall|deep|depth", s.text, re.I)
    at_mixing = bool(re.search(_MIXES, s.text, re.I))
    at_applying = not at_mixing or bool(
        re.search(rf"(?:{_MIXES})[^.;]{{0,20}}\bor\b[^.;]{{0,12}}(?:{_APPLIES})", s.text, re.I)
    )
    for n, m in enumerate(found):
        tail = text[m.end() : found[n + 1].start() if n + 1 < len(found) else len(text)]
        head = text[found[n - 1].end() if n else 0 : m.start()]
        what = _nearest(tail, head) or _nearest("", s.under) or _only_place(text)
        if re.search(r"\bup to\s*$", head, re.I) and not re.match(r"\s*from\b", tail):
            continue
        # "Mix at least 50 ft, and apply at least 25 ft, from wells": of two figures each has its own work.
        own = (bool(re.search(_MIXES, head, re.I)), bool(re.search(_APPLIES, head, re.I)))
        mixing, applying = own if len(found) > 1 and own.count(True) == 1 else (at_mixing, at_applying)
        most: Sure = "unsure" if odd or (len(found) > 1 and len(found) != len({x[1] for x in found})) else "sure"
        value = f"{m[1]} {_far(m[2])}"
        if what == "wells":
            if mixing:
                yield Hit("mixing distance to wells", value, most)
            if applying:
                yield Hit("distance to wells", value, most)
        elif what == "water" and applying:
            yield Hit("distance to water", value, most)
        if what and len(found) == 1 and applying and not mixing:
            # "Stay 10 feet away from water and from wells": one figure for both.
            both = re.search(
                rf"(?:{_WELLS})[^.;]{{0,20}}\b(?:and|or)\b[^.;]{{0,20}}(?:{_WATER})|(?:{_WATER})[^.;]{{0,30}}\b(?:and|or)\b[^.;]{{0,20}}(?:{_WELLS})",
                s.text,
                re.I,
            )
            if both:
                yield Hit("distance to water" if what == "wells" else "distance to wells", value, most)


def _nearest(tail: str, head: str) -> str:
    """What a distance is kept from: the first that is named behind it, else the last before it; "" for neither."""
    for text, last in ((tail, False), (head, True)):
        places = [
            (m.start(), name)
            for name, pattern in (("wells", _WELLS), ("water", _WATER))
            for m in re.finditer(pattern, text, re.I)
        ]
        if places:
            return (max if last else min)(places)[1]
    return ""


def _only_place(text: str) -> str:
    """What a sentence keeps from, where it names one of the two alone; else ""."""
    named = {name for name, pattern in (("wells", _WELLS), ("water", _WATER)) if re.search(pattern, text, re.I)}
    return named.pop() if len(named) == 1 else ""


def _far(unit: str) -> str:
    first = unit.lower()
    return (
        "mi"
        if first.startswith("mi")
        else "ft"
        if first.startswith(("f", "'"))
        else "yd"
        if first.startswith("y")
        else "m"
    )


_HAY = re.compile(r"\bhay(?:ing|ed)?\b|\bcut(?:ting)? (?:of )?forage|\bharvest|\bbal(?:e|ed|ing)\b|\bfodder\b", re.I)
_GRAZE = re.compile(r"\bgraz|\blivestock\b|\banimals?\b|\bcattle\b|\bfeed(?:ing)?\b|\bturning in\b|\bpastured\b", re.I)


def _time_of(what: re.Pattern[str], times: Sequence[re.Match[str]], text: str) -> str:
    """The time that stands nearest to a word of the matter: "grazing 14 days, hay 30 days"."""
    at = [m.start() for m in what.finditer(text)]
    m = min(times, key=lambda t: min((abs(t.start() - one) for one in at), default=0)) if len(times) > 1 else times[0]
    return f"{m[1]} {m[2].lower()}"


def animals(s: Said) -> Hits:
    """How long animals do not graze, and how long no hay is cut."""
    rest = re.sub(
        r"(?:,? and )?(?:\bmeat )?\b(?:livestock|animals|cattle)\b[^,;]*\bslaughter\b[^,;]*", "", s.text, flags=re.I
    )
    if re.search(
        r"slaughter|\bmoved?\b(?! to)|\bmove\b|\bahead of\b|\bbefore treat|\brotate\b|\bseedings?\b|\bsowing\b|\btransfer|manure|compost|\burine|\bmulch|untreated pasture|before (?:being )?(?:moved|moving)",
        rest,
        re.I,
    ):
        return
    if s.part in ("equipment", "farm workers", "others", "first aid", "warranty", "letter"):
        return
    # "GRAZING AND HAY: No grazing ..." speaks of grazing.
    text = re.sub(r"\b1 years?\b", "12 months", re.sub(r"^[A-Z][A-Z &/,]+:\s", "", rest))
    times = list(TIME.finditer(text))
    if not times:
        return
    most: Sure = (
        "unsure"
        if len({t[1] for t in times}) > 1 or re.search(r"dairy|lactating|\bless than\b.*\b(?:acre|%)", s.text, re.I)
        else "sure"
    )
    hay = re.search(
        r"\bhay(?:ing|ed)?\b|\bcut(?:ting)? (?:of )?forage|\bharvest|\bbal(?:e|ed|ing)\b|\bfodder\b", text, re.I
    )
    graze = re.search(r"\bgraz|\blivestock\b|\banimals?\b|\bcattle\b|\bfeed(?:ing)?\b", text, re.I)
    if re.search(r"\bno (?:waiting|restriction)", s.text, re.I) and not re.search(r"\bbut\b", s.text):
        return
    if re.search(r"\beasiest\b|\bbest\b|\bdrink\b", s.text, re.I) and not re.search(FORBIDS, s.text, re.I):
        return
    at_once = re.search(
        r"\bno grazing restrictions?\b|\bgraz\w*[^.;,]*\b(?:allowed|permitted|may (?:go on|continue)|at once|any time|no (?:waiting|wait|restriction))|\bmay (?:be )?graze",
        s.text,
        re.I,
    )
    if hay:
        yield Hit("hay wait", _time_of(_HAY, times, text), most)
    if hay and at_once:
        return
    if graze and (not hay or re.search(r"\bgraz", text, re.I)):
        yield Hit("grazing wait", _time_of(_GRAZE, times, text), most)


_VESSELS = (
    (
        "unlined steel",
        r"unlined[^.;]{0,30}steel|steel[^.;]{0,30}unlined|(?<!stainless )(?<!galvanized )(?<!galvanised )\bsteel\b",
    ),
    ("galvanised steel", r"galvani[sz]ed"),
    ("aluminium", r"alumin(?:i)?um"),
)


_HOURS = rf"({NUMBER})[\s-]*(hours?|days?|hrs?|h)\b"
_KEPT_SO_LONG = re.compile(
    rf"\b(?:within|over|longer than|more than|after|at most|every|stays?|life|keeps?|in|for|older than|last(?:s|ing)?)\b[^.;\d]{{0,25}}?:?\s*{_HOURS}|{_HOURS}[^.;]{{0,20}}\b(?:at most|is the longest|or less|old)\b",
    re.I,
)


_ADDITIVE = re.compile(
    r"\b((?:(?:non-?ionic|organo-?silicone|silicone|aquatic-approved|approved|nonylphenol|methylated seed oil|silicone-based) )?surfactants?|(?:crop oil concentrate|crop oil|methylated seed oil|spreader-sticker|wetting agent|penetrant|thickener|"
    r"drift control (?:agent|additive)|drift retardant|antifoam|ammonium sulfate|adjuvant|organosilicone|NIS|MSO|COC|AMS)s?)\b",
    re.I,
)
_ADDITIVE_BARRED = re.compile(
    rf"{FORBIDS}|\bno (?:adjuvant|additive|additional|surfactant)s?\b[^.;]*\b(?:may|is|are|added)\b|\bnever\b|\bleave out\b|\bkept out\b|\bnot allowed\b",
    re.I,
)
_ADDITIVE_ASKED = re.compile(
    r"\b(?:must|shall|required?|requires|always|mandatory|have to|has to|is to be|every tank gets)\b|^\W*(?:\d\W+)?(?:include|add|use|mix in)\b|\binclude\b",
    re.I,
)


_GENERIC = ("adjuvant", "adjuvants", "surfactant", "surfactants")
_PASSIVE = r"\b(?:must|shall|may|should|can) ?not\b|\b(?:is|are) (?:not|never|prohibited|forbidden)\b|\bnot (?:allowed|permitted|to be)\b|\bprohibited\b|\bkept out\b|\bleft out\b"


def _share_of(name: str, text: str) -> str:
    """The share that stands behind an additive's name, or right before it; "" for none."""
    own = re.escape(name)
    m = re.search(rf"{own}[^.;]*?({SHARE})|({SHARE})\s*(?:of )?(?:an? )?{own}", text, re.I)
    return (m[1] or m[2]) if m else ""


def _added(text: str) -> Hits:
    """What has to be added to a mix, with its share, or may not be."""
    named = list(dict.fromkeys(m[1].lower() for m in _ADDITIVE.finditer(text)))
    named = [name for name in named if name not in _GENERIC] or named
    if not named or re.search(
        r"surfactant must (?:contain|have|be (?:at least|\d))|containing at least (?![\d.]+ ?% active)|\bcontains\b|"
        r"\bstor(?:e|ed|age)\b|\bpast the\b|\bexpir|\bthen (?:the )?(?:adjuvant|surfactant)|\bpredissolve|\bneither\b",
        text,
        re.I,
    ):
        return
    double = re.search(r"\b(?:do not|never|not)\b[^.;]*\b(?:without|unless)\b", text, re.I)
    barred = _ADDITIVE_BARRED.pattern
    own = re.escape(named[0])
    governs = re.search(rf"(?:{barred})[^.;]{{0,40}}{own}|{own}[^.;,]{{0,40}}(?:{_PASSIVE})", text, re.I)
    if governs and not double and not re.search(r"\bexceed|\b(?:more|less) than\b|\bunless\b|\bif\b", text, re.I):
        ruled = re.search(r"(?:do not|never) (?:add|use|include|mix)", text, re.I)
        for name in named:
            yield Hit("adjuvant forbidden", name, "sure" if ruled and len(named) == 1 else "likely")
        return
    share = _share_of(named[0], text)
    if double or (
        not governs
        and _ADDITIVE_ASKED.search(text)
        and (share or re.search(r"\bmust\b|\bshall\b|\brequire|\balways\b", text, re.I))
    ):
        for name in named[: 2 if re.search(r"\beither\b", text, re.I) else 1]:
            yield Hit(
                "adjuvant required",
                f"{name} at {_share_of(name, text)}" if _share_of(name, text) else name,
                "sure" if share and not double else "likely",
            )


def mixing(s: Said) -> Hits:
    """What has to go with it, what may not, in what vessel, and how long a mix keeps."""
    if s.part in ("warranty", "letter", "first aid"):
        return
    text = s.text
    yield from _added(text)
    metal = r"(?:steel|galvani[sz]ed|alumin)"
    if re.search(
        rf"(?:{FORBIDS})[^.]*{metal}|{metal}[^.]*(?:{FORBIDS})|\breacts? with\b[^.]*{metal}|{metal}[^.]*\breacts?\b",
        text,
        re.I,
    ):
        if re.search(r"\brods?\b|\bsurfactants? of other", text, re.I):
            return
        clause = re.split(r"\bexcept\b|\bother than\b|\bsuch as stainless|\bUse only\b", text)[0]
        for name, pattern in _VESSELS:
            if re.search(pattern, clause, re.I):
                yield Hit("vessel forbidden", name)
    yield from _partners(text)
    keeps = re.search(
        rf"\b(?:within|in|over|for|more than|for more than|longer than|no later than|not later than|older than|after|up to|beyond|past|for (?:up to|no longer than|at most|a maximum of)|maximum of|at most|"
        rf"shelf life[^.;\d]{{0,40}})\s*:?\s*({NUMBER})[\s-]*(hours?|days?)\b",
        text,
        re.I,
    )
    is_mix = re.search(
        r"\b(?:mix(?:ture|ed|es)?s?|of mixing|spray|solutions?|dilutions?|diluted|tank|batch(?:es)?)\b|\bonly as much\b|\bprepare only\b|\bprepared\b",
        text,
        re.I,
    )
    kept = re.search(
        r"\bshelf life\b|\bdiscard\b|\bprepare only\b|\bonly (?:as much|enough|what|the amount)\b|\b(?:is|are) (?:good|stable|usable)\b|\bthrow\b|\bdispose\b|\blasts?\b|\bsame day\b|\bprepar|\bold(?:er)?\b|\bspoil|"
        r"\bmust be (?:used|applied|sprayed)\b|\bloses?\b|\bgood for\b|\buse (?:the |all |up )*(?:diluted |prepared |spray |mixed )*(?:mix|solution|spray)|\bdiluted spray\b|\bstore\b|\bstand\b|\bkeep|\bmix only\b|\bprepared\b|should be used within|be used within",
        text,
        re.I,
    )
    ruled = kept or re.search(rf"(?:{FORBIDS})[^.;]*\b(?:hold|held|leave|left|let|stand|overnight|use)\b", text, re.I)
    other = r"\brain|\bagitat|\brecut\b|\bclean|\bdye\b|\bcut(?:ting)?\b|\bgraz|\bhay\b|\bent(?:er|ry)|\binterval\b|\bapart\b|\btreated (?:area|plants?)|\bdry\b"
    if keeps and is_mix and ruled and not re.search(other, text, re.I):
        yield Hit("mix keeps", f"{keeps[1]} {keeps[2].lower()}")
    elif (
        is_mix
        and (m := _KEPT_SO_LONG.search(text))
        and not re.search(rf"{other}|\bstir|\bagitat|\bshake\b|\bpartner", text, re.I)
    ):
        number, unit = [group for group in m.groups() if group][:2]
        yield Hit("mix keeps", f"{number} {unit.lower()}", "likely")


_PARTNERS = (
    re.compile(r"(?:do not|never|avoid|must not|cannot|not to) (?:be )?(?:tank[- ]?)?(?:mix|combin|blend)(?:e|ed|ing)?(?: this product| it)?(?: in the tank)? with ([^.;]+)", re.I),
    re.compile(r"(?:do not|never|must not) (?:add|put) ([^.;]+?) (?:to|into|in) (?:the |a )?(?:tank|mix|spray|solution|sprayer)", re.I),
    re.compile(r"(?:tank[- ]?)?mix(?:ing|tures?|es)? (?:this product )?with ([^.;]+?) (?:is|are) (?:prohibited|forbidden|not (?:allowed|permitted))", re.I),
    re.compile(r"\btank[- ]mix(?:es|tures) (?:containing|of|with) ([^.;]+?) (?:are|is) (?:not allowed|prohibited|forbidden|not permitted)", re.I),
    re.compile(r"not be (?:put|placed|poured) (?:in|into|together) (?:the |a )?(?:same )?tank with ([^.;]+)", re.I),
    re.compile(r"not (?:be |to be )?(?:tank[- ]?)?(?:mixed|combined|blended)(?: in the tank)? with ([^.;]+)", re.I),
)  # fmt: skip


def _partners(text: str) -> Hits:
    """What may not be mixed with it, one by one."""
    m = next((m for pattern in _PARTNERS if (m := pattern.search(text))), None)
    if m is None:
        return
    named = re.split(r"\b(?:unless|except|if|when)\b", m[1])[0]
    named = re.sub(
        r"^(?:any )?(?:products?|herbicides?|materials?) (?:that |which )?contain(?:s|ing)? ",
        "",
        named.strip(" ,"),
        flags=re.I,
    )
    if re.search(r"\bhands\b|\bjar test\b", text, re.I):
        return
    named = re.sub(r",? or use\b.*$|, (?:as|since|because|which|for)\b.*$", "", named)
    named = re.sub(r",? or any (?:product|herbicide) (?:whose|that|which)\b.*$", "", named)
    for partner in re.split(r",?\s+nor (?:with )?|,\s+(?:or |and )?|\s+or\s+|\s+and\s+", named):
        if partner and not re.search(
            r"^(?:this|the) (?:product|herbicide)$|^it$|\b(?:hands?|rods?|until|tools?|utensils?|containers?|paddle|stick|household|drink\w*|food|feed|oils?|diesel|kerosene|water|amine salt|ester)\b",
            partner,
            re.I,
        ):
            yield Hit("mix partner forbidden", partner.strip())


_EMPTIED = re.compile(
    r"\brins|\brefill|(?=.*\b(?:containers?|jugs?|drums?|bags?|bottles?|cans?|packages?|pails?)\b).*\b(?:empt|re-?us|recycl|punctur|crush|offer|dispos|discard|return|nonrefill|incinerat|landfill|burn|drain)",
    re.I,
)
_GOT_RID_OF = re.compile(
    r"\bdispos|\bwastes?\b|\bexcess\b|\bleft-?\s?over|\bdump|\bdown (?:any|the|a) drain|\bsewer|\bsurplus|\bobsolete|\bunusable|\bgetting rid|\bdiscard|\bremaining quantit|\bleft after\b|\bresidues from\b|\bRCRA\b|\bincinerat|\bhaving waste",
    re.I,
)
_WASTE = re.compile(
    r"\b(?:unwanted|unused|left-?over|left over|what is left|surplus|excess|wash ?water|rinse ?water|waste|wastes|trash|drains?|dump\w*|hauler|sewers?)\b[^.;]*\b(?:product|spray|mix\w*|solution|herbicide|pesticide|water|site|ground|drains?|trash|collection|waste|hauler|hazardous|facility)\b",
    re.I,
)
"""What is to be got rid of, and where it goes or may not go."""


_HARM = re.compile(
    r"\btoxic|\bcontaminat|\bpollut|\bharm|\bhazard|\binjur|\bdamag|\bkill|\bpoison|\bfish\b|\baquatic|\binvertebrate|\bwildlife|\bbirds?\b|\bmammals?\b|\bbees?\b|\bpollinator|\bamphibian|\boysters?\b|\bshrimp|"
    r"\bwaters?\b|\bgroundwater|\bstreams?\b|\blakes?\b|\bponds?\b|\brivers?\b|\bwetlands?\b|\bmarsh|\bestuar|\bintertidal|\bdrain|\beffluent|\brun-?off|\bleach|\bseep|\bpercolat|\bdrift|\bvapor|\bvolatil|\berosion|"
    r"\bsoils?\b|\bhabitats?\b|\bspecies\b|\bvegetation|\bplants?\b|\bcrops?\b|\bpersist|\bresidues?\b",
    re.I,
)
_ONLY_DISTANCE = re.compile(r"\b(?:within|than|least|of|:|\|)? ?[\d.]+ ?(?:feet|foot|ft|yards?|meters?|m)\b", re.I)
_STRONG_HARM = re.compile(
    r"\btoxic|\bcontaminat|\bpollut|\bharm|\bhazard|\binjur|\bdamag|\bkill|\bpoison|\brun-?off|\bleach|\bdirectly to water",
    re.I,
)
"""A distance under that heading is a rule of its own; words of harm that make it more."""
_TOXIC = re.compile(
    r"\btoxic to (?:\w+ ){0,3}?(?:fish|aquatic|bees?|birds?|wildlife|mammals|invertebrates|plants)\b|\bdetected in ground ?water\b|\bendangers? aquatic\b",
    re.I,
)
"""Words of harm that leave no doubt, wherever they stand."""
_NO_HARM = re.compile(
    r"^\W*see\b|\bas used in\b|\bmaps?\b|^\W*consult\b|\bmeasured\b|\bbooklet\b|\brevised\b|\bground ?water is\b|\bheading\b|\|\s*page\b|\bdrilled\b|\bwithin 6 months\b|\bamong those\b|\bwash hands|\bskin\b|\bif swallowed|\bphone\b|\bcombustible|\bflammable|\bbulletins? (?:live|within|for)|\bsteel\b|\bsee (?:the )?(?:section|page)|\bfederal law\b",
    re.I,
)
"""Words of harm to the surroundings; words of what stands under that heading without being any."""


def keeping(s: Said) -> Hits:
    """Storage, container and disposal; hazards to the surroundings, as text."""
    text = s.text
    if re.search(r"\bbatter|\bno special\b|\bsaws?\b", text, re.I):
        return
    m = TEMPERATURE.search(text)
    if (
        m
        and (
            re.search(r"\bstor(?:e|age|ed|ing)\b|\bkeep from freezing|\bwarehous|\bheld at\b", text, re.I)
            or (s.part == "storage" and re.search(r"\bke(?:ep|pt)\b|\btemperature|\bcold\b|\bstand\b", text, re.I))
        )
        and re.search(
            r"above|at least|below|colder|drop|\bcools?\b|lowest|\bmin\.|or (?:higher|above|more)|between|\brange\b|\d to -?\d|\bcold\b|not less|no lower|freez|\bwarm|less than|lower than|\bunder\b|\bminimum\b|crystal",
            text,
            re.I,
        )
    ) and not re.search(
        r"\badjuvants?\b|\bconcentrate or\b|\bflash|(?:do not (?:store|expose|keep)|never)[^.;]*(?:above|over|hotter|warmer)",
        text,
        re.I,
    ):
        low = re.search(rf"({NUMBER})\s*(?:to|-|and)\s*{NUMBER} (?=F\b|C\b)", text)
        yield Hit("least storage heat", f"{low[1] if low else m[1]} {m[2].upper()}")
    if s.part == "storage" and len(text) > 12 and not text.endswith(":"):
        about_jugs = re.search(r"\bcontainers?\b|\bjugs?\b|\bdrums?\b|\btriple\b", text, re.I)
        rinse = re.search(
            r"\b(?:rinsate|(?:rinse|wash) ?water)\b[^.;]*\b(?:must be|is to be|are to be|should be|be) dispos|\bdispos\w* of (?:the |any )?(?:rinsate|rinse|wash)",
            text,
            re.I,
        )
        if re.search(r"\bspill", text, re.I) and not re.search(r"\bhazardous waste|\bdiscard", text, re.I):
            return
        thrown = rinse or (not about_jugs and (_WASTE.search(text) or re.match(r"(?:dispose|discard)\b", text, re.I)))
        if not thrown and _EMPTIED.search(text) and not re.search(r"\bspill|\bleak|\bstack|\blog\b", text, re.I):
            yield Hit("container", s.sentence.text)
        elif thrown or _GOT_RID_OF.search(text):
            yield Hit("disposal", s.sentence.text)
    if s.part not in ("storage", "environment", "warranty", "letter", "mixing") and _TOXIC.search(text):
        yield Hit("environmental hazard", s.sentence.text, "likely")
    if _ONLY_DISTANCE.search(text) and not _STRONG_HARM.search(text):
        return
    if s.part == "environment" and len(text) > 12 and _HARM.search(text) and not _NO_HARM.search(text):
        yield Hit("environmental hazard", s.sentence.text)
