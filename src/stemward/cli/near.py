"""stemward near: what may reach a plant that is to be kept, without a tract."""

import argparse

FORMS = ("salt", "amine", "choline", "ester", "acid", "dry")


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward near`."""
    from stemward.kinds import HERBICIDE_METHODS

    parser.add_argument("ingredient", help="active ingredient, for example imazapyr")
    parser.add_argument("how", choices=[h.replace(" ", "-") for h in HERBICIDE_METHODS], help="the way of treating")
    parser.add_argument("distance", help='from the treated stem to the plant: "22 ft"')
    parser.add_argument("--form", choices=FORMS, default="salt", help="form of the ingredient (default salt)")
    parser.add_argument("--kind", choices=("same", "oaks", "other"), default="other", help="same kind as the target?")
    parser.add_argument("--clone", action="store_true", help="both may be one plant from shared roots")
    parser.add_argument("--trunk", metavar="D", help='diameter of the kept tree at breast height: "16 in"')
    parser.add_argument("--crown", metavar="R", help='from its trunk to the edge of its crown: "15 ft"')
    parser.add_argument("--units", choices=("us", "metric"), default="us")


def run(args: argparse.Namespace) -> int:
    """Print the four routes, each with its level and the numbers behind it. 0, or 2 for unusable input."""
    from stemward.cli.common import say_unusable
    from stemward.say.quick import NotUnderstood, near_lines

    try:
        lines = near_lines(
            args.ingredient, args.how.replace("-", " "), args.distance, args.form, args.kind, args.clone,
            args.trunk or "", args.crown or "", args.units,
        )  # fmt: skip
    except NotUnderstood as error:
        return say_unusable(str(error))
    print("\n".join(lines))
    return 0
