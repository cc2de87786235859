"""What a record of an application must hold, who asks for it, by when, and how long it is kept. Dated data."""

import datetime
from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.tables import cite, figure, parts, read_table
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class Wanted:
    """One field that a rule asks for. always: False where only some have to give it.

    either: "group:alternative": of a group of alternatives one whole alternative is enough. when: only then
    ("for sale", "broadcast"), "" for always.
    """

    field: str
    always: bool
    either: str
    when: str
    cited: Cited


@dataclass(frozen=True, slots=True)
class RecordRule:
    """One rule set. state: "" for federal ones. who: as in a tract ("own", "hire", …), with "-restricted" where it
    binds them for restricted-use products only.

    within_d: days after the application in which it is written, None where not known; keep_y: years it is kept,
    None where not known. when: site fact or place it takes ("for sale", "woods"), "" for any.
    """

    id: str
    name: str
    state: str
    who: tuple[str, ...]
    restricted_only: bool
    when: str
    since: datetime.date | None
    until: datetime.date | None
    within_d: int | None
    keep_y: int | None
    also: str
    wanted: tuple[Wanted, ...]
    cited: Cited

    def in_force(self, day: datetime.date) -> bool:
        """True on a day on which the rule holds; its last day is the one before `until`."""
        return (self.since is None or day >= self.since) and (self.until is None or day < self.until)


def load_record_rules(folder: Path) -> tuple[RecordRule, ...]:
    """All rule sets, in the table's order."""
    wanted: dict[str, list[Wanted]] = {}
    for row in read_table(folder, "record_fields.csv"):
        what = f"record.{row['rule']}.{row['field']}"
        wanted.setdefault(row["rule"], []).append(
            Wanted(row["field"], row["need"] == "yes", row["either"], row["when"], cite(row, what, row["field"]))
        )
    return tuple(
        RecordRule(
            row["id"],
            row["name"],
            row["state"],
            parts(row["who"]),
            row["products"] == "restricted",
            row["when"],
            _day(row["since"]),
            _day(row["until"]),
            _whole(figure(row, "within_d")),
            _whole(figure(row, "keep_y")),
            row["also"],
            tuple(wanted[row["id"]]),
            cite(row, f"record.{row['id']}", row["id"]),
        )
        for row in read_table(folder, "record_rules.csv")
    )


def _day(text: str) -> datetime.date | None:
    return datetime.date.fromisoformat(text) if text else None


def _whole(value: float | None) -> int | None:
    return None if value is None else int(value)
