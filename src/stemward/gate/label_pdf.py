"""A label's PDF, read in a child process with little memory and time: such files come from anywhere."""

import base64
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import groupby
from pathlib import Path
from typing import Any

from stemward.label.reader import (
    Box,
    NotReadable,
    Place,
    Proposed,
    Sentence,
    lines_of,
    opened,
    plain,
    proposed_of,
    sentences_of,
    words_of,
)

MOST_BYTES = 64 * 1024 * 1024
MEMORY = 2 * 1024**3
SECONDS = 60
"""Address space, and processor and wall time of a child: engineering guesses; 120 pages take a second or two."""
SECONDS_FOR_PICTURES = 300
"""Wall time where words have to be made out in pictures: engineering guess; a page takes a few seconds."""
MOST_SCALE = 4.0


@dataclass(frozen=True, slots=True)
class PartText:
    """One standard part of a label as it stands there. top_pt: where on its page. text: a line a paragraph."""

    name: str
    heading: str
    page: int
    top_pt: float
    text: str


@dataclass(frozen=True, slots=True)
class LabelRead:
    """What was found in a label: facts proposed, how many pages it has, and its parts in order.

    pictures: True where words were made out in pictures of pages. sentences: all of them, in reading order. sizes:
    width and height of each page in points.
    """

    proposed: tuple[Proposed, ...]
    pages: int
    parts: tuple[PartText, ...] = ()
    pictures: bool = False
    sentences: tuple[Sentence, ...] = ()
    sizes: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Word:
    """A word and its place, in points from the page's upper left corner."""

    text: str
    box: Box


@dataclass(frozen=True, slots=True)
class PageWords:
    """A page's size in points and its words."""

    width_pt: float
    height_pt: float
    words: tuple[Word, ...]


def read_label(raw: bytes) -> LabelRead:
    """Read a label in a process of its own. Raises NotReadable with what is wrong: also "too_large", "damaged" for a
    file at which the reader fails, and "slow" for one that takes too long."""
    answer = _asked(raw, "read")
    return LabelRead(
        tuple(proposed_from(row) for row in answer["proposed"]),
        answer["pages"],
        tuple(PartText(**row) for row in answer["parts"]),
        answer["pictures"],
        tuple(Sentence(**{**row, "boxes": tuple(_box(b) for b in row["boxes"])}) for row in answer["sentences"]),
        tuple((w, h) for w, h in answer["sizes"]),
    )


def page_words(raw: bytes, page: int) -> PageWords:
    """A page's words with their places. page: from 1. Raises NotReadable: also "no_page"."""
    answer = _asked(raw, "words", str(page))
    return PageWords(
        answer["width_pt"], answer["height_pt"], tuple(Word(text, _box(box)) for text, box in answer["words"])
    )


def page_picture(raw: bytes, page: int, scale: float = 1.5) -> bytes:
    """A page as PNG at 72 dots an inch times the scale. page: from 1. Raises NotReadable: also "no_page"."""
    return base64.b64decode(_asked(raw, "picture", str(page), str(min(scale, MOST_SCALE)))["png"])


@dataclass(frozen=True, slots=True)
class Hit:
    """Words that were searched for: page, places on it, and what stands around them."""

    page: int
    boxes: tuple[Box, ...]
    around: str


def search(raw: bytes, words: str) -> list[Hit]:
    """Where some words stand in a label, capitals or not, at most 200 places. Raises NotReadable."""
    if not words.strip():
        return []
    rows = _asked(raw, "search", words.strip()[:100])["hits"]
    return [Hit(row["page"], tuple(_box(b) for b in row["boxes"]), row["around"]) for row in rows]


def _asked(raw: bytes, *words: str) -> dict[str, Any]:
    """What a child answers that is given the file."""
    if len(raw) > MOST_BYTES:
        raise NotReadable("too_large")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "label.pdf"
        path.write_bytes(raw)
        keep = {key: os.environ[key] for key in ("PATH", "LD_LIBRARY_PATH", "SYSTEMROOT") if key in os.environ}
        try:
            done = subprocess.run(
                [sys.executable, "-m", "stemward.gate.label_pdf", str(path), *words], capture_output=True,
                timeout=SECONDS_FOR_PICTURES if words[0] == "read" else SECONDS,
                env={**keep, "PYTHONPATH": os.pathsep.join(sys.path)}, cwd=folder, check=False,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            raise NotReadable("slow") from None
    if done.returncode != 0:
        raise NotReadable("slow" if done.returncode in (-9, -24) else "damaged")
    answer: dict[str, Any] = json.loads(done.stdout)
    if "wrong" in answer:
        raise NotReadable(answer["wrong"])
    return answer


def _box(row: Sequence[float]) -> Box:
    return row[0], row[1], row[2], row[3]


def proposed_from(row: Mapping[str, Any]) -> Proposed:
    """A proposed fact from its row as data: what a child sends, and what is kept of a reading."""
    scope = tuple((name, tuple(values)) for name, values in row["scope"])
    boxes = tuple(_box(b) for b in row["boxes"])
    also = tuple(
        Place(p["page"], tuple(_box(b) for b in p["boxes"]), p["words"], p.get("sure", "sure"))
        for p in row.get("also", ())
    )
    return Proposed(**{**row, "boxes": boxes, "scope": scope, "also": also})


# in the child


def _limit() -> None:
    if sys.platform != "win32":
        import resource

        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        if sys.platform == "linux":
            resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def _read(raw: bytes) -> dict[str, Any]:
    from stemward.gate.label_ocr import can_read_pictures, read_picture

    lines, pages = lines_of(raw, read_picture if can_read_pictures() else None)
    sentences = sentences_of(lines)
    found = [asdict(one) for one in proposed_of(sentences)]
    pictures = any(line.picture for line in lines)
    said = [asdict(one) for one in sentences]
    return {
        "proposed": found, "pages": pages, "parts": parts_of(sentences), "pictures": pictures, "sentences": said,
        "sizes": [page.get_size() for page in opened(raw)],
    }  # fmt: skip


def parts_of(sentences: Sequence[Sentence]) -> list[dict[str, Any]]:
    """The parts of a label in order, as rows of PartText."""
    found = []
    for (name, heading), group in groupby(sentences, key=lambda s: (s.part, s.heading)):
        own = list(group)
        text = "".join(("\n" if n and s.opens else " " if n else "") + s.text for n, s in enumerate(own))
        top_pt = own[0].boxes[0][1] if own[0].boxes else 0.0
        found.append({"name": name, "heading": heading, "page": own[0].page, "top_pt": top_pt, "text": text})
    return found


def _page(raw: bytes, number: str) -> Any:
    document = opened(raw)
    if not 1 <= int(number) <= len(document):
        raise NotReadable("no_page")
    return document[int(number) - 1]


def _words(raw: bytes, number: str) -> dict[str, Any]:
    page = _page(raw, number)
    return {"width_pt": page.get_width(), "height_pt": page.get_height(), "words": words_of(page)}


def _picture(raw: bytes, number: str, scale: str) -> dict[str, Any]:
    import io

    picture = _page(raw, number).render(scale=float(scale)).to_pil()
    out = io.BytesIO()
    picture.save(out, "PNG", optimize=False)
    return {"png": base64.b64encode(out.getvalue()).decode()}


MOST_HITS = 200


def _search(raw: bytes, words: str) -> dict[str, Any]:
    document = opened(raw)
    hits: list[dict[str, Any]] = []
    for number in range(len(document)):
        page = document[number]
        textpage, height = page.get_textpage(), page.get_height()
        searcher = textpage.search(words, match_case=False)
        while len(hits) < MOST_HITS and (at := searcher.get_next()):
            boxes = []
            for n in range(textpage.count_rects(*at)):
                left, bottom, right, top = textpage.get_rect(n)
                boxes.append((left, height - top, right, height - bottom))
            start = max(0, at[0] - 40)
            around = textpage.get_text_range(start, min(at[1] + 80, textpage.count_chars() - start))
            hits.append({"page": number + 1, "boxes": boxes, "around": plain(around)})
    return {"hits": hits}


ACTS: dict[str, Callable[..., dict[str, Any]]] = {
    "read": _read,
    "words": _words,
    "picture": _picture,
    "search": _search,
}


def main(path: str, act: str, *words: str) -> int:
    """In the child: read the file and print what was found."""
    _limit()
    try:
        answer = ACTS[act](Path(path).read_bytes(), *words)
    except NotReadable as wrong:
        answer = {"wrong": wrong.message}
    sys.stdout.write(json.dumps(answer))
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main(*sys.argv[1:]))
    except Exception as problem:
        # The parent says a sentence; nothing of the file's content goes to anyone's screen.
        sys.stderr.write(type(problem).__name__)
        sys.exit(1)
