"""tract.toml: the tract, its patches with their answers and soil, people, bottles and measures."""

import re
import zoneinfo
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from stemward.gate.fields import MOST_SIGNS_LONG, Fields, once
from stemward.gate.text import ODD_SIGNS, near
from stemward.kinds import (
    METHODS,
    PLACES,
    SITE_QUESTIONS,
    Calibration,
    MeasureOwned,
    OthersRate,
    Patch,
    Person,
    Soil,
    Vessel,
)

Who = Literal["own", "hire", "public", "adviser", "unknown"]
WHO: tuple[Who, ...] = get_args(Who)
DOES = ("mix", "apply", "saw")
_MONEY = re.compile(r"\$?\s*([0-9]{1,6})(?:\.([0-9]{1,2}))?")
_ZONE = re.compile(r"[A-Za-z]+(?:/[A-Za-z0-9_+-]+){0,2}")


@dataclass(frozen=True, slots=True)
class TractFile:
    """What tract.toml says; patches are still without outlines."""

    name: str
    place: str
    state: str
    time_zone: str
    who: Who
    invented: bool
    patches: tuple[Patch, ...]
    kept_asked: tuple[str, ...]
    people: tuple[Person, ...]
    vessels: tuple[Vessel, ...]
    measures: tuple[MeasureOwned, ...]
    emergency: tuple[tuple[str, str], ...]
    calibrations: tuple[Calibration, ...]
    mixing_place: tuple[float, float] | None
    origin: tuple[float, float] | None
    wage_cents_h: int | None
    rates: tuple[OthersRate, ...]
    patch_lines: Mapping[str, int]


def read_tract(
    top: Fields,
    states: Mapping[str, str],
    gear: Collection[str],
    linings: Collection[str],
    tools: Collection[str] = (),
) -> TractFile:
    """Read tract.toml. states: names by postal code. gear, linings, tools: known words, empty for any."""
    patch_tables = top.tables("patches")
    patches = [_patch(table) for table in patch_tables]
    once((table, patch.id) for table, patch in zip(patch_tables, patches, strict=True))
    if not patches and not top.has("patches"):
        top.add("tract.no_patches", "patches", '[[patches]] id = "rim", places = ["woods"]')
    ids = [patch.id for patch in patches if patch.id]
    read = TractFile(
        name=top.text("name", required=True, example="Quarry Hollow"),
        place=top.text("place", example="Example County"),
        state=state_code(top, "state", states),
        time_zone=_time_zone(top),
        who=top.choice("who", WHO, default="unknown"),  # type: ignore[arg-type]
        invented=top.flag("invented"),
        patches=tuple(patches),
        kept_asked=_kept_asked(top, ids),
        people=_people(top, gear),
        vessels=_vessels(top, linings),
        measures=_measures(top),
        emergency=_emergency(top.table("emergency")),
        calibrations=_calibrations(top, tools),
        mixing_place=_place(top.table("mixing_place")) if top.has("mixing_place") else None,
        origin=_origin(top.table("origin")) if top.has("origin") else None,
        wage_cents_h=cents(top, "wage"),
        rates=_rates(top),
        patch_lines={patch.id: table.line() or 0 for table, patch in zip(patch_tables, patches, strict=True)},
    )
    for plant in top.words("unsure", example="glossy buckthorn"):
        top.ask("ask.unsure_plant", "unsure", species=plant)
    top.text("base")  # what the land was when a notebook gave it out; only merging looks at it
    top.done()
    return read


def state_code(table: Fields, key: str, states: Mapping[str, str], required: bool = False) -> str:
    """A postal code, or "" where none is given."""
    typed = table.text(key, required, "WI", most=60)
    return check_state(table, key, typed, states)


def check_state(table: Fields, key: str, typed: str, states: Mapping[str, str]) -> str:
    """The postal code that was typed; "" and a problem with what may be meant if it is none."""
    if not typed or typed.upper() in states:
        return typed.upper()
    by_name = {name.casefold(): code for code, name in states.items()}
    meant = by_name.get(typed.casefold()) or ", ".join(
        by_name[name.casefold()] for name in near(typed, by_name).split(", ") if name
    )
    table.add("tract.state", key, f'{key} = "WI"', typed=typed, near=meant)
    return ""


def _time_zone(top: Fields) -> str:
    typed = top.text("time_zone", example="America/Chicago")
    if not typed:
        return ""
    if _ZONE.fullmatch(typed) and (_zone_known(typed) or not _zone_known("America/Chicago")):
        return typed
    top.add("tract.time_zone", "time_zone", 'time_zone = "America/Chicago"', typed=typed)
    return ""


def _zone_known(name: str) -> bool:
    """True if the machine knows the zone; a machine without zone data knows none."""
    try:
        zoneinfo.ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        return False
    return True


def _patch(table: Fields) -> Patch:
    ident = table.text("id", required=True, example="rim", most=40)
    answers = table.table("answers")
    said = tuple((q, answers.answer(q)) for q in SITE_QUESTIONS if answers.has(q))
    answers.done()
    area_m2, _ = table.quantity("area", "area", "m2", low=0.01, high=1e10)
    patch = Patch(
        id=ident,
        name=table.text("name") or ident,
        places=table.words("places", PLACES),  # none: nobody has said, and a check asks
        answers=said,
        soil=_soil(table.table("soil")),
        area_m2=area_m2,
    )
    table.done()
    return patch


def _soil(table: Fields) -> Soil:
    organic, _ = table.quantity("organic_matter", "fraction", "frac", high=1.0)
    soil = Soil(table.text("texture"), organic, table.text("over"))
    table.done()
    return soil


def _kept_asked(top: Fields, ids: Collection[str]) -> tuple[str, ...]:
    asked = top.words("kept_asked", example="rim")
    for patch in asked:
        if patch not in ids:
            top.add("tract.unknown_patch", "kept_asked", ", ".join(ids), patch=patch, near=near(patch, ids))
    return asked


def _people(top: Fields, gear: Collection[str]) -> tuple[Person, ...]:
    people = []
    for table in top.tables("people"):
        person = Person(
            role=table.text("role", required=True, example="owner"),
            does=table.words("does", DOES),
            gear=table.words("gear", example="boots"),
            certified=table.answer("certified"),
        )
        for item in person.gear:
            if gear and item not in gear:
                table.ask("ask.gear", "gear", role=person.role, gear=item, near=near(item, gear))
        table.done()
        people.append(person)
    return tuple(people)


def _vessels(top: Fields, linings: Collection[str]) -> tuple[Vessel, ...]:
    tables, vessels = top.tables("vessels"), []
    for table in tables:
        ident = table.text("id", required=True, example="squirt bottle", most=40)
        capacity_ul = table.volume_ul("capacity")
        lining = table.choice("lining", linings, default="plastic") if linings else table.text("lining")
        table.done()
        vessels.append(Vessel(ident, capacity_ul or 0, lining or "plastic"))
    once(zip(tables, (vessel.id for vessel in vessels), strict=True))
    return tuple(vessels)


def _measures(top: Fields) -> tuple[MeasureOwned, ...]:
    tables, measures = top.tables("measures"), []
    for table in tables:
        ident = table.text("id", required=True, example="measuring cup", most=40)
        mark_ul, capacity_ul = table.volume_ul("mark"), table.volume_ul("capacity")
        if mark_ul and capacity_ul and mark_ul > capacity_ul:
            table.add("measure.mark_too_big", "mark", 'mark = "1/2 fl oz"', id=ident)
        shown = table.data.get("mark", "")
        table.done()
        measures.append(MeasureOwned(ident, mark_ul or 0, capacity_ul or 0, str(shown).strip()))
    once(zip(tables, (measure.id for measure in measures), strict=True))
    return tuple(measures)


def _calibrations(top: Fields, tools: Collection[str]) -> tuple[Calibration, ...]:
    """What one stroke of a tool gave, as someone measured it."""
    tables, found = top.tables("calibrations"), []
    for table in tables:
        tool = table.choice("tool", tools, required=True) if tools else table.text("tool", required=True)
        per_stroke_ml, _ = table.quantity("per_stroke", "volume", "ml", required=True, low=0.01, high=100.0)
        by, on = table.text("by"), table.text("on")
        table.done()
        found.append(Calibration(tool, per_stroke_ml or 0.0, by, on))
    once(zip(tables, (one.tool for one in found), strict=True))
    return tuple(found)


def _rates(top: Fields) -> tuple[OthersRate, ...]:
    """Kill rates that others handed on."""
    tables, found = top.tables("rates"), []
    for table in tables:
        works, dead, seen = (int(table.number(name, True, 1e6, True)) for name in ("works", "dead", "seen"))
        percent, ae_g_l, months = (table.number(name, high=1e4) for name in ("percent", "ae_g_l", "months"))
        share, _ = table.quantity("share", "fraction", "frac", high=1.0)
        one = OthersRate(
            table.text("id", required=True, example="r1", most=40), table.text("whose"),
            table.text("species", required=True, example="Frangula alnus"),
            table.choice("method", METHODS, required=True), table.words("ingredients"),
            max(works, 1), dead, seen, percent, ae_g_l, months, table.text("season"), share or 0.0,
        )  # fmt: skip
        if one.dead > one.seen:
            table.add("rates.more_dead", "dead", "dead = 20")
        table.done()
        found.append(one)
    once((table, one.id) for table, one in zip(tables, found, strict=True))
    return tuple(found)


def _place(table: Fields) -> tuple[float, float] | None:
    """Metres east and north of the corner."""
    x_m, _ = table.quantity("x", "length", "m", required=True, low=-1e7, high=1e7)
    y_m, _ = table.quantity("y", "length", "m", required=True, low=-1e8, high=1e8)
    table.done()
    return None if x_m is None or y_m is None else (x_m, y_m)


def _origin(table: Fields) -> tuple[float, float] | None:
    """Latitude and longitude of the corner the metres are counted from, degrees (WGS 84)."""
    found = [_degrees(table, key, most) for key, most in (("lat", 90.0), ("lon", 180.0))]
    table.done()
    return None if found[0] is None or found[1] is None else (found[0], found[1])


def _degrees(table: Fields, key: str, most: float) -> float | None:
    value = table.raw(key, True, f"{key} = 43.1")
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int | float):
        table.add("key.wrong_type", key, f"{key} = 43.1", wanted="A number of degrees")
        return None
    if not -most <= value <= most:
        table.add("key.out_of_range", key, f"{key} = 43.1", typed=str(value), low=-most, high=most, unit="degrees")
        return None
    return float(value)


def cents(table: Fields, key: str) -> int | None:
    """An amount of money, "18.50", in cents; None where none is given."""
    typed = table.text(key, example="18.50", most=20)
    if not typed:
        return None
    found = _MONEY.fullmatch(typed)
    if not found:
        table.add("money.not_understood", key, f'{key} = "18.50"', typed=typed)
        return None
    return int(found[1]) * 100 + int((found[2] or "0").ljust(2, "0"))


def _emergency(table: Fields) -> tuple[tuple[str, str], ...]:
    for key in table.data:
        if ODD_SIGNS.search(key):
            table.add("key.odd_sign", key)
    return tuple((key, table.text(key, most=MOST_SIGNS_LONG)) for key in table.data)
