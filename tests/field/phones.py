"""A phone in tests: a narrow browser of its own that was let in, with a clock that can be put forward."""

import json
import os
import sqlite3
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from web.conftest import Served

ADDRESS = "https://notebook.example"


@dataclass
class Joined:
    """A notebook with the example: its server, the computer's browser, the land's address."""

    served: Served
    office: Any
    land: str

    def word(self) -> str:
        """A word that lets one phone in, taken from the code's address."""
        page = self.office.new_page()
        page.goto(f"{self.land}phone")
        page.get_by_role("button", name="Show a code to scan").click()
        link = page.locator("section code").first.inner_text()
        page.close()
        assert link.startswith(f"{ADDRESS}/phone/#join=")
        return link.partition("#join=")[2]

    def rows(self) -> list[dict[str, Any]]:
        """Every entry in the notebook, in the order in which it was written."""
        with sqlite3.connect(self.served.folder / "notebook.sqlite3") as connection:
            return [json.loads(row) for (row,) in connection.execute("SELECT row FROM notebook_entry ORDER BY id")]


@contextmanager
def example_with_phones(chromium, folder):
    """A server of its own whose example phones may change."""
    before = os.environ.get("STEMWARD_ADDRESS")
    os.environ["STEMWARD_ADDRESS"] = ADDRESS
    served = Served(folder)
    office = chromium.new_context()
    try:
        page = office.new_page()
        page.goto(served.link())
        page.get_by_role("button", name="Look round an example").click()
        page.wait_for_url("**/land/*/")
        land = page.url
        page.close()
        yield Joined(served, office, land)
    finally:
        office.close()
        served.end()
        os.environ.pop("STEMWARD_ADDRESS")
        if before is not None:
            os.environ["STEMWARD_ADDRESS"] = before


class Phone:
    """A phone that opened the page, joined or not."""

    def __init__(self, chromium, joined, join=True, context=None, **options):
        self.context = context or chromium.new_context(
            viewport={"width": 360, "height": 616}, has_touch=True, **options
        )
        self.page = self.context.new_page()
        self.page.set_default_timeout(10_000)
        self.wrong = []
        self.page.on("pageerror", lambda error: self.wrong.append(str(error)))
        self.page.clock.install()
        self.home = f"{joined.served.home}/phone/"
        self.page.goto(f"{self.home}#join={joined.word()}" if join else self.home)
        self.ready()

    def ready(self):
        """Wait until it has drawn itself, and its files are kept for the time without a signal."""
        self.page.wait_for_selector("body[data-ready=yes]", timeout=20_000)
        self.page.evaluate("navigator.serviceWorker.ready.then(() => true)")

    def close(self):
        """Put it away; nothing went wrong in its scripts."""
        self.context.close()
        assert self.wrong == []

    def forward(self, seconds):
        """Put its clock forward, and let what waits for the time run."""
        self.page.clock.fast_forward(int(seconds * 1000))
        self.page.clock.run_for(1100)

    def press(self, what):
        """Press as a thumb does, no sooner than a moment after the last press."""
        self.page.clock.fast_forward(800)
        self.page.locator(what).first.click(delay=90)
        self.page.wait_for_timeout(60)
        said = self.page.inner_text("body")
        assert "null" not in said and "undefined" not in said and "[object" not in said

    def choose(self, plants):
        """Choose a treatment by its words and go to work."""
        self.press("nav [data-tab=day]")
        self.press(f'button[data-name=sheet]:has-text("{plants}")')
        self.press("nav [data-tab=work]")

    def number(self):
        """The number on the card."""
        return self.page.inner_text("#card .number")

    def settles(self, number):
        """Wait until the card shows a number."""
        self.page.wait_for_function(
            "(n) => (document.querySelector('#card .number') || {}).textContent === n", arg=number
        )
        return True

    def sent(self, timeout=10_000):
        """Wait until the page says that all is sent."""
        self.page.clock.run_for(2000)
        self.page.wait_for_function(
            "() => document.getElementById('waiting')?.textContent.startsWith('All sent')", timeout=timeout
        )

    def device(self):
        """Its name in the rows."""
        return self.page.evaluate(
            """async () => (await import('/phone/store.js')).get('settings').then(s => s.device)"""
        )


def rows_of(joined, phone):
    """What the notebook has of this phone."""
    device = phone.device()
    return [row for row in joined.rows() if row.get("device") == device]
