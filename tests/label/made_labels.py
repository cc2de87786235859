"""Invented labels in many layouts, made of sentences in the shapes that labels use, with what each sentence says.

Shapes are those of the project's notes on labels, restated; every figure is drawn by chance. What is expected stands
beside each shape, so that what a reader finds can be held against what was printed.
"""

import random
from dataclasses import dataclass

import typst

Expected = tuple[str, str, str]
"""Kind, value as typed, method of its scope or ""."""


@dataclass(frozen=True)
class Shape:
    """A sentence with gaps, the part it stands in, what it says, and how often it is drawn."""

    part: str
    text: str
    says: tuple[Expected, ...]


SHAPES = (
    Shape("front", "EPA Reg. No. {reg}", (("registration number", "{reg}", ""),)),
    Shape("front", "EPA Registration Number: {reg}", (("registration number", "{reg}", ""),)),
    Shape("front", "EPA Est. No. {est}", (("establishment number", "{est}", ""),)),
    Shape("front", "{SIGNAL}", (("signal word", "{signal}", ""),)),
    Shape("front", "Glyphosate, isopropylamine salt ........ {pct}%", (("ingredient percent", "{pct} %", ""),)),
    Shape("equipment", "Applicators and other handlers must wear: long-sleeved shirt and long pants, shoes plus socks, and "
          "protective eyewear.", (("equipment", "long-sleeved shirt", ""), ("equipment", "long pants", ""),
          ("equipment", "shoes and socks", ""), ("equipment", "protective eyewear", ""))),
    Shape("equipment", "Wear chemical-resistant gloves made of barrier laminate, or nitrile rubber 14 mil or thicker.",
          (("equipment", "chemical-resistant gloves", ""), ("glove material", "barrier laminate", ""),
           ("glove material", "nitrile rubber", ""))),
    Shape("equipment", "Some materials resistant to this product are listed; for more choices follow category {cat} on the "
          "glove chart.", (("glove category", "{cat}", ""),)),
    Shape("farm workers", "Do not enter or allow worker entry into treated areas during the restricted-entry interval (REI) "
          "of {rei} hours.", (("entry interval", "{rei} hours", ""),)),
    Shape("others", "Keep children and pets off treated areas until sprays have dried.", (("keep out until dry", "yes", ""),)),
    Shape("restrictions", "Do not apply more than {lb} lb ae per acre per year.", (("most per year", "{lb} lb/acre", ""),)),
    Shape("restrictions", "Do not exceed {lb} pounds acid equivalent per acre in any 12-month period.",
          (("most per year", "{lb} lb/acre", ""), ("year means", "12 months", ""))),
    Shape("restrictions", "Maximum single application: {one} lb ae per acre per application.",
          (("most per application", "{one} lb/acre", ""),)),
    Shape("restrictions", "Make no more than {n} applications per year.", (("most applications", "{n}", ""),)),
    Shape("restrictions", "Allow at least {days} days between applications.", (("shortest interval", "{days} days", ""),)),
    Shape("restrictions", "Minimum re-treatment interval: {days} days.", (("shortest interval", "{days} days", ""),)),
    Shape("restrictions", "Do not use less than the rates given.", (("less is forbidden", "yes", ""),)),
    Shape("restrictions", "Apply only by the methods described on this label.", (("only listed methods", "yes", ""),)),
    Shape("restrictions", "Use only for control of the plants named on this label.", (("only listed plants", "yes", ""),)),
    Shape("sites", "For use in forests, non-crop areas and rights-of-way.", (("site", "woods", ""), ("site", "non-crop", ""),
          ("site", "right-of-way", ""))),
    Shape("sites", "Not for use on lawns.", (("site forbidden", "yard", ""),)),
    Shape("sites", "Not for sale or use in {state}.", (("state excluded", "{code}", ""),)),
    Shape("cut stump", "Treat the cut surface within {min} minutes of cutting with a {low}-{high} % solution.",
          (("longest from cut to treatment", "{min} minutes", "cut stump"), ("weakest mix", "{low} %", "cut stump"),
           ("strongest mix", "{high} %", "cut stump"))),
    Shape("cut stump", "Dilute 1 part product with {parts} parts water.", (("strongest mix", "{ratio} %", "cut stump"),
          ("carrier", "water", "cut stump"))),
    Shape("basal bark", "Mix {low} to {high} % of this product in oil.", (("weakest mix", "{low} %", "basal bark"),
          ("strongest mix", "{high} %", "basal bark"), ("carrier", "oil", "basal bark"))),
    Shape("basal bark", "Treat stems less than {dia} inches in basal diameter.", (("greatest stem", "{dia} in", "basal bark"),)),
    Shape("hack and squirt", "Do not apply during heavy sap flow in spring.", (("season forbidden", "heavy sap flow", "hack and squirt"),)),
    Shape("foliar", "Apply a {lowp}-{highp} % v/v spray to wet, not to runoff.", (("weakest mix", "{lowp} %", "foliar"),
          ("strongest mix", "{highp} %", "foliar"))),
    Shape("drift", "Do not apply if rain is expected within {rain} hours.", (("hours without rain", "{rain} hours", ""),)),
    Shape("drift", "Do not apply when wind speed exceeds {wind} mph.", (("strongest wind", "{wind} mph", ""),)),
    Shape("drift", "Apply only when wind is between 3 and {wind} mph.", (("weakest wind", "3 mph", ""),
          ("strongest wind", "{wind} mph", ""))),
    Shape("drift", "Do not apply during a temperature inversion.", (("no inversion", "yes", ""),)),
    Shape("drift", "Do not apply when the temperature is above {heat} °F.", (("greatest heat", "{heat} F", ""),)),
    Shape("environment", "Do not apply within {ft} feet of permanent surface water.", (("distance to water", "{ft} ft", ""),)),
    Shape("environment", "Do not mix, load or rinse within {ft} feet of wells.", (("mixing distance to wells", "{ft} ft", ""),)),
    Shape("grazing", "Do not harvest hay for {wait} days after application.", (("hay wait", "{wait} days", ""),)),
    Shape("grazing", "Do not graze treated areas for {wait} days.", (("grazing wait", "{wait} days", ""),)),
    Shape("mixing", "Diluted spray must be used within {keep} hours.", (("mix keeps", "{keep} hours", ""),)),
    Shape("mixing", "Do not mix or store in unlined steel or galvanized containers.", (("vessel forbidden", "unlined steel", ""),
          ("vessel forbidden", "galvanised steel", ""))),
    Shape("storage", "Store above {cold} °F or warm and stir before use.", (("least storage heat", "{cold} F", ""),)),
)  # fmt: skip
HEADINGS = {
    "first aid": "FIRST AID", "equipment": "PERSONAL PROTECTIVE EQUIPMENT (PPE)", "environment": "ENVIRONMENTAL HAZARDS",
    "farm workers": "AGRICULTURAL USE REQUIREMENTS", "others": "NON-AGRICULTURAL USE REQUIREMENTS",
    "restrictions": "USE RESTRICTIONS", "sites": "SITES", "drift": "SPRAY DRIFT", "mixing": "MIXING",
    "cut stump": "CUT STUMP TREATMENT", "basal bark": "BASAL BARK TREATMENT", "hack and squirt": "TREE INJECTION",
    "foliar": "FOLIAR APPLICATION", "grazing": "GRAZING AND HAYING", "storage": "STORAGE AND DISPOSAL",
}  # fmt: skip
METHODS = ("cut stump", "basal bark", "hack and squirt", "foliar")
ORDER = ("front", *HEADINGS)
FILLER = (
    "Read the whole label before use and keep it with the container at all times.",
    "Results depend on the size of the plants, on the season and on how well the work is done.",
    "Wash hands before eating or drinking, and wash clothes apart from other laundry.",
    "Plants that were not treated will go on growing, and some seedlings will come up later.",
)


def drawn(chance: random.Random) -> dict[str, str]:
    """Figures for the gaps."""
    low, parts = chance.choice([5, 10, 20, 25, 50]), chance.choice([1, 3, 4])
    state, code = chance.choice(
        [("Wisconsin", "WI"), ("New York", "NY"), ("California", "CA"), ("West Virginia", "WV")]
    )
    signal = chance.choice(["danger", "warning", "caution"])
    lowp = chance.choice(["0.5", "0.75", "1", "2"])
    return {
        "reg": f"{chance.randint(1000, 99999)}-{chance.randint(1, 999)}", "est": f"{chance.randint(100, 99999)}-NY-{chance.randint(1, 9)}",
        "signal": signal, "SIGNAL": signal.upper(), "pct": f"{chance.uniform(10, 60):.1f}", "cat": chance.choice("ABCDEFGH"),
        "rei": chance.choice(["4", "12", "24", "48"]), "lb": chance.choice(["1", "1.5", "2", "4", "8"]),
        "one": chance.choice(["0.5", "1", "2"]), "n": chance.choice(["1", "2", "3"]), "days": chance.choice(["14", "30", "90"]),
        "state": state, "code": code, "min": chance.choice(["5", "15", "30"]), "low": str(low), "high": str(low + chance.choice([5, 25, 50])),
        "parts": str(parts), "ratio": f"{100 / (1 + parts):.4g}", "dia": chance.choice(["4", "6"]), "lowp": lowp,
        "highp": f"{float(lowp) + chance.choice([0.5, 1, 3]):g}", "rain": chance.choice(["1", "4", "6", "24"]),
        "wind": chance.choice(["8", "10", "15"]), "heat": chance.choice(["80", "85", "90"]), "ft": chance.choice(["10", "25", "50", "100"]),
        "wait": chance.choice(["3", "7", "14", "30"]), "keep": chance.choice(["8", "24"]), "cold": chance.choice(["10", "32"]),
    }  # fmt: skip


def label(
    seed: int, columns: int = 1, pages: int = 1, shapes: tuple[Shape, ...] = SHAPES
) -> tuple[bytes, list[Expected]]:
    """One label as PDF and what it says. pages: how often the filler is repeated, to make it long."""
    chance = random.Random(seed)
    gaps = drawn(chance)
    chosen: dict[str, list[Shape]] = {}
    taken: set[str] = set()
    for shape in chance.sample(shapes, len(shapes)):
        kinds = {kind + scope for kind, _, scope in shape.says}
        if not kinds & taken:
            taken |= kinds
            chosen.setdefault(shape.part, []).append(shape)
    expected: list[Expected] = []
    body: list[str] = []
    for part in ORDER:
        own = chosen.get(part, [])
        if not own:
            continue
        if part in METHODS:
            expected.append(("method", part, ""))
        if part != "front":
            body.append(f"#strong[{HEADINGS[part]}]\n\n")
        for shape in own:
            text = shape.text.format(**gaps)
            says = [(kind, value.format(**gaps), scope) for kind, value, scope in shape.says]
            expected += says
            paragraph = (
                text if part == "front" else f"{text} {chance.choice(FILLER)}" if chance.random() < 0.5 else text
            )
            body.append(escaped(paragraph) + "\n\n")
        body += [escaped(chance.choice(FILLER)) + "\n\n" for _ in range(8 * (pages - 1))]
    flow = "".join(body)
    laid = f"#columns({columns}, gutter: 14pt)[{flow}]" if columns > 1 else flow
    head = '#set page(paper: "us-letter", margin: 42pt)\n#set text(size: 8.5pt, hyphenate: true)\n#set par(justify: true)\n'
    title = "#align(center, text(20pt)[Example herbicide, invented])\n\n"
    return bytes(typst.compile((head + title + laid).encode(), format="pdf")), expected


def escaped(text: str) -> str:
    """A sentence as Typst takes it."""
    return "".join(f"\\{c}" if c in "#$*_@<>[]\\`~/=-+" else c for c in text)


def score(
    expected: list[Expected], found: list[tuple[str, str, tuple[str, ...]]]
) -> tuple[set[Expected], set[Expected], set[Expected]]:
    """What was found of the expected, what was missed, and what was proposed wrongly of the kinds that are printed."""
    wanted = {(kind, value.lower(), scope) for kind, value, scope in expected}
    have = {(kind, value.lower(), methods[0] if scoped(kind) and methods else "") for kind, value, methods in found}
    kinds = {kind for shape in SHAPES for kind, _, _ in shape.says}
    return wanted & have, wanted - have, {one for one in have - wanted if one[0] in kinds}


def scoped(kind: str) -> bool:
    """True for kinds whose way is part of what is scored."""
    return kind in {k for shape in SHAPES for k, _, scope in shape.says if scope}
