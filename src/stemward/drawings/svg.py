"""SVG written with presentation attributes only: Typst and a strict content policy both take it."""

import hashlib
import math
from dataclasses import dataclass
from html import escape

from stemward.drawings.palette import LIGHT

FONT = "Atkinson Hyperlegible"


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG with its size on paper. scale: millimetres on paper per millimetre of wood; None where it has none."""

    svg: str
    width_mm: float
    height_mm: float
    scale: float | None = None


def tag(name: str, content: str = "", /, **attributes: object) -> str:
    """One element; underscores in attribute names become hyphens, numbers are written short."""
    written = "".join(f' {key.rstrip("_").replace("_", "-")}="{_value(v)}"' for key, v in attributes.items())
    return f"<{name}{written}>{content}</{name}>" if content else f"<{name}{written}/>"


def _value(value: object) -> str:
    return f"{value:.6g}" if isinstance(value, float) else escape(str(value), quote=True)


def text(x: float, y: float, words: str, size: float, anchor: str = "start", bold: bool = False) -> str:
    """Words at a place, in ink."""
    return tag(
        "text",
        escape(words),
        x=x,
        y=y,
        font_family=FONT,
        font_size=size,
        font_weight="bold" if bold else "normal",
        text_anchor=anchor,
        fill=LIGHT["ink"],
    )


def line(d: str, width: float, colour: str = "ink", **more: object) -> str:
    """An unfilled line along a path, in a colour of the palette."""
    return tag("path", d=d, fill="none", stroke=LIGHT[colour], stroke_width=width, **more)


def ruler(from_: float, to: float, at: float, tick: float) -> str:
    """The path of a dimension line with end ticks, along x."""
    ends = "".join(f"M{x:.6g} {at - tick:.6g}V{at + tick:.6g}" for x in (from_, to))
    return f"M{from_:.6g} {at:.6g}H{to:.6g}{ends}"


def ring(radius: float) -> str:
    """The path of a circle round the origin."""
    half = f"A{radius:.6g} {radius:.6g} 0 1 0"
    return f"M{-radius:.6g} 0{half} {radius:.6g} 0{half} {-radius:.6g} 0Z"


def path(points: list[tuple[float, float]], closed: bool = True) -> str:
    """A path through points."""
    steps = " ".join(f"{'M' if n == 0 else 'L'}{x:.4g} {y:.4g}" for n, (x, y) in enumerate(points))
    return steps + ("Z" if closed else "")


def wet(d: str, box: tuple[float, float, float, float], unit: float) -> str:
    """Every area that herbicide wets: a wash, hatched at 45 degrees.

    d: path of the area, holes by the even-odd rule. box: left, top, right, bottom of what is to be hatched.
    unit: size of a point of the hatch. The lines are drawn and clipped: a pattern of tiles shows its seams.
    """
    left, top, right, bottom = box
    name = "wet" + hashlib.sha256(f"{d} {unit}".encode()).hexdigest()[:10]
    step = 6 * unit * math.sqrt(2)
    high = bottom - top
    count = int((right - left + high) / step) + 1
    starts = (left - high + step * n for n in range(1, count + 1))
    lines = "".join(f"M{x:.5g} {bottom:.5g}L{x + high:.5g} {top:.5g}" for x in starts)
    clip = tag("clipPath", tag("path", d=d, clip_rule="evenodd"), id=name)
    hatch = tag("path", d=lines, fill="none", stroke=LIGHT["dye"], stroke_width=2 * unit)
    wash = tag("path", d=d, fill=LIGHT["dye_wash"], fill_rule="evenodd")
    return clip + wash + tag("g", hatch, clip_path=f"url(#{name})")


def document(width: float, height: float, body: str, left: float = 0.0, top: float = 0.0) -> str:
    """A whole SVG of that size in user units."""
    box = f"{left:.6g} {top:.6g} {width:.6g} {height:.6g}"
    return tag("svg", body, xmlns="http://www.w3.org/2000/svg", viewBox=box)
