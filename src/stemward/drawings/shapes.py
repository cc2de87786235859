"""Signs on a 24 x 24 ground, in one table. Round: to treat. Square: keep from harm. Straight-edged: a finding."""

from dataclasses import dataclass

from stemward.drawings.palette import LIGHT
from stemward.drawings.svg import document, ring, tag


@dataclass(frozen=True, slots=True)
class Piece:
    """One path of a sign; fill and stroke are names of colours, or "none"."""

    d: str
    fill: str = "none"
    stroke: str = "none"
    width: float = 2.0
    dashes: str = ""


TARGET = Piece("M4 12A8 8 0 1 0 20 12A8 8 0 1 0 4 12Z", "paper", "ink")
SQUARE = Piece("M3 3H21V21H3Z", "paper", "moss", 2.5)


def _sign(d: str, filled: bool = False) -> tuple[Piece, Piece]:
    """What is to be kept: the square and its sign."""
    return SQUARE, Piece(d, "ink" if filled else "none", "none" if filled else "ink", 1.8)


STEMS: dict[str, tuple[Piece, ...]] = {
    "target": (TARGET,),
    "cut": (TARGET, Piece("M12 4A8 8 0 0 1 12 20Z", "ink")),
    "treated": (Piece("M5.5 12A6.5 6.5 0 1 0 18.5 12A6.5 6.5 0 1 0 5.5 12Z", "paper", "dye", 5),),
    "treated late": (Piece("M12 5.5A6.5 6.5 0 1 0 18.5 12", "none", "dye", 5),),
    "dead": (Piece("M5 5L19 19M19 5L5 19", "none", "ink", 3),),
    "resprout": (
        Piece("M6 15.5A6 6 0 1 0 18 15.5A6 6 0 1 0 6 15.5Z", "paper", "ink"),
        Piece("M12 9.5V1M12 6L7.5 2.5M12 6L16.5 2.5", "none", "ink"),
    ),
    "not found": (Piece(TARGET.d, "paper", "ink", 2, "4.2 4.2"),),
    "added": (TARGET, Piece("M12 8.5V15.5M8.5 12H15.5", "none", "ink")),
    "set aside": (
        Piece("M6 9.5A6 6 0 1 0 18 9.5A6 6 0 1 0 6 9.5Z", "paper", "ink"),
        Piece("M4 21H20", "none", "ink", 2.5),
    ),
}

KEPT: dict[str, tuple[Piece, ...]] = {
    "tree": _sign("M8.5 12A3.5 3.5 0 1 0 15.5 12A3.5 3.5 0 1 0 8.5 12Z", True),
    "small plants": _sign("".join(ring(2, x, y) for x, y in ((8.5, 15), (15.5, 15), (12, 8.5))), True),
    "water": _sign("M6 10Q9 7 12 10Q15 13 18 10M6 15Q9 12 12 15Q15 18 18 15"),
    "well": _sign("M8 12A4 4 0 1 0 16 12A4 4 0 1 0 8 12Z"),
    "garden": _sign("M7.5 7V17M12 7V17M16.5 7V17"),
    "building": _sign("M7 17V11L12 7L17 11V17Z"),
    "lane": _sign("M9.5 6V18M14.5 6V18"),
    "sinkhole": _sign("M7 9H17L13.5 16H10.5Z"),
    "path": _sign("M8 18Q10 12 16 6"),
    "fence": _sign("M8 7V17M16 7V17M6.5 10H17.5M6.5 14H17.5"),
    "wire": _sign("M6.5 8Q12 12 17.5 8M6.5 13Q12 17 17.5 13"),
    "boundary": _sign("M12 6V9.5M12 11V13M12 14.5V18"),
}

FINDINGS: dict[str, tuple[Piece, ...]] = {
    "stop": (
        Piece("M7.9 2H16.1L22 7.9V16.1L16.1 22H7.9L2 16.1V7.9Z", "brick"),
        Piece("M9 4.7H15L19.3 9V15L15 19.3H9L4.7 15V9Z", "none", "paper", 1.4),
    ),
    "find out": (
        Piece("M5 2.5H14.5L19.5 7.5V21.5H5Z", "paper", "ink"),
        Piece("M14.5 2.5V7.5H19.5", "none", "ink", 1.5),
        Piece("M8 15.5H10.2M11.4 15.5H13.6M14.8 15.5H17", "none", "ink", 2.4),
    ),
    "know": (
        Piece("M12 3L22 20.5H2Z", "paper", "ink", 2.2),
        Piece("M12 9.5V14.5", "none", "ink", 2.4),
        Piece(ring(1.4, 12, 17.4), "ink"),
    ),
    "checked": (
        Piece("M2 12Q12 2.5 22 12Q12 21.5 2 12Z", "paper", "ink", 1.8),
        Piece(ring(2.8, 12, 12), "ink"),
    ),
}

PLACES: dict[str, tuple[Piece, ...]] = {
    "mixing": (Piece("M9 3H15V7L19 11V21H5V11L9 7Z", "paper", "ink"), Piece("M5 15H19", "none", "ink")),
    "refill": (Piece("M4 8H20L17.5 21H6.5Z", "paper", "ink"), Piece("M4 8Q12 -2 20 8", "none", "ink")),
    "gate": (Piece("M3 7H21V19H3Z", "paper"), Piece("M3 5V21M21 5V21M3 9H21M3 17H21M3 17L21 9", "none", "ink")),
}

SHAPES = STEMS | KEPT | FINDINGS | PLACES


def fragment(name: str) -> str:
    """A sign by its name, as elements on the 24 x 24 ground."""
    return "".join(map(_drawn, SHAPES[name]))


def _drawn(piece: Piece) -> str:
    colours = {**LIGHT, "none": "none"}
    look: dict[str, object] = {"fill": colours[piece.fill]}
    if piece.stroke != "none":
        look |= {"stroke": colours[piece.stroke], "stroke_width": piece.width}
    if piece.dashes:
        look["stroke_dasharray"] = piece.dashes
    return tag("path", d=piece.d, **look)


def placed(name: str, x: float, y: float, size: float) -> str:
    """A sign with its middle at a place, `size` wide."""
    where = f"translate({x - size / 2:.3f} {y - size / 2:.3f}) scale({size / 24:.5f})"
    return tag("g", fragment(name), transform=where)


def sign(name: str) -> str:
    """A sign by its name as a whole SVG."""
    return document(24.0, 24.0, fragment(name))
