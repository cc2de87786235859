"""plots.csv: stems tallied in sample plots, by plant and size class."""

from collections.abc import Collection

import numpy as np

from stemward.gate.columns import complain, counts, no_blanks, numbers, words
from stemward.gate.csv_table import read_cells
from stemward.gate.names import FindSpecies, look_up
from stemward.gate.problems import Problems
from stemward.gate.text import clean, near
from stemward.kinds import PLOTS, Tally
from stemward.units import convert

FILE = "plots.csv"


def read_plots(
    text: str, patches: Collection[str] | None, find_species: FindSpecies, problems: Problems
) -> tuple[Tally, ...]:
    """Read plots.csv; a plot without stems of a plant stands as a row with a count of 0."""
    cells = read_cells(text, PLOTS, FILE, problems)
    if cells is None or not len(cells):
        return ()
    for column in PLOTS.columns:
        if column.required:
            no_blanks(cells, column, problems)
    number = {c.name: numbers(cells, c, problems) for c in PLOTS.columns if c.type == "number"}
    count = counts(cells, PLOTS.column("count"), problems, default=0)
    plot, patch, species = (words(cells, PLOTS.column(name), problems) for name in ("plot", "patch", "species"))
    inch = convert(1.0, "in", "cm")
    low = np.where(np.isnan(number["low_in"]), number["low_cm"], number["low_in"] * inch)
    high = np.where(np.isnan(number["high_in"]), number["high_cm"], number["high_in"] * inch)
    wrong = ~(high > low)
    complain(problems, cells, PLOTS.column("high_in"), "plots.class", wrong, lambda row: {"plot": clean(plot[row])})
    named = {name: look_up(name, find_species) for name in dict.fromkeys(species.tolist()) if name}
    for name, found in named.items():
        if not found.latin:
            line = int(cells.lines[int(np.argmax(species == name))])
            problems.add(
                "stems.unknown_species", FILE, line, cells.heading("species"), "tree-of-heaven",
                species=clean(name), near=found.near, count=int((species == name).sum()),
            )  # fmt: skip
    if patches is not None:
        for name in dict.fromkeys(patch.tolist()):
            if name and name not in patches:
                line = int(cells.lines[int(np.argmax(patch == name))])
                problems.add(
                    "stems.unknown_patch", FILE, line, cells.heading("patch"), ", ".join(patches),
                    patch=clean(name), near=near(name, patches), count=int((patch == name).sum()),
                )  # fmt: skip
    return tuple(
        Tally(
            str(plot[n]), str(patch[n]), named[str(species[n])].latin if species[n] else "", float(low[n]),
            float(high[n]), int(count[n]), float(number["plot_m2"][n]),
        )
        for n in range(len(cells))
    )  # fmt: skip
