"""A label as a scanner gives it: pictures of its pages, a little turned and speckled, with no text in the file."""

import io

import numpy as np

DOTS_PER_INCH = 200
TURN_DEGREES = 0.3
SPECKLE = 12.0
"""How a scan looks: engineering guesses. Speckle: standard deviation of grey, of 255."""


def scanned(pdf: bytes, seed: int) -> bytes:
    """The file's pages as grey pictures in a new file. The same file and seed give the same picture."""
    import pypdfium2
    from PIL import Image

    rng = np.random.default_rng(seed)
    pages = []
    for page in pypdfium2.PdfDocument(io.BytesIO(pdf)):
        picture = page.render(scale=DOTS_PER_INCH / 72, grayscale=True).to_pil().convert("L")
        turned = picture.rotate(
            rng.uniform(-TURN_DEGREES, TURN_DEGREES), fillcolor=255, resample=Image.Resampling.BILINEAR
        )
        grey = np.asarray(turned, float) + rng.normal(0, SPECKLE, (turned.height, turned.width))
        pages.append(Image.fromarray(np.clip(grey, 0, 255).astype(np.uint8)))
    out = io.BytesIO()
    pages[0].save(out, "PDF", save_all=True, append_images=pages[1:], resolution=DOTS_PER_INCH)
    return out.getvalue()
