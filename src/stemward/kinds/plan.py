"""A plan: ways, treatments, mixes and the worked sums behind every number."""

from dataclasses import dataclass
from typing import Any, Literal

from stemward.kinds.cited import Cited
from stemward.kinds.finding import Finding

Method = Literal["leave it", "cut only", "cut stump", "hack and squirt"]
METHODS: tuple[Method, ...] = ("leave it", "cut only", "cut stump", "hack and squirt")
HERBICIDE_METHODS: tuple[Method, ...] = ("cut stump", "hack and squirt")
CARRIERS = ("water", "oil", "undiluted")


@dataclass(frozen=True, slots=True)
class Target:
    """Plants to treat: one species in one patch. `stem_rows` are row numbers of the tract's stems."""

    patch: str
    species: str
    stem_rows: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Way:
    """One way to treat one target. concentration_frac is product over finished mix, by volume."""

    how: Method
    product: str = ""
    concentration_frac: float | None = None
    carrier: str = ""
    tool: str = ""
    ring_cm: float | None = None


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
