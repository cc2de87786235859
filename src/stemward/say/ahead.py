"""The years ahead in words and figures: one place for page, paper and command line."""

from typing import Any

import numpy as np

from stemward.plan.ahead import Outlook
from stemward.reckon.years import BAND, Measure, Path
from stemward.say.en import ahead as words
from stemward.say.numbers import System, figure

SHOWN: tuple[tuple[Measure, str], ...] = (("hours", "work_h"), ("mix_ml", "mix_ml"), ("ae_g", "total_ae_g"))


def strategy_rows(found: Outlook, units: System) -> list[list[str]]:
    """A row for each strategy, as the head says."""
    return [_row(path, found, units) for path in found.paths]


def head(found: Outlook) -> list[str]:
    """What stands above the rows."""
    return [one.format(years=found.years) for one in words.HEAD]


def _row(path: Path, found: Outlook, units: System) -> list[str]:
    low, middle, high = path.band()[-1]
    gone, share = found.gone[path.name]
    cells = [words.STRATEGIES[path.name], _band((low, middle, high), "stems", units)]
    for measure, name in SHOWN:
        cells.append(_band(np.quantile(path.spent(measure)[-1], BAND), name, units))
    if found.priced:
        cells.append(_band(np.quantile(path.spent("cents")[-1], BAND) / 100, "money", units))
    else:
        cells.append(words.NOT_PRICED)
    if gone is None:
        cells.append(words.NOT_GONE.format(share=100 * share))
    else:
        cells.append(words.GONE.format(years=gone, share=100 * share))
    if path.name not in found.even:
        cells.append(words.ITSELF if path.name == "cut yearly" else "")
    else:
        year = found.even[path.name]
        cells.append(words.NEVER if year is None else words.EVEN.format(year=year))
    return cells


def _band(ends: Any, name: str, units: System) -> str:
    low, middle, high = (_shown(float(v), name, units) for v in ends)
    return words.BAND.format(low=low, middle=middle, high=high) if low != high else middle


def _shown(value: float, name: str, units: System) -> str:
    if name == "money":
        return f"${_two(value):,.0f}"
    if name in ("stems", "work_h"):
        return f"{_two(value):,.0f}"
    return figure(name, value, units)


def _two(value: float) -> float:
    """Two figures are as much as a path of chance can bear."""
    return float(f"{value:.2g}")


def shares(found: Outlook) -> list[str]:
    """What the answer depends on, the most first; what does not matter is left out."""
    order = sorted(found.shares, key=lambda n: -max(found.shares[n], _swing(found, n)))
    return [
        words.SHARE.format(name=words.INPUTS[n], share=100 * found.shares[n],
                           low=_shown(found.ends[n][0], "work_h", "us"), high=_shown(found.ends[n][1], "work_h", "us"))
        for n in order
    ]  # fmt: skip


def _swing(found: Outlook, name: str) -> float:
    low, high = found.ends[name]
    return abs(high - low) / max(low, high, 1e-9) * 1e-3


def budget_rows(found: Outlook) -> list[list[str]]:
    """A row for each year of what a given number of hours does."""
    if found.budget is None:
        return []
    rows = []
    worked = np.flatnonzero(found.budget.spent.sum(axis=1) >= 0.05)
    for year in range(int(worked.max(initial=0)) + 1):
        spent, share, gain = (getattr(found.budget, n)[year] for n in ("spent", "share", "gain"))
        order = [int(n) for n in np.argsort(-gain, kind="stable") if spent[n] >= 0.05]
        where = [words.WHERE.format(name=found.names[n], spent=spent[n], share=100 * share[n], gain=gain[n])
                 for n in order]  # fmt: skip
        next_ = found.budget.next_gain[year]
        rows.append([str(year + 1), "; ".join(where) or words.NOTHING,
                     words.NEXT.format(gain=next_) if next_ else words.ALL_DONE,
                     f"{found.budget.left[year + 1].sum():.0f}"])  # fmt: skip
    return rows


def budget_head(found: Outlook) -> list[str]:
    """What stands above those rows."""
    start = f"{found.budget.left[0].sum():.0f}" if found.budget is not None else ""
    return [one.format(start=start) for one in words.BUDGET_HEAD]


def notes(found: Outlook) -> list[str]:
    """What is said under the figures."""
    said = [words.BANDS]
    if found.guessed:
        said.append(words.GUESSED.format(names="; ".join(dict.fromkeys(found.guessed))))
    return [*said, words.MEAN, words.WEAK, words.CAUTION]
