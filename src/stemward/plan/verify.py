"""Working every sum of a plan again from its JSON alone."""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from stemward.kinds import Cited
from stemward.plan.formulae import FORMULAE, VERSION
from stemward.plan.sums import Ledger
from stemward.plan.write import code_of

CLOSE = 1e-7
"""Relative difference that nine written digits can leave after a few operations."""

PARTS: dict[str, type] = {
    "code": str,
    "as_of": str,
    "tract": dict,
    "treatments": list,
    "mixes": list,
    "findings": list,
    "steps": list,
    "cited": list,
    "columns": dict,
    "numbers": dict,
    "hashes": dict,
    "gear": dict,
    "surveys": list,
}


@dataclass(frozen=True, slots=True)
class Verified:
    """What came of working a plan again. problems: message ids with values; empty means all agreed."""

    steps: int
    code: str
    problems: tuple[tuple[str, dict[str, Any]], ...]


def verify(data: Any) -> Verified:
    """Work every step again from the plan's own inputs and compare, then compare the code.

    Never raises on what the file holds: what cannot be worked is a problem.
    """
    missing = [p for p, kind in PARTS.items() if not isinstance(data, dict) or not isinstance(data.get(p), kind)]
    if missing:
        return Verified(0, "", (("not_a_plan", {"missing": ", ".join(missing)}),))
    problems: list[tuple[str, dict[str, Any]]] = []
    try:
        code = code_of(data)
        sums = _ledger(data)
    except (TypeError, ValueError, KeyError, AttributeError) as error:
        return Verified(0, "", (("not_a_plan", {"missing": str(error)}),))
    if code != data["code"]:
        problems.append(("code_differs", {"written": str(data["code"]), "worked": code}))
    if data["hashes"].get("formulae") != str(VERSION):
        problems.append(("other_formulae", {"written": str(data["hashes"].get("formulae")), "here": str(VERSION)}))
    with np.errstate(all="ignore"):
        problems += [found for step in data["steps"] if (found := _work_again(step, sums))]
    problems += _shown_figures(data, sums)
    return Verified(len(data["steps"]), code, tuple(problems))


def _ledger(data: dict[str, Any]) -> Ledger:
    sums = Ledger()
    sums.cited = {c["id"]: Cited(**c) for c in data["cited"]}
    sums.columns = {
        job: {name: np.asarray(values) for name, values in columns.items()} for job, columns in data["columns"].items()
    }
    sums.numbers = data["numbers"]
    return sums


def _work_again(step: Any, sums: Ledger) -> tuple[str, dict[str, Any]] | None:
    try:
        name, formula = str(step["id"]), FORMULAE[step["formula"]]
        value = formula(**{arg: sums.look_up(ref) for arg, ref in step["inputs"].items()})
        written = np.asarray(step["value"], float)
        worked = np.asarray(value, float)
    except Exception as error:
        # Whatever a broken file does to a formula is the file's problem, and is said.
        label = str(step.get("id", "?")) if isinstance(step, dict) else "?"
        return "cannot_work", {"step": label, "why": f"{type(error).__name__}: {error}"[:200]}
    sums.values[name] = value
    if worked.shape == written.shape and np.allclose(worked, written, rtol=CLOSE, atol=1e-12):
        return None
    return "step_differs", {"step": name, "written": _brief(written), "worked": _brief(worked)}


def _brief(values: Any) -> float:
    return float(np.sum(values))


def _shown_figures(data: dict[str, Any], sums: Ledger) -> list[tuple[str, dict[str, Any]]]:
    """The figures that people read must be the ones the sums gave, and batches must add up."""
    problems: list[tuple[str, dict[str, Any]]] = []

    def same(what: str, shown: float, worked: float) -> None:
        if not math.isclose(shown, worked, rel_tol=CLOSE, abs_tol=1e-6):
            problems.append(("figure_differs", {"what": what, "shown": shown, "worked": worked}))

    try:
        for item in (*data["treatments"], *data["mixes"]):
            for name in ("need_ml", "need_low_ml", "need_high_ml"):
                step = f"{item['id']}.{name}"
                if step in sums.values:
                    same(step, item[name], float(sums.values[step]))
        for mix in data["mixes"]:
            same(
                f"{mix['id']}.assigned",
                sum(b["assigned_ml"] for b in mix["batches"]),
                round(mix["need_ml"], 3),
            )
            for batch in mix["batches"]:
                if "parts" in batch:
                    where = f"{mix['id']}.{batch['number']}"
                    same(f"{where}.parts", sum(p["ml"] for p in batch["parts"]), batch["mixed_ml"])
                    same(f"{where}.left_over", batch["left_over_ml"], batch["mixed_ml"] - batch["assigned_ml"])
    except (KeyError, TypeError) as error:
        problems.append(("cannot_work", {"step": "figures", "why": str(error)[:200]}))
    return problems
