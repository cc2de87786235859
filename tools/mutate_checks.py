"""Replace every check by one that never and by one that always finds something: exactly its own tests must fail.

    python tools/mutate_checks.py [CHECK ...]

Runs the tests of the checks once for each broken check. A test belongs to a check when its name holds the check's id
first in brackets. Exit status 1 if a broken check goes unseen, or if breaking it fails another check's tests.
"""

import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).parent.parent
AT_ONCE = 2


def failures(check: str, how: str) -> list[str]:
    """Names of the tests that fail with one check broken."""
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "-p",
        "no:randomly",
        "-p",
        "no:cacheprovider",
        "--tb=no",
        "tests/checks/test_each_check.py",
    ]
    env = {**os.environ, "STEMWARD_BROKEN": f"{check}:{how}", "CI": ""}
    ran = subprocess.run(command, cwd=ROOT, env=env, capture_output=True, text=True)
    if not re.search(r"\d+ (passed|failed)", ran.stdout):
        raise SystemExit(f"the tests did not run:\n{ran.stdout[-2000:]}{ran.stderr[-2000:]}")
    return re.findall(r"^FAILED (\S.*?)(?: - .*)?$", ran.stdout, re.M)


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
    sys.path.insert(0, str(ROOT / "src"))
    from stemward.checks import ALL

    wanted = sys.argv[1:] or [c.id for c in ALL]
    pairs = [(check, how) for check in wanted for how in ("never", "always")]
    with ThreadPoolExecutor(AT_ONCE) as pool:
        wrong = [said for said in pool.map(tried, pairs) if said]
    for said in wrong:
        print(said)
    print(f"{len(pairs)} broken checks tried, {len(wrong)} not caught by exactly their own tests")
    return 1 if wrong else 0


if __name__ == "__main__":
    raise SystemExit(main())
