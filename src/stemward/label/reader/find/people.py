"""What keeps people from harm: equipment, gloves, when to come back in, first aid."""

import re

from stemward.label.reader.phrases import EQUIPMENT, MATERIALS, NUMBER
from stemward.label.reader.said import Hit, Hits, Said, Sure

_WORN = r"\bwear(?:ing|s)?\b|\bworn\b|\bmust (?:use|have on)\b|\b(?:puts?|have|has) on\b|\bdons?\b|\bcall(?:s|ed)? for\b|\bneeds?\b(?! not)|\bclothed in\b|\buse (?:\w+ )?(?:goggles|gloves|(?:an? )?(?:apron|respirator|face shield)|eye)|\bprotective (?:equipment|clothing)\b|\bPPE\b|\brequired\b|\bhandled\b|\bhandlers?\b|early[- ]\s?(?:re-?)?entry|\bgo in (?:only|early)\b"
_NOT_NEEDED = re.compile(
    r"not (?:needed|required|necessary)|may omit|need not|may be omitted|\bremov|\bwash\b|\bclean(?!ers?\b)|\bdiscard|\blaunder|"
    r"instead of|in lieu of|reduced or modified|\bfirst aid\b|\bkeep and wash\b|\bother (?:products|labels)\b|\bno (?:\w+ )?(?:eyewear|gloves?|respirators?|aprons?|goggles|headgear|footwear)\b",
    re.I,
)
_TASKS = re.compile(
    r"\bclean(?:ing|s)?(?:[- ]up)? (?:of )?(?:\w+ )?(?:spills?|equipment|gear|sprayers?|tanks?)\b|\bcleaning up\b", re.I
)
"""Work for which a piece is to be worn: no cleaning of the piece."""
_EYES = ("goggles", "face shield")


def equipment(s: Said) -> Hits:
    """Pieces of clothing and equipment to be worn."""
    if s.part not in ("equipment", "farm workers", "others") and not s.has(_WORN):
        return
    if s.part in ("storage", "first aid", "warranty", "letter", "advice to users"):
        return
    if _NOT_NEEDED.search(_TASKS.sub(" ", s.text)):
        return
    chosen = [item for item, pattern in EQUIPMENT if pattern.search(s.text)]
    eyes = [item for item in chosen if item in _EYES]
    either = "protective eyewear" in chosen and eyes
    choice = len(eyes) == 2 and re.search(r"goggles\W+or\b|shields?\W+or\b", s.text, re.I)
    footwear = "shoes and socks" in chosen
    if "waterproof gloves" in chosen and not re.search(r"chemical", s.text, re.I):
        # "Rubber gloves that are waterproof" are one piece.
        chosen = [item for item in chosen if item != "chemical-resistant gloves"]
    for item in chosen:
        if item in _EYES and either:
            # "Protective eyewear (goggles, a face shield or glasses)" names what will do, not what is asked for beside it.
            continue
        if (
            item == "chemical-resistant footwear"
            and footwear
            and not re.search(r"resistant (?:foot|boot)", s.text, re.I)
        ):
            continue
        yield Hit("equipment", item, "unsure" if choice and item in _EYES else "sure")


_NO_CATEGORY = re.compile(
    r"\b(?:not|never|except|avoid|unlike|no longer|only a|little|too|weak|tear\w*|minutes?|wears? out|cost\w*|tested?|tests|dealers?|stores?|ask)\b|\b[A-H] (?:through|to|-) [A-H]\b|other than|\btoxicity\b|\blicen[sc]e|\bcertif|\bapplicators? (?:in|of)\b|\bexam",
    re.I,
)
"""Of other categories, or of one that will not do."""
_LETTERED = re.compile(
    r"\b(?:[Cc]lass|[Gg]roup|[Rr]ow|[Cc]olumn|[Ll]etter|[Tt]ype|[Rr]ated|[Cc]ategory is|[Cc]ategory letter)\W{1,3}([A-H])\b|\b([A-H]) (?:gloves|category)\b|\bunder \W?([A-H])\W? (?:in|of|on) the\b"
)


_PICKS = re.compile(
    r"\bchart\b|\bfollow|\brefer|\binstructions\b|\boptions\b|\bchoices?\b|\bresistan|\bbelongs\b|\bfalls\b|\blist|\brated\b|\bwear\b|\bworn\b|\bmust\b|\bshall\b|\buse\b|\brequire|\bcategory\W*[:=|-]|[:=|]|^\W*gloves?\b[^.;]{0,30}$",
    re.I,
)
"""Words by which a label picks its row of the chart."""


def gloves(s: Said) -> Hits:
    """Of what gloves are made, and the category of the glove chart."""
    told = re.search(r"glove|resist|\bchart\b|chemical|solvent|\bPPE\b", s.whole, re.I)
    letters = set(re.findall(r"\b(?:[Cc]ategor(?:y|ies)|[Cc]lass|[Rr]ow|or|and|to|through|,) ([A-H])\b", s.text))
    if told and len(letters) < 2 and _PICKS.search(s.text) and not _NO_CATEGORY.search(s.text):
        if m := re.search(r"\b[Cc](?:ategor|ATEGOR)(?:y|ies|Y|IES)(?: \([\w ]+\)| for PPE)?\W{1,3}([A-H])\b", s.text):
            yield Hit("glove category", m[1].upper(), "sure" if re.search(r"glove|resist", s.text, re.I) else "likely")
        elif m := _LETTERED.search(s.text):
            yield Hit("glove category", next(filter(None, m.groups())), "likely")
    if s.has(
        r"\bgloves?\b|resist(?:ant to|s?) this product|\bmaterials?\b[^.;]*\bresist|\bmils?\b[^.;]*\bresist"
    ) and not re.search(r"\bdo not\b|\bexcept\b|\bbottles?\b|\bcontainers?\b", s.text, re.I):
        text = _ATTACKED.sub(" ", s.text)
        for material, pattern in MATERIALS:
            if pattern.search(text):
                yield Hit("glove material", material)


_ATTACKED = re.compile(
    r"\b(?:attacks|dissolves|swells|softens|penetrates|ruins|passes through|unlike)\b[^.;,]{0,40}", re.I
)
"""What is said of a material that will not do."""


_REI = r"(?:restricted[- ]\s?entry(?: interval)?(?:\s*\(REI\))?|\bREI\b|\b(?:re-?)?entry (?:interval|period|time)\b|^\W*(?:re-?)?entry(?=:)|\bentry restricted\b)"
_INTERVAL = re.compile(rf"{_REI}[^.\d]*?({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b", re.I)
_BEFORE = re.compile(rf"({NUMBER})[\s-]*(hours?|days?)\s+{_REI}", re.I)
_KEEP_OUT = re.compile(
    rf"(?:(?:keep|kept|stay|remain|hold|held)\b[^.;\d]{{0,30}}?\b(?:out|closed)\b[^.;\d]{{0,40}}?\bfor (?:at least |a period of )?|\bexclude\b[^.;\d]{{0,60}}?)({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b",
    re.I,
)
_FOR_SO_LONG = re.compile(
    rf"\b(?:for|during|until|within|before|after)\b[^.\d]{{0,25}}?({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b[^.;]*{_REI}",
    re.I,
)
_NOBODY = re.compile(
    rf"(?:\b(?:no|not|never|nobody|no one|prohibited|forbidden|barred|only)\b[^.;\d]{{0,60}}\b(?:ent(?:er|ry|ering)|go in(?:to)?|admitt?\w*|(?:directed|sent|set foot|walk|work) (?:on|in(?:to)?)|let\b[^.;\d]{{0,20}}\bin(?:to)?)|\b(?:ent(?:er|ry)|re-?entry)\b[^.;\d]{{0,40}}\b(?:no|not|never|prohibited|forbidden|barred|only after))\b[^.;\d]{{0,50}}?({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b",
    re.I,
)
_WHILE_NOBODY = re.compile(
    rf"\bduring the (?:first |next )?({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b[^.;]*\b(?:nobody|no one|no workers?|no person)\b|\bre-?entry \(hours\)\W+({NUMBER})\b",
    re.I,
)
_SO_LONG = re.compile(rf"({NUMBER})[\s-]*(hours?|hrs?|h|days?)\b", re.I)
_DRY = re.compile(
    r"(?:until|till|before|unless|once)\b[^.;]{0,60}\b(?:dried|dry|dries)\b|\b(?:while|as long as)\b[^.;]{0,60}\b(?:wet|moist|damp)\b",
    re.I,
)
_ENTERING = r"\bent(?:er|ry|ering)\b|\bre-?ent|\bkeep\b|\bpeople\b|\bpersons?\b|\bchildren\b|\bpets\b|\bworkers?\b|\bnobody\b|\bno one\b|\bgo (?:in|into)\b|\bothers\b|stay out|remain out|\bbystanders?\b|\bthe public\b|come near|\bwalk"


_COMING_IN = r"\bent(?:er|ry|ering)\b|\bre-?entry\b|\bstay out\b|\breturn\b|\bexclude\b|\bback\b|\bgo onto\b|\breopen\w*|\bkept away\b|\bno worker in\b|\bin before\b"


_HERD, _FOLK = r"\b(?:livestock|cattle|stock|horses|animals|graz\w+)\b", r"\b(?:workers?|people|persons?|REI|entry)\b"


def entry(s: Said) -> Hits:
    """How long nobody enters, and the condition that sprays be dry."""
    found = {
        (m[1], m[2]) for pattern in (_INTERVAL, _BEFORE, _KEEP_OUT, _FOR_SO_LONG) for m in pattern.finditer(s.text)
    }
    named = bool(found)
    if not found and s.part in ("farm workers", "others", "directions", "restrictions"):
        found = {(m[1], m[2]) for m in _NOBODY.finditer(s.text)}
        found |= {(m[1] or m[3], m[2] or "hours") for m in _WHILE_NOBODY.finditer(s.text)}
        named = bool(found) and s.part == "farm workers"
    if re.search(_HERD, s.text, re.I) and not re.search(_FOLK, s.text, re.I):
        found = set()
    elif not found and s.part == "farm workers" and re.search(_COMING_IN, s.text, re.I):
        found = {(m[1], m[2]) for m in _SO_LONG.finditer(s.text)}
    # Where neither the interval is named nor workers are kept out, a time beside a word of coming in is no more than
    # likely: people act on it, and it may be of grazing or of a further treatment.
    most: Sure = "unsure" if len(_SO_LONG.findall(s.text)) > 1 else "sure" if named else "likely"
    for number, unit in found:
        yield Hit(
            "entry interval",
            f"{number} {'hours' if unit.lower().startswith('h') else unit}",
            most,
        )
    loose = re.search(r"\b(?:dry|dried|dries|dry-down|wet)\b", s.text, re.I) and re.search(_COMING_IN, s.text, re.I)
    if loose and s.part == "others" and not _DRY.search(s.text):
        yield Hit("keep out until dry", "yes", "likely")
    if _DRY.search(s.text) and re.search(_ENTERING, s.text, re.I) and not re.search(r"\bapply\b", s.text, re.I):
        yield Hit("keep out until dry", "yes")


def aid(s: Said) -> Hits:
    """Each statement of first aid, as text."""
    if s.part == "first aid" and len(s.text) > 12 and not s.text.endswith(":") and re.search(r"[a-z]", s.text):
        yield Hit("first aid", s.sentence.text)
