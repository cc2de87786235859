"""stems.csv: the mapped stems."""

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stemward.gate.columns import (
    Floats,
    Words,
    by_code,
    choices,
    complain,
    counts,
    half_digits,
    is_empty,
    no_blanks,
    numbers,
    words,
)
from stemward.gate.csv_table import Cells, Lines, read_cells
from stemward.gate.degrees import looks_like_degrees
from stemward.gate.names import FindSpecies, Named, look_up
from stemward.gate.problems import MOST_SHOWN, Problems
from stemward.gate.text import clean, near
from stemward.kinds import STEMS, Stems
from stemward.units import convert

FILE = "stems.csv"
LARGE_MEDIAN_CM = 60.0
"""A stand whose middle stem is thicker is questioned: engineering guess, no source."""

WRITTEN_FINELY = r"\.[0-9]{5,}$"
"""Five decimals are a metre in degrees and a hundredth of a millimetre in metres."""


@dataclass(frozen=True, eq=False)
class StemsFile:
    """The stems, the line of each row, and the pairs of patch and species that have stems."""

    stems: Stems
    lines: Lines
    targets: frozenset[tuple[str, str]]


def read_stems(
    text: str, patches: Collection[str] | None, find_species: FindSpecies, problems: Problems
) -> StemsFile | None:
    """Read stems.csv; None if it has no usable heading. patches: those of the tract, None if not known."""
    cells = read_cells(text, STEMS, FILE, problems)
    if cells is None or not len(cells):
        return None
    for column in STEMS.columns:
        if column.required:
            no_blanks(cells, column, problems)
    number = {
        c.name: numbers(cells, c, problems) for c in STEMS.columns if c.type == "number"
    }  # fmt: skip
    count = counts(cells, STEMS.column("stems"), problems, default=1)
    _diameters_once(cells, problems)
    species, plants, own = _species(cells, find_species, problems)
    stems = Stems(
        id=_ids(cells, problems),
        patch=_patches(cells, patches, problems),
        species=species,
        x_m=number["x_m"],
        y_m=number["y_m"],
        diameter_cm=_centimetres(number["diameter_cm"], number["diameter_in"]),
        diameter_in=number["diameter_in"],
        half_digit_cm=half_digits(cells, "diameter_cm"),
        measured_at=choices(cells, STEMS.column("measured_at"), problems),
        stems=count,
        height_m=number["height_m"],
        form=choices(cells, STEMS.column("form"), problems),
        state=choices(cells, STEMS.column("state"), problems, default="standing"),
        note=words(cells, STEMS.column("note"), problems),
    )
    _degrees(cells, stems, problems)
    _odd_sizes(cells, number | {"stems": count.astype(float)}, problems)
    _medians(cells, stems, plants, own, problems)
    return StemsFile(stems, cells.lines, _targets(cells, plants, own))


def no_stems() -> Stems:
    """Stems of a tract that has none yet."""
    words, figures = np.zeros(0, "U1"), np.zeros(0)
    return Stems(
        words, words, words, figures, figures, figures, figures, figures, words, np.zeros(0, np.int64), figures,
        words, words, words,
    )  # fmt: skip


def _centimetres(cm: Floats, inches: Floats) -> Floats:
    return np.where(np.isnan(inches), cm, inches * convert(1.0, "in", "cm"))


def _ids(cells: Cells, problems: Problems) -> Words:
    column = STEMS.column("id")
    if not cells.has("id"):
        return np.zeros(len(cells), "U1")
    text = cells.columns["id"]
    twice = text.is_not_null() & ~text.is_first_distinct()
    if twice.any():
        first: dict[str, int] = {}
        for name, line in zip(text.to_list(), cells.lines.tolist(), strict=True):
            first.setdefault(name, line)
        complain(
            problems,
            cells,
            column,
            "stems.id_twice",
            twice.to_numpy(),
            lambda row: {"id": clean(text[row]), "first_line": first[text[row]]},
        )
    return words(cells, column, problems)


def _diameters_once(cells: Cells, problems: Problems) -> None:
    """Each row has one diameter: in centimetres or in inches, not both and not none."""
    if not cells.has("diameter_cm") and not cells.has("diameter_in"):
        return
    no_cm, no_inches = is_empty(cells, "diameter_cm"), is_empty(cells, "diameter_in")
    ids = cells.columns.get("id")

    def values(row: int) -> dict[str, str | float]:
        return {"id": "" if ids is None or ids[row] is None else clean(ids[row])}

    column = STEMS.column("diameter_in" if cells.has("diameter_in") else "diameter_cm")
    complain(problems, cells, column, "stems.two_diameters", ~no_cm & ~no_inches, values)
    complain(problems, cells, column, "stems.no_diameter", no_cm & no_inches, values)


def _patches(cells: Cells, patches: Collection[str] | None, problems: Problems) -> Words:
    column = STEMS.column("patch")
    if not cells.has("patch"):
        return np.zeros(len(cells), "U1")
    distinct, code = by_code(cells.columns["patch"])
    unknown = [
        n for n, patch in enumerate(distinct) if patch is not None and patches is not None and patch not in patches
    ]
    for number in unknown[:MOST_SHOWN]:
        shown = clean(distinct[number])
        _once(
            cells, "patch", code == number, problems, "stems.unknown_patch", ", ".join(patches or ()),
            patch=shown, near=near(shown, patches or ()),
        )  # fmt: skip
    problems.only_counted += max(0, len(unknown) - MOST_SHOWN)
    return words(cells, column, problems)


def _species(
    cells: Cells, find_species: FindSpecies, problems: Problems
) -> tuple[Words, list[Named], NDArray[np.intp]]:
    """Latin name of each row, each different plant found, and the number of each row's own."""
    if not cells.has("species"):
        return np.zeros(len(cells), "U1"), [], np.zeros(len(cells), np.intp)
    distinct, code = by_code(cells.columns["species"])
    found: list[Named] = []
    unknown = 0
    for number, typed in enumerate(distinct):
        # Looking for near names takes its time, and after so many unknown ones nobody reads on.
        named = Named("") if typed is None or unknown >= MOST_SHOWN else look_up(typed, find_species)
        found.append(named)
        if typed is not None and not named.latin and unknown < MOST_SHOWN:
            unknown += 1
            _once(
                cells, "species", code == number, problems, "stems.unknown_species", "tree-of-heaven",
                species=clean(typed), near=named.near,
            )  # fmt: skip
    plants = list({named.latin: named for named in found}.values())
    place = {plant.latin: at for at, plant in enumerate(plants)}
    own = np.array([place[named.latin] for named in found], np.intp)[code]
    return np.array([plant.latin for plant in plants], dtype="U")[own], plants, own


def _targets(cells: Cells, plants: list[Named], plant_of_row: NDArray[np.intp]) -> frozenset[tuple[str, str]]:
    if not cells.has("patch") or not plants:
        return frozenset()
    patches, patch_of_row = by_code(cells.columns["patch"])
    pairs = np.unique(patch_of_row * len(plants) + plant_of_row)
    return frozenset((patches[pair // len(plants)], plants[pair % len(plants)].latin) for pair in pairs)


def _once(
    cells: Cells, name: str, rows: np.ndarray, problems: Problems, message: str, expected: str, **values: str
) -> None:
    """One problem for all rows with the same wrong word, at the first of them."""
    line, heading = int(cells.lines[np.argmax(rows)]), cells.heading(name)
    problems.add(message, cells.file, line, heading, expected, count=int(rows.sum()), **values)


def _degrees(cells: Cells, stems: Stems, problems: Problems) -> None:
    """Notes coordinates that are degrees, and asks about those that could be."""
    if not cells.has("x_m") or not cells.has("y_m"):
        return
    finely = all(cells.columns[name].str.contains(WRITTEN_FINELY).fill_null(True).all() for name in ("x_m", "y_m"))
    verdict = looks_like_degrees(stems.x_m, stems.y_m, finely)
    if verdict == "sure":
        span_x, span_y = (float(np.ptp(axis)) for axis in (stems.x_m, stems.y_m))
        problems.add(
            "stems.degrees",
            FILE,
            int(cells.lines[0]),
            cells.heading("x_m"),
            "12.5",
            span_x=span_x,
            span_y=span_y,
        )
    elif verdict == "maybe":
        problems.ask("ask.degrees", FILE, int(cells.lines[0]), cells.heading("x_m"))


def _odd_sizes(cells: Cells, number: dict[str, Floats], problems: Problems) -> None:
    """One question a column about its largest value, if that is possible but hardly true."""
    for column in STEMS.columns:
        if column.odd_above is None or not cells.has(column.name):
            continue
        value = np.nan_to_num(number[column.name], nan=-np.inf)
        odd = value > column.odd_above
        if odd.any():
            row = int(np.argmax(value))
            ids = cells.columns.get("id")
            problems.ask(
                "ask.odd_size", FILE, int(cells.lines[row]), cells.heading(column.name),
                count=int(odd.sum()), typed=clean(cells.columns[column.name][row]),
                id="" if ids is None or ids[row] is None else clean(ids[row]),
                odd_above=column.odd_above, unit=column.unit,
            )  # fmt: skip


def _medians(
    cells: Cells, stems: Stems, plants: list[Named], plant_of_row: NDArray[np.intp], problems: Problems
) -> None:
    """Questions about the unit: a middle stem thicker than stands have, or than the species grows."""
    for name, unit, perhaps in (("diameter_in", "in", "cm"), ("diameter_cm", "cm", "mm")):
        rows = ~is_empty(cells, name) & np.isfinite(stems.diameter_cm)
        if not rows.any():
            continue
        line, heading = int(cells.lines[np.argmax(rows)]), cells.heading(name)
        factor = convert(1.0, unit, "cm")
        median_cm = float(np.median(stems.diameter_cm[rows]))
        if median_cm > LARGE_MEDIAN_CM:
            problems.ask(
                "ask.median_large", FILE, line, heading,
                median=median_cm / factor, unit=unit, limit_cm=LARGE_MEDIAN_CM, perhaps=perhaps,
            )  # fmt: skip
            continue
        for number, plant in enumerate(plants):
            own = rows & (plant_of_row == number)
            if plant.max_dbh_cm is None or not own.any():
                continue
            middle_cm = float(np.median(stems.diameter_cm[own]))
            if middle_cm > plant.max_dbh_cm:
                problems.ask(
                    "ask.species_large", FILE, int(cells.lines[np.argmax(own)]), heading,
                    median=middle_cm / factor, unit=unit, limit_cm=plant.max_dbh_cm, species=plant.latin,
                    perhaps=perhaps,
                )  # fmt: skip
