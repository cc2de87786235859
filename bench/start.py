"""How long help takes against a bare interpreter, and the demo's plan with its PDF, warm.

python bench/start.py
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

TIMES = 15


def seconds(*command: str) -> float:
    """Median wall time of a command."""
    taken = []
    for _ in range(TIMES):
        start = time.perf_counter()
        subprocess.run(command, capture_output=True, check=False)
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def main() -> None:
    """Measure and print."""
    program = str(Path(sys.executable).parent / "stemward")
    bare, helped = seconds(sys.executable, "-c", "pass"), seconds(program, "--help")
    print(f"help {helped * 1000:.0f} ms, bare interpreter {bare * 1000:.0f} ms, ratio {helped / bare:.1f}")
    with tempfile.TemporaryDirectory() as temp:
        os.chdir(temp)
        subprocess.run([program, "demo", "q"], capture_output=True, check=True)
        plan = seconds(program, "plan", "q", "--as-of", "2026-10-10", "--pdf", "q.pdf", "--json", "q.json")
    print(f"demo plan with PDF and JSON {plan:.2f} s, ratio to a bare interpreter {plan / bare:.0f}")


if __name__ == "__main__":
    main()
