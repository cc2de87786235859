"""Pages and drawings as pictures, in colour and in grey, to be looked at.

python tools/pictures.py [FILE.pdf [OUTDIR]]
"""

import io
import math
import pathlib
import random
import sys

import pypdfium2
import typst
from PIL import Image

from stemward import drawings
from stemward.drawings.shapes import SHAPES
from stemward.drawings.svg import document, text
from stemward.units import convert

FONTS = pathlib.Path(__file__).parent.parent / "src/stemward/paper/fonts"
OUT = pathlib.Path("build/pictures")


def page_pictures(pdf: pathlib.Path, out: pathlib.Path, scale: float = 1.4) -> None:
    """Every page of a PDF as PNG, in colour and grey."""
    pages = pypdfium2.PdfDocument(pdf)
    for number in range(len(pages)):
        keep(pages[number].render(scale=scale).to_pil(), out, f"{pdf.stem}-{number + 1:02d}")


def keep(image: Image.Image, out: pathlib.Path, name: str) -> None:
    """A picture in colour and in grey."""
    image.convert("RGB").save(out / f"{name}-colour.png")
    image.convert("L").save(out / f"{name}-grey.png")


def drawing_png(drawn: drawings.Drawing, ppi: float = 150.0) -> bytes:
    """One drawing as PNG at its size on paper."""
    source = (
        f"#set page(width: {drawn.width_mm}mm, height: {drawn.height_mm}mm, margin: 0mm, fill: white)\n"
        '#image(bytes(sys.inputs.svg), format: "svg", width: 100%, height: 100%)'
    )
    return bytes(
        typst.compile(
            source.encode(),
            format="png",
            ppi=ppi,
            ignore_system_fonts=True,
            font_paths=[str(FONTS)],
            sys_inputs={"svg": drawn.svg},
        )
    )


def stump(inches: float, ring_in: float | None) -> drawings.Drawing:
    """A stump of that many inches."""
    labels = {"across": f"{inches:g} in", "ring": f"{ring_in:g} in" if ring_in else ""}
    return drawings.stump(inches * 2.54, ring_in and ring_in * 2.54, f"stem {inches}", labels)


def ladder(capacity_fl_oz: float, slices: list[tuple[str, float, bool]], torn: bool = False) -> drawings.Drawing:
    """A ladder with slices in fluid ounces."""
    unit_ml = convert(1.0, "fl oz", "ml")
    marks = [(ml, f"{ml / unit_ml:.0f}") for ml in drawings.even_marks(capacity_fl_oz * unit_ml, "us")]
    sums = [sum(s[1] for s in slices[: n + 1]) for n in range(len(slices))]
    poured = [(name, fl_oz * unit_ml, herbicide) for name, fl_oz, herbicide in slices]
    return drawings.pour_ladder(capacity_fl_oz * unit_ml, marks, poured, [f"{s:.3g} fl oz" for s in sums], torn)


def land(stems: int, far_well: bool = False) -> drawings.Drawing:
    """An invented patch with stems and everything that can be kept."""
    chance = random.Random(7)
    rim = [
        (95 + 80 * math.cos(a / 12 * math.tau), 70 + chance.uniform(38, 56) * math.sin(a / 12 * math.tau))
        for a in range(12)
    ]
    places = [(60 + chance.gauss(35, 26), 40 + chance.gauss(30, 15)) for _ in range(stems)]
    kept = [
        ("stream", "water", {"kind": "line", "rings": [[(-20, 2), (40, 12), (120, 6), (230, 16)]]}),
        ("lane", "lane", {"kind": "line", "rings": [[(190, 0), (182, 60), (200, 140)]]}),
        ("line fence", "boundary", {"kind": "line", "rings": [[(5, 0), (5, 132)]]}),
        ("oak-1", "tree", {"kind": "point", "rings": [[(70, 80)]]}),
        ("oak-2", "tree", {"kind": "point", "rings": [[(78, 74)]]}),
        ("orchids", "small plants", {"kind": "polygon", "rings": [[(110, 90), (125, 92), (122, 104), (108, 101)]]}),
        ("garden", "garden", {"kind": "polygon", "rings": [[(196, 96), (212, 96), (212, 112), (196, 112)]]}),
        ("house", "building", {"kind": "point", "rings": [[(206, 80)]]}),
        ("well", "well", {"kind": "point", "rings": [[(640 if far_well else 214, 66)]]}),
    ]
    marks = [("mixing", "mixing place", (176.0, 30.0)), ("gate", "gate", (187.0, 10.0))]
    return drawings.plan_drawing([("Back fence", [rim])], places, kept, "us", "paces", marks)


def signs() -> drawings.Drawing:
    """Every sign with its name."""
    columns = 7
    body = ""
    for n, name in enumerate(SHAPES):
        x, y = 12.0 + 24 * (n % columns), 10.0 + 22 * (n // columns)
        body += drawings.placed(name, x, y, 9.0) + text(x, y + 10, name, 3.6, "middle")
    high = 22.0 * math.ceil(len(SHAPES) / columns) + 4
    return drawings.Drawing(document(24.0 * columns, high, body), 24.0 * columns, high)


def several() -> dict[str, drawings.Drawing]:
    """Each drawing at a few sizes."""
    half = [("water", 9.0, False), ("herbicide", 9.0, True), ("dye", 0.06, False)]
    weak = [("water", 20.0, False), ("herbicide", 0.3, True), ("helper", 0.1, False), ("dye", 0.05, False)]
    small = [("water", 1.0, False), ("herbicide", 0.9, True), ("dye", 0.01, False)]
    return {
        "stump-half-in": stump(0.5, None),
        "stump-1in": stump(1, None),
        "stump-3in": stump(3, 1),
        "stump-6in": stump(6, 2),
        "stump-14in": stump(14, 2),
        "stump-30in": stump(30, 2),
        "cuts-1": drawings.cuts(1, {"across": "1 in"}, 2.54, "a"),
        "cuts-2": drawings.cuts(2, {"across": "2 in"}, 5.08, "b"),
        "cuts-9": drawings.cuts(9, {"across": "23 cm", "spacing": "8 cm"}, 23.0, "c"),
        "cuts-30": drawings.cuts(30, {"across": "30 in"}, 76.2, "d"),
        "band-1in": drawings.band(2.54, 38.1, "a", {"across": "1 in", "band": "15 in"}),
        "band-6in": drawings.band(15.24, 38.1, "b", {"across": "6 in", "band": "15 in"}),
        "plant-4ft": drawings.plant(1.2, 0.6, "c", {"height": "4 ft", "reach": "6 ft"}),
        "plant-10ft": drawings.plant(3.0, 0.6, "d", {"height": "10 ft", "reach": "6 ft"}),
        "ladder-half": ladder(24, half),
        "ladder-weak": ladder(32, weak),
        "ladder-small": ladder(3, small, torn=True),
        "bar": drawings.check_bar(5.08, "2 in"),
        "signs": signs(),
        "plan-60": land(60),
        "plan-3000": land(3000, far_well=True),
        "plan-empty": drawings.plan_drawing([], [], [], "metric", "paces"),
    }


def main() -> None:
    """Write all pictures and say where."""
    out = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else OUT
    out.mkdir(parents=True, exist_ok=True)
    for name, drawn in several().items():
        keep(Image.open(io.BytesIO(drawing_png(drawn))), out, f"drawing-{name}")
    for pdf in sys.argv[1:2]:
        page_pictures(pathlib.Path(pdf), out)
    print(f"{len(list(out.glob('*.png')))} pictures in {out}")


if __name__ == "__main__":
    main()
