"""The sums behind one stem of a plan: each step of its trace, with what goes into it and who says so."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Given:
    """What goes into a sum. value: at this stem; None where it is of many stems together. kind: "read" from the stems,
    "chosen" for the way, "sum" of a step before, "cited" with source and grade, "fixed" for a bare number."""

    name: str
    value: float | None
    kind: str
    source: str = ""
    grade: str = ""
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Sum:
    """One step. id: as in the plan's trace. value: at this stem, or of all. each: True where every stem has its own."""

    id: str
    formula: str
    value: float
    unit: str
    each: bool
    given: tuple[Given, ...]


def rows_of(plan: Mapping[str, Any], treatment: str) -> list[str]:
    """Ids of the stems of a treatment, in the order of its columns. KeyError for one without stems."""
    return [str(one) for one in plan["columns"][treatment]["id"]]


def traced(plan: Mapping[str, Any], treatment: str, row: int) -> list[Sum]:
    """The steps of a treatment as they come out for one stem, then those of its ingredients on the ground.

    row: from 0, as in `rows_of`. Steps that have a value for each of other stems too are left out where they are not
    of one of these.
    """
    item = next(one for one in plan["treatments"] if one["id"] == treatment)
    loads = [f"load.{name}.greatest_g_m2" for name in item["ae_g"]]
    steps = {step["id"]: step for step in plan["steps"]}
    own = [step for key, step in steps.items() if key.startswith(f"{treatment}.") or key in loads]
    cited = {one["id"]: one for one in plan["cited"]}
    count = len(rows_of(plan, treatment))
    found = []
    for step in own:
        held = step["value"]
        value = None if isinstance(held, list) and len(held) != count else _at(held, row)
        if value is not None:
            given = tuple(
                _given(name, reference, plan, steps, cited, row if isinstance(step["value"], list) else None)
                for name, reference in step["inputs"].items()
            )
            found.append(Sum(step["id"], step["formula"], value, step["unit"], isinstance(step["value"], list), given))
    return found


def _at(value: Any, row: int | None) -> float | None:
    """A step's value at a stem; None for one with a value for each stem where none is asked for."""
    if not isinstance(value, list):
        return float(value)
    return float(value[row]) if row is not None else None


def _given(
    name: str, reference: Any, plan: Mapping[str, Any], steps: Mapping[str, Any], cited: Mapping[str, Any],
    row: int | None,
) -> Given:  # fmt: skip
    """row: None for a step of all stems together."""
    if not isinstance(reference, str):
        return Given(name, float(reference), "fixed")
    kind, _, where = reference.partition(":")
    if "+" in reference:
        return Given(name, None, "sum" if kind == "step" else "read")
    if kind == "cited":
        one = cited[where]
        return Given(name, float(one["value"]), kind, one["source"], one["grade"], one["unit"])
    if kind == "step":
        return Given(name, _at(steps[where]["value"], row), "sum", unit=steps[where]["unit"])
    table, _, column = where.partition("/")
    if kind == "number":
        return Given(name, float(plan["numbers"][table][column]), "chosen")
    values: Sequence[Any] = plan["columns"][table][column]
    return Given(name, _at(list(values), row), "read")
