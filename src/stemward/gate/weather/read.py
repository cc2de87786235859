"""Which kind of weather a file holds, and its hours."""

import csv
import json
from typing import Any

from stemward.gate.weather import nws, table, years
from stemward.gate.weather.made import Doubt
from stemward.kinds.hours import Hours, Site

MOST_BYTES = 64 * 1024 * 1024
MOST_JSON_BYTES = 16 * 1024 * 1024
"""Thirty years of hours take about 30 MB as a table; a forecast half a megabyte: engineering guesses."""


class NotWeather(Exception):
    """A file that cannot be read as weather. message: what is wrong, for room `say`."""

    def __init__(self, message: str) -> None:
        self.message = message
        super().__init__(message)


def read_weather(raw: bytes, name: str, site: Site, kind: str = "forecast") -> tuple[Hours, list[Doubt]]:
    """Hours of a file and what is odd about them. kind: what a plain table is taken for.

    Raises NotWeather: "too_large", "empty", "no_text", "json", "interval", "layer", "period", "heads", "times",
    "damaged".
    """
    if len(raw) > MOST_BYTES:
        raise NotWeather("too_large")
    if not raw.strip():
        raise NotWeather("empty")
    if b"\0" in raw[:4096]:
        raise NotWeather("no_text")
    text = raw.decode("utf-8-sig", "replace")
    try:
        if text.lstrip().startswith("{"):
            return _forecast(text, site, name)
        first = text.partition("\n")[0]
        if first.startswith("LOCATION,"):
            return years.read_epw(text, name)
        if "ETR (W/m^2)" in text[:2000] or "Dry-bulb (C)" in text[:6000]:
            return years.read_tmy3(text, name)
        if len(first.split()) == 12 and first.split()[0].isdigit() and "," not in first:
            return years.read_isd_lite(text, site, name)
        return table.read_table(text, site, name, kind)
    except nws.Odd as odd:
        raise NotWeather(str(odd)) from None
    except (ValueError, IndexError, KeyError, OverflowError, csv.Error) as wrong:
        raise NotWeather(str(wrong) if str(wrong) in ("heads", "times") else "damaged") from None


def _forecast(text: str, site: Site, name: str) -> tuple[Hours, list[Doubt]]:
    if len(text) > MOST_JSON_BYTES:
        raise NotWeather("too_large")
    try:
        found: Any = json.loads(text)
    except (ValueError, RecursionError):
        raise NotWeather("json") from None
    properties = found.get("properties") if isinstance(found, dict) else None
    if not isinstance(properties, dict):
        raise NotWeather("json")
    if "periods" in properties:
        return nws.read_hourly(properties, site, name)
    return nws.read_grid(properties, site, name)
