"""stemward walk: who walks where, stem by stem, in the time there is."""

import argparse
from pathlib import Path

from stemward.reckon.bearing import POINTS, point_deg


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward walk`."""
    parser.add_argument("folder", type=Path, help="the tract folder")
    parser.add_argument("--people", type=int, default=1, metavar="N", help="how many treat, 1 to 10 (default: 1)")
    parser.add_argument("--pairs", action="store_true", help="two walk together: one cuts, one treats")
    parser.add_argument("--hours", type=float, metavar="H", help="hours of the day (default: as long as it takes)")
    parser.add_argument(
        "--across", action="append", default=[], choices=("water", "fence"),
        help="walk across this as well; given once for each",
    )  # fmt: skip
    parser.add_argument(
        "--uphill", choices=POINTS, default="", metavar="DIR",
        help="where uphill lies, " + ", ".join(POINTS) + "; lanes then run across the slope, uphill",
    )  # fmt: skip
    parser.add_argument("--seed", type=int, default=1, help="another order of tries; the same seed gives the same walk")
    parser.add_argument("--as-of", metavar="DATE", help="the day the plan is for (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="feet, or meters")
    parser.add_argument("--pdf", type=Path, metavar="F", help="write the walk sheets to this file")
    parser.add_argument("--json", action="store_true", help="print the walks as data")


def run(args: argparse.Namespace) -> int:
    """Print each person's walk. 0, or 2 for input that cannot be used."""
    import json

    from stemward.cli.common import Unusable, read_folder, say_unusable, write_whole
    from stemward.handbook import load
    from stemward.paper.walk_sheets import Sheets, stopped, walks_pdf
    from stemward.plan import as_data, draw_up
    from stemward.plan.walk_works import Ask, works_of
    from stemward.plan.walks import MOST_PEOPLE, walk_work
    from stemward.say import Speaker
    from stemward.say import walks as say

    if not 1 <= args.people <= MOST_PEOPLE or (args.hours is not None and not 0 < args.hours <= 24):
        return say_unusable(f"Write 1 to {MOST_PEOPLE} people and over 0 to 24 hours.")
    book = load()
    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
    except Unusable as error:
        return say_unusable(str(error))
    plan, tract = as_data(draw_up(read.tract, book, as_of, read.hash)), read.tract
    barriers = tuple(kind for kind in Ask().barriers if kind not in args.across)
    ask = Ask(args.people, args.pairs, args.hours, barriers, point_deg(args.uphill))
    speaker = Speaker(plan, args.units)
    found = [(work, walk_work(work, plan, tract, book, ask, args.seed)) for work in works_of(plan, tract, book, ask)]
    treat = [person.role for person in tract.people if "apply" in person.does]
    names = say.people_names(treat or [person.role for person in tract.people], ask)
    told = [say.open_lines(work, walk, ask.hours, ask.barriers) for work, walk in found]
    if args.pdf:
        try:
            write_whole(args.pdf, walks_pdf(Sheets(plan, found, told, names, ask), speaker))
        except Unusable as error:
            return say_unusable(str(error))
    if args.json:
        print(json.dumps([walk for _, walk in found], sort_keys=True))
        return 0
    for (work, walk), lines in zip(found, told, strict=True):
        print(say.work_title(speaker, work))
        for line in (*stopped(work), *lines):
            print(f"  ! {line}")
        for one in say.said_walks(speaker, work, walk, names, ask):
            print(f"  {one.person}: {one.line}")
            print("    " + " > ".join("refill" if row.refill else row.stem for row in one.rows))
        for part in say.lane_parts(speaker, work, walk, names):
            print(f"  {part['heading']}. {part['words']}")
    return 0
