"""The last good forecast of a tract, kept with when it was got; and getting one."""

import base64
import datetime
import os
import zlib
from dataclasses import dataclass
from typing import Any

from stemward.gate.weather import NotWeather, read_weather
from stemward.gate.weather.fetch import HOST, NoForecast, get_forecast
from stemward.gate.weather.made import Doubt
from stemward.kinds import Tract
from stemward.kinds.hours import Hours, Site
from stemward.notebook.changes import Refused
from stemward.notebook.models import Kept
from stemward.say.en import hours as words
from stemward.web import clock


@dataclass(frozen=True, eq=False)
class Forecast:
    """Hours with what is odd about the file they came in, its name, and where they are for."""

    hours: Hours
    doubts: tuple[Doubt, ...]
    name: str


def _key(tract_id: str, kind: str) -> str:
    return f"{kind} {tract_id}"


def place_of(land: Tract, tract_id: str) -> tuple[float, float] | None:
    """Where a tract lies: its origin, else what was typed for the forecast; None where neither is known."""
    if land.origin is not None:
        return land.origin
    body = Kept.objects.filter(name=f"place {tract_id}").values_list("body", flat=True).first()
    return (float(body[0]), float(body[1])) if body else None


def put_place(tract_id: str, place: tuple[float, float]) -> None:
    """Remember where a tract lies, for the forecast alone."""
    Kept.objects.update_or_create(name=f"place {tract_id}", defaults={"body": list(place)})


def host() -> str:
    """The weather service; STEMWARD_WEATHER names a server on this computer that speaks its form, to try things."""
    named = os.environ.get("STEMWARD_WEATHER", "")
    return named if named.startswith(("https://", "http://127.0.0.1:")) else HOST


_answers: dict[tuple[str, float, float], tuple[bytes, datetime.datetime, datetime.datetime]] = {}
"""By service and place: the last answer, when it was got, and until when the service has nothing newer."""
MOST_ANSWERS = 20


def got(place: tuple[float, float]) -> tuple[bytes, datetime.datetime]:
    """A forecast from the service, and when it was got: not asked for again before its time is over. Raises Refused."""
    key, now = (host(), round(place[0], 4), round(place[1], 4)), clock.now()
    if key in _answers and _answers[key][1] <= now < _answers[key][2]:
        return _answers[key][:2]
    try:
        answer = get_forecast(place[0], place[1], host())
    except NoForecast as none:
        raise Refused(words.NOT_WEATHER[none.message]) from None
    while len(_answers) >= MOST_ANSWERS:
        _answers.pop(next(iter(_answers)))
    _answers[key] = answer.raw, now, now + datetime.timedelta(seconds=answer.fresh_s)
    return answer.raw, now


def keep(
    tract_id: str, raw: bytes, name: str, site: Site, kind: str = "forecast", at: datetime.datetime | None = None
) -> None:
    """Keep a forecast or a history if it can be read; else the last good one stays. Raises Refused with a sentence.

    at: when it was got; None is now.
    """
    try:
        read_weather(raw, name, site, kind)
    except NotWeather as wrong:
        raise Refused(words.NOT_WEATHER[wrong.message]) from None
    body: dict[str, Any] = {
        "name": name[:200], "at": (at or clock.now()).isoformat(), "raw": base64.b64encode(zlib.compress(raw)).decode(),
    }  # fmt: skip
    Kept.objects.update_or_create(name=_key(tract_id, kind), defaults={"body": body})


def kept(tract_id: str, site: Site, kind: str = "forecast") -> Forecast | None:
    """The forecast, or the history, that is kept; None without one."""
    body = Kept.objects.filter(name=_key(tract_id, kind)).values_list("body", flat=True).first()
    if not body:
        return None
    try:
        raw = zlib.decompress(base64.b64decode(body["raw"]))
        hours, doubts = read_weather(raw, body["name"], site, kind)
    except (NotWeather, zlib.error, ValueError, KeyError):
        return None
    return Forecast(hours, tuple(doubts), body["name"])


def got_at(tract_id: str) -> str:
    """When the forecast that is kept was got, and its name, as text; "" without one."""
    body = Kept.objects.filter(name=_key(tract_id, "forecast")).values_list("body", flat=True).first()
    return f"{body['at']} {body['name']}" if body else ""


def site_of(place: tuple[float, float], zone: str) -> Site:
    """A place for the arithmetic of the hours."""
    return Site(place[0], place[1], zone=zone)
