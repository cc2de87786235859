"""stemward mix: how much product and carrier go into a bottle, without a tract."""

import argparse


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward mix`."""
    parser.add_argument("amount", help='finished mix wanted: "24 fl oz", "1 qt", "500 mL"')
    how = parser.add_mutually_exclusive_group(required=True)
    how.add_argument("--concentration", metavar="C", help='share of product in the mix, by volume: "50 %%"')
    how.add_argument("--ratio", metavar="A:B", help="parts: 1:3 has two readings, and both are shown")
    how.add_argument("--per-gallon", metavar="V", help='"32 fl oz" for each gallon; two readings, both are shown')
    parser.add_argument("--strength", metavar="S", help='strength of the jug, "4 lb ae/gal", for acid equivalent')
    parser.add_argument("--bottle", metavar="V", help="what the bottle holds (default: the amount and a quarter)")
    parser.add_argument("--units", choices=("us", "metric"), default="us")


def run(args: argparse.Namespace) -> int:
    """Print what to pour, in marks of common measures. 0; 2 for unusable input or where it cannot be poured."""
    from stemward.cli.common import say_unusable
    from stemward.say.quick import NotUnderstood, mix_lines

    try:
        lines, poured = mix_lines(
            args.amount, args.concentration or "", args.ratio or "", args.per_gallon or "", args.strength or "",
            args.bottle or "", args.units,
        )  # fmt: skip
    except NotUnderstood as error:
        return say_unusable(str(error))
    print("\n".join(lines))
    return 0 if poured else 2
