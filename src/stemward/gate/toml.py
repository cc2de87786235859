"""TOML files read key by key: every key known, every value of its kind, every complaint with its line."""

import datetime
import difflib
import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from stemward.gate.problems import Problems
from stemward.units import EXAMPLE, UnitError, read


def parse(text: str, file: str, problems: Problems) -> "Node | None":
    """The root of a TOML file, or None with the syntax error noted with its line and column."""
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        place = re.search(r"line (\d+), column (\d+)", str(error))
        why = re.sub(r"\s*\(at .*\)", "", str(error))
        line, column = (int(place[1]), place[2]) if place else (text.count("\n") + 1, "")
        problems.add("toml.broken", file, line, column, why=why)
        return None
    except RecursionError:
        problems.add("toml.broken", file, why="too deeply nested")
        return None
    return Node(data, "", 0, text, file, problems)


@dataclass(frozen=True)
class Node:
    """A table of a TOML file: its data, its path, its place among tables of that path, and where to complain."""

    data: dict[str, Any]
    path: str
    index: int
    text: str
    file: str
    problems: Problems

    def line(self, key: str) -> int | None:
        """Line of a key in this table, or of the table's heading; found in the text, since the reader keeps none."""
        heading = re.compile(rf"^\s*\[\[?\s*{re.escape(self.path)}\s*\]\]?", re.M)
        starts = [m.start() for m in heading.finditer(self.text)] if self.path else [0]
        if not starts:
            return None
        start = starts[min(self.index, len(starts) - 1)]
        begin = self.text.find("\n", start) + 1 if self.path else 0
        end = re.compile(r"^\s*\[", re.M).search(self.text, begin)
        body = self.text[begin : end.start() if end else len(self.text)]
        found = re.search(rf"^\s*\"?{re.escape(key)}\"?\s*=", body, re.M)
        at = begin + found.end() if found else start + 1
        return self.text.count("\n", 0, at) + 1

    def complain(self, message: str, key: str, expected: str = "", **values: Any) -> None:
        """Note a problem at a key of this table."""
        name = f"{self.path}.{key}" if self.path else key
        self.problems.add(message, self.file, self.line(key), name, expected, **values)

    def known(self, *keys: str) -> None:
        """Complain about every key that is not one of these, with the nearest that is."""
        for key in self.data:
            if key not in keys:
                near = difflib.get_close_matches(key, keys, n=1, cutoff=0.6)
                self.complain("key.unknown", key, near=near[0] if near else "")

    def word(self, key: str, required: bool = False, choices: Sequence[str] = ()) -> str:
        """A text, empty if it is not there."""
        value = self.data.get(key, "")
        if not isinstance(value, str):
            self.complain("key.not_text", key, choices[0] if choices else "")
            return ""
        if required and not value.strip():
            self.complain("key.missing", key, ", ".join(choices[:4]))
        elif choices and value and value not in choices:
            near = difflib.get_close_matches(value, choices, n=1, cutoff=0.6)
            expected = near[0] if near else ", ".join(choices)
            self.complain("key.not_a_choice", key, expected, typed=value[:40])
            return ""
        return value.strip()

    def words(self, key: str, choices: Sequence[str] = ()) -> tuple[str, ...]:
        """A list of texts, empty if it is not there."""
        value = self.data.get(key, [])
        if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
            self.complain("key.not_list", key, f'["{choices[0] if choices else "one"}"]')
            return ()
        for item in value:
            if choices and item not in choices:
                near = difflib.get_close_matches(item, choices, n=1, cutoff=0.6)
                self.complain("key.not_a_choice", key, near[0] if near else ", ".join(choices), typed=str(item)[:40])
        return tuple(value)

    def truth(self, key: str) -> bool:
        """True or false, false if it is not there."""
        value = self.data.get(key, False)
        if not isinstance(value, bool):
            self.complain("key.not_truth", key, "true")
            return False
        return value

    def day(self, key: str) -> datetime.date | None:
        """A date, None if it is not there."""
        value = self.data.get(key)
        if value is None or (isinstance(value, datetime.date) and not isinstance(value, datetime.datetime)):
            return value
        self.complain("key.not_day", key, "2026-10-03")
        return None

    def measure(self, key: str, dimension: str, unit: str, required: bool = False) -> float | None:
        """A figure with its unit, typed as text such as "24 fl oz"; None if it is not there."""
        value = self.data.get(key)
        if value is None:
            if required:
                self.complain("key.missing", key, EXAMPLE[dimension])
            return None
        if not isinstance(value, str):
            self.complain("key.no_unit", key, EXAMPLE[dimension], typed=str(value)[:40])
            return None
        try:
            return read(value, dimension).to(unit)
        except UnitError as error:
            self.complain("key.not_understood", key, error.example, typed=error.typed)
            return None

    def microlitres(self, key: str, required: bool = False) -> int | None:
        """A volume as whole microlitres; None if it is not there."""
        ml = self.measure(key, "volume", "ml", required)
        return None if ml is None else round(ml * 1000)

    def table(self, key: str) -> "Node":
        """A table under this one, empty if it is not there."""
        value = self.data.get(key, {})
        if not isinstance(value, dict):
            self.complain("key.not_table", key)
            value = {}
        return Node(value, f"{self.path}.{key}" if self.path else key, self.index, self.text, self.file, self.problems)

    def tables(self, key: str) -> Iterator["Node"]:
        """The tables of a list of tables, none if it is not there."""
        value = self.data.get(key, [])
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            self.complain("key.not_tables", key, f"[[{key}]]")
            return
        path = f"{self.path}.{key}" if self.path else key
        for index, item in enumerate(value):
            yield Node(item, path, index, self.text, self.file, self.problems)
