"""What follows from what was done: pure folds over entries, and what was typed of a day turned into entries.

Nothing that is folded is stored; the entries are.

Every fold first puts the entries in one order, so that the order in which they arrived changes nothing.
"""

from stemward.ledger.balances import Jug, Matter, jugs
from stemward.ledger.in_force import in_force, when
from stemward.ledger.mixes import Batch, batches
from stemward.ledger.stems import Mark, marks

__all__ = ["Batch", "Jug", "Mark", "Matter", "batches", "in_force", "jugs", "marks", "when"]
