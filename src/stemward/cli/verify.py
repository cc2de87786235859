"""stemward verify PLAN.json: work a plan again from its file alone."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward verify`."""
    parser.add_argument("plan", type=Path, help="a plan written by stemward plan --json")


def run(args: argparse.Namespace) -> int:
    """0 if every sum and the code agree, 2 if not or if the file is no plan."""
    import json
    import sys

    from stemward.cli.common import say_unusable
    from stemward.plan import verify
    from stemward.say.problems import verified_line

    try:
        text = args.plan.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or "it is not text in UTF-8"
        return say_unusable(f"Cannot read {args.plan}: {why}.")
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        return say_unusable(f"{args.plan} is not a plan: it is not JSON.")
    result = verify(data)
    if not result.problems:
        print(f"Worked again: {result.steps} sums agree, and so does the code {result.code}.")
        return 0
    for message, values in result.problems[:20]:
        print(verified_line(message, values), file=sys.stderr)
    if len(result.problems) > 20:
        print(f"and {len(result.problems) - 20} more.", file=sys.stderr)
    return 2
