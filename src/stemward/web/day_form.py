"""The evening entry's form: what a person typed to values, and back to the form where something is odd."""

import datetime
import re
from collections.abc import Mapping, Sequence
from typing import Any

from django.http import QueryDict

from stemward.gate.text import clean
from stemward.kinds import Tract
from stemward.ledger.evening import DayTyped
from stemward.ledger.poured import FATES, MixTyped
from stemward.ledger.said import clock
from stemward.notebook.changes import Refused
from stemward.units import UnitError, read
from stemward.web.tried import Gathered

MOST = 190
"""Signs of what is typed in one field; an entry's text may have 200, and some are joined: engineering guess."""
COMPASS = re.compile(
    r"(?:from\s+)?(?:the\s+)?([nesw]{1,3}|north|south|east|west|northeast|northwest|southeast|southwest)", re.I
)


def measured(text: str, dimension: str, unit: str, label: str, bare: str | None = None) -> float | None:
    """A figure as typed in `unit`, None where nothing was typed. Raises Refused that names the field."""
    if not text.strip():
        return None
    try:
        return read(text, dimension, bare).to(unit)
    except UnitError as error:
        raise Refused(f"{label}: {error}") from None


def a_day(text: str, today: datetime.date) -> datetime.date:
    """The day of the work. Raises Refused for none, and for one to come."""
    try:
        day = datetime.date.fromisoformat(text.strip())
    except ValueError:
        raise Refused(f"Day: not understood: {clean(text.strip()) or 'nothing'}. Write a day like {today}.") from None
    if day > today:
        raise Refused(f"Day: {day} is still to come. What was done has a day that was.")
    return day


def a_clock(text: str, label: str) -> str:
    """A time as typed, "" for none. Raises Refused."""
    if not text.strip():
        return ""
    found = clock(text)
    if found is None:
        raise Refused(f"{label}: not understood: {clean(text.strip())}. Write for example 9:40 or 2:15 pm.")
    return found


def day_typed(typed: QueryDict, sheets: Sequence[Mapping[str, Any]], today: datetime.date, plan: str) -> DayTyped:
    """The day as typed. Raises Refused with every field that is not understood."""
    take = Gathered()
    words = {name: clean(typed.get(name, "").strip(), MOST) for name in ("people", "place")}
    day = take(a_day, typed.get("day", ""), today)
    begun = take(a_clock, typed.get("begun", ""), "Begun")
    ended = take(a_clock, typed.get("ended", ""), "Ended")
    weather = weather_typed(typed, take)
    mixes = [_mix(typed, mix, own, take) for mix, own in mixes_of(sheets).items()]
    areas = {
        s["id"]: take(measured, typed.get(f"area-{s['id']}", ""), "area", "m2", f"Area of {s['common']}", "acre")
        for s in sheets
    }
    hours = take(measured, typed.get("person_h", ""), "time", "h", "Hours of work", "h")
    if take.lines:
        raise Refused(*take.lines)
    return DayTyped(
        day, begun, ended, people_of(words["people"]),
        {s["id"]: typed.get(f"ticks-{s['id']}", "") for s in sheets}, tuple(mixes), weather,
        {k.removeprefix("value-"): clean(typed[k].strip(), MOST) for k in typed if k.startswith("value-")},
        {s["id"]: clean(typed.get(f"anyway-{s['id']}", "").strip(), MOST) for s in sheets},
        {key: m2 for key, m2 in areas.items() if m2}, hours, words["place"], plan,
    )  # fmt: skip


def people_of(text: str) -> tuple[str, ...]:
    """Names between commas."""
    return tuple(dict.fromkeys(one.strip() for one in re.split(r"[,;\n]", text) if one.strip()))


def weather_typed(typed: QueryDict, take: Any) -> dict[str, Any]:
    """What was written of the weather, empty where nothing was."""
    wind_text = typed.get("wind", "").strip()
    calm = wind_text.lower() in ("calm", "none", "still")
    wind = 0.0 if calm else take(measured, wind_text, "speed", "m/s", "Wind", "mph")
    of = clean(typed.get("wind_from", "").strip(), MOST)
    temperature = take(measured, typed.get("temperature", ""), "temperature", "c", "Air temperature", "f")
    humidity = take(measured, typed.get("humidity", ""), "fraction", "frac", "Humidity", "%")
    age = take(measured, typed.get("age", ""), "time", "h", "Age of the forecast", "h")
    found: dict[str, Any] = {
        "wind_m_s": wind, "wind_from": of, "temp_c": temperature, "humidity_frac": humidity,
        "sky": clean(typed.get("sky", "").strip(), MOST), "forecast_age_h": age,
    }  # fmt: skip
    found = {k: round(v, 4) if isinstance(v, float) else v for k, v in found.items() if v not in (None, "")}
    source = typed.get("source", "")
    return found | ({"source": source} if source in ("measured", "forecast") else {}) if found else {}


def mixes_of(sheets: Sequence[Mapping[str, Any]]) -> dict[str, list[Mapping[str, Any]]]:
    """Sheets by the mix they take, in order; sheets without one are left out."""
    found: dict[str, list[Mapping[str, Any]]] = {}
    for sheet in sheets:
        if sheet["mix"]:
            found.setdefault(sheet["mix"], []).append(sheet)
    return found


def products_of(sheet: Mapping[str, Any]) -> list[str]:
    """Products of a mix."""
    return [one for one in (sheet["product"], sheet["partner"]) if one]


def _mix(typed: QueryDict, mix: str, own: Sequence[Mapping[str, Any]], take: Any) -> MixTyped:
    name = own[0]["product_name"]
    products = products_of(own[0])
    drawn = {
        p: take(measured, typed.get(f"drawn-{mix}-{p}", ""), "volume", "ml", f"Drawn for {name}", "ml")
        for p in products
    }
    fate = typed.get(f"fate-{mix}", "")
    return MixTyped(
        mix,
        take(measured, typed.get(f"mixed-{mix}", ""), "volume", "ml", f"Mixed with {name}"),
        take(measured, typed.get(f"left-{mix}", ""), "volume", "ml", f"Left of the mix with {name}"),
        fate if fate in FATES else "",
        clean(typed.get(f"bottle-{mix}", "").strip(), MOST),
        {p: ml for p, ml in drawn.items() if ml is not None},
        {p: clean(typed.get(f"jug-{mix}-{p}", "").strip(), MOST) or "jug 1" for p in products},
        clean(typed.get(f"before-{mix}", ""), MOST),
    )


def jugs_of(tract: Tract, product: str) -> list[str]:
    """Names of the jugs of a product on the shelf."""
    return [c.id for p in tract.shelf if p.id == product for c in p.containers]
