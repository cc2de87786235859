"""stemward checks: every check, what it protects, what it needs, and who says so."""

import argparse


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward checks`."""
    parser.add_argument("id", nargs="*", help="ids of checks; all of them if none is given")


def run(args: argparse.Namespace) -> int:
    """Print the registry in the order of what a mistake would cost. 0, or 2 for an id that is none."""
    from stemward.checks import ALL, RETIRED
    from stemward.cli.common import say_unusable

    known = {check.id: check for check in ALL}
    for wanted in args.id:
        if wanted not in known:
            gone = " It was in use once." if wanted in RETIRED else ""
            return say_unusable(f"There is no check {wanted}.{gone} See: stemward checks.")
    for check in (known[i] for i in args.id) if args.id else ALL:
        print(f"{check.id}: protects {check.protects}")
        print(f"  needs {', '.join(check.needs)}")
        for source in check.sources:
            print(f"  {source}")
    return 0
