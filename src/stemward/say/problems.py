"""What is wrong with a file that came in, or with a plan that does not work out again, in English sentences."""

from collections.abc import Iterable, Mapping
from typing import Any, Protocol

from stemward.say.numbers import figure

PROBLEMS = {
    "folder.missing": "There is no folder {file}.",
    "folder.is_file": "{file} is a file; a tract is a folder.",
    "folder.empty": "{file} holds none of a tract's files. A tract has at least tract.toml and stems.csv.",
    "file.missing": "The file is missing.",
    "file.empty": "The file is empty.",
    "file.is_folder": "This is a folder where a file was expected.",
    "file.outside": "This is a link out of the tract's folder, and it was not followed.",
    "file.no_permission": "This may not be read by you on this computer.",
    "file.unreadable": "The file cannot be read: {why}.",
    "file.too_large": "The file has {size} bytes; the most that is read is {largest}.",
    "file.nul": "The file holds a zero byte, so it is no text.",
    "file.utf16_unmarked": "The file looks like UTF-16 without its mark. Save it as UTF-8.",
    "file.not_utf8": "The file is not UTF-8 text (byte {byte}). Save it as UTF-8.",
    "table.unreadable": "The table cannot be read: {why}.",
    "table.no_rows": "The table has a heading and no rows.",
    "column.unknown": "No such column is known.{near}",
    "column.twice": "The column is there twice.",
    "column.missing": "The column is missing.",
    "column.one_of": "One of these columns is needed.",
    "row.too_many_cells": "The row has {cells} cells for {columns} columns.",
    "cell.empty": "The cell is empty.",
    "cell.not_understood": "Not understood: {typed}.",
    "cell.out_of_range": "{typed} cannot be.",
    "cell.not_a_choice": "Not understood: {typed}.",
    "and_more": "And {count} more like it in this column.",
    "id.twice": "{typed} is used twice{earlier}.",
    "species.unknown": "No plant of the name {typed} is known.{near}",
    "diameter.both": "The stem has a diameter in inches and one in centimeters. Leave one of them empty.",
    "diameter.missing": "The stem has no diameter.",
    "patch.unknown": "There is no patch {typed}{stem}.",
    "stem.outside": "{stem} stands {distance} outside {patch}; {count} stems do.",
    "json.broken": "This is not JSON: {why}.",
    "geo.not_features": "This is not a collection of features.",
    "geo.no_geometry": "Feature {number} has no shape.",
    "geo.no_id": "The feature has no id.",
    "geo.kind": "{name} is a {typed}, which cannot be used here.",
    "geo.coordinates": "{name} has corners that are no pairs of numbers in meters.",
    "geo.too_few_corners": "{name} has fewer than {least} corners.",
    "geo.open_ring": "The outline of {name} does not end where it begins.",
    "geo.crosses_itself": "The outline of {name} crosses itself at {where}.",
    "geo.unsound": "The outline of {name} is not sound at {where}.",
    "geo.no_area": "The outline of {name} has no area.",
    "toml.broken": "This is not TOML: {why}.",
    "key.unknown": "No such entry is known.{near}",
    "key.missing": "The entry is missing.",
    "key.not_text": "A text in quotes was expected.",
    "key.not_list": "A list of texts was expected.",
    "key.not_truth": "true or false was expected.",
    "key.not_day": "A day was expected.",
    "key.not_table": "A table was expected.",
    "key.not_tables": "A list of tables was expected.",
    "key.no_unit": "{typed} has no unit. Write it in quotes with its unit.",
    "key.not_understood": "Not understood: {typed}.",
    "key.not_a_choice": "Not understood: {typed}.",
    "key.out_of_range": "{typed} cannot be.",
    "state.unknown": "{typed} is no state.",
    "container.overfull": "{typed} is left in a jug that holds less.",
    "fact.unknown_kind": "No label fact of the kind {typed} is known.",
    "fact.says_nothing": "The fact ({kind}) does not say what the label says.",
    "fact.says_both": "The fact ({kind}) both says something and says that it is not there.",
    "fact.who_read": "Who read this, and when? Or write proposed = true.",
    "scope.stem": "Two diameters were expected.",
    "scope.dates": "Two days of the year were expected.",
    "choice.no_product": "This way uses no product.",
    "choice.twice": "These plants in {patch} have two choices.",
    "record.broken": "The line is no entry.",
}

QUESTIONS = {
    "size.odd": "{count} stems are larger than stems mostly are ({first} first). Is the unit right?",
    "stem.just_outside": "{count} stems stand up to 33 ft outside {patch} ({first} first). Is that right?",
}

VERIFIED = {
    "not_a_plan": "This is not a plan written by this program: {missing}.",
    "code_differs": "The code is {written}, but what the file holds gives {worked}: something was changed since.",
    "other_formulae": "The plan was worked with formulae {written}; these are {here}.",
    "step_differs": "{step} is written as {written:.6g} and works out to {worked:.6g}.",
    "cannot_work": "{step} cannot be worked: {why}.",
    "figure_differs": "{what} is shown as {shown:.6g} and works out to {worked:.6g}.",
}

MOST = 50


class ProblemLike(Protocol):
    """What gate notes of a problem."""

    @property
    def message(self) -> str: ...
    @property
    def file(self) -> str: ...
    @property
    def line(self) -> int | None: ...
    @property
    def column(self) -> str: ...
    @property
    def expected(self) -> str: ...
    @property
    def values(self) -> tuple[tuple[str, Any], ...]: ...


def problem_line(problem: ProblemLike) -> str:
    """One problem as a line: file, line, column, sentence, and an example of what was expected."""
    values = dict(problem.values)
    near = values.get("near")
    words: dict[str, Any] = {"file": problem.file, **values}
    words["near"] = f" Did you mean {near}?" if near else ""
    words["earlier"] = f", first in line {values['earlier']}" if values.get("earlier") else ""
    words["stem"] = values.get("stem", "") if problem.message == "stem.outside" else _named(values)
    if "distance_m" in values:
        words["distance"] = f"{values['distance_m']:.0f} m ({figure('distance_m', values['distance_m'], 'us')})"
    where = problem.file if not problem.message.startswith("folder.") else ""
    if problem.line:
        where += f", line {problem.line}"
    if problem.column:
        where += f", {problem.column}"
    text = PROBLEMS[problem.message].format(**words)
    expected = f" Expected for example: {problem.expected}." if problem.expected else ""
    return f"{where}: {text}{expected}" if where else text + expected


def _named(values: Mapping[str, Any]) -> str:
    return f" (stem {values['stem']}, {values['count']} in all)" if values.get("stem") else ""


def problem_lines(problems: Iterable[ProblemLike]) -> list[str]:
    """All problems as lines, at most 50, the rest counted."""
    lines = [problem_line(problem) for problem in problems]
    return lines[:MOST] + ([f"And {len(lines) - MOST} more."] if len(lines) > MOST else [])


def question_line(question: Mapping[str, Any]) -> str:
    """A doubt about something that was read, as a line."""
    where = f"{question['file']}, line {question['line']}" if question["line"] else str(question["file"])
    return f"{where}: {QUESTIONS[question['message']].format(**question['values'])}"


def verified_line(message: str, values: Mapping[str, Any]) -> str:
    """One thing that did not work out again, as a sentence."""
    return VERIFIED[message].format(**values)
