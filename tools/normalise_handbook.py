"""Write the handbook's big tables from a folder of raw facts, each row once, with the raw row's id.

    python tools/normalise_handbook.py RAWDIR [OUTDIR]

Reads species.csv, species_upgrades.csv, efficacy.csv and ai_properties.csv in RAWDIR and writes species.csv,
evidence.csv and ingredients.csv to OUTDIR (the packaged handbook if it is left out). The small tables beside
them are kept by hand. Every judgement made on the way stands in the tables of this file; what they do not
foresee stops the script with the row.
"""

import csv
import pathlib
import re
import sys

OUT = pathlib.Path(__file__).parent.parent / "src" / "stemward" / "handbook" / "data"
CM_PER_IN = 2.54
G_L_PER_LB_GAL = 119.826427  # 453.59237 g / 3.785411784 L
MEMORY = "from memory"


class UnforeseenError(Exception):
    """A raw row that no rule of this script covers."""


def words(text):
    """The words of a list written as one text."""
    return tuple(text.split())


def rows(folder, name):
    """The data rows of a raw table with their ids, "species.csv:12" for the twelfth."""
    with (folder / name).open(encoding="utf-8", newline="") as file:
        return [(f"{name}:{n}", row) for n, row in enumerate(csv.DictReader(file), 1)]


def write(folder, name, out):
    """Write a table with Unix line ends."""
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / name).open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(out[0]), lineterminator="\n")
        writer.writeheader()
        writer.writerows(out)
    print(f"{name}: {len(out)} rows")


def number(value):
    """A figure in as few digits as it needs; empty for None."""
    return "" if value is None else f"{value:.9g}"


def share(percent):
    """A percent as typed, as a fraction; None where nothing is typed."""
    return float(percent) / 100 if percent else None


# --- species -----------------------------------------------------------------------------------------------

NAMES_TEXT = """
Ailanthus altissima | tree-of-heaven | Ailanthus glandulosa; Toxicodendron altissimum; ailanthus
Ligustrum vulgare | common privet | European privet
Lonicera tatarica | Tatarian honeysuckle | Bell's honeysuckle; Lonicera x bella
Rhamnus cathartica | common buckthorn | European buckthorn
Frangula alnus | glossy buckthorn | Rhamnus frangula; alder buckthorn
Pyrus calleryana | callery pear | Bradford pear
Albizia julibrissin | mimosa | silktree; Albizzia julibrissin
Triadica sebifera | tallowtree | Chinese tallowtree; Chinese tallow; Sapium sebiferum
Tamarix ramosissima | saltcedar | tamarisk; Tamarix chinensis
Hedera helix | English ivy | Hedera hibernica
Quercus spp. | oak | oaks
Carya spp. | hickory | hickories
Salix spp. | willow | willows
Fraxinus spp. | ash | ashes
Vitis spp. | wild grape | wild grapes; grapevine; grape
Smilax spp. | greenbrier | greenbriers
Crataegus spp. | hawthorn | hawthorns; Crataegus monogyna
Rhus glabra | smooth sumac | sumac
Rhus typhina | staghorn sumac | Rhus hirta; sumac
Populus tremuloides | quaking aspen | trembling aspen; aspen
Populus grandidentata | bigtooth aspen | aspen
Liriodendron tulipifera | yellow-poplar | tulip-tree; tulip-poplar
Nyssa sylvatica | blackgum | black tupelo
Betula lenta | black birch | sweet birch
Platanus occidentalis | American sycamore | sycamore
Fagus grandifolia | American beech | beech
Acer negundo | boxelder |
Phellodendron amurense | Amur corktree |
Rhododendron maximum | great rhododendron | rosebay
Parthenocissus quinquefolia | Virginia creeper |
Paulownia tomentosa | princess tree | paulownia
Notholithocarpus densiflorus | tanoak | Lithocarpus densiflorus
Prosopis glandulosa | honey mesquite | mesquite; Prosopis juliflora var. glandulosa
Pueraria montana var. lobata | kudzu | Pueraria lobata
Ampelopsis glandulosa var. brevipedunculata | porcelain-berry | Amur peppervine; Ampelopsis brevipedunculata
Rubus armeniacus | Himalayan blackberry | Rubus discolor; Rubus procerus
Schinus terebinthifolia | Brazilian peppertree | Schinus terebinthifolius
Carpinus caroliniana | musclewood | American hornbeam; blue-beech; ironwood
Melia azedarach | chinaberry | Persian lilac; umbrella tree
"""
"""Latin, common and other names, where the raw ones hold remarks, slashes or shortened names."""
NAMES = {
    latin: (common, others)
    for latin, common, others in (map(str.strip, line.split("|")) for line in NAMES_TEXT.strip().split("\n"))
}

SPLIT = {
    "Ulmus americana / U. rubra / U. alata": {
        "Ulmus americana": ("American elm", "white elm"),
        "Ulmus rubra": ("slippery elm", "red elm"),
        "Ulmus alata": ("winged elm", ""),
    },
    "Wisteria sinensis / W. floribunda": {
        "Wisteria sinensis": ("Chinese wisteria", "Wisteria x formosa"),
        "Wisteria floribunda": ("Japanese wisteria", "Wisteria x formosa"),
    },
    "Toxicodendron diversilobum / T. radicans": {
        "Toxicodendron diversilobum": ("poison-oak", "Pacific poison-oak; Rhus diversiloba"),
        "Toxicodendron radicans": ("poison-ivy", "Rhus radicans"),
    },
    "Celtis laevigata / C. occidentalis": {
        "Celtis laevigata": ("sugarberry", ""),
        "Celtis occidentalis": ("hackberry", "northern hackberry"),
    },
}
"""Raw rows that speak of several species at once."""

FROM_PLACES = words(
    "Chinese European Amur Morrow Tatarian Russian Norway Siberian Japanese English Scotch French "
    "Brazilian Australian Himalayan American Pacific Oregon Osage Ashe Virginia"
)

CORRECTED = {
    "Rhamnus cathartica": {
        "note": "crown sprouts; most seed in the soil germinates within two years",
        "source": "Minnesota DNR buckthorn control page, as summarised in trials.md (seed)",
        "place": "https://www-dev.dnr.state.mn.us/invasives/terrestrialplants/woody/buckthorn/control.html",
    },
    "Prunus serotina": {
        "root_suckers": "weak",
        "source": "root suckers weak: nontarget.md section 2, from memory",
    },
}
"""Corrections made since the raw table was written."""

SPROUTING = re.compile(r"sprout|sucker|clon|root|layer|crown|stump|cut stems|regrow|tip", re.I)
NOT_SPROUTING = re.compile(r"understory increase|resistance only|status only", re.I)


def species(folder):
    """One row a species: the table, its upgrades, its corrections."""
    upgrades = {row["scientific_name"]: (raw, row) for raw, row in rows(folder, "species_upgrades.csv")}
    out, seen = [], set()
    for raw, row in rows(folder, "species.csv"):
        latin = row["scientific_name"]
        extra = upgrades.get(latin)
        if extra is not None:
            raw, row = f"{raw} {extra[0]}", upgraded(row, extra[1])
        seen.add(latin)
        plain = species_row(raw, row)
        for name, names in SPLIT.get(latin, {latin: None}).items():
            one = plain | {"latin": name}
            one["common"], one["synonyms"] = names or NAMES.get(name) or given_names(row)
            out.append(one)
    if left := set(upgrades) - seen:
        raise UnforeseenError(f"species_upgrades.csv: no species row for {sorted(left)}")
    return out


def upgraded(row, better):
    """A species row with what the upgrade says put in its place, and both sources."""
    said = {k: v for k, v in better.items() if v and v != "see existing row"}
    pair = [row, better] if not is_memory(row["source"]) else [better, row]
    joined = {k: [r[k] for r in pair if r[k] and not r[k].startswith(MEMORY)] for k in ("source", "url")}
    return row | said | {"source": "; ".join(joined["source"]), "url": " ".join(dict.fromkeys(joined["url"]))}


def species_row(raw, row):
    """One raw species row in our terms."""
    latin = row["scientific_name"]
    fixed = CORRECTED.get(latin, {})
    source = "; ".join(filter(None, (row["source"], fixed.get("source", ""))))
    grade = "memory" if is_memory(row["source"]) else "published"
    place = " ".join(filter(None, (row["url"], fixed.get("place", ""))))
    if "anufacturer" in source:
        source, place, grade = "a maker's bulletin, 2015, not leaned on; from memory", "", "memory"
    inches = row["max_dbh_in"]
    return {
        "latin": latin,
        "common": "",
        "synonyms": "",
        "habit": row["habit"],
        "native": {"y": "yes", "n": "no"}[row["native_to_NA"]],
        "stump_sprouts": {"none": "no"}.get(row["stump_sprouts"], row["stump_sprouts"]),
        "root_suckers": fixed.get("root_suckers") or {"y": "yes", "n": "no"}[row["root_suckers"]],
        "note": fixed.get("note") or row["clonal_or_root_grafts"],
        "evergreen": {"y": "yes", "n": "no"}.get(row["evergreen"], row["evergreen"]),
        "max_dbh_cm": number(float(inches) * CM_PER_IN) if inches else "",
        "typed": f"{inches} in" if inches else "",
        "cautions": row["cautions"].replace("season_more.md", "seasons.md"),
        "source": source,
        "place": place,
        "grade": grade,
        "raw": raw,
    }


def is_memory(source):
    """True if no source was read for how the plant sprouts."""
    read = [part for part in source.split(";") if MEMORY not in part and not NOT_SPROUTING.search(part)]
    return not any(SPROUTING.search(part) for part in read)


def given_names(row):
    """Common name as a plain noun, and the other names with their genus written out."""
    common, genus = row["common_name"], row["scientific_name"].split()[0]
    if not common.startswith(FROM_PLACES):
        common = common[:1].lower() + common[1:]
    others = [re.sub(rf"^{genus[0]}\. ", f"{genus} ", n.strip()) for n in row["synonyms"].split(";")]
    if any("/" in n or "(" in n for n in (common, *others)):
        raise UnforeseenError(f"{row['scientific_name']}: names need a row in NAMES")
    return common, "; ".join(n for n in others if n)


# --- evidence ----------------------------------------------------------------------------------------------

METHODS = {
    "cut_stump": "cut stump",
    "basal_bark": "basal bark",
    "foliar": "foliar",
    "cut_only": "cut only",
    "injection": "hack and squirt",
    "soil_spot": "soil spot",
}
WITHOUT = ("pull", "grub", "girdle", "torch", "flame", "fire", "graz", "cover")
WITHOUT_NAMES = {"grub": "pull", "flame": "torch", "graz": "graze"}
KINDS = {
    "trial": ("trial", ""),
    "trial_cited": ("trial cited", ""),
    "extension": ("extension", ""),
    "handbook": ("handbook", ""),
    "handbook_old": ("handbook", "old"),
    "agency_guide": ("agency", ""),
    "agency_plan": ("agency", ""),
    "practitioner": ("practitioner", ""),
}
INGREDIENTS = {"2,4-d": "2,4-D", "metsulfuron": "metsulfuron-methyl"} | {
    name: name
    for name in words(
        "glyphosate triclopyr imazapyr imazapic picloram aminopyralid aminocyclopyrachlor clopyralid dicamba "
        "fosamine hexazinone fluroxypyr glufosinate mesotrione tebuthiuron"
    )
}
FORMS = (("choline", "choline"), ("ester", "ester"), ("triethylamine", "amine"), ("salt", "salt"))
NOT_STATED = re.compile(r"\bAI\b|herbicide|^any$", re.I)
RATING = re.compile(r"^(excellent|good|fair|poor)(?: to (excellent|good|fair))?(?![a-z])")
AGAINST = re.compile(
    r"^(poor|resistant|listed as resistant|discouraged|inconsistent|inadequate|makes it worse|not recommended"
    r"|not enough|least effective|less |below|lower than|kills top|kills stems; rhizome|stops seed"
    r"|slows invasion|weaker on roots|sets back|some resprouted|few resprouts|worse at|high canopy reduction"
    r"|only works if|works only|weakens|climbing vines die|22% of mowed|may need re-cutting"
    r"|plants with developed roots|seedlings and small plants; larger|good top kill in weeks"
    r"|needed follow-up)"
)
NO_VERDICT = re.compile(
    r"^(\(caution|tested|typical spot mix|general mix|problem species|recommended group|some species|usable"
    r"|labelled|large stands|seedlings|small |kills seedlings|better|similar)"
)
FIGURE = re.compile(r"(>=|<=|>|<|over )?\s*(\d+(?:\.\d+)?)(?:\s*[-/]\s*(\d+(?:\.\d+)?))?%")
RATED = {
    "good top kill in weeks, falling by year 3 (sprouts)": ("none-stated", "", None, None),
    "excellent in season (90-100%), fair next season (50-70%)": ("fair", "excellent", 0.5, 1.0),
    "excellent (cover 31% to 0.5%)": ("excellent", "", None, None),
    "poor (45% vs 3% untreated)": ("poor", "", 0.45, 0.45),
    "22% of mowed 0.5-1.25 in trees sprouted": ("none-stated", "", None, None),
    "nearly 100% claimed": ("none-stated", "", None, None),
    "good (at least 7 of 10 killed)": ("good", "", 0.7, 1.0),
    "fair (just over 50% dead, many sprouts)": ("fair", "", 0.5, 0.5),
    "excellent (95% or more of stumps dead)": ("excellent", "", 0.95, 1.0),
    "excellent (nearly 100%)": ("excellent", "", None, None),
    "less than triclopyr ester 30%": ("none-stated", "", None, None),
    "below the >85% class": ("none-stated", "", 0.0, 0.85),
}
"""Ratings whose words or figures the rules would misread: word, greater word, share controlled."""

SIDE_EFFECT = "killed through roots"
REWORDED = {
    "a 20% glyphosate sponge alone is not safe to promise": "do not promise anything of a 20% sponge alone",
    "safer for neighbours": "less risk to neighbours",
}


def evidence(folder):
    """One row a raw efficacy row, without those of makers."""
    return [
        evidence_row(raw, row) for raw, row in rows(folder, "efficacy.csv") if row["evidence_type"] != "manufacturer"
    ]


def evidence_row(raw, row):
    """One raw efficacy row in our terms."""
    text = row["active_ingredient"]
    kind, old = KINDS[row["evidence_type"]]
    names, joined = ingredients_of(raw, text)
    rating, rating_high, low, high = rating_of(row["rating"])
    flags = [old, unclear(row), "ingredient not stated" if joined == "not stated" else ""]
    if SIDE_EFFECT in row["rating"]:
        flags.append("side effect")
    if "tested; result" in row["rating"]:
        flags.append("result not read")
    strength = re.match(r"^(\d+(?:\.\d+)?) lb ae/gal(?! \(from memory\))", row["formulation_strength"])
    note = row["notes"]
    for said, instead in REWORDED.items():
        note = note.replace(said, instead)
    return {
        "id": raw,
        "plant": row["scientific_name"],
        "method": method_of(raw, row),
        "ingredients": "|".join(names),
        "joined": joined,
        "form": form_of(text),
        "rating": rating,
        "rating_high": rating_high,
        "low_frac": number(low),
        "high_frac": number(high),
        "typed": row["rating"],
        "sense": sense_of(row["rating"]),
        "concentration_low_frac": number(share(row["concentration_low_pct_vv"])),
        "concentration_high_frac": number(share(row["concentration_high_pct_vv"])),
        "strength_ae_g_l": number(float(strength[1]) * G_L_PER_LB_GAL) if strength else "",
        "strength_typed": row["formulation_strength"],
        "season": row["season"],
        "kind": kind,
        "flags": "|".join(f for f in flags if f),
        "note": "; ".join(p for p in (note, extra_words(text, names)) if p),
        "source": row["source"],
        "place": row["url"],
        "grade": "published",
        "read": row["what_was_read"],
    }


def method_of(raw, row):
    """The way of treating, in the trade's words; stumps and capsules injected are ways of their own."""
    text = row["active_ingredient"].lower()
    if row["method"] == "non_chemical":
        for word in WITHOUT:
            if word in text:
                return WITHOUT_NAMES.get(word, word)
        raise UnforeseenError(f"{raw}: which way without herbicide is '{text}'")
    if row["method"] == "injection" and "into the STUMP" in row["notes"]:
        return "stump injection"
    if "capsule" in text:
        return "capsule injection"
    return METHODS[row["method"]]


def ingredients_of(raw, text):
    """Ingredient names, and how they are joined: with, or, not stated, or empty for one or none."""
    if text.startswith("none"):
        return (), ""
    found = [
        (m.start(), name) for word, name in INGREDIENTS.items() for m in re.finditer(re.escape(word), text.lower())
    ]
    names = tuple(dict.fromkeys(name for _, name in sorted(found)))
    if not names:
        if NOT_STATED.search(text):
            return (), "not stated"
        raise UnforeseenError(f"{raw}: ingredient '{text}'")
    if len(names) == 1:
        return names, ""
    return names, "or" if " or " in text else "with"


def form_of(text):
    """Salt, ester, amine, choline or acid where the source says, else empty."""
    lower = text.lower()
    for word, form in FORMS:
        if word in lower:
            return form
    return "acid" if re.search(r"\bacid\b", lower) else ""


def extra_words(text, names):
    """What the raw ingredient column says beyond plain names of ingredients."""
    return "" if text.lower() in {n.lower() for n in names} or text == "none" else f"as written: {text}"


def rating_of(typed):
    """Rating word (the lesser of a range), the greater, and the least and greatest share controlled."""
    if typed in RATED:
        return RATED[typed]
    word = RATING.match(typed)
    figures = [bounds(m) for m in FIGURE.finditer(typed.split(";")[0])]
    if "sprouted" in typed or not figures:
        low = high = None
    else:
        low, high = min(f[0] for f in figures), max(f[1] for f in figures)
    return word[1] if word else "none-stated", (word[2] or "") if word else "", low, high


def bounds(match):
    """Least and greatest share of a figure such as >=90%, 71-86% or 99%."""
    sign, first, second = match.groups()
    low, high = sorted((float(first) / 100, float(second or first) / 100))
    if sign in (">=", ">", "over "):
        return low, 1.0
    if sign in ("<=", "<"):
        return 0.0, high
    return low, high


def sense_of(typed):
    """Whether the row speaks for the treatment, against it, or gives no verdict."""
    if AGAINST.match(typed):
        return "against"
    return "none" if NO_VERDICT.match(typed) else "for"


def unclear(row):
    """Strengths of which the source leaves open what they mean: New Hampshire, Iowa and Missouri leaflets."""
    low, source = row["concentration_low_pct_vv"], row["source"]
    return (
        "unclear"
        if ("New Hampshire" in source and low in ("8", "41"))
        or ("Hawkeye" in source and low == "12.5")
        or ("Missouri" in source and low == "4")
        else ""
    )


# --- ingredients -------------------------------------------------------------------------------------------

FORM_CLASS = {
    "acid": "acid",
    "TEA amine salt": "amine",
    "BEE butoxyethyl ester": "ester",
    "choline salt": "choline",
    "ester (2-ethylhexyl)": "ester",
    "methylheptyl ester (acid in soil)": "ester",
    "60% dry flowable": "dry",
    "liquid, DF, granule/pellet": "any",
}
ACTIVE = {"n": "no", "weak": "weak", "weak/short": "weak", "y via acid (weak)": "weak"}

ROOTS = words("imazapyr picloram aminopyralid aminocyclopyrachlor clopyralid dicamba hexazinone")
"""Ingredients that roots exude or soil keeps active, so that the whole dose counts as reaching soil."""

RANGES = {
    ("glyphosate", "salt"): ((1, 174), (300, 20100)),
    ("triclopyr", "acid"): ((5, 100), (25, 384)),
    ("triclopyr", "amine"): ((30, 46), (20, 20)),
    ("triclopyr", "ester"): ((None, None), (640, 1650)),
    ("triclopyr", "choline"): ((None, None), (None, None)),
    ("imazapyr", "salt"): ((25, 268), (30, 100)),
    ("picloram", "salt"): ((30, None), (13, 16)),
    ("aminopyralid", "salt"): ((20, 533), (1.05, 24.3)),
    ("aminocyclopyrachlor", "salt"): ((3, 433), (2, 28)),
    ("clopyralid", "salt"): ((9, 365), (0.4, 12.9)),
    ("2,4-D", "salt"): ((1, 14), (19.6, 109.1)),
    ("2,4-D", "ester"): ((None, None), (100, 100)),
    ("dicamba", "salt"): ((3, 136), (2, 21)),
    ("fosamine", "salt"): ((7, 14), (150, 150)),
    ("metsulfuron-methyl", "dry"): ((6.3, 42), (4, 345)),
    ("hexazinone", "any"): ((30, 180), (54, 54)),
    ("imazamox", "salt"): ((15, 130), (5, 143)),
    ("fluroxypyr", "ester"): ((7, 78), (50, 136)),
}
"""Least and greatest half-life in soil (days) and Koc (mL/g) among the figures each raw cell holds."""


def ingredients(folder):
    """One row a value: what each ingredient does in soil and at roots, by form."""
    out = []
    for raw, row in rows(folder, "ai_properties.csv"):
        name = row["active_ingredient"].replace("fosamine ammonium", "fosamine")
        form = FORM_CLASS.get(row["form"], "salt")
        for quantity, value, unit, typed, where, basis, note in properties(name, form, row):
            source, place = split_source(where)
            grade = "memory" if "memory" in basis or not place else "published"
            out.append(
                {
                    "id": f"ingredient.{name}.{form}.{quantity}", "ingredient": name, "form": form,
                    "quantity": quantity, "value": value, "unit": unit, "typed": typed, "source": source,
                    "place": place, "grade": grade, "note": note, "raw": raw,
                }
            )  # fmt: skip
    return out


def properties(name, form, row):
    """The values of one raw row: quantity, value, unit, as typed, where it stands, basis, note."""
    typed = row["soil_active_on_woody_roots"]
    source = row["soil_active_source"]
    active = ACTIVE.get(typed) or ("weak" if "(weak" in typed else "yes")
    note = ""
    if active == "no" and source.startswith(MEMORY):
        active, note = "weak", "a no from memory is not relied on"
    yield "soil_active", active, "", typed, source, source, note
    exuded, where = row["flashback_or_root_exudation"], row["flashback_source"]
    yield "exuded", "yes" if name in ROOTS else "no", "", exuded or "nothing said", where, where, ""
    yield "translocated", "yes", "", "", MEMORY, "memory", "taken as moving within the plant"
    yield (
        "group",
        row["hrac_wssa_group"].split()[0],
        "",
        row["hrac_wssa_group"],
        row["group_source"],
        row["group_source"],
        "",
    )
    dt50, koc = RANGES[(name, form)]
    yield from span(dt50, row, "dt50", "d", "soil_dt50_range_d", "soil_dt50_typical_d")
    yield from span(koc, row, "koc", "ml_g", "koc_range_mL_g", "koc_typical_mL_g")


def span(ends, row, quantity, unit, range_column, typical_column):
    """Low, typical and high of one property; each end must stand in the raw cell."""
    typed, where, basis = row[range_column], row[f"{quantity}_source"], row[f"{quantity}_basis"]
    for end, value in zip(("low", "high"), ends, strict=True):
        if value is None:
            continue
        if not re.search(
            rf"(?<![\d.]){re.escape(f'{value:g}')}(?![\d.]*\d)", typed + f" {basis} {row[typical_column]}"
        ):
            raise UnforeseenError(f"{row['active_ingredient']}: {value} does not stand in '{typed}'")
        yield f"{quantity}_{end}", number(value), unit, typed, where, range_basis(typed, basis, value), ""
    typical = row[typical_column]
    if re.fullmatch(r"[\d.]+", typical):
        yield f"{quantity}_typical", typical, unit, typical, where, basis, ""


def range_basis(typed, basis, value):
    """How one end of a range is known: the remark beside it, else the remark on ranges in the basis."""
    beside = next((part for part in typed.split(";") if f"{value:g}" in part), "")
    if "memory" in beside:
        return "memory"
    return "read" if "(read)" in beside or basis.startswith(("range", "read")) else basis


def split_source(text):
    """Who says so, and the addresses."""
    urls = re.findall(r"https?://\S+", text)
    who = (
        re.sub(r"\s*https?://\S+", "", text)
        .replace("; verify before use", "")
        .replace(" verify", "")
        .replace(" | ", "; ")
    )
    return who.strip(" ;|") or MEMORY, " ".join(u.rstrip(")") if "(" not in u else u for u in urls)


def main(raw, out=OUT):
    """Write the three tables."""
    write(out, "species.csv", species(raw))
    write(out, "evidence.csv", evidence(raw))
    write(out, "ingredients.csv", ingredients(raw))


if __name__ == "__main__":
    try:
        main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else OUT)
    except (IndexError, UnforeseenError) as problem:
        sys.exit(f"Not written: {problem if isinstance(problem, UnforeseenError) else 'name the raw folder'}")
