"""What is taken into the woods of each treatment: its rows under numbers, and what each takes. Kept when printed."""

from collections.abc import Mapping
from typing import Any

from stemward.plan.job import RECKONED

MOST_ROWS = 2000
"""Rows that are printed one by one; a plan with more is worked by lots: engineering guess, 40 pages."""


def field_sheets(plan: Mapping[str, Any]) -> list[dict[str, Any]]:
    """A sheet for each treatment in which something is done: rows numbered from 1 in the order of the lists here.

    ids: stem of each row. counts: plants in it. sizes_cm, row_ml: diameter and mix it takes. stopped: checks that
    stop the way taken, so that what was done all the same is written down as that.
    """
    steps = {step["id"]: step["value"] for step in plan["steps"] if step["id"].endswith("row_ml")}
    mixes = {t: mix["id"] for mix in plan["mixes"] for t in mix["treatments"]}
    sheets = []
    for item in plan["treatments"]:
        if item["how"] == "leave it":
            continue
        column = plan["columns"][item["id"]]
        # What was reckoned before anything was learned: else what is learned would be learned again.
        row_ml = steps.get(f"{item['id']}.{RECKONED}", steps.get(f"{item['id']}.row_ml", [0.0] * len(column["id"])))
        sheets.append(
            {
                **{name: item[name] for name in NAMES},
                "mix": mixes.get(item["id"], ""),
                "stopped": stops(plan, item),
                "reckoned_h": item["reckoned_h"],
                "ids": list(column["id"]),
                "counts": list(column["stems"]),
                "sizes_cm": list(column["diameter_cm"]),
                "row_ml": [float(ml) for ml in (row_ml if isinstance(row_ml, list | tuple) else [row_ml])],
            }
        )
    return sheets


NAMES = (
    "id", "patch", "patch_name", "species", "common", "state", "how", "first", "product", "product_name", "partner",
    "concentration_frac", "partner_frac", "carrier", "tool",
)  # fmt: skip


def stops(plan: Mapping[str, Any], item: Mapping[str, Any]) -> list[str]:
    """Ids of the checks that stop a treatment."""
    return [
        f["check"]
        for f in plan["findings"]
        if f["weight"] == "stop"
        and f["where"]["patch"] in ("", item["patch"])
        and f["where"]["species"] in ("", item["species"])
        and f["where"]["product"] in ("", item["product"])
    ]


def for_issue(plan: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The sheets as they are kept with a printed plan; none of a plan with too many rows to be printed singly."""
    sheets = field_sheets(plan)
    return sheets if sum(len(sheet["ids"]) for sheet in sheets) <= MOST_ROWS else []
