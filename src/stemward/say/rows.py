"""One row of a sheet in words, the same on paper, phone and page."""

from collections.abc import Mapping
from typing import Any

from stemward.say.speaker import Speaker


def squirt_ml(plan: Mapping[str, Any], tool: str) -> float | None:
    """What one counted squirt of a tool gives, mL; None where nobody counted."""
    return next((float(c["ml_per_stroke"]) for c in plan["tract"]["calibrations"] if c["tool"] == tool), None)


def row_words(speaker: Speaker, sheet: Mapping[str, Any], n: int, squirt: float | None) -> dict[str, str]:
    """One row in words: its number, size, dose of one plant (squirts, where one is counted: squirt, mL), plants, id."""
    count = sheet["counts"][n]
    each_ml = sheet["row_ml"][n] / count if count else 0.0
    dose = ""
    if each_ml and squirt:
        dose = f"{max(1, -int(-(each_ml / squirt - 1e-9) // 1))}"
    elif each_ml:
        dose = speaker.number("each_ml", each_ml)
    return {
        "n": str(n + 1),
        "size": speaker.number("size_cm", sheet["sizes_cm"][n]),
        "dose": dose,
        "count": str(count),
        "id": str(sheet["ids"][n]),
    }
