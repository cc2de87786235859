"""What comes next on a tract: one matter out of everything that is open, by one table; pure functions.

Rows as on the screen's table: the first row that holds wins; within a row the earlier due date, then the heavier
finding, then the order of steps, then the name. Rows whose facts come from forecasts, phones and revisits are fed by
whoever knows those; here they are only ranked.
"""

import datetime
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from stemward.kinds import Tract

STEPS = ("look", "choose", "read the label", "mix", "pick hours", "work", "revisit")
ROWS = (
    "cut_untreated", "mix_left", "record_open", "marked_only", "hours_shut", "marks_differ", "pack", "stopped",
    "find_out", "revisit_due", "count", "kept", "choose", "changed", "mix", "pick_day", "season", "nothing",
)  # fmt: skip
"""Row ids in the order of the table, 1 to 18. Rows 1 to 7 look at the whole tract."""
STEP_OF = {
    "cut_untreated": "work", "mix_left": "work", "record_open": "work", "marked_only": "work",
    "hours_shut": "pick hours", "marks_differ": "work", "pack": "work", "stopped": "choose",
    "find_out": "read the label", "revisit_due": "revisit", "count": "look", "kept": "look", "choose": "choose",
    "changed": "mix", "mix": "mix", "pick_day": "pick hours", "season": "pick hours", "nothing": "revisit",
}  # fmt: skip
WEIGHTS = ("stop", "find out", "know", "checked")
MINUTES_A_PLACE = 0.67
"""Finding one thing on a label: engineering guess, 40 seconds."""
TO_READ = ("unread", "proposed")
NO_LABEL = "label-at-hand"
"""A stop that is lifted by reading, and by nothing else."""
FOR_GOOD = datetime.date.max
Values = tuple[tuple[str, str | int], ...]


@dataclass(frozen=True, slots=True)
class Matter:
    """Something open. values: what its sentence names. about: what its button leads to (patch, species, product)."""

    row: str
    values: tuple[tuple[str, str | int], ...] = ()
    about: tuple[tuple[str, str], ...] = ()
    due: datetime.date = FOR_GOOD
    weight: str = "know"
    name: str = ""

    @property
    def rank(self) -> tuple[Any, ...]:
        """What the table compares, smaller first."""
        step = STEPS.index(STEP_OF[self.row])
        return (ROWS.index(self.row), self.due, WEIGHTS.index(self.weight), step, self.name, self.values)


def in_order(matters: Iterable[Matter]) -> list[Matter]:
    """Everything open, the next one first; where nothing is open, the row that says so."""
    found = sorted(set(matters), key=lambda one: one.rank)
    return found or [Matter("nothing")]


def matters_of(tract: Tract, plan: Mapping[str, Any] | None, issued: str, aside: Mapping[str, str]) -> list[Matter]:
    """What is open on a tract that its own content tells of.

    plan: its plan as plain data, None while it is not worked out. issued: code of the plan last printed, or "".
    aside: patch id to the day until which it is set aside (ISO).
    """
    found = _to_count(tract) + _to_keep(tract)
    if plan is not None:
        found += _of_plan(plan, issued)
    return [one for one in found if dict(one.about).get("patch", "") not in aside]


def _to_count(tract: Tract) -> list[Matter]:
    if not tract.patches:
        return [Matter("count", (("patch", ""),))]
    have = {*tract.stems.patch.tolist(), *(tally.patch for tally in tract.plots)}
    return [
        Matter("count", (("patch", p.name),), (("patch", p.id),), name=p.name)
        for p in tract.patches
        if p.id not in have
    ]


def _to_keep(tract: Tract) -> list[Matter]:
    have = {*tract.stems.patch.tolist(), *(tally.patch for tally in tract.plots)}
    return [
        Matter("kept", (("patch", p.name),), (("patch", p.id),), name=p.name)
        for p in tract.patches
        if p.id in have and p.id not in tract.kept_asked
    ]


def _of_plan(plan: Mapping[str, Any], issued: str) -> list[Matter]:
    found = []
    for item in plan["treatments"]:
        about = tuple((key, item[key]) for key in ("patch", "species", "state"))
        plants: Values = (("plants", item["common"]), ("patch", item["patch_name"]))
        mine = [f for f in plan["findings"] if _concerns(f, item)]
        if item["chosen_by"] != "person":
            laid = sum(len(g["ways"]) for g in item["laid_out"]["groups"]) + len(item["laid_out"]["pinned"])
            said: Values = (*plants, ("stems", item["stems"]), ("ways", laid))
            found.append(Matter("choose", said, about, name=item["patch_name"]))
            continue
        stops = [f for f in mine if f["weight"] == "stop" and f["check"] != NO_LABEL]
        if stops:
            said = (*plants, ("check", stops[0]["check"]))
            found.append(Matter("stopped", said, about, weight="stop", name=item["patch_name"]))
        found += _to_find_out(mine, item, plants, about, plan)
    if issued and issued != plan["code"]:
        found.append(Matter("changed", (("code", issued),)))
    return found


def _to_find_out(
    findings: Sequence[Mapping[str, Any]],
    item: Mapping[str, Any],
    plants: Values,
    about: tuple[tuple[str, str], ...],
    plan: Mapping[str, Any],
) -> list[Matter]:
    """What is to be read on the label as one matter, and each thing that is to be found out elsewhere."""
    open_ = [f for f in findings if f["weight"] == "find out"]
    places: set[str] = set()
    for one in open_:
        if one["message"].partition(".")[2] in TO_READ:
            names = str(one["values"].get("fact") or one["values"].get("facts", ""))
            places |= {name for name in names.split(", ") if name}
    found = []
    if places:
        minutes = max(1, round(len(places) * MINUTES_A_PLACE))
        read_: Values = (("product", item["product_name"]), ("places", len(places)), ("minutes", minutes))
        read = (*about, ("product", item["product"]))
        weight = "stop" if any(f["check"] == NO_LABEL and f["weight"] == "stop" for f in findings) else "find out"
        found.append(Matter("find_out", read_, read, weight=weight, name=item["product_name"]))
    for number, one in enumerate(plan["findings"]):
        if one in open_ and one["message"].partition(".")[2] not in TO_READ:
            values_: Values = (*plants, ("finding", number))
            found.append(Matter("find_out", values_, about, weight="find out", name=item["patch_name"]))
    return found


def _concerns(finding: Mapping[str, Any], item: Mapping[str, Any]) -> bool:
    where = finding["where"]
    return all(where[key] in ("", item[key]) for key in ("patch", "species", "product"))


def step_states(tract: Tract, plan: Mapping[str, Any] | None, issued: str) -> dict[str, str]:
    """Where each step stands: not begun, begun, needs you, changed since, done. By facts, never by a tick."""
    states = dict.fromkeys(STEPS, "not begun")
    open_rows = {one.row for one in matters_of(tract, plan, issued, {})}
    if tract.patches:
        states["look"] = "begun" if open_rows & {"count", "kept"} else "done"
    if any(entry.kind == "treated" for entry in tract.entries):
        states["work"] = "begun"
    if any(entry.kind == "seen again" for entry in tract.entries):
        states["revisit"] = "begun"
    if plan is None or not plan["treatments"]:
        return states
    chosen = [t for t in plan["treatments"] if t["chosen_by"] == "person"]
    if chosen:
        states["choose"] = "needs you" if "stopped" in open_rows else "begun" if "choose" in open_rows else "done"
        states["read the label"] = "needs you" if "find_out" in open_rows else "done"
        ready = not open_rows & {"stopped", "find_out", "choose"}
        states["mix"] = "changed since" if "changed" in open_rows else "done" if issued and ready else "begun"
    return states
