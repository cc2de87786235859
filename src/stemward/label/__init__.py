"""What a label says: the closed list of facts, and which of them decide."""

from stemward.label.facts import KINDS, FactKind
from stemward.label.resolve import Resolved, Situation, covers, listed, nests, resolve

__all__ = ["KINDS", "FactKind", "Resolved", "Situation", "covers", "listed", "nests", "resolve"]
