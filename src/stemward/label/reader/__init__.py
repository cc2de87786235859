"""Reads a label's PDF: text with places, in reading order; the standard parts; facts proposed, never taken as read."""

from stemward.label.reader.parts import Sentence, sentences_of
from stemward.label.reader.propose import Place, Proposed, at_each_place, propose, proposed_of
from stemward.label.reader.tables import with_tables
from stemward.label.reader.text import Box, Line, NotReadable, ReadPicture, gathered, opened, plain, words_of


def lines_of(raw: bytes, read_picture: ReadPicture | None = None) -> tuple[list[Line], int]:
    """A label's lines in reading order, and how many pages it has: see `text.gathered`, which says what it raises."""
    return gathered(raw, read_picture, with_tables)


__all__ = [
    "Box", "Line", "NotReadable", "Place", "Proposed", "Sentence", "at_each_place", "lines_of", "opened", "plain", "propose", "proposed_of", "sentences_of",
    "words_of",
]  # fmt: skip
