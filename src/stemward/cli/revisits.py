"""stemward revisits: what was treated, when to look at it again, what was seen."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward revisits`."""
    parser.add_argument("folder", type=Path, help="the tract folder")
    parser.add_argument("--as-of", metavar="DATE", help="the day it is (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="units to read")
    parser.add_argument("--rates", type=Path, metavar="F", help="write kill rates to share to this file, as CSV")
    parser.add_argument("--pdf", type=Path, metavar="F", help="write the sheet to take along")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter")


def run(args: argparse.Namespace) -> int:
    """Print what is due and what was seen. 0, or 2 for input that cannot be used."""
    from stemward.cli.common import Unusable, read_folder, say_unusable, write_whole
    from stemward.gate.out.rates import rates_csv
    from stemward.handbook import load
    from stemward.plan.rates import rates_of
    from stemward.say.en import rates
    from stemward.say.revisits import revisit_lines

    book = load()
    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
        if args.pdf:
            from stemward.paper.revisit_sheet import revisit_sheet

            write_whole(args.pdf, revisit_sheet(read.tract, book, as_of, args.units, args.paper))
        if args.rates:
            found = rates_of(read.tract, book)
            if not found:
                return say_unusable(rates.NONE)
            write_whole(args.rates, rates_csv(found, book))
    except Unusable as wrong:
        return say_unusable(str(wrong))
    print("\n".join(revisit_lines(read.tract, as_of, book)))
    return 0
