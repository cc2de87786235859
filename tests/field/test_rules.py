"""The phone's rules in a real browser against cases worked out by the core; the cases are not stale."""

import http.server
import json
import math
import threading
from pathlib import Path

import pytest

import stemward.field
from stemward.field.vectors import vectors

CASES = Path(__file__).with_name("vectors.json")
PAGE = Path(stemward.field.__file__).with_name("page")
RUN = """async () => {
  const r = await import('/rules.js'), v = await (await fetch('/vectors.json')).json();
  const made = {...v};
  made.clock = v.clock.map(c => ({...c, left_s: r.clockLeft(c.limit_s, c.waited_s), part: r.clockPart(c.limit_s, c.waited_s),
    minutes: r.minutesShown(r.clockLeft(c.limit_s, c.waited_s))}));
  made.lots = v.lots.map(c => { const size = r.lotSize(c.limit_s, c); return {...c, size, wait_s: size ? r.waitS(size, c) : null}; });
  made.places = v.places.map(c => ({...c, distance_m: r.distanceM(c.x_m, c.y_m), direction: r.direction(c.x_m, c.y_m)}));
  made.onward = v.onward.map(c => ({...c, order: r.onward(c.places, c.here)}));
  made.offsets = v.offsets.map(c => { const [x_m, y_m] = r.offsetM(...c.at, c.origin); return {...c, x_m, y_m}; });
  made.marks = v.marks.map(c => { const found = r.marks(c.rows); const stems = {};
    for (const [stem, m] of found) stems[stem] = {what: m.what, cut: m.cut, treated: m.treated};
    return {...c, stems, waiting: r.cutUntreated(found).sort()}; });
  return made; }"""


class Files(http.server.SimpleHTTPRequestHandler):
    """The page's own files, and the cases."""

    def do_GET(self):
        raw = (
            CASES.read_bytes()
            if self.path == "/vectors.json"
            else ((PAGE / "rules.js").read_bytes() if self.path == "/rules.js" else b"<!doctype html><title>x</title>")
        )
        kind = (
            "application/json"
            if self.path.endswith("json")
            else "text/javascript"
            if self.path.endswith("js")
            else "text/html"
        )
        self.send_response(200)
        self.send_header("Content-Type", kind)
        self.end_headers()
        self.wfile.write(raw)

    def log_message(self, *_):
        pass


def test_the_cases_are_those_of_the_core():
    """Whoever changes a rule of the core writes the cases anew."""
    assert json.loads(CASES.read_text()) == json.loads(json.dumps(vectors()))


@pytest.fixture
def address():
    """Where they are served."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Files)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


def test_the_phone_says_what_the_core_says(address, chromium):
    """Every case of every rule; distances to a billionth."""
    page = chromium.new_page()
    page.goto(address)
    made = page.evaluate(RUN)
    page.close()
    assert set(made) == set(vectors())
    for rule, cases in vectors().items():
        for ours, theirs in zip(cases, made[rule], strict=True):
            for name, value in ours.items():
                if isinstance(value, float):
                    assert math.isclose(value, theirs[name], rel_tol=1e-9, abs_tol=1e-9), (rule, name, ours)
                else:
                    assert value == theirs[name], (rule, name, ours, theirs)
