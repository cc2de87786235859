"""A press for invented labels: facts in sentences, set in the layouts that labels have. Prints no real product.

python bench/label_press.py FOLDER [COUNT]       writes labels and lists of what they say, to look at
"""

import json
import random
import sys
from dataclasses import asdict, dataclass
from importlib import resources
from pathlib import Path

from label_shapes import METHOD_PARTS, Printed, all_shapes, groups, printed

INSTEAD = {"restricted use": 6}
"""Groups whose decoy would contradict the statement: one label in so many has it instead."""
DECOY_EVERY = 3
LOUD = ("signal word", "restricted use")
"""What a front panel prints large."""
ORDER = (
    "front", "aid", "humans", "equipment", "environment", "directions", "farm", "others", "restrictions", "sites",
    "mixing", "weather", "grazing", "species", *METHOD_PARTS, "storage", "end",
)  # fmt: skip
STORAGE_FIRST = (*ORDER[:6], "storage", *(p for p in ORDER[6:] if p != "storage"))
HEADINGS = {
    "aid": ("FIRST AID", "STATEMENT OF PRACTICAL TREATMENT"),
    "humans": ("PRECAUTIONARY STATEMENTS", "HAZARDS TO HUMANS AND DOMESTIC ANIMALS"),
    "equipment": ("PERSONAL PROTECTIVE EQUIPMENT (PPE)", "PERSONAL PROTECTIVE EQUIPMENT"),
    "environment": ("ENVIRONMENTAL HAZARDS", "ENVIRONMENTAL HAZARDS"),
    "directions": ("DIRECTIONS FOR USE", "DIRECTIONS FOR USE"),
    "farm": ("AGRICULTURAL USE REQUIREMENTS", "AGRICULTURAL USE REQUIREMENTS"),
    "others": ("NON-AGRICULTURAL USE REQUIREMENTS", "NON-AGRICULTURAL USE REQUIREMENTS"),
    "storage": ("STORAGE AND DISPOSAL", "STORAGE & DISPOSAL"),
    "restrictions": ("USE RESTRICTIONS", "PRODUCT RESTRICTIONS"),
    "sites": ("USE SITES", "WHERE TO USE THIS PRODUCT"),
    "mixing": ("MIXING DIRECTIONS", "MIXING AND APPLICATION EQUIPMENT"),
    "weather": ("SPRAY DRIFT MANAGEMENT", "USE PRECAUTIONS"),
    "grazing": ("GRAZING AND HAYING RESTRICTIONS", "GRAZING AND HAY"),
    "species": ("WOODY PLANTS CONTROLLED", "TARGET SPECIES"),
    "cut stump": ("CUT STUMP TREATMENT", "CUT SURFACE TREATMENT OF STUMPS"),
    "basal bark": ("BASAL BARK TREATMENT", "LOW-VOLUME BASAL BARK APPLICATION"),
    "hack and squirt": ("HACK-AND-SQUIRT TREATMENT", "TREE INJECTION AND FRILL TREATMENT"),
    "foliar": ("FOLIAR APPLICATION", "HIGH-VOLUME FOLIAR SPRAY"),
    "end": ("LIMITED WARRANTY", "TERMS AND CONDITIONS OF SALE"),
}
"""New and old headings of the parts; those that rules fix are fixed (handbook, label.md, A2)."""
STANDING = {
    "front": ("KEEP OUT OF REACH OF CHILDREN", "Made for the invented works of Nowhere Mill. An invented label."),
    "humans": ("Harmful if it gets into the eyes.",),
    "equipment": ("Some of these statements also stand on the container.",),
    "directions": (
        "It is a violation of Federal law to use this product in a manner inconsistent with its labeling.",
        "Read the entire label before using this product.",
    ),
    "farm": ("Use this product only in accordance with its labeling and with the Worker Protection Standard, 40 CFR part 170.",),
    "others": ("The requirements in this box apply to uses that are not within the scope of that standard.",),
    "weather": ("The applicator answers for keeping spray where it belongs.",),
    "foliar": ("Wet leaves evenly.",),
    "basal bark": ("Spray the bark all round the stem.",),
    "hack and squirt": ("Cut downward through the bark into the wood.",),
    "cut stump": ("Brush sawdust off first.",),
    "end": ("The maker of this invented product promises nothing. It exists on paper only.",),
}  # fmt: skip
SPANISH = (
    "Mantenga fuera del alcance de los niños.",
    "Lea toda la etiqueta antes de usar este producto inventado.",
    "Use el equipo que se indica en la parte en inglés.",
    "No contamine el agua al limpiar el equipo.",
)
MARK_EVERY = 6
NOTE = "As far as the rules of the place allow."
LETTER = (
    "INVENTED OFFICE OF LABELS",
    "Dear Applicant: The amended labeling that you sent in is acceptable, with the comments that follow.",
    "Send one copy of the finished labeling before the product is released for shipment.",
    "Stock with the former label may be shipped for 18 months. Decision number 000142.",
    "Yours, nobody. This letter is invented, like the label behind it.",
)
"""What stands before a label in an office's files, in our own words (handbook, label.md, A2)."""


@dataclass(frozen=True, slots=True)
class Layout:
    """How a label is set."""

    columns: int = 1
    width_in: float = 8.5
    height_in: float = 11.0
    size_pt: float = 8.0
    head: str = "block"
    old: bool = False
    storage_first: bool = False
    spanish: bool = False
    boxed: bool = False
    running_head: bool = False
    justify: bool = False
    sans: bool = False
    rules: str = "grid"
    between_em: float = 0.9
    flow: str = "lines"
    marks: bool = False
    letter: bool = False
    feet: bool = True


LAYOUTS = 24
"""Layouts in a round; a label's number picks one."""


def layout(seed: int) -> Layout:
    """One of many layouts; the number of columns goes round one to four."""
    rng = random.Random(f"layout {seed % LAYOUTS}")
    columns = 1 + seed % 4
    booklet = columns <= 2 and rng.random() < 0.4
    width_in, height_in = (5.0, 6.5) if booklet else (8.5, 11.0)

    def now(chance: float) -> bool:
        return rng.random() < chance

    return Layout(
        columns,
        width_in,
        height_in,
        size_pt=rng.choice((6.5, 7.0, 7.5) if columns > 2 else (7.0, 8.0, 9.0)),
        head=rng.choice(("block", "block", "centred", "run-in", "numbered")),
        old=now(0.4),
        storage_first=now(0.4),
        spanish=now(0.4),
        boxed=now(0.5),
        running_head=now(0.5),
        justify=now(0.5),
        sans=now(0.3),
        rules=rng.choice(("grid", "lines", "bare")),
        between_em=rng.choice((0.8, 0.9, 1.1)),
        flow=rng.choice(("lines", "bullets", "together", "together")),
        marks=now(0.3),
        letter=now(0.2),
    )


@dataclass(frozen=True, slots=True)
class Label:
    """A label that was printed. lines: what stands on it and says; furniture: all other text."""

    pdf: bytes
    lines: tuple[Printed, ...]
    furniture: tuple[str, ...]
    layout: Layout


def chosen(number: int, held_back: bool) -> list[Printed]:
    """The sentences of one label: each group's shapes take turns, and now and then a decoy."""
    rng = random.Random(f"label {number} {held_back}")
    lines = []
    for n, group in enumerate(groups()):
        some = [s for s in all_shapes() if s.group == group and s.held_back is held_back]
        says, decoys = [s for s in some if not s.decoy], [s for s in some if s.decoy]
        every = INSTEAD.get(group)
        if every and decoys and number % every == every - 1:
            lines.append(printed(decoys[number // every % len(decoys)], rng))
            continue
        lines.append(printed(says[number % len(says)], rng))
        if decoys and not every and (number + n) % DECOY_EVERY == 0:
            lines.append(printed(decoys[(number // DECOY_EVERY) % len(decoys)], rng))
    rng.shuffle(lines)
    return lines


def _block(text: str, loud: bool = False) -> dict[str, object]:
    if text.startswith("#table "):
        rows = [[cell.strip() for cell in row.split("&")] for row in text[7:].split(" // ")]
        return {"kind": "table", "rows": rows}
    if text.startswith("#list "):
        lead, *points = text[6:].split(" // ")
        return {"kind": "list", "lead": lead, "points": points}
    return {"kind": "par", "text": text, "loud": loud}


def _joined(blocks: list[dict[str, object]]) -> list[dict[str, object]]:
    """Sentences that follow one another, as one paragraph."""
    out: list[dict[str, object]] = []
    for block in blocks:
        text = str(block.get("text", ""))
        if (
            out
            and block["kind"] == out[-1]["kind"] == "par"
            and text.endswith(".")
            and str(out[-1]["text"]).endswith(".")
        ):
            out[-1] = out[-1] | {"text": f"{out[-1]['text']} {text}"}
        else:
            out.append(block)
    return out


def _flowing(blocks: list[dict[str, object]], part: str, look: Layout, rng: random.Random) -> list[dict[str, object]]:
    """The blocks of a part as the layout lets them run."""
    if part == "front":
        return blocks
    if look.flow == "together":
        return _joined(blocks)
    if look.flow == "bullets" and len(blocks) > 2:
        blocks = [block | {"bullet": block["kind"] == "par"} for block in blocks]
    if look.marks:
        marked = [block | {"mark": block["kind"] == "par" and rng.randrange(MARK_EVERY) == 0} for block in blocks]
        return [*marked, {"kind": "note", "text": NOTE}] if any(block["mark"] for block in marked) else marked
    return blocks


def made(lines: list[Printed], look: Layout, number: int) -> tuple[dict[str, object], list[str]]:
    """What the template takes, and the texts that stand around the lines."""
    rng = random.Random(f"made {number}")
    furniture = [f"INVENTED BRUSH CONTROL {number}", NOTE, *LETTER]
    parts: list[dict[str, object]] = []
    for part in STORAGE_FIRST if look.storage_first else ORDER:
        standing = list(STANDING.get(part, ()))
        if look.spanish and part in ("front", "humans", "directions", "end"):
            standing.append(rng.choice(SPANISH))
        own = [p for p in lines if p.shape.part == part]
        loud = [p.shape.group in LOUD and part == "front" for p in own]
        blocks = [*map(_block, standing), *(_block(p.text, big) for p, big in zip(own, loud, strict=True))]
        heading = HEADINGS[part][look.old] if part in HEADINGS else ""
        furniture += [*standing, heading]
        boxed = look.boxed and part in ("aid", "farm", "others")
        parts.append({"heading": heading, "blocks": _flowing(blocks, part, look, rng), "boxed": boxed})
    data = {"title": furniture[0], "parts": parts, "running": "Invented label, for tests only"} | asdict(look)
    return data | {"letter": LETTER if look.letter else ()}, [text for text in furniture if text]


def press(number: int, held_back: bool = False, look: Layout | None = None) -> Label:
    """Print label `number` of the shown or of the held-back shapes."""
    lines = chosen(number, held_back)
    look = look or layout(number)
    data, furniture = made(lines, look, number)
    return Label(_compiled(data), tuple(lines), tuple(furniture), look)


def _compiled(data: dict[str, object]) -> bytes:
    import typst

    template = (Path(__file__).parent / "label.typ").read_bytes()
    with resources.as_file(resources.files("stemward.paper") / "fonts") as fonts:
        return bytes(
            typst.compile(
                template, ignore_system_fonts=True, font_paths=[str(fonts)], sys_inputs={"data": json.dumps(data)}
            )
        )


def main() -> int:
    """Write some labels and what they say to a folder."""
    folder, count = Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 8
    folder.mkdir(parents=True, exist_ok=True)
    for number in range(count):
        label = press(number)
        (folder / f"label-{number}.pdf").write_bytes(label.pdf)
        rows = [{"text": p.plain, "says": [asdict(f) for f in p.says]} for p in label.lines]
        (folder / f"label-{number}.json").write_text(json.dumps(rows, indent=1, ensure_ascii=False), encoding="utf-8")
    print(f"{count} labels in {folder}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
