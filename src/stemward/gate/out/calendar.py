"""Due dates as a calendar file (iCalendar, RFC 5545)."""

import datetime
import re
from collections.abc import Sequence
from dataclasses import dataclass

MOST_OCTETS = 75


@dataclass(frozen=True, slots=True)
class Due:
    """Something due on a day. uid: a name of its own that stays the same; title and why: plain text."""

    uid: str
    on: datetime.date
    title: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Something at hours of a day, first and last moment with their zone. uid, title, why: as of what is due."""

    uid: str
    first: datetime.datetime
    last: datetime.datetime
    title: str
    why: str = ""


def calendar(dues: Sequence[Due], made_at: datetime.datetime, meetings: Sequence[Meeting] = ()) -> bytes:
    """All-day events, one a due date, and events with hours in UTC. made_at: with its zone."""
    stamp = made_at.astimezone(datetime.UTC).strftime("%Y%m%dT%H%M%SZ")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Stemward//EN"]
    for due in dues:
        after = due.on + datetime.timedelta(days=1)
        lines += [
            "BEGIN:VEVENT", f"UID:{_text(due.uid)}", f"DTSTAMP:{stamp}", f"DTSTART;VALUE=DATE:{due.on:%Y%m%d}",
            f"DTEND;VALUE=DATE:{after:%Y%m%d}", f"SUMMARY:{_text(due.title)}",
            *([f"DESCRIPTION:{_text(due.why)}"] if due.why else ()), "END:VEVENT",
        ]  # fmt: skip
    for one in meetings:
        first, last = (at.astimezone(datetime.UTC).strftime("%Y%m%dT%H%M%SZ") for at in (one.first, one.last))
        lines += [
            "BEGIN:VEVENT", f"UID:{_text(one.uid)}", f"DTSTAMP:{stamp}", f"DTSTART:{first}", f"DTEND:{last}",
            f"SUMMARY:{_text(one.title)}", *([f"DESCRIPTION:{_text(one.why)}"] if one.why else ()), "END:VEVENT",
        ]  # fmt: skip
    return b"".join(_folded(line) for line in [*lines, "END:VCALENDAR"])


def _text(words: str) -> str:
    """Text as the format writes it; control characters have no place there."""
    plain = re.sub(r"[\x00-\x09\x0b-\x1f\x7f]", " ", words.replace("\r\n", "\n"))
    return plain.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")


def _folded(line: str) -> bytes:
    """A line in pieces of at most 75 octets, each but the first led by a blank, no character cut in two."""
    pieces: list[bytes] = []
    piece = b""
    for sign in line:
        octets = sign.encode("utf-8", "replace")
        if len(piece) + len(octets) > MOST_OCTETS:
            pieces.append(piece)
            piece = b" "
        piece += octets
    return b"\r\n".join([*pieces, piece]) + b"\r\n"
