"""What the handbook gives: plants, ingredients, evidence, rules, tools. Every value knows its source."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, NamedTuple, TypeVar

from stemward.kinds import Cited, Grade

YesNo = Literal["yes", "no"]
Sprouts = Literal["no", "weak", "moderate", "strong", "unknown"]
Suckers = Literal["yes", "no", "weak", "unknown"]
CutFirst = Literal["worse", "fits", "unknown"]
SoilActive = Literal["no", "weak", "yes"]
Rating = Literal["excellent", "good", "fair", "poor", "none-stated"]
EvidenceKind = Literal["trial", "trial cited", "extension", "handbook", "agency", "practitioner"]
Sense = Literal["for", "against", "none"]
RuleKind = Literal["per diameter", "per centres", "per gap", "per stem"]
CautionStage = Literal["before", "cut", "mix", "apply", "after", "emergency"]
MonthDay = tuple[int, int]
K = TypeVar("K")
V = TypeVar("V")


@dataclass(frozen=True, slots=True)
class Species:
    """A woody plant as the handbook knows it.

    latin: name by which other rooms refer to it; "Quercus spp." for a genus.
    clone: spreads as one plant by root suckers. grafts: known or presumed to graft roots within its kind.
    cut_first: what cutting before a systemic treatment does: "worse" brings up root suckers, "fits" does not.
    max_dbh_cm: greatest diameter at breast height usually met, None where nothing is known.
    cited: how it sprouts, with the source. cited_cut_first: the source of cut_first, else the same.
    """

    latin: str
    common: str
    synonyms: tuple[str, ...]
    habit: str
    native: bool
    stump_sprouts: Sprouts
    root_suckers: Suckers
    clone: bool
    grafts: bool
    genus: str
    evergreen: str
    max_dbh_cm: float | None
    cautions: str
    note: str
    cut_first: CutFirst
    cited: Cited
    cited_cut_first: Cited


@dataclass(frozen=True, slots=True)
class Near:
    """A name that is not one plant, and what may be meant as (common, latin), best first; may be empty."""

    text: str
    candidates: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Ingredient:
    """An active ingredient in one form, and what it does in soil and at roots.

    soil_active: whether woody roots take it up from soil. exuded: roots give it off or soil keeps it active,
    so that the whole dose counts as reaching soil. translocated: moves within the plant.
    dt50: half-life in soil, days; koc: sorption to organic carbon, mL/g; None where nothing is known.
    Half-life and Koc of all forms of triclopyr are those of the acid, to which they degrade.
    """

    name: str
    form: str
    group: str
    soil_active: SoilActive
    soil_cited: Cited
    exuded: bool
    exuded_cited: Cited
    translocated: bool
    translocated_cited: Cited
    dt50_low_d: Cited | None
    dt50_typical_d: Cited | None
    dt50_high_d: Cited | None
    koc_low_ml_g: Cited | None
    koc_typical_ml_g: Cited | None
    koc_high_ml_g: Cited | None


@dataclass(frozen=True, slots=True)
class Evidence:
    """One row on how a plant fared: who found or says what, and where.

    id: the raw row. plant: as the row names it, which may be a group. joined: how several ingredients go
    together: "with" (a mixture), "or" (any one), "not stated".
    rating: the lesser word of a range; low_frac, high_frac: share controlled where figures are given.
    typed: the outcome as published, in short. sense: whether it speaks for the treatment.
    concentration: product over finished mix, by volume. strength_typed: strength of the product as published.
    flags: "unclear" (never a limit), "old", "side effect", "ingredient not stated", "result not read".
    read: what of the source was read.
    """

    id: str
    plant: str
    method: str
    ingredients: tuple[str, ...]
    joined: str
    form: str
    rating: Rating
    rating_high: str
    low_frac: float | None
    high_frac: float | None
    typed: str
    sense: Sense
    concentration_low_frac: float | None
    concentration_high_frac: float | None
    strength_ae_g_l: float | None
    strength_typed: str
    season: str
    kind: EvidenceKind
    flags: tuple[str, ...]
    note: str
    source: str
    place: str
    grade: Grade
    read: str

    @property
    def counts(self) -> bool:
        """True if the row says how the treatment itself did, and it is clear what was used."""
        return not {"unclear", "side effect", "ingredient not stated", "result not read"} & set(self.flags)


@dataclass(frozen=True, slots=True)
class CutRule:
    """How many cuts a stem takes. `rule` says of what the spacing is measured; kinds are never converted.

    spacing_cm: diameter per cut, or distance between centres or edges along the bark. least: fewest cuts.
    """

    id: str
    rule: RuleKind
    spacing_cm: float
    least: int
    ml_per_cut: float
    typed: str
    source: str
    place: str
    grade: Grade
    note: str


@dataclass(frozen=True, slots=True)
class Strength:
    """The strength of mix on record for an ingredient, form and method: product over mix, by volume."""

    id: str
    low_frac: float
    usual_frac: float
    high_frac: float
    carrier: str
    cited: Cited


@dataclass(frozen=True, slots=True)
class Tool:
    """What puts herbicide on the plant.

    depths: mL of mix per cm² by surface ("cut face", "smooth bark", "rough bark").
    waste_frac: beside the stem, on the smallest stems. drip: share of the mix that reaches soil.
    """

    name: str
    depths: Mapping[str, Cited]
    waste_frac: Cited
    smallest_ml: Cited
    ml_per_stroke: Cited | None
    oil_proof: Cited
    drip_low_frac: Cited
    drip_high_frac: Cited

    @property
    def depth_ml_cm2(self) -> Cited:
        """Wetting depth on a cut face."""
        return self.depths["cut face"]


@dataclass(frozen=True, slots=True)
class Caution:
    """A usual caution as a bare fact; room `say` words it."""

    id: str
    stage: CautionStage
    topic: str
    fact: str
    cited: Cited


@dataclass(frozen=True, slots=True)
class Gear:
    """One item of protective equipment in label words.

    serves_for: other items a wearer of this one has as well. usual: part of the usual least for a strong mix.
    saw: worn at the saw.
    """

    name: str
    body: str
    serves_for: tuple[str, ...]
    usual: bool
    saw: bool
    meaning: str
    cited: Cited


@dataclass(frozen=True, slots=True)
class KitItem:
    """Something to take along. where: a method, "mix", "saw", or "all"."""

    where: str
    item: str
    cited: Cited


class WiltMonths(NamedTuple):
    """Months in which oaks are not to be cut or wounded: first and last (month, day)."""

    first: MonthDay
    last: MonthDay
    cited: Cited


@dataclass(frozen=True, slots=True)
class StateRule:
    """A state's rule on one topic, as it stood on a day."""

    id: str
    state: str
    topic: str
    what: str
    cited: Cited


def frozen(mapping: dict[K, V]) -> Mapping[K, V]:
    """A mapping that nobody can change."""
    return MappingProxyType(mapping)
