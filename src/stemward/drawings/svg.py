"""SVG written with presentation attributes only: Typst and a strict content policy both take it."""

import hashlib
import math
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from html import escape

from stemward.drawings.palette import LIGHT

FONT = "Atkinson Hyperlegible"
NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Characters that XML 1.0 cannot hold, not even escaped."""

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG with its size on paper.

    scale: millimetres on paper per millimetre of the real thing; None where the drawing has none.
    numbers: what the drawing shows, by name with its unit, for the sentence that stands beside it.
    """

    svg: str
    width_mm: float
    height_mm: float
    scale: float | None = None
    numbers: Mapping[str, float] = field(default_factory=dict)


def tag(name: str, content: str = "", /, **attributes: object) -> str:
    """One element; underscores in attribute names become hyphens, numbers are written short."""
    written = "".join(f' {key.replace("_", "-")}="{_value(v)}"' for key, v in attributes.items())
    return f"<{name}{written}>{content}</{name}>" if content else f"<{name}{written}/>"


def _value(value: object) -> str:
    return num(value) if isinstance(value, float) else escape(clean(str(value)), quote=True)


def num(value: float) -> str:
    """A coordinate to a thousandth, without trailing zeros."""
    written = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def clean(words: str) -> str:
    """Words with every character that XML cannot hold replaced by a visible mark."""
    return NOT_XML.sub("\ufffd", words)


def text(
    x: float, y: float, words: str, size: float, anchor: str = "start", bold: bool = False, halo: float = 0.0
) -> str:
    """Words at a place, in ink. halo: width of a rim of paper that keeps lines off the letters."""
    rim = {"stroke": LIGHT["paper"], "stroke_width": halo, "stroke_linejoin": "round", "paint_order": "stroke"}
    return tag(
        "text",
        escape(clean(words)),
        x=x,
        y=y,
        font_family=FONT,
        font_size=size,
        font_weight="bold" if bold else "normal",
        text_anchor=anchor,
        fill=LIGHT["ink"],
        **(rim if halo else {}),
    )


def line(d: str, width: float, colour: str = "ink", **more: object) -> str:
    """An unfilled line along a path, in a colour of the palette."""
    return tag("path", d=d, fill="none", stroke=LIGHT[colour], stroke_width=width, **more)


def area(d: str, colour: str, **more: object) -> str:
    """A filled area inside a path, holes by the even-odd rule, in a colour of the palette."""
    return tag("path", d=d, fill=LIGHT[colour], fill_rule="evenodd", **more)


def ruler(from_: float, to: float, at: float, tick: float) -> str:
    """The path of a dimension line with end ticks, along x."""
    ends = "".join(f"M{num(x)} {num(at - tick)}V{num(at + tick)}" for x in (from_, to))
    return f"M{num(from_)} {num(at)}H{num(to)}{ends}"


def ring(radius: float, x: float = 0.0, y: float = 0.0) -> str:
    """The path of a circle round a place."""
    half = f"a{num(radius)} {num(radius)} 0 1 0 "
    return f"M{num(x - radius)} {num(y)}{half}{num(2 * radius)} 0{half}{num(-2 * radius)} 0Z"


def oblong(box: Box) -> str:
    """The path of an upright rectangle."""
    left, top, right, bottom = map(num, box)
    return f"M{left} {top}H{right}V{bottom}H{left}Z"


def path(points: Iterable[tuple[float, float]], closed: bool = True) -> str:
    """A path through points."""
    return "M" + "L".join(f"{num(x)} {num(y)}" for x, y in points) + ("Z" if closed else "")


def wet(shape: Callable[[float], str], box: Box, unit: float) -> str:
    """Every area that herbicide wets: a wash, hatched at 45 degrees, with an outline that stays inside.

    shape: the path of the area drawn in by a distance, holes by the even-odd rule. box: what is to be hatched. unit:
    size of a point of the hatch. The lines are drawn and clipped: a pattern of tiles shows its seams in PDF.
    """
    inner = shape(0.8 * unit)
    name = "wet" + hashlib.sha256(f"{inner} {unit}".encode()).hexdigest()[:10]
    clip = tag("clipPath", tag("path", d=inner, clip_rule="evenodd"), id=name)
    hatch = tag("g", line(_slanted(box, 6 * unit * math.sqrt(2)), 1.6 * unit, "dye"), clip_path=f"url(#{name})")
    return clip + area(shape(0.0), "dye") + area(inner, "dye_wash") + hatch


def _slanted(box: Box, step: float) -> str:
    """Lines at 45 degrees over a box, `step` apart along x."""
    left, top, right, bottom = box
    high = bottom - top
    starts = (left - high + step * n for n in range(1, int((right - left + high) / step) + 2))
    return "".join(f"M{num(x)} {num(bottom)}L{num(x + high)} {num(top)}" for x in starts)


def drop(x: float, y: float, size: float, herbicide: bool = True) -> str:
    """A drop hanging from a place, `size` high: dye for herbicide, an empty one for anything else."""
    k = size / 6.8
    d = (
        f"M{num(x)} {num(y)}c{num(1.6 * k)} {num(2.4 * k)} {num(2.2 * k)} {num(3.4 * k)} {num(2.2 * k)} {num(4.6 * k)}"
        f"a{num(2.2 * k)} {num(2.2 * k)} 0 1 1 {num(-4.4 * k)} 0"
        f"c0 {num(-1.2 * k)} {num(0.6 * k)} {num(-2.2 * k)} {num(2.2 * k)} {num(-4.6 * k)}Z"
    )
    return area(d, "dye") if herbicide else area(d, "paper", stroke=LIGHT["ink"], stroke_width=0.5)


def document(width: float, height: float, body: str, left: float = 0.0, top: float = 0.0) -> str:
    """A whole SVG of that size in user units."""
    box = " ".join(map(num, (left, top, width, height)))
    return tag("svg", body, xmlns="http://www.w3.org/2000/svg", viewBox=box)
