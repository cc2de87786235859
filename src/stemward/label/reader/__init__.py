"""Reads a label's PDF: text with places, in reading order; the standard parts; facts proposed, never taken as read."""

from stemward.label.reader.parts import Sentence, sentences_of
from stemward.label.reader.propose import Proposed, propose, proposed_of
from stemward.label.reader.text import Box, Line, NotReadable, lines_of, opened, words_of

__all__ = [
    "Box", "Line", "NotReadable", "Proposed", "Sentence", "lines_of", "opened", "propose", "proposed_of", "sentences_of",
    "words_of",
]  # fmt: skip
