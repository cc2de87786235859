"""Plain tables of hours or days: a heading that names what and in which unit, then a row an hour or a day."""

import csv
import datetime
import io
import re
from collections.abc import Callable
from zoneinfo import ZoneInfo

import numpy as np

from stemward.gate.weather.made import Doubt, Rows, hours_of
from stemward.kinds.hours import Hours, Site

_F: Callable[[float], float] = lambda v: (v - 32) / 1.8  # noqa: E731
HEADS: tuple[tuple[str, str, str, Callable[[float], float]], ...] = (
    ("temp_c", r"(air )?temp(erature)?", r"c|°c|degc", lambda v: v), ("temp_c", r"(air )?temp(erature)?|tmpf", r"f|°f|degf", _F),
    ("dew_c", r"dew( ?point)?|dewp", r"c|°c", lambda v: v), ("dew_c", r"dew( ?point)?|dewp|dwpf", r"f|°f", _F),
    ("humidity", r"(relative )?humidity|rh|humid|relh", r"%|percent|", lambda v: v / 100),
    ("wind_m_s", r"wind([ _]speed)?", r"m/s|ms", lambda v: v),
    ("wind_m_s", r"wind([ _]speed)?", r"mph", lambda v: v * 1609.344 / 3600),
    ("wind_m_s", r"wind([ _]speed)?|sknt", r"kt|kn|knots", lambda v: v * 1852 / 3600),
    ("wind_m_s", r"wind([ _]speed)?", r"km/h|kph", lambda v: v / 3.6),
    ("gust_m_s", r"(wind[ _])?gust", r"m/s|ms", lambda v: v),
    ("gust_m_s", r"(wind[ _])?gust", r"mph", lambda v: v * 1609.344 / 3600),
    ("gust_m_s", r"(wind[ _])?gust", r"km/h|kph", lambda v: v / 3.6),
    ("wind_from_deg", r"wind[ _]?(dir(ection)?|from)|drct", r"deg|°|degrees|", lambda v: v),
    ("rain_mm", r"rain|precip(itation)?", r"mm", lambda v: v), ("rain_mm", r"rain|precip(itation)?|p01i", r"in|inch|inches", lambda v: v * 25.4),
    ("rain_chance_frac", r"(rain )?chance|pop|chance of rain", r"%|percent|", lambda v: v / 100),
    ("cloud_frac", r"cloud|sky( cover)?", r"%|percent|", lambda v: v / 100),
    ("pressure_hpa", r"pressure", r"hpa|mbar|mb|", lambda v: v),
    ("snow_m", r"snow( depth)?", r"mm", lambda v: v / 1000), ("snow_m", r"snow( depth)?", r"in|inches", lambda v: v * 0.0254), ("snow_m", r"snow( depth)?", r"cm", lambda v: v / 100),
)  # fmt: skip
"""Names and units a heading may have, and how its figures become the column's."""
STATION = {
    "temperature": "temp (C)", "dew_point_temperature": "dew point (C)", "relative_humidity": "humidity (%)",
    "wind_speed": "wind (m/s)", "wind_gust": "gust (m/s)", "wind_direction": "wind dir (deg)", "precipitation": "rain (mm)",
    "station_level_pressure": "pressure (hPa)", "snow_depth": "snow (mm)",
}  # fmt: skip
"""Columns of GHCN-Hourly files, which name no units: those of the table of NOAA's documentation (weather.md, C3)."""
_HEAD = re.compile(r"\s*(?P<name>[^()\[\],]*?)\s*(?:[(\[,]\s*(?P<unit>[^()\[\]]*?)\s*[)\]]?)?\s*")
WHEN = ("time", "time_hour", "valid", "datetime", "date time", "time utc", "utc", "hour starting", "date")
FORMS = ("%Y-%m-%dT%H:%M:%S%z", "%Y-%m-%d %H:%M:%S%z", "%Y-%m-%dT%H:%M%z", "%Y-%m-%dT%H:%M:%S", "%Y-%m-%d %H:%M:%S",
         "%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M", "%m/%d/%Y %H:%M", "%Y-%m-%d", "%m/%d/%Y", "%Y%m%d")  # fmt: skip


def _column(head: str) -> tuple[str, Callable[[float], float]] | None:
    found = _HEAD.fullmatch(head.lower().strip())
    name, unit = (found["name"].strip("_ "), (found["unit"] or "").strip()) if found else ("", "")
    if not unit and "_" in name:
        name, _, unit = name.rpartition("_")
        unit = {"frac": "%"}.get(unit, unit)
    for column, names, units, factor in HEADS:
        if re.fullmatch(names, name) and re.fullmatch(units, unit):
            return column, factor
    return None


def _when(text: str, zone: datetime.tzinfo) -> datetime.datetime | None:
    clean = text.strip().replace("Z", "+00:00")
    for form in FORMS:
        try:
            found = datetime.datetime.strptime(clean, form)  # noqa: DTZ007 - the zone is put in below
        except ValueError:
            continue
        return (found if found.tzinfo else found.replace(tzinfo=zone)).astimezone(datetime.UTC)
    return None


def read_table(text: str, site: Site, source: str, kind: str) -> tuple[Hours, list[Doubt]]:
    """Hours of a plain table. Times without a zone are the site's own. Raises ValueError with what is wrong: "heads",
    "times"."""
    first = text.partition("\n")[0]
    reader = csv.reader(io.StringIO(text), delimiter=max(",\t|;", key=first.count))
    heads = [STATION.get(head.strip().lower(), head.strip()) for head in next(reader, [])]
    time_at = next((n for n, head in enumerate(heads) if head.lower().strip("_ ") in WHEN), None)
    columns = {n: found for n, head in enumerate(heads) if (found := _column(head))}
    if time_at is None or not columns:
        raise ValueError("heads")
    zone: datetime.tzinfo = ZoneInfo(site.zone) if site.zone else datetime.UTC
    rows, bad, days = Rows(), [], False
    for number, cells in enumerate(reader, 2):
        if not any(cell.strip() for cell in cells):
            continue
        when = _when(cells[time_at], zone) if time_at < len(cells) else None
        if when is None:
            bad.append(number)
            continue
        days = days or bool(re.fullmatch(r"\s*(\d{4}-\d{2}-\d{2}|\d{1,2}/\d{1,2}/\d{4}|\d{8})\s*", cells[time_at]))
        values = {}
        for n, (column, factor) in columns.items():
            try:
                values[column] = factor(float(cells[n]))
            except (ValueError, IndexError):
                values[column] = float("nan")
        hour = when.replace(tzinfo=None, minute=0, second=0, microsecond=0)
        rows.add(np.datetime64(hour, "s"), values, number)
    if not rows.at:
        raise ValueError("times")
    humidity = any(column == "humidity" for column, _ in columns.values())
    hours, doubts = hours_of(rows, site, "days" if days else kind, source, humidity=humidity)
    if bad:
        doubts.append(Doubt("time_not_understood", len(bad), tuple(bad[:5])))
    if days:
        doubts = [one for one in doubts if one.message != "hours_missing"]
    return hours, doubts
