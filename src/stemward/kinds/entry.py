"""What happened: one append-only kind of row."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that happened. `at` is ISO 8601 local time, `offset` its distance from UTC in minutes.

    Kinds read by this version: "treated", body {patch, method, product, stems, mix_ml, ae_g: {name: g}}.
    `corrects` names the entry this one replaces, empty if none.
    """

    id: str
    kind: str
    at: str
    offset: int
    by: str
    body: dict[str, Any]
    received: str = ""
    device: str = ""
    corrects: str = ""
    schema: int = 1
