"""Words made out in the picture of a page, by Tesseract where it is installed."""

import csv
import io
import os
import shutil
import subprocess
from typing import Any

from stemward.label.reader import Line

DOTS_AN_INCH = 300
SECONDS_A_PAGE = 40
LEAST_SURE = 30.0
"""Words of which the program itself is less sure than this, of 100, are left out: engineering guess."""

_PLACE = ("left", "top", "width", "height")


def can_read_pictures() -> bool:
    """True if there is something here that makes out words in pictures."""
    return shutil.which("tesseract") is not None


def read_picture(page: Any, number: int) -> list[Line]:
    """The lines made out in a page's picture, with places in points; none where nothing was made out in time."""
    picture = page.render(scale=DOTS_AN_INCH / 72, grayscale=True).to_pil()
    raw = io.BytesIO()
    picture.save(raw, "PNG")
    try:
        done = subprocess.run(
            ["tesseract", "stdin", "stdout", "--dpi", str(DOTS_AN_INCH), "-l", "eng", "--psm", "3", "tsv"],
            input=raw.getvalue(), capture_output=True, timeout=SECONDS_A_PAGE, check=False,
            env={**os.environ, "OMP_THREAD_LIMIT": "1"},
        )  # fmt: skip
    except (OSError, subprocess.TimeoutExpired):
        return []
    return lines_from_table(done.stdout.decode("utf-8", "replace"), number) if done.returncode == 0 else []


def lines_from_table(table: str, number: int) -> list[Line]:
    """Tesseract's table of words as lines: words of one line of one paragraph put together."""
    rows = csv.DictReader(io.StringIO(table), delimiter="\t", quoting=csv.QUOTE_NONE)
    lines: dict[tuple[str, str, str], list[tuple[str, tuple[float, float, float, float]]]] = {}
    for row in rows:
        word = (row.get("text") or "").strip()
        try:
            sure = float(row["conf"])
            left, top, width, height = (
                float(row[name]) * 72 / DOTS_AN_INCH for name in ("left", "top", "width", "height")
            )
        except (KeyError, TypeError, ValueError):
            continue
        if word and sure >= LEAST_SURE:
            key = (row["block_num"] or "", row["par_num"] or "", row["line_num"] or "")
            lines.setdefault(key, []).append((word, (left, top, left + width, top + height)))
    found = []
    for words in lines.values():
        boxes = [box for _, box in words]
        place = (boxes[0][0], min(b[1] for b in boxes), boxes[-1][2], max(b[3] for b in boxes))
        text = " ".join(word for word, _ in words)
        heights = sorted(b[3] - b[1] for b in boxes)
        found.append(Line(number, text, place, heights[len(heights) // 2], picture=True))
    return found
