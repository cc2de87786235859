"""From a day as typed in the evening to the entries that are written down. Pure: values in, rows out."""

import datetime
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from stemward.kinds import Tract
from stemward.ledger.odd import Odd, odd
from stemward.ledger.poured import MixTyped, Poured, Row, Sheet, amounts, draws_asked, poured
from stemward.ledger.said import Ticked, read_ticks

NO_REASON = "no reason was written down"


@dataclass(frozen=True, slots=True)
class DayTyped:
    """One day as typed. ticks: what stands on each sheet, by the sheet's id. weather, values: as their entries hold.

    begun, ended: "09:40" or "". anyway: why a stopped treatment was done, by sheet. areas: really treated, m2, by
    sheet. place: where it was mixed.
    """

    day: datetime.date
    begun: str
    ended: str
    people: tuple[str, ...]
    ticks: Mapping[str, str]
    mixes: tuple[MixTyped, ...] = ()
    weather: Mapping[str, Any] = field(default_factory=dict)
    values: Mapping[str, str] = field(default_factory=dict)
    anyway: Mapping[str, str] = field(default_factory=dict)
    areas: Mapping[str, float] = field(default_factory=dict)
    person_h: float | None = None
    place: str = ""
    plan: str = ""


@dataclass(frozen=True, slots=True)
class Written:
    """What comes of a day: entries in order as (kind, time, body); or what is wrong; and what is asked about."""

    rows: tuple[Row, ...] = ()
    wrong: tuple[Odd, ...] = ()
    asked: tuple[Odd, ...] = ()


def written(typed: DayTyped, sheets: Sequence[Sheet], tract: Tract) -> Written:
    """The entries of a day: batches with what they drew, what was treated, cut and missed, what is left, the weather,
    hours, and what was filled in. What was put on is shared out by what was reckoned for the stems treated.
    """
    ticks = {sheet["id"]: read_ticks(typed.ticks.get(sheet["id"], ""), sheet["counts"]) for sheet in sheets}
    wrong = [
        replace(one, values=(("sheet", f"{sheet['common']}, {sheet['patch_name']}"), *one.values))
        for sheet in sheets
        for one in ticks[sheet["id"]].wrong
    ]
    if typed.begun and typed.ended and typed.ended < typed.begun:
        wrong.append(odd("ended_before", begun=typed.begun, ended=typed.ended))
    did = [sheet for sheet in sheets if any(ticks[sheet["id"]].rows.values())]
    if not did and not wrong:
        wrong.append(odd("nothing_ticked"))
    done: dict[str, Poured] = {}
    for mix in typed.mixes:
        own = [s for s in did if s["mix"] == mix.mix and ticks[s["id"]].rows["treated"]]
        if own or mix.mixed_ml is not None:
            times = (_at(typed, typed.begun), _at(typed, typed.ended or typed.begun))
            found = poured(mix, own[0] if own else None, typed.day, times, typed.place, typed.plan, tract)
            if isinstance(found, Odd):
                wrong.append(found)
            else:
                done[mix.mix] = found
    if wrong:
        return Written(wrong=tuple(dict.fromkeys(wrong)))
    rows = [
        row for one in done.values() for row in one.rows if row[0] == "batch mixed" or row[2]["what"] == "rinsed into"
    ]
    for sheet in did:
        share = _share(sheet, did, ticks)
        rows += _of_sheet(typed, sheet, ticks[sheet["id"]], done.get(sheet["mix"]), share, tract)
    rows += [row for one in done.values() for row in one.rows if row not in rows]
    rows += _of_day(typed, did, ticks)
    return Written(tuple(rows), (), tuple(draws_asked(rows, tract)))


def reckoned_ml(sheet: Sheet, ticks: Ticked) -> float:
    """What was reckoned for the plants that were treated, mL."""
    return math.fsum(
        sheet["row_ml"][row - 1] * many / sheet["counts"][row - 1]
        for row, many in ticks.rows["treated"].items()
        if sheet["counts"][row - 1]
    )


def _share(sheet: Sheet, did: Sequence[Sheet], ticks: Mapping[str, Ticked]) -> float:
    """Which part of a mix went onto one sheet's plants."""
    own = [s for s in did if s["mix"] == sheet["mix"] and ticks[s["id"]].rows["treated"]]
    each = {s["id"]: reckoned_ml(s, ticks[s["id"]]) for s in own}
    total = math.fsum(each.values())
    return each.get(sheet["id"], 0.0) / total if total else 1.0 / max(len(own), 1)


def _of_sheet(
    typed: DayTyped, sheet: Sheet, ticks: Ticked, mix: Poured | None, share: float, tract: Tract
) -> list[Row]:
    rows: list[Row] = []
    about = {name: sheet[name] for name in ("patch", "species", "state")}
    for what in ("cut", "missed", "not found"):
        if ticks.rows[what]:
            rows.append(("marked", _at(typed, typed.begun), {**about, "what": what, "rows": _ids(sheet, ticks, what)}))
    treated = ticks.rows["treated"]
    if not treated:
        return rows
    body: dict[str, Any] = {
        **about,
        "method": sheet["how"],
        "rows": _ids(sheet, ticks, "treated"),
        "stems": sum(treated.values()),
        "people": list(typed.people),
        "tool": sheet["tool"],
        "plan": typed.plan,
        "until": typed.ended or ticks.last,
        "ae_g": {},
    }
    if sheet["product"]:
        body |= {"product": sheet["product"], "carrier": sheet["carrier"]}
    if mix is not None:
        body |= {"batch": mix.batch, "reckoned_ml": round(reckoned_ml(sheet, ticks), 3)}
        body["concentration_frac"] = mix.frac.get(sheet["product"], sheet["concentration_frac"])
        if mix.put_ml is not None:
            body |= amounts(mix.put_ml * share, mix.frac, tract)
        else:  # the year's limit must not count too little: all there was may be on the ground
            body["ae_g"] = amounts(mix.most_ml * share, mix.frac, tract)["ae_g"]
    if typed.areas.get(sheet["id"]):
        body["area_m2"] = round(typed.areas[sheet["id"]], 2)
    if sheet["stopped"]:
        body["anyway"] = typed.anyway.get(sheet["id"], "").strip() or NO_REASON
    begun = _at(typed, typed.begun or ticks.first)
    rows.append(("treated", begun, {k: v for k, v in body.items() if v not in ("", None, {}) or k == "ae_g"}))
    return rows


def _ids(sheet: Sheet, ticks: Ticked, what: str) -> dict[str, int]:
    """Plants by stem; what stands on no sheet has no id and is counted only."""
    return {sheet["ids"][row - 1]: many for row, many in sorted(ticks.rows[what].items()) if sheet["ids"][row - 1]}


def _of_day(typed: DayTyped, did: Sequence[Sheet], ticks: Mapping[str, Ticked]) -> list[Row]:
    rows: list[Row] = []
    if typed.weather:
        rows.append(("weather", _at(typed, typed.begun), dict(typed.weather)))
    stems = {s["id"]: sum(ticks[s["id"]].rows["treated"].values()) for s in did}
    for sheet in did if typed.person_h is not None else ():
        if stems[sheet["id"]]:
            hours = round((typed.person_h or 0.0) * stems[sheet["id"]] / sum(stems.values()), 4)
            body = {"patch": sheet["patch"], "method": sheet["how"], "stems": stems[sheet["id"]], "person_h": hours}
            if sheet.get("reckoned_h"):
                body["reckoned_h"] = round(sheet["reckoned_h"] * stems[sheet["id"]] / sum(sheet["counts"]), 4)
            rows.append(("work", _at(typed, typed.begun), body | {"people": list(typed.people)}))
    values = {name: text.strip() for name, text in typed.values.items() if text.strip()}
    if values:
        filled = {"day": typed.day.isoformat(), "values": values}
        rows.append(("filled in", _at(typed, typed.ended or typed.begun), filled))
    return rows


def _at(typed: DayTyped, clock: str) -> str:
    return f"{typed.day.isoformat()}T{clock}" if clock else typed.day.isoformat()
