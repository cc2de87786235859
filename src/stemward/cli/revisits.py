"""stemward revisits: what was treated, when to look at it again, what was seen."""

import argparse
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stemward.handbook import Book
    from stemward.kinds import OthersRate


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward revisits`."""
    parser.add_argument("folder", type=Path, help="the tract folder")
    parser.add_argument("--as-of", metavar="DATE", help="the day it is (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="units to read")
    parser.add_argument("--rates", type=Path, metavar="F", help="write kill rates to share to this file, as CSV")
    parser.add_argument(
        "--others", type=Path, metavar="F", help="count kill rates of others in this CSV beside the books"
    )
    parser.add_argument("--share", default="25 %", metavar="P", help="what part of their stems counts (default 25 %%)")
    parser.add_argument("--pdf", type=Path, metavar="F", help="write the sheet to take along")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter")


def run(args: argparse.Namespace) -> int:
    """Print what is due and what was seen. 0, or 2 for input that cannot be used."""
    from stemward.cli.common import Unusable, read_folder, say_unusable, write_whole
    from stemward.gate.out.rates import rates_csv
    from stemward.handbook import load
    from stemward.plan.rates import rates_of
    from stemward.say.en import rates, revisits
    from stemward.say.revisits import revisit_lines
    from stemward.say.worked import worked_lines

    book = load()
    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
        tract = replace(read.tract, rates=(*read.tract.rates, *_others(args, book))) if args.others else read.tract
        if args.pdf:
            from stemward.paper.revisit_sheet import revisit_sheet

            write_whole(args.pdf, revisit_sheet(tract, book, as_of, args.units, args.paper))
        if args.rates:
            found = rates_of(tract, book)
            if not found:
                return say_unusable(rates.NONE)
            write_whole(args.rates, rates_csv(found, book))
    except Unusable as wrong:
        return say_unusable(str(wrong))
    print("\n".join(revisit_lines(tract, as_of, book)))
    if worked := worked_lines(tract, book):
        print("\n".join(["", revisits.WORKED, *worked]))
    return 0


def _others(args: argparse.Namespace, book: "Book") -> tuple["OthersRate", ...]:
    """Kill rates of others with what part of them counts. Raises Unusable with every line that is wrong."""
    from stemward.cli.common import Unusable
    from stemward.gate.problems import Problems, Unreadable
    from stemward.gate.rates import read_rates
    from stemward.gate.text import decode
    from stemward.say.problems import problem_lines
    from stemward.units import UnitError, read

    try:
        share = read(args.share, "fraction").to("frac")
        problems = Problems()
        text = decode(args.others.read_bytes(), args.others.name, problems)
        problems.raise_if_any()
        found = read_rates(text or "", args.others.name, book.find_species, {name for name, _ in book.ingredients})
    except OSError as error:
        raise Unusable(f"{args.others} cannot be read: {error.strerror}.") from None
    except UnitError:
        raise Unusable(f'--share {args.share} is not understood; write it like "25 %".') from None
    except Unreadable as wrong:
        raise Unusable("\n".join(problem_lines(wrong.problems))) from None
    if not 0 <= share <= 1:
        raise Unusable(f"--share {args.share} is not between 0 and 100 %.")
    return tuple(replace(one, share=share) for one in found)
