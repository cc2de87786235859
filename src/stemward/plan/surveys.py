"""Plants too many to map: how many there are by sample plots, and how much mix they would take, as ranges."""

from collections import defaultdict
from typing import Any

import numpy as np

from stemward.handbook import Book
from stemward.kinds import Tally, Tract
from stemward.reckon import dose
from stemward.reckon.survey import estimate, plots_needed

LEVEL = 0.90
WITHIN_FRAC = 0.2
"""A fifth either way is near enough to mix by (common practice, no source)."""
TOOL = "squirt bottle"


def surveys_of(tract: Tract, book: Book) -> list[dict[str, Any]]:
    """One entry a patch and plant: stems in all with their interval, and mix for cut stumps in water.

    The interval of the mix is that of the stems; what a stem takes is a guess beside it. Patches without an area or
    with fewer than two plots say so.
    """
    found = []
    plots: dict[str, dict[str, float]] = defaultdict(dict)
    for tally in tract.plots:
        plots[tally.patch][tally.plot] = tally.plot_m2
    groups = sorted({(t.patch, t.species) for t in tract.plots if t.species})
    for patch_id, species in groups:
        own = [t for t in tract.plots if (t.patch, t.species) == (patch_id, species)]
        found.append(_survey(tract, book, patch_id, species, own, plots[patch_id]))
    return found


def _survey(
    tract: Tract, book: Book, patch_id: str, species: str, own: list[Tally], plots: dict[str, float]
) -> dict[str, Any]:
    patch = tract.patch(patch_id)
    data: dict[str, Any] = {
        "patch": patch_id,
        "patch_name": patch.name,
        "species": species,
        "common": book.species[species].common,
        "plots": len(plots),
        "stems": None,
        "why_not": "",
    }
    sizes = set(plots.values())
    if patch.area_m2 is None:
        return {**data, "why_not": "no_area"}
    if len(plots) < 2 or len(sizes) != 1:
        return {**data, "why_not": "one_plot" if len(plots) < 2 else "plots_differ"}
    counts = [sum(t.count for t in own if t.plot == plot) for plot in plots]
    plot_m2 = sizes.pop()
    seen = estimate(counts, plot_m2, patch.area_m2, LEVEL)
    each_ml = _each_ml(own, book)
    cv = float(np.std(counts, ddof=1) / np.mean(counts)) if seen.mean else 0.0
    return {
        **data,
        "stems": {"mean": seen.total, "low": seen.low, "high": seen.high},
        "mix_ml": {"mean": seen.total * each_ml, "low": seen.low * each_ml, "high": seen.high * each_ml},
        "each_ml": each_ml,
        "plots_needed": plots_needed(cv, WITHIN_FRAC, patch.area_m2 / plot_m2, LEVEL) if cv else None,
    }


def _each_ml(own: list[Tally], book: Book) -> float:
    """Mix a stem takes on average over the classes, sizes spread evenly within each: the midpoint is biased."""
    tool, default = book.tools[TOOL], book.defaults
    total, stems = 0.0, 0
    for tally in own:
        if not tally.count:
            continue
        sizes = np.linspace(tally.low_cm, tally.high_cm, 41)
        wet = dose.wet_face_cm2(sizes, default["whole_up_to_cm"].number, default["ring_cm"].number)
        small = dose.face_area_cm2(default["small_stem_cm"].number)
        ml = dose.wetted_ml(
            wet, small, tool.depth_ml_cm2.number, tool.waste_frac.number, default["use_rate"].number,
            tool.smallest_ml.number,
        )  # fmt: skip
        # Trapezes over even steps: the mean over a uniform class.
        total += tally.count * float((ml[:-1] + ml[1:]).mean() / 2)
        stems += tally.count
    return total / stems if stems else 0.0
