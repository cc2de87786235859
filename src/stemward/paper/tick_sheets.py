"""Sheets that are ticked in the woods: a row a stem under its number, or lots of plants that were counted."""

from collections.abc import Mapping
from typing import Any

from stemward.plan.field_sheets import MOST_ROWS, field_sheets
from stemward.say import Speaker, en
from stemward.say.rows import row_words, squirt_ml

DOWN, ACROSS = 28, 2
"""Rows down a page and columns across it, large enough to be ticked with a gloved hand: engineering guess."""
LOTS = 8
"""Blank lines for lots, as many as stand on the page under a list: engineering guess."""
WITH_A_CUT = ("cut stump", "cut only")


def tick_sheets(speaker: Speaker, plan: Mapping[str, Any]) -> list[dict[str, Any]]:
    """One sheet a treatment; its numbers are those of the evening entry."""
    sheets = field_sheets(plan)
    singly = sum(len(sheet["ids"]) for sheet in sheets) <= MOST_ROWS
    return [_sheet(speaker, plan, sheet, singly) for sheet in sheets]


def _sheet(speaker: Speaker, plan: Mapping[str, Any], sheet: Mapping[str, Any], singly: bool) -> dict[str, Any]:
    words = en.sheets.TICKS
    counted = max(sheet["counts"]) > 1 or not singly
    item = next(t for t in plan["treatments"] if t["id"] == sheet["id"])
    squirt = squirt_ml(plan, sheet["tool"])
    rows = [row_words(speaker, sheet, n, squirt) for n in range(len(sheet["ids"]))] if singly else []
    kept = [] if counted else rows
    page = DOWN * ACROSS
    return {
        "heading": words["heading"].format(plants=sheet["common"], patch=sheet["patch_name"]),
        "how": speaker.way(item),
        "draft": words["stopped"] if sheet["stopped"] else "",
        "cautions": list(en.cautions.CAUTIONS[sheet["how"]])[:3],
        "code": words["code"].format(code=plan["code"]),
        "cut": sheet["how"] in WITH_A_CUT or sheet["first"] == "fresh face",
        "dose_head": words["squirts"] if squirt else words["dose"],
        "pages": [_columns(kept[start : start + page]) for start in range(0, len(kept), page)],
        "lots": _lots(rows, sheet, words) if counted else [],
        "blank_lots": LOTS,
        "evening": words["evening"],
    }


def _columns(rows: list[dict[str, str]]) -> list[list[dict[str, str]]]:
    """The rows of a page in columns of like length, read downward."""
    down = -(-len(rows) // ACROSS)
    return [rows[start : start + down] for start in range(0, len(rows), down)]


def _lots(rows: list[dict[str, str]], sheet: Mapping[str, Any], words: Mapping[str, Any]) -> list[str]:
    if not rows:
        return [words["many"].format(count=sum(sheet["counts"]))]
    return [words["row_of"].format(**row) for row in rows]
