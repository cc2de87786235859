"""stemward years: what the years ahead take, strategies side by side."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward years`."""
    parser.add_argument("folder", type=Path, help="the tract folder")
    parser.add_argument("--years", type=int, default=10, metavar="N", help="1 to 15 (default: 10)")
    parser.add_argument(
        "--hours", type=float, metavar="H", help="what this many hours a year would do, and where first"
    )
    parser.add_argument("--find", type=float, metavar="PERCENT", help="how many of 100 plants a visit finds")
    parser.add_argument("--sprouts", type=float, metavar="N", help="sprouts of a plant that comes back")
    parser.add_argument("--seedlings", type=float, metavar="N", help="seedlings a year for each plant there was")
    parser.add_argument("--as-of", metavar="DATE", help="the day it is (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="units to read")


def run(args: argparse.Namespace) -> int:
    """Print strategies, what they depend on, and a budget. 0, or 2 for input that cannot be used."""
    from stemward.cli.common import Unusable, read_folder, say_unusable
    from stemward.handbook import load
    from stemward.plan import as_data, draw_up
    from stemward.plan.ahead import outlook
    from stemward.say import ahead as say
    from stemward.say.en import ahead as words

    book = load()
    if args.hours is not None and not 0 < args.hours < 100_000:
        return say_unusable("Hours a year: write a number above 0, such as --hours 12.")
    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
    except Unusable as wrong:
        return say_unusable(str(wrong))
    tract = read.tract
    given = {"find_frac": None if args.find is None else args.find / 100, "sprouts": args.sprouts,
             "seedlings": args.seedlings}  # fmt: skip
    try:
        data = as_data(draw_up(tract, book, as_of, read.hash))
        set_ = {name: value for name, value in given.items() if value is not None}
        found = outlook(tract, data, book, args.years, set_, args.hours)
    except ValueError as wrong:
        return say_unusable(_WRONG.get(str(wrong), f"{wrong} cannot be used."))
    if found is None:
        print(words.NO_TARGETS)
        return 0
    print(f"{tract.name}: the years ahead from {as_of}\n")
    heads = say.head(found)
    for row in say.strategy_rows(found, args.units):
        print(row[0])
        print("\n".join(f"    {name}: {cell}" for name, cell in zip(heads[1:], row[1:], strict=True) if cell))
    print(f"\n{words.MOST}:")
    print("\n".join(f"    {line}" for line in say.shares(found)))
    if found.budget is not None:
        print(f"\n{words.BUDGET.format(hours=f'{args.hours:g}')}:")
        head = say.budget_head(found)
        for row in say.budget_rows(found):
            print(f"    {head[0]} {row[0]}: {row[1]}. {head[2]}: {row[2]}. {head[3]}: {row[3]}")
        print(f"    {words.BUDGET_NOTE}")
    print("\n" + "\n".join(say.notes(found)))
    return 0


_WRONG = {
    "years": "Years: write a whole number from 1 to 15.",
    "find_frac": "--find: write a number from 0 to 100.",
    "sprouts": "--sprouts: write a number from 0 to 100.",
    "seedlings": "--seedlings: write a number from 0 to 100.",
}
