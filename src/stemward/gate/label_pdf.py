"""A label's PDF, read in a child process with little memory and time: such files come from anywhere."""

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from stemward.gate.fields import MOST_SIGNS
from stemward.label import KINDS
from stemward.label.facts import FactKind
from stemward.label.reader import NotReadable, Proposed, lines_of, propose
from stemward.units import UnitError, read

MOST_BYTES = 64 * 1024 * 1024
MEMORY = 2 * 1024**3
SECONDS = 60
"""Address space, and processor and wall time of a child: engineering guesses; 120 pages take a second or two."""


@dataclass(frozen=True, slots=True)
class LabelRead:
    """What was found in a label: facts proposed, and how many pages it has."""

    proposed: tuple[Proposed, ...]
    pages: int


def read_label(raw: bytes) -> LabelRead:
    """Read a label in a process of its own. Raises NotReadable with what is wrong: also "too_large", "damaged" for a
    file at which the reader fails, and "slow" for one that takes too long."""
    if len(raw) > MOST_BYTES:
        raise NotReadable("too_large")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "label.pdf"
        path.write_bytes(raw)
        keep = {key: os.environ[key] for key in ("PATH", "LD_LIBRARY_PATH", "SYSTEMROOT") if key in os.environ}
        try:
            done = subprocess.run(
                [sys.executable, "-m", "stemward.gate.label_pdf", str(path)], capture_output=True, timeout=SECONDS,
                env={**keep, "PYTHONPATH": os.pathsep.join(sys.path)}, cwd=folder, check=False,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            raise NotReadable("slow") from None
    if done.returncode != 0:
        raise NotReadable("damaged")
    answer = json.loads(done.stdout)
    if "wrong" in answer:
        raise NotReadable(answer["wrong"])
    return LabelRead(tuple(_proposed(row) for row in answer["proposed"]), answer["pages"])


def usable(found: Iterable[Proposed]) -> list[Proposed]:
    """Those proposed facts whose words a shelf can hold: figures with a unit, choices of the list, text."""
    return [one for one in found if one.kind in KINDS and _fits(KINDS[one.kind], one.value)]


def _fits(kind: FactKind, value: str) -> bool:
    if kind.value == "number":
        try:
            read(value, kind.dimension, "" if kind.dimension == "count" else None)
        except UnitError:
            return False
        return True
    if kind.value == "yes-no":
        return value in ("yes", "no")
    return value in kind.choices if kind.choices else 0 < len(value) <= MOST_SIGNS


def _proposed(row: Mapping[str, Any]) -> Proposed:
    boxes = tuple((b[0], b[1], b[2], b[3]) for b in row["boxes"])
    scope = tuple((name, tuple(values)) for name, values in row["scope"])
    return Proposed(**{**row, "boxes": boxes, "scope": scope})


def _limit() -> None:
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        if sys.platform == "linux":
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def main(path: str) -> int:
    """In the child: read the file and print what was found."""
    _limit()
    try:
        lines, pages = lines_of(Path(path).read_bytes())
    except NotReadable as wrong:
        sys.stdout.write(json.dumps({"wrong": wrong.message}))
        return 0
    found = [asdict(one) for one in propose(lines)]
    sys.stdout.write(json.dumps({"proposed": found, "pages": pages}))
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1]))
    except Exception as problem:
        # The parent says a sentence; nothing of the file's content goes to anyone's screen.
        sys.stderr.write(type(problem).__name__)
        sys.exit(1)
