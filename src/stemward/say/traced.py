"""The sums behind a plan in words: a heading, what is done, and the figures of one stem."""

from collections.abc import Mapping, Sequence
from typing import Any

from stemward.plan.traced import Given, Sum, traced
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
        grade = GRADES.get(one.grade, one.grade)
        # A number without a source says so itself; said once is enough.
        source = f"{grade}: {one.source}" if one.source and "no source" not in one.source else grade
    return {"name": names.get(one.name, one.name), "value": shown, "from": source}


def _suffixed(one: Given) -> str:
    """A name by whose unit the figure is shown: its own, else that of what is cited."""
    return one.name if "_" in one.name else f"{one.name}{words.UNITS.get(one.unit, '')}"


def stem_names(plan: Mapping[str, Any], treatment: str, units: System) -> Sequence[tuple[str, str]]:
    """Stems of a treatment to choose from: id, and id with its size."""
    columns = plan["columns"][treatment]
    sizes = columns.get("diameter_cm", [None] * len(columns["id"]))
    return [
        (stem, words.STEM.format(stem=stem, size=figure("diameter_cm", size, units)) if size else stem)
        for stem, size in zip(columns["id"], sizes, strict=True)
    ]
