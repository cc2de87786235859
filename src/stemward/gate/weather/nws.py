"""The hourly and gridpoint forecasts of the US National Weather Service as they are served (OpenAPI 1.9.0).

Layers hold values with ISO 8601 intervals in UTC; equal neighbours are merged; nulls and missing layers are not known.
"""

import datetime
import re
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from stemward.gate.weather.made import Doubt, Rows, hours_of
from stemward.kinds.hours import Hours, RainBlock, Site

HOUR = np.timedelta64(3600, "s")
FACTORS = {
    "degC": (1.0, 0.0), "degF": (5 / 9, -160 / 9), "percent": (0.01, 0.0), "km_h-1": (1 / 3.6, 0.0),
    "m_s-1": (1.0, 0.0),
    "mm": (1.0, 0.0), "m": (1.0, 0.0), "Pa": (0.01, 0.0), "degree_(angle)": (1.0, 0.0),
}  # fmt: skip
"""Unit codes after the colon, with factor and offset to the columns' units."""
LAYERS = {
    "temperature": "temp_c", "dewpoint": "dew_c", "windSpeed": "wind_m_s", "windGust": "gust_m_s",
    "windDirection": "wind_from_deg", "skyCover": "cloud_frac", "pressure": "pressure_hpa",
    "relativeHumidity": "humidity",
}  # fmt: skip
_INTERVAL = re.compile(r"(?P<start>[^/]+)/P(?:(?P<d>\d+)D)?(?:T(?:(?P<h>\d+)H)?(?:(?P<m>\d+)M)?)?")
MOST_HOURS = 24 * 16
ONE_EVENT_H = 6
"""A chance that stands for so many hours alike comes from a block of 6 or 12 h: weather.md, from memory."""


class Odd(Exception):
    """A forecast that is not as the service writes it. message: for room `say`."""


def _span(text: Any) -> tuple[np.datetime64, int]:
    """Start and whole hours of an interval. Raises Odd."""
    found = _INTERVAL.fullmatch(str(text))
    if not found:
        raise Odd("interval")
    try:
        start = datetime.datetime.fromisoformat(found["start"])
    except ValueError:
        raise Odd("interval") from None
    if start.tzinfo is None:
        raise Odd("interval")
    hours = 24 * int(found["d"] or 0) + int(found["h"] or 0) + (1 if found["m"] and int(found["m"]) else 0)
    return np.datetime64(start.astimezone(datetime.UTC).replace(tzinfo=None), "s"), min(max(hours, 1), MOST_HOURS)


def _values(layer: Any) -> Iterator[tuple[np.datetime64, int, float]]:
    """Start, hours and value of each interval of a layer in the columns' unit; nulls left out."""
    if not isinstance(layer, Mapping) or not isinstance(layer.get("values"), list):
        return
    code = str(layer.get("uom", "")).partition(":")[2]
    factor, offset = FACTORS.get(code, (None, 0.0))
    for one in layer["values"]:
        if not isinstance(one, Mapping) or "validTime" not in one:
            raise Odd("layer")
        value = one.get("value")
        if isinstance(value, bool) or not isinstance(value, int | float) or factor is None:
            continue
        start, hours = _span(one["validTime"])
        yield start, hours, float(value) * factor + offset


def read_grid(properties: Mapping[str, Any], site: Site, source: str) -> tuple[Hours, list[Doubt]]:
    """Hours of a gridpoint forecast. Amounts are for their whole interval and are spread evenly over it; a chance that
    stands for many hours is one event and is kept as a block. Raises Odd."""
    table: dict[np.datetime64, dict[str, float]] = {}

    def put(name: str, start: np.datetime64, hours: int, value: float) -> None:
        first = start.astype("datetime64[h]").astype("datetime64[s]")
        for n in range(hours):
            table.setdefault(first + n * HOUR, {})[name] = value

    for layer, column in LAYERS.items():
        for start, hours, value in _values(properties.get(layer)):
            put(column, start, hours, value / 100 if column == "humidity" and value > 1.05 else value)
    for start, hours, value in _values(properties.get("quantitativePrecipitation")):
        put("rain_mm", start, hours, value / hours)
    blocks = []
    for start, hours, value in _values(properties.get("probabilityOfPrecipitation")):
        if hours >= ONE_EVENT_H:
            blocks.append(RainBlock(start, start + hours * HOUR, value))
        else:
            put("rain_chance_frac", start, hours, value)
    if not table:
        raise Odd("empty")
    rows = Rows()
    for at in sorted(table):
        rows.add(at, table[at], 0)
    hours_, doubts = hours_of(rows, site, "forecast", source, humidity=True, blocks=tuple(blocks))
    missing = [layer for layer in (*LAYERS, "quantitativePrecipitation") if not list(_values(properties.get(layer)))]
    missing = [layer for layer in missing if layer not in ("pressure", "relativeHumidity")]
    if missing:
        doubts.append(Doubt("layers_missing", len(missing), (), (("layers", ", ".join(missing)),)))
    issued = properties.get("updateTime")
    return _issued(hours_, issued), doubts


_WIND = re.compile(r"(\d+(?:\.\d+)?)(?:\s*to\s*(\d+(?:\.\d+)?))?\s*(mph|km/h)")
POINTS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")


def _speed(text: Any) -> float:
    """Metres a second of "5 to 10 mph", the higher of two; nan for nothing."""
    if isinstance(text, Mapping):
        code, value = str(text.get("unitCode", "")).partition(":")[2], text.get("value", text.get("maxValue"))
        factor = FACTORS.get(code, (None, 0.0))[0]
        return float(value) * factor if factor and isinstance(value, int | float) else float("nan")
    found = _WIND.fullmatch(str(text or "").strip())
    if not found:
        return float("nan")
    return float(found[2] or found[1]) * (1609.344 / 3600 if found[3] == "mph" else 1 / 3.6)


def _quantity(one: Any) -> float:
    if isinstance(one, Mapping) and isinstance(one.get("value"), int | float):
        factor, offset = FACTORS.get(str(one.get("unitCode", "")).partition(":")[2], (None, 0.0))
        return float("nan") if factor is None else float(one["value"]) * factor + offset
    return float("nan")


def read_hourly(properties: Mapping[str, Any], site: Site, source: str) -> tuple[Hours, list[Doubt]]:
    """Hours of the hourly forecast, which knows neither amounts of rain nor the cover of the sky. Raises Odd."""
    rows = Rows()
    for number, one in enumerate(properties.get("periods") or [], 1):
        if not isinstance(one, Mapping):
            raise Odd("period")
        try:
            start = datetime.datetime.fromisoformat(str(one.get("startTime")))
        except ValueError:
            raise Odd("period") from None
        if start.tzinfo is None:
            raise Odd("period")
        at = np.datetime64(start.astimezone(datetime.UTC).replace(tzinfo=None, minute=0, second=0, microsecond=0), "s")
        temp = one.get("temperature")
        celsius = _quantity(temp) if isinstance(temp, Mapping) else float("nan")
        if isinstance(temp, int | float) and not isinstance(temp, bool):
            celsius = (float(temp) - 32) / 1.8 if one.get("temperatureUnit") == "F" else float(temp)
        direction = one.get("windDirection")
        rows.add(at, {
            "temp_c": celsius, "dew_c": _quantity(one.get("dewpoint")),
            "humidity": _quantity(one.get("relativeHumidity")),
            "wind_m_s": _speed(one.get("windSpeed")), "gust_m_s": _speed(one.get("windGust")),
            "wind_from_deg": POINTS.index(direction) * 22.5 if direction in POINTS else float("nan"),
            "rain_chance_frac": _quantity(one.get("probabilityOfPrecipitation")),
        }, number)  # fmt: skip
    if not rows.at:
        raise Odd("empty")
    hours, doubts = hours_of(rows, site, "forecast", source, humidity=True)
    doubts.append(Doubt("layers_missing", 2, (), (("layers", "amount of rain, cloud"),)))
    return _issued(hours, properties.get("updateTime")), doubts


def _issued(hours: Hours, text: Any) -> Hours:
    from dataclasses import replace

    try:
        when = datetime.datetime.fromisoformat(str(text))
    except ValueError:
        return hours
    if when.tzinfo is None:
        return hours
    return replace(hours, issued=np.datetime64(when.astimezone(datetime.UTC).replace(tzinfo=None), "s"))
