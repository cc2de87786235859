"""Typical years and station files: TMY3, EPW, ISD-Lite. A typical year is no sequence and is put into one year."""

import csv
import datetime
from collections.abc import Sequence
from typing import Any

import numpy as np

from stemward.gate.weather.made import Doubt, Rows, hours_of
from stemward.kinds.hours import Hours, Site

NO_YEAR = 2001
"""The year that months of a typical year are put into: one without a leap day."""
TENTHS_MM = 3000.0
"""More rain in a year than this under a heading of millimetres, all in steps of tenths of an inch's hundredths, is in
tenths of a millimetre: engineering guess, after a file whose 8,345 are 834.5 mm."""


def _number(text: str, missing: Sequence[float], factor: float = 1.0, offset: float = 0.0) -> float:
    """A figure of a table; nan for what is not there or stands for not known."""
    try:
        value = float(text)
    except ValueError:
        return float("nan")
    return float("nan") if value in missing else value * factor + offset


def _hour_ending(month: int, day: int, hour: int, zone_h: float) -> np.datetime64:
    """UTC start of an hour that ends at that local standard time."""
    local = datetime.datetime(NO_YEAR, month, day, tzinfo=datetime.UTC) + datetime.timedelta(hours=hour - 1 - zone_h)
    return np.datetime64(local.replace(tzinfo=None), "s")


def read_tmy3(text: str, source: str) -> tuple[Hours, list[Doubt]]:
    """A TMY3 file: station line, heading line, 8,760 hours of local standard time by their ends. Raises ValueError."""
    lines = text.splitlines()
    station = next(csv.reader([lines[0]]))
    zone_h, latitude, longitude, height = (float(station[n]) for n in (3, 4, 5, 6))
    heads = next(csv.reader([lines[1]]))
    at = {name: heads.index(name) for name in heads}
    rows, doubts = Rows(), []
    missing = (-9900.0, -99.0, 9999.0)
    rain_name = next((name for name in heads if name.startswith("Lprecip depth")), "")
    long_name = next((name for name in heads if name.startswith("Lprecip quantity")), "")
    for number, cells in enumerate(csv.reader(lines[2:]), 3):
        month, day, _ = (int(part) for part in cells[0].split("/"))
        value = {"temp_c": _number(cells[at["Dry-bulb (C)"]], missing),
                 "dew_c": _number(cells[at["Dew-point (C)"]], missing),
                 "humidity": _number(cells[at["RHum (%)"]], missing, 0.01),
                 "pressure_hpa": _number(cells[at["Pressure (mbar)"]], missing),
                 "wind_m_s": _number(cells[at["Wspd (m/s)"]], missing),
                 "wind_from_deg": _number(cells[at["Wdir (degrees)"]], missing),
                 "cloud_frac": _number(cells[at["TotCld (tenths)"]], missing, 0.1)}  # fmt: skip
        hours = _number(cells[at[long_name]], missing) if long_name else float("nan")
        if rain_name and hours == 1.0:
            value["rain_mm"] = _number(cells[at[rain_name]], missing)
        rows.add(_hour_ending(month, day, int(cells[1][:2]), zone_h), value, number)
    depths = np.array([v.get("rain_mm", np.nan) for v in rows.values])
    if np.nansum(depths) > TENTHS_MM:
        doubts.append(Doubt("tenths", 0, (2,), (("sum", float(np.nansum(depths))),)))
        for v in rows.values:
            if "rain_mm" in v:
                v["rain_mm"] /= 10  # type: ignore[index]
    hours_, more = hours_of(rows, Site(latitude, longitude, height), "typical year", source, humidity=True)
    return hours_, doubts + more + _unknown(hours_)


def read_epw(text: str, source: str) -> tuple[Hours, list[Doubt]]:
    """An EPW file: eight lines of heading, 8,760 hours of local standard time by their ends. Raises ValueError."""
    lines = text.splitlines()
    place = next(csv.reader([lines[0]]))
    latitude, longitude, zone_h, height = (float(place[n]) for n in (6, 7, 8, 9))
    rows, mixed = Rows(), []
    for number, cells in enumerate(csv.reader(lines[8:]), 9):
        value = {"temp_c": _number(cells[6], (99.9,)), "dew_c": _number(cells[7], (99.9,)),
                 "humidity": _number(cells[8], (999.0,), 0.01),
                 "pressure_hpa": _number(cells[9], (999999.0,), 0.01),
                 "wind_from_deg": _number(cells[20], (999.0,)), "wind_m_s": _number(cells[21], (999.0,)),
                 "cloud_frac": _number(cells[22], (99.0,), 0.1), "snow_m": _number(cells[30], (999.0,), 0.01)}  # fmt: skip
        if len(cells) > 34:
            span = _number(cells[34], (99.0,))
            if span == 1.0:
                value["rain_mm"] = _number(cells[33], (999.0,))
            elif span == span:
                mixed.append(number)
        rows.add(_hour_ending(int(cells[1]), int(cells[2]), int(cells[3]), zone_h), value, number)
    hours, doubts = hours_of(rows, Site(latitude, longitude, height), "typical year", source, humidity=True)
    if mixed:
        doubts.append(Doubt("mixed_spans", len(mixed), tuple(mixed[:5])))
    if float(np.nansum(hours.rain_mm)) == 0.0:
        doubts.append(Doubt("no_rain_at_all"))
    return hours, doubts + _unknown(hours)


def _unknown(hours: Hours) -> list[Doubt]:
    count = int(np.isnan(hours.rain_mm).sum())
    return [Doubt("rain_unknown", count)] if count else []


def read_isd_lite(text: str, site: Site, source: str) -> tuple[Hours, list[Doubt]]:
    """An ISD-Lite file: blank-parted columns in UTC, tenths, -9999 for not known, -1 for a trace. Raises ValueError."""
    rows = Rows()
    for number, line in enumerate(text.splitlines(), 1):
        cells = line.split()
        if not cells:
            continue
        year, month, day, hour = (int(cells[n]) for n in range(4))
        v: dict[str, Any] = {
            name: _number(cells[n], (-9999.0,), factor)
            for name, n, factor in (
                ("temp_c", 4, 0.1),
                ("dew_c", 5, 0.1),
                ("wind_from_deg", 7, 1.0),
                ("wind_m_s", 8, 0.1),
            )
        }
        sky = _number(cells[9], (-9999.0, 9.0))
        v["cloud_frac"] = sky / 8 if sky <= 8 else float("nan")
        rain = _number(cells[10], (-9999.0,), 0.1)
        v["rain_mm"] = 0.0 if rain == -0.1 else rain
        rows.add(np.datetime64(f"{year:04d}-{month:02d}-{day:02d}T{hour:02d}", "s"), v, number)
    return hours_of(rows, site, "history", source)
