"""Plants by name that it kills, and what it asks about those that are kept."""

import re

from stemward.label.reader.phrases import DISTANCE, FORBIDS, PLANT_NOUNS
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said

_KIND_OF = frozenset(
    "red white black sugar silver common glossy poison sweet green box autumn russian norway striped bigtooth tree multiflora "
    "quaking princess japanese chinese european mockernut shagbark pignut bitternut laurel smooth staghorn brazilian loblolly longleaf eastern southern winged slippery rock black sweetbay chestnut willow silver sitka honey eastern western american english wild mountain water pin scarlet post live yellow paper river gray grey".split()
)
_NAME = re.compile(r"[A-Za-z][A-Za-z'’-]+(?: [A-Za-z][A-Za-z'’-]+){0,3}")


_NO_NAME = re.compile(
    r"\b(?:label|product|gal|equivalent|rates?|year|others?|pages?|invented|tests?|only|control(?:led|s)?|species|listed|following|treat\w*|"
    r"application|apply|use|need|hard|plants?|brush|weeds?|trees controlled|well|figure|table|see|continued|acid|acre|not|is|are|by|in|along|on|to|from|with|(?<!-)of(?!-))\b",
    re.I,
)
_KINDS_BEHIND = re.compile(
    rf"([A-Za-z-]+)(?: \(|: )((?:(?:{'|'.join(sorted(_KIND_OF))})(?:, | and |, and | or )?)+)\)?", re.I
)


def _each_kind(m: re.Match[str]) -> str:
    """ "Maples (red, sugar)" as "red maple, sugar maple"."""
    noun = re.sub(r"(?<=[^s])ies$", "y", m[1], flags=re.I)
    noun = re.sub(r"(?<=[a-z][^su])s$", "", noun)
    return ", ".join(f"{kind.strip()} {noun}" for kind in re.split(r",(?: and)?| and | or ", m[2]) if kind.strip())


_TURNED = re.compile(r"^([A-Za-z'’-]+), ([A-Za-z'’-]+(?: [A-Za-z'’-]+)?)$")
_CONTROLS = re.compile(
    r"\b(?:(?:to |expect to )?controls?|kill of|kills?|resprouting of|suppress(?:es)?|(?:works|effective|active|used|labell?ed) (?:on|against)|(?:susceptible|target) (?:species|plants|brush)(?: include| are)?:?|susceptible:|(?:plants|species|brush|trees) (?:killed|controlled)[^.:]{0,20}?(?:include|are|:)|for (?:the )?(?:control|management|suppression) of|species controlled:?|controlled (?:species )?(?:include|are):?)\s+"
    r"(?:unwanted |undesirable |woody |plants |species |brush |such as |including |include )*",
    re.I,
)
_CONTROLLED = re.compile(
    r"^(.{3,250}?) (?:is|are) (?:easily |readily |usually |also |only )?(?:controlled|killed|top-?killed|suppressed|susceptible)\b",
    re.I,
)
_HARD_TO = re.compile(r"^(.{3,80}?) (?:is|are) (?:hard|difficult|easy|easier|harder) to (?:control|kill)", re.I)


_GENERIC = re.compile(
    r"\s+(?:seedlings?|saplings?|sprouts?|resprouts?|trees?|bushes|shrubs?|vines?|species|spp\.?|stems?|brush|plants?|clumps?|thickets?|hybrids?)$",
    re.I,
)


def _bare(name: str) -> str:
    """A plant's name without the word for its form: "kudzu vines" is kudzu, "princess tree" stays."""
    while (shorter := _GENERIC.sub("", name)) != name and (PLANT_NOUNS.search(shorter) or not PLANT_NOUNS.search(name)):
        name = shorter
    return name


def plants(s: Said) -> Hits:
    """Plants by name: lists under their heading, and sentences that say what is killed; not what is spared."""
    # "Maples (red, sugar)" names two plants; in other brackets stands the Latin name.
    text = _KINDS_BEHIND.sub(
        lambda m: ", ".join(f"{kind.strip()} {m[1]}" for kind in re.split(r",| and ", m[2])), s.text
    )
    # "Ailanthus altissima (tree-of-heaven)": where the Latin name stands first, the name is in the brackets.
    text = re.sub(
        r"\b[A-Z][a-z]+ (?:[a-z]{4,}|spp?\.) \(([^)]*)\)", lambda m: m[1] if PLANT_NOUNS.search(m[1]) else m[0], text
    )
    text = re.sub(r"\([^)]*\)", "", text).rstrip(".:")
    if re.search(r"\bnot (?:control|kill|effective|suppress)|\bdoes not\b|\bdo not\b", text, re.I):
        return
    told = _CONTROLS.search(text)
    hard = _HARD_TO.search(text) or _CONTROLLED.search(text)
    listed = s.part == "plants" or bool(_PLANTS_FOLLOW.search(s.under))
    if not listed and not (
        (told or hard) and s.part in ("directions", "other", "front", "restrictions", *METHOD_PARTS)
    ):
        return
    if s.part == "plants":
        # Dots, bars and figures of a row stand behind the name.
        text = re.sub(r"\s*(?:\.{2,}|\||\s-\s)\s*[^|]*\d.*$|\*", "", text)
    if re.search(r"\d|%|\bmethods?\b", text) or _SPARED.search(text) or _SPARED.search(s.under):
        return
    if hard:
        text = hard[1]
    elif told:
        text = re.sub(r"^(?:the )?following(?: \w+){0,2}:\s*", "", text[told.end() :], flags=re.I)
    elif m := re.search(r"\b(?:such as|including|include)\b:?\s*", text, re.I):
        text = text[m.end() :]
    elif re.search(r"\bcontrol\w*|\bspecies\b", text, re.I):
        return
    text = re.sub(r"\s+[A-Z][a-z]+ (?:spp?\.?|[a-z]{4,})$", "", text) if listed else text
    parts = [p.strip() for p in re.split(r"[;•|]", text) if p.strip()]
    pairs = [m for piece in parts if (m := _TURNED.match(piece)) and m[2].lower().split()[0] in _KIND_OF]
    if pairs and len(pairs) == len(parts):
        for m in pairs:
            yield Hit("plant", f"{m[2]} {m[1]}".lower(), "likely")
        return
    pieces = [
        p.strip(" .")
        for p in re.split(r"[,;•|/]|\s\d{1,2}\.\s|\s+as well as\s+|\s+and\s+|\s+or\s+", text)
        if p.strip(" .")
    ]
    sentence = len(pieces) == 1 and len(pieces[0].split()) > 4
    for n, piece in enumerate(pieces):
        if piece.lower() in _KIND_OF and n + 1 < len(pieces):
            # "Red and sugar maple".
            following = next((p for p in pieces[n + 1 :] if p.lower() not in _KIND_OF), "").split()
            piece = f"{piece} {following[-1]}" if len(following) > 1 else piece
        piece = re.sub(
            r"\s+(?:prevails?|predominates?|are|is|may|should|which|where|when|if|at|with)\b.*$", "", piece, flags=re.I
        )
        name = re.sub(r"^(?:most |some |many |all |both |young |unwanted |undesirable )+", "", piece, flags=re.I)
        name = _bare(name)
        if sentence or not _NAME.fullmatch(name) or _NO_NAME.search(name) or name.lower() in _KIND_OF:
            continue
        # Outside of a list only what is known for a plant's name is one.
        if PLANT_NOUNS.search(name) or (s.part == "plants" and len(pieces) > 1 and not _VERB.search(text)):
            yield Hit("plant", name.lower(), "likely")
        elif s.part == "plants" and s.text[:1].isupper() and len(name.split()) <= 3:
            yield Hit("plant", name.lower(), "unsure")


_VERB = re.compile(r"\b(?:may|is|are|will|can|vary|varies|depends?|should|must)\b", re.I)
_PLANTS_FOLLOW = re.compile(
    r"\b(?:species|plants|brush|trees|weeds)\b[^.]*(?:listed|below|following|include|controlled|:)", re.I
)
_SPARED = re.compile(
    r"\b(?:toleran\w+|injur\w+|damag\w+|desirable|spared?|planted|crop trees?|releas\w+|not (?:be )?(?:treated|harmed)|resistant|escape|may survive|nurser\w+|seedlings)\b",
    re.I,
)
"""Words of sentences in which plants are named that are not the ones to be killed."""


_WANTED = r"\b(?:desirable|desired|wanted|valued?|valuable|kept|saved?|crop trees?|shade trees?|ornamentals?|fruit|nut|hedges|your trees|to (?:be kept|stay)|left standing|neighbors?)\b"
_JOINED = re.compile(
    r"\broots?\b[^.;]{0,70}\b(?:graft\w*|shar\w+|common|connect\w+|joined|linked|fused|same|mingl\w+|intertwin\w+)\b|\b(?:graft\w*|shar\w+|common|connect\w+|joined|linked|fused|same|separate)\b[^.;]{0,50}\b(?:roots?|underground|below ground)\b|\bgraft union|\bclon(?:e|al)\b|\bflashback\b|"
    r"\broots? (?:sharing|connection)|\bjoined underground|\bshared roots?",
    re.I,
)
_LEFT_ALONE = re.compile(
    rf"{FORBIDS}|\bnot recommended\b|\bleave\b[^.;]*\balone\b|\btreat no\b|\bleft alone\b|\boff limits\b|\buse no\b|\bonly\b[^.;]*\bseparate|\bno trees\b",
    re.I,
)
_KEPT_OFF = re.compile(
    rf"{FORBIDS}|\bkeep\b|\bat least\b|\bno (?:less|closer|nearer)\b|\b(?:nearer|closer|less) than\b|\bminimum\b|\bbuffer|\bgap\b|\bclearance\b|\bhold\b|\bstay\b|\bdistance|\bor more\b|\binside\b|\bcloser\b|\bleft untreated\b|\bmargin\b|\btreat nothing\b|\bspray no\b",
    re.I,
)


def roots(s: Said) -> Hits:
    """What it asks about plants beside those that are treated, and about rare ones."""
    text = s.whole
    if (
        _JOINED.search(text)
        and _LEFT_ALONE.search(text)
        and not re.search(r"\bgraft(?:ing)? wax|\bsurfactant", text, re.I)
    ):
        yield Hit(
            "no shared roots",
            "yes",
            "sure" if re.search(rf"(?:{FORBIDS})[^.]*root|root[^.]*(?:{FORBIDS})", text, re.I) else "likely",
        )
    if re.search(r"\bbulletins?\b", s.text, re.I) and not re.search(
        r"\bnot\b[^.;]{0,60}\bbulletin|\btechnical bulletin|\bmailed\b", s.text, re.I
    ):
        told = re.search(r"endangered|obtain|follow|species", s.text, re.I)
        ruled = re.search(
            r"\bESA\b|\bLive\b|\brequire|\bmust\b|\bvalid\b|\bin hand\b|\blimits\b|\bapplies\b|\bcovers\b|unlawful|epa\.gov",
            s.text,
        )
        if told or ruled:
            yield Hit("endangered species bulletin", "yes", "sure" if told else "likely")
    near = re.search(r"\broots?\b|\broot zones?\b|\btrunks?\b|\bdrip ?line\b|\bwithin\b", s.text, re.I)
    m = DISTANCE.search(s.text)
    if (
        m
        and near
        and re.search(_WANTED, s.text, re.I)
        and _KEPT_OFF.search(text)
        and not re.search(r"\bwells?\b|\bwater\b|\bstreams?\b", s.text, re.I)
    ):
        unit = m[2].lower()
        short = "m" if unit == "m" else "yd" if unit.startswith("y") else "ft"
        close = re.search(r"\broots?\b|\btrunks?\b|\bdrip ?line\b|\broot zones?\b", s.text, re.I)
        if close or re.search(FORBIDS, s.text, re.I):
            yield Hit(
                "distance to wanted roots",
                f"{m[1]} {short}",
                "sure" if re.search(rf"(?:{FORBIDS})[^.]*\bwithin\b", s.text, re.I) else "likely",
            )
