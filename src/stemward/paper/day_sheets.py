"""The day's own sheets: what to do in an emergency, a gate sign, a notice to neighbors, calibration cards."""

import datetime
from collections.abc import Mapping
from typing import Any

from stemward.paper.compile import to_pdf
from stemward.paper.packet import TYPST_PAPER, Paper, packet_data
from stemward.plan.field_sheets import field_sheets
from stemward.reckon.effort import ml_per_squirt
from stemward.say import Speaker, System, en

SQUIRTS = 20
CAUGHT_ML = (10, 14, 18, 20, 24, 30)
"""What 20 squirts may give, for the card's table."""
STEMS = 20


def day_pdf(plan: Mapping[str, Any], units: System = "us", paper: Paper = "letter") -> bytes:
    """The sheets as PDF/UA-1. The same plan, units and paper give the same bytes."""
    return to_pdf("day.typ", day_data(plan, units, paper), datetime.date.fromisoformat(plan["as_of"]))


def day_data(plan: Mapping[str, Any], units: System, paper: Paper) -> dict[str, Any]:
    """All that stands on them."""
    speaker = Speaker(plan, units)
    whole = packet_data(plan, units, paper)
    words = en.sheets.DAY
    return {
        "title": words["title"].format(tract=plan["tract"]["name"]),
        "paper": TYPST_PAPER[paper],
        "footer": whole["footer"],
        "emergency": {
            "heading": whole["words"]["emergency"],
            "lines": whole["emergency"],
            "products_heading": whole["words"]["products"],
            "products": whole["products"],
        },
        "sign": whole["sign"],
        "notice": notice(speaker, plan),
        "cards": {"squirts": squirt_card(), "stems": stem_card(speaker, plan)},
    }


def notice(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any]:
    """A notice for those who live by: what, where, when; the times are written in by hand."""
    words = en.sheets.DAY
    used = [t for t in plan["treatments"] if t["product"]]
    patches = ", ".join(dict.fromkeys(t["patch_name"] for t in used))
    products = [words["notice_product"].format(name=p["name"], number=p["number"]) for p in plan["tract"]["products"]]
    how = ", ".join(dict.fromkeys(en.stages.HOW[t["how"]].lower() for t in used))
    # One product whose entry time nobody has read is enough for the notice to give no hours.
    entry = [p["entry_h"] for p in plan["tract"]["products"]]
    hours = [float(h) for h in entry if h is not None]
    lines = [
        words["notice_what"].format(patches=patches, tract=plan["tract"]["name"], how=how),
        words["notice_when"],
        *products,
        words["notice_out"].format(hours=speaker.number("entry_h", max(hours)))
        if hours and len(hours) == len(entry)
        else words["notice_out_unread"],
        words["notice_ask"],
        words["notice_rule"],
    ]
    return {"heading": words["notice_heading"], "lines": lines if used else [words["notice_none"]]}


def squirt_card() -> dict[str, Any]:
    """How to count what one squirt gives, with the division done."""
    words = en.sheets.DAY
    table = [[f"{ml} mL", f"{ml_per_squirt(ml, SQUIRTS):g} mL"] for ml in CAUGHT_ML]
    return {
        "heading": words["squirts"],
        "steps": list(words["squirt_steps"]),
        "table": table,
        "under": words["squirt_under"],
    }


def stem_card(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any]:
    """How to measure what 20 stems take, beside what was reckoned for them."""
    words = en.sheets.DAY
    rows = []
    for sheet in field_sheets(plan):
        plants = sum(sheet["counts"])
        if sheet["product"] and plants:
            each_ml = sum(sheet["row_ml"]) / plants
            name = f"{sheet['common']}, {sheet['patch_name']}"
            rows.append([name, speaker.number("mix_ml", STEMS * each_ml), "", ""])
    return {
        "heading": words["stems"],
        "steps": list(words["stem_steps"]),
        "head": list(words["stem_head"]),
        "rows": rows,
    }
