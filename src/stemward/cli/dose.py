"""stemward dose: how much mix some stems take, without a tract."""

import argparse

HOW = ("cut stump", "basal bark", "hack and squirt", "foliar")


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward dose`."""
    parser.add_argument("how", choices=[h.replace(" ", "-") for h in HOW], help="the way of treating")
    parser.add_argument(
        "size", nargs="+", help='across the stem, one or more: "6 in" "2 1/2 in" "9 cm"; for foliar how tall: "5 ft"'
    )
    parser.add_argument("--count", type=int, default=1, metavar="N", help="stems of each size (default 1)")
    parser.add_argument("--ring", metavar="W", help='width of the ring wetted on large stumps (default "2 in")')
    parser.add_argument("--tool", help="squirt bottle, dauber, hand trigger, backpack (default: the usual one)")
    parser.add_argument("--oil", action="store_true", help="stumps in oil: bark and root collar are wetted as well")
    parser.add_argument("--per-squirt", metavar="V", help='what one squirt of yours gives, once counted: "0.8 mL"')
    parser.add_argument("--ingredient", default="glyphosate", help="for hack and squirt: sets the spacing of cuts")
    parser.add_argument("--strength", default="4 lb ae/gal", help="for hack and squirt: strength of the jug")
    parser.add_argument("--concentration", default="50 %", help="for hack and squirt: share of product in the mix")
    parser.add_argument("--units", choices=("us", "metric"), default="us")


def run(args: argparse.Namespace) -> int:
    """Print the dose of each size and the total with its spread. 0, or 2 for unusable input."""
    from stemward.cli.common import say_unusable
    from stemward.say.quick import NotUnderstood, dose_lines

    try:
        lines = dose_lines(
            args.how.replace("-", " "), args.size, args.count, args.ring or "", args.tool or "", args.oil,
            args.per_squirt or "", args.ingredient, args.strength, args.concentration, args.units,
        )  # fmt: skip
    except NotUnderstood as error:
        return say_unusable(str(error))
    print("\n".join(lines))
    return 0
