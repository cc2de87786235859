"""Trials with their figures: what was used at which strength, and how many stems died."""

from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.ingredients import form_class, plain_name
from stemward.handbook.tables import cite, figure, read_table
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class Trial:
    """One row of a trial. Strength in g acid equivalent per litre of mix, or as a share of product, None if not read.

    kill: whether the outcome says how many stems died. n: stems, None where no count is published.
    """

    plant: str
    method: str
    ingredient: str
    form: str
    typed: str
    low_g_l: float | None
    high_g_l: float | None
    low_share: float | None
    high_share: float | None
    season: str
    n: int | None
    metric: str
    kill: bool
    low_frac: float | None
    high_frac: float | None
    months: str
    cited: Cited


def load_trials(folder: Path) -> tuple[Trial, ...]:
    """All trials, in the table's order."""
    return tuple(
        Trial(
            row["plant"], row["method"], plain_name(row["ingredient"].split(" ")[0]) if row["ingredient"] else "",
            form_class(row["ingredient"]) if " " in row["ingredient"] else "", row["typed"], figure(row, "low_g_l"),
            figure(row, "high_g_l"), figure(row, "low_share"), figure(row, "high_share"), row["season"],
            int(row["n"]) if row["n"] else None, row["metric"], row["kill"] == "yes", figure(row, "low_frac"),
            figure(row, "high_frac"), row["months"], cite(row, row["id"], row["typed"]),
        )
        for row in read_table(folder, "trials.csv")
    )  # fmt: skip
