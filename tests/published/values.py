"""Values that others have published, worked by our own functions. Run as a script it prints what disagrees."""

import csv
import importlib
import json
from pathlib import Path
from typing import Any

TABLES = sorted(Path(__file__).parent.glob("*.csv"))


def rows() -> list[dict[str, str]]:
    """The rows of every table beside this file."""
    found: list[dict[str, str]] = []
    for table in TABLES:
        with table.open(encoding="utf-8", newline="") as file:
            found += csv.DictReader(file)
    return found


def _input(name: str, value: Any) -> Any:
    """A figure with a unit is read as a person would type it, into the metric unit of its argument."""
    if not isinstance(value, str) or name in ("from_unit", "to_unit"):
        return tuple(value) if isinstance(value, list) else value
    from stemward.units import UNITS, UnitError, read

    suffix = {"_ml": "ml", "_g_l": "g/l", "_g_m2": "g/m2", "_cm": "cm", "_m": "m", "_g": "g"}
    unit = next(u for end, u in suffix.items() if name.endswith(end))
    for dimension in UNITS:
        try:
            return read(value, dimension).to(unit)
        except (UnitError, KeyError):
            continue
    raise ValueError(f"{name}: {value}")


def worked(row: dict[str, str]) -> float:
    """The row's value as our function gives it, in the unit the source shows."""
    from stemward.units import convert

    module, _, name = row["function"].rpartition(".")
    function = getattr(importlib.import_module(module), name)
    result = function(**{key: _input(key, value) for key, value in json.loads(row["inputs"]).items()})
    if row["pick"]:
        result = result[int(row["pick"])] if row["pick"].isdigit() else getattr(result, row["pick"])
    value = float(result)
    return convert(value, row["unit"], row["shown_as"]) if row["shown_as"] else value


def disagreement(row: dict[str, str]) -> str:
    """What is wrong with a row, empty if it agrees within its tolerance."""
    got, want, tolerance = worked(row), float(row["value"]), float(row["tolerance"])
    if abs(got - want) <= tolerance + 1e-12:
        return ""
    return f"{row['id']} {row['function']}: {got} instead of {want} +- {tolerance} ({row['source']})"


if __name__ == "__main__":
    for found in filter(None, (disagreement(row) for row in rows() if row["kind"] == "published")):
        print(found)
