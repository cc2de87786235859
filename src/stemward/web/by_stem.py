"""A look back stem by stem: one letter a stem, typed as fast as one walks, and what it comes to as counts."""

import re
from collections.abc import Mapping
from typing import Any

from stemward.gate.text import clean
from stemward.kinds import Tract
from stemward.ledger.revisits import Work
from stemward.notebook.changes import Refused
from stemward.say.numbers import System, figure
from stemward.web.day_form import measured

FIELD = "stem-"
LETTERS = {
    "d": "dead", "dead": "dead", "b": "resprouting", "back": "resprouting", "g": "gone", "gone": "gone",
    "n": "not_found", "m": "untreated", "missed": "untreated",
}  # fmt: skip
EXPECTED = "Write d, b, g, n or m; after b the sprouts and the tallest, such as b 5 2 ft."
NOTHING = "No stem has a letter. One is enough; a stem without one was not looked at."


def stems_of(work: Work, tract: Tract, units: System, typed: Mapping[str, str]) -> list[dict[str, Any]]:
    """The stems of a work in the order of their names: name, plants in it, size in words, what was typed."""
    size = dict(zip(tract.stems.id.tolist(), tract.stems.diameter_cm.tolist(), strict=True))
    counts = counts_of(work, tract)
    return [
        {"id": one, "count": counts[one], "size": figure("size_cm", size[one], units) if one in size else "",
         "value": typed.get(FIELD + one, "")}
        for one in sorted(work.rows, key=natural)
    ]  # fmt: skip


def counts_of(work: Work, tract: Tract) -> dict[str, int]:
    """Plants of each stem or clump that were treated in a work."""
    found = dict.fromkeys(work.rows, 0)
    for entry in tract.entries:
        if entry.id in work.entries:
            for stem, count in entry.body.get("rows", {}).items():
                found[stem] = found.get(stem, 0) + int(count)
    return found


def natural(name: str) -> list[tuple[int, int, str]]:
    """b2 before b10."""
    return [(1, int(part), "") if part.isdigit() else (0, 0, part) for part in re.split(r"(\d+)", name) if part]


def seen_by_stem(work: Work, tract: Tract, typed: Mapping[str, str]) -> dict[str, Any]:
    """Counts of a look, with which stems are dead and which alive. Raises Refused with every stem not understood."""
    counts, lines = counts_of(work, tract), []
    body: dict[str, Any] = {"dead": 0, "resprouting": 0}
    dead: dict[str, int] = {}
    alive: dict[str, int] = {}
    sprouts: list[int] = []
    tallest: list[float] = []
    for stem in sorted(work.rows, key=natural):
        text = typed.get(FIELD + stem, "").strip()
        if not text:
            continue
        try:
            what, many, tall = _letter(text)
        except Refused as refused:
            lines += [f"{stem}: {line}" for line in refused.lines]
            continue
        body[what] = body.get(what, 0) + counts[stem]
        if what in ("dead", "resprouting"):
            (dead if what == "dead" else alive)[stem] = counts[stem]
        sprouts += [many] if many is not None else []
        tallest += [tall] if tall is not None else []
    if lines:
        raise Refused(*lines)
    if not sum(body.values()):
        raise Refused(NOTHING)
    body |= {"dead_rows": dead} if dead else {}
    body |= {"alive_rows": alive} if alive else {}
    body |= {"sprouts": round(sum(sprouts) / len(sprouts), 2)} if sprouts else {}
    body |= {"tallest_m": round(max(tallest), 4)} if tallest else {}
    return body


def _letter(text: str) -> tuple[str, int | None, float | None]:
    """What a stem's few signs say: state, sprouts, tallest in metres. Raises Refused."""
    word, _, rest = text.casefold().partition(" ")
    what = LETTERS.get(word) if text.casefold() != "not found" else "not_found"
    rest = "" if text.casefold() == "not found" else rest.strip()
    if what is None or (rest and what != "resprouting"):
        raise Refused(f"not understood: {clean(text)}. {EXPECTED}")
    if not rest:
        return what, None, None
    if re.fullmatch(r"\d{1,3}", rest):
        return what, int(rest), None
    both = re.fullmatch(r"(\d{1,3}) +(\d.*)", rest)
    tall = measured(both[2] if both else rest, "length", "m", "tallest", "ft")
    return what, int(both[1]) if both else None, tall
