"""Which hours are open for a piece of work: every hour against every rule, each with its reason and who says so."""

import datetime
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from stemward.handbook import Book
from stemward.handbook.weather import WeatherRule
from stemward.kinds import LabelFact, Tract
from stemward.kinds.hours import Hours
from stemward.label import Situation, resolve
from stemward.reckon.air.moisture import depression_c, station_pressure_hpa
from stemward.reckon.air.still import Risk, inversion_risk
from stemward.reckon.air.sun import elevation_deg
from stemward.reckon.air.wet import bark_wet, leaf_wet_by_dew, rained
from stemward.reckon.dry import NEWARK_ODDS, Dry, dry_blocks, dry_hours, odds_ratio

Mask = NDArray[np.bool_]
State = Literal["open", "shut", "find out"]
HOUR_S = 3600
LEAST_HISTORY_H = 2000
"""Hours of rain or none from which a place's own tie of wet hours is taken: engineering guess."""
DAY_H = 24


@dataclass(frozen=True, slots=True)
class Doing:
    """A piece of work as far as weather bears on it. form: "ester", or another of the handbook's forms.

    facts: the product's label facts; situation: for resolving them. species: Latin name, "" where none is named.
    rough_bark: bark that dries slowly. in_bloom, standing_water: "yes", "no" or "unknown". odds: how the place's
    own wet hours hold together.
    """

    method: str
    carrier: str = ""
    form: str = ""
    facts: tuple[LabelFact, ...] = ()
    situations: tuple[Situation, ...] = ()
    species: str = ""
    rough_bark: bool = False
    in_bloom: str = "no"
    standing_water: str = "no"
    odds: float = NEWARK_ODDS[0]


@dataclass(frozen=True, eq=False)
class Reason:
    """One rule over all hours. closed: hours it shuts (or, where it only tells, speaks of); unknown: hours in which it
    cannot be judged. value: what stood against the limit, nan where nothing. by: "label" or "practice"."""

    rule: WeatherRule
    limit: float | None
    by: Literal["label", "practice"]
    page: str
    closed: Mask
    unknown: Mask
    value: NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Judged:
    """The hours with what shuts them. dry_h: hours without rain that are needed behind a start. unread: kinds of label
    fact that nobody has read, for which common practice stands in."""

    hours: Hours
    reasons: tuple[Reason, ...]
    dry_h: float
    unread: tuple[str, ...]

    @property
    def shut(self) -> Mask:
        """Hours that some rule shuts."""
        found = np.zeros(len(self.hours.at), bool)
        for reason in self.reasons:
            if reason.rule.weight == "shut":
                found |= reason.closed
        return found

    @property
    def asked(self) -> Mask:
        """Hours that nothing shuts but of which something is not known."""
        found = np.zeros(len(self.hours.at), bool)
        for reason in self.reasons:
            if reason.rule.weight == "shut":
                found |= reason.unknown
        return found & ~self.shut

    def states(self) -> list[State]:
        """Each hour as open, shut or find out."""
        return [
            "shut" if shut else "find out" if asked else "open"
            for shut, asked in zip(self.shut.tolist(), self.asked.tolist(), strict=True)
        ]


@dataclass(frozen=True, slots=True)
class Span:
    """Hours in a row with one state and the same reasons. first, last: rows of the hours, both in it."""

    first: int
    last: int
    state: State
    reasons: tuple[int, ...]


def judge(doing: Doing, hours: Hours, book: Book) -> Judged:
    """Every hour against every rule that is for this work. The label's own limit takes the place of common practice."""
    reasons, unread, dry_h = [], [], 0.0
    for rule in book.weather_rules:
        if not rule.is_for(doing.method, doing.carrier, doing.form):
            continue
        limit, by, page, drop, open_question = _limit(rule, doing)
        if drop:
            continue
        if open_question and rule.label_kind not in unread:
            unread.append(rule.label_kind)
        if rule.matter == "rain behind":
            dry_h = float(limit or 0.0)
        closed, unknown, value = MATTERS[rule.matter](hours, limit, doing, dry_h)
        with np.errstate(invalid="ignore"):
            reasons.append(Reason(rule, limit, by, page, np.asarray(closed & ~unknown), np.asarray(unknown), value))
    poor = _poor_season(doing, hours, book)
    return Judged(hours, (*reasons, *poor), dry_h, tuple(unread))


def dry_h_of(doing: Doing, book: Book) -> float:
    """Hours without rain that are needed behind a piece of work, by its label or by common practice; 0 for none."""
    for rule in book.weather_rules:
        if rule.matter == "rain behind" and rule.is_for(doing.method, doing.carrier, doing.form):
            limit, _, _, drop, _ = _limit(rule, doing)
            return 0.0 if drop else float(limit or 0.0)
    return 0.0


def _limit(rule: WeatherRule, doing: Doing) -> tuple[float | None, Literal["label", "practice"], str, bool, bool]:
    """A rule's limit as it holds here: value, by whom, page, whether the label lifts it, whether nobody has read it."""
    if rule.matter == "label season" and not doing.facts:
        return None, "practice", "", True, False
    if not rule.label_kind or not doing.facts:
        return rule.limit, "practice", "", False, bool(rule.label_kind)
    found = [
        resolve(doing.facts, rule.label_kind, one) for one in doing.situations or (Situation(method=doing.method),)
    ]
    facts = [fact for one in found if one.outcome in ("decided", "differ") for fact in one.facts]
    said = [fact for fact in facts if fact.standing == "says"]
    if any(fact.standing == "no limit" for fact in facts) and not said:
        return rule.limit, "label", facts[0].page, True, False
    if not said:
        # "Not found" on the label leaves what is usual; what nobody has read does as well, and is told.
        return rule.limit, "practice", "", False, not facts
    if rule.limit is None:
        return None, "label", said[0].page, said[0].value == "no", False
    values = [float(fact.value) for fact in said if isinstance(fact.value, int | float)]
    strict = min if rule.matter in ("wind over", "heat over", "gust over") else max
    value = strict(values) if values else rule.limit
    page = next((fact.page for fact in said if fact.value == value), said[0].page)
    return (value / HOUR_S if rule.unit == "h" else value), "label", page, False, False


# what each matter asks of the hours: (hours, limit, work, hours needed dry) -> (closed, unknown, value)

Judgement = tuple[Mask, Mask, NDArray[np.float64]]


def _none(hours: Hours) -> Mask:
    return np.zeros(len(hours.at), bool)


def _over(column: NDArray[np.float64], limit: float | None) -> Judgement:
    with np.errstate(invalid="ignore"):
        return column > (limit or 0.0), np.isnan(column), column


def _under(column: NDArray[np.float64], limit: float | None) -> Judgement:
    with np.errstate(invalid="ignore"):
        return column < (limit or 0.0), np.isnan(column), column


def _wind_over(hours: Hours, limit: float | None, *_: object) -> Judgement:
    # The upper limit is held against gusts where they are known, the lower one against the mean.
    return _over(np.where(np.isnan(hours.gust_m_s), hours.wind_m_s, np.fmax(hours.gust_m_s, hours.wind_m_s)), limit)


def _gust_over(hours: Hours, limit: float | None, *_: object) -> Judgement:
    return _wind_over(hours, limit)


def _inversion(hours: Hours, *_: object) -> Judgement:
    risk = inversion_risk(hours.at, hours.wind_m_s, hours.cloud_frac, hours.site.latitude_deg, hours.site.longitude_deg)
    return risk == Risk.HIGH, risk == Risk.UNKNOWN, risk.astype(float)


def _depression(hours: Hours) -> NDArray[np.float64]:
    usual = station_pressure_hpa(hours.site.height_m)
    pressure = np.where(np.isnan(hours.pressure_hpa), usual, hours.pressure_hpa)
    return depression_c(hours.temp_c, hours.dew_c, pressure)


def _heat_coming(hours: Hours, limit: float | None, *_: object) -> Judgement:
    """The warmest of the hours from now on for a day: vapor rises after the work as well."""
    padded = np.concatenate([np.where(np.isnan(hours.temp_c), -np.inf, hours.temp_c), np.full(DAY_H - 1, -np.inf)])
    most = np.lib.stride_tricks.sliding_window_view(padded, DAY_H).max(axis=1)
    return _over(np.where(np.isneginf(most), np.nan, most), limit)


def _bark(hours: Hours, _limit: float | None, doing: Doing, *_: object) -> Judgement:
    wet = bark_wet(hours.temp_c, hours.dew_c, hours.rain_mm, doing.rough_bark)
    return wet, ~wet & np.isnan(hours.rain_mm), hours.rain_mm


def _leaf(hours: Hours, *_: object) -> Judgement:
    return leaf_wet_by_dew(hours.temp_c, hours.dew_c, hours.rain_mm), np.isnan(hours.dew_c), hours.rain_mm


def _raining(hours: Hours, *_: object) -> Judgement:
    chance = hours.rain_chance_frac
    unknown = np.isnan(hours.rain_mm) & np.isnan(chance) & ~_in_blocks(hours)
    return rained(hours.rain_mm), unknown, hours.rain_mm


def _in_blocks(hours: Hours) -> Mask:
    found = _none(hours)
    for block in hours.blocks:
        found |= (hours.at >= block.start) & (hours.at < block.end)
    return found


def _rain_behind(hours: Hours, limit: float | None, *_: object) -> Judgement:
    """Rain that is measured or foretold within the hours that have to stay dry; past the last hour nobody knows."""
    needed = int(np.ceil(limit or 0.0))
    wet, n = rained(hours.rain_mm), len(hours.at)
    first = np.full(n, np.nan)
    steps = np.arange(n)
    following = np.where(wet, steps, n + needed + 1)
    next_wet = np.minimum.accumulate(following[::-1])[::-1]
    gap = (hours.at[np.minimum(next_wet, n - 1)] - hours.at).astype(int) / HOUR_S
    rain_in = np.where(next_wet < n, gap, np.inf)
    closed = rain_in < needed
    left = (hours.at[-1] - hours.at).astype(int) / HOUR_S + 1 if n else np.zeros(0)
    first[:] = np.where(np.isfinite(rain_in), rain_in, np.nan)
    known = ~np.isnan(hours.rain_mm) | ~np.isnan(hours.rain_chance_frac) | _in_blocks(hours)
    blind = np.concatenate([[0], np.cumsum(~known)])
    ends = np.searchsorted(hours.at, hours.at + np.timedelta64(needed * HOUR_S, "s"))
    unknown = (left < needed) | (blind[ends] > blind[steps]) | (ends - steps < needed)
    return closed, unknown & ~closed, first


def _rain_likely(hours: Hours, limit: float | None, doing: Doing, dry_h: float) -> Judgement:
    """Even the best case leaves rain within the hours needed too likely."""
    n = len(hours.at)
    rain = np.full(n, np.nan)
    for at in range(n) if hours.blocks or not np.isnan(hours.rain_chance_frac).all() else ():
        found = chance_dry(hours, at, dry_h, doing.odds)
        if found is not None:
            rain[at] = 1 - found.most
    with np.errstate(invalid="ignore"):
        return rain > (limit or 0.0), _none(hours), rain


def _bees(hours: Hours, limit: float | None, doing: Doing, *_: object) -> Judgement:
    """Bees fly by day in warm dry air, where something is in bloom; whether it is, a person has to say."""
    by_day = ~_dark(hours, 0.0)[0]
    with np.errstate(invalid="ignore"):
        flying = by_day & (hours.temp_c > (limit or 0.0)) & ~rained(hours.rain_mm)
    none = _none(hours)
    if doing.in_bloom == "yes":
        return flying, by_day & np.isnan(hours.temp_c), hours.temp_c
    return none, flying if doing.in_bloom == "unknown" else none, hours.temp_c


def _standing_water(hours: Hours, _limit: float | None, doing: Doing, *_: object) -> Judgement:
    """All hours, where someone said that water stands there; whether it does is asked by a check."""
    return np.full(len(hours.at), doing.standing_water == "yes"), _none(hours), np.full(len(hours.at), np.nan)


def _label_season(hours: Hours, _limit: float | None, doing: Doing, *_: object) -> Judgement:
    """All hours, where the label forbids a time of year in words: they are told, for a person to compare."""
    said = any(f.kind == "season forbidden" and f.reading == "read" and f.standing == "says" for f in doing.facts)
    return np.full(len(hours.at), said), _none(hours), np.full(len(hours.at), np.nan)


def _dark(hours: Hours, limit: float | None, *_: object) -> Judgement:
    middle = hours.at + np.timedelta64(HOUR_S // 2, "s")
    sun = elevation_deg(middle, hours.site.latitude_deg, hours.site.longitude_deg)
    return sun < (limit or 0.0), _none(hours), sun


MATTERS: dict[str, Callable[[Hours, float | None, Doing, float], Judgement]] = {
    "raining": _raining,
    "rain behind": _rain_behind,
    "rain likely": _rain_likely,
    "bark wet": _bark,
    "leaf wet": _leaf,
    "snow": lambda hours, limit, *_: (*_over(np.nan_to_num(hours.snow_m, nan=0.0), limit)[:2], hours.snow_m),
    "cold under": lambda hours, limit, *_: _under(hours.temp_c, limit),
    "heat over": lambda hours, limit, *_: _over(hours.temp_c, limit),
    "heat coming": _heat_coming,
    "wind over": _wind_over,
    "wind under": lambda hours, limit, *_: _under(hours.wind_m_s, limit),
    "gust over": _gust_over,
    "inversion": _inversion,
    "air thirsty": lambda hours, limit, *_: _over(_depression(hours), limit),
    "air damp": lambda hours, limit, *_: _under(_depression(hours), limit),
    "bees": _bees,
    "standing water": _standing_water,
    "label season": _label_season,
    "dark": _dark,
}


def _poor_season(doing: Doing, hours: Hours, book: Book) -> tuple[Reason, ...]:
    """Parts of the year that the handbook calls poor for this way on this plant: told, not shut."""
    if not doing.species:
        return ()
    how = "basal bark" if doing.method == "cut stump" and doing.carrier == "oil" else doing.method
    found = []
    dates = [(d.month, d.day) for d in hours.at.astype("datetime64[D]").astype(object).tolist()]
    for season in book.seasons(doing.species, how):
        if season.best:
            continue
        closed = np.array([season.holds(day) for day in dates], bool)
        if closed.any():
            rule = WeatherRule("season.poor", "season", (how,), (), (), None, "", "know", "", season.cited)
            found.append(Reason(rule, None, "practice", "", closed, _none(hours), np.full(len(dates), np.nan)))
    return tuple(found)


def chance_dry(hours: Hours, start: int, needed_h: float, odds: float) -> Dry | None:
    """Chance of staying dry from a start for the hours needed, as the forecast's chances have it; None without any."""
    end_at = hours.at[start] + np.timedelta64(int(np.ceil(needed_h)) * HOUR_S, "s")
    end = int(np.searchsorted(hours.at, end_at))
    chances = hours.rain_chance_frac[start:end]
    whole = [b.chance_frac for b in hours.blocks if b.start >= hours.at[start] and b.end <= end_at]
    touched = [
        b.chance_frac for b in hours.blocks
        if b.start < end_at and b.end > hours.at[start] and not (b.start >= hours.at[start] and b.end <= end_at)
    ]  # fmt: skip
    hourly = [float(one) for one in chances if not np.isnan(one)]
    if not hourly and not whole and not touched:
        return None
    if not whole and not touched:
        return dry_hours(hourly, odds)
    by_block = dry_blocks(whole, touched)
    by_hour = dry_hours(hourly, odds)
    return Dry(max(0.0, by_block.least + by_hour.least - 1), min(by_block.most, by_hour.most), float("nan"))


def spans(judged: Judged) -> list[Span]:
    """Hours in a row with one state and the same reasons, in order; a gap in the hours ends one."""
    states = judged.states()
    found: list[Span] = []
    for n, state in enumerate(states):
        wanted = "shut" if state == "shut" else "find out"
        if state == "open":
            here = tuple(k for k, r in enumerate(judged.reasons) if r.rule.weight == "know" and r.closed[n])
        else:
            here = tuple(
                k for k, r in enumerate(judged.reasons)
                if r.rule.weight == "shut" and (r.closed[n] if wanted == "shut" else r.unknown[n])
            )  # fmt: skip
        last = found[-1] if found else None
        gap = last is not None and (judged.hours.at[n] - judged.hours.at[n - 1]).astype(int) > HOUR_S
        if last is not None and not gap and (last.state, last.reasons) == (state, here):
            found[-1] = Span(last.first, n, state, here)
        else:
            found.append(Span(n, n, state, here))
    return found


def own_odds(history: Hours | None) -> float:
    """How a place's own wet hours hold together, out of a year of them; Newark's where there is no such history."""
    if history is None or history.kind != "history" or np.count_nonzero(~np.isnan(history.rain_mm)) < LEAST_HISTORY_H:
        return NEWARK_ODDS[0]
    return odds_ratio(rained(history.rain_mm))


def doings(
    tract: Tract, treatments: Iterable[Mapping[str, Any]], odds: float = NEWARK_ODDS[0]
) -> list[tuple[Mapping[str, Any], Doing]]:
    """Each treatment of a plan (as data) that is done, with what weather has to do with it. odds: see `own_odds`."""
    found = []
    for item in treatments:
        if item["how"] == "leave it":
            continue
        product = tract.product(item["product"]) if item["product"] else None
        form = "ester" if product and any("ester" in content.form for content in product.contents) else ""
        places = tract.patch(item["patch"]).places or ("",)
        situations = tuple(
            Situation(method=item["how"], carrier=item["carrier"], site=site, state=tract.state, plant=item["species"])
            for site in places
        )
        facts = product.facts if product else ()
        patch = tract.patch(item["patch"])
        doing = Doing(
            item["how"], item["carrier"], form, facts, situations, item["species"], in_bloom=patch.answer("in_bloom"),
            standing_water=patch.answer("standing_water_today"), odds=odds,
        )  # fmt: skip
        found.append((item, doing))
    return found


def open_count(judged: Judged, zone: datetime.tzinfo | None = None) -> dict[datetime.date, int]:
    """Open hours of each local day."""
    found: dict[datetime.date, int] = {}
    for at, state in zip(judged.hours.at.astype(object).tolist(), judged.states(), strict=True):
        local = at.replace(tzinfo=datetime.UTC).astimezone(zone)
        found.setdefault(local.date(), 0)
        found[local.date()] += state == "open"
    return found
