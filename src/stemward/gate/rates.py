"""Kill rates that others handed on, as the table that `gate.out.rates` writes."""

import re
from collections.abc import Collection

import numpy as np

from stemward.gate.columns import complain, counts, no_blanks, numbers, words
from stemward.gate.csv_table import Cells, read_cells
from stemward.gate.names import FindSpecies, Named, look_up
from stemward.gate.problems import Problems
from stemward.gate.text import clean
from stemward.kinds import METHODS, RATES, OthersRate

_STRENGTH = re.compile(r"(\d+(?:\.\d+)?) g ae/L")


def read_rates(
    text: str, file: str, find_species: FindSpecies, ingredients: Collection[str], whose: str = ""
) -> tuple[OthersRate, ...]:
    """Rows of the table, none of them counted yet. Lines led by # tell how it was made and are passed over.

    ingredients: names that are known. whose: as the bringer calls those who saw it. Raises Unreadable with every
    line that is wrong; then nothing is taken.
    """
    problems = Problems()
    bare = "\n".join("" if line.startswith("#") else line for line in text.replace("\r\n", "\n").split("\n"))
    cells = read_cells(bare, RATES, file, problems)
    if cells is None:
        problems.raise_if_any()
        return ()
    for column in RATES.columns:
        if column.required:
            no_blanks(cells, column, problems)
    number = {c.name: numbers(cells, c, problems) for c in RATES.columns if c.type == "number"}
    count = {c.name: counts(cells, c, problems, default=1) for c in RATES.columns if c.type == "count"}
    word = {c.name: words(cells, c, problems) for c in RATES.columns if c.type == "text"}
    named = [look_up(str(name), find_species) if name else Named("") for name in word["species"]]
    held = [_ingredients(str(typed), ingredients) for typed in word["ingredients"]]
    _complain(problems, cells, "dead", count["dead"] > count["seen"], "rates.more_dead", "")
    for name, wrong, message in (
        ("species", [not one.latin for one in named], "rates.plant"),
        ("method", [str(m).lower() not in METHODS for m in word["method"]], "rates.method"),
        ("ingredients", [not one for one in held], "rates.ingredient"),
    ):
        _complain(problems, cells, name, np.array(wrong) & (word[name] != ""), message, word[name])
    problems.raise_if_any()
    found = []
    for n in range(len(cells)):
        percent = float(np.nan_to_num(number["percent"][n]))
        told = _STRENGTH.findall(str(word["ingredients"][n]))
        found.append(
            OthersRate(
                f"r{n + 1}",
                whose,
                named[n].latin,
                str(word["method"][n]).lower(),
                held[n],
                int(count["works"][n]),
                int(count["dead"][n]),
                int(count["seen"][n]),
                percent,
                float(told[0]) * percent / 100 if len(told) == 1 else 0.0,
                float(np.nan_to_num(number["months"][n])),
                str(word["season"][n]),
            )
        )
    return tuple(found)


def _ingredients(typed: str, known: Collection[str]) -> tuple[str, ...]:
    """The ingredients named, without form and strength; none where one is not known."""
    found = []
    for part in typed.split(" + "):
        fits = [name for name in known if re.match(rf"{re.escape(name)}\b", part.strip(), re.I)]
        if not fits:
            return ()
        found.append(max(fits, key=len))
    return tuple(found)


def _complain(problems: Problems, cells: Cells, name: str, wrong: object, message: str, typed: object) -> None:
    def values(row: int) -> dict[str, str | float]:
        return {"typed": clean(str(typed[row]))} if isinstance(typed, np.ndarray) else {}

    complain(problems, cells, RATES.column(name), message, np.asarray(wrong, dtype=bool), values)
