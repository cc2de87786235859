"""Work days: which treatments on which day, the hours they need against the hours that are open."""

import datetime
import math
from collections.abc import Sequence
from dataclasses import dataclass

from stemward.plan.open_hours import Judged

MOST_DAY_H = 6.0
"""Hours of work on a day, beside the way there and the gear: engineering guess."""
PARTS = 4
"""Parts of an hour in which work is laid out: a quarter of an hour is about as fine as a crew can plan."""
PART = datetime.timedelta(hours=1) / PARTS


@dataclass(frozen=True, eq=False)
class Work:
    """A treatment to be put on days. need_h: hours it takes with all hands, fewest and most."""

    title: str
    judged: Judged
    need_h: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Slot:
    """A time of one day for one treatment. start, end: UTC. rain_from: UTC, when the time that has to stay dry is over,
    counted from the end."""

    day: datetime.date
    work: int
    start: datetime.datetime
    end: datetime.datetime
    rain_from: datetime.datetime


@dataclass(frozen=True, slots=True)
class Days:
    """Slots in order, and for each treatment the hours that found no place (of the most it may need)."""

    slots: tuple[Slot, ...]
    left_h: tuple[float, ...]


def work_days(
    works: Sequence[Work], zone: datetime.tzinfo | None = None, after: datetime.datetime | None = None,
    most_day_h: float = MOST_DAY_H,
) -> Days:  # fmt: skip
    """Days for the treatments, those with the fewest open hours first; short ones one after the other on one day.

    No time holds two treatments; no day holds more hours than one works. The most hours a treatment may need are
    sought, up to the next quarter. after: the moment from which hours count, None for all.
    """
    if not works:
        return Days((), ())
    hours = works[0].judged.hours
    stamps = [
        at.replace(tzinfo=datetime.UTC) + n * PART for at in hours.at.astype(object).tolist() for n in range(PARTS)
    ]
    day_of = [at.astimezone(zone).date() for at in stamps]
    free = [after is None or at >= after for at in stamps]
    worked: dict[datetime.date, int] = {}
    slots: list[Slot] = []
    left = [0.0] * len(works)
    open_of = [[state == "open" for state in work.judged.states() for _ in range(PARTS)] for work in works]
    for number in sorted(range(len(works)), key=lambda n: (sum(open_of[n]), n)):
        need_h = max(0.0, works[number].need_h[1])
        need = math.ceil(need_h * PARTS - 1e-9)
        while need > 0:
            usable = [o and f for o, f in zip(open_of[number], free, strict=True)]
            run = _best_run(usable, need, stamps, day_of, worked, int(most_day_h * PARTS))
            if run is None:
                break
            first, length = run[0], min(run[1], need)
            for n in range(first, first + length):
                free[n] = False
            day = day_of[first]
            worked[day] = worked.get(day, 0) + length
            end = stamps[first + length - 1] + PART
            dry = datetime.timedelta(hours=works[number].judged.dry_h)
            slots.append(Slot(day, number, stamps[first], end, end + dry))
            need -= length
        left[number] = min(need_h, need / PARTS)
    return Days(tuple(sorted(slots, key=lambda slot: slot.start)), tuple(left))


def _best_run(
    usable: Sequence[bool], need: int, stamps: Sequence[datetime.datetime], day_of: Sequence[datetime.date],
    worked: dict[datetime.date, int], most_day: int,
) -> tuple[int, int] | None:  # fmt: skip
    """A run of usable parts of hours within one day that still has room; first and length.

    One that holds all that is needed, on a day on which one is out already if there is one, the earliest of these; else
    the longest. So short works come together on few days.
    """
    found: list[tuple[int, int]] = []
    start = 0
    for n in range(len(usable) + 1):
        ends = n == len(usable) or not usable[n] or (
            n > start and (day_of[n] != day_of[start] or stamps[n] - stamps[n - 1] != PART)
        )  # fmt: skip
        if not ends:
            continue
        if n > start:
            length = min(n - start, most_day - worked.get(day_of[start], 0))
            if length > 0:
                found.append((start, length))
        start = n if n < len(usable) and usable[n] else n + 1
    if not found:
        return None
    whole = [run for run in found if run[1] >= need]
    if whole:
        return min(whole, key=lambda run: (day_of[run[0]] not in worked, run[0]))
    return max(found, key=lambda run: (run[1], -run[0]))
