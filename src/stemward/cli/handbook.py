"""stemward handbook: what is known of treating one plant, and from where."""

import argparse


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward handbook`."""
    parser.add_argument("species", nargs="+", help="common or Latin name, for example glossy buckthorn")
    parser.add_argument("--state", default="", help="two letters: adds the state's rules that are on record")


def run(args: argparse.Namespace) -> int:
    """Print three ways, their months, what fails, and who says so. 0, or 2 for a name that is not one plant."""
    from stemward.cli.common import say_unusable
    from stemward.say.quick import NotUnderstood, plant_lines

    try:
        lines = plant_lines(" ".join(args.species), args.state)
    except NotUnderstood as error:
        return say_unusable(str(error))
    print("\n".join(lines))
    return 0
