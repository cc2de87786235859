"""The hours ahead as a strip: a box an hour, day by day; told apart by shape, not by colour alone."""

from collections.abc import Sequence

from stemward.drawings.svg import Drawing, area, document, line, path, text

LEFT_MM, HOUR_MM, ROW_MM, HIGH_MM = 34.0, 6.4, 11.0, 6.4


def hours_strip(days: Sequence[tuple[str, Sequence[str]]], marks: Sequence[tuple[int, str]]) -> Drawing:
    """A row a day, a box an hour of the day: filled for open, a stroke for find out, empty for shut, nothing at all
    where no hour is known.

    days: name of the day and 24 states ("open", "find out", "shut", ""). marks: hours of the day with their words
    under the first row's top. numbers: open hours in all. Raises ValueError for a day without 24 states.
    """
    body, open_hours = "", 0
    for hour, words in marks:
        body += text(LEFT_MM + hour * HOUR_MM, 5.0, words, 5.6, "middle")
    for row, (name, states) in enumerate(days):
        if len(states) != 24:
            raise ValueError(f"{name}: a day has 24 hours, not {len(states)}.")
        top = 7.5 + row * ROW_MM
        body += text(0.5, top + HIGH_MM - 1.4, name, 5.6, "start", True)
        for hour, state in enumerate(states):
            left = LEFT_MM + hour * HOUR_MM
            if not state:
                continue
            box = path(
                [(left, top), (left + HOUR_MM - 0.8, top), (left + HOUR_MM - 0.8, top + HIGH_MM), (left, top + HIGH_MM)]
            )
            if state == "open":
                open_hours += 1
                body += area(box, "bark") + line(box, 0.5, "ink")
            elif state == "find out":
                body += line(box, 0.5, "ink")
                body += line(
                    f"M{left + 0.8:.2f} {top + HIGH_MM - 0.8:.2f}L{left + HOUR_MM - 1.6:.2f} {top + 0.8:.2f}", 0.6
                )
            else:
                body += line(box, 0.3, "chaff")
    high = 9.0 + len(days) * ROW_MM
    return Drawing(
        document(LEFT_MM + 24 * HOUR_MM, high, body), LEFT_MM + 24 * HOUR_MM, high, None, {"open": float(open_hours)}
    )
