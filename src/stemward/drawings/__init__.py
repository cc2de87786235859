"""Values to SVG, in one palette. Figures and short labels come in as text; sentences are put on elsewhere."""

from stemward.drawings.band import band
from stemward.drawings.cuts import cuts
from stemward.drawings.ladder import even_marks, pour_ladder
from stemward.drawings.palette import DUSK, LIGHT, SUN, contrast
from stemward.drawings.plan import plan_drawing
from stemward.drawings.plant import REACH_M, plant
from stemward.drawings.shapes import fragment, placed, sign
from stemward.drawings.stump import check_bar, ring_of, stump
from stemward.drawings.svg import Drawing

__all__ = [
    "DUSK",
    "LIGHT",
    "REACH_M",
    "SUN",
    "Drawing",
    "band",
    "check_bar",
    "contrast",
    "cuts",
    "even_marks",
    "fragment",
    "placed",
    "plan_drawing",
    "plant",
    "pour_ladder",
    "ring_of",
    "sign",
    "stump",
]
