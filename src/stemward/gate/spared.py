"""spared.geojson: plants and places that must come to no harm."""

from typing import Any

from stemward.gate.figures import FigureError, figure
from stemward.gate.geojson import Feature, read_features
from stemward.gate.names import FindSpecies, look_up
from stemward.gate.problems import Problems
from stemward.gate.text import ODD_SIGNS, clean, near
from stemward.kinds import SPARED, Column, Spared
from stemward.units import convert

FILE = "spared.geojson"
MOST_SIGNS = {"id": 40, "text": 200, "choice": 40, "number": 40}


def read_spared(text: str, find_species: FindSpecies, problems: Problems) -> tuple[Spared, ...]:
    """Read spared.geojson; features with anything wrong are noted and left out."""
    spared = []
    seen: dict[str, int] = {}
    for feature in read_features(text, FILE, ("Point", "LineString", "Polygon"), problems):
        if problems.enough:
            break
        _unknown(feature, problems)
        one = _spared(feature, find_species, problems)
        if one.id and one.id in seen:
            _add(feature, "geo.id_twice", "id", problems, id=one.id, first_line=seen[one.id])
        seen.setdefault(one.id, feature.line_of("id") or 0)
        if one.shape is not None:
            spared.append(one)
    return tuple(spared)


def _add(feature: Feature, message: str, key: str, problems: Problems, expected: str = "", **values: Any) -> None:
    problems.add(message, FILE, feature.line_of(key), key, expected, **values)


def _unknown(feature: Feature, problems: Problems) -> None:
    names = [column.name for column in SPARED.columns]
    for key in feature.properties:
        if key not in names and not problems.enough:
            shown = clean(key)
            expected, meant = ", ".join(names), near(shown, names)
            line = feature.line_of(key)
            problems.add("geo.unknown_property", FILE, line, shown, expected, near=meant)


def _spared(feature: Feature, find_species: FindSpecies, problems: Problems) -> Spared:
    words = {c.name: _word(feature, c, problems) for c in SPARED.columns if c.type != "number"}
    number = {c.name: _number(feature, c, problems) for c in SPARED.columns if c.type == "number"}
    dbh_cm, dbh_in = number["dbh_cm"], number["dbh_in"]
    if feature.properties.get("dbh_cm") is not None and feature.properties.get("dbh_in") is not None:
        _add(feature, "geo.two_sizes", "dbh_in", problems, id=words["id"])
    if dbh_in is not None:
        dbh_cm = dbh_in * convert(1.0, "in", "cm")
    if words["kind"] == "tree" and dbh_cm is None and number["crown_radius_m"] is None:
        problems.ask("ask.spared_no_size", FILE, feature.line, "dbh_cm", id=words["id"])
    return Spared(
        id=words["id"],
        kind=words["kind"],
        shape=feature.shape,  # type: ignore[arg-type]
        species=_species(feature, words, find_species, problems),
        dbh_cm=dbh_cm,
        crown_radius_m=number["crown_radius_m"],
        note=words["note"],
    )


def _species(feature: Feature, words: dict[str, str], find_species: FindSpecies, problems: Problems) -> str:
    """Latin name; "" for a plant nobody knows, which is kept from harm all the same and asked about."""
    typed = words["species"]
    if not typed:
        return ""
    named = look_up(typed, find_species)
    if not named.latin:
        line = feature.line_of("species")
        problems.ask("ask.spared_species", FILE, line, "species", id=words["id"], species=clean(typed), near=named.near)
    return named.latin


def _word(feature: Feature, column: Column, problems: Problems) -> str:
    value = feature.properties.get(column.name)
    expected = f'"{column.name}": "{column.example}"'
    if value is None or value == "":
        if column.required:
            _add(feature, "geo.missing_property", column.name, problems, expected)
        return ""
    if not isinstance(value, str):
        _add(feature, "record.wrong_type", column.name, problems, expected, wanted="text")
        return ""
    value = value.strip()
    most = MOST_SIGNS[column.type]
    if len(value) > most:
        _add(feature, "cell.too_long", column.name, problems, expected, length=len(value), most=most)
        return ""
    if ODD_SIGNS.search(value):
        _add(feature, "cell.odd_sign", column.name, problems, expected)
        return ""
    if column.choices and value.casefold() not in column.choices:
        meant = near(value, column.choices)
        choices = ", ".join(column.choices)
        _add(feature, "cell.not_a_choice", column.name, problems, choices, typed=clean(value), near=meant)
        return ""
    return value.casefold() if column.choices else value


def _number(feature: Feature, column: Column, problems: Problems) -> float | None:
    """A figure in the column's unit, from a JSON number or from text as in a table; asks where it is odd."""
    value = feature.properties.get(column.name)
    if value is None or value == "":
        return None
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        _add(feature, "record.wrong_type", column.name, problems, column.example, wanted="a figure")
        return None
    typed = value if isinstance(value, str) else f"{value!r}"
    try:
        found = figure(typed, column) if isinstance(value, str) else float(value)
    except FigureError as error:
        values = {"typed": clean(typed), **error.values}
        _add(feature, error.message, column.name, problems, column.example, **values)
        return None
    except OverflowError:
        found = float("inf")
    low, high = column.low or 0.0, column.high or float("inf")
    if not low <= found <= high:
        _add(
            feature, "cell.out_of_range", column.name, problems, column.example,
            typed=clean(typed), low=low, high=high, unit=column.unit,
        )  # fmt: skip
        return None
    if column.odd_above is not None and found > column.odd_above:
        problems.ask(
            "ask.odd_size", FILE, feature.line_of(column.name), column.name, count=1, typed=clean(typed),
            id=str(feature.properties.get("id", "")), odd_above=column.odd_above, unit=column.unit,
        )  # fmt: skip
    return found
