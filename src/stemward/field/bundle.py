"""What a phone takes along: the treatments with their stems, doses, clocks and cautions, and what to do in an
emergency. Words are made here, so that the phone makes none about herbicide."""

import datetime
from collections.abc import Mapping, Sequence
from typing import Any

from stemward.paper.packet import packet_data
from stemward.paper.tick_sheets import WITH_A_CUT
from stemward.plan.field_sheets import field_sheets
from stemward.plan.stages import SECONDS_PER_MINUTE, timed_stage
from stemward.say import Speaker, System, en
from stemward.say.rows import row_words, squirt_ml
from stemward.say.speaker import how_words

FORM = "stemward phone plan"
SCHEMA = 1


def bundle(
    plan: Mapping[str, Any],
    tract_id: str,
    origin: tuple[float, float] | None,
    people: tuple[str, ...],
    made_at: datetime.datetime,
    units: System = "us",
    walks: Sequence[Mapping[str, Any]] = (),
) -> dict[str, Any]:
    """Plain data for the phone. origin: latitude and longitude of the tract's zero, None where nobody knows.

    rows of a sheet: id, number, plants, size, dose in words, metres east and north (null for counted plants).
    walks: as they were taken (person, work, stops, lots); each gets an id and a title, and stops name sheet and stem.
    limit_s: from cut to treatment, null where there is no clock. lot: stumps to cut before they are treated.
    """
    speaker = Speaker(plan, units)
    whole = packet_data(plan, units, "letter")
    return {
        "form": FORM,
        "schema": SCHEMA,
        "tract": tract_id,
        "name": plan["tract"]["name"],
        "invented": plan["tract"]["invented"],
        "code": plan["code"],
        "as_of": plan["as_of"],
        "made_at": made_at.isoformat(timespec="seconds"),
        "units": units,
        "origin": list(origin) if origin else None,
        "people": list(people),
        "draft": speaker.draft,
        "sheets": [_sheet(speaker, plan, sheet) for sheet in field_sheets(plan)],
        "walks": [one for one in (_walk(speaker, n, one) for n, one in enumerate(walks)) if one["title"]],
        "emergency": list(whole["emergency"]),
        "products": list(whole["products"]),
        "before": list(whole["before"]),
        "after": list(en.field.END_OF_DAY),
    }


def _walk(speaker: Speaker, n: int, one: Mapping[str, Any]) -> dict[str, Any]:
    """A walk as it stands in this plan: stems that are done by now are left out, the others find their sheet."""
    sheet_of = {
        str(i): item["id"] for item in speaker.plan["treatments"] for i in speaker.plan["columns"][item["id"]]["id"]
    }
    items = {item["id"]: item for item in speaker.plan["treatments"]}
    lot_of = {place: lot for lot, (first, count) in enumerate(one["lots"]) for place in range(first, first + count)}
    stops: list[Any] = []
    lots: dict[int, list[int]] = {}
    place = kept = 0
    for stop in one["stops"]:
        if stop == "refill":
            stops += ["refill"] if stops and stops[-1] != "refill" else []
            continue
        if stop[2] in sheet_of:
            stops.append([sheet_of[stop[2]], stop[2]])
            if place in lot_of:
                lots.setdefault(lot_of[place], [kept, 0])[1] += 1
            kept += 1
        place += 1
    own = dict.fromkeys(stop[0] for stop in stops if stop != "refill")
    return {
        "id": f"w{n}",
        "person": one["person"],
        "title": "; ".join(f"{items[t]['common']}, {items[t]['patch_name']}" for t in own),
        "stops": stops,
        "lots": list(lots.values()),
    }


def _sheet(speaker: Speaker, plan: Mapping[str, Any], sheet: Mapping[str, Any]) -> dict[str, Any]:
    item = next(t for t in plan["treatments"] if t["id"] == sheet["id"])
    column = plan["columns"][sheet["id"]]
    squirt = squirt_ml(plan, sheet["tool"])
    cut = sheet["how"] in WITH_A_CUT or sheet["first"] == "fresh face"
    timed = timed_stage(item) if cut else None
    rows = [row_words(speaker, sheet, n, squirt) for n in range(len(sheet["ids"]))]
    return {
        "id": sheet["id"],
        "plants": sheet["common"],
        "patch": sheet["patch"],
        "patch_name": sheet["patch_name"],
        "species": sheet["species"],
        "state": sheet["state"],
        "what": how_words(item),
        "way": speaker.way(item),
        "cut": cut,
        "treat": bool(sheet["product"]),
        "limit_s": timed["minutes"] * SECONDS_PER_MINUTE if timed else None,
        "limit_from": en.field.LIMIT_FROM[timed["from"]].format(page=timed["page"]) if timed else "",
        "lot": _lot(plan, item),
        "stopped": _stops(speaker, plan, item) if sheet["stopped"] else [],
        "cautions": list(en.cautions.CAUTIONS[sheet["how"]])[:3],
        "dose_head": en.sheets.TICKS["squirts"] if squirt else en.sheets.TICKS["dose"],
        "rows": [
            [row["id"], int(row["n"]), int(row["count"]), row["size"], row["dose"], _metres(column["x_m"][n]),
             _metres(column["y_m"][n])]
            for n, row in enumerate(rows)
        ],
    }  # fmt: skip


def _metres(value: Any) -> float | None:
    """A coordinate to a decimetre; None where there is none."""
    return round(float(value), 1) if isinstance(value, int | float) and value == value else None


def _lot(plan: Mapping[str, Any], item: Mapping[str, Any]) -> int | None:
    """How many stumps may wait, as the check reckons it; None where it says nothing."""
    for found in plan["findings"]:
        where = found["where"]
        if found["check"] == "cut-to-treat" and (where["patch"], where["species"]) == (item["patch"], item["species"]):
            return int(found["values"].get("lot", 0)) or None
    return None


def _stops(speaker: Speaker, plan: Mapping[str, Any], item: Mapping[str, Any]) -> list[str]:
    """Why a treatment is stopped, in words."""
    return [
        speaker.finding(found).text
        for found in plan["findings"]
        if found["weight"] == "stop"
        and found["where"]["patch"] in ("", item["patch"])
        and found["where"]["species"] in ("", item["species"])
        and found["where"]["product"] in ("", item["product"])
    ]
