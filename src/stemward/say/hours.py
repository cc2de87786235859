"""The hours ahead in sentences: spans with their reasons, chances of staying dry, what is odd about a file."""

import datetime
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from stemward.kinds.hours import Hours
from stemward.plan.days import Days, Slot, Work
from stemward.plan.open_hours import Doing, Judged, Reason, Span, chance_dry, spans
from stemward.say.en import hours as words
from stemward.say.numbers import System, figure

NAMED = {"wind over": "limit_m_s", "wind under": "limit_m_s", "gust over": "limit_m_s", "cold under": "limit_c",
         "heat over": "limit_c", "heat coming": "limit_c", "rain behind": "limit_h"}  # fmt: skip
DAY_H = 24


@dataclass(frozen=True, slots=True)
class SaidSpan:
    """A span in words, with the rows of the hours it goes over."""

    first: int
    last: int
    state: str
    text: str


def local(at: np.datetime64, zone: datetime.tzinfo | None) -> datetime.datetime:
    """A UTC time by the clocks of a place."""
    made: datetime.datetime = at.astype("datetime64[s]").astype(object)
    return made.replace(tzinfo=datetime.UTC).astimezone(zone)


def clock_words(when: datetime.datetime) -> str:
    """A time of day as people write it: "8 am", "12:30 pm", "noon", "midnight"."""
    if when.minute == 0 and when.hour in (0, 12):
        return words.NOON if when.hour else words.MIDNIGHT
    minute = f":{when.minute:02d}" if when.minute else ""
    return f"{when.hour % 12 or 12}{minute} {'am' if when.hour < 12 else 'pm'}"


def day_words(when: datetime.date) -> str:
    """A day: "Sat Sep 12"."""
    return f"{words.DAYS[when.weekday()]} {words.MONTHS[when.month - 1]} {when.day}"


def reason_words(reason: Reason, units: System, unknown: bool = False) -> str:
    """One reason with who says so: "wind over 10 mph (label, page 4)"."""
    table = words.UNKNOWN if unknown else words.REASONS
    text = table.get(reason.rule.matter, reason.rule.matter)
    limit = _limit_words(reason, units)
    said = text.format(limit=limit)
    page = words.PAGE.format(page=reason.page) if reason.page else ""
    return f"{said} ({words.BY[reason.by]}{page})"


def _limit_words(reason: Reason, units: System) -> str:
    if reason.limit is None:
        return ""
    if reason.rule.matter in ("air thirsty", "air damp"):
        return f"{reason.limit * 1.8:g} °F" if units == "us" else f"{reason.limit:g} °C"
    if reason.rule.matter == "rain behind":
        return f"{reason.limit:g} h"
    return figure(NAMED.get(reason.rule.matter, "limit"), reason.limit, units)


def span_lines(
    judged: Judged, zone: datetime.tzinfo | None, units: System, after: datetime.datetime | None = None
) -> list[SaidSpan]:
    """Spans by daylight in sentences, one a change; a span goes from its first hour to the end of its last.

    The dark is left out, and so is what is over: after is the moment from which hours count, None for all.
    """
    found: list[SaidSpan] = []
    first = _first_row(judged.hours, after)
    for span in spans(judged):
        if span.last < first:
            continue
        span = replace(span, first=max(span.first, first))
        reasons = [judged.reasons[n] for n in span.reasons]
        if any(reason.rule.matter == "dark" for reason in reasons) and span.state == "shut":
            continue
        text = _span_text(judged.hours, span, reasons, zone, units)
        found.append(SaidSpan(span.first, span.last, span.state, text))
    return found


def _first_row(hours: Hours, after: datetime.datetime | None) -> int:
    """The first hour that is not over at that moment."""
    if after is None:
        return 0
    moment = np.datetime64(after.astimezone(datetime.UTC).replace(tzinfo=None), "s")
    return int(np.searchsorted(hours.at + np.timedelta64(3600, "s"), moment, side="right"))


def _span_text(hours: Hours, span: Span, reasons: Sequence[Reason], zone: datetime.tzinfo | None, units: System) -> str:
    first, end = local(hours.at[span.first], zone), local(hours.at[span.last] + np.timedelta64(3600, "s"), zone)
    last = clock_words(end) if end.date() == first.date() else f"{day_words(end.date())} {clock_words(end)}"
    text = words.SPAN.format(
        day=day_words(first.date()), first=clock_words(first), last=last, state=words.STATES[span.state]
    )
    said = "; ".join(dict.fromkeys(reason_words(r, units, span.state == "find out") for r in reasons))
    if not said:
        return f"{text}."
    return f"{text}{words.WITH_CARE.format(reasons=said)}." if span.state == "open" else f"{text}; {said}."


def is_over(hours: Hours, now: datetime.datetime) -> bool:
    """True if the last hour of a forecast is past."""
    return _first_row(hours, now) >= len(hours.at)


def next_open(
    judged: Judged, zone: datetime.tzinfo | None, units: System, after: datetime.datetime | None = None
) -> str:
    """The first open span in a sentence, that there is none, or that the forecast is over."""
    if after is not None and is_over(judged.hours, after):
        return words.OVER
    found = next((one for one in span_lines(judged, zone, units, after) if one.state == "open"), None)
    return words.NEXT.format(span=found.text.partition(f": {words.STATES['open']}")[0]) if found else words.NONE_OPEN


def dry_line(judged: Judged, doing: Doing, start: int, zone: datetime.tzinfo | None) -> str:
    """The chance of staying dry from a start, as tenths with its bounds; "" where the forecast gives no chance."""
    found = chance_dry(judged.hours, start, judged.dry_h, doing.odds) if judged.dry_h else None
    if found is None:
        return ""
    when = local(judged.hours.at[start], zone)
    values = {"first": f"{day_words(when.date())} {clock_words(when)}", "hours": f"{judged.dry_h:g} h",
              "least": _tenths(found.least, down=True), "most": _tenths(found.most, down=False)}  # fmt: skip
    if np.isnan(found.persistent):
        return words.DRY_BLOCK.format(**values)
    return words.DRY.format(**values, persistent=f"about {round(found.persistent * 10)}")


def _tenths(share: float, down: bool) -> str:
    return f"{int(np.floor(share * 10 + 1e-9)) if down else int(np.ceil(share * 10 - 1e-9))}"


def unread_line(judged: Judged) -> str:
    """Which facts of the label nobody has read, for which common practice stands in; "" if there are none."""
    return words.UNREAD.format(kinds=", ".join(judged.unread)) if judged.unread else ""


def age_lines(hours: Hours, now: datetime.datetime) -> list[str]:
    """How old a forecast is; a history has no age."""
    if hours.kind != "forecast":
        return []
    if hours.issued is None:
        return [words.AGE_UNKNOWN]
    age_h = (now - local(hours.issued, datetime.UTC)).total_seconds() / 3600
    shown = f"{round(age_h)} h" if age_h >= 1.5 else f"{max(0, round(age_h * 60))} min"
    return [words.AGE.format(hours=shown), *([words.OLD.format(hours=shown)] if age_h > DAY_H else [])]


def doubt_lines(doubts: Iterable[Any]) -> list[str]:
    """What is odd about a file, in sentences. doubts: `gate.weather.made.Doubt`."""
    found = []
    for one in doubts:
        values: Mapping[str, Any] = dict(one.values)
        shown = {k: f"{v:g}" if isinstance(v, float) else str(v) for k, v in values.items()}
        rows = ", ".join(str(row) for row in one.rows[:3])
        found.append(words.ODD_FILE[one.message].format(**({"count": one.count, "rows": rows} | shown)))
    return found


def day_lines(days: Days, works: Sequence[Work], people: int, zone: datetime.tzinfo | None) -> list[str]:
    """Work days in sentences, with the end of the time that has to stay dry; what finds no place; what it takes."""
    found = [_slot_line(slot, works, zone) for slot in days.slots] or [words.WORK_NONE]
    for work, left in zip(works, days.left_h, strict=True):
        if left > 0 and days.slots:
            found.append(words.WORK_LEFT.format(work=work.title, hours=_band_words(0.0, left)))
    hands = "one pair of hands" if people == 1 else f"{people} people"
    found += [
        words.WORK_NEED.format(work=work.title, hours=_band_words(*work.need_h), people=hands)
        for work in works
        if work.need_h[1] > 0
    ]
    return [*found, words.RAINS]


def _band_words(low_h: float, high_h: float) -> str:
    """Hours as a band, outward to the quarter of an hour."""
    low, high = np.floor(low_h * 4) / 4, np.ceil(high_h * 4 - 1e-9) / 4
    if high <= 1:
        return f"{low * 60:.0f} to {high * 60:.0f} min" if low else f"up to {high * 60:.0f} min"
    return f"{low:g} to {high:g} h" if low else f"up to {high:g} h"


def _slot_line(slot: Slot, works: Sequence[Work], zone: datetime.tzinfo | None) -> str:
    work = works[slot.work]
    first, last, rain = (at.astimezone(zone) for at in (slot.start, slot.end, slot.rain_from))
    rain_words = clock_words(rain) if rain.date() == slot.day else f"{day_words(rain.date())} {clock_words(rain)}"
    return words.WORK_SLOT.format(
        day=day_words(slot.day), first=clock_words(first), last=clock_words(last), work=work.title, rain=rain_words
    )
