"""Who walks where in sentences and rows, the same for page, paper and command line."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from stemward.plan.walk_works import MOST_STEMS, Ask, Work
from stemward.plan.walks import ROUGHNESS
from stemward.reckon.bearing import direction
from stemward.reckon.effort import shown_hours
from stemward.say.en import walks as words
from stemward.say.numbers import figure
from stemward.say.rows import row_words, squirt_ml
from stemward.say.speaker import Speaker, how_words

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Row:
    """A stop in words. lot: words where a lot of stumps begins. refill: it is no plant but the way to the jug."""

    number: str
    stem: str
    plants: str
    size: str
    dose: str
    to_next: str
    lot: str = ""
    refill: bool = False


@dataclass(frozen=True, slots=True)
class Said:
    """One person's walk in words."""

    person: str
    line: str
    rows: tuple[Row, ...]
    carry: tuple[str, ...]
    lots: str = ""


def work_title(speaker: Speaker, work: Work) -> str:
    """What is walked: the mix, then plants by patch."""
    plants = "; ".join(words.PLANTS.format(common=s["common"], patch=s["patch_name"]) for s in work.sheets)
    first = work.sheets[0]
    if first["product"]:
        return words.WORK.format(mix=speaker.mix_words(first), plants=plants)
    if work.surveyed:
        plants = words.BY_PLOTS.format(plants=plants)
    return words.NO_MIX.format(how=how_words(first), plants=plants)


def hours_words(low_h: float, high_h: float) -> str:
    """A band of hours, rounded outward: "about 1.5 to 3 h"."""
    low, high = shown_hours(low_h, high_h)
    if low <= 0:
        return words.HOURS_LESS.format(high=f"{high:g}")
    if low == high:
        return words.HOURS_ONE.format(low=f"{low:g}")
    return words.HOURS.format(low=f"{low:g}", high=f"{high:g}")


def people_names(roles: Sequence[str], ask: Ask) -> list[str]:
    """Names of those who walk, one a walk: the roles of those who treat, then person 3 and so on; pairs together."""
    each = [roles[n] if n < len(roles) else words.PERSON.format(n=n + 1) for n in range(max(ask.people, ask.walks))]
    if not ask.pairs or ask.people < 2:
        return each[: ask.walks]
    pairs = [each[n : n + 2] for n in range(0, 2 * ask.walks, 2)]
    pairs[-1] += each[2 * ask.walks :]
    return [words.PAIR.join(pair) for pair in pairs]


def plants_words(count: int) -> str:
    """ "1 plant", "12 plants"."""
    return words.PLANT if count == 1 else words.PLANTS_COUNT.format(count=f"{count:,}")


def said_walks(speaker: Speaker, work: Work, walk: Mapping[str, Any], names: Sequence[str], ask: Ask) -> list[Said]:
    """Every person's walk in words."""
    return [_said(speaker, work, walk, one, name, ask) for one, name in zip(walk["people"], names, strict=True)]


def _said(
    speaker: Speaker, work: Work, walk: Mapping[str, Any], one: Mapping[str, Any], name: str, ask: Ask
) -> Said:  # fmt: skip
    stems = [stop for stop in one["stops"] if stop != "refill"]
    if not stems:
        return Said(name, words.NOTHING, (), ())
    by = {sheet["id"]: sheet for sheet in work.sheets}
    count = sum(int(by[t]["counts"][row]) for t, row, _ in stems)
    refills = words.REFILLS[min(one["refills"], 2)].format(count=one["refills"])
    ml = figure("mix_ml", one["need_ml"], speaker.units) if one["need_ml"] else ""
    line = words.LINE.format(
        plants=plants_words(count), hours=hours_words(one["low_h"], one["high_h"]),
        length=figure("length_m", one["length_m"], speaker.units), refills=refills,
        mix=words.MIX.format(ml=ml) if ml else "",
    )  # fmt: skip
    lots = [count for _, count in one["lots"]]
    how = words.LOTS_PAIR if ask.pairs and ask.people > 1 else words.LOTS_ALONE
    told = _lots_words(lots, how)
    return Said(name, line, _rows(speaker, work, walk, one, by), _carry(work, one, by, ml, refills, ask.people), told)


def _rows(
    speaker: Speaker, work: Work, walk: Mapping[str, Any], one: Mapping[str, Any], by: Mapping[str, Any]
) -> tuple[Row, ...]:
    place = {
        (work.sheets[s]["id"], row): tuple(at) for (s, row), at in zip(work.rows, work.places.tolist(), strict=True)
    }
    start: Point = (float(walk["start"][0]), float(walk["start"][1]))
    spots = [start if stop == "refill" else place[(stop[0], stop[1])] for stop in one["stops"]] + [start]
    heads = _lot_heads(one)
    squirts = {t: squirt_ml(speaker.plan, sheet["tool"]) for t, sheet in by.items()}
    found = []
    for n, (stop, (here, there)) in enumerate(zip(one["stops"], pairwise(spots), strict=True)):
        is_last, is_refill = n == len(one["stops"]) - 1, n < len(one["stops"]) - 1 and one["stops"][n + 1] == "refill"
        ahead = _leg(speaker, here, there, words.BACK if is_last else words.REFILL if is_refill else words.NEXT)
        if stop == "refill":
            found.append(Row("", "", "", "", "", ahead, refill=True))
            continue
        row = row_words(speaker, by[stop[0]], stop[1], squirts[stop[0]])
        found.append(Row(row["n"], row["id"], by[stop[0]]["common"], row["size"], row["dose"], ahead, heads.get(n, "")))
    return tuple(found)


def _lots_words(lots: Sequence[int], how: str) -> str:
    if not lots:
        return ""
    pattern = words.LOTS_SAME if min(lots) == max(lots) else words.LOTS
    return pattern.format(least=min(lots), most=max(lots), how=how)


def _lot_heads(one: Mapping[str, Any]) -> dict[int, str]:
    """Words at the stop where a lot begins."""
    stops = [n for n, stop in enumerate(one["stops"]) if stop != "refill"]
    return {
        stops[first]: words.LOT.format(n=number, count=count) for number, (first, count) in enumerate(one["lots"], 1)
    }


def _leg(speaker: Speaker, here: Point, there: Point, pattern: str) -> str:
    east, north = there[0] - here[0], there[1] - here[1]
    where = words.DIRECTIONS[direction(east, north)]
    if not where and pattern == words.NEXT:
        return words.NEXT_HERE
    return pattern.format(far=figure("far_m", math.hypot(east, north), speaker.units), direction=where).strip()


def _carry(
    work: Work, one: Mapping[str, Any], by: Mapping[str, Any], ml: str, refills: str, people: int
) -> tuple[str, ...]:  # fmt: skip
    """What this person takes along, beside what the packing list has for everybody."""
    counts: dict[str, int] = {}
    for stop in one["stops"]:
        if stop != "refill":
            how = by[stop[0]]["how"]
            counts[how] = counts.get(how, 0) + int(by[stop[0]]["counts"][stop[1]])
    tools = [sheet["tool"] for sheet in work.sheets if sheet["product"] and sheet["tool"]]
    found = [words.CARRY_BOTTLE.format(vessel=tools[0].capitalize(), ml=ml, refills=refills)] if ml and tools else []
    cut = counts.get("cut stump", 0) + counts.get("cut only", 0)
    found += [words.CARRY_CUT.format(count=cut)] if cut else []
    hacked = counts.get("hack and squirt", 0) + counts.get("girdle", 0)
    found += [words.CARRY_HACK.format(count=hacked)] if hacked else []
    found += [words.CARRY_SAW_ALONE] if cut and people == 1 else []
    return (*found, *words.CARRY_OTHERS)


def open_lines(work: Work, walk: Mapping[str, Any], hours: float | None, kinds: Sequence[str]) -> list[str]:
    """What is left, cut off, too much for a bottle or not known, in sentences."""
    lines = [] if walk["start_known"] else [words.START_UNKNOWN]
    many = sum(len(sheet["ids"]) for sheet in work.sheets)
    if not work.rows and many > MOST_STEMS:
        lines.append(words.TOO_MANY.format(count=f"{many:,}"))
    if walk["left"]:
        far = "1 hour" if hours == 1 else f"{hours:g} hours"
        lines.append(
            words.LEFT.format(hours=far, count=plants_words(len(walk["left"])), stems=_by_patch(work, walk["left"]))
        )
    if walk["cut_off"]:
        named = " or ".join(words.KINDS.get(kind, kind) for kind in kinds)
        lines.append(words.CUT_OFF.format(kinds=named, stems=_ids(walk["cut_off"])))
    if walk["too_much"]:
        lines.append(words.TOO_MUCH.format(stems=_ids(walk["too_much"])))
    for treatment in walk["unlaid"]:
        sheet = next(s for s in work.sheets if s["id"] == treatment)
        lines.append(words.UNLAID.format(plants=words.PLANTS.format(common=sheet["common"], patch=sheet["patch_name"])))
    return lines


def _by_patch(work: Work, stops: Sequence[Sequence[Any]]) -> str:
    """Stems by plant and patch: "autumn olive, Quarry rim: o1, o7"."""
    named = []
    for sheet in work.sheets:
        own = [stop for stop in stops if stop[0] == sheet["id"]]
        if own:
            named.append(f"{words.PLANTS.format(common=sheet['common'], patch=sheet['patch_name'])}: {_ids(own)}")
    return "; ".join(named)


MOST_NAMED = 40


def _ids(stops: Sequence[Sequence[Any]]) -> str:
    more = f" … ({len(stops)})" if len(stops) > MOST_NAMED else ""
    return ", ".join(str(stem) for _, _, stem in stops[:MOST_NAMED]) + more


def lane_parts(speaker: Speaker, work: Work, walk: Mapping[str, Any], names: Sequence[str]) -> list[dict[str, Any]]:
    """Lanes of each patch of counted plants: heading, words, and of each person the lanes in order."""
    found = []
    for sheet in work.sheets:
        own = [lane for lane in walk["lanes"] if lane["treatment"] == sheet["id"]]
        if not own:
            continue
        plants = words.PLANTS.format(common=sheet["common"], patch=sheet["patch_name"])
        length_m = sum(lane["length_m"] for lane in own)
        found.append(
            {
                "heading": words.LANES.format(plants=plants),
                "words": words.LANES_WORDS.format(
                    width=figure("width_m", own[0]["width_m"], speaker.units), count=len({x["number"] for x in own}),
                    length=figure("length_m", length_m, speaker.units),
                    order=words.LANES_UPHILL if walk["uphill"] else words.LANES_NEARER,
                ),
                "people": [
                    {"person": name, "lanes": [_lane(speaker, lane) for lane in own if lane["person"] == n]}
                    for n, name in enumerate(names)
                ],
            }
        )  # fmt: skip
    return found


def _lane(speaker: Speaker, lane: Mapping[str, Any]) -> str:
    (x, y), (to_x, to_y) = lane["start"], lane["end"]
    count = len(lane["refills"])
    return words.LANE.format(
        n=lane["number"], length=figure("length_m", lane["length_m"], speaker.units),
        direction=words.DIRECTIONS[direction(to_x - x, to_y - y)],
        refills=words.LANE_REFILLS[min(count, 2)].format(count=count),
    )  # fmt: skip


def worth_rows(speaker: Speaker, rows: Sequence[Mapping[str, Any]]) -> list[tuple[str, str, str]]:
    """What is worth doing: where and what; how much of it is reached; how many are expected to die."""
    items = {item["id"]: item for item in speaker.plan["treatments"]}
    found = []
    for one in rows:
        own = [items[t] for t in one["treatments"]]
        what = words.WORTH.format(
            patch=own[0]["patch_name"], plants="; ".join(f"{i['common']} ({how_words(i).lower()})" for i in own)
        )
        reached = words.WORTH_REACHED.format(
            count=one["plants"], of=plants_words(one["of"]), hours=hours_words(one["low_h"], one["high_h"])
        )
        if one["stopped"]:
            dead = words.WORTH_STOPPED
        elif one["low_dead"] is None:
            dead = words.WORTH_UNKNOWN
        else:
            dead = words.WORTH_DEAD.format(low=math.floor(one["low_dead"]), high=math.ceil(one["high_dead"]))
        found.append((what, reached, dead))
    return found


def rain_lines(
    names: Sequence[str],
    needs: Sequence[tuple[float, float]],
    order: Sequence[int],
    not_now: Sequence[int],
    rain_h: float,
) -> list[str]:
    """What to do first when rain comes early, in order, and what not to begin."""
    lines = []
    for number, n in enumerate(order, 1):
        dry_h = needs[n][0]
        dry = words.RAIN_DRY.format(hours=f"{dry_h:g} h") if dry_h > 0 else words.RAIN_NO_DRY
        by = words.RAIN_BY.format(hours=f"{rain_h - dry_h:g} h") if dry_h > 0 else words.RAIN_ANY
        lines.append(words.RAIN_FIRST.format(n=number, work=names[n], dry=dry, by=by))
    return lines + [words.RAIN_NOT.format(work=names[n], hours=f"{needs[n][0]:g} h") for n in not_now]


def reckoned_words(speaker: Speaker, pace_m_s: float) -> str:
    """On what the walks lean."""
    return words.HOW_RECKONED.format(pace=figure("pace_m_s", pace_m_s, speaker.units), rough=f"{ROUGHNESS:g}")
