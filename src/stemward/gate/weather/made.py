"""Rows of weather put together as columns of whole hours, and what is odd about them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from stemward.kinds.hours import Hours, RainBlock, Site
from stemward.reckon.air.moisture import dew_point_c, humidity_frac

COLUMNS = ("temp_c", "dew_c", "wind_m_s", "gust_m_s", "wind_from_deg", "rain_mm", "rain_chance_frac", "cloud_frac",
           "pressure_hpa", "snow_m")  # fmt: skip
IN_REASON = {
    "temp_c": (-60.0, 60.0), "dew_c": (-70.0, 40.0), "wind_m_s": (0.0, 45.0), "gust_m_s": (0.0, 80.0),
    "wind_from_deg": (0.0, 360.0), "rain_mm": (0.0, 200.0), "rain_chance_frac": (0.0, 1.0), "cloud_frac": (0.0, 1.0),
    "pressure_hpa": (500.0, 1100.0), "snow_m": (0.0, 10.0),
}  # fmt: skip
"""What a value can be; others are left out and said. 45 m/s is 100 mph: engineering guesses."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something odd about a file of weather. message: for room `say`. rows: lines of the file, the first few."""

    message: str
    count: int = 0
    rows: tuple[int, ...] = ()
    values: tuple[tuple[str, Any], ...] = ()


@dataclass
class Rows:
    """Rows while they are gathered: UTC start of the hour, values by column, line in the file."""

    at: list[np.datetime64] = field(default_factory=list)
    values: list[Mapping[str, float]] = field(default_factory=list)
    lines: list[int] = field(default_factory=list)

    def add(self, at: np.datetime64, values: Mapping[str, float], line: int) -> None:
        """One more row."""
        self.at.append(at.astype("datetime64[s]"))
        self.values.append(values)
        self.lines.append(line)


def hours_of(
    rows: Rows, site: Site, kind: str, source: str, humidity: bool = False, blocks: Sequence[RainBlock] = ()
) -> tuple[Hours, list[Doubt]]:
    """Columns of whole hours in order, and doubts. humidity: rows hold `humidity` as a share, which stands in for a dew
    point that is missing and is held against one that is there."""
    doubts: list[Doubt] = []
    order = np.argsort(np.array(rows.at, dtype="datetime64[s]"), kind="stable")
    at = np.array(rows.at, dtype="datetime64[s]")[order]
    lines = np.array(rows.lines)[order]
    keep = np.concatenate([[True], at[1:] > at[:-1]]) if len(at) else np.zeros(0, bool)
    if not keep.all():
        doubts.append(_doubt("twice", lines[~keep]))
    columns = {}
    for name in (*COLUMNS, "humidity"):
        column = np.array([rows.values[n].get(name, np.nan) for n in order.tolist()], dtype=float)
        low, high = IN_REASON.get(name, (0.0, 1.05))
        with np.errstate(invalid="ignore"):
            odd = (column < low) | (column > high)
        if odd.any():
            doubts.append(_doubt("out_of_reason", lines[odd], column=name, value=float(column[odd][0])))
            column[odd] = np.nan
        columns[name] = column[keep]
    at, lines = at[keep], lines[keep]
    if humidity:
        share = np.clip(columns["humidity"], 0.01, 1.0)
        with np.errstate(invalid="ignore"):
            apart = np.abs(humidity_frac(columns["temp_c"], columns["dew_c"]) - share) > 0.05
        if apart.any():
            doubts.append(_doubt("humidity_apart", lines[apart]))
        columns["dew_c"] = np.where(np.isnan(columns["dew_c"]), dew_point_c(columns["temp_c"], share), columns["dew_c"])
    columns.pop("humidity")
    if len(at) > 1:
        steps = np.diff(at).astype(int) // 3600
        if (steps > 1).any():
            doubts.append(_doubt("hours_missing", lines[1:][steps > 1], count=int((steps[steps > 1] - 1).sum())))
    if kind != "forecast":
        doubts += dry_months(at, columns["rain_mm"])
    hours = Hours(site, at, **columns, blocks=tuple(blocks), kind=kind, source=source)
    return hours, doubts


def dry_months(at: Any, rain_mm: Any) -> list[Doubt]:
    """Months without a drop beside months with rain: often rain that was not measured, filled with zeros."""
    months = at.astype("datetime64[M]")
    found = []
    total = float(np.nansum(rain_mm))
    for month in np.unique(months).tolist() if total > 0 else []:
        own = rain_mm[months == np.datetime64(month, "M")]
        if len(own) > 600 and np.count_nonzero(~np.isnan(own)) > 600 and float(np.nansum(own)) == 0.0:
            found.append(Doubt("month_without_rain", 1, (), (("month", f"{month:%Y-%m}"),)))
    return found


def _doubt(message: str, lines: Any, count: int | None = None, **values: Any) -> Doubt:
    return Doubt(
        message, len(lines) if count is None else count, tuple(int(n) for n in lines[:5]), tuple(values.items())
    )
