"""Pages and drawings as pictures, in colour and in grey, to be looked at.

python tools/pictures.py FILE.pdf [OUTDIR]
"""

import pathlib
import sys

import pypdfium2
import typst
from PIL import Image

from stemward import drawings

FONTS = pathlib.Path(__file__).parent.parent / "src/stemward/paper/fonts"
OUT = pathlib.Path("build/pictures")


def page_pictures(pdf: pathlib.Path, out: pathlib.Path, scale: float = 1.4) -> list[pathlib.Path]:
    """Every page of a PDF as PNG, in colour and grey."""
    made = []
    document = pypdfium2.PdfDocument(pdf)
    for number in range(len(document)):
        picture = document[number].render(scale=scale).to_pil()
        for kind, image in (("colour", picture), ("grey", picture.convert("L"))):
            path = out / f"{pdf.stem}-{number + 1:02d}-{kind}.png"
            image.save(path)
            made.append(path)
    return made


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


def drawing_pictures(out: pathlib.Path) -> None:
    """Each drawing at a few sizes."""
    several = {
        "stump-1in": drawings.stump(2.54, None, "a", {"across": "1 in", "ring": ""}),
        "stump-6in": drawings.stump(15.24, 5.08, "b", {"across": "6 in", "ring": "2 in"}),
        "stump-14in": drawings.stump(35.56, 5.08, "c", {"across": "14 in", "ring": "2 in"}),
        "cuts-2": drawings.cuts(2, {"across": "2 in"}),
        "cuts-9": drawings.cuts(9, {"across": "9 in"}),
        "ladder": drawings.pour_ladder(
            709.8,
            [(ml, f"{ml / 29.57:.0f}") for ml in drawings.even_marks(709.8, "us")],
            [("carrier", 300.0, False), ("herbicide", 300.0, True), ("dye", 2.0, False)],
            ["10 fl oz", "20 fl oz", "20.1 fl oz"],
        ),
    }
    for name, drawn in several.items():
        path = out / f"drawing-{name}.png"
        path.write_bytes(drawing_png(drawn))
        Image.open(path).convert("L").save(out / f"drawing-{name}-grey.png")


def main() -> None:
    """Write all pictures and say where."""
    out = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else OUT
    out.mkdir(parents=True, exist_ok=True)
    drawing_pictures(out)
    for pdf in sys.argv[1:2]:
        page_pictures(pathlib.Path(pdf), out)
    print(f"{len(list(out.glob('*.png')))} pictures in {out}")


if __name__ == "__main__":
    main()
