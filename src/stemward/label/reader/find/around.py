"""Water, wells, animals; partners and vessels of a mix; storage and disposal; hazards to the surroundings."""

import re

from stemward.label.reader.phrases import DISTANCE, FORBIDS, NUMBER, SHARE, TEMPERATURE, TIME
from stemward.label.reader.said import Hit, Hits, Said, Sure

_WATER = r"(?<!ground )(?<!ground-)\bwaters?\b(?! supply wells?)(?! wells?)(?! ?(?:-| )?(?:soluble|based))|\bstreams?\b|\blakes?\b|\bponds?\b|\bshores?\b|\bwetlands?\b|\brivers?\b|\bcreeks?\b|\breservoirs?\b|\bsprings\b|\bdrainage"
_KEPT = r"within|at least|\bleave\b|\bkeep\b|\bfrom\b|untreated|\bbuffers?\b|set-?backs?|\bmaintain\b|closer than|\bminimum\b|\bstay\b|\bback\b|less than|away"


def water(s: Said) -> Hits:
    """Distances to water and to wells, when applying and when mixing."""
    if s.part in ("warranty", "letter", "first aid") or not re.search(_KEPT, s.text, re.I):
        return
    found = list(DISTANCE.finditer(s.text))
    if not found:
        return
    m = found[0]
    after = s.text[m.end() :]
    value = f"{m[1]} {_far(m[2])}"
    most: Sure = (
        "unsure"
        if len({x[1] for x in found}) > 1 or re.search(r"intake|upstream|droplet|height|tall|deep|depth", s.text, re.I)
        else "sure"
    )
    mixing = re.search(r"\bmix(?:ed|ing)?\b|\bload|\brins|\bstore[ds]?\b|\bclean|\bwash", s.text, re.I)
    wells = re.search(r"\bwells?\b(?! as\b)", s.text, re.I)
    if wells:
        yield Hit("mixing distance to wells" if mixing else "distance to wells", value, most)
    if (not mixing and re.search(_WATER, after or s.text, re.I)) or (
        not mixing
        and re.search(rf"(?:{_WATER})", s.text[: m.start()], re.I)
        and re.search(r"buffer|strip|zone|set-?back", s.text, re.I)
    ):
        yield Hit("distance to water", value, most)


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


def animals(s: Said) -> Hits:
    """How long animals do not graze, and how long no hay is cut."""
    if re.search(
        r"slaughter|\bmove\b|\btransfer|manure|compost|\burine|\bmulch|untreated pasture|before (?:being )?(?:moved|moving)",
        s.text,
        re.I,
    ):
        return
    if s.part in ("equipment", "farm workers", "others", "first aid", "warranty", "letter"):
        return
    times = list(TIME.finditer(s.text))
    if not times:
        return
    m = times[0]
    value = f"{m[1]} {m[2].lower()}"
    most: Sure = (
        "unsure"
        if len({t[1] for t in times}) > 1 or re.search(r"dairy|lactating|\bless than\b.*\b(?:acre|%)", s.text, re.I)
        else "sure"
    )
    hay = re.search(r"\bhay(?:ing|ed)?\b|\bcut(?:ting)? (?:of )?forage|\bharvest", s.text, re.I)
    graze = re.search(r"\bgraz|\blivestock\b|\banimals?\b|\bcattle\b|\bfeed(?:ing)?\b", s.text, re.I)
    if re.search(r"\bno (?:waiting|restriction)", s.text, re.I):
        return
    if hay:
        yield Hit("hay wait", value, most)
    if graze and (not hay or re.search(r"\bgraz", s.text, re.I)):
        yield Hit("grazing wait", value, most)


_VESSELS = (
    (
        "unlined steel",
        r"unlined[^.;]{0,30}steel|steel[^.;]{0,30}unlined|(?<!stainless )(?<!galvanized )(?<!galvanised )\bsteel\b",
    ),
    ("galvanised steel", r"galvani[sz]ed"),
    ("aluminium", r"alumin(?:i)?um"),
)


def mixing(s: Said) -> Hits:
    """What has to go with it, what may not, in what vessel, and how long a mix keeps."""
    if s.part in ("warranty", "letter", "first aid"):
        return
    text = s.text
    if not re.search(r"surfactant must (?:contain|have|be)|containing at least", text, re.I):
        m = re.search(
            rf"\bsurfactants?\b[^.;]*?({SHARE})|({SHARE})\s*(?:v/v )?(?:of )?(?:an? )?(?:non-?ionic )?surfactant",
            text,
            re.I,
        )
        wanted = re.search(r"\b(?:include|add|must|require[sd]?|always use)\b|^use\b|\buse an?\b", text, re.I)
        if m and wanted and not re.search(FORBIDS, text, re.I):
            yield Hit("adjuvant required", f"surfactant at {m[1] or m[2]}")
    if m := re.search(
        r"do not (?:add|use|include|mix)[^.;]{0,30}\b((?:non-?ionic )?surfactants?|adjuvants?|crop oils?)\b", text, re.I
    ):
        yield Hit("adjuvant forbidden", m[1].lower())
    if re.search(rf"{FORBIDS}[^.]*(?:steel|galvani[sz]ed|alumin)", text, re.I):
        clause = re.split(r"\bexcept\b|\bother than\b|\bsuch as stainless|\bUse only\b", text)[0]
        for name, pattern in _VESSELS:
            if re.search(pattern, clause, re.I):
                yield Hit("vessel forbidden", name)
    if m := re.search(r"do not (?:tank[- ]?)?mix(?: this product)? with ([^.;]+)", text, re.I):
        partner = re.split(r"\b(?:unless|except|if|when)\b", m[1])[0].strip(" ,")
        if partner and not re.search(r"\b(?:oil|diesel|kerosene|water)\b", partner, re.I):
            yield Hit("mix partner forbidden", partner)
    keeps = re.search(
        rf"\b(?:within|for more than|longer than|for (?:up to|no longer than))\s*({NUMBER})[\s-]*(hours?|days?)\b",
        text,
        re.I,
    )
    is_mix = re.search(r"\b(?:mix(?:ture|ed)?s?|spray|solutions?|dilutions?|diluted)\b", text, re.I)
    kept = re.search(
        r"\bmust be used\b|\buse (?:the |all |up )*(?:diluted |prepared |spray |mixed )*(?:mix|solution|spray)|\bdiluted spray\b|\bstore\b|\bstand\b|\bkeep|\bmix only\b|\bprepared\b|should be used within|be used within",
        text,
        re.I,
    )
    if keeps and is_mix and kept and not re.search(r"\brain|\bcut(?:ting)?\b|\bgraz", text, re.I):
        yield Hit("mix keeps", f"{keeps[1]} {keeps[2].lower()}")


def keeping(s: Said) -> Hits:
    """Storage, container and disposal; hazards to the surroundings, as text."""
    text = s.text
    m = TEMPERATURE.search(text)
    if (
        m
        and (
            re.search(r"\bstor(?:e|age|ed|ing)\b|\bkeep from freezing", text, re.I)
            or (s.part == "storage" and re.search(r"\bkeep\b", text, re.I))
        )
        and re.search(r"above|at least|below|freez|\bwarm", text, re.I)
    ) and not re.search(r"\bflash|do not (?:store|expose)[^.;]*(?:above|over)", text, re.I):
        yield Hit("least storage heat", f"{m[1]} {m[2].upper()}")
    if s.part == "storage" and len(text) > 12:
        if re.search(r"\bcontainers?\b|\brins|\brefill", text, re.I):
            yield Hit("container", s.sentence.text)
        elif re.search(r"\bdispos|\bwastes?\b", text, re.I):
            yield Hit("disposal", s.sentence.text)
    if s.part == "environment" and len(text) > 12:
        yield Hit("environmental hazard", s.sentence.text)
