"""The weather service is asked politely; its faults end in a word. A server on this computer speaks its form."""

import http.server
import json
import threading
import time

import pytest

from gate.weather.test_weather_files import GRID
from stemward.gate.weather.fetch import NAME, NoForecast, get_forecast


@pytest.fixture
def service():
    """A server whose answers a test sets: path to a list of (status, headers, body), the last one over again."""
    answers, asked, stays_silent = {}, [], threading.Event()

    class Handler(http.server.BaseHTTPRequestHandler):
        def do_GET(self):
            asked.append((self.path, self.headers["User-Agent"]))
            queue = answers.get(self.path, [(404, {}, b"{}")])
            status, headers, body = queue.pop(0) if len(queue) > 1 else queue[0]
            stays_silent.wait(headers.get("silent", 0))
            self.send_response(status)
            for name, value in headers.items():
                if name in ("Cache-Control", "Location"):
                    self.send_header(name, value)
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            step = headers.get("drips", len(body)) or 1
            try:
                for start in range(0, len(body), step):
                    self.wfile.write(body[start : start + step])
                    stays_silent.wait(0.02 if "drips" in headers else 0)
            except OSError:
                pass

        def log_message(self, *_):
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    host = f"http://127.0.0.1:{server.server_port}"
    answers["/points/42.4400,-76.5000"] = [(200, {}, points(f"{host}/gridpoints/XXX/1,2"))]
    answers["/gridpoints/XXX/1,2"] = [(200, {}, json.dumps(GRID).encode())]
    yield host, answers, asked
    stays_silent.set()
    server.shutdown()
    server.server_close()
    thread.join()


def points(address):
    """The answer that names where the forecast is."""
    return json.dumps({"properties": {"forecastGridData": address}}).encode()


def got(host):
    """A forecast without waiting between tries."""
    return get_forecast(42.44, -76.5, host, sleep=lambda _: None).raw


def test_it_asks_by_name_for_the_place_and_then_for_the_hours(service):
    """Two requests, to four decimals, with a name."""
    host, _, asked = service
    assert json.loads(got(host)) == GRID
    assert [path for path, _ in asked] == ["/points/42.4400,-76.5000", "/gridpoints/XXX/1,2"]
    assert {name for _, name in asked} == {NAME}


def test_a_busy_service_is_asked_again(service):
    """500 and 429, then an answer; three times at most."""
    host, answers, asked = service
    answers["/gridpoints/XXX/1,2"] = [(500, {}, b""), (429, {}, b""), (200, {}, json.dumps(GRID).encode())]
    assert json.loads(got(host)) == GRID
    answers["/gridpoints/XXX/1,2"] = [(503, {}, b"")]
    asked.clear()
    with pytest.raises(NoForecast) as none:
        got(host)
    assert none.value.message == "busy"
    assert len(asked) == 4


@pytest.mark.parametrize(
    ("answer", "message"),
    [
        ((200, {}, b"not json"), "odd_answer"), ((200, {}, b"[]"), "odd_answer"), ((200, {}, b'{"properties": 3}'), "odd_answer"),
        ((404, {}, b"{}"), "not_there"), ((301, {"Location": "http://127.0.0.1:9/elsewhere"}, b""), "odd_answer"),
        ((403, {}, b"{}"), "odd_answer"), ((200, {}, b"[" * 5000), "odd_answer"),
    ],
)  # fmt: skip
def test_odd_answers_end_in_a_word(service, answer, message):
    """No redirect is followed, no address elsewhere asked, nothing half read."""
    host, answers, _ = service
    answers["/gridpoints/XXX/1,2"] = [answer]
    with pytest.raises(NoForecast) as none:
        got(host)
    assert none.value.message == message


def test_an_address_elsewhere_is_not_asked(service):
    """What the first answer names has to lie with the service."""
    host, answers, asked = service
    answers["/points/42.4400,-76.5000"] = [(200, {}, points("http://127.0.0.1:9/gridpoints/XXX/1,2"))]
    with pytest.raises(NoForecast) as none:
        got(host)
    assert none.value.message == "odd_answer"
    assert len(asked) == 1


def test_no_network_is_said():
    """Nobody listens on that port."""
    with pytest.raises(NoForecast) as none:
        got("http://127.0.0.1:9")
    assert none.value.message == "no_network"


@pytest.mark.parametrize("slow", [{"silent": 30}, {"drips": 1}])
def test_a_slow_service_is_given_up(service, slow):
    """Neither silence nor an answer that drips in byte by byte holds a person up: tried three times, then said."""
    host, answers, asked = service
    answers["/gridpoints/XXX/1,2"] = [(200, slow, json.dumps(GRID).encode() + b" " * 3000)]
    began = time.monotonic()
    with pytest.raises(NoForecast) as none:
        get_forecast(42.44, -76.5, host, sleep=lambda _: None, seconds=0.3)
    assert none.value.message == "no_network"
    assert len(asked) == 4
    assert time.monotonic() - began < 25  # and not the half minute of one silence


@pytest.mark.parametrize(
    ("header", "fresh_s"),
    [
        ("public, max-age=900, s-maxage=120", 900), ("max-age=999999", 3600), ("no-cache, max-age=900", 0), ("", 0),
        ("s-maxage=900", 0), ("max-age=soon", 0),
    ],
)  # fmt: skip
def test_how_long_an_answer_may_be_used(service, header, fresh_s):
    """What the service says of its age, an hour at most."""
    host, answers, _ = service
    answers["/gridpoints/XXX/1,2"] = [(200, {"Cache-Control": header}, json.dumps(GRID).encode())]
    assert get_forecast(42.44, -76.5, host).fresh_s == fresh_s
