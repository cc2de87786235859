"""The years ahead of a tract: what is believed of its targets, strategies side by side, what matters most, a budget."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtri

from stemward.handbook import Book
from stemward.kinds import Tract, Way
from stemward.ledger.revisits import works
from stemward.plan.behind import Asked, expected
from stemward.plan.killed import others, own_of
from stemward.plan.learned import MIDDLE, hours_of_days
from stemward.plan.ways import products_of
from stemward.reckon.alike import believe, quantiles
from stemward.reckon.allot import Allotted, allot
from stemward.reckon.outcome import Prior, prior_from_percent
from stemward.reckon.sensitivity import one_at_a_time, variance_share
from stemward.reckon.years import (
    Ahead,
    Doing,
    Path,
    Strategy,
    break_even,
    run,
    spread,
    years_to_gone,
)

Floats = NDArray[np.float64]
PATHS = 4000
SEED = 20261127
STOP_FRAC = 0.01
"""Share of the plants at the start under which a target counts as gone and work stops: what owners are shown."""
WORTH = 10.0
"""What a default of the years ahead is worth beside a person's own plants: engineering guess, ten plants."""
INPUTS = ("find_frac", "sprouts", "seedlings", "decline_frac")
MOST_YEARS = 15
SMALL_CM = 0.5
"""Size at which sprouts and seedlings are paced: the thinnest on record."""


@dataclass(frozen=True, slots=True)
class Known:
    """One weakly known input: low and high hold nine of ten cases. behind: own plants behind it; set: by hand."""

    low: float
    middle: float
    high: float
    behind: int = 0
    set: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Outlook:
    """The years ahead. names: of targets. guessed: targets for whose way no trial is known, so that the kill is a
    guess. shares: of the variance of the hours of treating yearly, by input. ends: those hours with one input at its
    ends. budget: what a given number of hours a year does, None where none was given."""

    years: int
    names: tuple[str, ...]
    guessed: tuple[str, ...]
    inputs: Mapping[str, Known]
    paths: tuple[Path, ...]
    priced: bool
    even: Mapping[str, int | None]
    gone: Mapping[str, tuple[float | None, float]]
    shares: Mapping[str, float]
    ends: Mapping[str, tuple[float, float]]
    budget: Allotted | None


def inputs_of(tract: Tract, book: Book, given: Mapping[str, float]) -> dict[str, Known]:
    """The weakly known inputs: the handbook's, moved by own looks back, or set by hand. Raises ValueError."""
    own = others(tract, book)
    seen = {"find_frac": own.found, "sprouts": own.sprouts, "seedlings": own.seedlings}
    found = {}
    for name in INPUTS:
        row = book.defaults[f"ahead_{name}"]
        low, high = book.default_range(f"ahead_{name}")
        middle, count = row.number, 0
        if name in seen and seen[name][1]:
            value, count = seen[name]
            moved = (WORTH * middle + count * value) / (WORTH + count)
            # Own plants narrow the range as the root of their number does.
            narrow = (WORTH / (WORTH + count)) ** 0.5
            low, high = moved - (middle - low) * narrow, moved + (high - middle) * narrow
            middle = moved
        if name in given:
            value = given[name]
            if not 0 <= value <= (1 if name.endswith("_frac") else 100):
                raise ValueError(name)
            found[name] = Known(value, value, value, count, True)
        else:
            top = 1.0 if name.endswith("_frac") else np.inf
            found[name] = Known(max(low, 0.0), middle, float(min(high, top)), count)
    return found


def outlook(
    tract: Tract, plan: Mapping[str, Any], book: Book, years: int = 10, given: Mapping[str, float] | None = None,
    hours_a_year: float | None = None,
) -> Outlook | None:  # fmt: skip
    """The years ahead of a plan's targets; None where it has none. given: inputs set by hand.

    hours_a_year: what can be spent. ValueError for years outside 1 to 15 or an input that cannot be.
    """
    if not 1 <= years <= MOST_YEARS:
        raise ValueError("years")
    items = [item for item in plan["treatments"] if item["stems"] > 0]
    if not items:
        return None
    known = inputs_of(tract, book, given or {})
    chance = np.random.default_rng(SEED)
    drawn = {name: _draws(one, chance) for name, one in known.items()}
    kills, guessed = _kills(items, tract, book, chance)
    cutting = Doing(_cut_kills(items, book, chance), cut_takes(items, tract, book))
    doings = [Doing(kills, takes(items, tract, book)), cutting]
    paths = tuple(run(_ahead(items, drawn, book), doings, strategies(years)))
    by_name = {path.name: path for path in paths}
    priced = bool(doings[0].takes[3].any())
    measure: Any = "cents" if priced else "hours"
    plants = np.array([float(i["stems"]) for i in items])
    answer = by_name["treat yearly"].spent("hours")[-1].astype(float)
    mean_kill = (plants @ kills) / plants.sum()
    return Outlook(
        years, tuple(f"{i['common']}, {i['patch_name']}" for i in items), guessed, known, paths, priced,
        {
            name: break_even(path, by_name["cut yearly"], measure)
            for name, path in by_name.items()
            if name.startswith("treat")
        },
        {name: years_to_gone(path, STOP_FRAC) for name, path in by_name.items()},
        {"kill": variance_share(mean_kill, answer), **{n: variance_share(drawn[n], answer) for n in INPUTS}},
        _ends(items, known, kills, doings[0].takes, book, years),
        _budget(items, doings[0], kills, drawn, plants, hours_a_year, years),
    )  # fmt: skip


def strategies(years: int) -> list[Strategy]:
    """What is held side by side. Doing 0 is the way of each target on the plan, 1 is cutting alone."""
    every_second = tuple(0 if year % 2 == 0 else None for year in range(years))
    return [
        Strategy("leave it", (None,) * years),
        Strategy("cut yearly", (1,) * years),
        Strategy("treat once", (0, *(None,) * (years - 1))),
        Strategy("treat, then cut", (0, *(1,) * (years - 1)), STOP_FRAC),
        Strategy("treat every second year", every_second, STOP_FRAC),
        Strategy("treat yearly", (0,) * years, STOP_FRAC),
    ]


def _ahead(items: Sequence[Mapping[str, Any]], drawn: Mapping[str, Floats], book: Book) -> Ahead:
    plants = np.array([float(i["stems"]) for i in items])
    find, sprouts, seedlings, decline = (np.repeat(drawn[name][None, :], len(items), axis=0) for name in INPUTS)
    return Ahead(plants, find, sprouts, seedlings, decline, book.defaults["ahead_grow_years"].number)


def _draws(known: Known, chance: np.random.Generator, paths: int = PATHS) -> Floats:
    """Paths of an input: normal on each side of the middle, so that the ends hold nine of ten."""
    z = ndtri(spread(paths, chance)) / ndtri(0.95)
    moved = np.where(z > 0, z * (known.high - known.middle), z * (known.middle - known.low))
    values: Floats = np.maximum(known.middle + moved, 0.0)
    return np.minimum(values, 1.0) if known.high <= 1 and known.middle <= 1 else values


def _kills(
    items: Sequence[Mapping[str, Any]], tract: Tract, book: Book, chance: np.random.Generator
) -> tuple[Floats, tuple[str, ...]]:
    """Chances of dying by target and path for the way on the plan; the same plant and way share their paths."""
    found, guessed, kept = works(tract, book), [], {}
    factor = book.defaults["strength_near_factor"].number
    rows = []
    for item in items:
        key = (item["species"], item["how"], item["product"], item["partner"], item["first"])
        if key not in kept:
            prior, dead, seen = _prior(item, tract, book, found, factor)
            at = spread(PATHS, chance)
            kept[key] = (quantiles(believe(prior or default_kill(item["how"], book), dead, seen), at),
                         prior is None and not sum(seen))  # fmt: skip
        rows.append(kept[key][0])
        if kept[key][1] and item["how"] != "leave it":
            guessed.append(f"{item['common']}, {item['patch_name']}")
    return np.stack(rows), tuple(guessed)


def _prior(
    item: Mapping[str, Any], tract: Tract, book: Book, found: Any, factor: float
) -> tuple[Prior | None, tuple[int, ...], tuple[int, ...]]:
    way = Way(item["how"], item["product"], item["concentration_frac"], item["carrier"], item["tool"], None,
              item["first"], item["partner"], item["partner_frac"])  # fmt: skip
    products = [p for p in products_of(way, tract) if p is not None]
    contents = tuple(c for p in products for c in p.contents)
    asked = Asked(item["species"], way.how, contents, way.concentration_frac or 0.0, way.first, max(len(products), 1))
    return (expected(asked, book, tract.rates).prior, *own_of(found, item["species"], way, factor))


def default_kill(how: str, book: Book) -> Prior:
    """What is expected where no trial is known: nothing dies that is left, few that are cut alone."""
    if how == "leave it":
        return Prior(0.0, 1e6)
    name = "ahead_cut_kill_frac" if how == "cut only" else "ahead_kill_frac"
    return prior_from_percent(book.defaults[name].number, book.defaults["prior_percent_stems"].number)


def _cut_kills(items: Sequence[Mapping[str, Any]], book: Book, chance: np.random.Generator) -> Floats:
    rows = []
    for item in items:
        plant = book.species[item["species"]]
        prior = expected(Asked(item["species"], "cut only", (), 0.0), book).prior
        if prior is None and plant.stump_sprouts == "no":
            prior = Prior(13.0, 1.0)
        rows.append(quantiles(believe(prior or default_kill("cut only", book)), spread(PATHS, chance)))
    return np.stack(rows)


def takes(items: Sequence[Mapping[str, Any]], tract: Tract, book: Book) -> Floats:
    """Hours, mix, acid equivalent and cents of one stem of each pool, for the way on the plan: 4 by targets by 3."""
    small = [book.defaults[n].number for n in ("ahead_sprout_mix_frac", "ahead_seedling_mix_frac")]
    found = np.zeros((4, len(items), 3))
    for n, item in enumerate(items):
        hours = _hours(item["how"], item["reckoned_h"] / item["stems"] if item["stems"] else 0.0, tract, book)
        ml = item["need_ml"] / item["stems"]
        ae = sum(item["ae_g"].values()) / item["stems"]
        found[0, n] = hours
        found[1, n] = [ml, ml * small[0], ml * small[1]]
        found[2, n] = [ae, ae * small[0], ae * small[1]]
        found[3, n] = _cents(item, found[0, n], found[1, n], tract)
    return found


def cut_takes(items: Sequence[Mapping[str, Any]], tract: Tract, book: Book) -> Floats:
    """The same for cutting alone, at the pace of stems of the tract's own sizes."""
    found = np.zeros((4, len(items), 3))
    for n, item in enumerate(items):
        rows = (tract.stems.patch == item["patch"]) & (tract.stems.species == item["species"])
        sizes = tract.stems.diameter_cm[rows]
        middle = float(np.median(sizes)) if len(sizes) else SMALL_CM
        found[0, n] = _hours("cut only", _pace_h("cut only", middle, book), tract, book)
        found[3, n] = found[0, n] * (tract.wage_cents_h or 0)
    return found


def _pace_h(how: str, size_cm: float, book: Book) -> float:
    """Hours of one stem, the middle of the usual band; 0 where no pace is on record."""
    for pace in book.paces:
        if pace.method == how and pace.low_cm <= size_cm < pace.high_cm:
            return float((pace.low_per_hour * pace.high_per_hour) ** -0.5)
    return 0.0


def _hours(how: str, first_h: float, tract: Tract, book: Book) -> Floats:
    """Hours of a stem, a sprout and a seedling; sprouts and seedlings at the pace of the thinnest."""
    days = hours_of_days(tract, how)
    factor = days.factor(MIDDLE) if days else 1.0
    thin = _pace_h(how, SMALL_CM, book)
    thin = min(thin, first_h) if first_h else thin
    return np.array([first_h, thin, thin]) * factor


def _cents(item: Mapping[str, Any], hours: Floats, ml: Floats, tract: Tract) -> Floats:
    """Wage and product, cents; 0 unless both are written down, as on the plan."""
    if tract.wage_cents_h is None:
        return np.zeros(3)
    each = 0.0
    for name, share in ((item["product"], item["concentration_frac"]), (item["partner"], item["partner_frac"])):
        if not name:
            continue
        priced = [c for c in tract.product(name).containers if c.price_cents is not None]
        if not priced:
            return np.zeros(3)
        each += (share or 0.0) * (priced[0].price_cents or 0) / (priced[0].capacity_ul / 1000)
    found: Floats = hours * tract.wage_cents_h + ml * each
    return found


def _ends(
    items: Sequence[Mapping[str, Any]], known: Mapping[str, Known], kills: Floats, takes_: Floats, book: Book,
    years: int,
) -> dict[str, tuple[float, float]]:  # fmt: skip
    """Hours of treating yearly with one input at its low and high end, all others in the middle."""
    low, middle_kill, high = np.quantile(kills, [0.05, 0.5, 0.95], axis=1)
    plan = strategies(years)[-1]

    def answer(at: Mapping[str, float]) -> float:
        kill = low if at["kill"] < 0 else high if at["kill"] > 0 else middle_kill
        drawn = {name: np.array([at[name]]) for name in INPUTS}
        (path,) = run(_ahead(items, drawn, book), [Doing(kill[:, None], takes_)], [plan])
        return float(path.spent("hours")[-1, 0])

    ends = {name: (one.low, one.middle, one.high) for name, one in known.items()}
    return one_at_a_time(answer, {"kill": (-1.0, 0.0, 1.0), **ends})


def _budget(
    items: Sequence[Mapping[str, Any]], doing: Doing, kills: Floats, drawn: Mapping[str, Floats], plants: Floats,
    hours_a_year: float | None, years: int,
) -> Allotted | None:  # fmt: skip
    if hours_a_year is None:
        return None
    standing = np.maximum(doing.takes[0][:, 0], 1e-6)
    back = np.maximum(doing.takes[0][:, 1] * float(np.median(drawn["sprouts"])), 1e-6)
    find = np.repeat(drawn["find_frac"][None, :], len(items), axis=0)
    return allot(plants, kills, find, standing, back, np.full(years, hours_a_year))
