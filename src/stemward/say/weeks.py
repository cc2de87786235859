"""The weeks of the year in sentences: working days to expect, the best times of year, sap and leaves."""

import datetime
from collections.abc import Sequence

import numpy as np

from stemward.handbook import Book
from stemward.handbook.field import Season
from stemward.kinds.hours import Hours
from stemward.plan.open_hours import Doing
from stemward.plan.weeks import DAY_OF_WORK_H, Flow, Week
from stemward.say.en import hours as words


def week_lines(weeks: Sequence[Week], hours: Hours, seasons: Sequence[Season]) -> list[str]:
    """Which weeks have most working days, and how many to expect, a line a month; intervals as whole days outward.

    seasons: best and poor times of plant and way; the weeks that are named lie in the best and not in the poor.
    """
    known = [week for week in weeks if week.days]
    if not known:
        return [words.WEEKS_UNKNOWN]
    if max(week.mean for week in known) == 0:
        return [words.WEEKS_NONE]
    years = max(len(week.days) for week in known)
    values = {"years": years, "place": hours.source, "hours": DAY_OF_WORK_H}
    from_words = (
        words.WEEKS_TYPICAL if hours.kind == "typical year" else words.WEEKS_ONE if years == 1 else words.WEEKS_FROM
    )
    if hours.kind == "days":
        from_words = words.WEEKS_DAYS
    return [from_words.format(**values), _best_line(known, seasons), *_month_lines(known)]


def _best_line(known: Sequence[Week], seasons: Sequence[Season]) -> str:
    """The weeks with most working days among those that plant and way are best in."""
    best = [s for s in seasons if s.best]
    fit = [w for w in known if not is_poor(w.first, seasons) and (not best or is_best(w.first, seasons))]
    most = max((week.mean for week in fit), default=0.0)
    if most == 0:
        return words.WEEKS_NONE_FIT
    named = runs([(week.number, _week_name(week)) for week in fit if week.mean >= most - 0.5])
    return (words.WEEKS_BEST if best else words.WEEKS_BEST_BY_WEATHER).format(weeks=", ".join(named))


def runs(weeks: Sequence[tuple[int, str]]) -> list[str]:
    """Weeks that follow each other as one: "Sep 3 to Oct 8"."""
    found: list[list[tuple[int, str]]] = []
    for one in weeks:
        if found and one[0] == found[-1][-1][0] + 1:
            found[-1].append(one)
        else:
            found.append([one])
    return [run[0][1] if len(run) == 1 else words.WEEKS_RUN.format(first=run[0][1], last=run[-1][1]) for run in found]


def _month_lines(known: Sequence[Week]) -> list[str]:
    months: dict[int, list[Week]] = {}
    for week in known:
        months.setdefault(week.first[0], []).append(week)
    return [
        words.WEEKS.format(first=_week_name(mine[0]), days=", ".join(_days(week) for week in mine))
        for mine in months.values()
    ]


def strip_words(seasons: Sequence[Season]) -> tuple[str, ...]:
    """What stands under the strip of weeks."""
    shown = (True, any(s.best for s in seasons), any(not s.best for s in seasons))
    return tuple(line for line, is_shown in zip(words.WEEKS_STRIP, shown, strict=True) if is_shown)


def is_best(day: tuple[int, int], seasons: Sequence[Season]) -> bool:
    """True if a day lies in a best time of year."""
    return any(s.best and s.holds(day) for s in seasons)


def is_poor(day: tuple[int, int], seasons: Sequence[Season]) -> bool:
    """True if a day lies in a poor time of year."""
    return any(not s.best and s.holds(day) for s in seasons)


def _week_name(week: Week) -> str:
    return f"{words.MONTHS[week.first[0] - 1]} {week.first[1]}"


def _days(week: Week) -> str:
    low, high = int(np.floor(week.low + 1e-9)), int(np.ceil(week.high - 1e-9))
    return str(low) if low == high else words.WEEKS_BAND.format(low=low, high=high)


def flow_line(flows: Sequence[Flow]) -> str:
    """When sap rises and leaves come out, as the middle of the years."""
    whole = [f for f in flows if f.sap_from is not None and f.sap_to is not None and f.leaves_out is not None]
    if not whole:
        return words.NO_FLOW
    first, last, out = (
        _day_of_year(float(np.median([getattr(f, name) for f in whole])))
        for name in ("sap_from", "sap_to", "leaves_out")
    )
    return words.FLOW.format(first=first, last=last, out=out)


def _day_of_year(number: float) -> str:
    when = datetime.date(2001, 1, 1) + datetime.timedelta(days=round(number) - 1)
    return f"{words.MONTHS[when.month - 1]} {when.day}"


def seasons_of(book: Book, doing: Doing) -> Sequence[Season]:
    """Best and poor times of year of a way on a plant; oil on a stump goes by the seasons of bark."""
    how = "basal bark" if doing.method == "cut stump" and doing.carrier == "oil" else doing.method
    return book.seasons(doing.species, how) if doing.species else ()


def season_line(book: Book, doing: Doing, plant: str) -> str:
    """The handbook's best and poor times of year for a way on a plant."""
    if not doing.species:
        return words.NO_PLANT
    seasons = seasons_of(book, doing)
    best = [f"{_month_day(s.first)} to {_month_day(s.last)}" for s in seasons if s.best]
    poor = [f"{_month_day(s.first)} to {_month_day(s.last)} ({s.why})" for s in seasons if not s.best]
    if not best and not poor:
        return words.NO_SEASONS.format(how=doing.method, plant=plant)
    said = words.POOR.format(poor=", ".join(poor)) if poor else ""
    return words.SEASONS.format(
        how=doing.method.capitalize(), plant=plant, best=", ".join(best) or "not on record", poor=said
    )


def _month_day(day: tuple[int, int]) -> str:
    return f"{words.MONTHS[day[0] - 1]} {day[1]}"
