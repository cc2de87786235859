"""The hours ahead on their page: from a file, from the service, kept; the quick sum for today and tomorrow."""

import datetime
import json

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from gate.weather.test_fetch import service
from notebook.some import name
from stemward.notebook.models import Kept
from stemward.web import clock, forecasts

__all__ = ["service"]
NOW = datetime.datetime.fromisoformat("2026-09-15T03:00:00+00:00")


@pytest.fixture(autouse=True)
def then(monkeypatch):
    """It is the night before the first day of the table."""
    monkeypatch.setattr(clock, "now", lambda: NOW)
    forecasts._answers.clear()


def table(gust=7):
    """Four fair days, invented, rain on the second afternoon."""
    return ("time,temp (F),dew point (F),wind (mph),gust (mph),rain (in),chance (%),cloud (%)\n" + "".join(
        f"2026-09-{15 + h // 24}T{h % 24:02d}:00:00Z,68,54,5,{gust},{0.05 if 40 < h < 44 else 0},{60 if 38 < h < 46 else 5},60\n"
        for h in range(96)
    )).encode()  # fmt: skip


def sent(client, tract, raw, called="mine.csv"):
    """Send a forecast file."""
    upload = SimpleUploadedFile(called, raw, "text/csv")
    return client.post(f"/land/{tract}/hours", {"command": name(), "forecast": upload})


@pytest.fixture
def placed(client, hollow):
    """The example with a place for its forecast."""
    client.post(f"/land/{hollow}/hours", {"command": name(), "place": "40.0, -75.0"})
    return hollow


def test_without_a_forecast_the_page_helps(client, hollow):
    """It asks where the land lies, then for a forecast; a place that is none is refused with an example."""
    page = client.get(f"/land/{hollow}/hours").content.decode()
    assert "No forecast is here yet" in page
    wrong = client.post(f"/land/{hollow}/hours", {"command": name(), "place": "here"})
    assert wrong.status_code == 422
    assert "such as 42.44" in wrong.content.decode()


def test_spans_with_reasons_and_strips(client, placed):
    """From a table: what is open, what shuts it and who says so; on the day's page in short."""
    assert sent(client, placed, table()).status_code == 302
    page = client.get(f"/land/{placed}/hours").content.decode()
    assert "Open next: Tue Sep 15" in page
    assert "common practice)" in page and "label, page" in page
    assert page.count("<svg") > 4
    assert "Open next:" in client.get(f"/land/{placed}/day").content.decode()


def test_a_forecast_that_is_over_shows_no_hours(client, placed, monkeypatch):
    """One sentence and the way to a newer one; neither boxes nor work days nor a sheet of what is past."""
    sent(client, placed, table())
    monkeypatch.setattr(clock, "now", lambda: NOW + datetime.timedelta(days=5))
    page = client.get(f"/land/{placed}/hours").content.decode()
    assert page.count("This forecast is over") == 1
    assert "<h2>Work days" not in page and 'aria-labelledby="w1"' not in page
    assert "A newer forecast" in page
    assert client.get(f"/land/{placed}/hours.pdf").status_code == 404
    assert "Open next" not in client.get(f"/land/{placed}/day").content.decode()


def test_a_file_that_is_none_leaves_the_last_good_one(client, placed):
    """The sentence, and the forecast from before."""
    sent(client, placed, table())
    wrong = sent(client, placed, b"a,b\n1,2\n")
    assert wrong.status_code == 422
    page = wrong.content.decode()
    assert "first line has to name" in page and "mine.csv" in page
    assert client.post(f"/land/{placed}/hours", {"command": name()}).status_code == 422


def test_it_is_got_from_the_service_and_kept_when_that_fails(client, placed, service, monkeypatch):
    """By the button; a service that is broken is said, and the last forecast stays."""
    host, answers, asked = service
    monkeypatch.setenv("STEMWARD_WEATHER", host)
    monkeypatch.setattr("stemward.gate.weather.fetch.WAIT_S", (0.0, 0.0))
    answers["/points/40.0000,-75.0000"] = answers["/points/42.4400,-76.5000"]
    assert client.post(f"/land/{placed}/hours", {"command": name(), "get": "1"}).status_code == 302
    assert "National Weather Service" in client.get(f"/land/{placed}/hours").content.decode()
    assert asked[0][0] == "/points/40.0000,-75.0000"
    answers["/gridpoints/XXX/1,2"] = [(500, {}, b"")]
    wrong = client.post(f"/land/{placed}/hours", {"command": name(), "get": "1"})
    assert wrong.status_code == 422
    page = wrong.content.decode()
    assert "busy or broken" in page and "National Weather Service" in page


def test_the_service_is_not_asked_again_before_it_has_something_newer(client, placed, service, monkeypatch):
    """For as long as it says of its answer; then anew. The age shown is that of the answer."""
    host, answers, asked = service
    monkeypatch.setenv("STEMWARD_WEATHER", host)
    answers["/points/40.0000,-75.0000"] = answers["/points/42.4400,-76.5000"]
    (_, _, body), *_ = answers["/gridpoints/XXX/1,2"]
    answers["/gridpoints/XXX/1,2"] = [(200, {"Cache-Control": "public, max-age=900"}, body)]
    for minutes, requests in ((0, 2), (14, 2), (16, 4)):
        monkeypatch.setattr(clock, "now", lambda minutes=minutes: NOW + datetime.timedelta(minutes=minutes))
        assert client.post(f"/land/{placed}/hours", {"command": name(), "get": "1"}).status_code == 302
        assert len(asked) == requests
        kept = Kept.objects.get(name=f"forecast {placed}").body["at"]
        assert kept == (NOW + datetime.timedelta(minutes=0 if requests == 2 else minutes)).isoformat()


def test_can_i_do_it_today(client, service, monkeypatch):
    """Without a tract: spans of today and tomorrow; a place that is none is refused."""
    from gate.weather.test_weather_files import interval

    host, answers, _ = service
    monkeypatch.setenv("STEMWARD_WEATHER", host)
    monkeypatch.setattr(clock, "now", lambda: datetime.datetime.fromisoformat("2026-09-10T12:00:00+00:00"))
    fair = {"properties": {
        "updateTime": "2026-09-10T09:00:00+00:00",
        **{layer: {"uom": f"wmoUnit:{unit}", "values": [interval(10, "PT48H", value)]} for layer, unit, value in (
            ("temperature", "degC", 20), ("dewpoint", "degC", 12), ("windSpeed", "km_h-1", 9), ("windGust", "km_h-1", 12),
            ("skyCover", "percent", 60), ("probabilityOfPrecipitation", "percent", 5), ("quantitativePrecipitation", "mm", 0),
        )},
    }}  # fmt: skip
    answers["/gridpoints/XXX/1,2"] = [(200, {}, json.dumps(fair).encode())]
    asked = {"place": "42.44,-76.50", "how": "cut stump", "zone": "America/New_York"}
    page = client.get("/sums/today", asked).content.decode()
    assert "Open next: Thu Sep 10" in page
    assert "hours without rain" in page
    assert client.get("/sums/today", {**asked, "place": "x"}).status_code == 422
    assert client.get("/sums/today", {**asked, "zone": "Nowhere"}).status_code == 422


def test_the_weeks_of_the_year_from_a_typical_year(client, placed):
    """A file of years is kept apart from the forecast; its doubts are said; a file that is none changes nothing."""
    from importlib import resources

    raw = resources.files("pvlib").joinpath("data", "723170TYA.CSV").read_bytes()
    upload = SimpleUploadedFile("greensboro.csv", raw, "text/csv")
    assert client.post(f"/land/{placed}/hours", {"command": name(), "history": upload}).status_code == 302
    page = client.get(f"/land/{placed}/hours").content.decode()
    assert "From a typical year, greensboro.csv" in page
    assert "Most working days within the best time of year" in page and "2001-02 has no rain at all" in page
    wrong = client.post(
        f"/land/{placed}/hours", {"command": name(), "history": SimpleUploadedFile("x.csv", b"a\n1\n", "text/csv")}
    )
    assert wrong.status_code == 422
    assert "greensboro.csv" in wrong.content.decode()


def test_work_days_and_their_calendar(client, placed):
    """Hours for each treatment in sentences, and as events with the end of the time that has to stay dry."""
    assert client.get(f"/land/{placed}/hours.ics").status_code == 404
    sent(client, placed, table())
    page = client.get(f"/land/{placed}/hours").content.decode()
    assert "Work days" in page and "The time that has to stay dry ends" in page and "If it rains on you" in page
    file = client.get(f"/land/{placed}/hours.ics")
    assert file.headers["Content-Type"].startswith("text/calendar")
    text = file.content.decode()
    assert text.count("BEGIN:VEVENT") == text.count("END:VEVENT") >= 2
    assert "DTSTART:20260915T" in text and "The time that has to stay dry is over" in text.replace("\r\n ", "")


def test_a_work_day_that_a_newer_forecast_closes_is_the_next_step(client, placed, monkeypatch):
    """Taken in fair weather; the newer forecast has rain all day: move it, with the reason; fair again, and it is gone."""
    now = datetime.datetime.fromisoformat("2026-09-15T09:00:00+00:00")
    monkeypatch.setattr(clock, "now", lambda: now)
    assert client.post(f"/land/{placed}/hours", {"command": name(), "take": "1"}).status_code == 422
    sent(client, placed, table())
    client.post(f"/land/{placed}/hours", {"command": name(), "take": "1"})
    assert "Taken:" in client.get(f"/land/{placed}/hours").content.decode()
    assert "Move the work day" not in client.get(f"/land/{placed}/step").content.decode()
    sent(client, placed, table().replace(b",5,7,0,5,", b",5,7,0.2,90,"), "rain.csv")
    step = client.get(f"/land/{placed}/step").content.decode()
    assert "Move the work day" in step and "rain" in step
    assert f"/land/{placed}/hours" in step
    now += datetime.timedelta(seconds=5)
    sent(client, placed, table(), "fair.csv")
    assert "Move the work day" not in client.get(f"/land/{placed}/step").content.decode()


def test_what_is_over_is_not_open(client, placed, monkeypatch):
    """A forecast of days gone by opens nothing; neither does this morning in the afternoon."""
    sent(client, placed, table())
    monkeypatch.setattr(clock, "now", lambda: datetime.datetime.fromisoformat("2026-11-27T09:00:00+00:00"))
    page = client.get(f"/land/{placed}/hours").content.decode()
    assert "This forecast is over" in page and "Open next" not in page
    monkeypatch.setattr(clock, "now", lambda: datetime.datetime.fromisoformat("2026-09-15T18:30:00+00:00"))
    assert "Open next: Tue Sep 15 1 pm" in client.get(f"/land/{placed}/hours").content.decode()


def test_the_hours_on_paper(client, placed):
    """Tagged, with a described strip for each treatment, the reasons and the work days; none without a forecast."""
    import io

    import pikepdf
    import pypdfium2

    assert client.get(f"/land/{placed}/hours.pdf").status_code == 404
    sent(client, placed, table())
    raw = client.get(f"/land/{placed}/hours.pdf").content
    pages = pypdfium2.PdfDocument(raw)
    text = " ".join(" ".join(page.get_textpage().get_text_bounded().split()) for page in pages)
    for words in (
        "The hours ahead: Quarry Hollow",
        "Open next: Tue Sep 15",
        "common practice)",
        "The time that has to stay dry ends",
    ):
        assert words in text
    with pikepdf.open(io.BytesIO(raw)) as opened:
        assert str(opened.Root.Lang) == "en"
        tagged = str([one for one in opened.objects if isinstance(one, pikepdf.Dictionary)])
    assert "as boxes, a row a day. Open next" in tagged


def test_a_calendar_program_reads_the_days_taken_by_an_address(client, placed):
    """Without a cookie, under a word nobody guesses; ended, the old address is gone; a wrong word finds nothing."""
    import re

    from django.test import Client

    sent(client, placed, table())
    client.post(f"/land/{placed}/hours", {"command": name(), "take": "1"})
    page = client.get(f"/land/{placed}/hours").content.decode()
    address = re.search(r"<code>https?://[^/]+(/calendar/[\w-]{32}\.ics)</code>", page)[1]
    stranger = Client(HTTP_HOST="127.0.0.1")
    read = stranger.get(address)
    assert read.status_code == 200
    assert read.content.decode().count("BEGIN:VEVENT") >= 1
    assert stranger.get("/calendar/guess.ics").status_code == 404
    assert stranger.get(f"/land/{placed}/hours").status_code == 403
    client.post(f"/land/{placed}/hours", {"command": name(), "new-feed": "1"})
    assert stranger.get(address).status_code == 404
