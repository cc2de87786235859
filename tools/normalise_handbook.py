"""Make the handbook's tables from raw CSV files, each raw row once, with its id kept.

    python tools/normalise_handbook.py RAWDIR [OUTDIR]

Writes species.csv, ingredients.csv and evidence.csv. Tables kept by hand (defaults, tools, strengths, cut rules and
so on) stand beside them and are not touched. Raw rows are named file:row, the first row under the heading being 1.
"""

import csv
import io
import pathlib
import re
import sys

DATA = pathlib.Path(__file__).parent.parent / "src/stemward/handbook/data"
CM_PER_IN = 2.54

METHODS = {
    "cut_stump": "cut stump",
    "injection": "hack and squirt",
    "basal_bark": "basal bark",
    "foliar": "foliar",
    "cut_only": "cut only",
    "soil_spot": "soil spot",
}
KINDS = {
    "trial": "trial",
    "trial_cited": "trial cited",
    "extension": "extension",
    "handbook": "handbook",
    "handbook_old": "handbook, old",
    "agency_guide": "agency",
    "agency_plan": "agency",
    "practitioner": "practitioner",
}
INGREDIENTS = (
    "glyphosate",
    "triclopyr",
    "imazapyr",
    "picloram",
    "aminopyralid",
    "aminocyclopyrachlor",
    "clopyralid",
    "fosamine",
    "hexazinone",
    "metsulfuron",
    "fluroxypyr",
    "dicamba",
    "2,4-D",
)
EXUDED = (
    "imazapyr",
    "picloram",
    "aminopyralid",
    "aminocyclopyrachlor",
    "clopyralid",
    "dicamba",
    "hexazinone",
)
"""Given off by roots, or kept active by soil: the whole dose counts as reaching it."""

CLONES = (
    "Ailanthus altissima|Robinia pseudoacacia|Populus tremuloides|Populus grandidentata|Populus alba|"
    "Rhus glabra|Rhus typhina|Sassafras albidum|Fagus grandifolia|Cornus drummondii|Cornus racemosa|"
    "Zanthoxylum americanum"
).split("|")
"""Spread as one plant by root suckers: species table, and a list of root-suckering clones from memory."""

CUT_WORSE = (
    "Ailanthus altissima|Robinia pseudoacacia|Populus tremuloides|Populus grandidentata|Rhus glabra|"
    "Rhus typhina|Sassafras albidum|Populus alba"
).split("|")
CUT_FITS = ("Fagus grandifolia",)
GRAFTS = re.compile(r"graft", re.I)
STUMP_IN = re.compile(r"injected into the stump", re.I)
DOUBTFUL = re.compile(r"unclear|may be active ingredient|low be", re.I)
"""Notes on rows whose figure is doubtful: they never act as limits."""

PROPER = (
    "Chinese|European/common|Japanese|Norway|Amur|Morrow's|Tatarian|Russian|Siberian|Himalayan|English|"
    "Brazilian|Australian|French|Callery|American|Ashe|Pacific|Oregon|Virginia"
).split("|")


def rows_of(raw, name):
    """The rows of a raw file with their ids."""
    with (raw / name).open(encoding="utf-8", newline="") as file:
        return [(f"{name}:{n}", row) for n, row in enumerate(csv.DictReader(file), 1)]


def text_of(rows):
    """Rows as CSV text."""
    out = io.StringIO()
    writer = csv.DictWriter(out, list(rows[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def clean(text):
    """White space folded."""
    return " ".join((text or "").split())


def number(text):
    """The first figure in a text, or nothing."""
    found = re.search(r"[\d.]+", text.replace(",", ""))
    return found.group() if found else ""


def common(name):
    """A common name as written in a sentence: lower case unless its first word is a proper name."""
    return name if name.split()[0] in PROPER else name[:1].lower() + name[1:]


def raw_species(raw):
    """Raw species rows by Latin name; an upgrade puts a source behind a row, and what it leaves stays."""
    kept = {}
    for raw_id, row in [*rows_of(raw, "species.csv"), *rows_of(raw, "species_upgrades.csv")]:
        latin = clean(row["scientific_name"])
        if latin in kept:
            before_id, before = kept[latin]
            row = {k: before[k] if "see existing row" in v or not v else v for k, v in row.items()}
            row["source"] = f"{before['source']}; {row['source']}"
            raw_id = f"{before_id} + {raw_id}"
        kept[latin] = (raw_id, row)
    return kept


def species(raw):
    """Species rows, corrections applied."""
    for latin, (raw_id, row) in raw_species(raw).items():
        source, spread = clean(row["source"]), clean(row["clonal_or_root_grafts"])
        suckers = {"y": "yes", "n": "no"}[row["root_suckers"]]
        if latin == "Prunus serotina":
            suckers, source = "weak", f"{source}; list of root-suckering clones (weak), from memory"
        if latin == "Rhamnus cathartica":
            spread = "crown sprouts; most seed germinates within two years"
            source = f"{source}; Minnesota DNR, buckthorn control page (seed)"
        yield {
            "latin": latin,
            "common": common(clean(row["common_name"])),
            "synonyms": clean(row["synonyms"]),
            "habit": row["habit"],
            "native": {"y": "yes", "n": "no"}[row["native_to_NA"]],
            "stump_sprouts": {"none": "no"}.get(row["stump_sprouts"], row["stump_sprouts"]),
            "root_suckers": suckers,
            "spread": spread,
            "clone": "yes" if latin in CLONES else "no",
            "grafts": "yes" if GRAFTS.search(spread) or latin in CLONES else "no",
            "cut_first": "worse" if latin in CUT_WORSE else "fits" if latin in CUT_FITS else "no harm known",
            "evergreen": row["evergreen"],
            "max_dbh_cm": f"{float(row['max_dbh_in']) * CM_PER_IN:g}" if row["max_dbh_in"] else "",
            "cautions": clean(row["cautions"]),
            "source": source,
            "place": clean(row["url"]),
            "grade": "memory" if source.lower().startswith("from memory") else "published",
            "raw": raw_id,
        }


def ingredients(raw):
    """Ingredient rows by form."""
    for raw_id, row in rows_of(raw, "ai_properties.csv"):
        active = row["soil_active_on_woody_roots"].strip().lower()
        name = clean(row["active_ingredient"])
        memory = "memory" in row["dt50_basis"] and "read" not in row["dt50_basis"]
        yield {
            "name": name.removesuffix("-methyl").removesuffix(" ammonium"),
            "form": clean(row["form"]),
            "group": clean(row["hrac_wssa_group"]),
            "soil_active": "weak" if "weak" in active else "yes" if active.startswith("y") else "no",
            "soil_source": clean(row["soil_active_source"]),
            "exuded": "yes" if name in EXUDED else "no",
            "exuded_note": clean(row["flashback_or_root_exudation"]),
            "exuded_source": clean(row["flashback_source"]) or "from memory",
            "koc_ml_g": number(row["koc_typical_mL_g"]),
            "koc_grade": "published" if row["koc_basis"].startswith("read") else "memory",
            "koc_source": clean(row["koc_source"]) or "from memory",
            "dt50_days": number(row["soil_dt50_typical_d"]),
            "dt50_range": clean(row["soil_dt50_range_d"]),
            "dt50_grade": "memory" if memory else "published",
            "dt50_source": clean(row["dt50_source"]) or "from memory",
            "raw": raw_id,
        }


def rating(text):
    """excellent, good, fair or poor where the row says so; resistant is poor; anything else is a word only."""
    first = text.strip().lower()
    for word in ("excellent", "good", "fair", "poor"):
        if first.startswith(word):
            return word
    return "poor" if first.startswith(("resistant", "listed as resistant")) else "word only"


def evidence(raw):
    """Rows on plant, way and ingredients; makers' own claims are left out."""
    for raw_id, row in rows_of(raw, "efficacy.csv"):
        method, kind = METHODS.get(row["method"]), KINDS.get(row["evidence_type"])
        if method is None or kind is None:
            continue
        text, notes = row["active_ingredient"], clean(row["notes"])
        low, high = row["concentration_low_pct_vv"], row["concentration_high_pct_vv"]
        named = [i for i in INGREDIENTS if re.search(rf"\b{re.escape(i)}", text, re.I)]
        yield {
            "latin": clean(row["scientific_name"]),
            "method": "stump injection" if STUMP_IN.search(notes) else method,
            "ingredients": ";".join(named),
            "ingredient_text": clean(text),
            "low_frac": f"{float(low) / 100:g}" if low else "",
            "high_frac": f"{float(high) / 100:g}" if high else "",
            "strength": clean(row["formulation_strength"]),
            "rating": rating(row["rating"]),
            "rating_text": clean(row["rating"]),
            "season": clean(row["season"]),
            "notes": notes,
            "kind": kind,
            "limit": "no" if DOUBTFUL.search(notes) else "yes",
            "read": clean(row["what_was_read"]),
            "source": clean(row["source"]),
            "place": clean(row["url"]),
            "raw": raw_id,
        }


MAKERS = {"species.csv": species, "ingredients.csv": ingredients, "evidence.csv": evidence}


def tables(raw):
    """The texts of the three tables made from raw files, by name."""
    return {name: text_of(list(make(raw))) for name, make in MAKERS.items()}


if __name__ == "__main__":
    out = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else DATA
    for name, text in tables(pathlib.Path(sys.argv[1])).items():
        (out / name).write_text(text, encoding="utf-8")
        print(f"{name}: {len(text.splitlines()) - 1} rows")
