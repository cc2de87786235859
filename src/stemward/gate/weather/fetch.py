"""The forecast of the US National Weather Service for a place, fetched politely from its one host."""

import json
import re
import time
import urllib.error
import urllib.request
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

HOST = "https://api.weather.gov"
"""The only host that is asked; no address of a user's or of an answer leads elsewhere."""
NAME = "Stemward/0.1 (plans work on woody plants; one user's computer)"
SECONDS = 10
TRIES = 3
WAIT_S = (0.5, 2.0)
MOST_BYTES = 16 * 1024 * 1024
"""Time for an answer, tries, waits between them, largest answer: engineering guesses; a forecast has half a megabyte."""
MOST_FRESH_S = 3600
"""An answer is asked for anew after an hour at the latest, whatever the service says: an engineering guess."""


@dataclass(frozen=True)
class Answer:
    """What the service sent, and for how many seconds it says that nothing newer is to be had (0: it does not say)."""

    raw: bytes
    fresh_s: int


class NoForecast(Exception):
    """A forecast that was not got. message: "no_network", "busy", "not_there", "odd_answer"; words for it in `say`."""

    def __init__(self, message: str) -> None:
        self.message = message
        super().__init__(message)


class _Stay(urllib.request.HTTPRedirectHandler):
    """Follows no redirect: the service answers itself."""

    def redirect_request(self, *_: Any, **__: Any) -> None:
        """Nothing to follow: the answer is then an error."""


def get_forecast(
    latitude_deg: float,
    longitude_deg: float,
    host: str = HOST,
    sleep: Callable[[float], None] = time.sleep,
    seconds: float = SECONDS,
) -> Answer:
    """The gridpoint forecast of a place, as JSON. Raises NoForecast.

    host: the service, or a server on this computer that speaks the same form. A place is asked for to four decimals.
    seconds: the longest time for one answer as a whole.
    """
    points = _asked(f"{host}/points/{latitude_deg:.4f},{longitude_deg:.4f}", sleep, seconds).raw
    try:
        address = json.loads(points)["properties"]["forecastGridData"]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise NoForecast("odd_answer") from None
    if not isinstance(address, str) or not address.startswith(f"{host}/"):
        raise NoForecast("odd_answer")
    answer = _asked(address, sleep, seconds)
    try:
        found = json.loads(answer.raw)["properties"]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise NoForecast("odd_answer") from None
    if not isinstance(found, dict):
        raise NoForecast("odd_answer")
    return answer


def _asked(address: str, sleep: Callable[[float], None], seconds: float) -> Answer:
    """An answer, tried up to three times. Raises NoForecast."""
    opener = urllib.request.build_opener(_Stay)
    request = urllib.request.Request(address, headers={"User-Agent": NAME, "Accept": "application/geo+json"})
    trouble = "no_network"
    for attempt in range(TRIES):
        if attempt:
            sleep(WAIT_S[attempt - 1])
        try:
            with opener.open(request, timeout=seconds) as answer:
                raw = _read(answer, time.monotonic() + seconds)
                fresh_s = _fresh_s(answer.headers.get("Cache-Control", ""))
        except urllib.error.HTTPError as error:
            error.close()
            if error.code == 404:
                raise NoForecast("not_there") from None
            trouble = "busy" if error.code == 429 or error.code >= 500 else "odd_answer"
            if trouble == "odd_answer":
                break
            continue
        except (OSError, ValueError):
            trouble = "no_network"
            continue
        if len(raw) > MOST_BYTES:
            raise NoForecast("odd_answer")
        return Answer(raw, fresh_s)
    raise NoForecast(trouble)


def _read(answer: Any, until: float) -> bytes:
    """The body, at most a little over MOST_BYTES. Raises TimeoutError where it drips in past `until`: the time-out of a
    socket alone counts from the last byte."""
    got = bytearray()
    while len(got) <= MOST_BYTES and (piece := answer.read1(65536)):
        got += piece
        if time.monotonic() > until:
            raise TimeoutError
    return bytes(got)


def _fresh_s(said: str) -> int:
    """Seconds for which an answer may be used again, from its Cache-Control."""
    if "no-store" in said or "no-cache" in said:
        return 0
    age = re.search(r"(?<![\w-])max-age=(\d{1,9})", said)
    return min(int(age[1]), MOST_FRESH_S) if age else 0
