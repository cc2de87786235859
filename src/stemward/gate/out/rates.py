"""Kill rates as a file that says how it was made."""

from collections.abc import Sequence

from stemward.gate.out.tables import noted_csv
from stemward.handbook import Book
from stemward.ledger.revisits import verdict_months
from stemward.plan.rates import Rate
from stemward.say.en import rates as words
from stemward.say.rates import rate_rows


def rates_csv(found: Sequence[Rate], book: Book) -> bytes:
    """CSV, UTF-8: lines that tell what counts and what it is worth, a heading, a row a rate."""
    months = {"least": verdict_months(False, book), "suckers": verdict_months(True, book)}
    return noted_csv([note.format(**months) for note in words.NOTES], words.HEAD, rate_rows(found))
