"""Work days that were taken out of a forecast, and whether a newer one closes them."""

import datetime
import hmac
import secrets
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from stemward.handbook import load
from stemward.kinds import Tract
from stemward.notebook.models import Kept
from stemward.plan.days import Days, Work
from stemward.plan.next_step import Matter
from stemward.plan.open_hours import doings, judge
from stemward.say import hours as say
from stemward.say.numbers import System
from stemward.say.speaker import how_words
from stemward.web import clock, forecasts
from stemward.web.kept import kept_lately


def _name(tract_id: str) -> str:
    return f"hours taken {tract_id}"


def work_title(item: Mapping[str, Any]) -> str:
    """A treatment as its work day is named, unlike every other: plant, patch, what is done."""
    return f"{item['common']}, {item['patch_name']} ({how_words(item)})"


def take(tract_id: str, days: Days, works: Sequence[Work]) -> None:
    """Remember these work days in place of those before."""
    rows = [
        {
            "title": works[slot.work].title,
            "first": f"{slot.start:%Y-%m-%dT%H:%M:%S}",
            "last": f"{slot.end:%Y-%m-%dT%H:%M:%S}",
        }
        for slot in days.slots
    ]
    Kept.objects.update_or_create(name=_name(tract_id), defaults={"body": rows})


def taken(tract_id: str) -> list[dict[str, str]]:
    """The work days that were taken and are not over."""
    rows = Kept.objects.filter(name=_name(tract_id)).values_list("body", flat=True).first() or []
    now = np.datetime64(clock.now().replace(tzinfo=None), "s")
    return [row for row in rows if np.datetime64(row["last"], "s") > now]


def feed_word(tract_id: str, fresh: bool = False) -> str:
    """The word in the address under which a calendar program may read the work days; a fresh one ends the old."""
    name = f"calendar {tract_id}"
    have = Kept.objects.filter(name=name).values_list("body", flat=True).first()
    if have and not fresh:
        return str(have)
    word = secrets.token_urlsafe(24)
    Kept.objects.update_or_create(name=name, defaults={"body": word})
    return word


def tract_of_feed(word: str) -> str | None:
    """The tract whose work days stand under a word; None for a word that is none or was ended."""
    for name, body in Kept.objects.filter(name__startswith="calendar ").values_list("name", "body"):
        if isinstance(body, str) and hmac.compare_digest(body.encode(), word.encode()):
            return str(name).removeprefix("calendar ")
    return None


def taken_lines(rows: Sequence[Mapping[str, str]], zone: datetime.tzinfo | None) -> list[str]:
    """Those work days in words."""
    found = []
    for row in rows:
        first, last = (say.local(np.datetime64(row[key], "s"), zone) for key in ("first", "last"))
        found.append(
            f"{say.day_words(first.date())} {say.clock_words(first)} to {say.clock_words(last)}: {row['title']}"
        )
    return found


def closed_by_forecast(tract_id: str, land: Tract, plan: dict[str, Any], units: System) -> list[Matter]:
    """A matter for each work day taken in which the newest forecast shuts an hour."""
    rows = taken(tract_id)
    place = forecasts.place_of(land, tract_id) if rows else None
    if not rows or place is None:
        return []
    site = forecasts.site_of(place, land.time_zone)
    key = (tract_id, plan["code"], forecasts.got_at(tract_id), units, tuple(row["first"] for row in rows))
    return kept_lately("hours taken", key, lambda: _closed(tract_id, land, plan, rows, site, units))


def _closed(
    tract_id: str, land: Tract, plan: dict[str, Any], rows: Sequence[Mapping[str, str]], site: Any, units: System
) -> list[Matter]:
    have, zone, book, found = forecasts.kept(tract_id, site), clock.zone(land), load(), []
    if have is None:
        return []
    works = {work_title(item): (item, doing) for item, doing in doings(land, plan["treatments"])}
    for row in rows:
        if row["title"] not in works:
            continue
        item, doing = works[row["title"]]
        judged = judge(doing, have.hours, book)
        start, end = np.datetime64(row["first"], "s"), np.datetime64(row["last"], "s")
        inside = (have.hours.at + np.timedelta64(3600, "s") > start) & (have.hours.at < end)
        shut = judged.shut & inside
        if not shut.any():
            continue
        reason = next(r for r in judged.reasons if r.rule.weight == "shut" and (r.closed & shut).any())
        first = say.local(np.datetime64(row["first"], "s"), zone)
        values = (("day", say.day_words(first.date())), ("reason", say.reason_words(reason, units)))
        about = (("patch", item["patch"]),)
        found.append(Matter("hours_shut", values, about, due=first.date(), name=row["title"]))
    return found
