"""What can be wrong with a file that comes in: message ids, and where it stands. Room `say` has the words."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong: message id with values, file, line (from 1) and column, and what was expected."""

    message: str
    file: str
    line: int | None = None
    column: str = ""
    expected: str = ""
    values: tuple[tuple[str, Any], ...] = ()


class Unreadable(Exception):
    """A folder that cannot be used, with everything found wrong in it. Nothing was loaded."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = tuple(problems)


class Problems(list[Problem]):
    """Problems as they are found, so that reading can go on to the next one."""

    def add(
        self,
        message: str,
        file: str,
        line: int | None = None,
        column: str = "",
        expected: str = "",
        **values: Any,
    ) -> None:
        """Note one problem."""
        self.append(Problem(message, file, line, column, expected, tuple(sorted(values.items()))))
