"""Application records to take away: a table in the reader's words, and data in metric units."""

import csv
import io
import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from stemward.gate.out.tables import safe_cell
from stemward.ledger.records import Record


def record_rows_csv(rows: Iterable[Mapping[str, str]], head: Sequence[str]) -> bytes:
    """Records as CSV, UTF-8, a row a record, every field a column. Nothing is taken for a formula by a spreadsheet."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([safe_cell(row.get(name, "")) for name in head] for row in rows)
    return out.getvalue().encode()


def record_rows_json(found: Iterable[tuple[Record, Sequence[str]]]) -> bytes:
    """Records as JSON: figures in metric units named by their keys, what was filled in by hand, and the ids of the
    entries that each follows from. found: records with the ids of the rule sets that ask for them."""
    rows: list[dict[str, Any]] = [
        {
            "key": record.key,
            "day": record.day.isoformat(),
            "patch": record.patch,
            "product": record.product,
            "values": {name: value for name, value in record.values.items() if value not in (None, "", (), {})},
            "filled_in": dict(record.filled),
            "anyway": list(record.anyway),
            "signed": None if record.signed is None else {"by": record.signed[0], "at": record.signed[1]},
            "corrected_since": sorted(record.since or ()),
            "asked_by": list(rules),
            "entries": list(record.entries),
        }
        for record, rules in found
    ]
    return (json.dumps({"schema": 1, "records": rows}, indent=1, sort_keys=True, ensure_ascii=False) + "\n").encode()
