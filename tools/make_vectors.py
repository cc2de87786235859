"""Writes the cases that the phone's rules are held against. With --check: fails if the file is not as it would be.

python tools/make_vectors.py [--check]
"""

import json
import sys
from pathlib import Path

from stemward.field.vectors import vectors

FILE = Path(__file__).resolve().parents[1] / "tests" / "field" / "vectors.json"


def main() -> int:
    """Write, or compare."""
    text = json.dumps(vectors(), indent=1, sort_keys=True) + "\n"
    if "--check" in sys.argv:
        if not FILE.exists() or FILE.read_text() != text:
            print(f"{FILE.name} is stale: run python tools/make_vectors.py and look at what changed.")
            return 1
        return 0
    FILE.write_text(text)
    return 0


if __name__ == "__main__":
    sys.exit(main())
