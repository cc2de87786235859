"""Signs on a 24 x 24 ground. Round: to treat. Square: keep from harm. Straight-edged: a finding."""

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import document, tag

INK, PAPER, MOSS, BRICK = LIGHT["ink"], LIGHT["paper"], LIGHT["moss"], LIGHT["brick"]

TARGET = "M4 12A8 8 0 1 0 20 12A8 8 0 1 0 4 12Z"
SQUARE = "M3 3H21V21H3Z"

INSIDE = {
    "tree": (("M8.5 12A3.5 3.5 0 1 0 15.5 12A3.5 3.5 0 1 0 8.5 12Z", INK),),
    "small plants": tuple(
        (f"M{x - 2} {y}A2 2 0 1 0 {x + 2} {y}A2 2 0 1 0 {x - 2} {y}Z", INK)
        for x, y in ((8.5, 15), (15.5, 15), (12, 8.5))
    ),
    "water": (("M6 10Q9 7 12 10Q15 13 18 10M6 15Q9 12 12 15Q15 18 18 15", "none"),),
    "well": (("M8 12A4 4 0 1 0 16 12A4 4 0 1 0 8 12Z", "none"),),
    "garden": (("M7.5 7V17M12 7V17M16.5 7V17", "none"),),
    "building": (("M7 17V11L12 7L17 11V17Z", "none"),),
    "lane": (("M9 7V17M15 7V17", "none"),),
    "boundary": (("M12 6V18", "none"),),
}

FINDINGS = {
    "stop": (
        tag("path", d="M7.9 2H16.1L22 7.9V16.1L16.1 22H7.9L2 16.1V7.9Z", fill=BRICK)
        + tag("path", d="M9 4.7H15L19.3 9V15L15 19.3H9L4.7 15V9Z", fill="none", stroke=PAPER, stroke_width=1.4)
    ),
    "find out": (
        tag("path", d="M5 2.5H14.5L19.5 7.5V21.5H5Z", fill=PAPER, stroke=INK, stroke_width=2)
        + tag("path", d="M14.5 2.5V7.5H19.5", fill="none", stroke=INK, stroke_width=1.5)
        + tag("path", d="M8 15.5H10.2M11.4 15.5H13.6M14.8 15.5H17", stroke=INK, stroke_width=2.4)
    ),
    "know": (
        tag("path", d="M12 3L22 20.5H2Z", fill=PAPER, stroke=INK, stroke_width=2.2)
        + tag("path", d="M12 9.5V14.5", stroke=INK, stroke_width=2.4)
        + tag("circle", cx=12, cy=17.4, r=1.4, fill=INK)
    ),
    "checked": (
        tag("path", d="M2 12Q12 2.5 22 12Q12 21.5 2 12Z", fill=PAPER, stroke=INK, stroke_width=1.8)
        + tag("circle", cx=12, cy=12, r=2.8, fill=INK)
    ),
}


def sign(weight: str) -> str:
    """The sign of a finding's weight as a whole SVG."""
    return document(24.0, 24.0, FINDINGS[weight])


def kept(kind: str) -> str:
    """The square of something to keep from harm, on the 24 x 24 ground."""
    square = tag("path", d=SQUARE, fill=PAPER, stroke=MOSS, stroke_width=2.5)
    inside = (tag("path", d=d, fill=fill, stroke=INK, stroke_width=1.6) for d, fill in INSIDE.get(kind, ()))
    return square + "".join(inside)
