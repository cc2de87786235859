"""The one place of the pages that looks at the clock. STEMWARD_TODAY (2026-10-10) sets the day, to try things."""

import datetime
import os
import zoneinfo

from stemward.kinds import Tract


def now() -> datetime.datetime:
    """This moment, with its zone."""
    return datetime.datetime.now(datetime.UTC)


def today(land: Tract | None = None) -> datetime.date:
    """Today where the tract is."""
    named = os.environ.get("STEMWARD_TODAY")
    if named:
        return datetime.date.fromisoformat(named)
    return there(land).date()


def there(land: Tract | None = None) -> datetime.datetime:
    """This moment by the clocks of the tract."""
    return now().astimezone(zone(land))


def zone(land: Tract | None = None) -> datetime.tzinfo | None:
    """Time zone of the tract; None, which is this computer's, where none is known."""
    try:
        return zoneinfo.ZoneInfo(land.time_zone) if land and land.time_zone else None
    except (KeyError, ValueError, OSError):
        return None


def time_of_day(at: datetime.datetime) -> str:
    """A time as people write it here: "9:14 am"."""
    local = at.astimezone()
    return f"{local.hour % 12 or 12}:{local.minute:02d} {'am' if local.hour < 12 else 'pm'}"
