"""Working a sum and writing it down in one move, so that no number stands in a plan without its why."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from stemward.kinds import Cited, Step
from stemward.plan.formulae import FORMULAE

SHARED = ("clusters", "cluster_area_m2")

Reference = str
"""Where an input stands: "cited:ID", "column:JOB/NAME", "step:ID" or "number:JOB/NAME"; "+" joins columns."""


@dataclass
class Ledger:
    """What the sums of a plan refer to and what they gave: the one place where a plan is still growing.

    cited, columns, numbers: what references may name. steps: the sums worked so far, in order. shared: answers of
    costly sums, which the ledgers of several ways may hold in common. written: False for a way that is only weighed,
    whose sums nobody reads again.
    """

    cited: dict[str, Cited] = field(default_factory=dict)
    columns: dict[str, dict[str, Any]] = field(default_factory=dict)
    numbers: dict[str, dict[str, float]] = field(default_factory=dict)
    steps: dict[str, Step] = field(default_factory=dict)
    values: dict[str, Any] = field(default_factory=dict)
    shared: dict[Any, Any] = field(default_factory=dict)
    written: bool = True

    def cite(self, cited: Cited) -> Reference:
        """Keep a cited value and give the reference to it."""
        self.cited[cited.id] = cited
        return f"cited:{cited.id}"

    def column(self, job: str, name: str, values: Any) -> Reference:
        """Keep a column of a job and give the reference to it."""
        self.columns.setdefault(job, {})[name] = values
        return f"column:{job}/{name}"

    def number(self, job: str, name: str, value: float) -> Reference:
        """Keep a number that belongs to a job's way or product and give the reference to it."""
        self.numbers.setdefault(job, {})[name] = value
        return f"number:{job}/{name}"

    def look_up(self, reference: Reference) -> Any:
        """The value a reference stands for; KeyError if it stands for nothing."""
        parts = [self._one(part) for part in reference.split("+")]
        return parts[0] if len(parts) == 1 else np.concatenate([np.atleast_1d(p) for p in parts])

    def _one(self, reference: Reference) -> Any:
        where, _, name = reference.partition(":")
        if where == "cited":
            return self.cited[name].number
        if where == "step":
            return self.values[name]
        job, _, column = name.partition("/")
        return (self.columns if where == "column" else self.numbers)[job][column]

    def _once(self, formula: str, given: dict[str, Any]) -> Any:
        """A costly sum over the same columns is worked once for all ways of a target.

        The columns themselves are kept beside the answer, so that a key never outlives what it stands for.
        """
        key = (formula, *((name, id(v) if isinstance(v, np.ndarray) else v) for name, v in sorted(given.items())))
        if key not in self.shared:
            self.shared[key] = (FORMULAE[formula](**given), given)
        return self.shared[key][0]

    def once(self, key: Any, make: Callable[[], Any]) -> Any:
        """Something worked out once for all ways that hold their answers in common."""
        if key not in self.shared:
            self.shared[key] = make()
        return self.shared[key]

    def work(self, step_id: str, formula: str, unit: str, **inputs: Reference) -> Any:
        """Work a sum, keep it as a step, and give its value: a float, or an array with one value per stem."""
        given = {name: self.look_up(ref) for name, ref in inputs.items()}
        value = self._once(formula, given) if formula in SHARED else FORMULAE[formula](**given)
        self.values[step_id] = value
        if not self.written:
            return value
        kept = tuple(np.asarray(value, float).tolist()) if np.ndim(value) else float(value)
        self.steps[step_id] = Step(step_id, formula, tuple(sorted(inputs.items())), kept, unit)
        return value
