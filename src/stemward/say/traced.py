"""The sums behind a plan in words: a heading, what is done, and the figures of one stem."""

from collections.abc import Mapping, Sequence
from typing import Any

from stemward.handbook import Book
from stemward.plan.effort import THORNS, seconds_of
from stemward.plan.traced import Given, Sum, traced
from stemward.say import Speaker
from stemward.say.en import traced as words
from stemward.say.en.paper import GRADES
from stemward.say.numbers import System, bare, figure

SUMMED = ("total", "spread_low", "spread_high")
"""Formulae whose answer is of all stems together."""


def sum_words(plan: Mapping[str, Any], treatment: str, row: int, units: System) -> list[dict[str, Any]]:
    """Each step for one stem of a treatment: title, what it is, what goes in with its source, what comes out."""
    item = next(one for one in plan["treatments"] if one["id"] == treatment)
    said = [_said(one, int(item["stems"]), units) for one in traced(plan, treatment, row)]
    return [one for one in said if one]


def _said(one: Sum, stems: int, units: System) -> dict[str, Any] | None:
    name = one.formula
    if name == "times" and not any(g.name == "count" and g.kind == "read" for g in one.given):
        name = "times_learned"
    if name not in words.FORMULAE or (one.unit not in words.UNITS and one.unit):
        return None
    title, what = words.FORMULAE[name]
    given = [_given(g, units, words.LEARNED if name == "times_learned" else words.INPUTS) for g in one.given]
    return {
        "title": title,
        "what": what,
        "given": given,
        "value": figure(words.UNITS.get(one.unit, ""), one.value, units),
        "of_all": words.OF_ALL.format(stems=stems) if one.formula in SUMMED else "",
    }


def _given(one: Given, units: System, names: Mapping[str, str]) -> dict[str, str]:
    name = _suffixed(one)
    shown = words.MANY if one.value is None else figure(name, one.value, units)
    if one.value is not None and bare(name) == name:
        shown = f"{one.value:.3g}"
    source = words.KINDS.get(one.kind, "")
    if one.kind == "cited":
        source = _source(one.grade, one.source)
    return {"name": names.get(one.name, one.name), "value": shown, "from": source}


def _source(grade: str, source: str) -> str:
    """Who says so; that a number has no source is said once."""
    said = GRADES.get(grade, grade)
    return f"{said}: {source}" if source and "no source" not in source else said


def _suffixed(one: Given) -> str:
    """A name by whose unit the figure is shown: its own, else that of what is cited."""
    return one.name if "_" in one.name else f"{one.name}{words.UNITS.get(one.unit, '')}"


def kill_lines(speaker: Speaker, treatment: str) -> list[str]:
    """How many of ten stems die, and out of what that is reckoned; with the rows of the books and who wrote them."""
    item = next(one for one in speaker.plan["treatments"] if one["id"] == treatment)
    seen = item["behind"]
    lines = [words.KILL_BOOKS.format(stems=seen["worth"]) if seen["worth"] else words.KILL_NO_BOOKS]
    if seen["own_seen"]:
        lines.append(words.KILL_OWN.format(dead=seen["own_dead"], seen=seen["own_seen"]))
    lines.append(speaker.behind(item))
    lines += [
        words.KILL_ROW.format(kind=row["kind"], typed=row["typed"] or row["rating"], source=row["source"])
        for row in seen["rows"]
    ]
    return lines


def pace_lines(speaker: Speaker, treatment: str, row: int, book: Book) -> list[str]:
    """How long such a stem takes at the usual paces, and who says so; none where no pace is on record."""
    item = next(one for one in speaker.plan["treatments"] if one["id"] == treatment)
    sizes = speaker.plan["columns"][treatment].get("diameter_cm")
    if sizes is None:
        return []
    low, high = (float(ends[0]) for ends in seconds_of(item["how"], item["species"], sizes[row : row + 1], [1], book))
    if not high:
        return []
    said = [words.PACE.format(low=3600 / high, high=3600 / low)]
    used = (one.cited for one in book.paces if one.method == item["how"] and one.low_cm <= sizes[row] < one.high_cm)
    said += [_source(one.grade, one.source) for one in used]
    if any(one.hazard == THORNS for one in book.hazards(item["species"])):
        said.append(words.THORNS)
    return said


def stem_names(plan: Mapping[str, Any], treatment: str, units: System) -> Sequence[tuple[str, str]]:
    """Stems of a treatment to choose from: id, and id with its size."""
    columns = plan["columns"][treatment]
    sizes = columns.get("diameter_cm", [None] * len(columns["id"]))
    return [
        (stem, words.STEM.format(stem=stem, size=figure("diameter_cm", size, units)) if size else stem)
        for stem, size in zip(columns["id"], sizes, strict=True)
    ]
