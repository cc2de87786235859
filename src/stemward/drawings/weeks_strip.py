"""The weeks of the year as a strip: a column a week, its working days as height; best and poor times beneath."""

from collections.abc import Callable, Sequence

from stemward.drawings.svg import Drawing, area, document, line, path, text

MonthDay = tuple[int, int]
LEFT_MM, WEEK_MM, DAY_MM, TOP_MM = 12.0, 3.2, 3.0, 3.0
DAYS = 7
BASE_MM = TOP_MM + DAYS * DAY_MM
HIGH_MM = BASE_MM + 15.0


def weeks_strip(
    weeks: Sequence[tuple[MonthDay, float, float, float]],
    months: Sequence[str],
    best: Callable[[MonthDay], bool],
    poor: Callable[[MonthDay], bool],
) -> Drawing:
    """A bar a week as high as its days of seven, a whisker over its interval; a thick line under the best weeks, a
    broken one under the poor.

    weeks: first day as (month, day), mean days, low, high; nan where no year is known. months: 12 short names.
    numbers: mean days in all, weeks drawn.
    """
    body, total, drawn = "", 0.0, 0
    for days in (0, DAYS):
        body += text(LEFT_MM - 2, BASE_MM - days * DAY_MM + 1.5, str(days), 4.6, "end")
    body += line(f"M{LEFT_MM} {BASE_MM:.2f}H{LEFT_MM + len(weeks) * WEEK_MM:.2f}", 0.4)
    named = 0
    for number, (first, mean, low, high) in enumerate(weeks):
        left = LEFT_MM + number * WEEK_MM
        if first[0] != named:
            named = first[0]
            body += line(f"M{left:.2f} {BASE_MM:.2f}v2", 0.4)
            body += text(left + 0.6, BASE_MM + 6.4, months[named - 1], 4.6, "start")
        foot = BASE_MM + 10.0
        if best(first):
            body += line(f"M{left:.2f} {foot:.2f}h{WEEK_MM:.2f}", 1.6)
        if poor(first):
            body += line(f"M{left + 0.5:.2f} {foot + 3.4:.2f}h{WEEK_MM - 1.2:.2f}", 1.2)
        if mean != mean:
            continue
        total, drawn = total + mean, drawn + 1
        top, right = BASE_MM - mean * DAY_MM, left + WEEK_MM - 0.7
        if mean > 0:
            body += area(path([(left, BASE_MM), (left, top), (right, top), (right, BASE_MM)]), "bark")
        if high > low:
            middle = (left + right) / 2
            body += line(f"M{middle:.2f} {BASE_MM - low * DAY_MM:.2f}V{BASE_MM - high * DAY_MM:.2f}", 1.1, "paper")
            body += line(f"M{middle:.2f} {BASE_MM - low * DAY_MM:.2f}V{BASE_MM - high * DAY_MM:.2f}", 0.5)
    wide = LEFT_MM + len(weeks) * WEEK_MM
    return Drawing(document(wide, HIGH_MM, body), wide, HIGH_MM, None, {"days": total, "weeks": drawn})
