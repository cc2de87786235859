"""Plants by name that it kills, and what it asks about those that are kept."""

import re

from stemward.label.reader.find.names import known_names, names_in_list, names_of_row
from stemward.label.reader.phrases import DISTANCE, FORBIDS
from stemward.label.reader.said import METHOD_PARTS, Hit, Hits, Said

_CONTROLS = re.compile(
    r"\b(?:(?:to |expect to )?controls?(?! of\b)|kill of|kills?|resprouting of|suppress(?:es)?|eradicat(?:es?|ion of)|remov(?:es?|al of)|(?:works|effective|active|used|labell?ed) (?:on|against)|(?:susceptible|target) (?:species|plants|brush|trees)(?: include| are)?:?|susceptible:|"
    r"(?:plants|species|brush|trees|weeds) (?:that can be |that are )?(?:killed|controlled|suppressed|susceptible)[^.:]{0,45}?(?:include|are|:)|for (?:the )?(?:control|management|suppression|treatment) of|species controlled:?|controlled (?:species )?(?:include|are):?|labell?ed (?:weeds|plants|brush) include|"
    r"target brush:|approved (?:solely |only )?for|confined to)\s+"
    r"(?:unwanted |undesirable |woody |plants |species |brush |hardwoods |such as |including |include )*",
    re.I,
)
_CONTROLLED = re.compile(
    r"^(?:the following (?:plants |species )?are controlled:|(.{3,250}?) (?:is|are) (?:easily |readily |usually |also |only )?(?:controlled|killed|top-?killed|suppressed|susceptible)\b)",
    re.I,
)
_HARD_TO = re.compile(r"^(.{3,120}?) (?:is|are) (?:hard|difficult|easy|easier|harder) to (?:control|kill)", re.I)
_ON_IT = re.compile(
    r"^(?:spray|treat|inject|for|on) (.{3,60}?),?(?: (?:after|from|when|in|before|at|use|apply|make)\b|$)", re.I
)
"""A plant that the work is for: "For multiflora rose use ...", "Spray blackberry after fruit set"."""
_ROW_OF = re.compile(r"([^:.]{3,90}):\s*\d")
"""Plants before the rate that is for them."""
_WEAK = re.compile(r"\bnot (?:control|kill|effective|suppress)|\bdoes not\b|\bdo not\b|\bno other\b.*\bmay\b", re.I)
TOLD_IN = ("directions", "other", "front", "restrictions", *METHOD_PARTS)
"""Parts in which a sentence may tell what is killed."""


_CLAIMS = re.compile(
    r"\bmay be (?:treated|controlled|killed)\b|\blisted plants?\b|\bplants listed\b|\bcontrol(?:s|led)?\b|\bkill(?:s|ed)?\b|\bsuppress(?:es|ed)?\b|\bsusceptible\b|\beffective (?:on|against)|\bworks? (?:\w+ )?(?:on|against)|\bwill not resprout|\b(?:use(?:d)?|labell?ed|approved)\b[^.;]{0,30}\b(?:for(?: use on)?|on|against|to treat)\b",
    re.I,
)
"""Words of a sentence that claims to kill what it names."""
_NO_CLAIM = re.compile(
    r"\bmay (?:be (?:required|needed|necessary)|need)\b|\bfor complete control\b|\bresults (?:may )?vary\b|\bconsistent\b",
    re.I,
)
_PLANT_HEAD = re.compile(r"\b(?:plants?|species|brush|trees?|weeds?|names?|susceptible|controlled)\b", re.I)
_OTHER_HEAD = re.compile(
    r"\b(?:latin|scientific|botanical|rate|method|control|timing|remarks?|notes?|season|class|group)\b", re.I
)


def _cell_names(s: Said) -> list[str]:
    """The names in a table's cell with its heads: "Species: red maple; Rate: high"."""
    found: list[str] = []
    for piece in s.text.split("; "):
        head, colon, rest = piece.partition(": ")
        rest = rest if colon else head
        if colon and (_OTHER_HEAD.search(head) or not (s.part == "plants" or _PLANT_HEAD.search(head))):
            continue
        if colon or s.part == "plants":
            found += [name for name, known in names_in_list(rest, under_heading=False) if known]
    return list(dict.fromkeys(found))


def plants(s: Said) -> Hits:
    """Plants by name: lists under their heading, and sentences that say what is killed; not what is spared."""
    # A heading that stands in the line that it opens.
    text = re.sub(r"^[A-Z][A-Z ]{4,}:\s", "", s.text)
    listed = s.part == "plants" or bool(_PLANTS_FOLLOW.search(s.under))
    if _SPARED.search(s.under) or _WEAK.search(s.under):
        return
    if s.sentence.cell or ("|" in text and (listed or s.part in METHOD_PARTS)):
        for name in _cell_names(s) if s.sentence.cell else names_of_row(text):
            yield Hit("plant", name, "likely")
        return
    if _WEAK.search(text) or _SPARED.search(text) or re.search(r"\bmethods?\b", text):
        return
    told, hard = _CONTROLS.search(text), _CONTROLLED.search(text) or _HARD_TO.search(text)
    if listed and not told and not hard and not _VERB.search(text):
        opener = re.search(r"\b(?:such as|including|include)\b:?\s*", text, re.I)
        if not opener and re.search(
            r"\bcontrol\w*\b(?![^|]*$)|\bspecies\b(?!: )", re.sub(r"\([^)]*\)", "", text), re.I
        ):
            return
        for name, known in names_in_list(text[opener.end() :] if opener else text, s.part == "plants"):
            yield Hit("plant", name, "likely" if known else "unsure")
        return
    if not listed and s.part not in TOLD_IN:
        return
    aim = _ON_IT.search(text) or _ROW_OF.match(text)
    shut = re.split(r"\b(?:except|but not|other than|while|whereas)\b", text)[0]
    if (told or hard or _CLAIMS.search(text)) and (hard or not _NO_CLAIM.search(text)):
        span = hard[1] if hard and hard[1] else shut[told.end() :] if told else ""
        turned = ";" in span and list(names_in_list(span, under_heading=False))
        for name in [name for name, _ in turned] if turned else known_names(span) or known_names(shut):
            yield Hit("plant", name, "likely")
    elif aim and (s.part in METHOD_PARTS or text[:6].lower() == "treat "):
        for name in known_names(aim[1]):
            yield Hit("plant", name, "likely")


_VERB = re.compile(r"\b(?:may|is|are|will|can|vary|varies|depends?|should|must)\b", re.I)
_PLANTS_FOLLOW = re.compile(
    r"\b(?:species|plants|brush|trees|weeds)\b[^.]*(?:listed|below|following|include|controlled|:)", re.I
)
_SPARED = re.compile(
    r"\b(?:toleran\w+|injur\w+|damag\w+|desirable|spared?|planted|crop trees?|releas\w+|not (?:be )?(?:treated|harmed)|resistant|escape|may survive|nurser\w+|seedlings of)\b",
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
