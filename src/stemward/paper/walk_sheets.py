"""Walks on paper: of each person a plan with the walk, what is taken along, and the rows in their order."""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from stemward import drawings
from stemward.paper.compile import to_pdf
from stemward.paper.packet import TYPST_PAPER, Paper
from stemward.plan.walk_works import Ask, Work
from stemward.say import Speaker, en
from stemward.say import walks as say
from stemward.say.en import walks as words

MOST_KEPT_NAMES = 12
"""Of more than this that is kept in view, trees stand without their names: engineering guess."""
Found = Sequence[tuple[Work, Mapping[str, Any]]]
MOST_MARKS = 24
"""Numbers written along a walk on the plan: engineering guess, more hide the stems."""


@dataclass(frozen=True, eq=False)
class Sheets:
    """What is printed: works with their walks, and of each what is left or not known, in sentences; names of those who
    walk, in order."""

    plan: Mapping[str, Any]
    found: Found
    told: Sequence[Sequence[str]]
    names: Sequence[str]
    ask: Ask


def walks_pdf(sheets: Sheets, speaker: Speaker, paper: Paper = "letter") -> bytes:
    """The sheets as PDF/UA-1. The same plan and walks give the same bytes."""
    data = walks_data(sheets, speaker, paper)
    return to_pdf("walks.typ", data, datetime.date.fromisoformat(sheets.plan["as_of"]))


def walks_data(sheets: Sheets, speaker: Speaker, paper: Paper) -> dict[str, Any]:
    """All that stands on them."""
    plan = sheets.plan
    tract = plan["tract"]
    return {
        "title": words.SHEET_TITLE.format(tract=tract["name"]),
        "paper": TYPST_PAPER[paper],
        "footer": words.FOOTER.format(tract=tract["name"], code=plan["code"], as_of=plan["as_of"]),
        "intro": words.INTRO,
        "carry_head": words.CARRY,
        "refill": words.REFILL_ROW,
        "evening": words.EVENING,
        "walks": [
            sheet
            for (work, walk), lines in zip(sheets.found, sheets.told, strict=True)
            for sheet in _sheets(sheets, work, walk, lines, speaker)
        ],
    }


def _sheets(
    all_of: Sheets, work: Work, walk: Mapping[str, Any], lines: Sequence[str], speaker: Speaker
) -> list[dict[str, Any]]:  # fmt: skip
    title = say.work_title(speaker, work)
    lanes = say.lane_parts(speaker, work, walk, all_of.names)
    sheets = []
    for number, one in enumerate(say.said_walks(speaker, work, walk, all_of.names, all_of.ask)):
        own_lanes = [
            {"heading": part["heading"], "words": part["words"], "lanes": part["people"][number]["lanes"]}
            for part in lanes
            if part["people"][number]["lanes"]
        ]
        if not one.rows and not own_lanes:
            continue
        sheets.append(
            {
                "person": one.person,
                "work": title,
                "line": one.line if one.rows else "",
                "lots": one.lots,
                "carry": list(one.carry),
                "cautions": list(dict.fromkeys(c for s in work.sheets for c in en.cautions.CAUTIONS[s["how"]][:3])),
                "head": [h.format(dose=_dose_head(speaker, work)) for h in words.SHEET_HEAD],
                "told": [*stopped(work), *lines],
                "map": _map(all_of.plan, walk, number, one, speaker),
                "rows": [asdict(row) for row in one.rows],
                "lanes": own_lanes,
            }
        )
    return sheets


def stopped(work: Work) -> list[str]:
    """That checks stop a work, where some do."""
    found = {check for sheet in work.sheets for check in sheet["stopped"]}
    return [words.STOPPED if len(found) == 1 else words.STOPPED_MORE.format(count=len(found))] if found else []


def _dose_head(speaker: Speaker, work: Work) -> str:
    counted = {c["tool"] for c in speaker.plan["tract"]["calibrations"]}
    return str(en.sheets.TICKS["squirts" if all(s["tool"] in counted for s in work.sheets) else "dose"])


def _map(
    plan: Mapping[str, Any], walk: Mapping[str, Any], number: int, one: say.Said, speaker: Speaker
) -> dict[str, Any]:
    """The plan with one person's walk, or with the lanes."""
    own = [lane for lane in walk["lanes"] if lane["person"] == number]
    routes = [route_of(walk, number), *lane_routes(own)]
    drawn = plan_with(plan, speaker, routes, walk["start"], 90.0)
    return {"svg": drawn.svg, "alt": words.ALT.format(person=one.person, line=one.line)}


def route_of(walk: Mapping[str, Any], number: int) -> tuple[list[Any], list[tuple[str, Any]]]:
    """The path of one person with numbers of stops at some of its places."""
    one = walk["people"][number]
    return one["path"], _some_marks([(n, at) for n, at in enumerate(one["marks"], 1)])


def lane_routes(lanes: Sequence[Mapping[str, Any]]) -> list[tuple[list[Any], list[tuple[str, Any]]]]:
    """Each lane with its number where it begins, or of many lanes with some of the numbers."""
    shown = {n for n, _ in _some_marks([(lane["number"], lane["start"]) for lane in lanes])}
    return [
        ([lane["start"], lane["end"]], [(str(lane["number"]), lane["start"])] if str(lane["number"]) in shown else [])
        for lane in lanes
    ]


def _some_marks(marks: Sequence[tuple[int, Any]]) -> list[tuple[str, Any]]:
    """The first and every so many of numbered places, so that the numbers do not hide the stems."""
    step = max(1, -(-len(marks) // MOST_MARKS))
    return [(str(n), at) for place, (n, at) in enumerate(marks) if place == 0 or n % step == 0]


def plan_with(
    plan: Mapping[str, Any], speaker: Speaker, routes: Sequence[Any], start: Any, height_mm: float
) -> drawings.Drawing:
    """The ground of some walks, with the place where the mix is made."""
    tract = plan["tract"]
    corners = [at for over, _ in routes for at in over] + [start]
    if len(corners) == 1:
        corners = [c for p in tract["patches"] if p["shape"] for c in p["shape"]["rings"][0]] or [[0, 0], [10, 10]]
    (west, south), (east, north) = (tuple(f(c[i] for c in corners) for i in (0, 1)) for f in (min, max))
    rim = max(5.0, 0.05 * max(east - west, north - south))
    view = (west - rim, south - rim, east + rim, north + rim)
    stems = [
        (float(x), float(y))
        for t in plan["treatments"]
        for x, y in zip(plan["columns"][t["id"]]["x_m"], plan["columns"][t["id"]]["y_m"], strict=True)
    ]
    kept = [one for one in tract["spared"] if _near(one["shape"], view)]
    return drawings.plan_drawing(
        [(p["name"], p["shape"]["rings"]) for p in tract["patches"] if p["shape"]],
        stems,
        [(_name(s, kept), s["kind"], s["shape"]) for s in kept],
        speaker.units,
        speaker.word("scale_bar_paces"),
        places=[("mixing", "", (float(start[0]), float(start[1])))],
        view_m=view,
        height_mm=height_mm,
        routes=routes,
    )


def _name(one: Mapping[str, Any], kept: Sequence[Any]) -> str:
    """The name of what is kept; trees go without where many stand, so that the walk can be seen."""
    return "" if one["kind"] == "tree" and len(kept) > MOST_KEPT_NAMES else str(one["id"])


def _near(shape: Mapping[str, Any], view: tuple[float, float, float, float]) -> bool:
    """True where some corner of what is kept lies in the view, or a line or outline may cross it."""
    corners = shape["rings"][0]
    xs, ys = [c[0] for c in corners], [c[1] for c in corners]
    return bool(min(xs) <= view[2] and max(xs) >= view[0] and min(ys) <= view[3] and max(ys) >= view[1])
