"""What is odd about something typed: a message with values, which room `say` puts into words."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Odd:
    """One oddity. values carry their unit in the name ("left_ml"). agree: name under which it can be agreed to, ""
    where it is a plain mistake."""

    message: str
    values: tuple[tuple[str, str | float], ...] = ()
    agree: str = ""


def odd(message: str, agree: str = "", **values: str | float) -> Odd:
    """An oddity with its values by name."""
    return Odd(message, tuple(values.items()), agree)
