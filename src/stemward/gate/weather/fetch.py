"""The forecast of the US National Weather Service for a place, fetched politely from its one host."""

import json
import time
import urllib.error
import urllib.request
from collections.abc import Callable
from typing import Any

HOST = "https://api.weather.gov"
"""The only host that is asked; no address of a user's or of an answer leads elsewhere."""
NAME = "Stemward/0.1 (plans work on woody plants; one user's computer)"
SECONDS = 10
TRIES = 3
WAIT_S = (0.5, 2.0)
MOST_BYTES = 16 * 1024 * 1024
"""Time for an answer, tries, waits between them, largest answer: engineering guesses; a forecast has half a megabyte."""


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
    latitude_deg: float, longitude_deg: float, host: str = HOST, sleep: Callable[[float], None] = time.sleep
) -> bytes:
    """The gridpoint forecast of a place, as JSON. Raises NoForecast.

    host: the service, or a server on this computer that speaks the same form. A place is asked for to four decimals.
    """
    points = _asked(f"{host}/points/{latitude_deg:.4f},{longitude_deg:.4f}", sleep)
    try:
        address = json.loads(points)["properties"]["forecastGridData"]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise NoForecast("odd_answer") from None
    if not isinstance(address, str) or not address.startswith(f"{host}/"):
        raise NoForecast("odd_answer")
    raw = _asked(address, sleep)
    try:
        found = json.loads(raw)["properties"]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise NoForecast("odd_answer") from None
    if not isinstance(found, dict):
        raise NoForecast("odd_answer")
    return raw


def _asked(address: str, sleep: Callable[[float], None]) -> bytes:
    """An answer, tried up to three times. Raises NoForecast."""
    opener = urllib.request.build_opener(_Stay)
    request = urllib.request.Request(address, headers={"User-Agent": NAME, "Accept": "application/geo+json"})
    trouble = "no_network"
    for attempt in range(TRIES):
        if attempt:
            sleep(WAIT_S[attempt - 1])
        try:
            with opener.open(request, timeout=SECONDS) as answer:
                raw = bytes(answer.read(MOST_BYTES + 1))
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
        return raw
    raise NoForecast(trouble)
