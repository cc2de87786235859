"""Typed values out of TOML tables, each complaint with its line and dotted key."""

import datetime
import re
import tomllib
from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass, field
from typing import Any

from stemward.gate.problems import Problems
from stemward.gate.text import ODD_SIGNS, clean, near
from stemward.gate.toml_lines import Path, key_lines, line_of
from stemward.kinds import Answer
from stemward.units import EXAMPLE, UnitError, read

MOST_SIGNS = 200
MOST_SIGNS_LONG = 2000
MOST_TABLES = 2000
YES_NO: tuple[Answer, ...] = ("yes", "no")
_TOO_DEEP = re.compile(r"""(?<![\w-])(?:(?:[\w-]+|"[^"\n]*"|'[^'\n]*')[ \t]*\.[ \t]*){30}""")
"""A name of thirty parts; the standard reader takes the square of their number of steps."""
ANSWERS: tuple[Answer, ...] = ("yes", "no", "unknown")


@dataclass
class Fields:
    """One TOML table while it is read; `path` is where it stands, and keys that were asked for are known."""

    data: dict[str, Any]
    file: str
    problems: Problems
    lines: dict[Path, int]
    path: Path = ()
    known: set[str] = field(default_factory=set)

    def add(self, message: str, key: str = "", expected: str = "", **values: str | float) -> None:
        """Note a problem with a key of this table, or with the table itself."""
        self.problems.add(message, self.file, self.line(key), self.column(key), expected, **values)

    def ask(self, message: str, key: str = "", **values: str | float) -> None:
        """Note a question about a key of this table."""
        self.problems.ask(message, self.file, self.line(key), self.column(key), **values)

    def line(self, key: str = "") -> int | None:
        """Line of a key, else of this table."""
        return line_of(self.lines, (*self.path, key) if key else self.path)

    def column(self, key: str = "") -> str:
        """Dotted name of a key, "patches.soil.texture"."""
        return ".".join(clean(part) for part in (*self.path, key) if isinstance(part, str) and part)

    def has(self, key: str) -> bool:
        """True if the key is there, whatever its value."""
        self.known.add(key)
        return key in self.data

    def raw(self, key: str, required: bool, expected: str) -> Any:
        """The value as TOML gives it; None if missing, which is a problem when it is required."""
        if not self.has(key):
            if required:
                self.add("key.missing", key, expected)
            return None
        return self.data[key]

    def text(
        self, key: str, required: bool = False, example: str = "", most: int = MOST_SIGNS, blank: bool = False
    ) -> str:
        """Text without blanks at its ends; "" if missing or wrong. blank: may be empty although required."""
        expected = f'{key} = "{example}"'
        value = self.raw(key, required, expected)
        if value is None:
            return ""
        if not isinstance(value, str):
            self.add("key.wrong_type", key, expected, wanted="text")
            return ""
        if required and not blank and not value.strip():
            self.add("key.empty", key, expected)
            return ""
        return self.fit(key, value.strip(), most)

    def fit(self, key: str, value: str, most: int = MOST_SIGNS) -> str:
        """Text that may stand under the key; "" and a problem if it is too long or holds odd signs."""
        if ODD_SIGNS.search(value):
            self.add("key.odd_sign", key)
            return ""
        if len(value) > most:
            self.add("key.too_long", key, length=len(value), most=most)
            return ""
        return value

    def choice(self, key: str, choices: Collection[str], required: bool = False, default: str = "") -> str:
        """One of the words, whatever its letter case; the default if missing or wrong."""
        expected = f'{key} = "{next(iter(choices), "")}"'
        value = self.raw(key, required, expected)
        if value is None:
            return default
        if not isinstance(value, str):
            self.add("key.wrong_type", key, expected, wanted="text")
            return default
        return self.one_of(key, value, choices) or default

    def one_of(self, key: str, typed: str, choices: Collection[str]) -> str:
        """The word of `choices` that was typed, "" and a problem if it is none of them."""
        found = next((word for word in choices if word.casefold() == typed.strip().casefold()), "")
        if not found:
            shown = clean(typed)
            some = ", ".join(list(choices)[:20])
            self.add("key.not_a_choice", key, some, typed=shown, near=near(shown, choices))
        return found

    def answer(self, key: str, allowed: tuple[Answer, ...] = ANSWERS) -> Answer:
        """yes, no or unknown, written as word or as true and false; unknown if missing or wrong."""
        value = self.raw(key, False, "")
        if isinstance(value, bool):
            return "yes" if value else "no"
        return self.choice(key, allowed, default="unknown")  # type: ignore[return-value]

    def flag(self, key: str, required: bool = False) -> bool:
        """true or false; false if missing or wrong."""
        value = self.raw(key, required, f"{key} = true")
        if value is not None and not isinstance(value, bool):
            self.add("key.wrong_type", key, f"{key} = true", wanted="true or false")
        return value is True

    def words(
        self, key: str, choices: Collection[str] = (), required: bool = False, example: str = ""
    ) -> tuple[str, ...]:
        """A list of words, each once; with `choices`, only of those."""
        expected = f'{key} = ["{example or next(iter(choices), "")}"]'
        value = self.raw(key, required, expected)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(word, str) for word in value):
            self.add("key.wrong_type", key, expected, wanted="a list of words")
            return ()
        if required and not value:
            self.add("key.empty", key, expected)
        if len(value) > MOST_TABLES:
            self.add("key.too_many", key, count=len(value), most=MOST_TABLES)
            return ()
        check = (lambda word: self.one_of(key, word, choices)) if choices else self._word(key)
        return tuple(dict.fromkeys(word for word in map(check, value) if word))

    def _word(self, key: str) -> Callable[[str], str]:
        return lambda word: self.fit(key, word.strip())

    def quantity(
        self,
        key: str,
        dimension: str,
        unit: str,
        required: bool = False,
        low: float = 0.0,
        high: float = 1e12,
    ) -> tuple[float | None, str]:
        """A figure in `unit`, within its limits, and as typed; (None, "") if missing or wrong."""
        expected = f'{key} = "{EXAMPLE[dimension]}"'
        value = self.raw(key, required, expected)
        if value is None:
            return None, ""
        if not isinstance(value, str):
            self.add("key.wrong_type", key, expected, wanted="a figure with its unit, in quotes")
            return None, ""
        figure = self.figure(key, value, dimension, unit, expected)
        if figure is not None and not low <= figure <= high:
            shown = clean(value)
            self.add("key.out_of_range", key, expected, typed=shown, low=low, high=high, unit=unit)
            return None, ""
        return figure, value.strip()

    def figure(self, key: str, typed: str, dimension: str, unit: str, expected: str) -> float | None:
        """A figure someone typed, in `unit`; None and a problem if it is not understood."""
        try:
            return read(typed, dimension).to(unit)
        except UnitError:
            self.add("key.figure", key, expected, typed=clean(typed))
            return None

    def number(self, key: str, required: bool = False, high: float = 1e9, whole: bool = False) -> float:
        """A bare number from 0 up; 0 if missing or wrong."""
        expected = f"{key} = 3"
        value = self.raw(key, required, expected)
        if value is None:
            return 0.0
        if isinstance(value, bool) or not isinstance(value, int | float) or (whole and value != int(value)):
            self.add("key.wrong_type", key, expected, wanted="a whole number" if whole else "a number")
            return 0.0
        if not 0 <= value <= high:
            self.add("key.out_of_range", key, expected, typed=f"{value:g}", low=0.0, high=high, unit="")
            return 0.0
        return float(value)

    def volume_ul(self, key: str, required: bool = True) -> int | None:
        """A volume in whole microlitres, from 1 to 10 million litres; None if missing or wrong."""
        ml, _ = self.quantity(key, "volume", "ml", required, 1e-3, 1e10)
        return None if ml is None else round(ml * 1000)

    def day(self, key: str, required: bool = False) -> datetime.date | None:
        """A day, written 2026-10-03 with or without quotes."""
        expected = f"{key} = 2026-10-03"
        value = self.raw(key, required, expected)
        if isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
            return value
        if value is None:
            return None
        if isinstance(value, str) and re.fullmatch(r"\d{4}-\d\d-\d\d", value):
            try:
                return datetime.date.fromisoformat(value)
            except ValueError:
                pass
        self.add("key.not_a_day", key, expected, typed=clean(str(value)))
        return None

    def table(self, key: str) -> "Fields":
        """The table under a key; empty if missing or no table."""
        value = self.raw(key, False, "")
        if value is not None and not isinstance(value, dict):
            self.add("key.wrong_type", key, f"[{key}]", wanted="a table")
        data = value if isinstance(value, dict) else {}
        return Fields(data, self.file, self.problems, self.lines, (*self.path, key))

    def tables(self, key: str, required: bool = False) -> list["Fields"]:
        """The tables of an array of tables, [[key]]; empty if missing or none."""
        value = self.raw(key, required, f"[[{key}]]")
        if value is None:
            return []
        if not isinstance(value, list) or not all(isinstance(one, dict) for one in value):
            self.add("key.wrong_type", key, f"[[{key}]]", wanted="tables")
            return []
        if len(value) > MOST_TABLES:
            self.add("key.too_many", key, count=len(value), most=MOST_TABLES)
            return []
        return [
            Fields(data, self.file, self.problems, self.lines, (*self.path, key, at)) for at, data in enumerate(value)
        ]

    def done(self) -> None:
        """Note every key that nobody asked for."""
        for key in self.data:
            if key not in self.known and not self.problems.enough:
                shown = clean(key)
                expected = ", ".join(sorted(self.known))
                self.add("key.unknown", key, expected, name=shown, near=near(shown, self.known))


def once(tables: Iterable[tuple[Fields, str]], seen: dict[str, tuple[str, int]] | None = None) -> None:
    """Note every id that stands a second time; `seen` carries ids over from other files."""
    seen = {} if seen is None else seen
    for table, name in tables:
        if name and name in seen:
            file, line = seen[name]
            table.add("key.id_twice", "id", id=name, first_file=file, first_line=line)
        elif name:
            seen[name] = (table.file, table.line("id") or 0)


def read_toml(text: str, file: str, problems: Problems) -> Fields | None:
    """The top table of a TOML file; None if it is not TOML, with line and place noted."""
    if too_deep := _TOO_DEEP.search(text):
        problems.add("toml.too_deep", file, text.count("\n", 0, too_deep.start()) + 1)
        return None
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        line, at = _where(str(error), text)
        why = re.sub(r"\s*\(at .*\)$", "", str(error))
        problems.add("toml.syntax", file, line, expected='name = "text"', at=at, why=clean(why, 100))
        return None
    except RecursionError:
        problems.add("toml.too_deep", file)
        return None
    except ValueError as error:  # a whole number of more digits than Python converts
        problems.add("toml.syntax", file, expected='name = "text"', at=0, why=clean(str(error), 100))
        return None
    return Fields(data, file, problems, key_lines(text))


def _where(message: str, text: str) -> tuple[int, int]:
    found = re.search(r"\(at line (\d+), column (\d+)\)", message)
    if found:
        return int(found[1]), int(found[2])
    return text.rstrip("\n").count("\n") + 1, 0
