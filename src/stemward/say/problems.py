"""What is wrong with a file that came in, or with a plan that does not work out again, in English sentences."""

from collections.abc import Iterable, Mapping
from typing import Any, Protocol

from stemward.say.numbers import bare, figure

PROBLEMS = {
    "folder.missing": "There is no such folder.",
    "folder.not_a_folder": "This is a file; a tract is a folder.",
    "folder.empty": "The folder is empty. A tract has at least tract.toml and stems.csv.",
    "folder.no_permission": "The folder may not be read by you on this computer.",
    "folder.cannot_read": "The folder cannot be read: {why}.",
    "folder.more": "And {count} more problems.",
    "file.missing": "The file is missing.{near}",
    "file.other_name": "The file would not be read under this name; {meant} is probably meant.",
    "file.no_permission": "The file may not be read by you on this computer.",
    "file.cannot_read": "The file cannot be read: {why}.",
    "file.not_a_file": "This is no ordinary file.",
    "file.outside": "This is a link out of the tract's folder, and it was not followed.",
    "file.too_big": "The file is larger than the {most_mb:g} MB that are read.",
    "file.empty": "The file is empty.",
    "file.nul": "The file holds a zero byte, so it is no text.",
    "file.looks_like": "The file looks like {what} and not like text.",
    "file.looks_utf16": "The file looks like UTF-16 without its mark. Save it as UTF-8.",
    "file.broken_utf16": "The file is marked as UTF-16 and is not sound. Save it as UTF-8.",
    "file.not_utf8": "The file is not UTF-8 text: byte {byte} at place {at}, perhaps {perhaps}. Save it as UTF-8.",
    "foreign.too_large": "The file is larger than the {most_mb:.0f} MB that are read.",
    "foreign.too_many": "The file holds {rows:g} rows or too many columns; the most that are read is {most:g} rows.",
    "foreign.no_rows": "There are no rows in the file.",
    "foreign.unknown": "This is none of the kinds that are read: CSV, XLSX, GPX, KML, GeoJSON, GeoPackage, or a "
    "Shapefile with all its parts in one zip.",
    "foreign.damaged": "The file cannot be read; it may be damaged, cut off, or of another kind than its name says.",
    "foreign.encoding": "The file's letters are in an encoding that is not known. Save it as UTF-8.",
    "foreign.zip_large": "What is in the zip file is empty or larger than the 256 MB and 200 files that are read.",
    "foreign.zip_outside": "The zip file names a place outside of its folder or is locked, and was not opened.",
    "foreign.slow": "Reading the file took too long, and was given up.",
    "picture.too_large": "The picture has more than the {most:.0f} million pixels that are read. Save it smaller.",
    "picture.unknown": "This is none of the pictures that are read: PNG, JPEG, WebP or GeoTIFF.",
    "picture.no_system": "The picture says where it lies in a way that is not known. Give its corners by hand.",
    "csv.no_headings": "The first row is not the headings: {found}.",
    "csv.no_rows": "There are headings and no rows.",
    "csv.unknown_column": "No such column is known.{near}",
    "csv.no_heading": "Column {at} has values and no heading.",
    "csv.column_twice": "The column is there twice, first as {first}.",
    "csv.missing_column": "The column is missing.{near}",
    "csv.missing_one_of": "One of these columns is needed: {columns}.",
    "csv.ragged": "The row has {cells} cells for {columns} columns.",
    "csv.quotes": "A quote is opened here and never closed.",
    "csv.too_wide": "There are {columns} columns; the most that are read is {most}.",
    "cell.empty": "The cell is empty.",
    "cell.too_long": "The cell has {length} signs; the most is {most}.",
    "cell.odd_sign": "The cell holds a sign that cannot be printed.",
    "cell.not_a_number": "Not understood: {typed}.",
    "cell.not_whole": "{typed} is no whole number.",
    "cell.decimal_comma": "{typed} holds a comma. Write a point for decimals, and leave out commas for thousands.",
    "cell.other_unit": "{typed} has another unit than the column, which is in {unit}.",
    "cell.out_of_range": "{typed} cannot be; from {low:g} to {high:g} {unit} can.",
    "cell.not_a_choice": "Not understood: {typed}.{near}",
    "stems.id_twice": "The id {id} is used twice, first in line {first_line}.",
    "stems.two_diameters": "Stem {id} has a diameter in inches and one in centimeters. Leave one of them empty.",
    "stems.no_diameter": "Stem {id} has no diameter.",
    "stems.unknown_patch": "There is no patch {patch} (stems: {count:g}).{near}",
    "stems.unknown_species": "No plant of the name {species} is known (stems: {count:g}).{near}",
    "stems.degrees": "The places look like degrees and not like meters (they span {span_x:g} by {span_y:g}).",
    "stems.outside_patch": "Stem {id} stands {distance} outside {patch}, inside {inside}.",
    "stems.outside_all": "Stem {id} of {patch} stands {distance} outside every patch.",
    "json.syntax": "This is not JSON (at sign {at}).",
    "json.too_deep": "The file is nested too deeply.",
    "json.key_twice": "The entry {name} is there twice.",
    "json.number": "{typed} is no number that can be used.",
    "geo.not_a_collection": "A collection of features was expected, and this is {what}.",
    "geo.not_a_feature": "This is no feature.",
    "geo.degrees": "The places look like degrees and not like meters (they span {span_x:g} by {span_y:g}).",
    "geo.degrees_named": "The file says that its places are degrees ({system}). Meters are needed.",
    "geo.no_shape": "The feature has no shape.",
    "geo.wrong_shape": "This is a {what}, and {wanted} was expected.",
    "geo.many_parts": "This is a {what}, in several parts. Make each part a feature of its own.",
    "geo.position": "The corners are no pairs of numbers in meters.",
    "geo.too_few": "The shape has {corners} corners; it takes at least {least}.",
    "geo.not_closed": "The outline does not end where it begins; {gap} are open.",
    "geo.crosses_itself": "The outline crosses itself at {x_m:g}, {y_m:g} (meters).",
    "geo.hole": "A hole of the outline is not inside it, at {x_m:g}, {y_m:g} (meters).",
    "geo.no_area": "The outline has no area.",
    "geo.no_properties": "The feature has no properties.",
    "geo.unknown_property": "No such property is known.{near}",
    "geo.missing_property": "The property is missing.",
    "geo.two_sizes": "{id} has a size in inches and one in centimeters. Leave one of them out.",
    "geo.id_twice": "The id {id} is used twice, first in line {first_line}.",
    "geo.unknown_patch": "There is no patch {patch}.{near}",
    "toml.syntax": "This is not TOML at sign {at}: {why}.",
    "toml.too_deep": "The file is nested too deeply.",
    "key.unknown": "No such entry is known: {name}.{near}",
    "key.missing": "The entry is missing.",
    "key.wrong_type": "{wanted} was expected here.",
    "key.empty": "The entry is empty.",
    "key.too_long": "The entry has {length} signs; the most is {most}.",
    "key.odd_sign": "The entry holds a sign that cannot be printed.",
    "key.not_a_choice": "Not understood: {typed}.{near}",
    "key.figure": "Not understood: {typed}.",
    "key.out_of_range": "{typed} cannot be; from {low:g} to {high:g} {unit} can.",
    "key.not_a_day": "{typed} is no day.",
    "key.id_twice": "The id {id} is used twice, first in {first_file}, line {first_line}.",
    "key.too_many": "There are {count}; the most that are read is {most}.",
    "tract.no_patches": "The tract has no patches.",
    "tract.unknown_patch": "There is no patch {patch}.{near}",
    "tract.time_zone": "{typed} is no time zone.",
    "tract.state": "{typed} is no state.{near}",
    "measure.mark_too_big": "The mark of {id} is larger than what it holds.",
    "jug.more_than_holds": "More is left in {id} than it holds.",
    "fact.nothing_said": "The fact ({kind}) does not say what the label says.",
    "fact.says_and_denies": "The fact ({kind}) says something and also says: {standing}.",
    "fact.no_such_negative": "A label cannot say '{standing}' of {kind}.",
    "fact.of_one_only": "The fact ({kind}) is no list, so 'of' has no place here.",
    "fact.reading": "Who read the fact ({kind}), and when? Or write proposed = true.",
    "fact.needs_unit": "The fact ({kind}) has no unit: {typed}.",
    "fact.backward": "The range runs backward: {low} to {high}.",
    "choice.unknown_species": "No plant of the name {species} is known.{near}",
    "choice.unknown_product": "There is no product {product} on the shelf.{near}",
    "choice.twice": "The {species} on {patch} have two choices, the first in line {first_line}.",
    "choice.needs_product": "The way {how} needs a product.",
    "choice.takes_no_product": "The way {how} uses no product.",
    "rates.more_dead": "More plants are dead than were seen.",
    "rates.plant": "No plant of the name {typed} is known.",
    "rates.method": "{typed} is no way of treating that is known here.",
    "rates.ingredient": "No active ingredient of the name {typed} is known.",
    "plots.class": "In plot {plot} the largest size of a class is not above its smallest, or is missing.",
    "money.not_understood": "Not understood as money: {typed}.",
    "choice.undiluted": "An undiluted product has no share of carrier.",
    "choice.unknown_partner": "There is no product {partner} on the shelf.{near}",
    "choice.partner": "A second product and its share go together; only one of the two is given.",
    "choice.over_full": "The two products together are more than the whole mix.",
    "record.not_an_object": "The line is no entry.",
    "record.unknown_key": "No such part of an entry is known: {name}.{near}",
    "record.missing_key": "A part of the entry is missing.",
    "record.wrong_type": "{wanted} was expected here.",
    "record.at": "{typed} is no time.",
    "record.later_version": "The entry is of a later version ({schema}) than can be read here.",
    "record.id_twice": "The id {id} is used twice with different content, first in line {first_line}.",
    "record.corrects_nothing": "The entry corrects {corrects}, which is not there.",
    "record.corrects_itself": "The entry corrects itself.",
    "record.kind_near": "No entry of the kind {kind} is known.{near}",
    "record.unknown_patch": "There is no patch {patch}.{near}",
    "record.ingredient_spelled": "The ingredient {ingredient} is not on the shelf under that name.{near}",
    "record.amount": "{typed} is no amount.",
}

QUESTIONS = {
    "ask.kind_not_counted": "Entries of the kind {kind} are kept and count toward nothing yet.",
    "ask.ingredient_near": "Is {ingredient} what you mean?{near}",
    "ask.odd_size": "Sizes over {odd_above:g} {unit}: {count}, the first {typed} ({id}). Is the unit right?",
    "ask.median_large": "Half of the stems are thicker than {median:g} {unit}. Is it perhaps {perhaps}?",
    "ask.species_large": "Half of the {species} are thicker than {median:g} {unit}, seldom so. Is it {perhaps}?",
    "ask.degrees": "The places may be degrees and not meters. Which are they?",
    "ask.outside": "{count} stems stand up to {distance} outside {patch}, {id} first. Is that right?",
    "ask.overlap": "{patch} and {other} overlap by {area}. Is that right?",
    "ask.area_differs": "{patch} is said to have {stated} and is drawn with {drawn}. Which is right?",
    "ask.grid": "The file names a grid ({system}). Places are taken as meters of the tract's own.",
    "ask.spared_species": "No plant of the name {species} is known for {id}.{near}",
    "ask.spared_no_size": "{id} has no size. How thick is it at breast height?",
    "ask.fact_plant": "No plant of the name {species} is known.{near}",
    "ask.strong": "{ingredient} at {strength} is very strong. Is the unit right?",
    "ask.gear": "{gear} of {role} is on no list of equipment.{near}",
    "ask.choice_unused": "There are no {species} on {patch} for this choice.",
    "ask.unsure_plant": "Nobody is sure that this is {species}. Who can name it from a twig with leaves, or a photo?",
    "ask.not_read": "This file is not read yet.",
    "ask.more": "And {count} more questions.",
}

VERIFIED = {
    "not_a_plan": "This is not a plan written by this program: {missing}.",
    "code_differs": "The code is {written}, but what the file holds gives {worked}: something was changed since.",
    "other_formulae": "The plan was worked with formulae {written}; these are {here}.",
    "step_differs": "{step} is written as {written:.6g} and works out to {worked:.6g}.",
    "cannot_work": "{step} cannot be worked: {why}.",
    "figure_differs": "{what} is shown as {shown:.6g} and works out to {worked:.6g}.",
}


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
    def values(self) -> Mapping[str, Any]: ...


def _words(values: Mapping[str, Any]) -> dict[str, Any]:
    """Values as a sentence takes them: figures with a unit in words beside the bare ones, near matches as a hint."""
    words: dict[str, Any] = dict(values)
    for name, value in values.items():
        if isinstance(value, int | float) and name not in ("x_m", "y_m") and bare(name) != name:
            words[bare(name)] = figure(name, value, "us")
    near = values.get("near")
    words["near"] = f" Did you mean {near}?" if near else ""
    return words


def problem_line(problem: ProblemLike) -> str:
    """One problem as a line: file, line, column, sentence, and an example of what was expected."""
    where = problem.file
    if problem.line:
        where += f", line {problem.line}"
    if problem.column:
        where += f", {problem.column}"
    text = PROBLEMS[problem.message].format(**_words(problem.values))
    text = text[:1].upper() + text[1:]
    expected = f" Expected for example: {problem.expected}." if problem.expected else ""
    return f"{where}: {text}{expected}" if where else text + expected


def problem_sentence(problem: ProblemLike) -> str:
    """One problem without its place in a file, for a form: sentence, and an example of what was expected."""
    text = PROBLEMS[problem.message].format(**_words(problem.values))
    text = text[:1].upper() + text[1:]
    return f"{text} Expected for example: {problem.expected}." if problem.expected else text


def problem_lines(problems: Iterable[ProblemLike]) -> list[str]:
    """All problems as lines."""
    return [problem_line(problem) for problem in problems]


def question_words(question: Mapping[str, Any]) -> str:
    """A doubt about something that was read, without its place."""
    return QUESTIONS[question["message"]].format(**_words(question["values"]))


def question_line(question: Mapping[str, Any]) -> str:
    """A doubt about something that was read, as a line."""
    where = f"{question['file']}, line {question['line']}" if question["line"] else str(question["file"])
    text = question_words(question)
    return f"{where}: {text}" if where else text


def verified_line(message: str, values: Mapping[str, Any]) -> str:
    """One thing that did not work out again, as a sentence."""
    return VERIFIED[message].format(**values)
