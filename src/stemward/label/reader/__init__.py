"""Reads a label's PDF: text with places, in reading order; the standard parts; facts proposed, never taken as read."""

from stemward.label.reader.propose import Proposed, propose
from stemward.label.reader.text import Line, NotReadable, lines_of

__all__ = ["Line", "NotReadable", "Proposed", "lines_of", "propose"]
