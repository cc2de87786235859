"""What a finder is given, and what it gives back."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from stemward.label.reader.parts import Sentence
from stemward.label.reader.phrases import ANY_PLACE, ANY_STATE, METHOD_WORDS, METHODS, PLACE_WORDS, PLACES, STATES
from stemward.label.reader.spelled import alike

Sure = Literal["sure", "likely", "unsure"]
RANK: dict[Sure, int] = {"unsure": 0, "likely": 1, "sure": 2}


class Hit(NamedTuple):
    """A fact's kind and value as a person would type it. most: how sure this finder can be at best."""

    kind: str
    value: str
    most: Sure = "sure"


Hits = Iterator[Hit]


@dataclass(frozen=True)
class Said:
    """A sentence with its spellings made alike, and what it stands under."""

    sentence: Sentence

    @cached_property
    def text(self) -> str:
        """The words, spellings made alike."""
        return alike(self.sentence.text)

    @cached_property
    def under(self) -> str:
        """The words that opened the list it stands in, spellings made alike; "" outside lists."""
        return alike(self.sentence.under)

    @cached_property
    def whole(self) -> str:
        """Both together: what is said when the list's opening is read with each of its lines."""
        return f"{self.under} {self.text}".strip()

    @property
    def part(self) -> str:
        """The standard part of the label it stands in."""
        return self.sentence.part

    @cached_property
    def named(self) -> tuple[str, ...]:
        """The ways that its own words name."""
        return ways_in(self.text)

    @cached_property
    def on_land(self) -> bool:
        """True if it names any kind of land."""
        return _any_of(PLACE_WORDS, self.text) and bool(ANY_PLACE.search(self.text))

    @cached_property
    def sites(self) -> tuple[str, ...]:
        """The kinds of land that a limit in it is for."""
        if not self.on_land:
            return ()
        text = self.text
        # In a row of a table without rules the place stands before its figure.
        row = r"|(?<= )(?=[\d.]+ ?\w+(?: \w+)?(?: per acre)?\W*$)" if self.under and len(text) < MOST_ROW else ""
        sites = [
            name
            for name, pattern in PLACES
            if re.search(rf"(?:\b(?:on|in|for|to)\b|\b(?:use )?sites?:)[^.;]*(?:{pattern.pattern})", text, re.I)
            or re.match(
                rf"(?:[\w-]+[ ,]+(?:and )?){{0,4}}(?:{pattern.pattern})[^.;:]{{0,30}}(?::|\||\bmay receive\b{row})",
                text,
                re.I,
            )
            or re.search(rf"\d[^.;()]{{0,25}}\((?:[^()]*)(?:{pattern.pattern})[^()]*\)", text, re.I)
        ]
        if excepted := re.search(r"\b(?:except|other than)\b([^.;]*)", text, re.I):
            sites = [name for name in sites if not dict(PLACES)[name].search(excepted[1])]
        return tuple(sites)

    @cached_property
    def states(self) -> tuple[str, ...]:
        """The states that a limit in it is for."""
        # "(Not approved in ...)" says where it does not hold at all.
        original = re.sub(r"\([^)]*\b[Nn]ot\b[^)]*\)", "", self.sentence.text)
        states = (
            []
            if not ANY_STATE.search(original)
            else [code for code, pattern in STATES if re.search(rf"\b[Ii]n (?:the state of )?{pattern}\b", original)]
        )
        return tuple(states)

    @cached_property
    def methods(self) -> tuple[str, ...]:
        """The ways it speaks of: in a part on one way that way, else those it names."""
        named = self.named
        if self.part in METHOD_PARTS:
            # Under one way's heading another way is spoken of only to say something of that one.
            return named if named and self.part not in named else (self.part,)
        return named or ways_in(self.under)

    def has(self, pattern: str) -> bool:
        """True if the sentence, or what it stands under, holds the pattern."""
        return bool(re.search(pattern, self.whole, re.I))


MOST_ROW = 60
"""A longer line under heads is no row of a table: engineering guess."""


def ways_in(text: str) -> tuple[str, ...]:
    """The ways that words name."""
    return tuple(name for name, pattern in METHODS if pattern.search(text)) if _any_of(METHOD_WORDS, text) else ()


def _any_of(words: tuple[str, ...], text: str) -> bool:
    return holds_any(text.lower(), words)


def holds_any(low: str, words: tuple[str, ...]) -> bool:
    """True if a text in small letters holds any of the words; a loop, since it runs for every sentence and finder."""
    for word in words:  # noqa: SIM110
        if word in low:
            return True
    return False


METHOD_PARTS = frozenset(name for name, _ in METHODS)
