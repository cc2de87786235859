"""A plan as JSON: sorted keys, nine significant digits, and a short code over everything in it."""

import hashlib
import json
import math
from dataclasses import asdict, fields, is_dataclass, replace
from typing import Any

import numpy as np

from stemward.kinds import Finding, Plan

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Digits and capitals without I, L, O and U, which are misread by hand."""


def _short(value: float) -> float | None:
    return float(f"{value:.9g}") if math.isfinite(value) else None


def _short_all(values: np.ndarray) -> list[float | None]:
    """Every value to nine significant digits, as `_short` gives it."""
    plain_ones = np.isfinite(values) & (np.abs(values) >= LEAST) & (np.abs(values) < MOST)
    digits = np.floor(np.log10(np.abs(np.where(plain_ones, values, 1.0)))).astype(np.int64)
    scale = POWERS[DIGITS - 1 - digits + OFFSET]
    # An integer over a power of ten that is exact gives the float that is nearest to the written decimal.
    rounded: list[float | None] = (np.rint(values * scale) / scale).tolist() if len(values) else []
    for n in np.flatnonzero(~plain_ones).tolist():
        rounded[n] = _short(float(values[n]))
    return rounded


DIGITS = 9
LEAST, MOST = 1e-12, 1e9
"""Outside of these a value is written one by one."""
OFFSET = 2
POWERS = np.array([10.0**n for n in range(-OFFSET, DIGITS + 14)])


def plain(value: Any) -> Any:
    """Plain JSON data: floats to nine significant digits, arrays as lists, values as dicts; never NaN."""
    if isinstance(value, Finding):
        return _finding(value)
    if isinstance(value, np.ndarray):
        return _short_all(value) if value.dtype.kind == "f" else value.tolist()
    if isinstance(value, tuple) and value and type(value[0]) is float:
        return _short_all(np.asarray(value, float))
    if isinstance(value, np.generic):
        return plain(value.item())
    if isinstance(value, bool) or value is None or isinstance(value, int | str):
        return value
    if isinstance(value, float):
        return _short(value)
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, dict):
        return {str(key): plain(item) for key, item in value.items()}
    return [plain(item) for item in value]


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "check": finding.check,
        "weight": finding.weight.word,
        "message": finding.message,
        "values": {name: plain(value) for name, value in finding.values},
        "where": plain(asdict(finding.where)),
        "evidence": [plain(asdict(e)) for e in finding.evidence],
    }


def as_data(plan: Plan) -> dict[str, Any]:
    """The plan as one dict, keys as in the dataclass; steps' inputs as a dict."""
    data = {name: plain(getattr(plan, name)) for name in plan.__slots__}
    for step, kept in zip(data["steps"], plan.steps, strict=True):
        step["inputs"] = dict(kept.inputs)
    return data


def to_json(data: dict[str, Any], indent: int | None = 1) -> str:
    """Canonical text of plain data: the same data gives the same bytes."""
    return json.dumps(data, sort_keys=True, ensure_ascii=False, indent=indent, allow_nan=False) + "\n"


def code_of(data: dict[str, Any]) -> str:
    """A four-sign code, "K4-71", over everything in the plan but the code itself.

    Twenty bits of SHA-256: enough to tell two printed plans apart, not to prove one; the sums prove it.
    """
    body = {key: value for key, value in data.items() if key != "code"}
    digest = hashlib.sha256(to_json(body, indent=None).encode()).digest()
    number = int.from_bytes(digest[:4], "big") >> 12
    signs = [ALPHABET[(number >> shift) & 31] for shift in (15, 10, 5, 0)]
    return f"{signs[0]}{signs[1]}-{signs[2]}{signs[3]}"


def frozen(plan: Plan) -> Plan:
    """The plan with its code."""
    return replace(plan, code=code_of(as_data(plan)))
