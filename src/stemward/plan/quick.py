"""Quick sums that need no tract: how much some stems take, and how much goes into a bottle."""

from dataclasses import dataclass

import numpy as np

from stemward.handbook import Book, Ingredient
from stemward.kinds import UL_PER_ML, Cited, Content, Patch, Product, Stems, Target, Way
from stemward.plan.job import work_job
from stemward.plan.sums import Ledger
from stemward.reckon import dose, mix, roots
from stemward.reckon.roots import Level
from stemward.units import convert


@dataclass(frozen=True, slots=True)
class QuickDose:
    """What is asked: way, sizes as typed, stems of each size, tool, ring, and the jug for cuts.

    diameter_cm: across the stems, or for leaves height_m: how tall the plants are. ml_per_stroke: what one stroke of
    the tool was counted to give, 0 where nobody has counted.
    """

    how: str
    typed: tuple[str, ...]
    diameter_cm: tuple[float, ...]
    count: int
    tool: str
    ring_cm: float | None
    ingredient: str
    strength_ae_g_l: float
    concentration_frac: float
    oil: bool = False
    height_m: tuple[float, ...] = ()
    ml_per_stroke: float = 0.0


@dataclass(frozen=True, slots=True)
class DoseRow:
    """One size: mL of mix for each stem, its cuts or the share of the face that is wetted, and strokes if counted."""

    typed: str
    each_ml: float
    cuts: int | None
    wet_frac: float
    strokes: int | None = None


@dataclass(frozen=True, slots=True)
class DoseDone:
    """The answer: a row a size, the total with its spread, and the values it leans on."""

    rows: tuple[DoseRow, ...]
    need_ml: float
    low_ml: float
    high_ml: float
    leans_on: tuple[Cited, ...]


def quick_dose(asked: QuickDose, book: Book) -> DoseDone:
    """Work out a quick dose through the same job as a plan does: one stem of each size."""
    leaves = asked.how == "foliar"
    sizes = asked.height_m if leaves else asked.diameter_cm
    stems = _stems(asked, len(sizes))
    content = Content(asked.ingredient, "salt", asked.strength_ae_g_l)
    product = Product("jug", "jug", False, "", "salt in water", (content,))
    carrier = "oil" if asked.oil or asked.how == "basal bark" else "water"
    way = Way(asked.how, "jug", asked.concentration_frac, carrier, asked.tool, asked.ring_cm)  # type: ignore[arg-type]
    sums = Ledger()
    species = next(iter(book.species.values()))
    target = Target("", species.latin, tuple(range(len(sizes))))
    work_job("q", target, Patch("", "", ()), species, way, product, stems, book, sums)
    each_ml = np.asarray(sums.values["q.each_ml"], float)
    cuts = sums.values.get("q.cuts")
    whole, ring = book.defaults["whole_up_to_cm"].number, asked.ring_cm or book.defaults["ring_cm"].number
    stump = asked.how == "cut stump"
    wet = dose.wet_share_frac(stems.diameter_cm, whole, ring) if stump else np.zeros(len(sizes))
    strokes = dose.strokes(each_ml, asked.ml_per_stroke) if asked.ml_per_stroke > 0 else None
    rows = tuple(
        DoseRow(
            typed,
            float(each_ml[n]),
            None if cuts is None else int(cuts[n]),
            float(wet[n]),
            None if strokes is None else int(strokes[n]),
        )
        for n, typed in enumerate(asked.typed)
    )
    need_ml = float(each_ml.sum()) * asked.count
    spread = book.defaults["spread_factor"].number
    leans_on = tuple(cited for cited in sums.cited.values() if cited.id != "default.use_rate")
    return DoseDone(rows, need_ml, need_ml / spread, need_ml * spread, leans_on)


def _stems(asked: QuickDose, count: int) -> Stems:
    """One stem of each size, side by side."""
    diameter_cm = np.asarray(asked.diameter_cm or np.ones(count), float)
    inches = diameter_cm / convert(1.0, "in", "cm")
    height_m = np.asarray(asked.height_m or np.full(count, np.nan), float)
    zeros, words = np.zeros(count), np.full(count, "")
    return Stems(
        np.array([str(n) for n in range(count)]), words, words, zeros, zeros, diameter_cm, inches, zeros, words,
        np.ones(count, np.int64), height_m, words, words, words,
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class PouredPart:
    """One thing poured: what, how many mL, and how often which measure is filled."""

    what: str
    ml: float
    measure: str
    fills: int


@dataclass(frozen=True, slots=True)
class MixDone:
    """What to pour, or why it cannot be measured and which measure would do."""

    parts: tuple[PouredPart, ...] = ()
    mixed_ml: float = 0.0
    share: float = 0.0
    refused: str = ""
    would_do: str = ""


def quick_mix(amount_ml: float, share: float, bottle_ml: float, book: Book) -> MixDone:
    """Pour a mix of at least `amount_ml` with the usual measures, at the share or up to 5 % of it under."""
    measures = tuple(mix.Measure(m.id, m.mark_ul, m.capacity_ul) for m in book.measures)
    low = share if share >= 1 else share * (1 - book.defaults["lower_tolerance_frac"].number)
    over_frac = book.defaults["most_over_frac"].number
    done = mix.round_batch(
        round(amount_ml * UL_PER_ML), low, share, measures, measures, round(bottle_ml * UL_PER_ML), over_frac
    )
    if isinstance(done, mix.Refusal):
        return MixDone(refused=done.reason, would_do=done.would_do.name if done.would_do else "a larger bottle")
    return MixDone(
        tuple(
            PouredPart(p.name, p.amount_ul / UL_PER_ML, p.measure.name if p.measure else "", p.fills)
            for p in done.parts
            if p.amount_ul
        ),
        done.mixed_ul / UL_PER_ML,
        done.concentration_frac,
    )


@dataclass(frozen=True, slots=True)
class NearAsked:
    """What may reach a plant that is kept: ingredient, form and way, and where and how large the plant is.

    kind: "same", "kin" (oaks among oaks) or "other". ae_g: acid equivalent on the stem, g. dbh_cm 0 for no tree.
    """

    ingredient: str
    form: str
    how: str
    kind: str
    clone: bool
    distance_m: float
    dbh_cm: float
    crown_radius_m: float
    ae_g: float = 1.0


@dataclass(frozen=True, slots=True)
class Route:
    """One route, its level, and the numbers behind it by name with unit."""

    name: str
    level: Level
    numbers: tuple[tuple[str, float], ...]
    leans_on: tuple[Cited, ...]


def quick_near(asked: NearAsked, book: Book) -> tuple[Route, ...]:
    """The four routes by which harm can reach a kept plant. KeyError for an ingredient that is not on record."""
    known = book.ingredient(asked.ingredient, asked.form)
    if known is None:
        raise KeyError(asked.ingredient)
    return (_by_soil(asked, known, book), _by_roots(asked, known, book), _by_air(asked, book), _by_splash(asked, book))


def _by_soil(asked: NearAsked, known: Ingredient, book: Book) -> Route:
    keys = ("protection_multiple", "advice_multiple", "likely_multiple", "crown_multiple")
    protection, advice, likely, crown = (book.defaults[key] for key in keys)
    if asked.dbh_cm or asked.crown_radius_m:
        multiples = (protection.number, advice.number, likely.number)
        reach = roots.reach_m(asked.dbh_cm, asked.crown_radius_m, multiples, crown.number)
    else:
        around_m = book.defaults["small_plants_reach_m"].number
        reach = roots.Reach(0.0, around_m / 2, around_m)
    level = Level(int(roots.soil_level(asked.distance_m, reach, known.soil_active, asked.ae_g)))
    numbers = [("distance_m", asked.distance_m), ("likely_m", reach.likely_m), ("advice_m", reach.advice_m)]
    if known.dt50_high_d is not None:
        numbers.append(("left_frac", float(roots.remaining_frac(180, known.dt50_high_d.number))))
    return Route("soil", level, tuple(numbers), (known.soil_cited, likely))


def _by_roots(asked: NearAsked, known: Ingredient, book: Book) -> Route:
    graft = book.defaults["graft_oak_m" if asked.kind == "kin" else "graft_same_m"]
    if asked.kind == "other":
        return Route("shared roots", Level.NO_ROUTE_KNOWN, (("distance_m", asked.distance_m),), (graft,))
    stump = asked.how == "cut stump"
    found = roots.shared_root_level(asked.distance_m, graft.number, asked.clone, known.translocated, stump)
    numbers = (("distance_m", asked.distance_m), ("graft_m", graft.number))
    return Route("shared roots", Level(int(found)), numbers, (graft, known.translocated_cited))


def _by_air(asked: NearAsked, book: Book) -> Route:
    far, close = book.defaults["drift_m"], book.defaults["drift_much_m"]
    level = Level.NO_ROUTE_KNOWN
    if asked.how == "foliar":
        level = Level(int(roots.drift_level(asked.distance_m, close.number, far.number)))
    if level == Level.NO_ROUTE_KNOWN and ("ester" in asked.form or asked.ingredient == "dicamba"):
        level = Level.LITTLE if asked.distance_m <= far.number else level
    return Route("drift or vapor", level, (("distance_m", asked.distance_m), ("far_m", far.number)), (far,))


def _by_splash(asked: NearAsked, book: Book) -> Route:
    splash, basal = book.defaults["splash_m"], book.defaults["basal_near_m"]
    level = Level.SOME if asked.distance_m <= splash.number else Level.NO_ROUTE_KNOWN
    if asked.how == "basal bark" and asked.distance_m <= basal.number:
        level = Level.MUCH
    return Route("splash or spill", level, (("distance_m", asked.distance_m), ("splash_m", splash.number)), (splash,))
