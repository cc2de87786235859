"""Two days in the woods without a signal: 500 stems, three pages killed, the browser once; then a bad network."""

import contextlib
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from playwright.sync_api import Error

from field.faulty import Faulty
from field.phones import Joined
from web.conftest import CHROMIUM, Served

STEMS = 500
BEGUN = 1_790_000_000_000  # in September 2026
PAGES_KILLED, BROWSER_KILLED = (90, 260, 430), 340
NIGHT = 250
"""After which stem the pages are killed, the browser is, and the night comes."""
MAKE = """
import datetime, os, sys, uuid
os.environ["DJANGO_SETTINGS_MODULE"] = "stemward.web.settings"
import django; django.setup()
from django.core.management import call_command
call_command("migrate", verbosity=0)
from stemward.gate import demo
from stemward.gate.pieces import STEM_COLUMNS, Parts, split
from stemward.notebook.changes import Asked, begin
parts, more = split(demo.texts()), []
for n in range(int(sys.argv[1])):
    cells = {"id": f"more{n}", "patch": "rim", "species": "tree-of-heaven", "x_m": str(80 + n % 25 * 5), "y_m": str(280 + n // 25),
             "diameter_in": "3", "measured_at": "breast", "stems": "1", "state": "standing"}
    more.append(tuple(cells.get(name, "") for name in STEM_COLUMNS))
begin(Asked(str(uuid.uuid4()), str(uuid.uuid4()), "owner", "begin"), Parts(parts.pieces, [*parts.stems, *more], parts.entries),
      datetime.datetime(2026, 9, 1, tzinfo=datetime.UTC), example=True)
"""


class Wild:
    """A phone whose profile lies in a folder, so that it outlives its browser."""

    def __init__(self, play, profile, home):
        self.play, self.profile, self.home, self.ms = play, profile, home, BEGUN
        self.context = self.page = None

    def start(self, address=""):
        """Start the browser, without a signal but for the first time."""
        self.context = self.play.chromium.launch_persistent_context(
            str(self.profile), executable_path=CHROMIUM, viewport={"width": 360, "height": 616},
            args=["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
        )  # fmt: skip
        self.context.clock.install(time=self.ms / 1000)
        if not address:
            self.context.set_offline(True)
        self.open(address)

    def open(self, address=""):
        """Open the page at the moment that it is."""
        self.page = self.context.new_page()
        self.page.set_default_timeout(20_000)
        self.page.goto(address or f"{self.home}/phone/")
        self.page.wait_for_selector("body[data-ready=yes]")

    def forward(self, seconds):
        """Time goes by."""
        self.ms += int(seconds * 1000)
        self.page.clock.fast_forward(int(seconds * 1000))

    def kill_page(self):
        """Its renderer dies."""
        with contextlib.suppress(Error):
            self.page.goto("chrome://crash", timeout=3000)
        self.page.close()
        self.open()

    def kill_browser(self):
        """All its processes die at once."""
        found = subprocess.run(
            ["pgrep", "-f", f"user-data-dir={self.profile}"], capture_output=True, text=True, check=False
        )
        for pid in found.stdout.split():
            with contextlib.suppress(ProcessLookupError):
                os.kill(int(pid), signal.SIGKILL)
        time.sleep(0.5)
        for name in ("SingletonLock", "SingletonSocket", "SingletonCookie"):
            (Path(self.profile) / name).unlink(missing_ok=True)
        self.start()

    def mark(self):
        """One press of the clicker; done when the next number stands there, so on the disk."""
        before = self.page.inner_text("#card .head strong")
        self.page.evaluate("document.activeElement && document.activeElement.blur()")
        self.page.keyboard.press("PageDown")
        self.page.wait_for_function(
            "(was) => document.querySelector('#card .head strong')?.textContent !== was", arg=before
        )


@pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this computer")
def test_500_stems_over_two_days_through_crashes_and_a_bad_network(chromium, tmp_path, monkeypatch):
    """The notebook ends with exactly those, and the page says so."""
    monkeypatch.setenv("STEMWARD_ADDRESS", "https://notebook.example")
    folder = tmp_path / "notebook"
    env = {**os.environ, "STEMWARD_DATA": str(folder)}
    env.pop("DATABASE_URL", None)
    subprocess.run([sys.executable, "-c", MAKE, str(STEMS)], check=True, env=env)
    served = Served(folder)
    proxy = Faulty(int(served.home.rpartition(":")[2]), 5)
    office = chromium.new_context()
    play = chromium.browser_type
    try:
        page = office.new_page()
        page.goto(served.link())
        page.get_by_role("link", name="Quarry Hollow").first.click()
        page.wait_for_url("**/land/*/")
        joined = Joined(served, office, page.url)
        phone = Wild(type("P", (), {"chromium": play}), tmp_path / "profile", proxy.home)
        phone.start(f"{proxy.home}/phone/#join={joined.word()}")
        phone.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        phone.context.set_offline(True)
        phone.page.click("nav [data-tab=day]", delay=90)
        phone.page.locator("button[data-name=sheet]", has_text="tree-of-heaven").first.click(delay=90)
        phone.forward(1)
        phone.page.click("nav [data-tab=work]", delay=90)
        for n in range(1, STEMS + 1):
            phone.forward(14 * 3600 if n == NIGHT else 55)
            phone.mark()
            if n in PAGES_KILLED:
                phone.kill_page()
            if n == BROWSER_KILLED:
                phone.kill_browser()
        assert phone.page.inner_text("#waiting").startswith(f"{STEMS} waiting")
        assert not [row for row in joined.rows() if row["kind"] == "marked" and row.get("device")]
        proxy.calm = False
        phone.context.set_offline(False)
        phone.page.evaluate("dispatchEvent(new Event('online'))")
        until = time.monotonic() + 90
        while time.monotonic() < until and not phone.page.inner_text("#waiting").startswith("All sent"):
            phone.page.clock.run_for(5000)
            phone.page.wait_for_timeout(150)
        assert phone.page.inner_text("#waiting").startswith("All sent"), proxy.seen
        proxy.calm = True
        rows = [row for row in joined.rows() if row["kind"] == "marked" and row.get("device")]
        stems = [stem for row in rows for stem in row["body"]["rows"]]
        assert len(rows) == STEMS and len(set(stems)) == STEMS
        assert len({row["id"] for row in rows}) == STEMS
        assert len({row["at"][:10] for row in rows}) >= 2
        assert sum(count for fault, count in proxy.seen.items() if fault != "none") >= 5, proxy.seen
        phone.context.close()
    finally:
        office.close()
        proxy.close()
        served.end()
