"""Kill rates as a table that says how it was made."""

from collections.abc import Sequence
from typing import Any

from stemward.plan.rates import Rate
from stemward.say.en.revisits import SEASONS


def rate_rows(found: Sequence[Rate]) -> list[list[Any]]:
    """Rows under `en.rates.HEAD`."""
    return [
        [r.species, r.method, " + ".join(r.ingredients), f"{r.percent:g}" if r.percent else "", SEASONS[r.season],
         r.works, r.dead, r.seen, f"{r.months:.0f}"]
        for r in found
    ]  # fmt: skip
