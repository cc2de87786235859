"""Land: tract, patches, stems, what is kept from harm, people, choices."""

from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stemward.kinds.entry import Entry
from stemward.kinds.product import Product

Answer = Literal["yes", "no", "unknown"]

PLACES = ("woods", "non-crop", "right-of-way", "pasture", "crop", "yard", "wet")
"""Kinds of place a label can name."""

SITE_QUESTIONS = (
    "grazed",
    "hayed",
    "standing_water_today",
    "seasonally_wet",
    "ditch",
    "right_of_way",
    "homes",
    "for_sale",
    "organic",
    "cost_share",
    "public",
    "in_bloom",
    "protected",
)
"""Yes-or-no facts about a patch that can change which part of a label applies."""

ARMS = ("blue", "orange")
"""Flags of the two arms of a test; the patch of an arm is named after its own with the flag behind it."""
COUNTED = "counted by size, not mapped"
"""Note of a row that stands for plants of one size that were counted: its place is that of none of them."""

Ring = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """A point (one ring of one corner), a line (one ring) or a polygon (outer ring, then holes). Metres."""

    kind: Literal["point", "line", "polygon"]
    rings: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class Soil:
    """Soil of a patch; words and figures as known, empty or None where not."""

    texture: str = ""
    organic_matter_frac: float | None = None
    over: str = ""


@dataclass(frozen=True, slots=True)
class Patch:
    """A part of a tract treated alike: its kinds of place, answers and outline (None when only paced)."""

    id: str
    name: str
    places: tuple[str, ...]
    answers: tuple[tuple[str, Answer], ...] = ()
    soil: Soil = Soil()
    shape: Shape | None = None
    area_m2: float | None = None

    def answer(self, question: str) -> Answer:
        """What was answered for a site question; "unknown" when nobody has answered it."""
        return dict(self.answers).get(question, "unknown")


@dataclass(frozen=True, slots=True, eq=False)
class Stems:
    """Mapped stems as columns of equal length n.

    diameter_cm: always there. diameter_in: the inches as typed, NaN where centimetres were typed.
    half_digit_cm: half of the last digit written, for counts that must not gain by rounding.
    """

    id: NDArray[np.str_]
    patch: NDArray[np.str_]
    species: NDArray[np.str_]
    x_m: NDArray[np.float64]
    y_m: NDArray[np.float64]
    diameter_cm: NDArray[np.float64]
    diameter_in: NDArray[np.float64]
    half_digit_cm: NDArray[np.float64]
    measured_at: NDArray[np.str_]
    stems: NDArray[np.int64]
    height_m: NDArray[np.float64]
    form: NDArray[np.str_]
    state: NDArray[np.str_]
    note: NDArray[np.str_]

    def __len__(self) -> int:
        return len(self.id)

    def where(self, keep: NDArray[np.bool_] | NDArray[np.intp]) -> "Stems":
        """The rows for which `keep` is true, or the rows of those numbers, in that order."""
        return Stems(**{name: getattr(self, name)[keep] for name in self.__slots__})


@dataclass(frozen=True, slots=True)
class Spared:
    """A plant or place that must come to no harm; species is the Latin name or empty."""

    id: str
    kind: str
    shape: Shape
    species: str = ""
    dbh_cm: float | None = None
    crown_radius_m: float | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Person:
    """Someone who works here, called by role; `does` holds "mix", "apply", "saw"; gear as listed."""

    role: str
    does: tuple[str, ...]
    gear: tuple[str, ...] = ()
    certified: Answer = "unknown"


@dataclass(frozen=True, slots=True)
class Vessel:
    """A bottle a mix is made and carried in. Integer microlitres. `lining` is its material."""

    id: str
    capacity_ul: int
    lining: str = "plastic"


@dataclass(frozen=True, slots=True)
class MeasureOwned:
    """A measuring tool at hand: its marks and what it holds, integer microlitres; `shown` as typed."""

    id: str
    mark_ul: int
    capacity_ul: int
    shown: str = ""


@dataclass(frozen=True, slots=True)
class Choice:
    """What a person chose for the plants of one species in one patch. None: not said."""

    patch: str
    species: str
    how: str
    product: str = ""
    concentration_frac: float | None = None
    carrier: str = ""
    tool: str = ""
    ring_cm: float | None = None
    state: str = "standing"
    first: str = ""
    partner: str = ""
    partner_frac: float | None = None


@dataclass(frozen=True, slots=True)
class Calibration:
    """What one stroke of a tool gave when someone counted strokes into a measure. on: ISO date or empty."""

    tool: str
    ml_per_stroke: float
    by: str = ""
    on: str = ""


@dataclass(frozen=True, slots=True)
class OthersRate:
    """Kill rate that others saw and handed on, brought in to be counted beside the books.

    whose: as its bringer calls them. ingredients: names. ae_g_l: acid in the mix, 0 where not told. works: how many
    days' works stand behind dead and seen. share: what part of their stems counts here, 0 for not at all.
    """

    id: str
    whose: str
    species: str
    method: str
    ingredients: tuple[str, ...]
    works: int
    dead: int
    seen: int
    percent: float = 0.0
    ae_g_l: float = 0.0
    months: float = 0.0
    season: str = ""
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class Tally:
    """Stems of one plant and size class counted in one sample plot."""

    plot: str
    patch: str
    species: str
    low_cm: float
    high_cm: float
    count: int
    plot_m2: float


@dataclass(frozen=True, slots=True)
class Tract:
    """One piece of land under one care, with all that a plan reads. State is a postal code or empty."""

    name: str
    place: str
    state: str
    time_zone: str
    who: Literal["own", "hire", "public", "adviser", "unknown"]
    invented: bool
    patches: tuple[Patch, ...]
    stems: Stems
    spared: tuple[Spared, ...]
    kept_asked: tuple[str, ...]
    """Patches for which someone has said what must not be harmed, even if that was 'none that I know of'."""
    shelf: tuple[Product, ...]
    people: tuple[Person, ...]
    vessels: tuple[Vessel, ...]
    measures: tuple[MeasureOwned, ...]
    choices: tuple[Choice, ...] = ()
    entries: tuple[Entry, ...] = ()
    emergency: tuple[tuple[str, str], ...] = ()
    questions: tuple["Question", ...] = field(default=())
    calibrations: tuple[Calibration, ...] = ()
    wage_cents_h: int | None = None
    plots: tuple[Tally, ...] = ()
    mixing_place: tuple[float, float] | None = None
    """Where mixing and rinsing are done, metres; None where nobody has said."""
    origin: tuple[float, float] | None = None
    """Latitude and longitude, degrees, of the corner that metres are counted from; None where not known."""
    rates: tuple[OthersRate, ...] = ()

    def patch(self, patch_id: str) -> Patch:
        """The patch of that id; KeyError if there is none."""
        for patch in self.patches:
            if patch.id == patch_id:
                return patch
        raise KeyError(patch_id)

    def product(self, product_id: str) -> Product:
        """The product of that id on the shelf; KeyError if there is none."""
        for product in self.shelf:
            if product.id == product_id:
                return product
        raise KeyError(product_id)


@dataclass(frozen=True, slots=True)
class Question:
    """Something that was read but is doubtful, such as an implausible size: a question, not a refusal."""

    message: str
    values: tuple[tuple[str, str | float], ...]
    file: str
    line: int | None = None
    column: str = ""
