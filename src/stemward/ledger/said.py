"""Reads what was ticked on a sheet as a person types it: "14-32 treated", "all but 7, 9 treated", "3: 20 treated"."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemward.ledger.odd import Odd, odd

WORDS = {
    "treated": "treated", "t": "treated", "done": "treated", "cut": "cut", "c": "cut", "missed": "missed",
    "m": "missed", "not found": "not found", "gone": "not found", "n": "not found",
}  # fmt: skip
_LINE = re.compile(
    r"(?P<which>all(?: but [\d\s,\-]+)?|[\d\s,\-]*\d)\s*(?::\s*(?P<count>\d+)\s*)?"
    r"(?P<word>not found|[a-z]+)(?:\s+(?:at\s+)?(?P<clock>[\d:.]+\s*(?:am|pm)?))?"
)
_CLOCK = re.compile(r"(\d{1,2})(?:[:.]?(\d\d))?\s*(am|pm)?")
MOST_SIGNS = 4000
"""Signs that one sheet's ticks may have, far more than its rows need: engineering guess."""


@dataclass(frozen=True, slots=True)
class Ticked:
    """What one sheet says. rows: how many by number of row, for each of "treated", "cut", "missed", "not found".

    first, last: earliest and latest time written beside what was treated, "" where none was.
    wrong: what was not understood; where there is something, nothing else counts.
    """

    rows: dict[str, dict[int, int]]
    first: str = ""
    last: str = ""
    wrong: tuple[Odd, ...] = ()


def clock(text: str) -> str | None:
    """A time as typed, as "09:40"; None for what is none. "940", "9:40 am", "2 pm" and "14.05" are understood."""
    found = _CLOCK.fullmatch(text.strip().lower())
    if not found:
        return None
    hour, minute = int(found[1]), int(found[2] or 0)
    if found[3]:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if found[3] == "pm" else 0)
    return f"{hour:02d}:{minute:02d}" if hour < 24 and minute < 60 else None


def read_ticks(text: str, counts: Sequence[int]) -> Ticked:
    """Read what stands on a sheet of rows 1 to n. counts: plants in each row, 1 for a mapped stem."""
    rows: dict[str, dict[int, int]] = {"treated": {}, "cut": {}, "missed": {}, "not found": {}}
    problems: list[Odd] = []
    times: list[str] = []
    if len(text) > MOST_SIGNS:
        return Ticked(rows, wrong=(odd("too_long"),))
    for number, line in enumerate(re.split(r"[\n;]", text.lower()), 1):
        line = " ".join(line.replace("–", "-").replace("—", "-").split()).strip(" .")
        if line:
            _read(line, number, counts, rows, times, problems)
    if problems:
        return Ticked({what: {} for what in rows}, wrong=tuple(problems))
    return Ticked(rows, min(times, default=""), max(times, default=""))


def ticks_of(rows: Sequence[tuple[int, int]], counts: Sequence[int], what: str) -> str:
    """Rows as a person would type them: `read_ticks` reads it back. rows: number of the row and how many of it.

    Only parts of a row are written singly.
    """
    whole = [row for row, many in rows if many == counts[row - 1]]
    runs: list[list[int]] = []
    for row in sorted(whole):
        if runs and row == runs[-1][1] + 1:
            runs[-1][1] = row
        else:
            runs.append([row, row])
    named = ", ".join(f"{first}" if first == last else f"{first}-{last}" for first, last in runs)
    parts = [f"{row}: {many} {what}" for row, many in sorted(rows) if many != counts[row - 1]]
    return "\n".join([*([f"{named} {what}"] if named else []), *parts])


def _read(
    line: str, number: int, counts: Sequence[int], rows: dict[str, dict[int, int]], times: list[str],
    problems: list[Odd],
) -> None:  # fmt: skip
    found = _LINE.fullmatch(line)
    what = WORDS.get(found["word"]) if found else None
    at = clock(found["clock"]) if found and found["clock"] else ""
    if found is None or what is None or at is None:
        problems.append(odd("not_understood", line=number, typed=line[:60]))
        return
    which = _which(found["which"], len(counts))
    if isinstance(which, Odd):
        problems.append(replace(which, values=(("line", number), *which.values)))
        return
    if found["count"] and len(which) != 1:
        problems.append(odd("count_of_one", line=number))
        return
    for row in which:
        there = counts[row - 1]
        many = int(found["count"]) if found["count"] else there - rows[what].get(row, 0)
        have = rows[what].get(row, 0)
        if have and (many <= 0 or have + many > there):
            problems.append(odd("twice", line=number, row=row, what=what))
        elif many > there:
            problems.append(odd("too_many", line=number, row=row, there=there, many=many))
        else:
            rows[what][row] = have + many
    if at and what == "treated":
        times.append(at)


def _which(text: str, last: int) -> list[int] | Odd:
    """Numbers of rows, or what is wrong with them."""
    if text.startswith("all"):
        but = _numbers(text.removeprefix("all").removeprefix(" but"), last) if "but" in text else []
        return but if isinstance(but, Odd) else [n for n in range(1, last + 1) if n not in but]
    return _numbers(text, last)


def _numbers(text: str, last: int) -> list[int] | Odd:
    found: list[int] = []
    for part in re.split(r"[,\s]+", re.sub(r"\s*-\s*", "-", text.strip())):
        ends = part.split("-")
        if not part or len(ends) > 2 or not all(end.isdigit() for end in ends):
            return odd("not_understood", typed=part[:20])
        low, high = int(ends[0]), int(ends[-1])
        if not 1 <= low <= high <= last:
            return odd("not_on_sheet", typed=part, last=last)
        found += range(low, high + 1)
    return list(dict.fromkeys(found))
