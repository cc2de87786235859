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
    from stemward.cli.common import Unusable, measure, say_unusable
    from stemward.handbook import load
    from stemward.plan.quick import NearAsked, quick_near
    from stemward.say import en, figure

    book = load()
    try:
        asked = NearAsked(
            args.ingredient.strip().lower() if args.ingredient != "2,4-D" else args.ingredient,
            args.form,
            args.how.replace("-", " "),
            {"oaks": "kin"}.get(args.kind, args.kind),
            args.clone,
            measure(args.distance, "length", "m", "ft"),
            measure(args.trunk, "length", "cm", "in") if args.trunk else 0.0,
            measure(args.crown, "length", "m", "ft") if args.crown else 0.0,
        )
        routes = quick_near(asked, book)
    except Unusable as error:
        return say_unusable(str(error))
    except KeyError:
        names = ", ".join(sorted({name for name, _ in book.ingredients}))
        return say_unusable(f"Nothing is on record for {args.ingredient} as {args.form}. On record are: {names}.")
    for route in routes:
        print(f"{route.name}: {en.stages.LEVELS[route.level]}")
        said = {name: figure(name, value, args.units) for name, value in route.numbers}
        print("  " + en.sheets.NEAR[route.name].format(**{"left_frac": "an unknown share", **said}))
        for cited in route.leans_on:
            value = f"{cited.value:g} {cited.unit}" if isinstance(cited.value, float | int) else cited.value
            print(f"  {cited.id} = {value}: {cited.grade}; {cited.source}".rstrip("; "))
    print(en.sheets.NEAR["closing"])
    return 0
