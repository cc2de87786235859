"""Replace every check by one that never and by one that always finds something: exactly its own tests must fail.

    python tools/mutate_checks.py [CHECK ...]

Runs the tests of the checks once for each broken check. A test belongs to a check when its name holds the check's id
first in brackets. Exit status 1 if a broken check goes unseen, or if breaking it fails another check's tests.
"""

import contextlib
import io
import multiprocessing
import os
import re
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent
AT_ONCE = 2
TESTS = "tests/checks/test_each_check.py"


class Failed:
    """A plugin that keeps the names of the tests that ran and of those that failed."""

    def __init__(self) -> None:
        """Nothing has run yet."""
        self.ran = 0
        self.names: list[str] = []

    def pytest_runtest_logreport(self, report) -> None:
        """Keep what became of one test."""
        self.ran += report.when == "call"
        if report.failed:
            self.names.append(report.nodeid)


def failures(check: str, how: str) -> list[str]:
    """Names of the tests that fail with one check broken. Runs in a process of its own."""
    import pytest

    os.environ |= {"STEMWARD_BROKEN": f"{check}:{how}", "CI": ""}
    seen, said = Failed(), io.StringIO()
    with contextlib.redirect_stdout(said):
        pytest.main(
            [
                "-q",
                "-W",
                "ignore::pytest.PytestAssertRewriteWarning",
                "-p",
                "no:randomly",
                "-p",
                "no:cacheprovider",
                "--tb=no",
                TESTS,
            ],
            plugins=[seen],
        )
    if not seen.ran:
        raise RuntimeError(f"the tests did not run:\n{said.getvalue()[-2000:]}")
    return seen.names


def owner(name: str) -> str:
    """The id of the check a test belongs to."""
    found = re.search(r"\[([a-z-]+)", name)
    return found[1] if found else ""


def tried(pair: tuple[str, str]) -> str:
    """What came of one broken check, empty if exactly its own tests failed."""
    check, how = pair
    names = failures(check, how)
    foreign = [name for name in names if owner(name) != check]
    if not names:
        return f"{check} as {how}: no test fails"
    return f"{check} as {how}: fails {foreign[:3]}" if foreign else ""


def main() -> int:
    """Break each check both ways and say what came of it."""
    os.chdir(ROOT)
    sys.path.insert(0, str(ROOT / "src"))
    # What the tests lean on is imported once, here: a forked child starts from it in a tenth of the time.
    import hypothesis  # noqa: F401
    import pytest  # noqa: F401

    import stemward.gate.demo
    import stemward.gate.folder  # noqa: F401
    from stemward.checks import ALL

    wanted = sys.argv[1:] or [c.id for c in ALL]
    pairs = [(check, how) for check in wanted for how in ("never", "always")]
    with multiprocessing.get_context("fork").Pool(AT_ONCE, maxtasksperchild=1) as pool:
        wrong = [said for said in pool.imap(tried, pairs, chunksize=1) if said]
    for said in wrong:
        print(said)
    print(f"{len(pairs)} broken checks tried, {len(wrong)} not caught by exactly their own tests")
    return 1 if wrong else 0


if __name__ == "__main__":
    raise SystemExit(main())
