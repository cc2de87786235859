"""Fixtures that several rooms' tests share, and the rule that in CI a skip is a failure."""

import datetime
import os
import shutil
from pathlib import Path

import pytest

from stemward.gate import folder
from stemward.gate.demo import texts
from stemward.gate.folder_write import write_texts
from stemward.handbook import load
from stemward.label import KINDS

AS_OF = datetime.date(2026, 10, 10)


@pytest.hookimpl(hookwrapper=True)
def pytest_runtest_makereport(item, call):
    """In CI everything the tests need is there, so a skipped test is a broken one."""
    outcome = yield
    report = outcome.get_result()
    if report.skipped and os.environ.get("CI") == "true":
        report.outcome = "failed"
        report.longrepr = f"skipped in CI: {report.longrepr}"


@pytest.fixture(scope="session")
def book():
    """The packaged handbook."""
    return load()


@pytest.fixture
def demo_folder(tmp_path):
    """Quarry Hollow in a folder of its own."""
    path = tmp_path / "quarry-hollow"
    write_texts(texts(), path)
    return path


def read_folder(path: Path):
    """A tract folder as read by the command line."""
    return folder.read(path, load().find_species, KINDS)


@pytest.fixture(scope="session")
def demo_tract(tmp_path_factory):
    """Quarry Hollow as a tract."""
    path = tmp_path_factory.mktemp("demo") / "quarry-hollow"
    write_texts(texts(), path)
    return read_folder(path).tract


@pytest.fixture(scope="session")
def chromium():
    """One browser for all tests; without one they are skipped by name."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        pytest.skip("no Chromium on this computer")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=found,
            args=["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
        )
        yield browser
        browser.close()
