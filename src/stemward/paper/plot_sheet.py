"""The sheet to carry to sample plots: where they are, how to lay one, boxes to tally."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from stemward import drawings
from stemward.paper.compile import to_pdf
from stemward.reckon.lay_plots import bearing_and_distance
from stemward.say.en.plots import WORDS
from stemward.say.numbers import System, figure

FT_M = 0.3048
PACE_M = 0.762
"""One step of 2.5 ft (common practice, no source)."""
PAPER = {"letter": "us-letter", "a4": "a4"}


@dataclass(frozen=True)
class PlotSheet:
    """What stands on it. centres: (name, x_m, y_m) in the order they are walked. classes: size classes in words."""

    tract: str
    patch: str
    rings: Sequence[Any]
    centres: Sequence[tuple[str, float, float]]
    radius_m: float
    plant: str
    classes: Sequence[str]


def plot_sheet(sheet: PlotSheet, as_of: datetime.date, units: System = "us", paper: str = "letter") -> bytes:
    """The sheet as PDF/UA-1. The same plots, units and paper give the same bytes."""
    return to_pdf("plots.typ", sheet_data(sheet, as_of, units, paper), as_of)


def sheet_data(sheet: PlotSheet, as_of: datetime.date, units: System, paper: str) -> dict[str, Any]:
    """All that stands on the sheet, as plain data for the template."""
    words = {"patch": sheet.patch, "plots": len(sheet.centres), "plant": sheet.plant or WORDS["any_plant"],
             "radius": _cord(sheet.radius_m, units)}  # fmt: skip
    spots = [(x, y) for _, x, y in sheet.centres]
    drawn = drawings.plan_drawing([(sheet.patch, sheet.rings)], spots, [], units, WORDS["paces"].split()[0].lower())
    return {
        "title": WORDS["title"].format(**words),
        "paper": PAPER[paper],
        "footer": WORDS["footer"].format(tract=sheet.tract, patch=sheet.patch, as_of=as_of.isoformat()),
        "intro": WORDS["intro"].format(**words),
        "rules": [line.format(**words) for line in WORDS_RULES],
        "map": {"svg": drawn.svg, "alt": WORDS["alt"].format(**words)},
        "list_head": WORDS["list_head"],
        "head": [WORDS[key] for key in ("plot", "bearing", "how_far", "paces")],
        "rows": _rows(sheet, units),
        "tally_head": WORDS["tally_head"],
        "tally_words": WORDS["tally_words"].format(**words),
        "classes": list(sheet.classes),
        "tally": [[name, *("" for _ in sheet.classes)] for name, _, _ in sheet.centres],
    }


WORDS_RULES = tuple(WORDS[key] for key in ("rule_cord", "rule_in", "rule_edge", "rule_none"))


def _cord(radius_m: float, units: System) -> str:
    """The cord to a tenth of a foot or a centimetre: half a foot more would be 9 % more ground."""
    return f"{radius_m / FT_M:.1f} ft" if units == "us" else f"{radius_m:.2f} m"


def _rows(sheet: PlotSheet, units: System) -> list[list[str]]:
    """Each plot from the one before; the first from the corner of the patch that is drawn first."""
    before = tuple(sheet.rings[0][0])
    rows = []
    for name, x, y in sheet.centres:
        bearing, far_m = bearing_and_distance((before[0], before[1]), (x, y))
        rows.append([name, f"{bearing:.0f}°", figure("far_m", far_m, units), f"{far_m / PACE_M:.0f}"])
        before = (x, y)
    return rows
