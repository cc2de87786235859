"""The hours ahead on paper: of each treatment the next open hours, a strip, all spans with their reasons, work days."""

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from stemward.drawings.svg import Drawing
from stemward.paper.compile import to_pdf
from stemward.paper.plot_sheet import PAPER
from stemward.say.en.hours import SHEET


@dataclass(frozen=True)
class WorkHours:
    """Treatments that share their hours, in words, with the strip.

    ways: what is done, a line each. spans: sentences by daylight. unread: what nobody has read, or "".
    """

    title: str
    ways: Sequence[str]
    next: str
    spans: Sequence[str]
    unread: str
    strip: Drawing


def hours_sheet(
    tract: str,
    works: Sequence[WorkHours],
    told: Sequence[str],
    days: Sequence[str],
    as_of: datetime.date,
    paper: str = "letter",
) -> bytes:
    """The sheet as PDF/UA-1. told: how old the forecast is and what is odd about it. days: work days in sentences."""
    data = {
        "title": SHEET["title"].format(tract=tract),
        "paper": PAPER[paper],
        "footer": SHEET["footer"].format(tract=tract, as_of=as_of.isoformat()),
        "intro": [SHEET["intro"], *told],
        "works": [
            {
                "title": one.title, "ways": list(one.ways), "next": one.next, "spans": list(one.spans),
                "unread": one.unread,
                "strip": {"svg": one.strip.svg, "alt": SHEET["alt"].format(work=one.title, next=one.next)},
            }
            for one in works
        ],
        "days_head": SHEET["days"],
        "days": list(days),
    }  # fmt: skip
    return to_pdf("hours.typ", data, as_of)
