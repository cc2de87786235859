"""A plan: ways, treatments, mixes and the worked sums behind every number."""

from dataclasses import dataclass
from typing import Any, Literal, get_args

from stemward.kinds.cited import Cited
from stemward.kinds.finding import Finding

Method = Literal["leave it", "cut only", "girdle", "pull", "cut stump", "basal bark", "hack and squirt", "foliar"]
METHODS: tuple[Method, ...] = get_args(Method)
HERBICIDE_METHODS: tuple[Method, ...] = METHODS[4:]
First = Literal["", "cut", "fresh face", "sprouts"]
FIRSTS: tuple[First, ...] = get_args(First)
"""What comes before the herbicide: nothing; cut and let sprout; a fresh face on an old stump; waiting for sprouts."""
STANDING_AS = ("standing", "cut")
"""States in which plants are treated."""
CARRIERS = ("water", "oil", "undiluted")


@dataclass(frozen=True, slots=True)
class Target:
    """Plants to treat: one species in one patch, standing or already cut. `stem_rows`: rows of the tract's stems."""

    patch: str
    species: str
    stem_rows: tuple[int, ...]
    state: str = "standing"


@dataclass(frozen=True, slots=True)
class Way:
    """One way to treat one target. Shares are product over finished mix, by volume.

    first: what comes before the herbicide, with a wait. partner: a second product in the same mix.
    """

    how: Method
    product: str = ""
    concentration_frac: float | None = None
    carrier: str = ""
    tool: str = ""
    ring_cm: float | None = None
    first: First = ""
    partner: str = ""
    partner_frac: float | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One worked sum: formula name, where each input stands, and its value.

    inputs: argument name to a reference: "cited:ID", "column:JOB/NAME", "step:ID" or "number:JOB/NAME".
    value: number, or list of numbers with one per stem.
    """

    id: str
    formula: str
    inputs: tuple[tuple[str, str], ...]
    value: float | tuple[float, ...]
    unit: str


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan as drawn up: plain data, written to JSON and never read back as input to another plan."""

    code: str
    as_of: str
    tract: dict[str, Any]
    treatments: list[dict[str, Any]]
    mixes: list[dict[str, Any]]
    findings: list[Finding]
    steps: list[Step]
    cited: list[Cited]
    columns: dict[str, dict[str, Any]]
    numbers: dict[str, dict[str, float]]
    hashes: dict[str, str]
    gear: dict[str, Any]
    surveys: list[dict[str, Any]]
